r"""Diagonal rows of a top set on point: a row with its triangles, and where every row lies in the top.

A row lies across, as it does with the page turned by 45 degrees clockwise; `on_page` turns it back.

::

      ,+---+---+.       start and end: the right angle of a setting triangle is level with the edge that
     / |   |   | \      has the longer neighbour; a corner triangle has its tip in the middle
    /--+---+---+--\
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from math import sqrt

from evenseam.figures.plane import NEAR, Point, Polygon, convex_hull, decimal
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import AddSettingTriangles, Arrangement, Cut, JoinDiagonalRows
from evenseam.sheet import PatternSheet

_ROOT = sqrt(2)


class Ending(Enum):
    """What fills an end of a row."""

    CORNER = "corner triangle"
    BELOW = "setting triangle, its right angle at the lower edge"
    ABOVE = "setting triangle, its right angle at the upper edge"


def endings(arrangement: Arrangement, number: int) -> tuple[Ending, Ending]:
    """Return what fills the start and the end of a diagonal row."""
    return _ending(number, arrangement.rows.whole), _ending(number, arrangement.columns.whole)


def _ending(number: int, along: int) -> Ending:
    if number == along - 1:
        return Ending.CORNER
    return Ending.BELOW if number < along - 1 else Ending.ABOVE


@dataclass(frozen=True, slots=True)
class EndShape:
    """A triangle at the left end of a row, cut level with the edges of the row; its seam with the row is at x = 0."""

    finished: Polygon
    """Within its seam lines."""
    shown: Polygon
    """Out to its raw edge, where that is an edge of the top."""


def end_shape(cut: Cut, ending: Ending, height: float, seam: float) -> EndShape:
    """Return the triangle cut from a square, sewn to a row of this finished height."""
    raw = decimal(cut.width.value) / _ROOT
    if ending is Ending.CORNER:
        # From the seam line to the tip: what the seams at the long side and round the right angle leave.
        return EndShape(_tip(raw - (1 + _ROOT) * seam, height), _tip(raw - seam, height))
    flip = ending is Ending.ABOVE
    return EndShape(
        _side(raw - (2 + _ROOT) * seam, height, is_flipped=flip), _side(raw - 2 * seam, height, is_flipped=flip)
    )


def mirrored(shape: Polygon, width: float) -> Polygon:
    """Return a shape at the left end as it lies at the right end of a row of this width."""
    return Polygon(tuple(Point(width - corner.x, corner.y) for corner in reversed(shape.corners)))


def with_triangles(name: str, row: Workpiece, start: EndShape, end: EndShape, fabrics: tuple[str, str]) -> Workpiece:
    """Return a row with a triangle at either end; the left edge of the row itself stays at x = 0."""
    left, right = start.finished, mirrored(end.finished, row.width)
    patches = (*row.patches, Patch(left, fabrics[0], part="setting"), Patch(right, fabrics[1], part="setting"))
    outline = convex_hull(corner for shape in (left, row.outline, right) for corner in shape.corners)
    return Workpiece(name, patches, outline, row.seam)


def _tip(reach: float, height: float) -> Polygon:
    half = height / 2
    side = max(reach - half, 0.0)
    corners = [Point(0.0, height), Point(-side, height), Point(-reach, half), Point(-side, 0.0), Point(0.0, 0.0)]
    return Polygon(tuple(corners if side > NEAR else [corners[0], corners[2], corners[4]]))


def _side(reach: float, height: float, *, is_flipped: bool) -> Polygon:
    over = reach - height
    corners = [Point(0.0, height), Point(-reach, height)]
    corners += [Point(-over, 0.0), Point(0.0, 0.0)] if over > NEAR else [Point(0.0, -over)]
    if is_flipped:
        corners = [Point(corner.x, height - corner.y) for corner in reversed(corners)]
    return Polygon(tuple(corners))


@dataclass(frozen=True, slots=True)
class Band:
    """A row of blocks with its triangles, or a row of sashing, where it lies in the top."""

    pieces: tuple[tuple[str, Polygon], ...]
    """Fabric and outline, as the rows lie across: x along the row, y from row to row."""
    row: int | None
    """The number of the diagonal row; None for sashing and for the first and last corner triangle."""


def bands(sheet: PatternSheet, operation: JoinDiagonalRows, table: dict[str, Workpiece]) -> tuple[Band, ...]:
    """Return everything a top is joined from, from its top left corner to the bottom right one."""
    sized, arrangement = sheet.sized, sheet.project.arrangement
    seam, sashing = decimal(sheet.project.seam_allowance.value), arrangement.sashing
    block = decimal(sheet.project.block(arrangement.positions[0][0].block).width.value)
    gap = decimal(sashing.width.value) if sashing and "sashing_width" in dict(sized.figures) else 0.0
    frame = gap if sashing and sashing.is_around else 0.0
    rows, columns = arrangement.rows.whole, arrangement.columns.whole
    steps = {step.makes: step.operation for step in sheet.program.steps}
    found: list[Band] = []
    number = 0
    for name in operation.rows:
        made = steps.get(name)
        if isinstance(made, AddSettingTriangles):
            first = -made.number if made.number < rows else made.number - 2 * (rows - 1)
            left, top = first * (block + gap) - frame, made.number * (block + gap)
            found.append(Band(_row_pieces(sheet, made, table[made.row], seam, Point(left, top)), made.number))
            number = made.number + 1
            continue
        work = table[name]
        starts = [
            -at if at < rows else at - 2 * (rows - 1) for at in (number - 1, number) if 0 <= at < rows + columns - 1
        ]
        ends = [
            at if at < columns else 2 * columns - 2 - at for at in (number - 1, number) if 0 <= at < rows + columns - 1
        ]
        # Its longer ends reach out alike at both sides of the blocks it lies along.
        middle = (min(starts) + max(ends) + 1) * (block + gap) / 2 - gap / 2
        step = Point(middle - work.width / 2, number * (block + gap) - gap)
        found.append(Band(tuple((patch.fabric, patch.outline.moved(step)) for patch in work.patches), None))
    corner = sheet.cuts.cut(operation.corner)
    return _with_corners(
        found, corner, block, frame, gap, seam, rows + columns - 1, 2 * columns - 2 - (rows + columns - 2)
    )


def _row_pieces(
    sheet: PatternSheet, operation: AddSettingTriangles, row: Workpiece, seam: float, step: Point
) -> tuple[tuple[str, Polygon], ...]:
    row = row.turned(operation.quarter_turns)
    start, end = endings(sheet.project.arrangement, operation.number)
    first, last = sheet.cuts.cut(operation.start), sheet.cuts.cut(operation.end)
    left = end_shape(first, start, row.height, seam).shown
    right = mirrored(end_shape(last, end, row.height, seam).shown, row.width)
    pieces = [(patch.fabric, patch.outline) for patch in row.patches]
    pieces += [(first.material, left), (last.material, right)]
    return tuple((fabric, outline.moved(step)) for fabric, outline in pieces)


def _with_corners(
    found: list[Band], cut: Cut, block: float, frame: float, gap: float, seam: float, rows: int, last: int
) -> tuple[Band, ...]:
    """Add the triangles of the top left and the bottom right corner: their long sides lie along the first row and the
    last one, middle to middle.
    """
    reach = decimal(cut.width.value) / _ROOT - seam
    first = block / 2
    above = Polygon((Point(first - reach, -frame), Point(first, -frame - reach), Point(first + reach, -frame)))
    middle, edge = last * (block + gap) + block / 2, (rows - 1) * (block + gap) + block + frame
    below = Polygon((Point(middle + reach, edge), Point(middle, edge + reach), Point(middle - reach, edge)))
    return (Band(((cut.material, above),), None), *found, Band(((cut.material, below),), None))


def on_page(outline: Polygon) -> Polygon:
    """Turn what lies across by 45 degrees anticlockwise, as it lies in the finished top."""
    return Polygon(tuple(point_on_page(corner) for corner in outline.corners))


def point_on_page(point: Point) -> Point:
    """Turn a place by 45 degrees anticlockwise."""
    return Point((point.x + point.y) / _ROOT, (point.y - point.x) / _ROOT)


def cut_off(outline: Polygon, window: Polygon) -> Polygon | None:
    """Return what of a convex shape lies inside an upright window; None when nothing does."""
    corners = list(outline.corners)
    for start, end in window.edges:
        kept: list[Point] = []
        for one, other in zip(corners, (*corners[1:], corners[0]), strict=True):
            here, there = (end - start).cross(one - start), (end - start).cross(other - start)
            if here >= 0:
                kept.append(one)
            if here * there < 0:
                share = here / (here - there)
                kept.append(one + (other - one).scaled(share, share))
        corners = kept
        if len(corners) < 3:
            return None
    return Polygon(tuple(corners))
