"""Whether rows of unequal blocks are the ones decided: blocks, spacers that bring all rows to one width, sashing."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number
from evenseam.pattern import BlockPosition, Project, Run, Spacer, UnequalRow
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.plane import most
from evenseam.sizing.simulator.table import Table
from evenseam.sizing.simulator.workpiece import Flat, side_by_side


def check_unequal_rows(table: Table, centre: Flat) -> None:
    """Note the first place in which the sewn rows, or the sashing in and between them, differ from the arrangement."""
    arrangement = table.project.arrangement
    rows, sashing = arrangement.unequal_rows, arrangement.sashing
    # What should lie one below the other: the number of a row, or nothing for a strip of sashing.
    order: list[int | None] = []
    for number in range(len(rows)):
        order += [None, number] if sashing is not None and (number or sashing.is_around) else [number]
    order += [None] if sashing is not None and sashing.is_around else []
    sewn = _rows(centre, len(order))
    if sewn is None:
        strips = f" with {len(order) - len(rows)} strips of sashing" if sashing is not None else ""
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, f"the top is not sewn from the {len(rows)} rows of the arrangement{strips}",
            place=arrangement.place,
        )  # fmt: skip
        return
    shares = spacer_shares(table.project)
    for here, piece in zip(order, sewn, strict=True):
        is_right = (
            _is_strip(table, piece, piece.height, "between two rows")
            if here is None
            else _is_row(table, here, rows[here], shares[here], piece)
        )
        if not is_right:
            return


def _is_row(table: Table, number: int, row: UnequalRow, share: Number, piece: Flat) -> bool:
    """Compare a sewn row with one of the arrangement, part after part."""
    place = row.place or table.project.arrangement.place
    wanted = _wanted(table.project, row, share)
    parts = side_by_side(piece, Run.ACROSS, len(wanted))
    if parts is None or len(parts) != len(wanted):
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, f"row {number + 1} of the arrangement has {len(wanted)} blocks and strips; "
            f"it is sewn from {'more' if parts is None else len(parts)}",
            place=place,
        )  # fmt: skip
        return False
    for at, (decided, part) in enumerate(zip(wanted, parts, strict=True), start=1):
        where = f"row {number + 1}, place {at}"
        if decided is None:
            if not _is_strip(table, part, part.width, where):
                return False
        elif not _is_as_decided(table, decided, share, part, where):
            return False
    return True


def _wanted(project: Project, row: UnequalRow, share: Number) -> list[BlockPosition | Spacer | None]:
    """Return what stands in a row from left to right; nothing for a strip of sashing."""
    sashing = project.arrangement.sashing
    found: list[BlockPosition | Spacer | None] = []
    for number, part in enumerate(row.parts):
        if isinstance(part, Spacer) and _width(part, share) == 0:
            continue
        if number and sashing is not None and sashing.between_blocks:
            touches = isinstance(part, BlockPosition) and isinstance(row.parts[number - 1], BlockPosition)
            found += [None] if touches else []
        found.append(part)
    return [None, *found, None] if sashing is not None and sashing.is_around else found


def _is_strip(table: Table, part: Flat, raw: Number, where: str) -> bool:
    """Check a strip of sashing: its fabric, its print, and how wide it finishes."""
    sashing = table.project.arrangement.sashing
    assert sashing is not None
    if part.cut is None:
        table.tell(
            codes.SASHING_NOT_AS_DECIDED,
            f"{where} of the arrangement is sashing; a {part.block or 'row'} {'block ' if part.block else ''}is sewn "
            "there",
            place=sashing.place,
        )  # fmt: skip
        return False
    told = table.told
    table.check_fabric(part.cut, sashing.fabric, "the sashing")
    table.check_print(part.cut)
    if raw - 2 * table.seam != sashing.width.value:
        table.blame(
            part.cut, codes.SASHING_NOT_AS_DECIDED,
            f"“{part.cut.label}” finishes {table.length(raw - 2 * table.seam)} wide, the sashing is decided as "
            f"{sashing.width.text}",
            sashing.width, place=sashing.place,
        )  # fmt: skip
    return table.told == told


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
        sums.append(total + _sashes(project, row))
        sharing.append(sum(isinstance(part, Spacer) and part.width is None for part in row.parts))
    widest = most(sums)
    return [(widest - total) / number if number else zero for total, number in zip(sums, sharing, strict=True)]


def _sashes(project: Project, row: UnequalRow) -> Number:
    """Return what sashing between two blocks that would touch adds to the width of a row."""
    sashing, total = project.arrangement.sashing, Fraction(0)
    if sashing is None or not sashing.between_blocks:
        return total
    beside = zip(row.parts, row.parts[1:], strict=False)
    number = sum(isinstance(one, BlockPosition) and isinstance(other, BlockPosition) for one, other in beside)
    return number * sashing.width.value


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
