"""The layers of a project as workpieces drawn raw edge to raw edge."""

from __future__ import annotations

from evenseam.figures.allowance import raw_outline
from evenseam.figures.drawing import Side
from evenseam.figures.oblique import Layer
from evenseam.figures.outlines import is_rectangle
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.scene import Scene
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import Step


def raw(work: Workpiece) -> Workpiece:
    """Return a workpiece whose pieces reach to its raw edge; it has no allowance beyond that."""
    if work.seam == 0:
        return work
    edge = raw_outline(work.outline, work.seam)
    left, top, _, _ = edge.bounds
    step = Point(-left, -top)
    patches = tuple(
        Patch(outline.moved(step), patch.fabric, patch.piece, patch.part)
        for patch, outline in zip(work.patches, work.raw_outlines, strict=True)
    )
    if is_rectangle(work.outline):
        edge = Polygon.rectangle(left, top, work.raw_width, work.raw_height)
    return Workpiece(work.name, patches, edge.moved(step), 0.0)


def insulation(scene: Scene, step: Step, name: str | None) -> tuple[Layer, ...]:
    """Return the layer of heat-resistant batting of a stack; nothing where there is none."""
    if name is None:
        return ()
    return (Layer(raw(scene.bench(step).uses[name]), Side.RIGHT, ("heat-resistant", "batting")),)


def centred(inner: Workpiece, outer: Workpiece) -> tuple[float, float]:
    """Return how far the corner of one layer lies inside the corner of a larger one under it."""
    return (outer.width - inner.width) / 2, (outer.height - inner.height) / 2
