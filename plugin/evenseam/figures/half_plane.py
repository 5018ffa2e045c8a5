"""Polygons cut by a straight line and mirrored in it: what folding does to cloth."""

from __future__ import annotations

from fractions import Fraction

from evenseam.figures.rational import rational_point
from evenseam.geometry import Point, Polygon


def kept_left(polygon: Polygon, start: Point, end: Point) -> Polygon | None:
    """Return the part of a convex polygon to the left of a line seen along it (y down: above a line to the right).

    None when nothing is left of it.
    """
    way = end - start
    corners = [rational_point(corner) for corner in polygon.corners]
    sides = [way.cross(corner - start) for corner in corners]
    kept: list[Point] = []
    for number, corner in enumerate(corners):
        side, next_side = sides[number], sides[(number + 1) % len(corners)]
        if side <= 0:
            kept.append(corner)
        if (side < 0 < next_side) or (next_side < 0 < side):
            share = side / (side - next_side)
            step = corners[(number + 1) % len(corners)] - corner
            kept.append(corner + step.scaled(share, share))
    shape = Polygon(tuple(kept)) if len(kept) > 2 else None
    return shape if shape is not None and shape.area > 0 else None


def mirrored_point(point: Point, start: Point, end: Point) -> Point:
    """Return where a point comes to lie when the paper is folded on a line."""
    way, there = end - start, point - start
    share = there.dot(way) / way.dot(way)
    foot = start + way.scaled(share, share)
    return Point(2 * foot.x - point.x, 2 * foot.y - point.y)


def mirrored(polygon: Polygon, start: Point, end: Point) -> Polygon:
    """Return a polygon folded over a line."""
    return Polygon(tuple(mirrored_point(corner, start, end) for corner in reversed(polygon.corners)))


def between(one: Point, other: Point, share: Fraction) -> Point:
    """Return the point a share of the way from one to the other."""
    return one + (other - one).scaled(share, share)
