"""Borders round the centre, and how strips are cut and joined."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from evenseam.pattern.arrangement import BlockPosition
from evenseam.pattern.quantity import Quantity
from evenseam.problems import Place


class BorderOrder(Enum):
    """Which two strips of a butted border are sewn on first."""

    LONG_SIDES_FIRST = "long sides first"
    SHORT_SIDES_FIRST = "short sides first"
    SIDES_FIRST = "left and right first"
    TOP_AND_BOTTOM_FIRST = "top and bottom first"


class BorderCorners(Enum):
    """How a border turns its corners."""

    BUTTED = "butted"
    CORNERSTONES = "cornerstones"
    MITRED = "mitred"
    """All four corners sewn at 45 degrees; neighbouring mitred borders are joined first and mitred as one."""
    PARTIAL_SEAM = "partial seam"
    """Every strip passes one corner; the first is sewn on in part and closed last."""


class StripJoin(Enum):
    """How strips are joined when a piece is longer than the cloth."""

    STRAIGHT = "straight"
    DIAGONAL = "diagonal"


class StripDirection(Enum):
    """Along which thread strips are cut."""

    ACROSS = "across"
    """From selvage to selvage."""
    ALONG = "along"
    """Parallel to the selvage."""
    EITHER = "either"


@dataclass(frozen=True, slots=True)
class PiecedBorder:
    """A border of one block repeated side by side, which must come out even on all four sides.

    The block stands upright along the top and is turned a quarter with every side clockwise; the border's finished
    width is the block's height. What the inside lacks to a whole number of blocks is filled with spacer strips round
    the inside, sewn on first, left and right before top and bottom.

    ::

        +-+------+-+    the strips of blocks are sewn to the left and right first; the top and bottom ones have a corner
        |c| b  b |c|    at either end. A corner block stands upright at the top left, and turned a quarter clockwise
        +-+------+-+    with every corner after it.
        |b|      |b|
        +-+------+-+
        |c| b  b |c|
        +-+------+-+

    The program: spacer strips by `AddBorderStrips`, a pair whose width would be 0 left out; rows of blocks, joined as
    they lie along the top; then `AddBorderStrips` for the sides (turned three quarters for the left, one for the right)
    and for top and bottom (turned half round for the bottom). All four name this border.
    """

    block: str
    corner_block: str | None
    """At the four corners, turned with the sides; None for squares of the border's corner fabric."""
    spacer_fabric: str | None
    """None when the inside comes out even as it is, or nobody said; it is a problem then if it does not."""
    least_spacer: Quantity | None = None
    """Finished width below which a spacer strip is not worth sewing; the next whole block is used then."""
    place: Place | None = field(default=None, compare=False)
    standing: tuple[BlockPosition, ...] = ()
    """Along top, right, bottom and left: which block stands there and how, where a print that has an up makes each a
    block of its own. Sizing sets it; empty when one block is turned."""
    corners_standing: tuple[BlockPosition, ...] = ()
    """Likewise at the top left, top right, bottom right and bottom left corner."""


@dataclass(frozen=True, slots=True)
class Border:
    """One border, sewn round what is inside it."""

    id: str
    name: str
    width: Quantity
    """Finished."""
    fabric: str
    order: BorderOrder
    corners: BorderCorners = BorderCorners.BUTTED
    corner_fabric: str | None = None
    join: StripJoin = StripJoin.DIAGONAL
    strips: StripDirection = StripDirection.EITHER
    place: Place | None = field(default=None, compare=False)
    pieced: PiecedBorder | None = None
    """A border of blocks; None for plain strips."""
    ease: Quantity | None = None
    """Added to the length of a mitred strip, in all, and cut off when the corner is sewn; None for the usual one."""
