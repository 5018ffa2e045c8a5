"""A project with lengths in both units, re-drafted so that every length lies on the ruler of its edition.

Nothing that was cut is converted: finished sizes move to marks of the other ruler and the whole project is worked
out again from them, so the new figures sew together as well as the old ones.
"""

from __future__ import annotations

from dataclasses import replace

from evenseam.pattern import Project
from evenseam.problems import Outcome, Report
from evenseam.sizing.border_blocks import border_blocks
from evenseam.sizing.redraft_arrangement import redraft_arrangement
from evenseam.sizing.redraft_block import redraft_block
from evenseam.sizing.redraft_border import redraft_border
from evenseam.sizing.redraft_finish import redraft_finish, redraft_fit, redraft_hanging
from evenseam.sizing.redraft_together import redraft_together
from evenseam.sizing.ruler import Ruler


def redraft(project: Project) -> Outcome[Project]:
    """Return the project with every length in `project.unit`; lengths that are in it already stay untouched.

    Warns with `proportions-changed` where a block cannot keep its proportions on the other ruler.
    """
    report = Report()
    ruler = Ruler(project.unit)
    arrangement = redraft_arrangement(project.arrangement, ruler)
    used = {position.block for row in arrangement.positions for position in row} | {*border_blocks(project)}
    # Nothing is said about blocks that this size of the pattern does not use.
    blocks = tuple(
        redraft_block(block, project.unit, ruler, report if block.id in used else Report()) for block in project.blocks
    )
    blocks = redraft_together(project.blocks, blocks, ruler)
    return Outcome(
        replace(
            project,
            seam_allowance=ruler.seam_allowance(project.seam_allowance),
            usable_width=ruler.usable_width(project.usable_width),
            patch_margin=ruler.fine(project.patch_margin),
            blocks=blocks,
            arrangement=arrangement,
            borders=tuple(redraft_border(border, blocks, ruler) for border in project.borders),
            finish=redraft_finish(project.finish, ruler),
            hanging=redraft_hanging(project.hanging, ruler),
            fit=redraft_fit(project.fit, ruler),
        ),
        report.as_tuple(),
    )
