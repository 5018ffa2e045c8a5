"""From an SVG drawing to the pieces of a block: shapes or a net of lines, put on the grid of the block."""

from evenseam.reading.drawing.drawn import BlockDrawn, PieceDrawn, read_block_drawing
from evenseam.reading.drawing.fabrics import Palette
from evenseam.reading.drawing.placing import Grid

__all__ = ["BlockDrawn", "Grid", "Palette", "PieceDrawn", "read_block_drawing"]
