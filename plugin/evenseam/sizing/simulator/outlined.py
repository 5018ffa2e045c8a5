"""A project that is no rectangle: one block of any convex outline, measured across and down, its edges one by one."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number
from evenseam.pattern import Block, Project
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.patches import root_of, with_seam
from evenseam.sizing.simulator.plane import Outline, box, most, outline, scaled, sides, upright_size
from evenseam.sizing.simulator.table import Table
from evenseam.sizing.simulator.workpiece import Flat


def outlined(project: Project) -> Outline | None:
    """Return the finished outline of a project that is one block of another shape; None for any other project."""
    rows = project.arrangement.positions
    if len(rows) != 1 or len(rows[0]) != 1:
        return None
    block = next((block for block in project.blocks if block.id == rows[0][0].block), None)
    return shape_of(block) if block is not None else None


def shape_of(block: Block) -> Outline | None:
    """Return the finished outline of a block that is no rectangle; None for one that is, or has no size."""
    if not (block.grid_width > 0 and block.grid_height > 0 and block.width.value > 0 and block.height.value > 0):
        return None
    drawn = outline((corner.x, corner.y) for corner in block.outline.corners)
    if drawn is None or upright_size(drawn) is not None:
        return None
    return scaled(drawn, block.width.value / block.grid_width, block.height.value / block.grid_height)


def raw_size(shape: Outline, seam: Number) -> tuple[Number, Number]:
    """Return what a ruler reads across and down, raw edge to raw edge."""
    left, top, right, bottom = box(with_seam(shape, seam))
    return right - left, bottom - top


def check_outlined(table: Table, centre: Flat, shape: Outline) -> None:
    """Note a centre that is not the one block, or not of its size."""
    size, decided = (centre.width, centre.height), raw_size(shape, table.seam)
    if size != decided or not centre.block or centre.parts:
        table.tell(
            codes.TOP_SIZE_DIFFERS,
            f"the top measures {table.size(*size)} from raw edge to raw edge, the outline decides "
            f"{table.size(*decided)}",
            place=table.project.arrangement.place,
        )


def finished_size(table: Table, top: tuple[Number, Number]) -> tuple[Number, Number]:
    """Return what is left of a top, raw size given, once a seam is sewn all round it."""
    shape = outlined(table.project)
    if shape is None:
        return top[0] - 2 * table.seam, top[1] - 2 * table.seam
    left, upper, right, bottom = box(shape)
    return right - left, bottom - upper


def way_round(table: Table, width: Number, height: Number) -> Number:
    """Return the length of the raw edge of a squared-up project of this size."""
    shape = outlined(table.project)
    if shape is None:
        return 2 * (width + height)
    total: Number = Fraction(0)
    lengths = _lengths(shape)
    steps = [(end[0] - start[0], end[1] - start[1]) for start, end in sides(shape)]
    for number, length in enumerate(lengths):
        (ax, ay), (bx, by) = steps[number - 1], steps[number]
        # Outside a corner, each of its two edges runs on by the seam allowance times the cotangent of half the angle.
        cotangent = (lengths[number - 1] * length - (ax * bx + ay * by)) / (ax * by - ay * bx)
        total = total + length + 2 * table.seam * cotangent
    return total


def edge_to_open(table: Table, name: str) -> Number | None:
    """Return the finished length of the edge that an opening is left in; None where there is no edge of that name."""
    shape = outlined(table.project)
    if shape is None:
        return None
    if name == "longest":
        return most(_lengths(shape))
    _, _, _, bottom = box(shape)
    level = [start[0] - end[0] for start, end in sides(shape) if start[1] == end[1] == bottom]
    return level[0] if name == "bottom" and level else None


def _lengths(shape: Outline) -> list[Number]:
    return [root_of((bx - ax) * (bx - ax) + (by - ay) * (by - ay)) for (ax, ay), (bx, by) in sides(shape)]
