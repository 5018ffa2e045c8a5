"""A convex outline cut in two by a straight line, exactly."""

from __future__ import annotations

from evenseam.exact import Number, sign
from evenseam.geometry.hull import without_straight_corners
from evenseam.geometry.point import Point
from evenseam.geometry.polygon import Polygon


def split_convex(outline: Polygon, start: Point, end: Point) -> tuple[Polygon, Polygon] | None:
    """Return the parts to the left and to the right of the line from `start` to `end`, as it is walked on the page.

    None when the line does not pass through the inside.
    """
    direction = end - start
    sides = [direction.cross(corner - start) for corner in outline.corners]
    left: list[Point] = []
    right: list[Point] = []
    corners = outline.corners
    for index, corner in enumerate(corners):
        after = (index + 1) % len(corners)
        side, next_side = sign(sides[index]), sign(sides[after])
        if side <= 0:
            left.append(corner)
        if side >= 0:
            right.append(corner)
        if side * next_side < 0:
            share = sides[index] / (sides[index] - sides[after])
            crossing = _between(corner, corners[after], share)
            left.append(crossing)
            right.append(crossing)
    if not any(sign(side) < 0 for side in sides) or not any(sign(side) > 0 for side in sides):
        return None
    return without_straight_corners(Polygon(tuple(left))), without_straight_corners(Polygon(tuple(right)))


def _between(start: Point, end: Point, share: Number) -> Point:
    step = end - start
    return start + step.scaled(share, share)
