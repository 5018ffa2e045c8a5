"""Binding: strips joined and folded, and a corner turned with a mitre."""

from __future__ import annotations

from evenseam.figures.drawing import Pen, Side, Stroke, Tone
from evenseam.figures.frame import at, rectangle
from evenseam.figures.plane import Polygon
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.rounding import draw_bind_round
from evenseam.figures.scenes.turning import corner_fabric
from evenseam.figures.scenes.wide_corner import draw_bind_wide
from evenseam.pattern import Bind, Bound, Grain, MakeBinding, Step, StripJoin

PANEL = 112
GAP = 26


def draw_make_binding(scene: Scene, step: Step, operation: MakeBinding) -> None:
    """Draw two strips joined, if it takes more than one, and the strip folded along its length."""
    finish = scene.sheet.project.finish
    assert isinstance(finish, Bound)  # only a bound project has this step
    fabric, pen = finish.binding.fabric, scene.pen
    left = 168
    if finish.binding.grain is Grain.BIAS:
        _draw_bias(scene, fabric)
    elif not _is_joined(scene, operation.binding):
        left = 0
    elif finish.binding.join is StripJoin.DIAGONAL:
        _draw_diagonal(scene, fabric)
    else:
        _draw_straight(scene, fabric)
    # The strip, opened flat on the left and closing to the right along its fold.
    pen.cloth((Polygon((at(left, 20), at(left + 74, 20), at(left + 114, 60), at(left, 60))),), fabric, Side.WRONG)
    pen.cloth((rectangle(left, 60, 160, 40),), fabric)
    pen.cloth((Polygon((at(left + 74, 20), at(left + 114, 60), at(left + 74, 60))),), fabric)
    pen.line((at(left, 60), at(left + 160, 60)), Stroke.FOLD)
    pen.arrow(at(left + 34, 26), at(left + 34, 88), at(left + 48, 56))
    pen.measure(at(left + 172, 60), at(left + 172, 100), operation.folded_width.text)
    pen.caption(at(left + 86, 126), "fold along the length", 170)


def _is_joined(scene: Scene, binding: str) -> bool:
    """Tell whether the binding is joined from several strips."""
    plans = (material.plan for material in scene.sheet.materials if material.plan is not None)
    return any(one.cut == binding for plan in plans for one in plan.joined)


def _draw_diagonal(scene: Scene, fabric: str) -> None:
    pen = scene.pen
    pen.cloth((rectangle(0, 20, 104, 40),), fabric)
    pen.cloth((rectangle(64, 20, 40, 90),), fabric, Side.WRONG)
    pen.area(Polygon((at(76, 20), at(104, 20), at(104, 48))), Tone.LEFTOVER)
    pen.line((at(64, 20), at(104, 60)), Stroke.SEWN)
    pen.line((at(73, 17), at(107, 51)), Stroke.CUT)
    pen.caption(at(60, 126), "sew, trim, press open", 130)


def _draw_bias(scene: Scene, fabric: str) -> None:
    """Draw a square with its diagonal cut, and its halves sewn to a slanted shape with the lines of the strip."""
    pen, side = scene.pen, 68
    pen.cloth((rectangle(0, 26, side, side),), fabric)
    pen.line((at(0, 26 + side), at(side, 26)), Stroke.CUT)
    left, half = 92, 52
    halves = (
        Polygon((at(left, half), at(left + half, half), at(left, 2 * half))),
        Polygon((at(left, half), at(left + half, 0), at(left + half, half))),
    )
    pen.cloth(halves, fabric, Side.WRONG)
    pen.line((at(left, half), at(left + half, half)), Stroke.SEWN)
    for down in (13, 26, 39):
        pen.line((at(left, half + down), at(left + half, down)), Stroke.SEAM)
    pen.caption(at(72, 126), "cut, sew, draw lines", 150)


def _draw_straight(scene: Scene, fabric: str) -> None:
    pen = scene.pen
    pen.cloth((rectangle(0, 40, 70, 40),), fabric)
    pen.cloth((rectangle(58, 40, 70, 40),), fabric, Side.WRONG)
    pen.line((at(62, 36), at(62, 84)), Stroke.SEWN)
    pen.caption(at(64, 126), "sew, press open", 150)


def draw_bind(scene: Scene, step: Step, operation: Bind) -> None:
    """Draw a corner of the front three times: stop before it, fold up, fold down and go on.

    ::

        1 stop               2 fold up       | |      3 fold down
        -----------------                    | |
        ______________|..    ________________|/|      ______________|_|
        |             |      |               |        |             | |
    """
    finish = scene.sheet.project.finish
    assert isinstance(finish, Bound)  # only a bound project has this step
    if finish.corner_radius is not None:
        draw_bind_round(scene, step, operation)
        return
    if scene.sheet.sized.outline is not None:
        draw_bind_wide(scene, corner_fabric(scene))
        return
    quilt, strip = corner_fabric(scene), finish.binding.fabric
    steps = (_draw_stop, _draw_fold_up, _draw_fold_down)
    words = (f"1 stop {operation.seam.text} before", "2 fold up", "3 fold down, go on")
    for number, (draw_stage, text) in enumerate(zip(steps, words, strict=True)):
        left = (PANEL + GAP) * number
        scene.pen.cloth((rectangle(left, 0, PANEL, PANEL),), quilt)
        draw_stage(scene.pen, left, strip)
        scene.pen.caption(at(left + PANEL / 2, PANEL + 16), text, PANEL + GAP / 2)


BAND = 36
LINE = 18


def _draw_stop(pen: Pen, left: int, strip: str) -> None:
    right = left + PANEL
    pen.cloth((rectangle(left, 0, PANEL + 18, BAND),), strip)
    pen.line((at(left, LINE), at(right - LINE, LINE)), Stroke.SEWN)
    pen.line((at(right, BAND), at(right, 0)), Stroke.SEAM)


def _draw_fold_up(pen: Pen, left: int, strip: str) -> None:
    right = left + PANEL
    pen.cloth((Polygon((at(left, 0), at(right, 0), at(right - BAND, BAND), at(left, BAND))),), strip)
    up = Polygon((at(right - BAND, -52), at(right, -52), at(right, 0), at(right - BAND, BAND)))
    pen.cloth((up,), strip)
    pen.line((at(right, 0), at(right - BAND, BAND)), Stroke.FOLD)
    pen.line((at(left, LINE), at(right - BAND, LINE)), Stroke.SEWN)
    pen.arrow(at(right + 10, 20), at(right + 6, -40), at(right + 20, -12))


def _draw_fold_down(pen: Pen, left: int, strip: str) -> None:
    right = left + PANEL
    pen.cloth((rectangle(left, 0, PANEL, BAND),), strip)
    pen.line((at(left, LINE), at(right - BAND, LINE)), Stroke.SEWN)
    pen.cloth((rectangle(right - BAND, 0, BAND, PANEL),), strip)
    pen.line((at(right, 0), at(right - BAND, BAND)), Stroke.HELP)
    pen.line((at(right - BAND, 0), at(right, 0)), Stroke.FOLD)
    pen.line((at(right - LINE, 0), at(right - LINE, PANEL)), Stroke.SEWN)
    pen.arrow(at(right + 10, -34), at(right + 10, 30), at(right + 22, -4))
