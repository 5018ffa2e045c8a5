"""Round corners: cut, and bound with binding that follows the curve."""

from __future__ import annotations

from evenseam.figures.drawing import Stroke, Tone
from evenseam.figures.frame import at
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.rounded import quarter_circle
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.turning import corner_fabric
from evenseam.pattern import Bind, Bound, RoundCorners, Step

SIDE = 150
ROUND = 84
BAND = 30
LINE = 15


def draw_round_corners(scene: Scene, step: Step, operation: RoundCorners) -> None:
    """Draw one corner large, with the curve to cut along and its radius."""
    pen = scene.pen
    curve = _curve(ROUND)
    pen.area(Polygon((at(SIDE, 0), *reversed(curve))), Tone.LEFTOVER)
    pen.cloth((Polygon((at(0, 0), *curve, at(SIDE, SIDE), at(0, SIDE))),), corner_fabric(scene))
    pen.line(curve, Stroke.CUT)
    pen.line((at(SIDE - ROUND, 0), at(SIDE - ROUND, ROUND), at(SIDE, ROUND)), Stroke.HELP)
    pen.measure(at(SIDE - ROUND, -16), at(SIDE, -16), operation.radius.text)
    pen.measure(at(SIDE + 14, 0), at(SIDE + 14, ROUND), operation.radius.text)
    pen.caption(at(SIDE / 2, SIDE + 17), "cut all four corners alike", SIDE + 70)


def draw_bind_round(scene: Scene, step: Step, operation: Bind) -> None:
    """Draw the binding sewn on round a corner of the front, and folded over to the back."""
    finish = scene.sheet.project.finish
    assert isinstance(finish, Bound)  # only a bound project has this step
    pen, strip = scene.pen, finish.binding.fabric
    for number, (cloth, text) in enumerate(
        ((corner_fabric(scene), f"1 sew, {operation.seam.text} from the edge"),
         (finish.backing_fabric, "2 fold to the back, sew down"))
    ):  # fmt: skip
        step_right = Point(number * (SIDE + 50.0), 0.0)
        outer, inner = _curve(ROUND), _curve(ROUND - BAND, BAND)
        pen.cloth((Polygon((at(0, 0), *outer, at(SIDE, SIDE), at(0, SIDE))).moved(step_right),), cloth)
        band = Polygon((at(0, 0), *outer, at(SIDE, SIDE), at(SIDE - BAND, SIDE), *reversed(inner), at(0, BAND)))
        pen.cloth((band.moved(step_right),), strip)
        deep = LINE if number == 0 else BAND - 3
        way = (at(0, deep), *_curve(ROUND - deep, deep), at(SIDE - deep, SIDE))
        pen.line((spot + step_right for spot in way), Stroke.SEWN if number == 0 else Stroke.STITCH)
        pen.caption(at(SIDE / 2 + step_right.x, SIDE + 17), text, 190.0)


def _curve(radius: float, inset: float = 0.0) -> tuple[Point, ...]:
    """Return the curve of the top right corner so far inside the edge, from its top to its right end."""
    centre = at(SIDE - inset - radius, inset + radius)
    return tuple(centre + Point(spot.y * radius, -spot.x * radius) for spot in quarter_circle())
