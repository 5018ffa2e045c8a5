"""The edges of a section: which lie on the outside of the block, and which sections lie along the others."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.exact import sign
from evenseam.geometry import Point, Polygon
from evenseam.piecing.pieced import PiecedBlock, Section, SectionJoin
from evenseam.piecing.seam_tree import InOrder


@dataclass(frozen=True, slots=True)
class Stretch:
    """Part of an edge along which one other section lies."""

    section: str
    start: Point
    end: Point

    def holds(self, point: Point) -> bool:
        """Tell whether a point of the edge lies inside the stretch, its ends left out."""
        return sign((point - self.start).dot(self.end - point)) > 0

    def touches(self, point: Point) -> bool:
        """Tell whether a point of the edge lies in the stretch or at its ends."""
        return sign((point - self.start).dot(self.end - point)) >= 0


@dataclass(frozen=True, slots=True)
class SectionEdge:
    """One straight edge of a section, in grid units, run clockwise round the section."""

    start: Point
    end: Point
    join: SectionJoin | None
    """The join along it; None on the outside of the block."""
    stretches: tuple[Stretch, ...]
    """The sections of the other part along it, from start to end."""
    match_points: tuple[Point, ...]
    """Where seams of both parts meet, the edge's ends left out, from start to end."""


def section_edges(pieced: PiecedBlock, section: Section) -> tuple[SectionEdge, ...]:
    """Return the edges of a section, clockwise."""
    return tuple(_edge(pieced, section, start, end) for start, end in section.outline.edges)


def _edge(pieced: PiecedBlock, section: Section, start: Point, end: Point) -> SectionEdge:
    piece = section.pieces[0].piece
    for join in pieced.joins:
        is_first = piece in join.first_pieces
        if not (is_first or piece in join.second_pieces) or not _in_line(start, end, join.seam.start, join.seam.end):
            continue
        other = set(join.second_pieces if is_first else join.first_pieces)
        along = [
            Stretch(neighbour.name, *shared)
            for neighbour in pieced.sections
            if neighbour.pieces[0].piece in other and (shared := _shared(start, end, neighbour.outline))
        ]
        whole = Stretch(section.name, start, end)
        return SectionEdge(
            start,
            end,
            join,
            tuple(sorted(along, key=lambda stretch: InOrder(((stretch.start - start).dot(end - start),)))),
            tuple(
                sorted(
                    (point for point in join.match_points if whole.holds(point)),
                    key=lambda point: InOrder(((point - start).dot(end - start),)),
                )
            ),
        )
    return SectionEdge(start, end, None, (), ())


def _in_line(start: Point, end: Point, third: Point, fourth: Point) -> bool:
    step = end - start
    return sign(step.cross(third - start)) == 0 and sign(step.cross(fourth - start)) == 0


def _shared(start: Point, end: Point, outline: Polygon) -> tuple[Point, Point] | None:
    """Return what an edge shares with the outline of a neighbour, run the way the edge runs."""
    step = end - start
    for one, other in outline.edges:
        # Both outlines run clockwise, so the neighbour's edge runs the opposite way.
        if not _in_line(start, end, other, one) or sign(step.dot(one - other)) <= 0:
            continue
        begin = other if sign(step.dot(other - start)) > 0 else start
        finish = one if sign(step.dot(end - one)) > 0 else end
        if sign(step.dot(finish - begin)) > 0:
            return begin, finish
    return None
