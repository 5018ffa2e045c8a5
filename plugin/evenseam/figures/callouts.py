"""Labels for pieces too small to hold them: beside the work, each with a line that leads to its piece."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from evenseam.figures.drawing import SMALL_SIZE, Anchor, Pen, Stroke
from evenseam.figures.folding import between
from evenseam.figures.frame import at
from evenseam.figures.lettering import label_box, text_width
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.spot import middle_of

AWAY = 12.0
PITCH = 16.0
HAIR = 0.5
"""What lies in the middle goes to the right, whatever its last decimal."""


@dataclass(frozen=True, slots=True)
class Callout:
    """One small piece, as it lies in the drawing, and its label."""

    piece: Polygon
    text: str


def on_the_left(callout: Callout, middle: float) -> bool:
    """Tell on which side of the work a label stands: the nearer one."""
    return middle_of(callout.piece).x < middle - HAIR


def room_for(callouts: Iterable[Callout]) -> float:
    """Return how far labels on one side reach out from the work; 0 for none."""
    return max((AWAY + text_width(callout.text, SMALL_SIZE) for callout in callouts), default=0.0)


def draw_callouts(pen: Pen, callouts: Sequence[Callout], left: float, right: float, bottom: float) -> None:
    """Write labels to the left and right of work that reaches from `left` to `right`, each on the nearer side.

    Labels of one side stand in the order of their pieces, so that no two lines cross more than they must; none
    stands below `bottom` if there is room above.
    """
    middle = (left + right) / 2
    for is_left in (True, False):
        side = [one for one in callouts if on_the_left(one, middle) is is_left]
        draw_side(pen, side, left if is_left else right, bottom, is_left=is_left)


def draw_side(pen: Pen, callouts: Sequence[Callout], edge: float, bottom: float, *, is_left: bool) -> None:
    """Write labels on one side of the work, which ends at `edge`."""
    written = [label_box(label).bounds for label in pen.drawing().labels]
    side = [(_start(callout.piece, edge, written), callout.text) for callout in callouts]
    side.sort(key=lambda one: (one[0].y, one[0].x))
    levels: list[float] = []
    for spot, _ in side:
        levels.append(max(spot.y, levels[-1] + PITCH) if levels else spot.y)
    # What has slid down past the bottom is pushed up again from below.
    lowest = bottom
    for number in range(len(levels) - 1, -1, -1):
        levels[number] = min(levels[number], lowest)
        lowest = levels[number] - PITCH
    end = edge - AWAY if is_left else edge + AWAY
    for (spot, text), level in zip(side, levels, strict=True):
        pen.line((spot, at(edge, level), at(end + (2 if is_left else -2), level)), Stroke.LEADER)
        pen.label(at(end, level), text, size=SMALL_SIZE, anchor=Anchor.END if is_left else Anchor.START)


def _start(piece: Polygon, edge: float, written: Sequence[tuple[float, float, float, float]]) -> Point:
    """Return where in a piece its line begins: its middle, unless from another spot fewer words lie in the way."""
    middle = middle_of(piece)
    spots = [middle, *(between(middle, corner, share) for share in (0.4, 0.65, 0.85) for corner in piece.corners)]

    def crossed(spot: Point) -> int:
        near, far = min(spot.x, edge), max(spot.x, edge)
        return sum(
            left < far and near < right and top - 1 < spot.y < bottom + 1 for left, top, right, bottom in written
        )

    return min(spots, key=crossed)
