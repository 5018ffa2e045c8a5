"""How the ends of two parts lie on each other at their seam: corner on corner, or with a tip that sticks out.

A seam allowance reaches the further past the end of a seam the sharper the corner there is. Where both parts have the
same corner their edges are even; where they have not, the sharper one sticks out.
"""

from __future__ import annotations

from enum import Enum

from evenseam.exact import Number, sign
from evenseam.geometry import Point, Polygon, convex_hull
from evenseam.pattern import Block, JoinPieces


class SeamEnds(Enum):
    """Where tips stick out past the other part."""

    EVEN = "even"
    ONE_END = "one end"
    BOTH_ENDS = "both ends"
    """Of the same part."""
    EACH_PART = "each part"
    """One tip of each part, at opposite ends."""


def seam_ends(block: Block, joining: JoinPieces) -> SeamEnds:
    """Return how the ends of a seam between two parts lie; even where the seam cannot be made out."""
    first, second = (_outline(block, pieces) for pieces in (joining.first_pieces, joining.second_pieces))
    others = {(end, start) for start, end in second.edges}
    for start, end in first.edges:
        if (start, end) in others:
            sharper = tuple(
                sign(_openness(second, here, there) - _openness(first, here, there))
                for here, there in ((start, end), (end, start))
            )
            return _told(sharper)
    return SeamEnds.EVEN


def _told(sharper: tuple[int, ...]) -> SeamEnds:
    match sharper:
        case (0, 0):
            return SeamEnds.EVEN
        case (one, other) if one == other:
            return SeamEnds.BOTH_ENDS
        case (0, _) | (_, 0):
            return SeamEnds.ONE_END
    return SeamEnds.EACH_PART


def _outline(block: Block, pieces: tuple[str, ...]) -> Polygon:
    across, down = block.scale
    drawn = (piece.outline for piece in block.pieces if piece.id in pieces)
    return convex_hull(corner.scaled(across, down) for outline in drawn for corner in outline.corners)


def _openness(outline: Polygon, here: Point, there: Point) -> Number:
    """Return a number that grows as the corner `here`, between the seam to `there` and the next edge, opens.

    It is the cosine, squared with its sign, so that no root is needed, and turned about.
    """
    corners = outline.corners
    index = corners.index(here)
    beside = corners[index - 1] if corners[(index + 1) % len(corners)] == there else corners[(index + 1) % len(corners)]
    along, aside = there - here, beside - here
    dot = along.dot(aside)
    return -sign(dot) * dot * dot / (along.dot(along) * aside.dot(aside))
