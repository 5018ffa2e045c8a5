"""How the blocks of a project stand: rows and columns, straight or on point, with what lies between them."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import TypeAlias, Union

from evenseam.pattern.quantity import Quantity
from evenseam.problems import Place


class Setting(Enum):
    """How the blocks stand."""

    STRAIGHT = "straight"
    ON_POINT = "on point"
    """Turned by 45 degrees anticlockwise: a block not turned otherwise looks to the upper left with its top edge
    (its top left corner lies west, its top right corner north). With the page turned 45 degrees clockwise the blocks
    stand upright again, in the diagonal rows they are sewn in: from the lower left to the upper right of the finished
    top, the first row at its top left corner."""
    UNEQUAL_ROWS = "rows of unequal blocks"
    """Straight rows, each of blocks of one height but any width, with spacers; all rows come out equally wide."""


@dataclass(frozen=True, slots=True)
class BlockPosition:
    """Which block stands at one place of the arrangement, and how."""

    block: str
    quarter_turns: int = 0
    """Clockwise, 0 to 3."""
    is_mirrored: bool = False
    """Left to right, as it stands after it was turned."""


@dataclass(frozen=True, slots=True)
class Sashing:
    """Strips between the blocks, and all round them if wanted."""

    width: Quantity
    """Finished."""
    fabric: str
    is_around: bool
    """All round. On point, sashing runs in any case from edge to edge between the diagonal rows; all round, it also
    lies at the ends of every row and outside the first and last one, so that every block is framed. The edge of the top
    then runs through the middle of the end cornerstones (see `top_assembly`)."""
    cornerstone_fabric: str | None = None
    """With cornerstones, sashing is cut block by block; without, long strips lie between the rows. On point, a print
    with an up lies aslant in it; it is cut upright as the blocks stand in their rows, so that it leans one way in all
    strips and in the blocks."""
    place: Place | None = field(default=None, compare=False)
    between_blocks: bool = True
    """Of rows of unequal blocks: True when an upright strip stands wherever two blocks would touch within a row (a
    spacer between them takes its place); False when strips lie between the rows only. All round, one stands at either
    end of every row in any case. Blocks in rows and columns always have strips between them."""


@dataclass(frozen=True, slots=True)
class SettingTriangles:
    """What fills the edges and corners of blocks set on point."""

    fabric: str
    corner_fabric: str
    float_width: Quantity
    """Finished distance between the outermost corners of the blocks (of the strips that frame them, where sashing goes
    round them: the middle of the end cornerstones) and the seam line of the edge, at the left and right; 0 when the
    corners touch it."""
    place: Place | None = field(default=None, compare=False)
    float_height: Quantity | None = None
    """The same at the top and bottom; None when it is the same distance."""
    chooses_float: bool = False
    """True when nobody gave a float: sizing chooses the least one in either direction that brings the trimmed top to a
    mark of the ruler, and clears this."""
    least_float: Quantity | None = None
    """What a float that is chosen must be at least; None for nothing."""


@dataclass(frozen=True, slots=True)
class Spacer:
    """A strip between the blocks of a row, as high as the row."""

    fabric: str
    width: Quantity | None
    """Finished, along the row. None: it takes an equal share of what its row lacks to the widest row."""
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class UnequalRow:
    """One row of blocks that may differ in width, with spacers."""

    parts: tuple[RowPart, ...]
    """Left to right."""
    place: Place | None = field(default=None, compare=False)


RowPart: TypeAlias = Union[BlockPosition, Spacer]


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Rows and columns of blocks."""

    rows: Quantity
    columns: Quantity
    setting: Setting
    positions: tuple[tuple[BlockPosition, ...], ...]
    """rows × columns, top row first, left block first.

    On point: as the finished top is seen, 2 × rows − 1 lines from above, of `columns` and `columns` − 1 blocks in turn.
    Rows of unequal blocks: the blocks of every row, which may differ in number; `columns` is the largest number.
    """
    sashing: Sashing | None = None
    place: Place | None = field(default=None, compare=False)
    setting_triangles: SettingTriangles | None = None
    """Of blocks on point; None otherwise."""
    unequal_rows: tuple[UnequalRow, ...] = ()
    """Of rows of unequal blocks, from the top; empty otherwise."""
