"""The quick finish: layers sewn round right sides together, turned out, and topstitched."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_cloth
from evenseam.figures.drawing import Side, Stroke, Tone
from evenseam.figures.frame import Frame, at, rectangle
from evenseam.figures.oblique import Layer, draw_stack
from evenseam.figures.outlines import inset, is_rectangle, open_way
from evenseam.figures.plane import NEAR, Point, Polygon, decimal, shaped
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.layers import insulation, raw
from evenseam.figures.scenes.wide_corner import draw_clipped_wide_corner
from evenseam.figures.workpiece import Workpiece
from evenseam.pattern import LayerTurned, Step, Topstitch

PLAN_SIDE = 210.0


def draw_layer_turned(scene: Scene, step: Step, operation: LayerTurned) -> None:
    """Draw the three layers with air between them, and below the stitching line with its opening."""
    bench = scene.bench(step)
    top, backing, batting = (raw(bench.uses[name]) for name in (operation.top, operation.backing, operation.batting))
    below = draw_stack(
        scene.pen,
        (
            Layer(batting, Side.RIGHT, ("batting",)),
            *insulation(scene, step, operation.insulation),
            Layer(backing, Side.RIGHT, ("backing,", "right side up")),
            Layer(top, Side.WRONG, ("top,", "right side down")),
        ),
    )
    under = tuple((layer.width, layer.height) for layer in (batting, backing))
    _draw_stitching(scene, operation, top, under, below + 22)


def _draw_stitching(
    scene: Scene, operation: LayerTurned, top: Workpiece, under: tuple[tuple[float, float], ...], down: float
) -> None:
    """Draw the layers from above and the seam round them, open for a stretch in the middle of one edge."""
    pen, width, height = scene.pen, top.width, top.height
    largest = max(under, key=lambda size: size[0] * size[1])
    frame = Frame.fitting(largest[0], largest[1], 270.0, PLAN_SIDE)
    # Centred below the stack, which is centred on 0.
    corner = at(-frame.length(largest[0]) / 2, down)
    place = frame.moved_to(corner)
    backing = scene.sheet.project.finish.backing_fabric
    for number, (wide, high) in enumerate(under):
        shape = place.polygon(rectangle((largest[0] - wide) / 2, (largest[1] - high) / 2, wide, high))
        if number == 0:
            pen.area(shape, Tone.BATTING)
        else:
            pen.cloth((shape,), backing)
    inner = place.moved_by(*(frame.length((largest[i] - size) / 2) for i, size in enumerate((width, height))))
    seen = top.mirrored()
    draw_cloth(pen, ((patch.fabric, inner.polygon(patch.outline)) for patch in seen.patches), Side.WRONG)
    seam, opening = decimal(operation.seam.value), decimal(operation.opening.value)
    if is_rectangle(seen.outline):
        line, ends = stitching(width, height, seam, opening, operation.opening_edge)
    else:
        line, ends = open_way(inset(seen.outline, seam), opening, operation.opening_edge)
    pen.line(tuple(inner.point(point) for point in line), Stroke.SEWN)
    one, other = (inner.point(end) for end in ends)
    if abs(one.y - other.y) > NEAR and abs(one.x - other.x) > NEAR:
        low = corner.y + frame.length(largest[1]) + 14
        pen.caption(at(0, low), f"opening {operation.opening.text}")
    elif operation.opening_edge in ("bottom", "top", "longest"):
        low = corner.y + frame.length(largest[1]) + 14 if operation.opening_edge != "top" else corner.y - 14
        pen.measure(at(one.x, low), at(other.x, low), f"opening {operation.opening.text}")
    else:
        side = corner.x + frame.length(largest[0]) + 12
        pen.measure(at(side, one.y), at(side, other.y), f"opening {operation.opening.text}")


def stitching(
    width: float, height: float, seam: float, opening: float, edge: str
) -> tuple[tuple[Point, ...], tuple[Point, Point]]:
    """Return the way of a seam round a rectangle, open in the middle of one edge, and the ends of the opening."""
    corners = Polygon.rectangle(seam, seam, width - 2 * seam, height - 2 * seam).corners
    number = {"top": 0, "right": 1, "bottom": 2, "left": 3}[edge]
    start, end = corners[number], corners[(number + 1) % 4]
    middle = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
    level = start.y == end.y
    long = abs(end.x - start.x if level else end.y - start.y)
    half = opening / 2 if opening < long else long / 3
    forward = (end.x > start.x) if level else (end.y > start.y)
    reach = half if forward else -half
    step = Point(reach, 0.0) if level else Point(0.0, reach)
    one, other = middle - step, middle + step
    way = (other, *(corners[(number + 1 + turn) % 4] for turn in range(4)), one)
    return way, (one, other)


def stitched_ring(scene: Scene, deep: float) -> Polygon:
    """Return the line so far inside the edge of the finished project."""
    sized = scene.sheet.sized
    if sized.outline is not None:
        return inset(shaped(sized.outline), deep)
    width, height = decimal(sized.finished_width.value), decimal(sized.finished_height.value)
    return Polygon.rectangle(deep, deep, width - 2 * deep, height - 2 * deep)


def draw_turn_out(scene: Scene, step: Step) -> None:
    """Draw a clipped corner large, and the project half turned through its opening."""
    operation = next(one.operation for one in scene.sheet.program.steps if isinstance(one.operation, LayerTurned))
    backing = scene.sheet.project.finish.backing_fabric
    pen = scene.pen
    if scene.sheet.sized.outline is None:
        _draw_clipped_corner(scene, backing)
    else:
        draw_clipped_wide_corner(scene, backing)
    _draw_half_turned(scene, backing, operation)
    pen.caption(at(75, 174), "clip the corners", 180.0)
    pen.caption(at(299, 198), "turn through the opening", 212.0)


def _draw_clipped_corner(scene: Scene, backing: str) -> None:
    pen = scene.pen
    cloth = Polygon((at(0, 0), at(122, 0), at(150, 28), at(150, 150), at(0, 150)))
    pen.area(Polygon((at(0, 4), at(116, 4), at(146, 34), at(146, 150), at(0, 150))), Tone.BATTING)
    pen.cloth((cloth,), backing, Side.WRONG)
    pen.area(Polygon((at(128, -6), at(156, -6), at(156, 22))), Tone.LEFTOVER)
    pen.line((at(0, 26), at(124, 26), at(124, 150)), Stroke.SEWN)
    pen.line((at(114, -8), at(158, 36)), Stroke.CUT)


def _draw_half_turned(scene: Scene, backing: str, operation: LayerTurned) -> None:
    """Draw the wrong side of the backing with the right side of the work coming out of the opening."""
    pen = scene.pen
    pen.cloth((rectangle(220, 0, 170, 110),), backing, Side.WRONG)
    pen.line((at(274, 104), at(226, 104), at(226, 6), at(384, 6), at(384, 104), at(336, 104)), Stroke.STITCH)
    pen.line((at(276, 110), at(334, 110)), Stroke.EDGE)
    # A corner of the work comes out right side out: the top above, a little of the backing behind it.
    behind = Polygon((at(280, 102), at(342, 102), at(362, 158), at(290, 178)))
    pen.cloth((behind,), backing)
    front = Polygon((at(278, 102), at(332, 102), at(352, 156), at(284, 174)))
    pen.cloth((front,), corner_fabric(scene))
    pen.arrow(at(305, 72), at(318, 148), at(300, 112))


def draw_topstitch(scene: Scene, step: Step, operation: Topstitch) -> None:
    """Draw the turned project with stitching all round, and one corner large with its distance."""
    sized, pen = scene.sheet.sized, scene.pen
    width, height = decimal(sized.finished_width.value), decimal(sized.finished_height.value)
    frame = Frame.fitting(width, height, 250.0, 260.0)
    draw_cloth(pen, ((placed.fabric, frame.polygon(placed.outline)) for placed in sized.placed))
    deep = max(decimal(operation.distance.value), 4 / frame.scale)
    pen.outline(frame.polygon(stitched_ring(scene, deep)), Stroke.STITCH)
    fabric = corner_fabric(scene)
    left = frame.length(width) + 30
    pen.cloth((rectangle(left, 0, 104, 104),), fabric)
    pen.line((at(left, 82), at(left + 82, 82), at(left + 82, 0)), Stroke.STITCH)
    pen.measure(at(left + 82, 118), at(left + 104, 118), operation.distance.text)


def corner_fabric(scene: Scene) -> str:
    """Return the fabric at the corner of the finished project: what lies furthest down and to the right."""

    def reach(number: int) -> float:
        _, _, right, bottom = shaped(scene.sheet.sized.placed[number].outline).bounds
        return right + bottom

    placed = scene.sheet.sized.placed
    best = 0
    for number in range(len(placed)):
        if placed[number].part != "binding" and (reach(number) > reach(best) or placed[best].part == "binding"):
            best = number
    return placed[best].fabric
