"""A project with lengths in both units, re-drafted so that every length lies on the ruler of its edition.

Nothing that was cut is converted: finished sizes move to marks of the other ruler and the whole project is worked
out again from them, so the new figures sew together as well as the old ones.
"""

from __future__ import annotations

from dataclasses import replace

from evenseam.pattern import Binding, Bound, CornerPockets, Finish, Hanging, Project, Sleeve
from evenseam.problems import Outcome, Report
from evenseam.sizing.redraft_block import redraft_block
from evenseam.sizing.ruler import Ruler


def redraft(project: Project) -> Outcome[Project]:
    """Return the project with every length in `project.unit`; lengths that are in it already stay untouched.

    Warns with `proportions-changed` where a block cannot keep its proportions on the other ruler.
    """
    report = Report()
    ruler = Ruler(project.unit)
    arrangement, sashing = project.arrangement, project.arrangement.sashing
    if sashing:
        arrangement = replace(arrangement, sashing=replace(sashing, width=ruler.finished(sashing.width)))
    used = {position.block for row in arrangement.positions for position in row}
    # Nothing is said about blocks that this size of the pattern does not use.
    blocks = tuple(
        redraft_block(block, project.unit, ruler, report if block.id in used else Report()) for block in project.blocks
    )
    return Outcome(
        replace(
            project,
            seam_allowance=ruler.seam_allowance(project.seam_allowance),
            usable_width=ruler.usable_width(project.usable_width),
            patch_margin=ruler.fine(project.patch_margin),
            blocks=blocks,
            arrangement=arrangement,
            borders=tuple(replace(border, width=ruler.finished(border.width)) for border in project.borders),
            finish=_finish(project.finish, ruler),
            hanging=_hanging(project.hanging, ruler),
        ),
        report.as_tuple(),
    )


def _finish(finish: Finish, ruler: Ruler) -> Finish:
    layers = replace(
        finish,
        backing_overage=ruler.finished(finish.backing_overage),
        batting_overage=ruler.finished(finish.batting_overage),
    )
    if isinstance(layers, Bound):
        return replace(
            layers, backing_seam=ruler.finished(layers.backing_seam), binding=_binding(layers.binding, ruler)
        )
    return replace(layers, opening=ruler.finished(layers.opening), topstitch=ruler.fine(layers.topstitch))


def _binding(binding: Binding, ruler: Ruler) -> Binding:
    return replace(
        binding,
        strip_width=ruler.finished(binding.strip_width),
        extra_length=ruler.finished(binding.extra_length),
    )


def _hanging(hanging: Hanging | None, ruler: Ruler) -> Hanging | None:
    match hanging:
        case Sleeve():
            return replace(
                hanging,
                cut_depth=ruler.finished(hanging.cut_depth),
                cut_extra=ruler.finished(hanging.cut_extra),
                hem=ruler.finished(hanging.hem),
                drop=ruler.finished(hanging.drop),
            )
        case CornerPockets():
            return replace(hanging, square=ruler.finished(hanging.square))
    return None
