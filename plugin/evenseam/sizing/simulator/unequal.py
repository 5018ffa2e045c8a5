"""Whether rows of unequal blocks are the ones decided: every block, and spacers that bring all rows to one width."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number
from evenseam.pattern import BlockPosition, Project, Run, Spacer, UnequalRow
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.plane import most
from evenseam.sizing.simulator.table import Table
from evenseam.sizing.simulator.workpiece import Flat, side_by_side


def check_unequal_rows(table: Table, centre: Flat) -> None:
    """Note the first place in which the sewn rows differ from the arrangement."""
    rows = table.project.arrangement.unequal_rows
    shares = spacer_shares(table.project)
    sewn = _rows(centre, len(rows))
    if sewn is None:
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, f"the top is not sewn from the {len(rows)} rows of the arrangement",
            place=table.project.arrangement.place,
        )  # fmt: skip
        return
    for number, (row, share, piece) in enumerate(zip(rows, shares, sewn, strict=True), start=1):
        wanted = [part for part in row.parts if isinstance(part, BlockPosition) or _width(part, share) != 0]
        parts = side_by_side(piece, Run.ACROSS, len(wanted))
        if parts is None or len(parts) != len(wanted):
            table.tell(
                codes.BLOCKS_NOT_AS_ARRANGED, f"row {number} of the arrangement has {len(wanted)} blocks and spacers; "
                f"it is sewn from {'more' if parts is None else len(parts)}",
                place=row.place or table.project.arrangement.place,
            )  # fmt: skip
            return
        for place, (decided, part) in enumerate(zip(wanted, parts, strict=True), start=1):
            if not _is_as_decided(table, decided, share, part, f"row {number}, place {place}"):
                return


def spacer_shares(project: Project) -> list[Number]:
    """Return for each row the finished width of a spacer that takes an equal share of what the row lacks."""
    widths = {block.id: (block.width.value, block.height.value) for block in project.blocks}
    zero = Fraction(0)
    sums: list[Number] = []
    sharing: list[int] = []
    for row in project.arrangement.unequal_rows:
        total: Number = zero
        for part in row.parts:
            if isinstance(part, BlockPosition):
                total = total + widths.get(part.block, (zero, zero))[part.quarter_turns % 2]
            elif part.width is not None:
                total = total + part.width.value
        sums.append(total)
        sharing.append(sum(isinstance(part, Spacer) and part.width is None for part in row.parts))
    widest = most(sums)
    return [(widest - total) / number if number else zero for total, number in zip(sums, sharing, strict=True)]


def blocks_of(row: UnequalRow) -> tuple[BlockPosition, ...]:
    """Return the blocks of a row, without its spacers."""
    return tuple(part for part in row.parts if isinstance(part, BlockPosition))


def _rows(centre: Flat, number: int) -> list[Flat] | None:
    found: list[Flat] = []
    waiting = [centre]
    while waiting and len(found) <= number:
        piece = waiting.pop()
        if piece.parts and piece.run is Run.DOWN:
            waiting.extend(reversed(piece.parts))
        else:
            found.append(piece)
    return found if len(found) == number else None


def _width(spacer: Spacer, share: Number) -> Number:
    return share if spacer.width is None else spacer.width.value


def _is_as_decided(table: Table, decided: BlockPosition | Spacer, share: Number, part: Flat, where: str) -> bool:
    arrangement = table.project.arrangement
    if isinstance(decided, BlockPosition):
        if part.cut is None and (part.block, part.turns) == (decided.block, decided.quarter_turns % 4):
            return True
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, f"{where} of the arrangement is a {decided.block} block turned "
            f"{decided.quarter_turns % 4} quarters; a {part.block or 'strip'} is sewn there",
            place=arrangement.place,
        )  # fmt: skip
        return False
    if part.cut is None:
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, f"{where} of the arrangement is a spacer; a {part.block} block is sewn there",
            place=arrangement.place,
        )  # fmt: skip
        return False
    told = table.told
    table.check_fabric(part.cut, decided.fabric, "the spacer")
    table.check_print(part.cut)
    finished = part.width - 2 * table.seam
    if finished != _width(decided, share):
        table.blame(
            part.cut, codes.SASHING_NOT_AS_DECIDED,
            f"“{part.cut.label}” finishes {table.length(finished)} wide, the spacer in {where} is "
            f"{table.length(_width(decided, share))}",
            *((decided.width,) if decided.width else ()), place=decided.place,
        )  # fmt: skip
    return table.told == told
