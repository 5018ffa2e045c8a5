"""Borders: pairs of strips sewn to opposite edges, in the order the author decided."""

from __future__ import annotations

from dataclasses import replace

from evenseam.exact import Number
from evenseam.pattern import AddBorderStrips, Border, BorderCorners, BorderOrder, Run, Step
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.arranged import laid_out
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.patches import fits_edge
from evenseam.sizing.simulator.pieced import check_pieced_strip, pairs_of
from evenseam.sizing.simulator.runs import as_flat, check_turned_print, spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import Bordered, Flat, Pair, Workpiece, turned_whole

_SIDES = {Run.ACROSS: "left and right", Run.DOWN: "top and bottom"}
_MOST_PARTS = 4000
"""Blocks in one strip of a border: more than any bed needs."""


def add_border_strips(table: Table, maker: BlockMaker, step: Step, operation: AddBorderStrips) -> Workpiece:
    """Sew two strips to opposite edges of the centre; each must be exactly as long as the edge."""
    names = (operation.strip, operation.opposite or operation.strip)
    pieces = table.take(step, (operation.centre, *names))
    border = border_of(table, step, operation.border)
    if spoilt_among(pieces) or border is None:
        return SPOILT
    centre = as_bordered(table, maker, pieces[0])
    if centre is None:
        return table.wrong_piece(step, operation.centre, pieces[0], "the centre of the top")
    if not check_turn(table, border, centre):
        return SPOILT
    strips: list[Flat] = []
    for name, piece, turns in zip(names, pieces[1:], (operation.quarter_turns, operation.opposite_turns), strict=True):
        flat = as_flat(maker, piece)
        laid = turned_whole(flat, turns, _MOST_PARTS) if flat is not None and not flat.is_from_point else None
        if laid is None or (laid.blocks and border.pieced is None):
            return table.wrong_piece(step, name, piece, "strips of cloth")
        strips.append(laid)
    told = table.told
    pair = _check_order(table, border, centre, operation.run)
    if pair is None:
        return SPOILT
    width: Number = border.width.value
    for place, (name, strip) in enumerate(zip(names, strips, strict=True)):
        if border.pieced is not None:
            width = check_pieced_strip(table, border, centre, pair, name, strip, is_opposite=place == 1)
        else:
            _check_cloth(table, border, operation.run, name, strip, is_second=len(centre.pairs) % 2 == 1)
        _check_strip(table, border, operation.run, name, strip, (centre.width, centre.height), width)
    return SPOILT if table.told > told else _with_pair(border, centre, pair, width)


def border_of(table: Table, step: Step, id: str) -> Border | None:
    """Return a border of the project; None, with the problem noted, when there is none of that name."""
    border = next((border for border in table.project.borders if border.id == id), None)
    if border is None:
        table.tell(codes.WORKPIECE_UNKNOWN, f"step {step.id} sews a border {id}, the project has none")
    return border


def as_bordered(table: Table, maker: BlockMaker, piece: Workpiece) -> Bordered | None:
    """Return a centre with its borders so far; None for anything that cannot be one."""
    if isinstance(piece, Bordered):
        return piece
    flat = as_flat(maker, piece)
    if flat is None:
        return None
    flat = laid_out(table.project, flat)
    return Bordered(flat, flat.width, flat.height)


def check_turn(table: Table, border: Border, centre: Bordered) -> bool:
    """Tell whether it is the turn of a border; if not, that is noted."""
    borders = table.project.borders
    if centre.done < len(borders) and borders[centre.done].id == border.id:
        return True
    turn = f"it is the turn of {borders[centre.done].name}" if centre.done < len(borders) else "all are sewn on"
    table.tell(
        codes.BORDER_ORDER_DIFFERS, f"{border.name} is sewn on out of turn: {turn}", border.width, place=border.place
    )
    return False


