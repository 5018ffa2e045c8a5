"""Where a label fits inside a piece, and how large it can be."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import SupportsFloat

from evenseam.figures.drawing import LABEL_SIZE, SMALL_SIZE
from evenseam.figures.lettering import text_width
from evenseam.figures.plane import Outline, Point, Spot

_STEPS = 8
_HALF_HEIGHT = 0.62
_NOISE = 1e-6

Corner = tuple[float, float]


def label_spot(
    piece: Outline,
    text: str,
    largest: SupportsFloat = LABEL_SIZE,
    smallest: SupportsFloat = SMALL_SIZE,
    *,
    is_bold: bool = False,
) -> tuple[Point, float] | None:
    """Return the middle and the size of a label that stays inside a convex piece; None when it would be too small.

    The place is the middle of the piece when the label fits there, else the roomiest point of a net over the piece.
    """
    ring = _ring(piece)
    wide = _half_width(text, is_bold=is_bold)
    most, least = float(largest), float(smallest)
    left, top, right, bottom = _bounds(ring)
    roomiest = min((right - left) / wide, (bottom - top) / _HALF_HEIGHT) / 2
    if roomiest < least:
        return None
    if _is_upright(ring):
        return Point(_hundredths((left + right) / 2), _hundredths((top + bottom) / 2)), _tenths(min(roomiest, most))
    sides = _sides(ring, wide)
    centre = _centroid(ring)
    best, size = centre, _room(sides, centre)
    if size < most:
        for spot in _net(left, top, right, bottom):
            # The net only wins when it is clearly roomier: labels in the middle look calm.
            if (room := _room(sides, spot, size * 1.05)) > size * 1.05:
                best, size = spot, room
    size = min(size, most)
    if size < least:
        return None
    return Point(_hundredths(best[0]), _hundredths(best[1])), _tenths(size)


def middle_of(piece: Outline) -> Point:
    """Return the middle of a convex piece: inside it, however thin it is."""
    across, down = _centroid(_ring(piece))
    return Point(_hundredths(across), _hundredths(down))


def room_at(piece: Outline, spot: Spot, text: str, *, is_bold: bool = False) -> float:
    """Return the largest size at which a label around a spot stays inside a convex piece; 0 or less if none."""
    sides = _sides(_ring(piece), _half_width(text, is_bold=is_bold))
    return _tenths(_room(sides, (float(spot.x), float(spot.y))))


def _half_width(text: str, *, is_bold: bool) -> float:
    return text_width(text, 1, is_bold=is_bold) / 2 + 0.12


def _ring(piece: Outline) -> list[Corner]:
    """Return the corners clockwise on the page, in decimals."""
    ring = [(float(corner.x), float(corner.y)) for corner in piece.corners]
    twice = sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True))
    return ring if twice >= 0 else ring[::-1]


def _sides(ring: Sequence[Corner], wide: float) -> list[tuple[float, float, float]]:
    """Return for every edge of a ring a sum (a, b, c): a x + b y + c is the size of label that a spot has room for."""
    sides = []
    for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        inward_x, inward_y = y1 - y2, x2 - x1
        reach = (abs(inward_x) * wide + abs(inward_y) * _HALF_HEIGHT) or 1.0
        sides.append((inward_x / reach, inward_y / reach, -(x1 * inward_x + y1 * inward_y) / reach))
    return sides


def _room(sides: Sequence[tuple[float, float, float]], spot: Corner, enough: float = float("-inf")) -> float:
    """Return the largest size at which a label's box round a spot stays inside; some size below `enough` if less."""
    x, y = spot
    size = float("inf")
    for across, down, rest in sides:
        room = across * x + down * y + rest
        if room < size:
            size = room
            if size <= enough:
                break
    return size


def _is_upright(ring: Sequence[Corner]) -> bool:
    """Tell whether a ring is an upright rectangle: nowhere in it is more room than in its middle."""
    following = (*ring[1:], ring[0])
    return len(ring) == 4 and all(x1 == x2 or y1 == y2 for (x1, y1), (x2, y2) in zip(ring, following, strict=True))


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


def _bounds(ring: Sequence[Corner]) -> tuple[float, float, float, float]:
    across, down = [x for x, _ in ring], [y for _, y in ring]
    return min(across), min(down), max(across), max(down)


def _net(left: float, top: float, right: float, bottom: float) -> Iterator[Corner]:
    for row in range(1, _STEPS):
        for column in range(1, _STEPS):
            yield left + (right - left) * column / _STEPS, top + (bottom - top) * row / _STEPS


def _hundredths(value: float) -> float:
    return round(value * 100) / 100


def _tenths(value: float) -> float:
    """Return a size in whole tenths below it."""
    return int(value * 10 + _NOISE) / 10
