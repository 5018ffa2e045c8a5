"""Layers basted, quilted and squared up."""

from __future__ import annotations

from fractions import Fraction

from evenseam.figures.clipping import Window
from evenseam.figures.cloth_work import draw_cloth
from evenseam.figures.drawing import Pen, Side, Stroke, Tone
from evenseam.figures.frame import WIDE, Frame, at, rectangle
from evenseam.figures.measure_line import room_beside
from evenseam.figures.oblique import Layer, draw_stack
from evenseam.figures.outlines import inside, is_rectangle
from evenseam.figures.plane import placed
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.layers import insulation, raw
from evenseam.figures.workpiece import Workpiece
from evenseam.geometry import Point
from evenseam.pattern import LayerForQuilting, SquareUp, Step


def draw_layers(scene: Scene, step: Step, operation: LayerForQuilting) -> None:
    """Draw backing, batting and top with air between them."""
    uses = scene.bench(step).uses
    top, backing, batting = (raw(uses[name]) for name in (operation.top, operation.backing, operation.batting))
    draw_stack(
        scene.pen,
        (
            Layer(backing, Side.WRONG, (f"{scene.sheet.cuts.cut(operation.backing).label},", "right side down")),
            *insulation(scene, step, operation.insulation),
            Layer(batting, Side.RIGHT, ("batting",)),
            Layer(top, Side.RIGHT, ("top,", "right side up")),
        ),
    )


def draw_quilting(scene: Scene, step: Step) -> None:
    """Draw the layers from above with lines of stitching over the whole top."""
    _, top, corner = _draw_layers_from_above(scene)
    width, height = Fraction(top.width), Fraction(top.height)
    # Slanting lines a quarter of the shorter side apart, both ways, cut off at the edge of the top.
    apart, zero = min(width, height) / 4, Fraction(0)
    window = Window(Fraction(0), Fraction(0), width, height)
    for number in range(1, int((width + height) / apart) + 1):
        reach = apart * number
        for start, end in (
            (Point(reach, zero), Point(reach - height, height)),
            (Point(width - reach, zero), Point(width - reach + height, height)),
        ):
            stretch = (
                window.cut(start, end) if is_rectangle(top.outline) else inside(top.outline, placed(start), placed(end))
            )
            if stretch is not None:
                scene.pen.line((corner.point(stretch[0]), corner.point(stretch[1])), Stroke.QUILTING)


def draw_square_up(scene: Scene, step: Step, operation: SquareUp) -> None:
    """Draw the cut along the edge of the top, a ruler laid on it, and the size that must be left."""
    frame, top, corner = _draw_layers_from_above(scene, WIDE - room_beside(operation.height.text))
    width, height = top.width, top.height
    scene.pen.outline(corner.polygon(top.outline), Stroke.CUT)
    right, bottom = corner.spot(width, height)
    if is_rectangle(top.outline):
        _draw_ruler(scene.pen, right, bottom, min(frame.length(height), 130.0))
    below = frame.length(_under(scene)[1].height) + 14
    scene.pen.measure(at(corner.origin.x, below), at(right, below), operation.width.text)
    side = frame.length(_under(scene)[1].width) + 12
    scene.pen.measure(at(side, corner.origin.y), at(side, bottom), operation.height.text)


def _draw_ruler(pen: Pen, right: float, bottom: float, long: float) -> None:
    """Draw a see-through ruler whose edge lies on the right edge of the top."""
    thick = 26.0
    pen.area(rectangle(right - thick, bottom - long, thick, long + 10), Tone.RULER)
    marks = int(long / 8)
    for number in range(1, marks):
        deep = 9 if number % 4 == 0 else 5
        y = bottom - 8 * number
        pen.line((at(right - deep, y), at(right, y)), Stroke.MARK)


def _under(scene: Scene) -> tuple[Workpiece, Workpiece, Workpiece]:
    """Return top, backing and batting, raw edge to raw edge."""
    step = next(one for one in scene.sheet.program.steps if isinstance(one.operation, LayerForQuilting))
    operation, uses = step.operation, scene.bench(step).uses
    assert isinstance(operation, LayerForQuilting)
    return raw(uses[operation.top]), raw(uses[operation.backing]), raw(uses[operation.batting])


def _draw_layers_from_above(scene: Scene, wide: float = 340.0) -> tuple[Frame, Workpiece, Frame]:
    """Draw the three layers as they lie, so wide; return the frame, the top, and the frame of the top's corner."""
    top, backing, batting = _under(scene)
    frame = Frame.fitting(backing.width, backing.height, wide)
    pen = scene.pen
    pen.cloth((frame.polygon(backing.outline),), backing.patches[0].fabric, Side.WRONG)
    inset = frame.moved_by(*(frame.length((b - t) / 2) for b, t in _sizes(backing, batting)))
    pen.area(inset.polygon(batting.outline), Tone.BATTING)
    corner = frame.moved_by(*(frame.length((b - t) / 2) for b, t in _sizes(backing, top)))
    draw_cloth(pen, ((patch.fabric, corner.polygon(patch.outline)) for patch in top.patches))
    return frame, top, corner


def _sizes(outer: Workpiece, inner: Workpiece) -> tuple[tuple[float, float], ...]:
    return (outer.width, inner.width), (outer.height, inner.height)
