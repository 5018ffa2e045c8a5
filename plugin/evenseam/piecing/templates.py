"""From the sections of a pieced block to the shapes of its paper templates."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from evenseam.exact import Number, Unit
from evenseam.geometry import Point, Polygon, mitred_offset, without_straight_corners
from evenseam.pattern import Block, Quantity
from evenseam.piecing.edges import SectionEdge, section_edges
from evenseam.piecing.label_place import label_place
from evenseam.piecing.pieced import PiecedBlock, Section


@dataclass(frozen=True, slots=True)
class TemplatePiece:
    """One piece as it stands on the template."""

    piece: str
    """Piece id in the block."""
    label: str
    """A1, A2, …"""
    fabric: str
    outline: Polygon
    """Seam lines all round it; clockwise."""
    label_point: Point
    """Where its label has the most room; inside the piece."""
    room: Fraction
    """Radius of the circle about the label point that stays inside the piece."""


@dataclass(frozen=True, slots=True)
class TemplateSeam:
    """A line to sew on inside the template."""

    label: str
    """The piece that is sewn on along it: A2, A3, …"""
    start: Point
    end: Point


class MarkKind(Enum):
    """What a match mark is for."""

    SEAMS_MEET = "seams of both parts meet here"
    SECTIONS_MEET = "two sections of the other part meet here"
    MIDDLE = "middle of a shared stretch"


@dataclass(frozen=True, slots=True)
class MatchMark:
    """A point of the sewing line that is laid on the same point of another template when the two are joined."""

    kind: MarkKind
    point: Point
    join: str
    """What the join makes: A+B."""
    sections: tuple[str, ...]
    """The sections of the other part that bear the same point."""


@dataclass(frozen=True, slots=True)
class TemplateEdge:
    """One straight edge of the sewing line."""

    start: Point
    end: Point
    join: str | None
    """What the join along it makes; None on the outside of the block."""
    neighbours: tuple[str, ...]
    """The sections that lie along it, from start to end; none on the outside of the block."""

    @property
    def is_outside(self) -> bool:
        """True when the edge lies on the outside of the block."""
        return self.join is None


@dataclass(frozen=True, slots=True)
class SectionTemplate:
    """The paper template of one section, as it is printed: the mirror image of the sewn section.

    ::

        +---------------------+  cutting line      x to the right, y down, in `unit`;
        |  +---------------+  |                    the sewing line's leftmost x and topmost y are 0,
        |  |   A1  /  A2   |  |                    the cutting line reaches below 0.
        |  +---------------+  |  sewing line
        +---------------------+
    """

    block: str
    section: str
    unit: Unit
    width: Number
    """Of the sewing line."""
    height: Number
    outline: Polygon
    """The sewing line; convex, clockwise."""
    cutting_line: Polygon
    """Outside the sewing line by the seam allowance on every side, corners mitred; clockwise, corner for corner."""
    seam_allowance: Quantity
    pieces: tuple[TemplatePiece, ...]
    """In sewing order."""
    seams: tuple[TemplateSeam, ...]
    """In sewing order."""
    edges: tuple[TemplateEdge, ...]
    """Clockwise, from corner to corner of the sewing line, in the order of its corners."""
    marks: tuple[MatchMark, ...]
    grain: tuple[Point, Point]
    """Tail and head of an arrow inside the roomiest piece that points to the top of the block, beside its label."""


def section_templates(block: Block, pieced: PiecedBlock, seam_allowance: Quantity) -> tuple[SectionTemplate, ...]:
    """Return the template of every section, at the finished size of the block.

    The seam allowance is in the unit of the block's finished size; anything else is our own mistake and raises
    ValueError.
    """
    if {block.width.unit, block.height.unit} != {seam_allowance.unit}:
        raise ValueError(f"seam allowance in {seam_allowance.unit.name}, block in {block.width.unit.name}")
    return tuple(_template(block, pieced, section, seam_allowance) for section in pieced.sections)


def cutting_template(
    block: str, labels: tuple[str, ...], fabric: str, outline: Polygon, seam_allowance: Quantity
) -> SectionTemplate:
    """Return the template a piece is cut with: not mirrored, for it is laid on the right side of the fabric.

    `outline` is finished, clockwise, its leftmost x and topmost y 0; the arrow shows how the grain runs, and the
    print of a fabric that has an up.
    """
    outline = without_straight_corners(outline.clockwise())
    _, _, width, height = outline.bounds
    place = label_place(outline)
    piece = TemplatePiece("", ", ".join(labels), fabric, outline, place.point, place.room)
    return SectionTemplate(
        block, ", ".join(labels), seam_allowance.unit, width, height, outline,
        mitred_offset(outline, seam_allowance.value), seam_allowance, (piece,), (),
        tuple(TemplateEdge(start, end, None, ()) for start, end in outline.edges), (), _grain([piece]),
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Paper:
    """Turns a point of the drawing into a point of one printed template."""

    scale: tuple[Number, Number]
    right: Number
    top: Number

    def point(self, point: Point) -> Point:
        across, down = self.scale
        return Point((self.right - point.x) * across, (point.y - self.top) * down)

    def outline(self, polygon: Polygon) -> Polygon:
        # Mirroring turns the way round about; the corners are taken backwards so that it stays clockwise.
        return Polygon(tuple(self.point(corner) for corner in reversed(polygon.corners)))


def _template(block: Block, pieced: PiecedBlock, section: Section, seam_allowance: Quantity) -> SectionTemplate:
    _, top, right, _ = section.outline.bounds
    paper = _Paper(block.scale, right, top)
    outline = paper.outline(section.outline)
    _, _, width, height = outline.bounds
    drawn = {piece.id: piece for piece in block.pieces}
    pieces: list[TemplatePiece] = []
    for sewn in section.pieces:
        shape = paper.outline(drawn[sewn.piece].outline.clockwise())
        place = label_place(shape)
        pieces.append(TemplatePiece(sewn.piece, sewn.label, drawn[sewn.piece].fabric, shape, place.point, place.room))
    seams = tuple(
        TemplateSeam(sewn.label, paper.point(sewn.seam.start), paper.point(sewn.seam.end))
        for sewn in section.pieces
        if sewn.seam
    )
    # Clockwise on paper is anticlockwise in the drawing, so the drawing's edges are taken backwards, from the last
    # corner: the mirrored outline starts there.
    *others, last = section_edges(pieced, section)
    around = (*reversed(others), last)
    return SectionTemplate(
        block.id,
        section.name,
        seam_allowance.unit,
        width,
        height,
        outline,
        mitred_offset(outline, seam_allowance.value),
        seam_allowance,
        tuple(pieces),
        seams,
        tuple(_edge(paper, edge) for edge in around),
        tuple(mark for edge in around for mark in _marks(paper, edge)),
        _grain(pieces),
    )


def _edge(paper: _Paper, edge: SectionEdge) -> TemplateEdge:
    names = tuple(stretch.section for stretch in reversed(edge.stretches))
    join = edge.join.makes if edge.join else None
    return TemplateEdge(paper.point(edge.end), paper.point(edge.start), join, names)


def _marks(paper: _Paper, edge: SectionEdge) -> list[MatchMark]:
    if edge.join is None:
        return []
    marks: list[tuple[MarkKind, Point, tuple[str, ...]]] = []
    for first, second in zip(edge.stretches, edge.stretches[1:], strict=False):
        if first.end not in edge.match_points:
            marks.append((MarkKind.SECTIONS_MEET, first.end, (first.section, second.section)))
    for point in edge.match_points:
        bearing = tuple(stretch.section for stretch in edge.stretches if stretch.touches(point))
        marks.append((MarkKind.SEAMS_MEET, point, bearing))
    for stretch in edge.stretches:
        if not any(stretch.holds(point) for point in edge.match_points):
            half = Fraction(1, 2)
            marks.append((MarkKind.MIDDLE, (stretch.start + stretch.end).scaled(half, half), (stretch.section,)))
    return [MatchMark(kind, paper.point(point), edge.join.makes, names) for kind, point, names in marks]


def _grain(pieces: list[TemplatePiece]) -> tuple[Point, Point]:
    roomiest = max(pieces, key=lambda piece: piece.room)
    # Three fifths to the side and three fifths up and down stay inside the circle about the label.
    reach = roomiest.room * Fraction(3, 5)
    beside = roomiest.label_point + Point(reach, Fraction(0))
    return beside + Point(Fraction(0), reach), beside - Point(Fraction(0), reach)