def _with_pair(border: Border, centre: Bordered, pair: Pair, finished: Number) -> Bordered:
    width, height = centre.width, centre.height
    spare_width, spare_height = centre.spacers
    if pair.run is Run.ACROSS:
        width = width + 2 * finished
        spare_width = spare_width + 2 * finished if pair.is_spacer else spare_width
    else:
        height = height + 2 * finished
        spare_height = spare_height + 2 * finished if pair.is_spacer else spare_height
    inside = centre.inside or (centre.width, centre.height)
    pairs = (*centre.pairs, pair)
    grown = replace(centre, width=width, height=height, pairs=pairs, inside=inside, spacers=(spare_width, spare_height))
    # Whatever came before, the second pair of strips that are no spacers completes a border.
    is_done = sum(not each.is_spacer for each in pairs) == 2
    return replace(grown, done=grown.done + 1, pairs=(), inside=None) if is_done else grown


def _check_order(table: Table, border: Border, centre: Bordered, run: Run) -> Pair | None:
    """Return which pair of the border this is; None, with the problem noted, when it is not the one to be sewn now."""
    if border.pieced is not None:
        order = pairs_of(table, border, *(centre.inside or (centre.width, centre.height)))
        pair = order[len(centre.pairs)]
        if pair.run is run:
            return pair
        table.tell(
            codes.BORDER_ORDER_DIFFERS,
            f"{border.name} is sewn to {_SIDES[run]}; now its {'spacers' if pair.is_spacer else 'blocks'} at "
            f"{_SIDES[pair.run]} are sewn on",
            border.width, place=border.place,
        )  # fmt: skip
        return None
    if border.corners not in (BorderCorners.BUTTED, BorderCorners.CORNERSTONES):
        table.tell(
            codes.BORDER_ORDER_DIFFERS, f"{border.name} has {border.corners.value} corners, and is sewn on in pairs",
            border.width, place=border.place,
        )  # fmt: skip
        return None
    if centre.pairs:
        if centre.pairs[-1].run is not run:
            return Pair(run)
        table.tell(
            codes.BORDER_ORDER_DIFFERS, f"{border.name} is sewn to {_SIDES[run]} twice", border.width,
            place=border.place,
        )  # fmt: skip
        return None
    first = _first_run(border.order, centre.width, centre.height)
    if border.corners is BorderCorners.BUTTED and first is not None and first is not run:
        table.tell(
            codes.BORDER_ORDER_DIFFERS,
            f"{border.name} is sewn to {_SIDES[run]} first, the pattern decides {border.order.value}", border.width,
            place=border.place,
        )  # fmt: skip
        return None
    return Pair(run)


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


def _check_cloth(table: Table, border: Border, run: Run, name: str, strip: Flat, *, is_second: bool) -> None:
    """Check fabrics; a border with cornerstones has one at both ends of each strip of its second pair."""
    has_stones = border.corners is BorderCorners.CORNERSTONES and is_second
    ends = (strip.parts[0], strip.parts[-1]) if has_stones and len(strip.parts) == 3 else ()
    along = Run.DOWN if run is Run.ACROSS else Run.ACROSS
    laid = strip.parts or (strip,)
    cuts = [part.cut for part in laid if part.cut is not None]
    if len(cuts) != (3 if has_stones else 1) or (has_stones and strip.run is not along):
        table.tell(
            codes.BORDER_ORDER_DIFFERS,
            f"{border.name} is sewn with {table.called(name)}, which should be "
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
    for part in laid:
        if part.cut is not None:
            table.check_print(part.cut)
            check_turned_print(table, part)


def _check_strip(
    table: Table, border: Border, run: Run, name: str, strip: Flat, centre: tuple[Number, Number], width: Number
) -> None:
    if run is Run.ACROSS:
        along, across, edge = strip.height, strip.width, centre[1]
    else:
        along, across, edge = strip.width, strip.height, centre[0]
    called = table.called(name)
    # Only a plain strip is trimmed even with the edge; anything sewn together has to come out exactly.
    if along != edge and (strip.parts or not fits_edge(table, along, edge)):
        table.tell(
            codes.EDGES_DIFFER,
            f"{called} is {table.length(along)} long, the edge it is sewn to is {table.length(edge)}", border.width,
            place=border.place,
        )  # fmt: skip
    finished = across - 2 * table.seam
    if finished != width:
        table.tell(
            codes.BORDER_WIDTH_DIFFERS,
            f"{called} finishes {table.length(finished)} wide, {border.name} is decided as {table.length(width)}",
            border.width, place=border.place,
        )  # fmt: skip
