"""A measure line taken apart: its lines, its ticks, and where its figure stands."""

from __future__ import annotations

from dataclasses import replace

from evenseam.figures.drawing import LABEL_SIZE, Anchor, Label, Measure
from evenseam.figures.lettering import LINE_HEIGHT, label_box, label_lines, text_width
from evenseam.figures.plane import Point

TICK = 4.0
AWAY = 12.0
"""From the work to a measure line beside it or below it."""
_BESIDE = 7.0
_WIDEST = 84.0
"""Longer words beside an upright line are broken into lines."""


def room_beside(text: str) -> float:
    """Return how far an upright measure line and its figure reach out from the work they stand beside."""
    left, _, right, _ = label_box(_beside(Point(0.0, 0.0), text)).bounds
    return AWAY + _BESIDE + right - left


def _beside(middle: Point, text: str) -> Label:
    """Return the figure that stands to the right of a point, level with it."""
    label = Label(middle, text, anchor=Anchor.START, wide=_WIDEST)
    up = (len(label_lines(label)) - 1) * LINE_HEIGHT * LABEL_SIZE / 2
    return replace(label, at=Point(middle.x, middle.y - up))


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
        gap = text_width(measure.text, LABEL_SIZE) + 8
        long = abs(end.x - start.x)
        if long > gap + 10:
            left, right = (start, end) if start.x < end.x else (end, start)
            halves = ((left, Point(middle.x - gap / 2, left.y)), (Point(middle.x + gap / 2, left.y), right))
            return ticks + halves, Label(middle, measure.text)
        return (*ticks, (start, end)), Label(Point(middle.x, middle.y + 12), measure.text)
    ticks = tuple((Point(at.x - TICK, at.y), Point(at.x + TICK, at.y)) for at in (start, end))
    return (*ticks, (start, end)), _beside(Point(middle.x + _BESIDE, middle.y), measure.text)
