"""Where in a piece its label has the most room: the middle of the largest circle that fits."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations
from math import isqrt

from evenseam.exact import nearest
from evenseam.geometry import Point, Polygon

_GRID = 1 << 14
"""Places are worked out on a grid this fine: a label need not be placed exactly, only the same way every time."""
_UNIT = 1 << 24


@dataclass(frozen=True, slots=True)
class LabelPlace:
    """A point well inside a convex piece."""

    point: Point
    room: Fraction
    """Distance from the point to the nearest edge, never more than there is."""


@dataclass(frozen=True, slots=True)
class _Side:
    """One edge as an inequality: how far a place is inside it is (across x + down y − level) / _UNIT."""

    across: int
    down: int
    level: int

    def depth(self, x: int, y: int) -> int:
        return self.across * x + self.down * y - self.level


def label_place(piece: Polygon) -> LabelPlace:
    """Return the middle of the largest circle inside a convex piece; where many fit, the middle of their middles.

    The circle touches three edges, so trying every three of them finds it.
    """
    sides = _sides(piece)
    best = 0
    places: set[tuple[int, int]] = set()
    for x, y in _middles(sides):
        depth = min(side.depth(x, y) for side in sides)
        # Places are whole grid steps, so equal circles may differ by a step or two.
        if depth > best + 4 * _UNIT:
            places = {(x, y)}
            best = depth
        elif depth >= best - 4 * _UNIT:
            places.add((x, y))
            best = max(best, depth)
    if not places:
        places = {_middle([(nearest(p.x * _GRID), nearest(p.y * _GRID)) for p in piece.corners])}
    x, y = _middle(places)
    depth = max(0, min(side.depth(x, y) for side in sides))
    # Two grid steps cover what rounding the corners may have moved an edge.
    room = max(0, depth // _UNIT - 2)
    return LabelPlace(Point(Fraction(x, _GRID), Fraction(y, _GRID)), Fraction(room, _GRID))


def _sides(piece: Polygon) -> list[_Side]:
    sides: list[_Side] = []
    for start, end in piece.clockwise().edges:
        x, y = nearest(start.x * _GRID), nearest(start.y * _GRID)
        step_x, step_y = nearest(end.x * _GRID) - x, nearest(end.y * _GRID) - y
        length = isqrt((step_x * step_x + step_y * step_y) << 40)
        if length:
            across, down = ((-step_y * _UNIT) << 20) // length, ((step_x * _UNIT) << 20) // length
            sides.append(_Side(across, down, across * x + down * y))
    return sides


def _middles(sides: list[_Side]) -> Iterable[tuple[int, int]]:
    """Yield the places equally deep inside three edges, for every three."""
    for one, two, three in combinations(sides, 3):
        a, b, c = one.across - two.across, one.down - two.down, one.level - two.level
        d, e, f = one.across - three.across, one.down - three.down, one.level - three.level
        turn = a * e - b * d
        if turn:
            yield (c * e - b * f) // turn, (a * f - c * d) // turn


def _middle(places: Iterable[tuple[int, int]]) -> tuple[int, int]:
    found = sorted(places)
    return sum(x for x, _ in found) // len(found), sum(y for _, y in found) // len(found)
