"""Drawings of blocks, comparable whatever their grid, their size and the order of their pieces."""

from __future__ import annotations

from evenseam.pattern import Block


def listed(block: Block, fabrics: dict[str, str]) -> tuple[object, ...]:
    """Return a drawing whatever its grid and size, its pieces in the order of the file."""
    across, down = 1 / block.grid_width, 1 / block.grid_height
    return tuple(
        (fabrics.get(piece.fabric, piece.fabric), frozenset(piece.outline.scaled(across, down).corners))
        for piece in block.pieces
    )


def drawn(block: Block, fabrics: dict[str, str]) -> frozenset[object]:
    """Return a drawing whatever its grid, its size and the order of its pieces."""
    return frozenset(listed(block, fabrics))


def shapes(block: Block) -> frozenset[object]:
    """Return the shapes of a drawing whatever their fabrics."""
    across, down = 1 / block.grid_width, 1 / block.grid_height
    return frozenset(frozenset(piece.outline.scaled(across, down).corners) for piece in block.pieces)
