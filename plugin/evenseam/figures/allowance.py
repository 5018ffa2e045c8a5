"""Pieces with the seam allowance that still stands at the raw edge of a workpiece."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from evenseam.exact import Number, sign
from evenseam.figures.rational import length_of, rational, rational_point
from evenseam.geometry import Point, Polygon


def raw_outline(outline: Polygon, seam: Number) -> Polygon:
    """Return a convex clockwise outline moved outward by the seam allowance, with mitred corners.

    Corner for corner: the first corner of the result belongs to the first of the outline.
    """
    corners = tuple(rational_point(corner) for corner in outline.corners)
    width = rational(seam)
    outward = [_outward(start, end, width) for start, end in zip(corners, (*corners[1:], corners[0]), strict=True)]
    moved = []
    for number, corner in enumerate(corners):
        before, after = outward[number - 1], outward[number]
        moved.append(corner + _mitre(before, after))
    return Polygon(tuple(moved))


def with_allowance(piece: Polygon, outline: Polygon, seam: Number) -> Polygon:
    """Return a piece of a workpiece with the allowance beyond each of its edges that lies on the outline.

    ::

        +-----------+        +-------------+
        |   |       |        |    :        |   the piece on the left grows to the left, up and down,
        |   |       |   ->   |    :        |   not to the right, where it is sewn already
        +-----------+        +-------------+
    """
    turned = piece.clockwise()
    if _is_upright_rectangle(outline):
        corners, on_edge, raised = _on_rectangle(turned, outline, seam)
    else:
        raw = raw_outline(outline, seam)
        corners = tuple(rational_point(corner) for corner in turned.corners)
        border = tuple(rational_point(corner) for corner in outline.corners)
        on_edge = [_edge_of(start, end, outline) for start, end in turned.edges]

        def raised(corner: Point, edge: int) -> Point:
            return _raised(corner, edge, border, raw)

    if all(edge is None for edge in on_edge):
        return piece
    grown: list[Point] = []
    for number, corner in enumerate(corners):
        before, after = on_edge[number - 1], on_edge[number]
        here = [raised(corner, edge) for edge in (before, after) if edge is not None]
        if before is None:
            here = [corner, *here]
        if after is None:
            here = [*here, corner]
        grown += here
    kept = [point for number, point in enumerate(grown) if point != grown[number - 1]]
    return Polygon(tuple(kept))


def _is_upright_rectangle(outline: Polygon) -> bool:
    corners = outline.corners
    return len(corners) == 4 and all(
        one.x == other.x or one.y == other.y for one, other in zip(corners, (*corners[1:], corners[0]), strict=True)
    )


def _on_rectangle(
    piece: Polygon, outline: Polygon, seam: Number
) -> tuple[tuple[Point, ...], list[int | None], Callable[[Point, int], Point]]:
    """Return corners, the sides its edges lie on, and how a corner rises: much quicker, and most work is rectangles."""
    left, top, right, bottom = outline.bounds

    def side(start: Point, end: Point) -> int | None:
        if start.y == end.y:
            return 0 if start.y == top else 2 if start.y == bottom else None
        if start.x == end.x:
            return 1 if start.x == right else 3 if start.x == left else None
        return None

    def raised(corner: Point, edge: int) -> Point:
        x, y = corner.x, corner.y
        # At a corner of the outline both ways lead outward.
        x = left - seam if x == left else right + seam if x == right else x
        y = top - seam if y == top else bottom + seam if y == bottom else y
        return Point(x, y)

    return piece.corners, [side(start, end) for start, end in piece.edges], raised


def _edge_of(start: Point, end: Point, outline: Polygon) -> int | None:
    """Return the number of the outline's edge that an edge of a piece lies on."""
    for number, (first, last) in enumerate(outline.edges):
        way = last - first
        if sign(way.cross(start - first)) == 0 and sign(way.cross(end - first)) == 0:
            return number
    return None


def _raised(corner: Point, edge: int, border: tuple[Point, ...], raw: Polygon) -> Point:
    first, last = border[edge], border[(edge + 1) % len(border)]
    if corner == first:
        return raw.corners[edge]
    if corner == last:
        return raw.corners[(edge + 1) % len(border)]
    raw_first, raw_last = raw.corners[edge], raw.corners[(edge + 1) % len(border)]
    way, width = last - first, raw_last - raw_first
    # Straight out from the corner: drop it on the raw edge along the outline's normal.
    normal = Point(way.y, -way.x)
    distance = (raw_first - corner).cross(width) / normal.cross(width)
    return corner + normal.scaled(distance, distance)


def _outward(start: Point, end: Point, width: Fraction) -> Point:
    way = end - start
    long = length_of(way)
    return Point(way.y * width / long, -way.x * width / long)


def _mitre(before: Point, after: Point) -> Point:
    """Return the step from a corner to where the two moved edges meet."""
    both = before + after
    share = 2 * before.dot(before) / both.dot(both)
    return both.scaled(share, share)
