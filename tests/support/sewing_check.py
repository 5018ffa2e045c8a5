"""Checks a pieced block seam by seam with shapely, knowing nothing of how the seams were found."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import combinations
from math import hypot
from typing import TypeAlias

import shapely
from evenseam.geometry import Polygon
from evenseam.pattern import Block
from evenseam.piecing import PiecedBlock, Seam
from shapely.geometry import LineString
from shapely.geometry import Polygon as Shape

NEAR = 1e-9
_Place: TypeAlias = tuple[float, float]


def shape_of(outline: Polygon) -> Shape:
    """Return an outline as a shapely polygon."""
    return Shape([(float(corner.x), float(corner.y)) for corner in outline.corners])


def check_sewing(block: Block, pieced: PiecedBlock) -> None:
    """Sew the block: every seam straight and whole, one part on each side of it, nothing missing, nothing twice."""
    shapes = {piece.id: shape_of(piece.outline) for piece in block.pieces}
    exact = {piece.id: piece.outline.area for piece in block.pieces}
    used = [sewn.piece for section in pieced.sections for sewn in section.pieces]
    assert sorted(used) == sorted(exact), "every piece is in one section"
    assert sum(exact.values()) == block.outline.area
    parts: dict[str, tuple[Shape, frozenset[str]]] = {}
    for section in pieced.sections:
        first, *others = section.pieces
        assert first.seam is None
        whole = shapes[first.piece]
        for sewn in others:
            assert sewn.seam is not None
            whole = _sew(whole, shapes[sewn.piece], sewn.seam)
        assert whole.symmetric_difference(shape_of(section.outline)).area < NEAR
        assert section.outline.signed_area > 0
        assert section.outline.area == sum(exact[sewn.piece] for sewn in section.pieces)
        assert [sewn.label for sewn in section.pieces] == [
            f"{section.name}{n}" for n in range(1, len(section.pieces) + 1)
        ]
        parts[section.name] = whole, frozenset(sewn.piece for sewn in section.pieces)
    for join in pieced.joins:
        one, first_pieces = parts.pop(join.first)
        other, second_pieces = parts.pop(join.second)
        assert frozenset(join.first_pieces) == first_pieces
        assert frozenset(join.second_pieces) == second_pieces
        assert join.makes not in parts
        parts[join.makes] = _sew(one, other, join.seam), first_pieces | second_pieces
    assert len(parts) == 1
    ((whole, pieces),) = parts.values()
    assert pieces == frozenset(exact)
    assert whole.symmetric_difference(shape_of(block.outline)).area < NEAR


def _sew(one: Shape, other: Shape, seam: Seam) -> Shape:
    line = LineString([(float(seam.start.x), float(seam.start.y)), (float(seam.end.x), float(seam.end.y))])
    sides = [_sides(shape.exterior.coords, *line.coords) for shape in (one, other)]
    assert {frozenset(found) for found in sides} == {frozenset({-1}), frozenset({1})}, "one part on each side"
    touching = one.buffer(NEAR).intersection(line).length, other.buffer(NEAR).intersection(line).length
    assert all(abs(length - line.length) < 1e-6 for length in touching), "both edges are the whole seam"
    whole = shapely.union(shapely.set_precision(one, 1e-10), shapely.set_precision(other, 1e-10))
    assert whole.geom_type == "Polygon" and not whole.interiors, "no gap"
    assert abs(whole.area - one.area - other.area) < 1e-7, "nothing twice"
    assert abs(whole.convex_hull.area - whole.area) < 1e-7, "no inward corner is left"
    return whole.convex_hull


def _sides(corners: Iterable[_Place], start: _Place, end: _Place) -> set[int]:
    (x, y), (u, v) = start, end
    across, down = u - x, v - y
    slack = 1e-7 * hypot(across, down)
    depths = [across * (q - y) - down * (p - x) for p, q in corners]
    return {1 if depth > 0 else -1 for depth in depths if abs(depth) > slack}


def fewest_by_trying_everything(shapes: Mapping[int, Shape]) -> int | None:
    """Return the fewest sections by trying every way of parting every set; None when nothing parts some set.

    Two sets can be parted by a straight line when their hulls share no area: no line is ever looked at.
    """
    sewn: dict[frozenset[int], bool] = {}
    counts: dict[frozenset[int], int | None] = {}

    def hull(pieces: Iterable[int]) -> Shape:
        return shapely.convex_hull(shapely.union_all([shapes[piece] for piece in pieces]))

    def can_be_parted(one: frozenset[int], other: frozenset[int]) -> bool:
        return shapely.intersection(hull(one), hull(other)).area < NEAR

    def is_one_section(pieces: frozenset[int]) -> bool:
        if pieces not in sewn:
            sewn[pieces] = len(pieces) == 1 or any(
                can_be_parted(frozenset({piece}), pieces - {piece}) and is_one_section(pieces - {piece})
                for piece in pieces
            )
        return sewn[pieces]

    def fewest(pieces: frozenset[int]) -> int | None:
        if pieces in counts:
            return counts[pieces]
        if is_one_section(pieces):
            counts[pieces] = 1
            return 1
        first, *others = sorted(pieces)
        found: list[int] = []
        for size in range(len(others)):
            for beside in combinations(others, size):
                one = frozenset({first, *beside})
                if can_be_parted(one, pieces - one):
                    counted = fewest(one), fewest(pieces - one)
                    if counted[0] is not None and counted[1] is not None:
                        found.append(counted[0] + counted[1])
        counts[pieces] = min(found, default=None)
        return counts[pieces]

    return fewest(frozenset(shapes))


def can_be_sewn(shapes: Iterable[Shape]) -> bool:
    """Tell whether straight lines open a partition, trying every line through two corners."""
    return _can_be_opened([list(shape.exterior.coords) for shape in shapes])


def _can_be_opened(outlines: list[list[_Place]]) -> bool:
    if len(outlines) < 2:
        return True
    corners = sorted({corner for outline in outlines for corner in outline})
    for start, end in combinations(corners, 2):
        parts: dict[int, list[list[_Place]]] = {-1: [], 1: []}
        for outline in outlines:
            sides = _sides(outline, start, end)
            if len(sides) > 1:
                break
            parts[sides.pop()].append(outline)
        else:
            if parts[-1] and parts[1]:
                return all(_can_be_opened(part) for part in parts.values())
    return False


def fewest_by_opening_every_line(shapes: list[Shape]) -> int | None:
    """Return the fewest sections by opening every line through two corners at every turn; None when locked.

    Good for some twenty pieces: it bounds nothing and prefers nothing.
    """
    corners = sorted({(round(x, 9), round(y, 9)) for shape in shapes for x, y in shape.exterior.coords})
    partings: set[tuple[frozenset[int], frozenset[int], frozenset[int]]] = set()
    for start, end in combinations(corners, 2):
        found = [_sides(shape.exterior.coords, start, end) for shape in shapes]
        left, right = (frozenset(n for n, sides in enumerate(found) if sides == {side}) for side in (-1, 1))
        partings.add((left, right, frozenset(range(len(shapes))) - left - right))
    known: dict[frozenset[int], tuple[bool, int | None]] = {}

    def look(pieces: frozenset[int]) -> tuple[bool, int | None]:
        """Tell whether the pieces are one section, and the fewest sections for them."""
        if len(pieces) == 1:
            return True, 1
        if pieces not in known:
            is_one, counts = False, []
            for left, right, cut in partings:
                one, other = pieces & left, pieces & right
                if pieces & cut or not one or not other:
                    continue
                (one_is_one, one_count), (other_is_one, other_count) = look(one), look(other)
                is_one |= (len(one) == 1 and other_is_one) or (len(other) == 1 and one_is_one)
                if one_count is not None and other_count is not None:
                    counts.append(one_count + other_count)
            known[pieces] = is_one, 1 if is_one else min(counts, default=None)
        return known[pieces]

    return look(frozenset(range(len(shapes))))[1]
