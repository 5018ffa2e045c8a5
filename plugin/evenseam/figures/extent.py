"""How far a list of shapes reaches, in decimals, words and arrowheads included."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from evenseam.figures.drawing import Area, Arrow, Cloth, Curve, Label, Line, Measure, Shape
from evenseam.figures.lettering import label_box, plate_box
from evenseam.figures.measure_line import measure_parts
from evenseam.figures.plane import Point, Spot


@dataclass(frozen=True, slots=True)
class Extent:
    """An upright rectangle by its sides."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Across."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Down."""
        return self.bottom - self.top

    def with_room(self, room: float) -> Extent:
        """Return the rectangle with room on every side."""
        return Extent(self.left - room, self.top - room, self.right + room, self.bottom + room)


def extent_of(shapes: Iterable[Shape]) -> Extent:
    """Return the rectangle all shapes stay inside. An empty drawing has a small one of its own."""
    points = [(float(point.x), float(point.y)) for shape in shapes for point in _reach(shape)]
    if not points:
        return Extent(0, 0, 1, 1)
    across, down = [x for x, _ in points], [y for _, y in points]
    return Extent(min(across), min(down), max(across), max(down))


def _reach(shape: Shape) -> Iterable[Spot]:
    match shape:
        case Cloth(polygons=polygons) | Area(polygons=polygons):
            for polygon in polygons:
                yield from polygon.corners
        case Line(points=points):
            yield from points
        case Curve(start=start, bend=bend, end=end):
            yield from _curve_reach(start, bend, end)
        case Arrow(start=start, bend=bend, end=end):
            yield from _curve_reach(start, bend, end) if bend else (start, end)
        case Measure():
            lines, label = measure_parts(shape)
            for line in lines:
                yield from line
            yield from label_box(label).corners
        case Label():
            yield from (plate_box if shape.has_ground else label_box)(shape).corners


def _curve_reach(start: Point, bend: Point, end: Point) -> Iterable[Point]:
    """Return points a curve of three points surely stays among: its ends and the middles of its two arms."""
    yield from (start, end)
    yield Point((start.x + bend.x) / 2, (start.y + bend.y) / 2)
    yield Point((end.x + bend.x) / 2, (end.y + bend.y) / 2)
