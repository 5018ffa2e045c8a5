"""A page of rulers at true scale, to print once and lay a real ruler on."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH
from evenseam.figures.drawing import Anchor, Drawing, Label, Line, Shape, Stroke
from evenseam.figures.frame import rectangle as whole_page
from evenseam.figures.paper.exact_places import at
from evenseam.figures.paper.page import PaperPage
from evenseam.figures.paper.page_furniture import squares_across, wrapped
from evenseam.figures.paper.paper_size import MARGIN, Paper
from evenseam.figures.paper.words import TABLE, PaperWords

_TITLE_POINTS = Fraction(15)
_TEXT_POINTS = Fraction(9)
_NUMBER_POINTS = Fraction(8)
_LINE = Fraction(16, 100)
ACROSS_INCHES, DOWN_INCHES = 7, 8
ACROSS_CENTIMETRES, DOWN_CENTIMETRES = 18, 21
_LONG, _MIDDLE, _SHORT = Fraction(22, 100), Fraction(15, 100), Fraction(9, 100)


def ruler_page(paper: Paper, words: PaperWords) -> PaperPage:
    """Return one page with rulers of both kinds across and down, and the test marks of every page of templates.

    ::

        title and instructions      [] []  |---|
        |''|''|''|''|''|  inches across
        |..|..|..|..|..|  centimetres across
        | inches down   | centimetres down
    """
    top = MARGIN + Fraction(14, 10)
    spot = at(MARGIN, MARGIN + Fraction(9, 100))
    title, told = words.word(TABLE, "rulers"), words.word(TABLE, "rulers_told")
    shapes: list[Shape] = [Label(spot, title, _TITLE_POINTS, anchor=Anchor.START, is_bold=True)]
    room = paper.live_width - Fraction(43, 10)
    for number, line in enumerate(wrapped(told, _TEXT_POINTS, room)):
        spot = at(MARGIN, MARGIN + Fraction(36, 100) + _LINE * number)
        shapes.append(Label(spot, line, _TEXT_POINTS, anchor=Anchor.START))
    shapes += squares_across(paper.width - MARGIN - Fraction(41, 10))
    centimetre = 1 / CENTIMETRES_PER_INCH
    second = top + Fraction(6, 10)
    left = MARGIN + Fraction(1, 10)
    shapes += _ruler(left, top, Fraction(1), ACROSS_INCHES, 8, "in")
    shapes += _ruler(left, second, centimetre, ACROSS_CENTIMETRES, 10, "cm")
    down = second + Fraction(6, 10)
    shapes += _ruler(left, down, Fraction(1), _fitting(paper, down, Fraction(1), DOWN_INCHES), 8, "in", is_down=True)
    shapes += _ruler(
        left + Fraction(1), down, centimetre, _fitting(paper, down, centimetre, DOWN_CENTIMETRES), 10, "cm",
        is_down=True,
    )  # fmt: skip
    drawing = Drawing(tuple(shapes), {}, whole_page(0, 0, paper.width, paper.height))
    return PaperPage(paper, 1, 1, drawing, (title,), told, title, words.code)


def _fitting(paper: Paper, top: Fraction, unit: Fraction, most: int) -> int:
    """Return how many whole units there is room for down the page."""
    return min(most, int((paper.height - MARGIN - top - Fraction(1, 10)) / unit))


def _ruler(
    left: Fraction, top: Fraction, unit: Fraction, count: int, parts: int, name: str, *, is_down: bool = False
) -> list[Shape]:
    """Return one ruler: a line, a mark for every part of its unit, and the numbers."""

    def place(along: Fraction, aside: Fraction) -> tuple[Fraction, Fraction]:
        return (left + aside, top + along) if is_down else (left + along, top + aside)

    shapes: list[Shape] = [Line((at(*place(Fraction(0), Fraction(0))), at(*place(unit * count, Fraction(0)))),
                                Stroke.SEWING_LINE)]  # fmt: skip
    for number in range(count * parts + 1):
        along = unit * Fraction(number, parts)
        long = _LONG if number % parts == 0 else _MIDDLE if 2 * number % parts == 0 else _SHORT
        shapes.append(Line((at(*place(along, Fraction(0))), at(*place(along, long))), Stroke.SEWING_LINE))
        if number % parts == 0:
            is_last = number == count * parts
            text = f"{number // parts} {name}" if is_last else str(number // parts)
            spot = at(*place(along, _LONG + Fraction(10, 100)))
            anchor = Anchor.START if is_down else Anchor.END if is_last else Anchor.MIDDLE
            shapes.append(Label(spot, text, _NUMBER_POINTS, anchor=anchor))
    return shapes
