"""The finished project as it will look, its fabrics named below."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_cloth
from evenseam.figures.drawing import Stroke
from evenseam.figures.frame import Frame, at, rectangle
from evenseam.figures.legend import draw_legend
from evenseam.figures.scene import Scene
from evenseam.pattern import Turned

HIGHEST = 400.0


def draw_finished(scene: Scene) -> None:
    """Draw every visible piece in its place."""
    sized = scene.sheet.sized
    width, height = sized.finished_width.value, sized.finished_height.value
    frame = Frame.fitting(width, height, high=HIGHEST)
    draw_cloth(scene.pen, ((placed.fabric, frame.polygon(placed.outline)) for placed in sized.placed))
    finish = scene.sheet.project.finish
    if isinstance(finish, Turned):
        inset = finish.topstitch.value
        line = rectangle(inset, inset, width - 2 * inset, height - 2 * inset)
        scene.pen.outline(frame.polygon(line), Stroke.STITCH)
    below = frame.length(height) + 16
    used = {placed.fabric for placed in sized.placed}
    listed = (fabric.id for fabric in scene.sheet.project.fabrics if fabric.id in used)
    draw_legend(scene.pen, listed, at(0, below), max(frame.length(width), 300.0))
