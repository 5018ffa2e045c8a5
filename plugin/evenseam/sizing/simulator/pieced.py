"""Borders of blocks: spacer strips that make the inside come out even, then rows of blocks turned with the sides."""

from __future__ import annotations

from evenseam.exact import Number, ceiling
from evenseam.pattern import Block, BlockPosition, Border, Run
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.runs import check_turned_print
from evenseam.sizing.simulator.table import Table
from evenseam.sizing.simulator.workpiece import Bordered, Flat, Pair, side_by_side

_SIDES = {(Run.DOWN, False): 0, (Run.ACROSS, True): 1, (Run.DOWN, True): 2, (Run.ACROSS, False): 3}
"""Top, right, bottom, left: a side's place clockwise, and how many quarters its blocks are turned."""
_NAMES = ("top", "right", "bottom", "left")
MOST_BLOCKS = 2000
"""Along one side."""


def pairs_of(table: Table, border: Border, width: Number, height: Number) -> tuple[Pair, ...]:
    """Return the pairs of a border of blocks in the order they are sewn, for what is inside it, raw."""
    spacers = []
    for run, edge in ((Run.ACROSS, width), (Run.DOWN, height)):
        if spacer_width(table, border, edge - 2 * table.seam) > 0:
            spacers.append(Pair(run, is_spacer=True))
    return (*spacers, Pair(Run.ACROSS), Pair(Run.DOWN))


def spacer_width(table: Table, border: Border, inside: Number) -> Number:
    """Return the finished width of the two spacer strips that bring an edge to whole blocks; 0 where it is even."""
    block = _block(table, border)
    none: Number = inside * 0
    if block is None or border.pieced is None or border.pieced.spacer_fabric is None:
        return none
    least = border.pieced.least_spacer.value if border.pieced.least_spacer else none
    number = ceiling(inside / block.width.value)
    spacer = (number * block.width.value - inside) / 2
    if 0 < spacer < least:
        spacer = spacer + ceiling(2 * (least - spacer) / block.width.value) * block.width.value / 2
    return spacer


def check_pieced_strip(
    table: Table, border: Border, centre: Bordered, pair: Pair, name: str, strip: Flat, *, is_opposite: bool
) -> Number:
    """Check what a strip of a border of blocks is sewn from. Returns the finished width it should have."""
    pieced = border.pieced
    assert pieced is not None
    if pair.is_spacer:
        _check_cut(table, strip, pieced.spacer_fabric or "", f"the spacer strips of {border.name}")
        edge = centre.width if pair.run is Run.ACROSS else centre.height
        return spacer_width(table, border, edge - 2 * table.seam)
    side = _SIDES[pair.run, is_opposite]
    block = _block(table, border)
    edge = (centre.height if pair.run is Run.ACROSS else centre.width) - 2 * table.seam
    along = Run.DOWN if pair.run is Run.ACROSS else Run.ACROSS
    parts = side_by_side(strip, along, MOST_BLOCKS)
    has_corners = pair.run is Run.DOWN
    if block is None or parts is None or len(parts) < (3 if has_corners else 1):
        _tell(table, border, f"{table.called(name)} is no row of blocks along the {_NAMES[side]} of {border.name}")
        return border.width.value
    if has_corners:
        # From left to right: the corners of the top are the first and the second, of the bottom the last and the third.
        first, second = (0, 1) if side == 0 else (3, 2)
        _check_corner(table, border, name, parts[0], first)
        _check_corner(table, border, name, parts[-1], second)
        parts, edge = parts[1:-1], edge - 2 * border.width.value
    wanted = pieced.standing[side] if pieced.standing else BlockPosition(pieced.block, side)
    found = {(part.block, part.turns) for part in parts}
    if found != {(wanted.block, wanted.quarter_turns % 4)}:
        _tell(table, border, f"{table.called(name)} is sewn to the {_NAMES[side]} of {border.name}, and its blocks are "
              f"not {wanted.block} turned {wanted.quarter_turns % 4} quarters")  # fmt: skip
    if len(parts) * block.width.value != edge:
        _tell(
            table, border,
            f"{len(parts)} blocks of {block.width.text} do not fill {table.length(edge)}, the {_NAMES[side]} of "
            f"{border.name}",
        )  # fmt: skip
    return border.width.value


def _block(table: Table, border: Border) -> Block | None:
    id = border.pieced.block if border.pieced else ""
    return next((block for block in table.project.blocks if block.id == id), None)


def _check_corner(table: Table, border: Border, name: str, part: Flat, corner: int) -> None:
    pieced = border.pieced
    assert pieced is not None
    if pieced.corner_block is None:
        what = f"the corners of {border.name}"
        _check_cut(table, part, border.corner_fabric or border.fabric, what)
    else:
        standing = pieced.corners_standing
        wanted = standing[corner] if standing else BlockPosition(pieced.corner_block, corner)
        if (part.block, part.turns) != (wanted.block, wanted.quarter_turns % 4):
            _tell(table, border, f"{table.called(name)} has a corner of {border.name} that is not {wanted.block} "
                  f"turned {wanted.quarter_turns % 4} quarters")  # fmt: skip
    raw = border.width.value + 2 * table.seam
    if (part.width, part.height) != (raw, raw):
        table.tell(
            codes.PIECE_SIZE_WRONG,
            f"a corner of {border.name} is {table.size(part.width, part.height)}, it should be {table.size(raw, raw)}",
            border.width, place=border.place,
        )  # fmt: skip


def _check_cut(table: Table, part: Flat, fabric: str, what: str) -> None:
    if part.cut is None:
        table.tell(codes.WRONG_WORKPIECE, f"{what} are single pieces of cloth, not sewn ones")
        return
    table.check_fabric(part.cut, fabric, what)
    table.check_print(part.cut)
    check_turned_print(table, part)


def _tell(table: Table, border: Border, message: str) -> None:
    place = border.pieced.place if border.pieced else None
    table.tell(codes.BLOCKS_NOT_AS_ARRANGED, message, border.width, place=place or border.place)
