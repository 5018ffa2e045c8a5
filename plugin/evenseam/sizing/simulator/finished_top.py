"""Whether a top is the one that was decided: its centre, and every border whole."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number
from evenseam.pattern import Step
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.arranged import check_centre
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.borders import as_bordered
from evenseam.sizing.simulator.table import Table
from evenseam.sizing.simulator.workpiece import Pocketed, Workpiece


def checked_top(
    table: Table, maker: BlockMaker, step: Step, name: str, piece: Workpiece
) -> tuple[Number, Number] | None:
    """Return the raw size of the top once it has been compared with everything the author decided about it."""
    told = table.told
    inner = piece.piece if isinstance(piece, Pocketed) else piece
    project = table.project
    bordered = as_bordered(table, maker, inner)
    if bordered is None:
        table.wrong_piece(step, name, piece, "the top")
        return None
    centre = bordered.centre
    check_centre(table, centre)
    if bordered.done != len(project.borders) or bordered.pairs:
        begun = " and part of another" if bordered.pairs else ""
        table.tell(
            codes.BORDER_ORDER_DIFFERS,
            f"{bordered.done} borders{begun} are sewn on whole, the project has {len(project.borders)}",
        )
    if table.told > told:
        return None
    added: Number = Fraction(0)
    for border in project.borders:
        added = added + 2 * border.width.value
    spare_width, spare_height = bordered.spacers
    width, height = bordered.width, bordered.height
    if (width, height) != (centre.width + added + spare_width, centre.height + added + spare_height):
        table.tell(
            codes.TOP_SIZE_DIFFERS,
            f"the top finishes at {table.size(width - 2 * table.seam, height - 2 * table.seam)}; the centre of "
            f"{table.size(centre.width - 2 * table.seam, centre.height - 2 * table.seam)} and borders of "
            f"{table.length(added)} in all do not add up to that",
        )
        return None
    return width, height
