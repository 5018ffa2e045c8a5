"""What blocks must satisfy to be set on point, and what an author should know about them."""

from __future__ import annotations

from evenseam.exact import Direction, Rounding, format_length, is_multiple
from evenseam.pattern import Project, Setting
from evenseam.problems import Report
from evenseam.sizing.codes import NOT_SQUARE_ON_POINT, OFF_THE_RULER, PRINT_LIES_ASKEW
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.on_point import FLOATED_MARK, sashing_on_point, triangles_of


def check_on_point(project: Project, report: Report) -> None:
    """Report blocks that are no squares; warn of prints that lie askew."""
    arrangement = project.arrangement
    if arrangement.setting is not Setting.ON_POINT:
        return
    used = dict.fromkeys(position.block for line in arrangement.positions for position in line)
    blocks = [project.block(id) for id in used]
    for block in blocks:
        if block.width.value != block.height.value:
            report.add(
                NOT_SQUARE_ON_POINT, block.width.place or block.place,
                f"{block.name} finishes {block.width.text} × {block.height.text}; only square blocks are set on point",
                hint=f"draw it to finish {block.width.text} square, or set the blocks straight",
            )  # fmt: skip
    held = {piece.fabric: block.name for block in blocks for piece in block.pieces}
    sashing = sashing_on_point(arrangement)
    for fabric in project.fabrics:
        where = f"the {held[fabric.id]} block" if fabric.id in held else ""
        if sashing and fabric.id in (sashing.fabric, sashing.cornerstone_fabric):
            where = where or "the sashing"
        if fabric.is_directional and where:
            report.add(
                PRINT_LIES_ASKEW, arrangement.place,
                f"the print of {fabric.name} has an up; in {where}, set on point, it leans by 45 degrees, askew",
                hint="use a fabric without direction there, or set the blocks straight; setting triangles stay upright",
            )  # fmt: skip


def check_floated(project: Project, ledger: Ledger, report: Report) -> None:
    """Warn of a float that leaves the trimmed top on no mark of the ruler, with the nearest that does not."""
    if project.arrangement.setting is not Setting.ON_POINT:
        return
    unit, triangles = project.unit, triangles_of(project)
    sides = [
        ("wide", ledger["centre_width"], ledger["float_width"]),
        ("high", ledger["centre_height"], ledger["float_height"]),
    ]
    stated = triangles.float_width
    way_out = "leave `float` out, and the least one that comes to a mark is chosen"
    if stated.value > 0:
        least = f"`least float: {format_length(stated.value, unit)}`"
        way_out = f"write {least} in its place, and what is lacking to the next mark is added"
    for way, size, floated in sides:
        if is_multiple(size.value, unit.ruler_mark):
            continue
        finished = size.value - 2 * project.seam_allowance.value
        marks = [Rounding("ruler", FLOATED_MARK[unit], to).apply(finished) for to in (Direction.DOWN, Direction.UP)]
        reached = [(mark, floated.value + (mark - finished) / 2) for mark in marks]
        told = " or ".join(
            f"{format_length(mark, unit)} with a float of {format_length(needed, unit)}"
            for mark, needed in reached
            if needed >= 0
        )
        report.add(
            OFF_THE_RULER, triangles.float_width.place or triangles.place or project.arrangement.place,
            f"with this float the blocks on point finish {format_length(finished, unit)} {way}: on no mark of a ruler",
            hint=f"the nearest that can be measured is {told}; no figure is exactly that: {way_out}",
        )  # fmt: skip
