"""Labels for pieces too small to hold them: beside the work, each with a line that leads to its piece."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from evenseam.figures.drawing import SMALL_SIZE, Anchor, Pen, Stroke
from evenseam.figures.frame import at
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.spot import middle_of

AWAY = 12.0
PITCH = 14.0


@dataclass(frozen=True, slots=True)
class Callout:
    """One small piece, as it lies in the drawing, and its label."""

    piece: Polygon
    text: str


def draw_callouts(pen: Pen, callouts: Sequence[Callout], left: float, right: float, bottom: float) -> None:
    """Write labels to the left and right of work that reaches from `left` to `right`, each on the nearer side.

    Labels of one side stand in the order of their pieces, so that no two lines cross more than they must; none
    stands below `bottom` if there is room above.
    """
    middle = (left + right) / 2
    spots = [(middle_of(callout.piece), callout.text) for callout in callouts]
    for is_left in (True, False):
        side = [(spot, text) for spot, text in spots if (spot.x < middle) is is_left]
        _draw_side(pen, sorted(side, key=lambda one: (one[0].y, one[0].x)), left, right, bottom, is_left=is_left)


def _draw_side(
    pen: Pen, side: Sequence[tuple[Point, str]], left: float, right: float, bottom: float, *, is_left: bool
) -> None:
    levels: list[float] = []
    for spot, _ in side:
        levels.append(max(spot.y, levels[-1] + PITCH) if levels else spot.y)
    # What has slid down past the bottom is pushed up again from below.
    lowest = bottom
    for number in range(len(levels) - 1, -1, -1):
        levels[number] = min(levels[number], lowest)
        lowest = levels[number] - PITCH
    edge, end = (left, left - AWAY) if is_left else (right, right + AWAY)
    for (spot, text), level in zip(side, levels, strict=True):
        pen.line((spot, at(edge, level), at(end + (2 if is_left else -2), level)), Stroke.LEADER)
        pen.label(at(end, level), text, size=SMALL_SIZE, anchor=Anchor.END if is_left else Anchor.START)
