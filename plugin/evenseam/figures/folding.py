"""Points and polygons mirrored in a straight line: what folding does to cloth."""

from __future__ import annotations

from evenseam.figures.plane import Point, Polygon


def mirrored_point(point: Point, start: Point, end: Point) -> Point:
    """Return where a point comes to lie when the paper is folded on a line."""
    way, there = end - start, point - start
    share = there.dot(way) / way.dot(way)
    foot = start + way.scaled(share, share)
    return Point(2 * foot.x - point.x, 2 * foot.y - point.y)


def mirrored(polygon: Polygon, start: Point, end: Point) -> Polygon:
    """Return a polygon folded over a line."""
    return Polygon(tuple(mirrored_point(corner, start, end) for corner in reversed(polygon.corners)))


def between(one: Point, other: Point, share: float) -> Point:
    """Return the point a share of the way from one to the other."""
    return one + (other - one).scaled(share, share)
