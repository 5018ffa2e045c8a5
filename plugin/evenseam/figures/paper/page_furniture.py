"""What stands on every page of templates: title, instructions, and squares to measure."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, Unit
from evenseam.figures.drawing import Anchor, Ink, Label, Line, Shape, Stroke
from evenseam.figures.paper.exact_places import at, exact, letters_size, rectangle
from evenseam.figures.paper.paper_size import MARGIN, Paper
from evenseam.figures.paper.template_shapes import POINT, label_width
from evenseam.figures.paper.words import (
    FIVE_CENTIMETRES,
    ONE_INCH,
    TABLE,
    TWO_CENTIMETRES,
    TWO_INCHES,
    PaperWords,
)
from evenseam.figures.rational import rational
from evenseam.geometry import Point
from evenseam.pattern import Method
from evenseam.sheet import PatternSheet

HEAD_HEIGHT = Fraction(23, 20)
"""From the margin to where templates may begin, in inches."""
ASIDE_WIDTH = Fraction(89, 40)
FOOT_HEIGHT = Fraction(1, 5)
_SQUARES_WIDE = Fraction(42, 10)
_TWO = 2 / CENTIMETRES_PER_INCH
_FIVE = 5 / CENTIMETRES_PER_INCH
_TITLE_POINTS = Fraction(12)
_TEXT_POINTS = Fraction(7)
_LINE = Fraction(122, 1000)


class Layout(Enum):
    """Where the instructions stand, and so what shape of template a page has room for."""

    HEAD = "across the head"
    ASIDE = "in a column at the right"


@dataclass(frozen=True, slots=True)
class LiveArea:
    """Where templates may lie, in inches from the top left corner of the paper."""

    left: Fraction
    top: Fraction
    width: Fraction
    height: Fraction


def live_area(paper: Paper, layout: Layout) -> LiveArea:
    """Return the part of a page that templates may use."""
    if layout is Layout.ASIDE:
        return LiveArea(MARGIN, MARGIN, paper.live_width - ASIDE_WIDTH, paper.live_height)
    return LiveArea(MARGIN, MARGIN + HEAD_HEIGHT, paper.live_width, paper.live_height - HEAD_HEIGHT - FOOT_HEIGHT)


def furniture(
    sheet: PatternSheet, paper: Paper, layout: Layout, number: int, count: int, words: PaperWords
) -> list[Shape]:
    """Return what is printed on one page beside its templates."""
    project = sheet.project
    edition = words.word("page", "centimeter_edition" if project.unit is Unit.CENTIMETRE else "inch_edition")
    lines = (
        words.fill(TABLE, "edition", size=project.name, edition=edition),
        words.fill(TABLE, "page", paper=paper.title, number=number, count=count),
        words.word(TABLE, "full_size"),
        words.word(TABLE, "measure_first"),
        words.fill(TABLE, "allowance", seam=words.figure(project.seam_allowance.text)),
        *(words.word(TABLE, side) for side in _which_side(sheet)),
    )
    key = words.parts(TABLE, "key")
    if layout is Layout.ASIDE:
        left = paper.width - MARGIN - ASIDE_WIDTH + Fraction(3, 20)
        # The key goes into the column as well: the whole height is the template's.
        return _column(sheet.pattern.title, (*lines, *key), left, paper.width - MARGIN - left)
    foot = paper.height - MARGIN - Fraction(6, 100)
    told = " · ".join(key)
    key_size = min(_TEXT_POINTS, fitting(told, _TEXT_POINTS, paper.live_width))
    key_line = Label(at(paper.width / 2, foot), told, key_size, Ink.QUIET)
    room = paper.live_width - _SQUARES_WIDE
    text, _ = _text(sheet.pattern.title, lines, MARGIN, MARGIN, room)
    return [*text, *squares_across(paper.width - MARGIN - _SQUARES_WIDE + Fraction(1, 10)), key_line]


def _which_side(sheet: PatternSheet) -> tuple[str, ...]:
    """Name what is said of the kinds of template there are: on which side of the fabric each lies."""
    used = {pieced.block for pieced in sheet.blocks}
    has_sections = any(block.method is Method.FOUNDATION for block in sheet.project.blocks if block.id in used)
    has_pieces = any(cut.outline is not None for cut in sheet.cuts.cuts)
    return ("mirrored",) * has_sections + ("not_mirrored",) * has_pieces


def _text(
    title: str, lines: tuple[str, ...], left: Fraction, top: Fraction, room: Fraction
) -> tuple[list[Shape], Fraction]:
    """Return the title and the instructions in lines no longer than the room, and where they end."""
    size = min(_TITLE_POINTS, fitting(title, _TITLE_POINTS, room, is_bold=True))
    shapes: list[Shape] = [Label(at(left, top + Fraction(9, 100)), title, size, anchor=Anchor.START, is_bold=True)]
    down = top + Fraction(25, 100)
    for line in (part for sentence in lines for part in wrapped(sentence, _TEXT_POINTS, room)):
        shapes.append(Label(at(left, down), line, _TEXT_POINTS, anchor=Anchor.START))
        down += _LINE
    return shapes, down


def wrapped(text: str, points: Fraction, room: Fraction) -> list[str]:
    """Break a sentence into lines that fit; a single word may stand out."""
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and label_width(longer, points) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def squares_across(left: Fraction) -> list[Shape]:
    """Return squares of 1 in and 2 cm and bars of 2 in and 5 cm.

    ::

        +------+ +----+  |-----------| 2 in
        | 1 in | |2 cm|
        |      | +----+  |-----------| 5 cm
        +------+
    """
    top = MARGIN + Fraction(1, 100)
    second = left + 1 + Fraction(1, 8)
    bars = second + _TWO + Fraction(1, 8)
    return [
        *_square(left, top, Fraction(1), ONE_INCH),
        *_square(second, top, _TWO, TWO_CENTIMETRES),
        *_bar(bars, top + Fraction(1, 4), Fraction(2), 8, TWO_INCHES),
        *_bar(bars, top + Fraction(3, 4), _FIVE, 5, FIVE_CENTIMETRES),
    ]


def _column(title: str, lines: tuple[str, ...], left: Fraction, room: Fraction) -> list[Shape]:
    """Return title, instructions, squares and bars one below the other."""
    text, down = _text(title, lines, left, MARGIN, room)
    top = down + Fraction(1, 20)
    bars = top + 1 + Fraction(1, 4)
    return [
        *text,
        *_square(left, top, Fraction(1), ONE_INCH),
        *_square(left + 1 + Fraction(1, 8), top, _TWO, TWO_CENTIMETRES),
        *_bar(left, bars, Fraction(2), 8, TWO_INCHES),
        *_bar(left, bars + Fraction(2, 5), _FIVE, 5, FIVE_CENTIMETRES),
    ]


def _square(left: Fraction, top: Fraction, side: Fraction, text: str) -> list[Shape]:
    return [
        Line(rectangle(left, top, side, side).corners, Stroke.SEWING_LINE, is_closed=True),
        Label(at(left + side / 2, top + side / 2), text, Fraction(8)),
    ]


def _bar(left: Fraction, level: Fraction, long: Fraction, parts: int, text: str) -> list[Shape]:
    shapes: list[Shape] = [Line((at(left, level), at(left + long, level)), Stroke.SEWING_LINE)]
    for part in range(parts + 1):
        x = left + long * Fraction(part, parts)
        tick = Fraction(8, 100) if part in (0, parts) else Fraction(4, 100)
        shapes.append(Line((at(x, level - tick), at(x, level + tick)), Stroke.SEWING_LINE))
    shapes.append(Label(Point(left + long / 2, level + Fraction(15, 100)), text, Fraction(8)))
    return shapes


def fitting(text: str, points: Fraction, room: Fraction, *, is_bold: bool = False) -> Fraction:
    """Return the size at which words just fit a room in inches, in tenths of a point."""
    return Fraction(int(points * room / label_width(text, points, is_bold=is_bold) * 10), 10)


def ink_box(label: Label) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """Return left, top, right and bottom of a label's letters in inches."""
    size = letters_size(label)
    long = label_width(label.text, size, is_bold=label.is_bold)
    high = size * POINT * Fraction(6, 5)
    before = {Anchor.START: Fraction(0), Anchor.MIDDLE: Fraction(1, 2), Anchor.END: Fraction(1)}[label.anchor]
    x, y = (rational(number) for number in (exact(label.at).x, exact(label.at).y))
    if label.is_upward:
        return x - high / 2, y - long * (1 - before), x + high / 2, y + long * before
    return x - long * before, y - high / 2, x + long * (1 - before), y + high / 2
