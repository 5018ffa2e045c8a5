"""Whether the sewn centre is the arrangement that the author decided: every block where it belongs, sashing between."""

from __future__ import annotations

from evenseam.exact import Number
from evenseam.pattern import Cut, Project, Setting
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.layout import arranged, distinct, leaves, tape_for
from evenseam.sizing.simulator.outlined import check_outlined, outlined
from evenseam.sizing.simulator.plane import least
from evenseam.sizing.simulator.table import Table
from evenseam.sizing.simulator.unequal import check_unequal_rows
from evenseam.sizing.simulator.workpiece import Flat, turned

Counts = dict[tuple[str, int], int]


def arranged_counts(project: Project) -> Counts:
    """Return how many blocks the arrangement has, by id and quarter turns."""
    counts: Counts = {}
    for row in project.arrangement.positions:
        for position in row:
            key = (position.block, position.quarter_turns % 4)
            counts[key] = counts.get(key, 0) + 1
    return counts


def laid_out(project: Project, piece: Flat) -> Flat:
    """Return a piece as it lies in the finished top: a single block has no seam to its neighbours to say how it is
    turned, so it is laid as the arrangement says.
    """
    positions = project.arrangement.positions
    is_alone = len(positions) == 1 and len(positions[0]) == 1
    return turned(piece, positions[0][0].quarter_turns) if piece.block and is_alone else piece


def check_centre(table: Table, centre: Flat) -> None:
    """Note everything in which the sewn centre differs from the arrangement."""
    project = table.project
    arrangement = project.arrangement
    told = table.told
    if (arrangement.setting is Setting.ON_POINT) is not centre.is_from_point:
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, f"the arrangement is {arrangement.setting.value}, the sewn top is not",
            place=arrangement.place,
        )  # fmt: skip
        return
    counts = arranged_counts(project)
    for key in sorted({*counts, *centre.blocks}):
        wanted, found = counts.get(key, 0), centre.blocks.get(key, 0)
        if wanted != found:
            table.tell(
                codes.BLOCKS_NOT_AS_ARRANGED,
                f"the top has {found} {key[0]} blocks{_turned(key[1])}, the arrangement has {wanted}",
                place=arrangement.place,
            )
    _check_prints(table, centre)
    shape = outlined(project)
    if shape is not None:
        check_outlined(table, centre, shape)
        return
    if centre.is_from_point:
        return
    if arrangement.setting is Setting.UNEQUAL_ROWS:
        if table.told == told:
            check_unequal_rows(table, centre)
        return
    cells = sum(counts.values())
    # A run of strips repeated and repeated again could have more leaves than anyone can walk through.
    if table.told > told or centre.leaves > 8 * (cells + 4):
        if table.told == told:
            table.tell(
                codes.SASHING_NOT_AS_DECIDED,
                f"the top has {centre.leaves} blocks and strips, far more than {cells} blocks and their sashing",
                place=arrangement.place,
            )
        return
    if _check_strips(table, centre):
        _check_places(table, centre)


def _check_prints(table: Table, centre: Flat) -> None:
    """Note blocks whose print, upright when the block was sewn, is turned over with the block."""
    directional = {fabric.id for fabric in table.project.fabrics if fabric.is_directional}
    for block in table.project.blocks:
        held = sorted({piece.fabric for piece in block.pieces} & directional)
        turned_over = [turns for turns in (1, 2, 3) if (block.id, turns) in centre.blocks]
        if held and turned_over:
            table.tell(
                codes.PRINT_LIES_SIDEWAYS,
                f"a {block.name} block lies{_turned(turned_over[0])}, and the print of {table.fabric_name(held[0])} in "
                f"it with it",
                place=table.project.arrangement.place,
            )


def _check_places(table: Table, centre: Flat) -> None:
    """Compare the size of the centre, and the place of every block and strip, with the arrangement."""
    project, arrangement = table.project, table.project.arrangement
    sashing = arrangement.sashing
    tape = tape_for(project, centre)
    wanted = arranged(project, tape)
    size = (centre.width - 2 * table.seam, centre.height - 2 * table.seam)
    decided = (tape.length(wanted.width), tape.length(wanted.height))
    if size != decided:
        table.tell(
            codes.TOP_SIZE_DIFFERS,
            f"the blocks and sashing finish at {table.size(*size)}, the arrangement decides {table.size(*decided)}",
            place=arrangement.place,
        )
        return
    stones = wanted.crossings if sashing and sashing.cornerstone_fabric else set()
    gap = tape.marks(sashing.width.value) if sashing else None
    found_stones = 0
    for leaf in leaves(centre, tape, table.seam):
        cut = leaf.piece.cut
        if cut is None:
            what = wanted.blocks.get((leaf.x, leaf.y))
            if what is None or what[2:] != (leaf.piece.block, leaf.piece.turns):
                _tell_place(table, leaf.piece, what)
                return
        elif sashing and stones and leaf.width == leaf.height == gap and (leaf.x, leaf.y) in stones:
            found_stones += 1
            table.check_fabric(cut, sashing.cornerstone_fabric or "", "the cornerstones")
        elif sashing:
            table.check_fabric(cut, sashing.fabric, "the sashing")
    if found_stones != len(stones):
        table.tell(
            codes.SASHING_NOT_AS_DECIDED,
            f"{found_stones} cornerstones are sewn in where sashing crosses, there should be {len(stones)}",
            place=sashing.place if sashing else None,
        )


def _check_strips(table: Table, centre: Flat) -> bool:
    """Check every different strip once, wherever it lies in the centre."""
    told = table.told
    for piece in distinct(centre):
        if piece.cut is not None:
            check_sashing(table, piece.cut, (piece.width, piece.height))
    return table.told == told


def check_sashing(table: Table, cut: Cut, sides: tuple[Number, ...]) -> None:
    """Check a strip between blocks: there is sashing at all, and one of these raw sides is its width."""
    arrangement = table.project.arrangement
    sashing = arrangement.sashing
    if sashing is None:
        table.blame(
            cut, codes.SASHING_NOT_AS_DECIDED, f"“{cut.label}” is sewn between blocks, the arrangement has no sashing",
            place=arrangement.place,
        )  # fmt: skip
        return
    finished = [side - 2 * table.seam for side in sides]
    if sashing.width.value not in finished:
        table.blame(
            cut, codes.SASHING_NOT_AS_DECIDED,
            f"“{cut.label}” finishes {table.length(least(finished))} wide, the sashing is decided as "
            f"{sashing.width.text}",
            sashing.width, place=sashing.place,
        )  # fmt: skip
    table.check_print(cut)


def _tell_place(table: Table, leaf: Flat, what: tuple[int, int, str, int] | None) -> None:
    sewn = f"a {leaf.block} block{_turned(leaf.turns)} is sewn"
    if what is None:
        message = f"{sewn} where the arrangement has no block"
    else:
        row, column, block, turns = what
        message = (
            f"row {row + 1}, place {column + 1} of the arrangement is a {block} block{_turned(turns)}; {sewn} there"
        )
    table.tell(codes.BLOCKS_NOT_AS_ARRANGED, message, place=table.project.arrangement.place)


def _turned(turns: int) -> str:
    return ("", " turned a quarter clockwise", " turned half round", " turned a quarter anticlockwise")[turns]
