"""Edges without binding: faced with strips that are turned to the back, or folded in."""

from __future__ import annotations

from evenseam.figures.drawing import SMALL_SIZE, Anchor, Ink, Pen, Side, Stroke, Tone
from evenseam.figures.frame import at, rectangle
from evenseam.figures.plane import Polygon
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.turning import corner_fabric
from evenseam.pattern import CloseKnifeEdge, Face, Faced, Step, TrimForKnifeEdge

PANEL = 116
GAP = 28
STRIP = 24
FOLD = 6


def draw_face(scene: Scene, step: Step, operation: Face) -> None:
    """Draw the side strips on the front, then the back with the sides turned, then all four turned and sewn down."""
    finish = scene.sheet.project.finish
    assert isinstance(finish, Faced)  # only a faced project has this step
    pen, strip = scene.pen, finish.facing_fabric
    # 1: on the front, wrong side up; the fold along the inner edge shows the right side.
    pen.cloth((rectangle(0, 0, PANEL, PANEL),), corner_fabric(scene))
    for left, fold, sewn in ((0, STRIP - FOLD, 5), (PANEL - STRIP, PANEL - STRIP, PANEL - 5)):
        pen.cloth((rectangle(left, 0, STRIP, PANEL),), strip, Side.WRONG)
        pen.cloth((rectangle(fold, 0, FOLD, PANEL),), strip)
        pen.line((at(sewn, 0), at(sewn, PANEL)), Stroke.SEWN)
    # 2: from the back, the sides turned; the strip for the top is sewn on and still stands up.
    left = PANEL + GAP
    pen.cloth((rectangle(left, 0, PANEL, PANEL),), finish.backing_fabric)
    _draw_sides(pen, left, strip)
    pen.cloth((rectangle(left - 5, -STRIP, PANEL + 10, STRIP),), strip, Side.WRONG)
    pen.cloth((rectangle(left - 5, -STRIP, PANEL + 10, FOLD),), strip)
    pen.line((at(left - 5, 0), at(left + PANEL + 5, 0)), Stroke.SEWN)
    pen.arrow(at(left + PANEL // 2, -STRIP + 4), at(left + PANEL // 2, STRIP - 2), at(left + PANEL // 2 + 26, 0))
    # 3: top and bottom turned over the sides, all sewn down.
    left = 2 * (PANEL + GAP)
    pen.cloth((rectangle(left, 0, PANEL, PANEL),), finish.backing_fabric)
    _draw_sides(pen, left, strip)
    for top in (0, PANEL - STRIP):
        pen.cloth((rectangle(left, top, PANEL, STRIP),), strip)
    inner = rectangle(left + STRIP - 2, STRIP - 2, PANEL - 2 * STRIP + 4, PANEL - 2 * STRIP + 4)
    pen.outline(inner, Stroke.STITCH)
    for end in (left + 1, left + PANEL - 1):
        pen.line((at(end, 0), at(end, STRIP)), Stroke.STITCH)
        pen.line((at(end, PANEL - STRIP), at(end, PANEL)), Stroke.STITCH)
    words = ("1 sides, on the front", "2 turn sides, sew on top", "3 turn all, sew down")
    for number, text in enumerate(words):
        middle = (PANEL + GAP) * number + PANEL // 2
        pen.caption(at(middle, PANEL + 17), text, PANEL + GAP / 2)


def _draw_sides(pen: Pen, left: int, strip: str) -> None:
    for place in (left, left + PANEL - STRIP):
        pen.cloth((rectangle(place, 0, STRIP, PANEL),), strip)


LONG = 240
SEAM = 44
THICK = 20


def draw_trim_for_knife_edge(scene: Scene, step: Step, operation: TrimForKnifeEdge) -> None:
    """Draw the three layers seen from the side: top and backing of one length, the batting shorter by the seam."""
    pen, backing = scene.pen, scene.sheet.project.finish.backing_fabric
    pen.cloth((rectangle(0, 0, LONG, THICK),), corner_fabric(scene))
    pen.area(rectangle(0, THICK + 14, LONG - SEAM, THICK + 6), Tone.BATTING)
    pen.area(rectangle(LONG - SEAM, THICK + 14, SEAM + 34, THICK + 6), Tone.LEFTOVER)
    low = 2 * THICK + 34
    pen.cloth((rectangle(0, low, LONG, THICK),), backing)
    pen.area(rectangle(LONG, low, 56, THICK), Tone.LEFTOVER)
    pen.line((at(LONG - SEAM, THICK + 4), at(LONG - SEAM, low - 4)), Stroke.CUT)
    pen.line((at(LONG, low - 8), at(LONG, low + THICK + 8)), Stroke.CUT)
    pen.measure(at(LONG - SEAM, low + THICK + 22), at(LONG, low + THICK + 22), operation.seam.text)
    for y, text in ((THICK / 2, "top"), (THICK + 14 + (THICK + 6) / 2, "batting"), (low + THICK / 2, "backing")):
        pen.label(at(LONG + 70, y), text, size=SMALL_SIZE, ink=Ink.QUIET, anchor=Anchor.START)
    pen.caption(at(LONG / 2 - 40, low + THICK + 22), "seen from the side")


def draw_close_knife_edge(scene: Scene, step: Step, operation: CloseKnifeEdge) -> None:
    """Draw the layers seen from the side, top and backing folded in over the batting, and the stitching."""
    pen, backing, top = scene.pen, scene.sheet.project.finish.backing_fabric, corner_fabric(scene)
    thin, end = 14, LONG
    pen.area(rectangle(0, 30, end - 14, 34), Tone.BATTING)
    # The top bends down over the batting and in under itself; the backing bends up to meet it.
    pen.cloth((_hooked(0, 16, end, 46, thin),), top)
    pen.cloth((_hooked(0, 78, end, 48, -thin),), backing)
    stitch = end - 26
    pen.line((at(stitch, 8), at(stitch, 86)), Stroke.SEWN)
    pen.measure(at(stitch, 100), at(end, 100), operation.stitch.text)
    pen.arrow(at(end + 40, 10), at(end + 4, 40), at(end + 34, 34))
    pen.arrow(at(end + 40, 84), at(end + 4, 54), at(end + 34, 60))
    for y, text in ((16, "fold the top in"), (78, "fold the backing in")):
        pen.label(at(end + 48, y), text, size=SMALL_SIZE, ink=Ink.QUIET, anchor=Anchor.START, wide=98.0)
    pen.caption(at(end / 2 - 40, 100), "seen from the side")


def _hooked(left: int, level: int, right: int, tip: int, thick: int) -> Polygon:
    """Return a layer seen from the side: along `level`, round the end, and back in at `tip`."""
    return Polygon(
        (
            at(left, level), at(right, level), at(right, tip), at(right - 40, tip), at(right - 40, tip - thick / 2),
            at(right - 10, tip - thick / 2), at(right - 10, level + thick), at(left, level + thick),
        )
    )  # fmt: skip
