"""Where a label fits inside a piece, and how large it can be."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from evenseam.exact import Number
from evenseam.figures.drawing import LABEL_SIZE
from evenseam.figures.lettering import text_width
from evenseam.geometry import Point, Polygon

SMALLEST = Fraction(7)
_STEPS = 8

Corner = tuple[float, float]


def label_spot(
    piece: Polygon,
    text: str,
    largest: Number | int = LABEL_SIZE,
    smallest: Number | int = SMALLEST,
    *,
    is_bold: bool = False,
) -> tuple[Point, Fraction] | None:
    """Return the middle and the size of a label that stays inside a convex piece; None when it would be too small.

    The place is the middle of the piece when the label fits there, else the roomiest point of a net over the piece.
    """
    ring = _ring(piece)
    wide = float(text_width(text, Fraction(1), is_bold=is_bold)) / 2 + 0.12
    high = 0.62
    centre = _centroid(ring)
    best, size = centre, _room(ring, centre, wide, high)
    if size < float(largest):
        for spot in _net(ring):
            # The net only wins when it is clearly roomier: labels in the middle look calm.
            if (room := _room(ring, spot, wide, high)) > size * 1.05:
                best, size = spot, room
    size = min(size, float(largest))
    if size < float(smallest):
        return None
    return Point(_hundredths(best[0]), _hundredths(best[1])), Fraction(int(size * 10), 10)


def middle_of(piece: Polygon) -> Point:
    """Return the middle of a convex piece: inside it, however thin it is."""
    across, down = _centroid(_ring(piece))
    return Point(_hundredths(across), _hundredths(down))


def _ring(piece: Polygon) -> list[Corner]:
    """Return the corners clockwise on the page, in decimals."""
    ring = [(float(corner.x), float(corner.y)) for corner in piece.corners]
    twice = sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True))
    return ring if twice >= 0 else ring[::-1]


def _room(ring: Sequence[Corner], spot: Corner, wide: float, high: float) -> float:
    """Return the largest size at which a label's box round a spot stays inside a convex clockwise ring."""
    size = float("inf")
    for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        inward_x, inward_y = y1 - y2, x2 - x1
        distance = (spot[0] - x1) * inward_x + (spot[1] - y1) * inward_y
        size = min(size, distance / ((abs(inward_x) * wide + abs(inward_y) * high) or 1.0))
    return size


def _centroid(ring: Sequence[Corner]) -> Corner:
    area = across = down = 0.0
    for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        cross = x1 * y2 - x2 * y1
        area += cross
        across += (x1 + x2) * cross
        down += (y1 + y2) * cross
    if area == 0:
        return ring[0]
    return across / (3 * area), down / (3 * area)


def _net(ring: Sequence[Corner]) -> list[Corner]:
    left, right = min(x for x, _ in ring), max(x for x, _ in ring)
    top, bottom = min(y for _, y in ring), max(y for _, y in ring)
    return [
        (left + (right - left) * column / _STEPS, top + (bottom - top) * row / _STEPS)
        for row in range(1, _STEPS)
        for column in range(1, _STEPS)
    ]


def _hundredths(value: float) -> Fraction:
    return Fraction(round(value * 100), 100)


def room_at(piece: Polygon, spot: Point, text: str, *, is_bold: bool = False) -> Fraction:
    """Return the largest size at which a label around a spot stays inside a convex piece; 0 or less if none."""
    ring = _ring(piece)
    wide = float(text_width(text, Fraction(1), is_bold=is_bold)) / 2 + 0.12
    return Fraction(int(_room(ring, (float(spot.x), float(spot.y)), wide, 0.62) * 10), 10)
