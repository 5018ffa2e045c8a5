"""Loops folded from strips and laid along the top edge, and rings sewn to the back."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_letter, draw_work
from evenseam.figures.drawing import Side, Stroke, Tone
from evenseam.figures.frame import Frame, at, rectangle
from evenseam.figures.plane import Point, Polygon, decimal
from evenseam.figures.rounded import rounded
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.back import BACK_SIDE, draw_back
from evenseam.figures.scenes.layers import raw
from evenseam.pattern import AttachLoops, AttachRings, Bound, KnifeEdge, Loops, MakeLoop, Step

RING = 7.0


def draw_make_loop(scene: Scene, step: Step, operation: MakeLoop) -> None:
    """Draw the strip folded and sewn, the tube pressed with its seam in the middle, and the loop."""
    hanging = scene.sheet.project.hanging
    assert isinstance(hanging, Loops)  # only a project with loops has this step
    pen, fabric = scene.pen, hanging.fabric
    pen.cloth((rectangle(0, 10, 60, 130),), fabric, Side.WRONG)
    pen.line((at(0, 10), at(0, 140)), Stroke.FOLD)
    pen.line((at(52, 10), at(52, 140)), Stroke.SEWN)
    pen.caption(at(30, 158), "1 fold and sew", 110)
    pen.cloth((rectangle(134, 10, 52, 130),), fabric)
    pen.line((at(160, 10), at(160, 140)), Stroke.SEAM)
    pen.measure(at(134, -22), at(186, -22), operation.finished_width.text)
    pen.caption(at(160, 158), "2 turn and press", 120)
    pen.cloth((rectangle(260, 42, 52, 65),), fabric)
    pen.line((at(260, 107), at(312, 107)), Stroke.FOLD)
    pen.line((at(260, 46), at(312, 46)), Stroke.HELP)
    pen.measure(at(324, 42), at(324, 107), operation.finished_length.text)
    pen.caption(at(286, 158), "3 fold in half", 120)


def draw_attach_loops(scene: Scene, step: Step, operation: AttachLoops) -> None:
    """Draw the piece with its loops along the top edge: hanging down before the edge is closed, or standing up."""
    project, pen = scene.sheet.project, scene.pen
    hanging, finish = project.hanging, project.finish
    assert isinstance(hanging, Loops)  # only a project with loops has this step
    long = decimal(scene.sheet.figure("loop_finished_length").value)
    if isinstance(finish, KnifeEdge):
        frame = draw_back(scene)
        width, seam = decimal(scene.sheet.sized.finished_width.value), scene.seam
        places = loop_places(scene, width, 0.0)
        pen.cloth((frame.polygon(rectangle(x, seam - long, wide, long)) for x, wide in places), hanging.fabric)
        for x, wide in places:
            ends = rectangle(x, 0.0, wide, seam)
            pen.outline(frame.polygon(ends), Stroke.STITCH)
        return
    work = raw(scene.bench(step).uses[operation.project])
    frame = Frame.fitting(work.width, work.height, BACK_SIDE, BACK_SIDE)
    inset = scene.seam
    if isinstance(finish, Bound):
        radius = 0.0 if finish.corner_radius is None else decimal(finish.corner_radius.value)
        inset = radius if radius > inset else inset
        pen.cloth((frame.polygon(rounded(work.width, work.height, radius)),), finish.backing_fabric)
        below = rectangle(0, frame.length(long), frame.length(work.width), frame.length(work.height - long))
        draw_letter(pen, below, "back", finish.backing_fabric)
    else:
        draw_work(pen, work, frame)
    places = loop_places(scene, work.width, inset)
    pen.cloth((frame.polygon(rectangle(x, 0.0, wide, long)) for x, wide in places), hanging.fabric)
    for x, wide in places:
        pen.line((frame.spot(x, long), frame.spot(x + wide, long)), Stroke.FOLD)
        pen.line((frame.spot(x, scene.seam / 2), frame.spot(x + wide, scene.seam / 2)), Stroke.SEWN)


def loop_places(scene: Scene, width: float, inset: float) -> list[tuple[float, float]]:
    """Return the left side and the width of every loop along an edge; a single loop lies in its middle."""
    wide = decimal(scene.sheet.figure("loop_finished_width").value)
    number = scene.sheet.figure("loop_count").whole
    if number == 1:
        return [((width - wide) / 2, wide)]
    apart = (width - 2 * inset - wide) / (number - 1)
    return [(inset + apart * place, wide) for place in range(number)]


def draw_attach_rings(scene: Scene, step: Step, operation: AttachRings) -> None:
    """Draw the back with its rings, and how far below the top edge they are."""
    frame, pen = draw_back(scene), scene.pen
    width = frame.length(scene.sheet.sized.finished_width.value)
    high = frame.length(scene.sheet.sized.finished_height.value)
    down = max(frame.length(operation.drop.value), RING)
    first, last = 3 * RING, width - 3 * RING
    number = operation.number
    for place in range(number):
        x = width / 2 if number == 1 else first + (last - first) / (number - 1) * place
        middle = at(x, down + RING)
        pen.area(_ring(middle, RING), Tone.BATTING)
        pen.outline(_ring(middle, RING), Stroke.EDGE)
        pen.cloth((_ring(middle, RING - 3),), _cloth(scene))
        pen.line((middle + Point(-3, -RING), middle + Point(3, -RING)), Stroke.SEWN)
    draw_letter(pen, rectangle(0, down + 3 * RING, width, high - down - 3 * RING), "back", _cloth(scene))
    pen.measure(at(width + 12, 0), at(width + 12, down), operation.drop.text)


def _ring(middle: Point, radius: float) -> Polygon:
    return rounded(2 * radius, 2 * radius, radius).moved(Point(middle.x - radius, middle.y - radius))


def _cloth(scene: Scene) -> str:
    return scene.sheet.project.finish.backing_fabric
