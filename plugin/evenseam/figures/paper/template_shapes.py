"""One template as lines and words, in inches from the corner of its cutting line."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Number
from evenseam.figures.cloth_look import ClothLook
from evenseam.figures.drawing import Anchor, Ink, Label, Line, Stroke
from evenseam.figures.lettering import SIZES, letters_width
from evenseam.figures.paper.paper_size import in_inches
from evenseam.figures.paper.words import TABLE, PaperWords
from evenseam.figures.rational import length_of, rational, rational_point
from evenseam.figures.spot import room_at
from evenseam.geometry import Point, Polygon
from evenseam.piecing.templates import MarkKind, SectionTemplate, TemplateEdge, TemplatePiece

POINT = Fraction(1, 72)
"""One point in inches."""
LABEL_POINTS = Fraction(13)
SMALLEST_POINTS = Fraction(4)
NAME_POINTS = Fraction(13, 2)
EDGE_POINTS = Fraction(6)


@dataclass(frozen=True, slots=True)
class TemplateShapes:
    """A template ready to be laid on paper."""

    title: str
    """Lantern: section A."""
    copies: str
    """print 3 copies."""
    width: Fraction
    """Of the cutting line, in inches."""
    height: Fraction
    lines: tuple[Line, ...]
    labels: tuple[Label, ...]
    """Sizes in points."""


@dataclass(frozen=True, slots=True)
class _Lay:
    """Brings a point of the template to inches, turned a quarter clockwise if the template lies sideways."""

    factor: Fraction
    left: Fraction
    top: Fraction
    bottom: Fraction
    is_sideways: bool

    def point(self, point: Point) -> Point:
        x, y = rational(point.x), rational(point.y)
        if self.is_sideways:
            return Point((self.bottom - y) * self.factor, (x - self.left) * self.factor)
        return Point((x - self.left) * self.factor, (y - self.top) * self.factor)

    def polygon(self, polygon: Polygon) -> Polygon:
        return Polygon(tuple(self.point(corner) for corner in polygon.corners))


def template_shapes(
    template: SectionTemplate,
    looks: dict[str, ClothLook],
    title: str,
    copies: str,
    words: PaperWords,
    *,
    is_sideways: bool,
) -> TemplateShapes:
    """Return everything printed for one template, upright or turned a quarter clockwise; `copies` says how often."""
    left, top, right, bottom = (rational(side) for side in template.cutting_line.bounds)
    factor = in_inches(template.unit)
    lay = _Lay(factor, left, top, bottom, is_sideways)
    lines = [
        Line(lay.polygon(template.cutting_line).corners, Stroke.CUTTING_LINE, is_closed=True),
        Line(lay.polygon(template.outline).corners, Stroke.SEWING_LINE, is_closed=True),
    ]
    lines += [Line((lay.point(seam.start), lay.point(seam.end)), Stroke.SEWING_LINE) for seam in template.seams]
    lines += _marks(template, lay)
    lines += _grain(template, lay)
    labels = [label for piece in template.pieces for label in _piece_labels(piece, template, looks, lay)]
    labels += [label for edge in template.edges for label in _edge_label(edge, template, lay, words)]
    wide, high = (right - left) * factor, (bottom - top) * factor
    if is_sideways:
        wide, high = high, wide
    return TemplateShapes(title, copies, wide, high, tuple(lines), tuple(labels))


def _piece_labels(
    piece: TemplatePiece, template: SectionTemplate, looks: dict[str, ClothLook], lay: _Lay
) -> list[Label]:
    """Return the piece's label with its fabric's letter, and the fabric's name below it where that fits."""
    spot = lay.point(piece.label_point)
    look = looks[piece.fabric]
    outline = lay.polygon(piece.outline)
    at_points = _in_points(outline)
    text = f"{piece.label} ({look.letter})"
    has_arrow = piece is _with_arrow(template)
    middle = _points(spot)
    size = _room(at_points, middle, text, is_bold=True)
    if has_arrow:
        # Leave the arrow beside it its place.
        reach = rational(piece.room) * lay.factor / POINT * Fraction(9, 20)
        size = min(size, reach * 2 / _width(text, 1, is_bold=True))
    if size < SMALLEST_POINTS:
        text = piece.label
        size = _room(at_points, middle, text, is_bold=True)
    size = max(min(size, LABEL_POINTS), SMALLEST_POINTS)
    labels = [Label(spot, text, size, is_bold=True)]
    below = Point(spot.x, spot.y + (size * Fraction(7, 10) + 4) * POINT)
    has_name = size >= 9 and _room(at_points, _points(below), look.name) >= NAME_POINTS
    if has_arrow:
        has_name = has_name and _width(look.name, NAME_POINTS) / 2 < rational(piece.room) * lay.factor / POINT / 2
    if has_name:
        labels.append(Label(below, look.name, NAME_POINTS))
    return labels


def _with_arrow(template: SectionTemplate) -> TemplatePiece:
    """Return the piece that bears the grain arrow: the roomiest."""
    return max(template.pieces, key=lambda one: one.room)


