"""Units sewn several at a time from whole squares: every unit of a batch must be the unit of the drawing, and whole."""

from __future__ import annotations

from functools import lru_cache
from typing import TypeAlias

from evenseam.exact import Number
from evenseam.pattern import CutShape, MakeUnits, Step, UnitMethodKind
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.drawing import Drawing
from evenseam.sizing.simulator.plane import Outline, Spot, box, sides
from evenseam.sizing.simulator.runs import spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.whole_squares import (
    Cloth,
    Patch,
    area,
    clipped,
    moved,
    sewn_in_batches,
    turned_about,
    with_corners,
)
from evenseam.sizing.simulator.workpiece import CutPiece, Workpiece

Bounds: TypeAlias = tuple[Number, Number, Number, Number]
ON_CORNERS = (UnitMethodKind.CORNER_SQUARES, UnitMethodKind.ONE_GOOSE)
GIVES = {
    UnitMethodKind.TWO_HALF_SQUARE: 2, UnitMethodKind.FOUR_HALF_SQUARE: 4, UnitMethodKind.EIGHT_HALF_SQUARE: 8,
    UnitMethodKind.FOUR_GEESE: 4, UnitMethodKind.TWO_QUARTER_SQUARE: 2, UnitMethodKind.FOUR_QUARTER_SQUARE: 4,
    UnitMethodKind.ONE_GOOSE: 1, UnitMethodKind.CORNER_SQUARES: 1,
}  # fmt: skip


def make_units(table: Table, maker: BlockMaker, step: Step, operation: MakeUnits) -> Workpiece:
    """Sew one batch, trim every unit, and compare it with the drawing."""
    pieces = table.take(step, operation.squares)
    drawing = maker.drawing(operation.block, step)
    if drawing is None or spoilt_among(pieces):
        return SPOILT
    told = table.told
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    if operation.gives != GIVES[operation.kind] or not 0 <= operation.spare < operation.gives:
        table.tell(
            codes.COUNT_NOT_WHOLE,
            f"step {step.id} counts {operation.gives} units to a batch, {operation.spare} of them spare; "
            f"{operation.kind.value} are {GIVES[operation.kind]}",
        )
    squares = [piece for piece in pieces if isinstance(piece, CutPiece)]
    if len(squares) < len(pieces) or any(p.cut.shape not in (CutShape.SQUARE, CutShape.RECTANGLE) for p in squares):
        table.tell(codes.WRONG_WORKPIECE, f"step {step.id} sews units from something that is no whole square")
    part = maker.unit(step, drawing, operation.pieces, operation.also) if table.told == told else None
    if part is None:
        return SPOILT
    for piece in squares:
        table.check_print(piece.cut)
        if piece.cut.width.value != piece.cut.height.value and operation.kind not in ON_CORNERS:
            table.blame(piece.cut, codes.WRONG_WORKPIECE, f"“{piece.cut.label}” is no square")
    if table.told == told:
        _compare(table, step, operation, drawing, squares)
    return maker.laid_down(step, drawing, part) if table.told == told else SPOILT


def _compare(table: Table, step: Step, operation: MakeUnits, drawing: Drawing, squares: list[CutPiece]) -> None:
    """Note squares from which the units do not come out whole, or that are larger than the next mark asks for."""
    seam = table.seam
    wanted: list[Patch] = [
        (drawing.pieces[name][0].fabric, shape)
        for name, shape in zip(operation.pieces, drawing.shapes(operation.pieces), strict=True)
    ]
    sizes = [(square.cut.width.value, square.cut.height.value) for square in squares]
    fabrics = [square.cut.material for square in squares]
    cuts = " and ".join(dict.fromkeys(f"“{square.cut.label}”, {table.size(*_size(square))}" for square in squares))
    if not _comes_out(operation, wanted, list(zip(fabrics, sizes, strict=True)), seam):
        table.tell(
            codes.PIECE_SIZE_WRONG,
            f"step {step.id}: from {cuts}, the units of the {drawing.block.name} block do not come out",
            place=drawing.block.place,
        )
        return
    if operation.kind in ON_CORNERS:
        return
    # Each square is as small as the marks of the ruler let it be: those of one size a mark smaller, a unit is short.
    mark = table.unit.ruler_mark * (2 if _is_doubled(operation) else 1)
    for side in dict.fromkeys(size[0] for size in sizes):
        smaller = [(size[0] - mark, size[1] - mark) if size[0] == side else size for size in sizes]
        if side > mark and _comes_out(operation, wanted, list(zip(fabrics, smaller, strict=True)), seam):
            table.tell(
                codes.PIECE_SIZE_WRONG,
                f"step {step.id}: a square of {table.length(side - mark)} would do for {table.length(side)}",
                place=drawing.block.place,
            )


