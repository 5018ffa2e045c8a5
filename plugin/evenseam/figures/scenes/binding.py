"""Binding: strips joined and folded, and a corner turned with a mitre."""

from __future__ import annotations

from evenseam.figures.drawing import SMALL_SIZE, Ink, Side, Stroke, Tone
from evenseam.figures.frame import at, rectangle
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.turning import corner_fabric
from evenseam.geometry import Polygon
from evenseam.pattern import Bind, Bound, MakeBinding, Step, StripJoin

PANEL = 124
GAP = 30


def draw_make_binding(scene: Scene, step: Step, operation: MakeBinding) -> None:
    """Draw two strips joined, and the long strip folded along its length with its folded width."""
    finish = scene.sheet.project.finish
    assert isinstance(finish, Bound)  # only a bound project has this step
    fabric, pen = finish.binding.fabric, scene.pen
    if finish.binding.join is StripJoin.DIAGONAL:
        _draw_diagonal(scene, fabric)
    else:
        _draw_straight(scene, fabric)
    left = 190
    # The strip, opened flat on the left and closing to the right along its fold.
    pen.cloth((Polygon((at(left, 20), at(left + 90, 20), at(left + 130, 60), at(left, 60))),), fabric, Side.WRONG)
    pen.cloth((rectangle(left, 60, 210, 40),), fabric)
    pen.cloth((Polygon((at(left + 90, 20), at(left + 130, 60), at(left + 90, 60))),), fabric)
    pen.line((at(left, 60), at(left + 210, 60)), Stroke.FOLD)
    pen.arrow(at(left + 44, 26), at(left + 44, 88), at(left + 58, 56))
    pen.measure(at(left + 222, 60), at(left + 222, 100), operation.folded_width.text)
    pen.label(at(left + 105, 118), "fold along the length", size=SMALL_SIZE, ink=Ink.QUIET)


def _draw_diagonal(scene: Scene, fabric: str) -> None:
    pen = scene.pen
    pen.cloth((rectangle(0, 20, 104, 40),), fabric)
    pen.cloth((rectangle(64, 20, 40, 90),), fabric, Side.WRONG)
    pen.area(Polygon((at(76, 20), at(104, 20), at(104, 48))), Tone.LEFTOVER)
    pen.line((at(64, 20), at(104, 60)), Stroke.SEWN)
    pen.line((at(73, 17), at(107, 51)), Stroke.CUT)
    pen.label(at(60, 126), "sew, trim, press open", size=SMALL_SIZE, ink=Ink.QUIET)


def _draw_straight(scene: Scene, fabric: str) -> None:
    pen = scene.pen
    pen.cloth((rectangle(0, 40, 70, 40),), fabric)
    pen.cloth((rectangle(58, 40, 70, 40),), fabric, Side.WRONG)
    pen.line((at(62, 36), at(62, 84)), Stroke.SEWN)
    pen.label(at(64, 118), "sew, press open", size=SMALL_SIZE, ink=Ink.QUIET)


def draw_bind(scene: Scene, step: Step, operation: Bind) -> None:
    """Draw a corner of the front three times: stop before it, fold up, fold down and go on.

    ::

         1 +---------+    2     +--+      3 +------+--+
           |      |  |          |  |        |      |  |
           |      |  |      +---+\\/         |      |  |
    """
    finish = scene.sheet.project.finish
    assert isinstance(finish, Bound)  # only a bound project has this step
    quilt, strip = corner_fabric(scene), finish.binding.fabric
    seam = operation.seam.text
    for number, words in enumerate((f"1 stop {seam} before", "2 fold up", "3 fold down, go on")):
        _draw_corner(scene, number, (PANEL + GAP) * number, quilt, strip)
        scene.pen.label(
            at((PANEL + GAP) * number + PANEL / 2, PANEL + 58), words, size=SMALL_SIZE, ink=Ink.QUIET
        )


def _draw_corner(scene: Scene, number: int, left: int, quilt: str, strip: str) -> None:
    """Draw one stage; the binding comes along the right edge from below and leaves along the top to the left."""
    pen, band, line = scene.pen, 36, 18
    top, right, bottom = 44, left + PANEL, PANEL + 44
    pen.cloth((rectangle(left, top, PANEL, PANEL),), quilt)
    sewn = (at(right - line, bottom), at(right - line, top + line))
    if number == 0:
        pen.cloth((rectangle(right - band, top - 24, band, PANEL + 24),), strip)
        pen.line(sewn, Stroke.SEWN)
        pen.measure(at(right + 8, top), at(right + 8, top + line), "")
        return
    if number == 1:
        pen.cloth((Polygon((at(right - band, bottom), at(right, bottom), at(right, top), at(right - band, top + band))),), strip)
        pen.cloth((Polygon((at(right, top), at(right + 30, top - 30), at(right - 6, top - 30 - band + 36), at(right - band, top + band))),), strip)
        pen.line(sewn, Stroke.SEWN)
        return
    pen.cloth((rectangle(right - band, top, band, PANEL),), strip)
    pen.line(sewn, Stroke.SEWN)
    pen.cloth((rectangle(left, top, PANEL, band),), strip)
    pen.line((at(right, top), at(right - band, top + band)), Stroke.FOLD)
    pen.line((at(right, top + line), at(left, top + line)), Stroke.SEWN)
