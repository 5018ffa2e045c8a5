"""Layers seen from above at a slant, one over the other with air between them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.figures.cloth_work import draw_cloth
from evenseam.figures.drawing import LABEL_SIZE, Anchor, Pen, Side, Stroke
from evenseam.figures.frame import WIDE, at
from evenseam.figures.lettering import text_width
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.workpiece import Workpiece

LEAN = 1 / 3
"""How far a layer leans to the right for its depth."""
DEPTH = 0.4
"""How deep a layer looks for its height."""
AIR = 30.0
BESIDE = 14.0
"""From the work to the words beside it."""
PITCH = 17
"""Between lines of words."""


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer: the cloth, which side is up, and what it is called."""

    work: Workpiece
    side: Side
    words: tuple[str, ...]
    """Lines of the label beside it."""


@dataclass(frozen=True, slots=True)
class Slant:
    """Places points of a layer as seen at a slant, around the layer's own middle."""

    scale: float
    middle: Point
    """In the drawing."""
    width: float
    height: float
    """Of the layer."""

    def point(self, point: Point) -> Point:
        """Return where a point of the layer is seen."""
        across, down = point.x - self.width / 2, point.y - self.height / 2
        return Point(self.middle.x + (across - down * LEAN) * self.scale, self.middle.y + down * DEPTH * self.scale)

    def polygon(self, polygon: Polygon) -> Polygon:
        """Return how a polygon of the layer is seen."""
        return Polygon(tuple(self.point(corner) for corner in polygon.corners))


def draw_stack(pen: Pen, layers: tuple[Layer, ...]) -> float:
    """Draw layers listed from bottom to top, the lowest drawn first, with a label to the right of each.

    The middle of the lowest layer lies at the origin; returns how far down the picture reaches.
    """
    widest = max(layer.work.raw_width for layer in layers)
    tallest = max(layer.work.raw_height for layer in layers)
    room = max(text_width(line, LABEL_SIZE) for layer in layers for line in layer.words) + BESIDE
    largest = min((WIDE - room) / (widest + tallest * LEAN), 200 / (tallest * DEPTH))
    scale = float(Fraction(largest).limit_denominator(60))
    right = (widest / 2 + tallest * LEAN / 2) * scale
    # Layers overlap, but each keeps a visible front edge.
    air = max(AIR, tallest * DEPTH * scale * 0.4)
    edges: list[Point] = []
    for number, layer in enumerate(layers):
        work = layer.work
        slant = Slant(scale, at(0, -air * number), work.width, work.height)
        seen = work.mirrored() if layer.side is Side.WRONG else work
        draw_cloth(pen, ((patch.fabric, slant.polygon(patch.outline)) for patch in seen.patches), layer.side)
        edges.append(slant.point(Point(work.width, work.height * 0.75)))
    lowest: float | None = None
    for layer, edge in reversed(tuple(zip(layers, edges, strict=True))):
        # From the top layer down, each label below the one before.
        level = edge.y if lowest is None or edge.y > lowest else lowest
        pen.line((edge, at(right + BESIDE - 6, level)), Stroke.HELP)
        for line, words in enumerate(layer.words):
            pen.label(at(right + BESIDE, level + PITCH * line), words, anchor=Anchor.START)
        lowest = level + PITCH * len(layer.words) + 6
    lowest_edge = layers[0].work.height * DEPTH * scale / 2
    return max(lowest_edge, (lowest or 0.0) - 6)
