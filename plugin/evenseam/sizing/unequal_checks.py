"""Rows of unequal blocks that cannot come out equally wide: every such row once, with what would bring it there."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, Unit, format_length, is_multiple
from evenseam.pattern import BlockPosition, Expression, Project, Spacer, UnequalRow
from evenseam.problems import Place, Report
from evenseam.sizing.centre import standing_size
from evenseam.sizing.codes import BLOCKS_DO_NOT_FIT, ROWS_DO_NOT_MEET
from evenseam.sizing.unequal_rows import fixed_width, sharing_spacers, widest_row

NARROWEST = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}
"""A finished spacer narrower than this disappears between two seams (common practice)."""


def check_unequal_rows(project: Project, report: Report) -> None:
    """Report rows whose blocks differ in height, and rows that cannot be brought to the width of the widest."""
    rows = project.arrangement.unequal_rows
    widest = widest_row(project)
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
    unit, total = project.unit, fixed_width(project, row)
    lacking, sharing = widest.value - total.value, sharing_spacers(row)
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
