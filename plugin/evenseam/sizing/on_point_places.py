"""Where the pieces of blocks on point lie in the finished top: blocks, sashing and triangles, cut off at its edge.

Places are first counted as the rows are sewn, along a row and from row to row, and then turned by 45 degrees. What lies
at the edge is laid out longer than it is and cut off there, as a maker does.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from evenseam.exact import Number, sign, square_root
from evenseam.geometry import Point, Polygon, split_convex
from evenseam.pattern import BlockPosition, Project, Sashing
from evenseam.sizing.on_point import DiagonalRow, OnPointCentre, SashingRow, triangles_of
from evenseam.sizing.sized import Placed
from evenseam.sizing.standing_shapes import stand

_HALF_ROOT = square_root(2) / 2


@dataclass(frozen=True, slots=True)
class _Frame:
    """The lattice of the blocks on the finished top."""

    centre: OnPointCentre
    origin: Point
    """On the page, where column 0 and row 0 of the lattice begin."""
    step: Number
    """From column to column and from row to row."""
    sash: Number
    edge: Polygon
    """The finished edge of the centre on the page."""
    far: Number
    """Further than any edge."""

    def at(self, along: Number, down: Number) -> Point:
        """Return a place on the page."""
        return self.origin + _turned(Point(along, down))

    def strip(self, left: Number, top: Number, right: Number, bottom: Number) -> Polygon | None:
        """Return a strip along a row, or as much of it as lies in the top."""
        corners = ((left, top), (right, top), (right, bottom), (left, bottom))
        return _cut_off(Polygon(tuple(self.at(*corner) for corner in corners)), self.edge)


def place_on_point(project: Project, centre: OnPointCentre, corner: Point) -> list[Placed]:
    """Return the pieces of the centre; `corner` is its top left corner on the page."""
    frame = _frame(project, centre, corner)
    return [*_blocks(project, frame), *_sashing(frame), *_triangles(project, frame)]


def _turned(point: Point) -> Point:
    """Turn a place by 45 degrees anticlockwise: along a row is to the upper right, from row to row the lower right."""
    return Point((point.x + point.y) * _HALF_ROOT, (point.y - point.x) * _HALF_ROOT)


def _frame(project: Project, centre: OnPointCentre, corner: Point) -> _Frame:
    seams, sashing = 2 * project.seam_allowance.value, centre.sashing
    sash: Number = sashing.width.value if sashing else seams * 0
    frame = sash if sashing and sashing.is_around else seams * 0
    # The upper left block touches the edges with its left and its top corner, or its frame of sashing does.
    inward = Point(
        centre.float_width.value + frame * _HALF_ROOT,
        centre.float_height.value + (centre.block.value + frame) * _HALF_ROOT,
    )
    edge = Polygon.rectangle(corner.x, corner.y, centre.width.value - seams, centre.height.value - seams)
    return _Frame(
        centre, corner + inward, centre.block.value + sash, sash, edge, centre.width.value + centre.height.value
    )


def _blocks(project: Project, frame: _Frame) -> Iterator[Placed]:
    shapes: dict[BlockPosition, tuple[tuple[str, Polygon], ...]] = {}
    for row in frame.centre.rows:
        for number, position in enumerate(row.positions):
            if position not in shapes:
                shapes[position] = tuple(
                    (fabric, Polygon(tuple(_turned(corner) for corner in outline.corners)))
                    for fabric, outline in stand(project.block(position.block), position)
                )
            place = frame.at((row.first + number) * frame.step, row.number * frame.step)
            line, at = row.places[number]
            for fabric, outline in shapes[position]:
                yield Placed(outline.moved(place), fabric, f"block:{position.block}", line, at)


def _sashing(frame: _Frame) -> Iterator[Placed]:
    sashing, step, sash = frame.centre.sashing, frame.step, frame.sash
    if sashing is None:
        return
    block, outer = step - sash, 1 if sashing.is_around else 0
    found: list[tuple[Polygon | None, bool]] = []
    for row in frame.centre.rows:
        top = row.number * step
        for column in range(row.first + 1 - outer, row.last + 1 + outer):
            found.append((frame.strip(column * step - sash, top, column * step, top + block), False))
    for between in frame.centre.sashing_rows:
        bottom = between.number * step
        pieces = _along(between, step, sash, sashing)
        for number, (left, right, is_stone) in enumerate(pieces):
            start = left - frame.far if number == 0 else left
            end = right + frame.far if number == len(pieces) - 1 else right
            found.append((frame.strip(start, bottom - sash, end, bottom), is_stone))
    for outline, is_stone in found:
        if outline is not None:
            fabric = sashing.cornerstone_fabric or sashing.fabric if is_stone else sashing.fabric
            yield Placed(outline, fabric, "cornerstone" if is_stone else "sashing")


def _along(row: SashingRow, step: Number, sash: Number, sashing: Sashing) -> list[tuple[Number, Number, bool]]:
    """Return start and end of the pieces of a row of sashing, in order, and whether each is a cornerstone."""
    first, last = row.first * step, row.last * step + step - sash
    if sashing.cornerstone_fabric is None:
        return [(first, last, False)]
    pieces: list[tuple[Number, Number, bool]] = [(first - sash, first, True)] if sashing.is_around else []
    for column in range(row.first, row.last + 1):
        pieces += [
            (column * step, (column + 1) * step - sash, False),
            ((column + 1) * step - sash, (column + 1) * step, True),
        ]
    return pieces if sashing.is_around else pieces[:-1]


def _triangles(project: Project, frame: _Frame) -> Iterator[Placed]:
    triangles, rows, far = triangles_of(project), frame.centre.rows, frame.far
    framed = frame.sash if frame.centre.sashing and frame.centre.sashing.is_around else frame.sash * 0
    block = frame.step - frame.sash

    def ends(row: DiagonalRow) -> tuple[Number, Number]:
        return row.first * frame.step - framed, row.last * frame.step + block + framed

    found: list[tuple[Polygon | None, bool]] = []
    top, bottom = rows[0].number * frame.step - framed, rows[-1].number * frame.step + block + framed
    found.append((frame.strip(-far, top - far, far, top), True))
    for row in rows:
        start, end = ends(row)
        above = row.number * frame.step
        found.append((frame.strip(start - far, above, start, above + block), row.start_is_corner))
        found.append((frame.strip(end, above, end + far, above + block), row.end_is_corner))
    found.append((frame.strip(-far, bottom, far, bottom + far), True))
    for outline, is_corner in found:
        if outline is not None:
            fabric = triangles.corner_fabric if is_corner else triangles.fabric
            yield Placed(outline, fabric, "corner triangle" if is_corner else "setting triangle")


def _cut_off(outline: Polygon, edge: Polygon) -> Polygon | None:
    """Return what of a convex shape lies inside the edge, an upright rectangle; None when nothing does."""
    left_top, _, right_bottom, _ = edge.corners
    for number, (start, end) in enumerate(edge.edges):
        inward = [_inward(number, corner, left_top, right_bottom) for corner in outline.corners]
        if max(inward) <= 0:
            return None
        if min(inward) < 0:
            parts = split_convex(outline, start, end)
            outline = parts[1] if parts else outline
    return outline


def _inward(side: int, place: Point, left_top: Point, right_bottom: Point) -> int:
    """Return on which side of an edge a place lies: 1 inside, 0 on it; edges are top, right, bottom and left."""
    match side:
        case 0:
            return sign(place.y - left_top.y)
        case 1:
            return sign(right_bottom.x - place.x)
        case 2:
            return sign(right_bottom.y - place.y)
    return sign(place.x - left_top.x)
