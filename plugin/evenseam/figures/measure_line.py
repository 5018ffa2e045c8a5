"""A measure line taken apart: its lines, its ticks, and where its figure stands."""

from __future__ import annotations

from evenseam.figures.drawing import Anchor, Label, Measure
from evenseam.figures.lettering import text_width
from evenseam.figures.plane import Point

TICK = 4.0
_BESIDE = 7.0


def measure_parts(measure: Measure) -> tuple[tuple[tuple[Point, ...], ...], Label]:
    """Return the lines of a measure line and its label.

    On a level line the figure stands in a gap of the line where there is room for it, else below; beside an upright
    line it stands to the right::

        |--- 12 1/2 in ---|        |
                                   |  8 in
                                   |
    """
    start, end = measure.start, measure.end
    middle = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
    if start.y == end.y:
        ticks = tuple((Point(at.x, at.y - TICK), Point(at.x, at.y + TICK)) for at in (start, end))
        gap = text_width(measure.text, Label(middle, "").size) + 8
        long = abs(end.x - start.x)
        if long > gap + 10:
            left, right = (start, end) if start.x < end.x else (end, start)
            halves = ((left, Point(middle.x - gap / 2, left.y)), (Point(middle.x + gap / 2, left.y), right))
            return ticks + halves, Label(middle, measure.text)
        return (*ticks, (start, end)), Label(Point(middle.x, middle.y + 12), measure.text)
    ticks = tuple((Point(at.x - TICK, at.y), Point(at.x + TICK, at.y)) for at in (start, end))
    return (*ticks, (start, end)), Label(Point(middle.x + _BESIDE, middle.y), measure.text, anchor=Anchor.START)
