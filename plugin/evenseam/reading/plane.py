"""Exact plane geometry for checking drawings: corners as whole numbers or fractions, y down, clockwise on the page.

Drawings are scaled until every corner is a pair of whole numbers, so that nearly all of the work is done in integers.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias, Union

Coordinate: TypeAlias = Union[int, Fraction]
Corner: TypeAlias = tuple[Coordinate, Coordinate]
Shape: TypeAlias = tuple[Corner, ...]


def turn(start: Corner, middle: Corner, end: Corner) -> Coordinate:
    """Return twice the area of a triangle: above zero when the way through it turns clockwise on the page."""
    return (middle[0] - start[0]) * (end[1] - start[1]) - (middle[1] - start[1]) * (end[0] - start[0])


def doubled_area(shape: Shape) -> Coordinate:
    """Return twice the area, above zero for a clockwise shape."""
    total: Coordinate = 0
    for (x, y), (next_x, next_y) in zip(shape, (*shape[1:], *shape[:1]), strict=True):
        total += x * next_y - next_x * y
    return total


def edges(shape: Shape) -> tuple[tuple[Corner, Corner], ...]:
    """Return pairs of neighbouring corners."""
    return tuple(zip(shape, (*shape[1:], *shape[:1]), strict=True))


def without_straight_corners(shape: Shape) -> Shape:
    """Return the shape without corners that lie on the straight way between their neighbours."""
    count = len(shape)
    return tuple(
        corner
        for index, corner in enumerate(shape)
        if turn(shape[index - 1], corner, shape[(index + 1) % count]) != 0
        or _points_back(shape[index - 1], corner, shape[(index + 1) % count])
    )


def crossing(shape: Shape) -> tuple[Corner, Corner] | None:
    """Return the first corners of two edges that meet where they should not, or None for a simple shape."""
    sides = edges(shape)
    count = len(sides)
    for first in range(count):
        for second in range(first + 1, count):
            (a, b), (c, d) = sides[first], sides[second]
            are_neighbours = second == first + 1 or (first == 0 and second == count - 1)
            if are_neighbours:
                before, middle, after = (a, b, d) if second == first + 1 else (c, d, b)
                if turn(before, middle, after) == 0 and _points_back(before, middle, after):
                    return a, c
            elif _meet(a, b, c, d):
                return a, c
    return None


def inward_corners(shape: Shape) -> tuple[int, ...]:
    """Return the indices of the corners of a clockwise shape that bend inward."""
    count = len(shape)
    return tuple(i for i in range(count) if turn(shape[i - 1], shape[i], shape[(i + 1) % count]) < 0)


def split(shape: Shape, start: Corner, end: Corner) -> tuple[Shape, Shape]:
    """Cut a convex shape along a line; return what lies to its left and to its right, looking from start to end.

    With y down, the inside of a clockwise shape lies to the right of each of its edges. A part without area is empty.
    """
    left: list[Corner] = []
    right: list[Corner] = []
    sides = [turn(start, end, corner) for corner in shape]
    for index, corner in enumerate(shape):
        following = (index + 1) % len(shape)
        here, there = sides[index], sides[following]
        if here <= 0:
            left.append(corner)
        if here >= 0:
            right.append(corner)
        if (here < 0 < there) or (there < 0 < here):
            share = Fraction(here) / (here - there)
            next_x, next_y = shape[following]
            point = (corner[0] + share * (next_x - corner[0]), corner[1] + share * (next_y - corner[1]))
            left.append(point)
            right.append(point)
    return tuple(left) if _has_area(left) else (), tuple(right) if _has_area(right) else ()


def common(first: Shape, second: Shape) -> Shape:
    """Return what two convex clockwise shapes have in common; empty without area."""
    if are_apart(first, second):
        return ()
    rest = first
    for start, end in edges(second):
        _, rest = split(rest, start, end)
        if not rest:
            break
    return rest


def without(shape: Shape, other: Shape) -> list[Shape]:
    """Return convex shapes that together are the first without the second; both are convex and clockwise."""
    if are_apart(shape, other):
        return [shape]
    kept: list[Shape] = []
    rest = shape
    for start, end in edges(other):
        outside, rest = split(rest, start, end)
        if outside:
            kept.append(outside)
        if not rest:
            break
    return kept


def are_apart(first: Shape, second: Shape) -> bool:
    """Tell whether an edge of one of two convex clockwise shapes separates their insides."""
    return _separates(first, second) or _separates(second, first)


def convex_parts(shape: Shape) -> list[Shape]:
    """Return triangles that make up a simple clockwise shape; the shape itself when it is convex."""
    if not inward_corners(shape):
        return [shape]
    rest = list(shape)
    parts: list[Shape] = []
    while len(rest) > 3:
        count = len(rest)
        for index in range(count):
            before, corner, after = rest[index - 1], rest[index], rest[(index + 1) % count]
            bend = turn(before, corner, after)
            others = [c for c in rest if c not in (before, corner, after)]
            if bend == 0 or (bend > 0 and not any(_is_in_triangle(c, before, corner, after) for c in others)):
                if bend > 0:
                    parts.append((before, corner, after))
                del rest[index]
                break
        else:
            raise AssertionError("every simple shape has an ear")
    return [*parts, tuple(rest)] if _has_area(rest) else parts


def share_edge(first: Shape, second: Shape) -> bool:
    """Tell whether two shapes touch along more than a point."""
    return shared_length(first, second) > 0


def shared_length(first: Shape, second: Shape) -> Coordinate:
    """Return how far two shapes touch along their edges, across and down added up; 0 for a point."""
    return sum(
        max(min(max(a[axis], b[axis]), max(c[axis], d[axis])) - max(min(a[axis], b[axis]), min(c[axis], d[axis])), 0)
        for a, b in edges(first)
        for c, d in edges(second)
        if turn(a, b, c) == 0 == turn(a, b, d)
        for axis in (0, 1)
    )


def convex_pieces(shape: Shape) -> list[Shape]:
    """Return convex shapes that make up a simple clockwise one, by straight cuts: two where one cut is enough.

    Cuts from corner to corner are tried first, so that the pieces have corners that are there already.
    """
    inward = inward_corners(shape)
    if not inward:
        return [shape]
    for first in inward:
        for second in range(len(shape)):
            if (second - first) % len(shape) not in (0, 1, len(shape) - 1):
                halves = _halves(shape, first, second)
                if all(_is_convex(half) for half in halves):
                    return [without_straight_corners(half) for half in halves]
    # One cut for each inward corner, without looking for the fewest: a hint must not take long.
    return [piece for half in _carried_on(shape, inward[0], -1) for piece in convex_pieces(half)]


def _carried_on(shape: Shape, corner: int, neighbour: int) -> tuple[Shape, Shape]:
    """Cut a shape from an inward corner straight on from one of its edges, to where the cut first meets the outline."""
    count = len(shape)
    start, behind = shape[corner], shape[(corner + neighbour) % count]
    nearest: tuple[Coordinate, int, Corner] | None = None
    for index, (a, b) in enumerate(edges(shape)):
        left, right = turn(behind, start, a), turn(behind, start, b)
        if corner in (index, (index + 1) % count) or left == right or left * right > 0:
            continue
        share = Fraction(left) / (left - right)
        hit: Corner = (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))
        far = (start[0] - behind[0]) * (hit[0] - start[0]) + (start[1] - behind[1]) * (hit[1] - start[1])
        if far > 0 and (nearest is None or far < nearest[0]):
            nearest = (far, index, hit)
    assert nearest is not None, "a way into a shape leads out of it again"
    _, index, hit = nearest
    if hit in shape:
        first, second = _halves(shape, corner, shape.index(hit))
    else:
        longer = (*shape[: index + 1], hit, *shape[index + 1 :])
        first, second = _halves(longer, corner if corner <= index else corner + 1, index + 1)
    return without_straight_corners(first), without_straight_corners(second)


def _halves(shape: Shape, first: int, second: int) -> tuple[Shape, Shape]:
    low, high = sorted((first, second))
    return shape[low : high + 1], (*shape[high:], *shape[: low + 1])


def _is_convex(shape: Shape) -> bool:
    return _has_area(shape) and doubled_area(shape) > 0 and not inward_corners(shape) and crossing(shape) is None


def _has_area(shape: Shape | list[Corner]) -> bool:
    return len(shape) > 2 and doubled_area(tuple(shape)) != 0


def _points_back(start: Corner, middle: Corner, end: Corner) -> bool:
    across = (middle[0] - start[0]) * (end[0] - middle[0])
    return across + (middle[1] - start[1]) * (end[1] - middle[1]) < 0


def _separates(shape: Shape, other: Shape) -> bool:
    return any(all(turn(start, end, corner) <= 0 for corner in other) for start, end in edges(shape))


def _meet(a: Corner, b: Corner, c: Corner, d: Corner) -> bool:
    """Tell whether two stretches, ends included, have a point in common."""
    ends = (turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b))
    if (ends[0] > 0) != (ends[1] > 0) and (ends[2] > 0) != (ends[3] > 0) and 0 not in ends:
        return True
    return (
        (ends[0] == 0 and _lies_between(c, a, b))
        or (ends[1] == 0 and _lies_between(d, a, b))
        or (ends[2] == 0 and _lies_between(a, c, d))
        or (ends[3] == 0 and _lies_between(b, c, d))
    )


def _lies_between(point: Corner, a: Corner, b: Corner) -> bool:
    return min(a[0], b[0]) <= point[0] <= max(a[0], b[0]) and min(a[1], b[1]) <= point[1] <= max(a[1], b[1])


def _is_in_triangle(point: Corner, a: Corner, b: Corner, c: Corner) -> bool:
    return turn(a, b, point) >= 0 and turn(b, c, point) >= 0 and turn(c, a, point) >= 0
