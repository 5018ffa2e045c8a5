"""One block by itself: as it looks, and as a key to its sections and pieces."""

from __future__ import annotations

from evenseam.figures.callouts import Callout, draw_callouts
from evenseam.figures.cloth_work import draw_cloth, draw_letter, draw_work
from evenseam.figures.drawing import LARGE_SIZE, Stroke
from evenseam.figures.frame import WIDE, Frame, at
from evenseam.figures.legend import draw_legend
from evenseam.figures.measure_line import room_beside
from evenseam.figures.scene import Scene
from evenseam.figures.spot import label_spot
from evenseam.figures.workbench import block_workpiece
from evenseam.pattern import Block, Method

SIDE = 310.0
HIGH = 290.0
LEGEND_WIDE = 330.0


def draw_block(scene: Scene, block: Block) -> None:
    """Draw a finished block with its fabric letters and its finished size."""
    work = block_workpiece(block, scene.sheet.project.seam_allowance.value)
    frame = Frame.fitting(work.width, work.height, min(SIDE, WIDE - room_beside(block.height.text)), HIGH)
    draw_work(scene.pen, work, frame, has_allowance=False, has_letters=True)
    wide, high = frame.length(work.width), frame.length(work.height)
    scene.pen.measure(at(0, high + 14), at(wide, high + 14), block.width.text)
    scene.pen.measure(at(wide + 12, 0), at(wide + 12, high), block.height.text)
    used = {patch.fabric for patch in work.patches}
    listed = (fabric.id for fabric in scene.sheet.project.fabrics if fabric.id in used)
    draw_legend(scene.pen, listed, at(0, high + 34), max(wide, LEGEND_WIDE))


def draw_key(scene: Scene, block: Block) -> None:
    """Draw a block with the label of every piece; heavy lines part its sections."""
    work = block_workpiece(block, scene.sheet.project.seam_allowance.value)
    frame = Frame.fitting(work.width, work.height, SIDE, HIGH)
    pen = scene.pen
    draw_cloth(pen, ((patch.fabric, frame.polygon(patch.outline)) for patch in work.patches))
    pieced = scene.sheet.sized.pieced(block.id)
    across, down = block.scale
    if block.method is Method.FOUNDATION and len(pieced.sections) > 1:
        for section in pieced.sections:
            pen.outline(frame.polygon(section.outline.scaled(across, down)), Stroke.CUT)
    is_rotary = block.method is Method.ROTARY
    labels = {
        piece.piece: section.name if is_rotary else piece.label
        for section in pieced.sections
        for piece in section.pieces
    }
    letter_of = pen.looks
    small: list[Callout] = []
    for patch in work.patches:
        outline, label = frame.polygon(patch.outline), labels[patch.piece]
        # The fabric's letter stands beside the label where both fit.
        both = f"{label} ({letter_of[patch.fabric].letter})"
        if label_spot(outline, both, LARGE_SIZE) is not None:
            label = both
        if not draw_letter(pen, outline, label, patch.fabric, largest=LARGE_SIZE):
            small.append(Callout(outline, label))
    draw_callouts(pen, small, 0.0, frame.length(work.width), frame.length(work.height))
    high = frame.length(work.height)
    used = {patch.fabric for patch in work.patches}
    listed = (fabric.id for fabric in scene.sheet.project.fabrics if fabric.id in used)
    draw_legend(pen, listed, at(0, high + 14), max(frame.length(work.width), LEGEND_WIDE))
