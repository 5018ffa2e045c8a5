"""The steps of a border of blocks: spacer strips, strips of blocks, and the four strips sewn on."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.pattern import (
    AddBorderStrips,
    BlockPosition,
    Border,
    JoinRun,
    Method,
    PiecedBorder,
    Press,
    Quantity,
    Run,
    Step,
    derived,
)
from evenseam.sizing.border_blocks import standing_along, standing_corners
from evenseam.sizing.border_cuts import corner_id, side_spacers_id, top_spacers_id
from evenseam.sizing.ledger import named_after
from evenseam.sizing.sized import SizedProject

STRIP_OF_BLOCKS = "strip of a pieced border"
"""What a run of blocks for a border is, for the words."""


@dataclass(frozen=True, slots=True)
class _Strips:
    """The strips of blocks for two opposite sides, and how each is turned for its side."""

    steps: tuple[Step, ...]
    strip: str
    opposite: str | None
    quarter_turns: int
    opposite_turns: int


def pieced_border_steps(
    border: Border,
    pieced: PiecedBorder,
    sized: SizedProject,
    centre: str,
    blocks: dict[str, str],
    inside: tuple[Quantity, Quantity],
) -> tuple[list[Step], str]:
    """Return the steps of a border of blocks round a centre of this raw size, and the workpiece they leave."""
    name = named_after(border.id, "border")
    known = dict(sized.figures)
    width, height = inside
    steps: list[Step] = []
    made = centre
    if f"{name}_side_spacer_width" in known:
        width = derived("width with the spacer strips", width + 2 * known[f"{name}_side_spacer_width"])
        strips = AddBorderStrips(border.id, made, side_spacers_id(border), Run.ACROSS, Press.OUTWARD)
        made = f"top-with-{side_spacers_id(border)}"
        steps.append(Step(side_spacers_id(border), strips, made, 1, (width, height)))
    if f"{name}_top_spacer_width" in known:
        height = derived("height with the spacer strips", height + 2 * known[f"{name}_top_spacer_width"])
        strips = AddBorderStrips(border.id, made, top_spacers_id(border), Run.DOWN, Press.OUTWARD)
        made = f"top-with-{top_spacers_id(border)}"
        steps.append(Step(top_spacers_id(border), strips, made, 1, (width, height)))
    sides, top_bottom = _sides(border, pieced, sized, blocks), _top_bottom(border, pieced, sized, blocks)
    steps += [*sides.steps, *top_bottom.steps]
    wide, high = known[f"width_with_{name}"], known[f"height_with_{name}"]
    press = Press.INWARD if f"{name}_side_spacer_width" in known else Press.OPEN
    add = AddBorderStrips(
        border.id, made, sides.strip, Run.ACROSS, press, sides.opposite, sides.quarter_turns, sides.opposite_turns
    )
    made = f"top-with-{border.id}-sides"
    steps.append(Step(f"{border.id}-sides", add, made, 1, (wide, height)))
    press = Press.INWARD if f"{name}_top_spacer_width" in known else Press.OPEN
    add = AddBorderStrips(
        border.id, made, top_bottom.strip, Run.DOWN, press, top_bottom.opposite, top_bottom.quarter_turns,
        top_bottom.opposite_turns,
    )  # fmt: skip
    made = f"top-with-{border.id}"
    steps.append(Step(f"{border.id}-top-bottom", add, made, 1, (wide, high)))
    return steps, made


def _sides(border: Border, pieced: PiecedBorder, sized: SizedProject, blocks: dict[str, str]) -> _Strips:
    """Return the strips for left and right: joined as they lie along the top, or upright where a print has an up."""
    number = sized.figure(f"{named_after(border.id, 'border')}_blocks_down").whole
    _, right, _, left = standing_along(pieced)
    if left.block == right.block:
        run = _run(sized, [BlockPosition(left.block)] * number, blocks, Run.ACROSS)
        made, strip = _join(border, sized, run, "side-strip", 2)
        return _Strips(made, strip, None, left.quarter_turns, right.quarter_turns)
    one, first = _join(border, sized, _run(sized, [left] * number, blocks, Run.DOWN), "left-strip", 1)
    other, second = _join(border, sized, _run(sized, [right] * number, blocks, Run.DOWN), "right-strip", 1)
    return _Strips((*one, *other), first, second, 0, 0)


def _top_bottom(border: Border, pieced: PiecedBorder, sized: SizedProject, blocks: dict[str, str]) -> _Strips:
    """Return the strips for top and bottom, with a corner at either end of each."""
    number = sized.figure(f"{named_after(border.id, 'border')}_blocks_across").whole
    top, _, bottom, _ = standing_along(pieced)
    corners = standing_corners(pieced)
    parts = {
        "top": ([top] * number, corners[:2]),
        "bottom": ([bottom] * number, corners[:1:-1]),
    }
    runs = {}
    for side, (along, ends) in parts.items():
        positions = [ends[0], *along, ends[1]] if ends else along
        runs[side] = _run(sized, positions, blocks, Run.ACROSS, "" if ends else corner_id(border))
    turned = [top.block, *(corner.block for corner in corners[:2])]
    over = [bottom.block, *(corner.block for corner in corners[2:])]
    is_cloth_upright = pieced.corner_block is None and _is_directional(border, sized)
    if turned == over and not is_cloth_upright:
        made, strip = _join(border, sized, runs["top"], "top-bottom-strip", 2)
        return _Strips(made, strip, None, 0, 2)
    one, first = _join(border, sized, runs["top"], "top-strip", 1)
    other, second = _join(border, sized, runs["bottom"], "bottom-strip", 1)
    return _Strips((*one, *other), first, second, 0, 0)


def _is_directional(border: Border, sized: SizedProject) -> bool:
    return sized.project.fabric(border.corner_fabric or border.fabric).is_directional


def _run(
    sized: SizedProject, positions: list[BlockPosition], blocks: dict[str, str], run: Run, ends: str = ""
) -> JoinRun:
    """Return the seams of a strip; `ends` is a cut to sew to both ends of it."""
    parts = [blocks[position.block] for position in positions]
    turns = [position.quarter_turns % 4 for position in positions]
    if ends:
        parts, turns = [ends, *parts, ends], [0, *turns, 0]
    is_bulky = any(sized.project.block(position.block).method is Method.FOUNDATION for position in positions)
    press = Press.OPEN if is_bulky else Press.FIRST
    return JoinRun(tuple(parts), run, press, STRIP_OF_BLOCKS, tuple(turns) if any(turns) else ())


def _join(border: Border, sized: SizedProject, run: JoinRun, called: str, times: int) -> tuple[tuple[Step, ...], str]:
    """Return the step that joins a strip, and its workpiece; a block alone is a strip already."""
    if len(run.parts) == 1:
        return (), run.parts[0]
    name, seam = named_after(border.id, "border"), sized.project.seam_allowance
    pieced = border.pieced
    assert pieced is not None
    block, across = sized.project.block(pieced.block), called in ("side-strip", "left-strip", "right-strip")
    number = sized.figure(f"{name}_blocks_{'down' if across else 'across'}")
    reach = number * block.width + 2 * seam if across else number * block.width + 2 * border.width + 2 * seam
    long = derived("length of the strip of blocks", reach)
    high = derived("height of the strip of blocks", border.width + 2 * seam)
    makes = f"{border.id}-{called}"
    measures = (long, high) if run.run is Run.ACROSS else (high, long)
    return (Step(f"join-{makes}", run, makes, times, measures),), makes
