"""A small picture of each block as sewn beside its templates, which are its mirror image."""

from __future__ import annotations

from fractions import Fraction

from evenseam.figures.drawing import Label, Line, Stroke
from evenseam.figures.paper.template_shapes import POINT, TemplateShapes
from evenseam.figures.paper.words import TABLE, PaperWords
from evenseam.figures.rational import rational
from evenseam.figures.spot import label_spot
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block
from evenseam.piecing import PiecedBlock

SIDE = Fraction(8, 5)
"""The longer side of the picture, in inches."""
_LARGEST = Fraction(11)
_SMALLEST = Fraction(4)


def key_shapes(block: Block, pieced: PiecedBlock, words: PaperWords) -> TemplateShapes:
    """Return a block with its pieces, and round its sections heavier lines and their letters, not to scale."""
    width, height = rational(block.width.value), rational(block.height.value)
    share = SIDE / max(width, height)
    across, down = (rational(side) * share for side in block.scale)

    def small(polygon: Polygon) -> Polygon:
        return Polygon(tuple(Point(rational(c.x) * across, rational(c.y) * down) for c in polygon.corners))

    # Each edge once: dashes drawn twice fill each other's gaps.
    edges = {frozenset(edge): edge for piece in block.pieces for edge in small(piece.outline).edges}
    lines = [Line(edge, Stroke.HELP) for edge in edges.values()]
    labels: list[Label] = []
    for section in pieced.sections:
        outline = small(section.outline)
        lines.append(Line(outline.corners, Stroke.SEWING_LINE, is_closed=True))
        if len(pieced.sections) > 1 and (label := _letter(outline, section.name)) is not None:
            labels.append(label)
    title, told = words.fill(TABLE, "as_sewn", block=block.name), words.word(TABLE, "as_sewn_told")
    return TemplateShapes(title, told, width * share, height * share, tuple(lines), tuple(labels))


def _letter(outline: Polygon, name: str) -> Label | None:
    """Return the letter of a section where it has most room, in points; None where none can be read."""
    in_points = Polygon(tuple(Point(corner.x / POINT, corner.y / POINT) for corner in outline.corners))
    found = label_spot(in_points, name, _LARGEST, _SMALLEST, is_bold=True)
    if found is None:
        return None
    spot, size = found
    # Hundredths of a point and tenths: exact again.
    place = Point(Fraction(round(spot.x * 100), 100) * POINT, Fraction(round(spot.y * 100), 100) * POINT)
    return Label(place, name, Fraction(round(size * 10), 10), is_bold=True)
