"""Borders: pairs of strips sewn to opposite edges, in the order the author decided."""

from __future__ import annotations

from evenseam.exact import Number
from evenseam.pattern import AddBorderStrips, Border, BorderCorners, BorderOrder, Run, Step
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.arranged import laid_out
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.runs import as_flat, spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import Bordered, Flat, Workpiece

_SIDES = {Run.ACROSS: "left and right", Run.DOWN: "top and bottom"}


def add_border_strips(table: Table, maker: BlockMaker, step: Step, operation: AddBorderStrips) -> Workpiece:
    """Sew two equal strips to opposite edges of the centre; each must be exactly as long as the edge."""
    pieces = table.take(step, (operation.centre, operation.strip, operation.strip))
    if spoilt_among(pieces):
        return SPOILT
    border = next((border for border in table.project.borders if border.id == operation.border), None)
    if border is None:
        table.tell(codes.WORKPIECE_UNKNOWN, f"step {step.id} sews a border {operation.border}, the project has none")
        return SPOILT
    if border.corners is BorderCorners.MITRED:
        table.tell(
            codes.NOT_SEWABLE_YET, f"{border.name}: {border.corners.value} corners cannot be proved on the table yet",
            border.width, place=border.place,
        )  # fmt: skip
        return SPOILT
    strip = as_flat(maker, pieces[1])
    if strip is None or strip.blocks:
        return table.wrong_piece(step, operation.strip, pieces[1], "strips of cloth")
    centre = _centre(table, maker, pieces[0])
    if centre is None:
        return table.wrong_piece(step, operation.centre, pieces[0], "the centre of the top")
    told = table.told
    _check_order(table, border, centre, operation.run)
    if table.told > told:
        return SPOILT
    _check_cloth(table, border, operation, strip, is_second=len(centre.strips) % 2 == 1)
    _check_strip(table, border, operation, strip, (centre.width, centre.height))
    if table.told > told:
        return SPOILT
    width, height = centre.width, centre.height
    if operation.run is Run.ACROSS:
        width = width + 2 * strip.width - 4 * table.seam
    else:
        height = height + 2 * strip.height - 4 * table.seam
    return Bordered(centre.centre, width, height, (*centre.strips, (border.id, operation.run)))


def _centre(table: Table, maker: BlockMaker, piece: Workpiece) -> Bordered | None:
    if isinstance(piece, Bordered):
        return piece
    flat = as_flat(maker, piece)
    if flat is None:
        return None
    flat = laid_out(table.project, flat)
    return Bordered(flat, flat.width, flat.height, ())


def _check_order(table: Table, border: Border, centre: Bordered, run: Run) -> None:
    strips = centre.strips
    ids = [border.id for border in table.project.borders]
    index, pairs = divmod(len(strips), 2)
    if index >= len(ids) or ids[index] != border.id:
        turn = f"it is the turn of {table.project.borders[index].name}" if index < len(ids) else "all are sewn on"
        table.tell(
            codes.BORDER_ORDER_DIFFERS, f"{border.name} is sewn on out of turn: {turn}", border.width,
            place=border.place,
        )  # fmt: skip
        return
    if pairs == 1:
        if strips[-1][1] is run:
            table.tell(
                codes.BORDER_ORDER_DIFFERS, f"{border.name} is sewn to {_SIDES[run]} twice", border.width,
                place=border.place,
            )  # fmt: skip
        return
    first = _first_run(border.order, centre.width, centre.height)
    if border.corners is BorderCorners.BUTTED and first is not None and first is not run:
        table.tell(
            codes.BORDER_ORDER_DIFFERS,
            f"{border.name} is sewn to {_SIDES[run]} first, the pattern decides {border.order.value}", border.width,
            place=border.place,
        )  # fmt: skip


def _first_run(order: BorderOrder, width: Number, height: Number) -> Run | None:
    """Return which pair comes first; None where both are equally long."""
    match order:
        case BorderOrder.SIDES_FIRST:
            return Run.ACROSS
        case BorderOrder.TOP_AND_BOTTOM_FIRST:
            return Run.DOWN
        case _ if width == height:
            return None
        case BorderOrder.LONG_SIDES_FIRST:
            return Run.ACROSS if height > width else Run.DOWN
        case BorderOrder.SHORT_SIDES_FIRST:
            return Run.DOWN if height > width else Run.ACROSS


def _check_cloth(table: Table, border: Border, operation: AddBorderStrips, strip: Flat, *, is_second: bool) -> None:
    """Check fabrics; a border with cornerstones has one at both ends of each strip of its second pair."""
    has_stones = border.corners is BorderCorners.CORNERSTONES and is_second
    ends = (strip.parts[0], strip.parts[-1]) if has_stones and len(strip.parts) == 3 else ()
    along = Run.DOWN if operation.run is Run.ACROSS else Run.ACROSS
    cuts = [part.cut for part in strip.parts or (strip,) if part.cut is not None]
    if len(cuts) != (3 if has_stones else 1) or (has_stones and strip.run is not along):
        table.tell(
            codes.BORDER_ORDER_DIFFERS,
            f"{border.name} is sewn with {table.called(operation.strip)}, which should be "
            + ("one strip with a cornerstone at each end" if has_stones else "one strip"),
            border.width, place=border.place,
        )  # fmt: skip
        return
    for end in ends:
        if end.cut is not None:
            side = border.width.value + 2 * table.seam
            table.check_fabric(end.cut, border.corner_fabric or border.fabric, f"the cornerstones of {border.name}")
            if (end.width, end.height) != (side, side):
                table.tell(
                    codes.PIECE_SIZE_WRONG,
                    f"“{end.cut.label}” is {table.size(end.width, end.height)}; a cornerstone of {border.name} is "
                    f"{table.size(side, side)}",
                    border.width, place=border.place,
                )  # fmt: skip
    middle = cuts[1] if has_stones else cuts[0]
    table.check_fabric(middle, border.fabric, border.name)
    for cut in cuts:
        table.check_print(cut)


def _check_strip(
    table: Table, border: Border, operation: AddBorderStrips, strip: Flat, centre: tuple[Number, Number]
) -> None:
    if operation.run is Run.ACROSS:
        along, across, edge = strip.height, strip.width, centre[1]
    else:
        along, across, edge = strip.width, strip.height, centre[0]
    called = table.called(operation.strip)
    if along != edge:
        table.tell(
            codes.EDGES_DIFFER,
            f"{called} is {table.length(along)} long, the edge it is sewn to is {table.length(edge)}", border.width,
            place=border.place,
        )  # fmt: skip
    finished = across - 2 * table.seam
    if finished != border.width.value:
        table.tell(
            codes.BORDER_WIDTH_DIFFERS,
            f"{called} finishes {table.length(finished)} wide, {border.name} is decided as {border.width.text}",
            border.width, place=border.place,
        )  # fmt: skip
