"""Borders of repeated blocks: how many go along each side, and the spacer strips that make them come out even.

::

    +----+----+----+----+     The inside lacks something to a whole number of blocks. Spacer strips round it make up
    | b  | b  | b  | b  |     for it, half at either side:
    +----+----+----+----+
    |b | spacer      | b|         spacer = (number of blocks × width of a block − inside) ÷ 2
    +--| +---------+ |--+
    |b | | inside  | | b|     Left and right ones have one width, top and bottom ones another.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Direction, Rounding
from evenseam.pattern import Border, PiecedBorder, Project, Quantity, derived
from evenseam.problems import Report
from evenseam.sizing.codes import TOO_MANY_BLOCKS
from evenseam.sizing.ledger import Ledger, named_after
from evenseam.sizing.pieced_fit import fit, is_even
from evenseam.sizing.pieced_problems import Side, tell_off_ruler, tell_uneven
from evenseam.sizing.sized_border import SizedPiecedBorder

MOST_ALONG = 250
"""Blocks along one side of a border; the largest project is a little over 140 in wide."""
_WHOLE = Rounding("whole blocks", Fraction(1), Direction.UP)


@dataclass(frozen=True, slots=True)
class _Axis:
    """One direction of the inside, with the words its figures are named by."""

    side: str
    """across or down."""
    spacer: str
    """side or top: the pair of spacer strips that fills this direction."""
    called: str
    """left and right, top and bottom: those spacer strips in words."""
    raw: Quantity
    """The inside, raw edge to raw edge."""
    edge: Quantity
    """The raw edge these spacer strips are sewn to, if nothing else is sewn to it before."""


def size_pieced_border(
    project: Project,
    border: Border,
    pieced: PiecedBorder,
    width: Quantity,
    height: Quantity,
    ledger: Ledger,
    report: Report,
) -> SizedPiecedBorder:
    """Choose number of blocks and spacers of both directions; enter every figure.

    Reports a border that cannot come out even, and spacer strips that are on no mark of the ruler.
    """
    name, words, seam = named_after(border.id, "border"), border.name, project.seam_allowance
    finished = ledger.enter(f"{name}_width", border.width)
    across = _Axis("across", "side", "left and right", width, height)
    blocks_across, side_spacer = _choose(project, border, pieced, across, height, ledger, report)
    wider = width if side_spacer is None else derived("width with the spacer strips", width + 2 * side_spacer)
    down = _Axis("down", "top", "top and bottom", height, wider)
    blocks_down, top_spacer = _choose(project, border, pieced, down, width, ledger, report)
    higher = height if top_spacer is None else derived("height with the spacer strips", height + 2 * top_spacer)
    if pieced.corner_block is None:
        ledger.work_out(f"{name}_corner_size", finished + 2 * seam, label=f"cut size of the corners of the {words}")
    return SizedPiecedBorder(
        border, width, height, blocks_across, blocks_down, side_spacer, top_spacer,
        ledger.work_out(f"width_with_{name}", wider + 2 * finished, label=f"unfinished width with the {words}"),
        ledger.work_out(f"height_with_{name}", higher + 2 * finished, label=f"unfinished height with the {words}"),
    )  # fmt: skip


def _choose(
    project: Project,
    border: Border,
    pieced: PiecedBorder,
    axis: _Axis,
    other: Quantity,
    ledger: Ledger,
    report: Report,
) -> tuple[Quantity, Quantity | None]:
    """Return how many blocks go along one side and the finished width of the spacers, None when there are none."""
    name, words, seam = named_after(border.id, "border"), border.name, project.seam_allowance
    block = project.block(pieced.block).width
    inside = ledger.work_out(
        f"{name}_inside_{axis.side}", axis.raw - 2 * seam, label=f"finished size inside the {words}, {axis.side}"
    )
    count, label = f"{name}_blocks_{axis.side}", f"blocks of the {words} along one side, {axis.side}"
    if inside.value > MOST_ALONG * block.value:
        report.add(
            TOO_MANY_BLOCKS, pieced.place or border.place,
            f"{inside.text} would take more than {MOST_ALONG} blocks of {block.text} along one side of the {words}",
            hint="use a larger block",
        )  # fmt: skip
        return ledger.count(count, 1, label, "no more are counted"), None
    if is_even(inside.value, block.value):
        return ledger.work_out(count, inside / block, label=label, rule="comes out even without spacer strips"), None
    least = pieced.least_spacer
    assert least is not None, "re-drafting puts the usual one there"
    blocks = derived(
        label, (inside + 2 * least) / block, rounding=_WHOLE,
        rule="as many as it takes to pass the inside and the narrowest spacer strips worth sewing",
    )  # fmt: skip
    side = Side(project, border, pieced, axis.called, inside.value, other.value - 2 * seam.value, least)
    found = fit(inside.value, block.value, least.value, project.unit.ruler_mark)
    if pieced.spacer_fabric is None:
        tell_uneven(side, report)
    elif found is None:
        tell_off_ruler(side, blocks.whole, report)
    ledger.enter(count, blocks)
    stem = f"{name}_{axis.spacer}_spacer"
    spacer = ledger.work_out(
        f"{stem}_width", (blocks * block - inside) / 2, label=f"finished width of the {axis.called} spacer strips",
        rule="half of what the inside lacks to a whole number of blocks",
    )  # fmt: skip
    ledger.work_out(f"{stem}_strip_width", spacer + 2 * seam, label=f"cut width of the {axis.called} spacer strips")
    ledger.work_out(
        f"{stem}_strip_length", axis.edge, label=f"{axis.called} spacer strips of the {words}",
        rule="as long as the raw edge they are sewn to",
    )  # fmt: skip
    return blocks, spacer
