"""The pieces of a block as it stands in the project."""

from __future__ import annotations

from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block, BlockPosition


def stand(block: Block, position: BlockPosition) -> tuple[tuple[str, Polygon], ...]:
    """Return the fabric and the outline of every piece of a block as it stands, from its own top left corner."""
    across, down = block.scale
    width, height = block.width.value, block.height.value
    pieces = [(piece.fabric, piece.outline.scaled(across, down)) for piece in block.pieces]
    for _ in range(position.quarter_turns % 4):
        # A quarter turn clockwise on the page takes (x, y) to (height - y, x).
        pieces = [
            (fabric, Polygon(tuple(Point(height - corner.y, corner.x) for corner in outline.corners)))
            for fabric, outline in pieces
        ]
        width, height = height, width
    return tuple(pieces)
