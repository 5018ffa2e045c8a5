"""Flat shapes on the table: outlines joined along one whole straight side, in exact numbers.

Written for the simulator alone, so that it does not inherit a fault of the geometry that planned the cuts.
An outline is a tuple of corners (x, y), x to the right and y down, clockwise, without straight corners.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import TypeAlias

from evenseam.exact import Number, sign

Spot: TypeAlias = tuple[Number, Number]
Outline: TypeAlias = tuple[Spot, ...]


def outline(corners: Iterable[Spot]) -> Outline | None:
    """Return the corners as a convex outline; None when they are no convex polygon with an area."""
    spots = _without_straight_corners(list(corners))
    if len(spots) < 3:
        return None
    turns = {_turn(spots[index - 2], spots[index - 1], spots[index]) for index in range(len(spots))}
    if len(turns) != 1 or _reversals(spots) > 2:
        return None
    return tuple(spots) if turns == {1} else tuple(reversed(spots))


def sides(shape: Outline) -> tuple[tuple[Spot, Spot], ...]:
    """Return the sides as pairs of corners, clockwise."""
    return tuple(zip(shape, (*shape[1:], shape[0]), strict=True))


def common_side(first: Outline, second: Outline) -> tuple[Spot, Spot] | None:
    """Return the side of the first that is, whole, also a side of the second with the second on its other side."""
    reverse = {(end, start) for start, end in sides(second)}
    for side in sides(first):
        if side in reverse:
            return side
    return None


def sewn(first: Outline, second: Outline, side: tuple[Spot, Spot]) -> Outline | None:
    """Return both as one shape; None when an inward corner would be left that no straight seam can fill.

    Two convex shapes on opposite sides of a common side cannot overlap, so there is nothing else to check.
    """
    start, end = side
    one = _starting_with(first, end)
    other = _starting_with(second, start)
    return outline((*one, *other[1:-1]))


def touching_sides(first: Outline, second: Outline) -> tuple[tuple[Spot, Spot], tuple[Spot, Spot]] | None:
    """Return a side of each that lie on one line and overlap in part: what a maker would try to sew together."""
    for start, end in sides(first):
        for opposite_end, opposite_start in sides(second):
            on_line = _turn(start, end, opposite_start) == 0 and _turn(start, end, opposite_end) == 0
            if on_line and _overlap(start, end, opposite_start, opposite_end):
                return (start, end), (opposite_end, opposite_start)
    return None


def scaled(shape: Outline, across: Number, down: Number) -> Outline:
    """Return the shape with x and y multiplied."""
    return tuple((x * across, y * down) for x, y in shape)


def box(shape: Outline) -> tuple[Number, Number, Number, Number]:
    """Return left, top, right, bottom."""
    xs, ys = [x for x, _ in shape], [y for _, y in shape]
    return least(xs), least(ys), most(xs), most(ys)


def upright_size(shape: Outline) -> tuple[Number, Number] | None:
    """Return width and height of an upright rectangle; None for any other shape."""
    left, top, right, bottom = box(shape)
    if len(shape) == 4 and set(shape) == {(left, top), (right, top), (right, bottom), (left, bottom)}:
        return right - left, bottom - top
    return None


def spread(shape: Outline, along: Spot) -> tuple[Number, Number, Number]:
    """Return how far the shape reaches along a direction and square to it, both times the direction's length, and
    that length squared. Keeping the length squared avoids a square root for every slanted seam.
    """
    dx, dy = along
    forward = [x * dx + y * dy for x, y in shape]
    square = [y * dx - x * dy for x, y in shape]
    return most(forward) - least(forward), most(square) - least(square), dx * dx + dy * dy


def least(numbers: list[Number]) -> Number:
    """Return the smallest of some exact numbers."""
    found = numbers[0]
    for number in numbers[1:]:
        if number < found:
            found = number
    return found


def most(numbers: list[Number]) -> Number:
    """Return the largest of some exact numbers."""
    found = numbers[0]
    for number in numbers[1:]:
        if number > found:
            found = number
    return found


def same_shape(first: Outline, second: Outline) -> bool:
    """Tell whether two outlines are one, wherever their corners start."""
    return first[0] in second and _starting_with(second, first[0]) == first


def _turn(start: Spot, middle: Spot, end: Spot) -> int:
    return sign((middle[0] - start[0]) * (end[1] - middle[1]) - (middle[1] - start[1]) * (end[0] - middle[0]))


def _without_straight_corners(spots: list[Spot]) -> list[Spot]:
    kept: list[Spot] = []
    distinct = [spot for index, spot in enumerate(spots) if spot != spots[index - 1]]
    for index, spot in enumerate(distinct):
        before, after = distinct[index - 1], distinct[(index + 1) % len(distinct)]
        if _turn(before, spot, after) != 0:
            kept.append(spot)
        elif _goes_back(before, spot, after):
            return []
    return kept


def _goes_back(start: Spot, middle: Spot, end: Spot) -> bool:
    """Tell whether a side runs back over the one before it: a spike, which no piece of cloth has."""
    forward = (middle[0] - start[0]) * (end[0] - middle[0]) + (middle[1] - start[1]) * (end[1] - middle[1])
    return sign(forward) < 0


def _reversals(spots: list[Spot]) -> int:
    """Count how often the way round changes between rightward and leftward: twice for a convex shape, more for a
    star whose corners all turn one way.
    """
    ways = [sign(spots[index][0] - spots[index - 1][0]) for index in range(len(spots))]
    ways = [way for way in ways if way != 0]
    return sum(1 for index, way in enumerate(ways) if way != ways[index - 1])


def _starting_with(shape: Outline, spot: Spot) -> Outline:
    index = shape.index(spot)
    return shape[index:] + shape[:index]


def _overlap(start: Spot, end: Spot, other_start: Spot, other_end: Spot) -> bool:
    dx, dy = end[0] - start[0], end[1] - start[1]

    def along(spot: Spot) -> Number:
        return (spot[0] - start[0]) * dx + (spot[1] - start[1]) * dy

    length = dx * dx + dy * dy
    low = most([Fraction(0), least([along(other_start), along(other_end)])])
    high = least([length, most([along(other_start), along(other_end)])])
    return sign(high - low) > 0
