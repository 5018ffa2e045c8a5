"""What must hold of any picture that people are to read: its letters large enough, and nothing over them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations

from evenseam.figures.drawing import Arrow, Drawing, Label, Line, Measure
from evenseam.figures.extent import extent_of
from evenseam.figures.lettering import label_box
from evenseam.figures.measure_line import measure_parts
from evenseam.figures.svg import ROOM
from evenseam.publish.handout_layout import HALF_WIDTH, LEAST_LETTERS
from shapely import LineString
from shapely.geometry import Polygon, box

PHONE = 358
"""Pixels that a picture is wide on a phone of 390: what the page's margins leave."""
LEAST_PIXELS = 11


def letters_of(drawing: Drawing) -> list[Label]:
    """Return all words of a picture, those on measure lines as well."""
    found = [shape for shape in drawing.shapes if isinstance(shape, Label)]
    return found + [measure_parts(shape)[1] for shape in drawing.shapes if isinstance(shape, Measure)]


def size_of(drawing: Drawing) -> tuple[float, float]:
    """Return width and height of a picture with the empty room round it."""
    extent = extent_of(drawing.shapes).with_room(ROOM)
    return extent.width, extent.height


def too_small(drawing: Drawing) -> list[str]:
    """Return words that are too small to read on a phone, or in half the width of a handout's page."""
    wide, _ = size_of(drawing)
    on_phone, on_paper = min(PHONE / wide, 1.0), HALF_WIDTH / wide
    return [
        f"{label.text}: {float(label.size) * on_phone:.1f} px, {float(label.size) * on_paper:.1f} pt"
        for label in letters_of(drawing)
        if float(label.size) * on_phone < LEAST_PIXELS or float(label.size) * on_paper < LEAST_LETTERS
    ]


def crossings(drawing: Drawing) -> Iterator[str]:
    """Yield words that lie over other words, under an arrow, or under a line without a plate of their own."""
    labels = letters_of(drawing)
    boxes = [_inked(label) for label in labels]
    for (one, first), (other, second) in combinations(zip(labels, boxes, strict=True), 2):
        if first.intersects(second):
            yield f"{one.text} and {other.text}"
    lines = list(_lines(drawing))
    for label, around in zip(labels, boxes, strict=True):
        for what, line, has_halo in lines:
            if line.intersects(around) and (has_halo or not label.has_ground):
                yield f"{label.text} and {what}"


def _lines(drawing: Drawing) -> Iterator[tuple[str, object, bool]]:
    for shape in drawing.shapes:
        match shape:
            case Arrow():
                yield "an arrow", LineString(_bent(shape)).buffer(2), True
            case Line(points=points, is_closed=is_closed):
                way = (*points, points[0]) if is_closed else points
                yield f"{shape.stroke.value} line", _straight((spot.x, spot.y) for spot in way), False
            case Measure():
                for line in measure_parts(shape)[0]:
                    yield f"the measure {shape.text}", _straight((spot.x, spot.y) for spot in line), False


def _straight(spots: Iterable[tuple[object, object]]) -> LineString:
    return LineString([(float(x), float(y)) for x, y in spots])


def _bent(arrow: Arrow) -> list[tuple[float, float]]:
    start, end = arrow.start, arrow.end
    bend = arrow.bend or start
    if arrow.bend is None:
        return [(start.x, start.y), (end.x, end.y)]
    shares = [number / 20 for number in range(21)]
    return [
        tuple(  # type: ignore[misc]
            (1 - t) ** 2 * getattr(start, axis) + 2 * t * (1 - t) * getattr(bend, axis) + t * t * getattr(end, axis)
            for axis in "xy"
        )
        for t in shares
    ]


def _inked(label: Label) -> Polygon:
    """Return the part of a label's box that letters fill: the box is on the generous side."""
    left, top, right, bottom = label_box(label).bounds
    across, down = (right - left) * 0.06, (bottom - top) * 0.16
    return box(left + across, top + down, right - across, bottom - down)
