"""What borders must satisfy before they can be sized."""

from __future__ import annotations

from evenseam.pattern import Border, PiecedBorder, Project
from evenseam.problems import Report
from evenseam.sizing.codes import CORNER_DOES_NOT_FIT, LENGTH_NOT_POSITIVE


def check_borders(project: Project, report: Report) -> None:
    """Report corner blocks that do not fit their border, and lengths below zero."""
    for border in project.borders:
        if border.ease is not None and border.ease.value < 0:
            report.add(
                LENGTH_NOT_POSITIVE, border.ease.place, f"{border.ease.name} is {border.ease.text}",
                hint="write how much longer the strips are cut in all, such as 4",
            )  # fmt: skip
        if border.pieced is not None:
            _check_pieced(project, border, border.pieced, report)


def _check_pieced(project: Project, border: Border, pieced: PiecedBorder, report: Report) -> None:
    least = pieced.least_spacer
    if least is not None and least.value < 0:
        report.add(
            LENGTH_NOT_POSITIVE, least.place, f"{least.name} is {least.text}",
            hint="write the narrowest spacer strip worth sewing, such as 1/2",
        )  # fmt: skip
    if pieced.corner_block is None:
        return
    corner, width = project.block(pieced.corner_block), border.width
    if corner.width.value == width.value and corner.height.value == width.value:
        return
    report.add(
        CORNER_DOES_NOT_FIT, pieced.place or border.place,
        f"{corner.name} finishes {corner.width.text} × {corner.height.text}; the corners of the {border.name} are "
        f"{width.text} square",
        hint=f"draft {corner.name} to finish {width.text} × {width.text}, or take `corner block` out for squares",
    )  # fmt: skip
