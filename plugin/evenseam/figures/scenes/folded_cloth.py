"""Folded cloth as it lies on the mat, ready for strips to be cut across its whole width."""

from __future__ import annotations

from evenseam.cutting import CuttingPlan, PlannedStrip
from evenseam.figures.drawing import SMALL_SIZE, Ink, Stroke, Tone
from evenseam.figures.frame import at, rectangle
from evenseam.figures.plane import decimal
from evenseam.figures.scene import Scene
from evenseam.pattern import StripDirection
from evenseam.sheet import PatternSheet

HIGH = 112.0
"""Half the cloth's usable width, in drawing units."""
LONG = 200.0
MAT = 14.0
MOST_STRIPS = 3
SELVAGE = 6.0
SHIFT = 3.0
"""So much of the lower layer is to be seen."""


def folded_strips(sheet: PatternSheet) -> tuple[CuttingPlan, tuple[PlannedStrip, ...]] | None:
    """Return the first plan with strips across the whole width, and these; None when every fabric is cut otherwise."""
    for material in sheet.materials:
        plan = material.plan
        if plan is None:
            continue
        wide = [strip for strip in plan.strips if _is_wide(strip, plan)]
        if wide:
            return plan, tuple(wide)
    return None


def _is_wide(strip: PlannedStrip, plan: CuttingPlan) -> bool:
    return strip.direction is StripDirection.ACROSS and strip.width == plan.usable_width.value


def draw_folded(scene: Scene, plan: CuttingPlan, strips: tuple[PlannedStrip, ...]) -> None:
    """Draw two layers with the fold towards the maker, the squared-up end, and the first strips' lines to cut."""
    pen = scene.pen
    scale = HIGH / decimal(plan.usable_width.value) * 2
    pen.area(rectangle(-MAT, -MAT - SELVAGE, LONG + 2 * MAT, HIGH + 2 * MAT + SELVAGE), Tone.BOARD)
    pen.cloth((rectangle(SHIFT, -SELVAGE - SHIFT, LONG - SHIFT, HIGH),), plan.material)
    pen.cloth((rectangle(0, 0, LONG, HIGH),), plan.material)
    pen.area(rectangle(0, -SELVAGE, LONG, SELVAGE), Tone.PAPER)
    pen.line((at(0, HIGH), at(LONG, HIGH)), Stroke.FOLD)
    across = 0.0
    for strip in strips[:MOST_STRIPS]:
        wide = decimal(strip.height) * scale
        if across + wide > LONG:
            break
        pen.line((at(across + wide, -SELVAGE - SHIFT), at(across + wide, HIGH + 4)), Stroke.CUT)
        across += wide
    below, above = HIGH + MAT + 11, -SELVAGE - MAT - 9
    pen.caption(at(LONG / 2, below), "fold")
    pen.caption(at(LONG / 2, above), "both selvages together")
    pen.label(at(-MAT - 9, HIGH / 2), "squared-up end", size=SMALL_SIZE, ink=Ink.QUIET, is_upward=True)