def _edge_label(edge: TemplateEdge, template: SectionTemplate, lay: _Lay, words: PaperWords) -> list[Label]:
    """Return the words in the seam allowance that say which sections an edge is sewn to."""
    if edge.is_outside:
        return []
    start, end = lay.point(edge.start), lay.point(edge.end)
    seam = rational(template.seam_allowance.value) * lay.factor
    way = end - start
    long = length_of(way)
    if not long:
        return []
    # A third of the way along, where no match mark of an even division stands.
    outward = Point(way.y / long, -way.x / long).scaled(seam / 2, seam / 2)
    spot = start + way.scaled(Fraction(7, 20), Fraction(7, 20)) + outward
    text = words.fill(TABLE, "to_sections", sections=", ".join(edge.neighbours))
    is_upward = abs(rational(way.y)) > abs(rational(way.x))
    if _width(text, EDGE_POINTS) * POINT > long * Fraction(2, 3):
        return []
    return [Label(spot, text, EDGE_POINTS, is_upward=is_upward)]


def _marks(template: SectionTemplate, lay: _Lay) -> list[Line]:
    """Return match marks: ticks from the sewing line into the seam allowance.

    One tick where seams meet, two where two sections of the other part meet, a small v at the middle of a stretch.
    """
    lines: list[Line] = []
    seam = rational(template.seam_allowance.value) * lay.factor
    for mark in template.marks:
        edge = _edge_of(template, mark.point, mark.join)
        if edge is None:
            continue
        start, end, spot = lay.point(edge.start), lay.point(edge.end), lay.point(mark.point)
        way = end - start
        long = length_of(way)
        along = Point(way.x / long, way.y / long)
        outward = Point(along.y, -along.x).scaled(seam * Fraction(4, 5), seam * Fraction(4, 5))
        aside = along.scaled(Fraction(1, 32), Fraction(1, 32))
        match mark.kind:
            case MarkKind.SEAMS_MEET:
                lines.append(Line((spot, spot + outward), Stroke.EDGE))
            case MarkKind.SECTIONS_MEET:
                lines += [Line((spot + side, spot + side + outward), Stroke.EDGE) for side in (aside, _back(aside))]
            case MarkKind.MIDDLE:
                half = outward.scaled(Fraction(1, 2), Fraction(1, 2))
                lines.append(Line((spot + half + _back(aside), spot, spot + half + aside), Stroke.EDGE))
    return lines


def _edge_of(template: SectionTemplate, point: Point, join: str) -> TemplateEdge | None:
    """Return the edge of a join that a point of the sewing line lies on."""
    spot = rational_point(point)
    for edge in template.edges:
        start, end = rational_point(edge.start), rational_point(edge.end)
        way = end - start
        if edge.join == join and way.dot(way) > 0:
            is_beside = abs(rational(way.cross(spot - start))) <= Fraction(1, 1 << 20)
            if is_beside and 0 <= way.dot(spot - start) <= way.dot(way):
                return edge
    return None


def _grain(template: SectionTemplate, lay: _Lay) -> list[Line]:
    tail, head = (lay.point(point) for point in template.grain)
    way = head - tail
    long = length_of(way)
    if not long:
        return []
    along = Point(way.x / long, way.y / long)
    size = min(Fraction(7, 72), rational(long) / 3)
    back = along.scaled(size, size)
    aside = Point(along.y, -along.x).scaled(size / 2, size / 2)
    return [
        Line((tail, head), Stroke.EDGE),
        Line((head - back + aside, head, head - back - aside), Stroke.EDGE),
    ]


def _back(step: Point) -> Point:
    return Point(-step.x, -step.y)


def _points(point: Point) -> Point:
    return Point(point.x / POINT, point.y / POINT)


def _in_points(polygon: Polygon) -> Polygon:
    return Polygon(tuple(_points(corner) for corner in polygon.corners))


def label_width(text: str, points: Number | int, *, is_bold: bool = False) -> Fraction:
    """Return the width of words in inches."""
    return _width(text, points, is_bold=is_bold) * POINT


def _width(text: str, points: Number | int, *, is_bold: bool = False) -> Fraction:
    """Return the width of words in points."""
    return rational(points) * Fraction(letters_width(text, is_bold=is_bold), SIZES)


def _room(piece: Polygon, spot: Point, text: str, *, is_bold: bool = False) -> Fraction:
    """Return the largest size, in tenths of a point, at which words round a spot stay inside a piece."""
    return Fraction(round(room_at(piece, spot, text, is_bold=is_bold) * 10), 10)


def caption(shapes: TemplateShapes) -> tuple[Label, Label]:
    """Return the two lines under a template, from its lower left corner."""
    title = Label(
        Point(Fraction(0), shapes.height + Fraction(11, 100)),
        shapes.title,
        Fraction(8),
        anchor=Anchor.START,
        is_bold=True,
    )
    copies = Label(
        Point(Fraction(0), shapes.height + Fraction(23, 100)),
        shapes.copies,
        Fraction(8),
        Ink.QUIET,
        anchor=Anchor.START,
    )
    return title, copies


CAPTION_HEIGHT = Fraction(30, 100)


def caption_width(shapes: TemplateShapes) -> Fraction:
    """Return how wide the lines under a template are, in inches."""
    return max(label_width(shapes.title, 8, is_bold=True), label_width(shapes.copies, 8))
