"""Pieces with the seam allowance that still stands at the raw edge of a workpiece."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise

from evenseam.figures.plane import NEAR, Point, Polygon, is_on_line


def raw_outline(outline: Polygon, seam: float) -> Polygon:
    """Return a convex clockwise outline moved outward by the seam allowance, with mitred corners.

    Corner for corner: the first corner of the result belongs to the first of the outline.
    """
    outward = [_outward(start, end, seam) for start, end in outline.edges]
    return Polygon(
        tuple(corner + _mitre(outward[number - 1], outward[number]) for number, corner in enumerate(outline.corners))
    )


def with_allowance(pieces: Iterable[Polygon], outline: Polygon, seam: float) -> tuple[Polygon, ...]:
    """Return the pieces of a workpiece with the allowance beyond every edge that lies on its outline.

    Pieces and outline run clockwise.

    ::

        +-----------+        +-------------+
        |   |       |        |    :        |   the piece on the left grows to the left, up and down,
        |   |       |   ->   |    :        |   not to the right, where it is sewn already
        +-----------+        +-------------+

    A seam that ends at the outline runs straight on to the raw edge; where several end in one point, which of them is
    on top is not known here, and one line leads straight out. Together the pieces fill the raw outline.
    """
    grown = list(pieces)
    edging = _edging(outline, seam)
    touching = [number for number, piece in enumerate(grown) if edging.may_touch(piece)]
    sides = [[edging.edge_of(start, end) for start, end in grown[number].edges] for number in touching]
    _find_leads(edging, [grown[number] for number in touching], sides)
    for number, on_edge in zip(touching, sides, strict=True):
        grown[number] = _grown(grown[number], on_edge, edging)
    return tuple(grown)


@dataclass(slots=True)
class _Edging:
    """The outline of a workpiece and its raw edge."""

    outline: Polygon
    border: tuple[Point, ...]
    """Its corners."""
    raw: tuple[Point, ...]
    is_upright: bool
    """True for an upright rectangle: most workpieces are, and what lies where is told without any sums."""
    leads: dict[tuple[Point, int], Point] = field(default_factory=dict)
    """Where a seam that ends at a point of an edge meets the raw edge."""

    def may_touch(self, piece: Polygon) -> bool:
        """Tell whether a piece may reach the outline; False is certain."""
        if not self.is_upright:
            return True
        left, top, right, bottom = self.outline.bounds
        return any(c.x == left or c.x == right or c.y == top or c.y == bottom for c in piece.corners)

    def edge_of(self, start: Point, end: Point) -> int | None:
        """Return the number of the outline's edge that an edge of a piece lies on."""
        if self.is_upright and start.x != end.x and start.y != end.y:
            return None
        for number, (first, last) in enumerate(self.outline.edges):
            if self._is_on(start, first, last) and self._is_on(end, first, last):
                return number
        return None

    def edges_at(self, point: Point) -> list[int]:
        """Return the edges of the outline that a point lies on: two at its corners."""
        return [n for n, (first, last) in enumerate(self.outline.edges) if self._is_on(point, first, last)]

    def _is_on(self, point: Point, first: Point, last: Point) -> bool:
        if self.is_upright:
            return point.x == first.x if first.x == last.x else point.y == first.y
        return is_on_line(point, first, last)

    def raised(self, corner: Point, edge: int) -> Point:
        """Return where a corner of a piece on an edge of the outline comes to lie on the raw edge."""
        lead = self.leads.get((corner, edge))
        return lead if lead is not None else self.straight_out(corner, edge)

    def straight_out(self, corner: Point, edge: int) -> Point:
        """Return the point of the raw edge straight out from a point of the outline; at a corner, its mitre."""
        after = (edge + 1) % len(self.border)
        if corner == self.border[edge]:
            return self.raw[edge]
        if corner == self.border[after]:
            return self.raw[after]
        if self.is_upright:
            is_level = self.border[edge].y == self.border[after].y
            return Point(corner.x, self.raw[edge].y) if is_level else Point(self.raw[edge].x, corner.y)
        way = self.border[after] - self.border[edge]
        return self.meeting(corner, Point(way.y, -way.x), edge)

    def meeting(self, corner: Point, way: Point, edge: int) -> Point:
        """Return where a line from a point in some direction meets the raw edge."""
        raw_way = self.raw[(edge + 1) % len(self.raw)] - self.raw[edge]
        share = (self.raw[edge] - corner).cross(raw_way) / way.cross(raw_way)
        return corner + way.scaled(share, share)


