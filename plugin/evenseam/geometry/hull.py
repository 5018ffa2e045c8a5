"""The smallest convex shape around exact points, and an outline without its straight corners."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Sequence
from functools import cmp_to_key
from typing import TypeVar

from evenseam.exact import sign
from evenseam.geometry.lattice import Coordinate
from evenseam.geometry.point import Point
from evenseam.geometry.polygon import Polygon

_Pair = tuple[Coordinate, Coordinate]
_T = TypeVar("_T", bound=Hashable)


def convex_hull(points: Iterable[Point]) -> Polygon:
    """Return the convex hull, clockwise on the page, without straight corners. Needs three points not in a line."""
    found = hull_of(points, lambda point: (point.x, point.y))
    if len(found) < 3:
        raise ValueError("points in one line have no outline")
    return Polygon(found)


def hull_of(things: Iterable[_T], at: Callable[[_T], _Pair]) -> tuple[_T, ...]:
    """Return the things whose places are corners of the convex hull, clockwise on the page, leftmost and top first."""

    def compare(first: _T, second: _T) -> int:
        (x, y), (u, v) = at(first), at(second)
        return sign(x - u) or sign(y - v)

    ordered = sorted(set(things), key=cmp_to_key(compare))
    upper = _chain(ordered, at)
    lower = _chain(ordered[::-1], at)
    return tuple(upper[:-1] + lower[:-1]) if len(ordered) > 1 else tuple(ordered)


def _chain(ordered: Sequence[_T], at: Callable[[_T], _Pair]) -> list[_T]:
    chain: list[_T] = []
    for thing in ordered:
        while len(chain) > 1 and _turn(at(chain[-2]), at(chain[-1]), at(thing)) <= 0:
            chain.pop()
        chain.append(thing)
    return chain


def _turn(start: _Pair, middle: _Pair, end: _Pair) -> int:
    return sign((middle[0] - start[0]) * (end[1] - middle[1]) - (middle[1] - start[1]) * (end[0] - middle[0]))


def without_straight_corners(polygon: Polygon) -> Polygon:
    """Return the same shape with repeated corners and corners in the middle of a straight edge left out."""
    corners = list(polygon.corners)
    index = 0
    while index < len(corners) and len(corners) > 2:
        before, here, after = corners[index - 1], corners[index], corners[(index + 1) % len(corners)]
        if sign((here - before).cross(after - here)) == 0:
            del corners[index]
            index = max(0, index - 1)
        else:
            index += 1
    # The first corners were judged while later ones still stood; one more look settles them.
    changed = len(corners) != len(polygon.corners)
    return without_straight_corners(Polygon(tuple(corners))) if changed else polygon
