"""The steps that sew the borders round the centre, innermost first."""

from __future__ import annotations

from evenseam.pattern import (
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    Border,
    BorderCorners,
    JoinRun,
    Press,
    Quantity,
    Run,
    Step,
    derived,
)
from evenseam.sizing.border_cuts import corner_id, sides_id, top_bottom_id
from evenseam.sizing.borders import sides_go_first
from evenseam.sizing.ledger import named_after
from evenseam.sizing.mitred import border_groups, is_mitred
from evenseam.sizing.pieced_border_steps import pieced_border_steps
from evenseam.sizing.sized import SizedProject

MITRED_STRIPS = "strips to be mitred"
"""What a run of border strips joined lengthwise is, for the words."""


def border_steps(sized: SizedProject, top: str, blocks: dict[str, str]) -> tuple[list[Step], str]:
    """Return the steps that sew the borders on, innermost first, and the workpiece of the whole top.

    `blocks` gives the workpiece of every block.
    """
    width, height = sized.figure("centre_width"), sized.figure("centre_height")
    steps: list[Step] = []
    for group in border_groups(sized.project):
        border = group[0]
        if is_mitred(border):
            made, top = _mitred(group, sized, top)
        elif border.pieced is not None:
            made, top = pieced_border_steps(border, border.pieced, sized, top, blocks, (width, height))
        elif border.corners is BorderCorners.PARTIAL_SEAM:
            made, top = _partial_seam(border, sized, top)
        else:
            made, top = _butted(border, sized, top, width, height)
        steps += made
        width, height = made[-1].measures or (width, height)
    return steps, top


def _size_with(border: Border, sized: SizedProject) -> tuple[Quantity, Quantity]:
    name = named_after(border.id, "border")
    return sized.figure(f"width_with_{name}"), sized.figure(f"height_with_{name}")


def _mitred(group: tuple[Border, ...], sized: SizedProject, centre: str) -> tuple[list[Step], str]:
    inner, outer = group[0], group[-1]
    sides, top_bottom = sides_id(inner), top_bottom_id(inner)
    steps: list[Step] = []
    if len(group) > 1:
        name, seam = named_after(outer.id, "border"), sized.project.seam_allowance
        wide = derived(
            "width of the joined strips", sized.figure(f"{name}_mitred_width") + 2 * seam,
            rule="the borders' finished widths, and a seam allowance at either edge",
        )  # fmt: skip
        # Pressed opposite ways, the seams of two neighbouring strips nest where they meet in the corner.
        for run, strip, press, measures in (
            (Run.ACROSS, sides_id, Press.FIRST, (wide, sized.figure(f"{name}_side_strip_length"))),
            (Run.DOWN, top_bottom_id, Press.SECOND, (sized.figure(f"{name}_top_strip_length"), wide)),
        ):
            parts = tuple(strip(border) for border in reversed(group))
            makes = f"joined-{strip(outer)}"
            operation = JoinRun(parts, run, press, MITRED_STRIPS)
            steps.append(Step(f"join-{strip(outer)}", operation, makes, 2, measures))
        sides, top_bottom = f"joined-{sides_id(outer)}", f"joined-{top_bottom_id(outer)}"
    ids = tuple(border.id for border in group)
    makes = f"top-with-{outer.id}"
    mitre = AddMitredBorder(ids, centre, sides, top_bottom)
    steps.append(Step(f"mitre-{outer.id}", mitre, makes, 1, _size_with(outer, sized)))
    return steps, makes


def _partial_seam(border: Border, sized: SizedProject, centre: str) -> tuple[list[Step], str]:
    makes = f"top-with-{border.id}"
    operation = AddPartialSeamBorder(border.id, centre, sides_id(border), top_bottom_id(border))
    return [Step(f"{border.id}-strips", operation, makes, 1, _size_with(border, sized))], makes


def _butted(
    border: Border, sized: SizedProject, inside: str, width: Quantity, height: Quantity
) -> tuple[list[Step], str]:
    name = named_after(border.id, "border")
    wide, high = _size_with(border, sized)
    strips = {Run.ACROSS: sides_id(border), Run.DOWN: top_bottom_id(border)}
    words = {Run.ACROSS: "sides", Run.DOWN: "top-bottom"}
    sides_first = sides_go_first(border.order, width, height)
    first, second = (Run.ACROSS, Run.DOWN) if sides_first else (Run.DOWN, Run.ACROSS)
    halfway = (wide, height) if sides_first else (width, high)
    steps: list[Step] = []
    if border.corners is BorderCorners.CORNERSTONES:
        long = (wide, sized.figure(f"{name}_strip_width"))
        strip = f"{border.id}-{words[second]}-with-cornerstones"
        run = Run.ACROSS if second is Run.DOWN else Run.DOWN
        parts = (corner_id(border), strips[second], corner_id(border))
        measures = long if second is Run.DOWN else (long[1], high)
        operation = JoinRun(parts, run, Press.SECOND, "strip and cornerstones")
        steps.append(Step(f"{border.id}-cornerstones", operation, strip, 2, measures))
        strips[second] = strip
    made = inside
    for run, measures in ((first, halfway), (second, (wide, high))):
        id = f"{border.id}-{words[run]}"
        makes = f"top-with-{id}" if run is first else f"top-with-{border.id}"
        steps.append(Step(id, AddBorderStrips(border.id, made, strips[run], run, Press.OUTWARD), makes, 1, measures))
        made = makes
    return steps, made