def _is_doubled(operation: MakeUnits) -> bool:
    """Tell whether the square is cut in halves before it is cut on the diagonals, so that its marks count half."""
    return operation.kind is UnitMethodKind.EIGHT_HALF_SQUARE


def _comes_out(
    operation: MakeUnits, wanted: list[Patch], squares: list[tuple[str, tuple[Number, Number]]], seam: Number
) -> bool:
    return _come_out(operation.kind, tuple(wanted), tuple(squares), seam)


@lru_cache(maxsize=256)
def _come_out(
    kind: UnitMethodKind,
    wanted: tuple[Patch, ...],
    squares: tuple[tuple[str, tuple[Number, Number]], ...],
    seam: Number,
) -> bool:
    """Tell whether every unit of a batch is the one of the drawing; kept, for sizes of a pattern ask it again."""
    cloths: list[Patch] = [(fabric, _rectangle(*size)) for fabric, size in squares]
    whole = tuple(spot for _, shape in wanted for spot in shape)
    left, top, right, bottom = box(whole)
    if kind in ON_CORNERS:
        if len(cloths) != len(wanted):
            return False
        bulk = max(range(len(wanted)), key=lambda place: area(wanted[place][1]))
        if any(wide != high for place, (_, (wide, high)) in enumerate(squares) if place != bulk):
            return False
        corners = [(cloths[n], _corner(wanted[n][1], (left, top))) for n in range(len(wanted)) if n != bulk]
        cloth = moved(with_corners(cloths[bulk], corners), left - seam, top - seam)
        return cloths[bulk][1][2] == (right - left + 2 * seam, bottom - top + 2 * seam) and _is_unit(
            cloth, wanted, (left, top, right, bottom), seam
        )
    batch = sewn_in_batches(kind, cloths, seam)
    if batch is None:
        return False
    target = ((left + right) / 2, (top + bottom) / 2)
    if kind is UnitMethodKind.FOUR_GEESE:
        target = _tip(max(wanted, key=lambda patch: area(patch[1]))[1])
    return all(
        _fits_some_way(unit, spot, target, wanted, (left, top, right, bottom), seam)
        for unit, spot in zip(batch.units, batch.spots, strict=True)
    )


def _fits_some_way(
    unit: Cloth, spot: Spot, target: Spot, wanted: tuple[Patch, ...], bounds: Bounds,
    seam: Number,
) -> bool:  # fmt: skip
    unit = moved(unit, target[0] - spot[0], target[1] - spot[1])
    for _ in range(4):
        if _is_unit(unit, wanted, bounds, seam):
            return True
        unit = turned_about(unit, target)
    return False


def _is_unit(cloth: Cloth, wanted: tuple[Patch, ...], bounds: Bounds, seam: Number) -> bool:
    """Tell whether every piece shows its fabric, whole, and cloth reaches a seam allowance beyond on all sides."""
    for fabric, shape in wanted:
        if not _covers(tuple(patch for patch in cloth if patch[0] == fabric), shape):
            return False
    left, top, right, bottom = bounds
    return _covers(cloth, _moved(_rectangle(right - left + 2 * seam, bottom - top + 2 * seam), left - seam, top - seam))


def _covers(cloth: Cloth, shape: Outline) -> bool:
    covered = area(shape) * 0
    for _, patch in cloth:
        part = clipped(patch, shape)
        if part:
            covered = covered + area(part)
    return covered == area(shape)


def _corner(shape: Outline, origin: Spot) -> Spot:
    """Return which corner of the unit a corner piece fills: x and y each 0 or 1."""
    right_angle = _tip(shape)
    zero = origin[0] * 0
    return tuple(zero if here == start else zero + 1 for here, start in zip(right_angle, origin, strict=True))  # type: ignore[return-value]


def _tip(shape: Outline) -> Spot:
    """Return the right angle of a triangle."""
    before = (shape[-1], *shape[:-1])
    for (ax, ay), (x, y), (_, (bx, by)) in zip(before, shape, sides(shape), strict=True):
        if (ax - x) * (bx - x) + (ay - y) * (by - y) == 0:
            return x, y
    return shape[0]


def _rectangle(width: Number, height: Number) -> Outline:
    zero = width * 0
    return ((zero, zero), (width, zero), (width, height), (zero, height))


def _moved(shape: Outline, across: Number, down: Number) -> Outline:
    return tuple((x + across, y + down) for x, y in shape)


def _size(piece: CutPiece) -> tuple[Number, Number]:
    return piece.cut.width.value, piece.cut.height.value
