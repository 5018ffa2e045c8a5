"""Hanging sleeve and corner pockets."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_letter, draw_work
from evenseam.figures.drawing import SMALL_SIZE, Ink, Side, Stroke
from evenseam.figures.frame import Frame, at, rectangle
from evenseam.figures.plane import Polygon, decimal
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.back import BACK_SIDE, draw_back
from evenseam.figures.scenes.layers import raw
from evenseam.pattern import (
    AttachCornerPockets,
    AttachSleeve,
    CornerPockets,
    Faced,
    MakeSleeve,
    Sleeve,
    Step,
    Turned,
)


def draw_make_sleeve(scene: Scene, step: Step, operation: MakeSleeve) -> None:
    """Draw the strip with its hems, folded and sewn along its length, and the finished tube with its size."""
    hanging = scene.sheet.project.hanging
    assert isinstance(hanging, Sleeve)  # only a project with a sleeve has this step
    pen, fabric = scene.pen, hanging.fabric
    # 1: wrong side up, hems turned in at both ends.
    pen.cloth((rectangle(0, 0, 170, 84),), fabric, Side.WRONG)
    for left in (0, 152):
        pen.cloth((rectangle(left, 0, 18, 84),), fabric)
    for x in (14, 156):
        pen.line((at(x, 0), at(x, 84)), Stroke.SEWN)
    pen.arrow(at(-14, 30), at(14, 30), at(0, 4))
    pen.arrow(at(184, 30), at(156, 30), at(170, 4))
    pen.label(at(85, 100), "1 hem both ends", size=SMALL_SIZE, ink=Ink.QUIET)
    # 2: folded along its length, right side out, long edges sewn.
    pen.cloth((rectangle(230, 42, 170, 42),), fabric)
    pen.line((at(230, 52), at(400, 52)), Stroke.SEWN)
    pen.arrow(at(315, 6), at(315, 40))
    pen.label(at(315, 100), "2 fold, sew the long edges", size=SMALL_SIZE, ink=Ink.QUIET)
    # 3: the tube, its seam in the middle of the side that lies against the quilt.
    top = 140
    pen.cloth((rectangle(60, top, 280, 46),), fabric)
    pen.line((at(60, top + 23), at(340, top + 23)), Stroke.SEAM)
    pen.measure(at(60, top + 62), at(340, top + 62), operation.finished_length.text)
    pen.measure(at(352, top), at(352, top + 46), operation.finished_depth.text)
    pen.label(at(46, top + 23), "3", size=SMALL_SIZE, ink=Ink.QUIET)


def draw_attach_sleeve(scene: Scene, step: Step, operation: AttachSleeve) -> None:
    """Draw the back with the sleeve in its place, and how far below the top edge that is."""
    hanging = scene.sheet.project.hanging
    assert isinstance(hanging, Sleeve)  # only a project with a sleeve has this step
    frame = draw_back(scene)
    pen = scene.pen
    width = scene.sheet.sized.finished_width.value
    long = scene.sheet.figure("sleeve_finished_length").value
    depth = scene.sheet.figure("sleeve_finished_depth").value
    left, drop = (width - long) / 2, operation.drop.value
    pen.cloth((frame.polygon(rectangle(left, drop, long, depth)),), hanging.fabric)
    top, bottom = frame.length(drop), frame.length(drop + depth)
    start, end = frame.length(left), frame.length(left + long)
    for y in (top, bottom):
        pen.line((at(start, y), at(end, y)), Stroke.STITCH)
    sleeve = rectangle(start, top, end - start, bottom - top)
    draw_letter(pen, sleeve, "sleeve", hanging.fabric)
    high = frame.length(scene.sheet.sized.finished_height.value)
    draw_letter(pen, rectangle(0, bottom, end, high - bottom), "back", scene.sheet.project.finish.backing_fabric)
    side = frame.length(width) + 12
    pen.measure(at(side, 0), at(side, top), operation.drop.text)


def draw_make_pockets(scene: Scene, step: Step) -> None:
    """Draw a square being folded on its diagonal, twice."""
    hanging = scene.sheet.project.hanging
    assert isinstance(hanging, CornerPockets)  # only a project with corner pockets has this step
    pen, fabric = scene.pen, hanging.fabric
    pen.cloth((rectangle(0, 0, 110, 110),), fabric, Side.WRONG)
    pen.line((at(0, 110), at(110, 0)), Stroke.FOLD)
    pen.arrow(at(22, 22), at(86, 86), at(70, 34))
    pen.measure(at(0, 124), at(110, 124), hanging.square.text)
    for left in (170, 300):
        pen.cloth((Polygon((at(left + 110, 0), at(left + 110, 110), at(left, 110))),), fabric)
        pen.line((at(left, 110), at(left + 110, 0)), Stroke.FOLD)


def draw_attach_pockets(scene: Scene, step: Step, operation: AttachCornerPockets) -> None:
    """Draw the piece with a folded triangle in each of its top corners, raw edges even.

    A bound project is seen from its back, before it is bound; on a project that will be turned or faced the pockets lie
    on the right side of the top, and come to lie on the back by the turning.
    """
    hanging, finish = scene.sheet.project.hanging, scene.sheet.project.finish
    assert isinstance(hanging, CornerPockets)  # only a project with corner pockets has this step
    work, pen = raw(scene.bench(step).uses[operation.project]), scene.pen
    width, height, side = work.width, work.height, decimal(hanging.square.value)
    frame = Frame.fitting(width, height, BACK_SIDE, BACK_SIDE)
    if isinstance(finish, (Turned, Faced)):
        draw_work(pen, work, frame)
    else:
        pen.cloth((frame.polygon(work.outline),), finish.backing_fabric)
        middle = rectangle(0, frame.length(side), frame.length(width), frame.length(height - side))
        draw_letter(pen, middle, "back", finish.backing_fabric)
    zero = 0.0
    corners = (
        Polygon((at(zero, zero), at(side, zero), at(zero, side))),
        Polygon((at(width, zero), at(width, side), at(width - side, zero))),
    )
    pen.cloth((frame.polygon(corner) for corner in corners), hanging.fabric)
    for corner in corners:
        pen.line((frame.point(corner.corners[1]), frame.point(corner.corners[2])), Stroke.FOLD)
    # Sewn on within the seam allowance, so that no stitch shows.
    inset = scene.seam / 2
    for way in (
        ((inset, side - inset), (inset, inset), (side - inset, inset)),
        ((width - inset, side - inset), (width - inset, inset), (width - side + inset, inset)),
    ):
        pen.line((frame.spot(*spot) for spot in way), Stroke.SEWN)
