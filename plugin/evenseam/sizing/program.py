"""A sized project and its cuts become the assembly program: blocks, rows, borders, finish, hanging."""

from __future__ import annotations

from evenseam.pattern import CutList, PieceSection, Program, Setting, Step
from evenseam.sizing.block_steps import block_steps
from evenseam.sizing.border_steps import border_steps
from evenseam.sizing.finish_steps import finish_steps
from evenseam.sizing.on_point_steps import on_point_steps
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.top_steps import centre_steps
from evenseam.sizing.unequal_steps import unequal_steps


def assembly_program(sized: SizedProject, cuts: CutList) -> Program:
    """Return the steps of the making, in order; the last one leaves the finished project.

    `cuts` is the cut list of the same project: every part a step takes from it is named by its cut id.
    """
    steps: list[Step] = []
    parts: dict[str, str] = {}
    for pieced in sized.blocks:
        made, parts[pieced.block] = block_steps(sized, pieced)
        steps += made
    made, centre = _CENTRE_STEPS[sized.project.arrangement.setting](sized, parts)
    steps += made
    made, top = border_steps(sized, centre, parts)
    steps += made
    steps += finish_steps(sized, top)
    _check_patches(steps, cuts)
    return Program(tuple(steps))


_CENTRE_STEPS = {
    Setting.STRAIGHT: centre_steps, Setting.ON_POINT: on_point_steps, Setting.UNEQUAL_ROWS: unequal_steps,
}  # fmt: skip


def _check_patches(steps: list[Step], cuts: CutList) -> None:
    """Assert that both were made from one project; anything else is our own mistake."""
    known = {cut.id for cut in cuts.cuts}
    for step in steps:
        if isinstance(step.operation, PieceSection):
            assert all(patch.cut in known for patch in step.operation.patches), step.id
