"""What is told when a border of blocks does not come out even: the figures, and the nearest that would."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.exact import Number, format_length, format_number, is_multiple
from evenseam.pattern import Border, PiecedBorder, Project, Quantity
from evenseam.problems import Report
from evenseam.sizing.codes import OFF_THE_RULER, PIECED_BORDER_UNEVEN
from evenseam.sizing.pieced_fit import fit, nearest_blocks, spacer_for


@dataclass(frozen=True, slots=True)
class Side:
    """One direction of a border of blocks: what its blocks must fill."""

    project: Project
    border: Border
    pieced: PiecedBorder
    spacers: str
    """The strips that would fill it, in words: left and right, top and bottom."""
    inside: Number
    """Finished, in this direction."""
    other: Number
    """Finished, in the other one, where the same blocks must fit."""
    least: Quantity
    """Narrowest spacer strip allowed."""

    @property
    def block(self) -> Quantity:
        """Finished width of a block."""
        return self.project.block(self.pieced.block).width

    def length(self, value: Number) -> str:
        """Return a length as printed."""
        return format_length(value, self.project.unit)


def tell_uneven(side: Side, report: Report) -> None:
    """Report a border without spacer strips that does not come out even."""
    share = format_number(side.inside / side.block.value, side.block.unit).removeprefix("about ")
    mark = side.project.unit.ruler_mark
    found = fit(side.inside, side.block.value, side.least.value, mark)
    hints = ["name a fabric under `spacer`"]
    if found is not None:
        blocks, spacer = found
        hints[0] += f": {blocks} blocks and {side.spacers} spacer strips of {side.length(spacer)} would do"
    widths = nearest_blocks((side.inside, side.other), side.block.value, None, mark)
    if widths:
        hints.append("or draft the block to finish " + _either(side, widths) + " wide, which comes out even")
    report.add(
        PIECED_BORDER_UNEVEN, side.pieced.place or side.border.place,
        f"the {side.border.name} does not come out even: {side.length(side.inside)} is about {share} times the "
        f"{side.block.text} of a block",
        hint="; ".join(hints),
    )  # fmt: skip


def tell_off_ruler(side: Side, blocks: int, report: Report) -> None:
    """Warn that spacer strips would finish on no mark of the ruler."""
    mark = side.project.unit.ruler_mark
    spacer, wider = (spacer_for(side.inside, side.block.value, number) for number in (blocks, blocks + 1))
    hints = []
    if is_multiple(wider, mark):
        # Half a block more, which is on a mark when a block is an odd number of marks wide.
        hints.append(f"ask for a `least spacer` of {side.length(wider)}, which takes one block more")
    widths = nearest_blocks((side.inside, side.other), side.block.value, side.least.value, mark)
    if widths:
        hints.append("draft the block to finish " + _either(side, widths) + " wide")
    hints.append(f"make the inside {side.length(mark)} smaller or larger with the border or block inside it")
    report.add(
        OFF_THE_RULER, side.pieced.place or side.border.place,
        f"the {side.spacers} spacer strips of the {side.border.name} would finish {side.length(spacer)} wide: on no "
        f"mark of a ruler with marks every {side.length(mark)}",
        hint=", or ".join(hints),
    )  # fmt: skip


def _either(side: Side, widths: tuple[Number, ...]) -> str:
    return " or ".join(side.length(width) for width in widths)
