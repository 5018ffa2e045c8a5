"""The finished project as it will look, its fabrics named below."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_cloth
from evenseam.figures.drawing import Stroke
from evenseam.figures.frame import Frame, at, rectangle
from evenseam.figures.legend import draw_legend
from evenseam.figures.plane import decimal
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.loops import loop_places
from evenseam.figures.scenes.turning import stitched_ring
from evenseam.pattern import Bound, KnifeEdge, Loops, Turned

HIGHEST = 370.0
"""So high that the names of nine fabrics have room below it."""


def draw_finished(scene: Scene) -> None:
    """Draw every visible piece in its place."""
    sized = scene.sheet.sized
    width, height = sized.finished_width.value, sized.finished_height.value
    frame = Frame.fitting(width, height, high=HIGHEST)
    _draw_loops(scene, frame)
    draw_cloth(scene.pen, ((placed.fabric, frame.polygon(placed.outline)) for placed in sized.placed))
    finish = scene.sheet.project.finish
    if isinstance(finish, (Turned, KnifeEdge)):
        inset = finish.topstitch.value if isinstance(finish, Turned) else finish.stitch.value
        scene.pen.outline(frame.polygon(stitched_ring(scene, decimal(inset))), Stroke.STITCH)
    below = frame.length(height) + 16
    used = {placed.fabric for placed in sized.placed}
    listed = (fabric.id for fabric in scene.sheet.project.fabrics if fabric.id in used)
    draw_legend(scene.pen, listed, at(0, below), max(frame.length(width), 330.0))


def _draw_loops(scene: Scene, frame: Frame) -> None:
    """Draw the loops a project hangs by, which stand up above its top edge."""
    project, sized = scene.sheet.project, scene.sheet.sized
    if not isinstance(project.hanging, Loops):
        return
    shows, width = decimal(sized.figure("loop_shows").value), decimal(sized.finished_width.value)
    finish = project.finish
    inset = decimal(finish.corner_radius.value) if isinstance(finish, Bound) and finish.corner_radius else 0.0
    loops = [rectangle(x, -shows, wide, shows) for x, wide in loop_places(scene, width, inset)]
    scene.pen.cloth((frame.polygon(loop) for loop in loops), project.hanging.fabric)
