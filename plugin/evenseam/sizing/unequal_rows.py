"""Rows of unequal blocks become a sized centre: spacers share what each row lacks to the widest one.

::

      +-----+--+-----+--+-----+      the widest row sets the width
      |     |s |     |s |     |
      +---+-+--+---+-+--+-+---+      a spacer without a width of its own takes an equal share
      |   |  s |   | s  |   |s
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, Unit, format_length, is_multiple
from evenseam.pattern import (
    Assumed,
    BlockPosition,
    Cut,
    CutShape,
    Expression,
    Operand,
    Operator,
    Project,
    Quantity,
    Spacer,
    UnequalRow,
    derived,
)
from evenseam.problems import Place, Report
from evenseam.sizing.border_blocks import border_blocks
from evenseam.sizing.centre import blocks_used, size_block, standing_size
from evenseam.sizing.codes import BLOCKS_DO_NOT_FIT, ROWS_DO_NOT_MEET
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.sized import SizedProject

NARROWEST = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}
"""A finished spacer narrower than this disappears between two seams (common practice)."""


@dataclass(frozen=True, slots=True)
class SizedSpacer:
    """A spacer with its finished width worked out."""

    fabric: str
    width: Quantity


@dataclass(frozen=True, slots=True)
class SizedRow:
    """One row, left to right; spacers that have nothing to fill are left out."""

    parts: tuple[BlockPosition | SizedSpacer, ...]
    height: Quantity


@dataclass(frozen=True, slots=True)
class UnequalCentre:
    """What every stage needs to know about rows of unequal blocks."""

    rows: tuple[SizedRow, ...]
    width: Quantity
    """Raw edge to raw edge."""
    height: Quantity


def check_unequal_rows(project: Project, report: Report) -> None:
    """Report rows whose blocks differ in height, and rows that cannot be brought to the width of the widest."""
    rows = project.arrangement.unequal_rows
    widest = _widest(project)
    for number, row in enumerate(rows, start=1):
        first, *others = [standing_size(project, part)[1] for part in row.parts if isinstance(part, BlockPosition)]
        if any(other.value != first.value for other in others):
            heights = ", ".join(dict.fromkeys(height.text for height in (first, *others)))
            report.add(
                BLOCKS_DO_NOT_FIT, row.place, f"the blocks of row {number} are {heights} high",
                hint="blocks of one row have one height; put the others into a row of their own",
            )  # fmt: skip
        _check_width(project, row, number, widest, report)


def _check_width(project: Project, row: UnequalRow, number: int, widest: Expression, report: Report) -> None:
    unit, total = project.unit, _fixed_width(project, row)
    lacking, sharing = widest.value - total.value, _sharing(row)
    place = row.place or project.arrangement.place
    says = f"row {number} finishes {format_length(total.value, unit)} wide, the widest row "
    says += f"{format_length(widest.value, unit)}"
    if lacking == 0:
        return
    if not sharing:
        hint = f"add a spacer to the row, such as `spacer {project.fabrics[0].id}`: it fills what is lacking"
        if lacking < NARROWEST[unit]:
            hint = (
                "that is too narrow for a spacer: change the finished size of a block, or a stated spacer, in this unit"
            )
        report.add(ROWS_DO_NOT_MEET, place, f"{says}: it lacks {format_length(lacking, unit)}", hint=hint)
        return
    share, mark = lacking / sharing, unit.ruler_mark
    if share < NARROWEST[unit]:
        report.add(
            ROWS_DO_NOT_MEET, place,
            f"{says}: each of its {sharing} spacers would finish {format_length(share, unit)}, too narrow to sew",
            hint=f"use fewer spacers: {format_length(lacking, unit)} are to be filled",
        )  # fmt: skip
    elif not is_multiple(share, mark):
        _tell_share(row, place, says, share, lacking, sharing, unit, report)


def _tell_share(
    row: UnequalRow, place: Place | None, says: str, share: Number, lacking: Number, sharing: int, unit: Unit,
    report: Report,
) -> None:  # fmt: skip
    """Report shares that lie on no mark, with the nearest widths that do."""
    mark = unit.ruler_mark
    lower = Rounding("ruler", mark, Direction.DOWN).apply(share)
    rest = lacking - lower * (sharing - 1)
    fabric = next(part.fabric for part in row.parts if isinstance(part, Spacer) and part.width is None)
    if sharing > 1 and is_multiple(rest, mark):
        hint = (
            f"write `spacer {fabric} {format_length(lower, unit)}` for all but one of them; that one then takes "
            f"{format_length(rest, unit)}"
        )
    else:
        nearest = [format_length(size * sharing, unit) for size in (lower, lower + mark)]
        hint = f"change a block or a stated spacer so that the row lacks {' or '.join(nearest)}"
    each = "its spacer" if sharing == 1 else f"each of its {sharing} spacers"
    report.add(
        ROWS_DO_NOT_MEET, place, f"{says}: {each} would finish {format_length(share, unit)}, on no mark of a ruler",
        hint=hint,
    )  # fmt: skip


def size_unequal_rows(project: Project, ledger: Ledger) -> UnequalCentre:
    """Work out the spacers and the centre; enter every figure."""
    seam, arrangement = project.seam_allowance, project.arrangement
    ledger.enter("rows", arrangement.rows)
    in_borders = border_blocks(project)
    used = blocks_used(project)
    for id, uses in used.items():
        if id not in in_borders:
            size_block(project.block(id), uses, seam, ledger)
    ledger.count("block_count", sum(used.values()), "number of blocks", "they stand in the rows")
    widest = ledger.work_out(
        "rows_width", _widest(project), label="finished width of the rows", rule="as wide as the widest row"
    )
    rows: list[SizedRow] = []
    for number, row in enumerate(arrangement.unequal_rows, start=1):
        total, sharing = _fixed_width(project, row), _sharing(row)
        share = None
        if sharing and widest.value != total.value:
            share = ledger.work_out(
                f"row_{number}_spacer_width", (widest - total) / sharing, label=f"width of the spacers of row {number}",
                rule="an equal share of what the row lacks to the widest row",
            )  # fmt: skip
        parts = tuple(_sized(row, share))
        height = next(standing_size(project, part)[1] for part in row.parts if isinstance(part, BlockPosition))
        rows.append(SizedRow(parts, height))
    down: Operand = rows[0].height
    for sized_row in rows[1:]:
        down = down + sized_row.height
    return UnequalCentre(
        tuple(rows),
        ledger.work_out("centre_width", widest + 2 * seam, rule="the rows, and a seam allowance at either end"),
        ledger.work_out("centre_height", down + 2 * seam, rule="row under row, and a seam allowance at either end"),
    )


def spacer_cuts(sized: SizedProject) -> list[Cut]:
    """Return the cuts of the spacers, equal ones together."""
    seam = sized.project.seam_allowance
    found: dict[str, tuple[SizedSpacer, Quantity, int, list[int]]] = {}
    rows = sized_rows(sized)
    for number, row in enumerate(rows, start=1):
        for part in row.parts:
            if isinstance(part, SizedSpacer):
                id = spacer_id(rows, part, row.height)
                spacer, height, count, numbers = found.get(id, (part, row.height, 0, []))
                found[id] = (spacer, height, count + 1, [*numbers, number])
    cuts = []
    for id, (spacer, height, count, numbers) in found.items():
        distinct = list(dict.fromkeys(str(number) for number in numbers))
        listed = " and ".join((", ".join(distinct[:-1]), distinct[-1])) if len(distinct) > 1 else distinct[0]
        label = f"spacers of {'rows' if len(distinct) > 1 else 'row'} {listed}"
        cuts.append(
            Cut(
                id, label, spacer.fabric, CutShape.STRIP, derived(f"cut width of the {label}", spacer.width + 2 * seam),
                derived(f"cut length of the {label}", height + 2 * seam), _number(label, count), "spacer",
                sized.project.fabric(spacer.fabric).is_directional,
            )
        )  # fmt: skip
    return cuts


def sized_rows(sized: SizedProject) -> tuple[SizedRow, ...]:
    """Return the rows of a sized project, with the widths of their spacers."""
    known = dict(sized.figures)
    return tuple(
        SizedRow(
            tuple(_sized(row, known.get(f"row_{number}_spacer_width"))),
            next(standing_size(sized.project, part)[1] for part in row.parts if isinstance(part, BlockPosition)),
        )
        for number, row in enumerate(sized.project.arrangement.unequal_rows, start=1)
    )


def spacer_id(rows: tuple[SizedRow, ...], spacer: SizedSpacer, height: Quantity) -> str:
    """Return the cut id of a spacer: equal spacers are one cut."""
    kinds = list(
        dict.fromkeys(
            (part.fabric, part.width.value, row.height.value)
            for row in rows
            for part in row.parts
            if isinstance(part, SizedSpacer)
        )
    )
    number = kinds.index((spacer.fabric, spacer.width.value, height.value)) + 1
    return "spacers" if len(kinds) == 1 else f"spacers-{number}"


def _sized(row: UnequalRow, share: Quantity | None) -> Iterator[BlockPosition | SizedSpacer]:
    for part in row.parts:
        if isinstance(part, BlockPosition):
            yield part
            continue
        width = part.width or share
        if width is not None:
            yield SizedSpacer(part.fabric, width)


def _fixed_width(project: Project, row: UnequalRow) -> Expression:
    """Return the finished width of a row without the spacers that have no width of their own."""
    widths = [standing_size(project, part)[0] if isinstance(part, BlockPosition) else part.width for part in row.parts]
    first, *others = [width for width in widths if width is not None]
    total = Expression.of(Operator.SAME, first)
    for width in others:
        total = total + width
    return total


def _sharing(row: UnequalRow) -> int:
    return sum(isinstance(part, Spacer) and part.width is None for part in row.parts)


def _widest(project: Project) -> Expression:
    widest, *others = [_fixed_width(project, row) for row in project.arrangement.unequal_rows]
    for other in others:
        widest = other if other.value > widest.value else widest
    return widest


def _number(what: str, number: int) -> Quantity:
    return Quantity(f"number of {what}", Fraction(number), Unit.COUNT, Assumed("they lie in the rows", "counted"))
