"""Where seams of two parts meet when the parts are joined: which seam of the one is matched to which of the other."""

from __future__ import annotations

from typing import TypeAlias

from evenseam.geometry import Point
from evenseam.pattern import Block, BlockPiece, JoinPieces, Method
from evenseam.piecing import PiecedBlock, SectionJoin

Match: TypeAlias = tuple[str, str, str, str]
"""Labels of two neighbours in the first part and of two in the second, whose seams meet."""
MOST_TOLD = 4
"""More matches than this are left to the dots of the picture."""


def matches(block: Block, pieced: PiecedBlock, joining: JoinPieces) -> tuple[Match, ...]:
    """Return the seams that meet at a join, along it; nothing where none do, or too many to tell."""
    parts = (joining.first_pieces, joining.second_pieces)
    join = next((join for join in pieced.joins if (join.first_pieces, join.second_pieces) == parts), None)
    if join is None or not 0 < len(join.match_points) <= MOST_TOLD:
        return ()
    labels = _labels(block, pieced)
    found: list[Match] = []
    for point in join.match_points:
        ends = [_neighbours(block, pieces, join, point) for pieces in parts]
        if any(len(pair) != 2 for pair in ends):
            return ()
        (one, two), (three, four) = ends
        found.append((labels[one], labels[two], labels[three], labels[four]))
    return tuple(found)


def _labels(block: Block, pieced: PiecedBlock) -> dict[str, str]:
    is_on_paper = block.method is Method.FOUNDATION
    return {
        piece.piece: piece.label if is_on_paper else section.name
        for section in pieced.sections
        for piece in section.pieces
    }


def _neighbours(block: Block, pieces: tuple[str, ...], join: SectionJoin, point: Point) -> list[str]:
    """Return the pieces of a part that have an end of an edge along the seam at a point, in the order drawn."""
    return [piece.id for piece in block.pieces if piece.id in pieces and _ends_at(piece, join, point)]


def _ends_at(piece: BlockPiece, join: SectionJoin, point: Point) -> bool:
    start, way = join.seam.start, join.seam.end - join.seam.start
    for here, there in piece.outline.edges:
        if point in (here, there) and way.cross(here - start) == 0 and way.cross(there - start) == 0:
            return True
    return False
