"""The colouring sheet: the outlines of a finished project as large as one page holds, to try colours on."""

from __future__ import annotations

from fractions import Fraction

from evenseam.figures.cloth_look import looks_of
from evenseam.figures.drawing import Anchor, Drawing, Ink, Label, Line, Shape, Stroke
from evenseam.figures.frame import rectangle as whole_page
from evenseam.figures.paper.exact_places import at, rectangle
from evenseam.figures.paper.page import PaperPage
from evenseam.figures.paper.page_furniture import fitting, wrapped
from evenseam.figures.paper.paper_size import MARGIN, Paper
from evenseam.figures.paper.template_shapes import label_width
from evenseam.figures.paper.words import TABLE, PaperWords
from evenseam.figures.rational import rational, rational_point
from evenseam.geometry import Point
from evenseam.sheet import PatternSheet

_TITLE_POINTS = Fraction(15)
_TEXT_POINTS = Fraction(9)
_HEAD = Fraction(11, 20)
_BOX = Fraction(1, 4)
_LINE = Fraction(7, 20)
_GAP = Fraction(1, 10)


def colouring_page(sheet: PatternSheet, paper: Paper, words: PaperWords) -> PaperPage:
    """Return one page with every piece of the finished project in outline, and a box to colour for each fabric.

    Work that is wider than high lies sideways, so that it is as large as the page lets it be. Not true to scale, and
    the page says so.
    """
    boxes = _boxes(sheet, paper)
    foot = max((line for _, line in boxes), default=-1) + 1
    top = MARGIN + _HEAD
    wide, high = paper.live_width, paper.live_height - _HEAD - foot * _LINE - _GAP
    shapes = [*_head(sheet, paper, words), *_outlines(sheet, top, wide, high)]
    for number, (left, line) in enumerate(boxes):
        level = paper.height - MARGIN - (foot - line) * _LINE + (_LINE - _BOX)
        shapes.append(Line(rectangle(left, level, _BOX, _BOX).corners, Stroke.SEWING_LINE, is_closed=True))
        name = _used(sheet)[number]
        spot = at(left + _BOX + Fraction(1, 12), level + _BOX / 2)
        shapes.append(Label(spot, name, _TEXT_POINTS, anchor=Anchor.START))
    drawing = Drawing(tuple(shapes), looks_of(sheet.project.fabrics), whole_page(0, 0, paper.width, paper.height))
    title = words.word(TABLE, "coloring")
    about = words.fill(TABLE, "coloring_about", title=sheet.pattern.title, size=sheet.project.name)
    return PaperPage(paper, 1, 1, drawing, (title,), about, title, words.code)


def _head(sheet: PatternSheet, paper: Paper, words: PaperWords) -> list[Shape]:
    """Return what stands above the outlines."""
    told = words.word(TABLE, "coloring_told")
    title = f"{sheet.pattern.title}: {sheet.project.name}"
    size = min(_TITLE_POINTS, fitting(title, _TITLE_POINTS, paper.live_width, is_bold=True))
    return [
        Label(at(MARGIN, MARGIN + Fraction(1, 10)), title, size, anchor=Anchor.START, is_bold=True),
        *(
            Label(at(MARGIN, MARGIN + Fraction(7, 20) + Fraction(3, 20) * number), line, _TEXT_POINTS, Ink.QUIET,
                  anchor=Anchor.START)
            for number, line in enumerate(wrapped(told, _TEXT_POINTS, paper.live_width))
        ),
    ]  # fmt: skip


def _outlines(sheet: PatternSheet, top: Fraction, wide: Fraction, high: Fraction) -> list[Shape]:
    """Return the outlines of all pieces, in the middle of the room there is."""
    sized = sheet.sized
    width, height = rational(sized.finished_width.value), rational(sized.finished_height.value)
    is_sideways = (width > height) is not (wide > high) and width != height
    across, down = (height, width) if is_sideways else (width, height)
    scale = min(wide / across, high / down)
    left, upper = MARGIN + (wide - across * scale) / 2, top + (high - down * scale) / 2

    def place(corner: Point) -> Point:
        spot = rational_point(corner)
        x, y = (height - rational(spot.y), spot.x) if is_sideways else (spot.x, spot.y)
        return Point(left + x * scale, upper + y * scale)

    return [
        Line(tuple(place(corner) for corner in placed.outline.corners), Stroke.EDGE, is_closed=True)
        for placed in sized.placed
    ]


def _used(sheet: PatternSheet) -> tuple[str, ...]:
    """Return the names of the fabrics that are seen, in the order of the list."""
    used = {placed.fabric for placed in sheet.sized.placed}
    return tuple(fabric.name for fabric in sheet.project.fabrics if fabric.id in used)


def _boxes(sheet: PatternSheet, paper: Paper) -> list[tuple[Fraction, int]]:
    """Return for each fabric where its box begins and in which line at the foot of the page."""
    boxes: list[tuple[Fraction, int]] = []
    left, line = MARGIN, 0
    for name in _used(sheet):
        long = _BOX + label_width(name, _TEXT_POINTS) + Fraction(3, 10)
        if left > MARGIN and left + long > paper.width - MARGIN:
            left, line = MARGIN, line + 1
        boxes.append((left, line))
        left += long
    return boxes
