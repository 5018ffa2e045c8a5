"""A unit sewn a little large, and where it is trimmed."""

from __future__ import annotations

from evenseam.figures.allowance import raw_outline, with_allowance
from evenseam.figures.cloth_work import draw_cloth, draw_letter
from evenseam.figures.drawing import Stroke
from evenseam.figures.frame import Frame, at
from evenseam.figures.scene import Scene
from evenseam.pattern import Step

SIDE = 230.0
LARGE = 1.75
"""How much wider the edge is drawn than a seam allowance: the strip that is cut away must be seen."""


def draw_trim(scene: Scene, step: Step) -> None:
    """Draw the unit with the cut all round it, one seam allowance beyond its seam lines, and the size that is left."""
    work, pen = scene.bench(step).makes, scene.pen
    grown = with_allowance((patch.outline for patch in work.patches), work.outline, work.seam * LARGE)
    raw = raw_outline(work.outline, work.seam)
    left, top, right, bottom = raw.bounds
    frame = Frame.fitting(right - left, bottom - top, SIDE, SIDE)
    draw_cloth(pen, ((patch.fabric, frame.polygon(shape)) for patch, shape in zip(work.patches, grown, strict=True)))
    pen.outline(frame.polygon(work.outline), Stroke.SEAM)
    pen.outline(frame.polygon(raw), Stroke.CUT)
    for patch in work.patches:
        draw_letter(pen, frame.polygon(patch.outline), pen.looks[patch.fabric].letter, patch.fabric)
    if step.measures is not None:
        width, height = step.measures
        spare = frame.length(work.seam * (LARGE - 1)) + 14
        low, high = frame.spot(left, bottom), frame.spot(right, bottom)
        pen.measure(at(low.x, low.y + spare), at(high.x, high.y + spare), width.text)
        pen.measure(frame.spot(right, top) + at(spare, 0), frame.spot(right, bottom) + at(spare, 0), height.text)
