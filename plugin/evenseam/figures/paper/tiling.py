"""A template larger than the paper, cut into parts that overlap and are joined by marks."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import ceil

from evenseam.figures.clipping import Window
from evenseam.figures.drawing import Ink, Label, Line, Shape, Stroke
from evenseam.figures.paper.exact_places import at, exact, moved
from evenseam.figures.paper.page_furniture import ink_box
from evenseam.figures.paper.template_shapes import TemplateShapes
from evenseam.figures.paper.words import TABLE, PaperWords
from evenseam.geometry import Point

OVERLAP = Fraction(3, 4)
"""Of neighbouring parts, in inches: enough to glue, and at least the 1/2 in that marks need."""
_CROSS = Fraction(1, 10)


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a large template: what to draw, from the corner of its window."""

    number: int
    count: int
    shapes: tuple[Shape, ...]
    width: Fraction
    height: Fraction


def part_count(width: Fraction, height: Fraction, live_width: Fraction, live_height: Fraction) -> int:
    """Return into how many parts a template of a size is cut."""
    return _along(width, live_width) * _along(height, live_height)


def parts_of(
    shapes: TemplateShapes, live_width: Fraction, live_height: Fraction, words: PaperWords
) -> tuple[Part, ...]:
    """Cut a template into parts row by row; every point of it lies on at least one of them."""
    columns, rows = _along(shapes.width, live_width), _along(shapes.height, live_height)
    lefts = _starts(shapes.width, live_width, columns)
    tops = _starts(shapes.height, live_height, rows)
    parts = []
    for row, top in enumerate(tops):
        for column, left in enumerate(lefts):
            window = Window(left, top, min(left + live_width, shapes.width), min(top + live_height, shapes.height))
            drawn = [
                *_inside(shapes, window),
                *_joins(window, lefts, tops, row, column, live_width, live_height, words),
            ]
            corner = Point(-window.left, -window.top)
            placed = tuple(moved(shape, corner) for shape in drawn)
            number = row * columns + column + 1
            parts.append(Part(number, rows * columns, placed, window.right - window.left, window.bottom - window.top))
    return tuple(parts)


def _along(long: Fraction, live: Fraction) -> int:
    return 1 if long <= live else ceil((long - OVERLAP) / (live - OVERLAP))


def _starts(long: Fraction, live: Fraction, count: int) -> tuple[Fraction, ...]:
    """Return where the windows begin: evenly spread, so that all overlap by the same, at least OVERLAP."""
    if count == 1:
        return (Fraction(0),)
    step = (long - live) / (count - 1)
    return tuple(step * number for number in range(count))


def _inside(shapes: TemplateShapes, window: Window) -> list[Shape]:
    kept: list[Shape] = []
    for line in shapes.lines:
        points = (*line.points, line.points[0]) if line.is_closed else line.points
        for start, end in pairwise(points):
            if (stretch := window.cut(exact(start), exact(end))) is not None:
                kept.append(Line(stretch, line.stroke))
    for label in shapes.labels:
        left, top, right, bottom = ink_box(label)
        if window.holds(at(left, top)) and window.holds(at(right, bottom)):
            kept.append(label)
    return kept


def _joins(
    window: Window,
    lefts: tuple[Fraction, ...],
    tops: tuple[Fraction, ...],
    row: int,
    column: int,
    live_width: Fraction,
    live_height: Fraction,
    words: PaperWords,
) -> list[Shape]:
    """Return the joining lines of a part with their crosses, each in the middle of an overlap."""
    shapes: list[Shape] = []
    columns = len(lefts)
    for side in (column - 1, column):
        if 0 <= side < columns - 1:
            x = (lefts[side] + live_width + lefts[side + 1]) / 2
            other = row * columns + (column - 1 if side < column else column + 1) + 1
            shapes += _joining_line(at(x, window.top), at(x, window.bottom), _goes_on(other, words))
    for side in (row - 1, row):
        if 0 <= side < len(tops) - 1:
            y = (tops[side] + live_height + tops[side + 1]) / 2
            other = (row - 1 if side < row else row + 1) * columns + column + 1
            shapes += _joining_line(at(window.left, y), at(window.right, y), _goes_on(other, words))
    return shapes


def _goes_on(other: int, words: PaperWords) -> str:
    """Say which part goes on at a joining line."""
    return words.fill(TABLE, "to_part", number=other)


def _joining_line(start: Point, end: Point, told: str) -> list[Shape]:
    way = end - start
    is_upright = way.x == 0
    shapes: list[Shape] = [Line((start, end), Stroke.HELP)]
    for share in (Fraction(1, 4), Fraction(3, 4)):
        spot = start + way.scaled(share, share)
        arm_x, arm_y = at(_CROSS, 0), at(0, _CROSS)
        shapes.append(Line((spot - arm_x, spot + arm_x), Stroke.SEWING_LINE))
        shapes.append(Line((spot - arm_y, spot + arm_y), Stroke.SEWING_LINE))
        diamond = (spot - arm_x, spot - arm_y, spot + arm_x, spot + arm_y)
        shapes.append(Line(diamond, Stroke.SEWING_LINE, is_closed=True))
    beside = start + way.scaled(Fraction(1, 2), Fraction(1, 2))
    beside = beside + (at(Fraction(1, 12), 0) if is_upright else at(0, Fraction(1, 12)))
    shapes.append(Label(beside, told, Fraction(7), Ink.QUIET, is_upward=is_upright))
    return shapes
