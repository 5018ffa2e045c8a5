"""Hanging sleeve and corner pockets."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_letter, draw_work
from evenseam.figures.drawing import LABEL_SIZE, Anchor, Side, Stroke
from evenseam.figures.frame import Frame, at, rectangle
from evenseam.figures.lettering import LINE_HEIGHT
from evenseam.figures.measure_line import AWAY
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
    pen.cloth((rectangle(0, 0, 150, 84),), fabric, Side.WRONG)
    for left in (0, 132):
        pen.cloth((rectangle(left, 0, 18, 84),), fabric)
    for x in (14, 136):
        pen.line((at(x, 0), at(x, 84)), Stroke.SEWN)
    pen.arrow(at(-14, 30), at(14, 30), at(0, 4))
    pen.arrow(at(164, 30), at(136, 30), at(150, 4))
    pen.caption(at(75, 101), "1 hem both ends", 180)
    # 2: folded along its length, right side out, long edges sewn.
    pen.cloth((rectangle(216, 42, 150, 42),), fabric)
    pen.line((at(216, 52), at(366, 52)), Stroke.SEWN)
    pen.arrow(at(291, 6), at(291, 40))
    pen.caption(at(288, 101), "2 fold, sew the long edges", 190)
    # 3: the tube, its seam in the middle of the side that lies against the quilt.
    top = 146
    pen.cloth((rectangle(40, top, 262, 46),), fabric)
    pen.line((at(40, top + 23), at(302, top + 23)), Stroke.SEAM)
    pen.measure(at(40, top + 62), at(302, top + 62), operation.finished_length.text)
    pen.measure(at(314, top), at(314, top + 46), operation.finished_depth.text)
    pen.caption(at(26, top + 23), "3")


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
    side = frame.length(width) + AWAY
    if not draw_letter(pen, sleeve, "sleeve", hanging.fabric):
        # Below the figure of the drop.
        low = max(top / 2 + LABEL_SIZE * LINE_HEIGHT, (top + bottom) / 2)
        pen.line((at(end - 20, (top + bottom) / 2), at(side - 2, low)), Stroke.LEADER)
        pen.label(at(side, low), "sleeve", anchor=Anchor.START)
    high = frame.length(scene.sheet.sized.finished_height.value)
    draw_letter(pen, rectangle(0, bottom, end, high - bottom), "back", scene.sheet.project.finish.backing_fabric)
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
    for left in (158, 288):
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
