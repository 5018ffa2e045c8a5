"""A block as drawn: straight-edged pieces that fill an outline."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from evenseam.exact import Number
from evenseam.geometry import Polygon
from evenseam.pattern.quantity import Quantity
from evenseam.pattern.unit_assembly import UnitBatch
from evenseam.problems import Place


class Method(Enum):
    """How the block is sewn."""

    FOUNDATION = "foundation"
    """On printed paper, patch by patch."""
    ROTARY = "rotary"
    """From pieces cut to size."""


@dataclass(frozen=True, slots=True)
class BlockPiece:
    """One piece of a drawing."""

    id: str
    """Unique in the block; p1, p2, … unless the author gave a name."""
    fabric: str
    """The id of its fabric."""
    outline: Polygon
    """Clockwise, in grid units, as seen on the right side of the sewn block."""
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Block:
    """A block: a drawing on a grid and the finished size it is sewn at."""

    id: str
    name: str
    width: Quantity
    """Finished width."""
    height: Quantity
    """Finished height."""
    grid_width: Number
    """Width of the drawing in grid units."""
    grid_height: Number
    """Height of the drawing in grid units."""
    outline: Polygon
    """Convex, clockwise, in grid units."""
    pieces: tuple[BlockPiece, ...]
    method: Method
    place: Place | None = field(default=None, compare=False)
    unit_method: UnitBatch | None = None
    """How units of triangles are sewn from whole squares; None where each is sewn from single pieces."""
    drawn_in: tuple[Number, Number, Number, Number] | None = field(default=None, compare=False)
    """Left, top, right and bottom of the block in its SVG drawing, in the drawing's own numbers; None where it was
    written otherwise, or stands otherwise than it was drawn."""
    plain_beside: str | None = None
    """Of a plain block, one piece of cloth that lies between others: the id of the block it is as large as."""

    @property
    def scale(self) -> tuple[Number, Number]:
        """Finished length of one grid unit, across and down."""
        return self.width.value / self.grid_width, self.height.value / self.grid_height
