"""A block's drawing as the maker reads it: outlines of its pieces by name, and the size they are sewn at."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from evenseam.exact import Number
from evenseam.pattern import Block, BlockPiece, Step
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.plane import Outline, outline, scaled
from evenseam.sizing.simulator.table import Table


@dataclass(frozen=True, slots=True)
class Drawing:
    """A block as the maker sees it: its pieces by name."""

    block: Block
    pieces: dict[str, tuple[BlockPiece, Outline]]
    across: Number
    down: Number

    def finished(self, shape: Outline) -> Outline:
        """Return a shape of the drawing at the size it is sewn at."""
        return scaled(shape, self.across, self.down)

    def shapes(self, names: Iterable[str]) -> list[Outline]:
        """Return pieces at the size they are sewn at."""
        return [self.finished(self.pieces[name][1]) for name in names]


def read_drawing(table: Table, id: str, step: Step | None) -> Drawing | None:
    """Read the drawing of a block; None, with the problem noted, when it cannot be sewn from."""
    block = next((block for block in table.project.blocks if block.id == id), None)
    if block is None:
        who = f"step {step.id} sews" if step else "the arrangement has"
        table.tell(codes.WORKPIECE_UNKNOWN, f"{who} a block {id}, but the pattern has none of that name")
        return None
    if not (block.grid_width > 0 and block.grid_height > 0 and block.width.value > 0 and block.height.value > 0):
        table.tell(codes.SIZE_NOT_POSITIVE, f"the {block.name} block has no size", block.width, place=block.place)
        return None
    pieces: dict[str, tuple[BlockPiece, Outline]] = {}
    for piece in block.pieces:
        shape = outline((corner.x, corner.y) for corner in piece.outline.corners)
        if shape is None or piece.id in pieces:
            table.tell(
                codes.SEAM_NOT_WHOLE if shape is None else codes.PIECES_LISTED_WRONGLY,
                f"piece {piece.id} of the {block.name} block "
                + ("has an inward corner or no area" if shape is None else "is there twice"),
                place=piece.place or block.place,
            )
            return None
        pieces[piece.id] = (piece, shape)
    return Drawing(block, pieces, block.width.value / block.grid_width, block.height.value / block.grid_height)
