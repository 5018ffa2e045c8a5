"""Rows of unequal blocks become a sized centre: spacers share what each row lacks to the widest one.

::

      +-----+--+-----+--+-----+      the widest row sets the width
      |     |s |     |s |     |
      +-----+--+-----+--+-----+      sashing, if there is any, lies between the rows, as wide as they are,
      +---+-+--+---+-+--+-+---+      and stands where two blocks of a row would touch
      |   |  s |   | s  |   |s       a spacer without a width of its own takes an equal share
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from evenseam.pattern import (
    BlockPosition,
    Expression,
    Operand,
    Operator,
    Project,
    Quantity,
    RowPart,
    Spacer,
    UnequalRow,
)
from evenseam.sizing.border_blocks import border_blocks
from evenseam.sizing.centre import blocks_used, count_strips, size_block, standing_size, strips_between
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.sized import SizedProject


@dataclass(frozen=True, slots=True)
class SizedSpacer:
    """A spacer with its finished width worked out."""

    fabric: str
    width: Quantity


@dataclass(frozen=True, slots=True)
class Sash:
    """An upright strip of sashing in a row, as high as the row."""

    fabric: str
    width: Quantity


@dataclass(frozen=True, slots=True)
class SizedRow:
    """One row, left to right; spacers that have nothing to fill are left out."""

    parts: tuple[BlockPosition | SizedSpacer | Sash, ...]
    height: Quantity


@dataclass(frozen=True, slots=True)
class UnequalCentre:
    """What every stage needs to know about rows of unequal blocks."""

    rows: tuple[SizedRow, ...]
    width: Quantity
    """Raw edge to raw edge."""
    height: Quantity


def size_unequal_rows(project: Project, ledger: Ledger) -> UnequalCentre:
    """Work out the spacers, the sashing and the centre; enter every figure."""
    seam, arrangement = project.seam_allowance, project.arrangement
    rows = ledger.enter("rows", arrangement.rows)
    in_borders = border_blocks(project)
    used = blocks_used(project)
    for id, uses in used.items():
        if id not in in_borders:
            size_block(project.block(id), uses, seam, ledger)
    ledger.count("block_count", sum(used.values()), "number of blocks", "they stand in the rows")
    widest = ledger.work_out(
        "rows_width", widest_row(project), label="finished width of the rows", rule="as wide as the widest row"
    )
    for number, row in enumerate(arrangement.unequal_rows, start=1):
        total, sharing = fixed_width(project, row), sharing_spacers(row)
        if sharing and widest.value != total.value:
            ledger.work_out(
                f"row_{number}_spacer_width", (widest - total) / sharing, label=f"width of the spacers of row {number}",
                rule="an equal share of what the row lacks to the widest row",
            )  # fmt: skip
    sized = _rows(project, ledger.figures)
    down: Operand = sized[0].height
    for sized_row in sized[1:]:
        down = down + sized_row.height
    return _with_sashing(project, rows, sized, (widest, down), ledger)


def _with_sashing(
    project: Project, rows: Quantity, sized: tuple[SizedRow, ...], inside: tuple[Quantity, Operand], ledger: Ledger
) -> UnequalCentre:
    """Enter what sashing adds to the rows, and the centre."""
    seam, sashing, (across, down) = project.seam_allowance, project.arrangement.sashing, inside
    ends = "a seam allowance at either end"
    strips = strips_between(rows.whole, sashing)
    if sashing is None or not (strips or any(isinstance(part, Sash) for row in sized for part in row.parts)):
        return UnequalCentre(
            sized,
            ledger.work_out("centre_width", across + 2 * seam, rule=f"the rows, and {ends}"),
            ledger.work_out("centre_height", down + 2 * seam, rule=f"row under row, and {ends}"),
        )
    sash = ledger.enter("sashing_width", sashing.width)
    wide: Operand = across
    if sashing.is_around:
        wide = across + 2 * sash
    width = ledger.work_out("centre_width", wide + 2 * seam, rule=f"the rows, their sashing, and {ends}")
    ledger.work_out("sashing_strip_width", sash + 2 * seam, label="cut width of the sashing")
    if strips:
        number = count_strips("sashing_rows", rows, sashing, "rows of sashing", ledger)
        down = down + number * sash
        ledger.work_out("sashing_strip_length", width, rule="as long as a row is wide")
        ledger.work_out("sashing_strip_count", number)
    rule = f"row under row, the sashing between them, and {ends}"
    return UnequalCentre(sized, width, ledger.work_out("centre_height", down + 2 * seam, rule=rule))


def sized_rows(sized: SizedProject) -> tuple[SizedRow, ...]:
    """Return the rows of a sized project, with the widths of their spacers."""
    return _rows(sized.project, dict(sized.figures))


def _rows(project: Project, known: dict[str, Quantity]) -> tuple[SizedRow, ...]:
    return tuple(
        SizedRow(
            tuple(_sized(project, row, known.get(f"row_{number}_spacer_width"))),
            next(standing_size(project, part)[1] for part in row.parts if isinstance(part, BlockPosition)),
        )
        for number, row in enumerate(project.arrangement.unequal_rows, start=1)
    )


def _sized(project: Project, row: UnequalRow, share: Quantity | None) -> Iterator[BlockPosition | SizedSpacer | Sash]:
    sashing = project.arrangement.sashing
    at_ends = [Sash(sashing.fabric, sashing.width)] if sashing is not None and sashing.is_around else []
    yield from at_ends
    before: RowPart | None = None
    for part in row.parts:
        if isinstance(part, BlockPosition):
            if sashing is not None and sashing.between_blocks and isinstance(before, BlockPosition):
                yield Sash(sashing.fabric, sashing.width)
            yield part
        elif (width := part.width or share) is not None:
            yield SizedSpacer(part.fabric, width)
        before = part
    yield from at_ends


def fixed_width(project: Project, row: UnequalRow) -> Expression:
    """Return the finished width of a row without the spacers that have no width of their own, and without sashing at
    its ends, which every row has or none.
    """
    widths = [standing_size(project, part)[0] if isinstance(part, BlockPosition) else part.width for part in row.parts]
    first, *others = [width for width in widths if width is not None]
    total = Expression.of(Operator.SAME, first)
    for width in others:
        total = total + width
    sashing = project.arrangement.sashing
    if sashing is not None and sashing.between_blocks and (touching := _touching(row)):
        total = total + touching * sashing.width
    return total


def _touching(row: UnequalRow) -> int:
    """Return how often two blocks of a row stand side by side with no spacer between them."""
    return sum(
        isinstance(one, BlockPosition) and isinstance(other, BlockPosition) for one, other in pairwise(row.parts)
    )


def sharing_spacers(row: UnequalRow) -> int:
    """Return how many spacers of a row take a share."""
    return sum(isinstance(part, Spacer) and part.width is None for part in row.parts)


def widest_row(project: Project) -> Expression:
    """Return the finished width of the widest row, without sashing at its ends."""
    widest, *others = [fixed_width(project, row) for row in project.arrangement.unequal_rows]
    for other in others:
        widest = other if other.value > widest.value else widest
    return widest
