"""A border of four strips that pass one corner each: the first is sewn in part, the others all the way."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_cloth, draw_work
from evenseam.figures.dots import dot
from evenseam.figures.drawing import SMALL_SIZE, Stroke, Tone
from evenseam.figures.frame import WIDE, Frame, at
from evenseam.figures.measure_line import room_beside
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.scene import Scene
from evenseam.figures.workpiece import Workpiece
from evenseam.pattern import AddPartialSeamBorder, Step

SIDE = 178.0
BETWEEN = 20.0


def draw_partial_seam(scene: Scene, step: Step, operation: AddPartialSeamBorder) -> None:
    r"""Draw the first strip with its free end, and all four with the seam that is closed last.

    ::

        \----+------+            +-------+--+
         \   +--1---+            |---1---|  |
             |      |            |  |    | 2|
             |      |            |4 +----+--+
             +------+            +--+--3----+
    """
    bench = scene.bench(step)
    centre, made = bench.uses[operation.centre], bench.makes
    thick = (made.width - centre.width) / 2
    is_wide = made.width > 2 * made.height
    room = WIDE - room_beside(scene.measured(operation.sides)[1])
    frame = Frame.fitting(made.width, made.height, room if is_wide else (room - BETWEEN) / 2, SIDE)
    first = frame.moved_by(0, 26)
    _draw_first(scene, operation, centre, thick, first)
    wide, high = frame.length(made.width), frame.length(made.height)
    pen = scene.pen
    room = wide + 60 if is_wide else wide + BETWEEN - 4
    pen.caption(at(wide / 2, high + 26 + 16), "sew half of the first seam", room)
    second = frame.moved_by(0, high + 84) if is_wide else frame.moved_by(wide + BETWEEN, 26)
    _draw_all(scene, operation, centre, made, thick, second)
    below = second.origin.y + high + 16
    text = "then 2, 3 and 4; close the first last"
    pen.caption(at(second.origin.x + wide / 2, below), text, room)


def _draw_first(scene: Scene, operation: AddPartialSeamBorder, centre: Workpiece, thick: float, frame: Frame) -> None:
    """Draw the top strip sewn on from its right end to the middle of the edge, its left end turned up."""
    pen, fabric = scene.pen, _fabric(scene, operation)
    draw_work(pen, centre, frame.moved_to(frame.spot(thick, thick)), has_allowance=False)
    half, right = thick + centre.width / 2, thick + centre.width
    lift = 18 / frame.scale
    sewn = Polygon((at(half, 0.0), at(right, 0.0), at(right, thick), at(half, thick)))
    free = Polygon((at(0.0, -lift), at(half, 0.0), at(half, thick), at(0.0, thick - lift)))
    draw_cloth(pen, ((fabric, frame.polygon(sewn)), (fabric, frame.polygon(free))))
    pen.line((frame.spot(half, thick), frame.spot(right, thick)), Stroke.SEWN)
    pen.area(dot(frame.spot(half, thick)), Tone.DOT)
    _number(scene, frame.spot((half + right) / 2, thick / 2), 1)


def _draw_all(
    scene: Scene, operation: AddPartialSeamBorder, centre: Workpiece, made: Workpiece, thick: float, frame: Frame
) -> None:
    pen = scene.pen
    draw_work(pen, made, frame, has_allowance=False)
    width, height = centre.width, centre.height
    right, low, half = thick + width, thick + height, thick + width / 2
    for start, end in (
        ((right, 0.0), (right, low)), ((right + thick, low), (thick, low)), ((thick, low + thick), (thick, thick)),
        ((half, thick), (right, thick)),
    ):  # fmt: skip
        pen.line((frame.spot(*start), frame.spot(*end)), Stroke.SEAM)
    pen.line((frame.spot(0.0, thick), frame.spot(half, thick)), Stroke.SEWN)
    pen.area(dot(frame.spot(half, thick)), Tone.DOT)
    for number, spot in enumerate(
        (
            (thick + width * 3 / 4, thick / 2), (right + thick / 2, low / 2), (thick + right / 2, low + thick / 2),
            (thick / 2, thick + low / 2),
        ), start=1,
    ):  # fmt: skip
        _number(scene, frame.spot(*spot), number)
    wide = scene.measured(operation.top_bottom)[0]
    high = scene.measured(operation.sides)[1]
    pen.measure(frame.spot(0.0, 0.0) + at(0, -12), frame.spot(right, 0.0) + at(0, -12), wide)
    pen.measure(frame.spot(right + thick, 0.0) + at(12, 0), frame.spot(right + thick, low) + at(12, 0), high)


def _fabric(scene: Scene, operation: AddPartialSeamBorder) -> str:
    return next(border.fabric for border in scene.sheet.project.borders if border.id == operation.border)


def _number(scene: Scene, spot: Point, number: int) -> None:
    scene.pen.label(spot, str(number), size=SMALL_SIZE, is_bold=True, has_ground=True)
