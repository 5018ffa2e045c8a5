"""What a project must satisfy before it can be sized; every mistake at once, each with its place."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, Unit, format_length
from evenseam.pattern import CornerPockets, Project, Setting, Sleeve, Turned
from evenseam.problems import Report
from evenseam.sizing.centre import standing_size
from evenseam.sizing.codes import (
    BLOCKS_DO_NOT_FIT,
    HANGING_TOO_LARGE,
    LENGTH_NOT_POSITIVE,
    OPENING_TOO_LONG,
    PROJECT_TOO_LARGE,
    SASHING_UNUSED,
    TOO_MANY_BLOCKS,
)
from evenseam.sizing.edge_checks import check_edges
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.on_point_checks import check_on_point
from evenseam.sizing.outlined import check_outlines
from evenseam.sizing.unequal_checks import check_unequal_rows

MOST_BLOCKS = 2000
LONGEST_SIDE = {Unit.INCH: Fraction(140), Unit.CENTIMETRE: 140 * CENTIMETRES_PER_INCH}
"""A king-size quilt with a full drop is about 120 in wide; beyond 140 in something was mistyped."""


def check_before_sizing(project: Project, report: Report) -> None:
    """Report everything that keeps a project from being sized."""
    arrangement = project.arrangement
    blocks = sum(len(row) for row in arrangement.positions)
    if blocks > MOST_BLOCKS:
        report.add(
            TOO_MANY_BLOCKS, arrangement.rows.place or arrangement.place,
            f"{arrangement.rows.text} rows of {arrangement.columns.text} are {blocks} blocks; at most {MOST_BLOCKS} "
            "can be planned",
            hint="use fewer rows or columns",
        )  # fmt: skip
    check_on_point(project, report)
    _check_positive(project, report)
    _check_blocks(project, report)


def _check_positive(project: Project, report: Report) -> None:
    lengths = [project.seam_allowance, project.usable_width]
    for block in project.blocks:
        lengths += [block.width, block.height]
    for border in project.borders:
        lengths.append(border.width)
    if project.arrangement.sashing:
        lengths.append(project.arrangement.sashing.width)
    for length in lengths:
        if length.value <= 0:
            report.add(
                LENGTH_NOT_POSITIVE, length.place, f"{length.name} is {length.text}",
                hint="write a size above 0, such as 2 1/2",
            )  # fmt: skip


def _check_blocks(project: Project, report: Report) -> None:
    arrangement = project.arrangement
    check_outlines(project, report)
    if arrangement.setting is Setting.UNEQUAL_ROWS:
        check_unequal_rows(project, report)
        return
    positions = [position for row in arrangement.positions for position in row]
    first = standing_size(project, positions[0])
    told: set[tuple[str, int]] = set()
    for position in positions:
        size = standing_size(project, position)
        seen = (position.block, position.quarter_turns % 2)
        if (size[0].value, size[1].value) != (first[0].value, first[1].value) and seen not in told:
            report.add(
                BLOCKS_DO_NOT_FIT, arrangement.place,
                f"{project.block(position.block).name} stands {size[0].text} × {size[1].text} beside blocks of "
                f"{first[0].text} × {first[1].text}; one arrangement has blocks of one size",
                hint="give all blocks one size and turn blocks that are not square by half turns only, or write "
                "`unequal rows`",
            )  # fmt: skip
        told.add(seen)


def check_sized(project: Project, ledger: Ledger, report: Report) -> None:
    """Report what only shows once the sizes are known."""
    width, height = ledger["finished_width"], ledger["finished_height"]
    limit = LONGEST_SIDE[project.unit]
    for side in (width, height):
        if side.value > limit:
            report.add(
                PROJECT_TOO_LARGE, project.arrangement.place or project.place,
                f"the {side.name} is {side.text}; at most {format_length(limit, project.unit)} can be planned",
                hint="use fewer or smaller blocks, or narrower borders",
            )  # fmt: skip
    sashing = project.arrangement.sashing
    if sashing and "sashing_width" not in ledger.figures:
        report.add(
            SASHING_UNUSED, sashing.place, "there is sashing between blocks, but only one block",
            hint="leave the sashing out, or put it all round",
        )  # fmt: skip
    _check_opening(project, ledger, report)
    _check_hanging(project, ledger, report)
    check_edges(project, ledger, report)


def _check_opening(project: Project, ledger: Ledger, report: Report) -> None:
    if not isinstance(project.finish, Turned):
        return
    opening, width, height = project.finish.opening, ledger["finished_width"], ledger["finished_height"]
    if opening.value >= width.value and opening.value >= height.value:
        report.add(
            OPENING_TOO_LONG, opening.place or project.finish.place,
            f"the opening is {opening.text} long, but the project is only {width.text} × {height.text}",
            hint="leave about a third of one edge open",
        )  # fmt: skip


def _check_hanging(project: Project, ledger: Ledger, report: Report) -> None:
    width = ledger["finished_width"]
    match project.hanging:
        case Sleeve() as sleeve:
            finished = ledger["sleeve_finished_length"]
            if not 0 < finished.value <= width.value:
                report.add(
                    HANGING_TOO_LARGE, sleeve.place,
                    f"the sleeve would be {finished.text} long on a project {width.text} wide",
                    hint="add less to its cut length, or turn wider hems",
                )  # fmt: skip
        case CornerPockets() as pockets:
            if 2 * pockets.square.value > width.value:
                report.add(
                    HANGING_TOO_LARGE, pockets.place,
                    f"two corner pockets from squares of {pockets.square.text} do not fit side by side on {width.text}",
                    hint="cut smaller squares",
                )  # fmt: skip
