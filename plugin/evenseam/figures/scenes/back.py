"""The back of the finished project, as it lies on the table while it is made ready to hang."""

from __future__ import annotations

from evenseam.figures.drawing import Stroke
from evenseam.figures.frame import Frame, rectangle
from evenseam.figures.plane import Polygon, decimal
from evenseam.figures.rounded import rounded
from evenseam.figures.scene import Scene
from evenseam.pattern import Bound, EnvelopeBack, Faced, KnifeEdge, Turned

BACK_SIDE = 300.0


def draw_back(scene: Scene) -> Frame:
    """Draw the back of the project with its edge, and return where it lies."""
    sized, pen = scene.sheet.sized, scene.pen
    width, height = decimal(sized.finished_width.value), decimal(sized.finished_height.value)
    frame = Frame.fitting(width, height, BACK_SIDE, BACK_SIDE)
    whole = rectangle(0, 0, frame.length(width), frame.length(height))
    match scene.sheet.project.finish:
        case Turned() as finish:
            pen.cloth((whole,), finish.backing_fabric)
            pen.outline(frame.polygon(_ring(width, height, decimal(finish.topstitch.value))), Stroke.STITCH)
        case Bound(binding=binding, corner_radius=corner) as finish:
            radius = 0.0 if corner is None else decimal(corner.value)
            front = decimal(sized.figure("binding_front_width").value)
            pen.cloth((frame.polygon(rounded(width, height, radius)),), binding.fabric)
            pen.cloth((frame.polygon(rounded(width, height, radius, front)),), finish.backing_fabric)
        case Faced() as finish:
            facing = decimal(sized.figure("facing_finished_width").value)
            pen.cloth((whole,), finish.facing_fabric)
            pen.cloth((frame.polygon(_ring(width, height, facing)),), finish.backing_fabric)
        case KnifeEdge() as finish:
            pen.cloth((whole,), finish.backing_fabric)
            pen.outline(frame.polygon(_ring(width, height, decimal(finish.stitch.value))), Stroke.STITCH)
        case EnvelopeBack() as finish:
            pen.cloth((whole,), finish.panel_fabric)
    return frame


def _ring(width: float, height: float, inset: float) -> Polygon:
    return rectangle(inset, inset, width - 2 * inset, height - 2 * inset)