def _edging(outline: Polygon, seam: float) -> _Edging:
    corners = outline.corners
    pairs = zip(corners, (*corners[1:], corners[0]), strict=True)
    is_upright = len(corners) == 4 and all(one.x == other.x or one.y == other.y for one, other in pairs)
    raw = _larger(outline, seam) if is_upright else raw_outline(outline, seam)
    return _Edging(outline, corners, raw.corners, is_upright)


def _larger(outline: Polygon, seam: float) -> Polygon:
    """Return an upright rectangle larger by the seam allowance all round, corner for corner."""
    left, top, _, _ = outline.bounds
    return Polygon(
        tuple(
            Point(
                corner.x - seam if corner.x == left else corner.x + seam,
                corner.y - seam if corner.y == top else corner.y + seam,
            )
            for corner in outline.corners
        )
    )


def _grown(piece: Polygon, on_edge: list[int | None], edging: _Edging) -> Polygon:
    if all(edge is None for edge in on_edge):
        return piece
    grown: list[Point] = []
    for number, corner in enumerate(piece.corners):
        before, after = on_edge[number - 1], on_edge[number]
        here = [edging.raised(corner, edge) for edge in (before, after) if edge is not None]
        if before is None:
            here = [corner, *here]
        if after is None:
            here = [*here, corner]
        grown += here
    return Polygon(tuple(point for number, point in enumerate(grown) if point != grown[number - 1]))


def _find_leads(edging: _Edging, pieces: list[Polygon], sides: list[list[int | None]]) -> None:
    """Find where seams that end at the outline meet the raw edge, and note those that may run straight on."""
    ways: dict[Point, list[Point]] = {}
    for piece, on_edge in zip(pieces, sides, strict=True):
        for number, corner in enumerate(piece.corners):
            before, after = on_edge[number - 1], on_edge[number]
            if before is not None and after is not None:
                continue
            if before is None and after is None and not edging.edges_at(corner):
                continue
            found = ways.setdefault(corner, [])
            if before is None:
                _add_way(found, corner - piece.corners[number - 1])
            if after is None:
                _add_way(found, corner - piece.corners[(number + 1) % len(piece.corners)])
    slanting = {spot: found for spot, found in ways.items() if not edging.is_upright or not _is_square(found)}
    for edge in range(len(edging.border)):
        _lead_along(edging, edge, slanting, ways)


def _is_square(ways: list[Point]) -> bool:
    """Tell whether there is one seam and it runs level or upright: it leads straight out anyway."""
    return len(ways) == 1 and (ways[0].x == 0 or ways[0].y == 0)


def _add_way(ways: list[Point], way: Point) -> None:
    if all(abs(way.cross(known)) > NEAR * (abs(way.x) + abs(way.y)) for known in ways):
        ways.append(way)


def _lead_along(edging: _Edging, edge: int, slanting: dict[Point, list[Point]], ways: dict[Point, list[Point]]) -> None:
    """Note the leads of one edge; a seam may stray less than half way to the next one, so that none cross."""
    if not any(edge in edging.edges_at(spot) for spot in slanting):
        return
    count = len(edging.border)
    start, end = edging.border[edge], edging.border[(edge + 1) % count]
    along = end - start
    long = along.length
    unit = Point(along.x / long, along.y / long)
    # Rounded, so that the two ends are met and not missed by a hair.
    spots = {round(unit.dot(spot - start), 6): spot for spot in ways if edge in edging.edges_at(spot)}
    marks = sorted({0.0, round(long, 6), *spots})
    for number, mark in enumerate(marks):
        if mark not in spots or number in (0, len(marks) - 1) or len(ways[spots[mark]]) != 1:
            continue
        corner, way = spots[mark], ways[spots[mark]][0]
        if abs(way.cross(along)) <= NEAR * long:
            continue
        meeting = edging.meeting(corner, way, edge)
        straying = abs(unit.dot(meeting - corner))
        nearest = min(after - before for before, after in pairwise(marks[number - 1 : number + 2]))
        if straying < nearest * 0.45:
            edging.leads[(spots[mark], edge)] = meeting


def _outward(start: Point, end: Point, width: float) -> Point:
    way = end - start
    long = way.length
    return Point(way.y * width / long, -way.x * width / long)


def _mitre(before: Point, after: Point) -> Point:
    """Return the step from a corner to where the two moved edges meet."""
    both = before + after
    share = 2 * before.dot(before) / both.dot(both)
    return both.scaled(share, share)
