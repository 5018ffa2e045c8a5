"""Shapes in drawing order to runs of shapes that look alike, so that each run can be written as one element.

A shape joins an earlier run of its like when nothing that was drawn since lies under it: what is seen stays the same,
and a picture of a hundred blocks has no more elements than one of a single block.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from evenseam.figures.drawing import Area, Cloth, Label, Line, Shape
from evenseam.figures.extent import extent_of
from evenseam.figures.lettering import label_box
from evenseam.figures.plane import Polygon

Box: TypeAlias = tuple[float, float, float, float]
"""Left, top, right, bottom."""
Look: TypeAlias = tuple[object, ...]
"""The class of a shape and whatever else decides how it is drawn."""
_TOUCH = 0.6
"""Shapes that reach less than this into each other lie side by side."""
_MOST = 300
"""Pairs of polygons that are compared one by one; beyond this, shapes whose bounds meet count as meeting."""


@dataclass(slots=True)
class _Part:
    """One polygon, line or label with its bounds."""

    box: Box
    polygon: Polygon | None = None


@dataclass(slots=True)
class _Run:
    look: Look | None
    shapes: list[Shape]
    parts: list[_Part]
    box: Box


def gathered(shapes: Iterable[Shape]) -> list[list[Shape]]:
    """Return runs of shapes that look alike; drawn run by run they show what they show in their own order."""
    runs: list[_Run] = []
    for shape in shapes:
        look, parts = _look(shape), _parts(shape)
        box = _around(parts)
        home = _home(runs, look, parts, box) if look is not None else None
        if home is None:
            runs.append(_Run(look, [shape], parts, box))
        else:
            home.shapes.append(shape)
            home.parts += parts
            one = home.box
            home.box = (min(one[0], box[0]), min(one[1], box[1]), max(one[2], box[2]), max(one[3], box[3]))
    return [run.shapes for run in runs]


def _home(runs: Sequence[_Run], look: Look, parts: Sequence[_Part], box: Box) -> _Run | None:
    """Return the run that a shape can join without slipping under anything."""
    for run in reversed(runs):
        is_apart = not _meet(run.box, box) or not _any_meet(run, parts, box)
        # Lines of one look may cross.
        if run.look == look and (is_apart or look[0] is Line):
            return run
        if not is_apart:
            return None
    return None


def _look(shape: Shape) -> Look | None:
    """Return what shapes of one run have in common; None for a shape that stands alone."""
    match shape:
        case Cloth():
            return (Cloth, shape.fabric, shape.side, shape.is_outlined, shape.has_texture)
        case Area():
            return (Area, shape.tone)
        case Line():
            return (Line, shape.stroke, shape.is_closed)
        case Label(has_ground=False):
            size = float(shape.size)
            return (Label, size, shape.ink, shape.on_fabric, shape.side, shape.anchor, shape.is_bold)
        case _:
            return None


def _parts(shape: Shape) -> list[_Part]:
    match shape:
        case Cloth(polygons=polygons) | Area(polygons=polygons):
            return [_Part(polygon.bounds, polygon) for polygon in polygons]
        case Line(points=points):
            across, down = [float(spot.x) for spot in points], [float(spot.y) for spot in points]
            return [_Part((min(across), min(down), max(across), max(down)))]
        case Label(has_ground=False):
            return [_Part(label_box(shape).bounds)]
        case _:
            reach = extent_of((shape,))
            return [_Part((reach.left, reach.top, reach.right, reach.bottom))]


def _around(parts: Sequence[_Part]) -> Box:
    if len(parts) == 1:
        return parts[0].box
    if not parts:
        return (0.0, 0.0, 0.0, 0.0)
    lefts, tops, rights, bottoms = zip(*(part.box for part in parts), strict=True)
    return min(lefts), min(tops), max(rights), max(bottoms)


def _meet(one: Box, other: Box) -> bool:
    """Tell whether two rectangles reach into each other; a line without width along an edge does not."""
    return (
        one[2] - other[0] > _TOUCH
        and other[2] - one[0] > _TOUCH
        and one[3] - other[1] > _TOUCH
        and other[3] - one[1] > _TOUCH
    )


def _any_meet(run: _Run, parts: Sequence[_Part], box: Box) -> bool:
    """Tell whether any part of a run and any of a shape meet; `box` is round the parts of the shape."""
    left, top, right, bottom = box[0] + _TOUCH, box[1] + _TOUCH, box[2] - _TOUCH, box[3] - _TOUCH
    near = [
        part for part in run.parts
        if part.box[2] > left and part.box[0] < right and part.box[3] > top and part.box[1] < bottom
    ]  # fmt: skip
    if not near:
        return False
    others = [part for part in parts if _meet(part.box, run.box)] if len(parts) > 1 else parts
    if len(near) * len(others) > _MOST:
        return True
    return any(_meet(one.box, other.box) and not _parted(one, other) for one in near for other in others)


def _parted(one: _Part, other: _Part) -> bool:
    """Tell whether an edge of one of two polygons has the one on its one side and the other on its other."""
    if one.polygon is None or other.polygon is None:
        return False
    return _parts_from(one.polygon, other.polygon) or _parts_from(other.polygon, one.polygon)


def _parts_from(polygon: Polygon, other: Polygon) -> bool:
    for (x1, y1), (x2, y2) in polygon.clockwise().edges:
        along, over = x2 - x1, y2 - y1
        # How far to the inner side of the edge a corner lies, times the length of the edge.
        room = _TOUCH * (along * along + over * over) ** 0.5
        if (
            room
            and all(along * (y - y1) - over * (x - x1) <= room for x, y in other.corners)
            and all(along * (y - y1) - over * (x - x1) >= -room for x, y in polygon.corners)
        ):
            return True
    return False
