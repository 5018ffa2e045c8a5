"""One project size: everything that was decided about it, nothing yet worked out."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import TypeAlias, Union

from evenseam.exact import Unit
from evenseam.pattern.block import Block
from evenseam.pattern.fabric import Fabric
from evenseam.pattern.quantity import Quantity
from evenseam.problems import Place


class Setting(Enum):
    """How the blocks stand."""

    STRAIGHT = "straight"
    ON_POINT = "on point"


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
    cornerstone_fabric: str | None = None
    """With cornerstones, sashing is cut block by block; without, long strips lie between the rows."""
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Rows and columns of blocks."""

    rows: Quantity
    columns: Quantity
    setting: Setting
    positions: tuple[tuple[BlockPosition, ...], ...]
    """rows × columns, top row first, left block first."""
    sashing: Sashing | None = None
    place: Place | None = field(default=None, compare=False)


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


class Grain(Enum):
    """How binding lies on the cloth."""

    STRAIGHT = "straight"
    BIAS = "bias"


@dataclass(frozen=True, slots=True)
class Binding:
    """Double-fold binding."""

    fabric: str
    strip_width: Quantity
    """Cut width of the strip, before folding."""
    extra_length: Quantity
    """Added to the way round for corners and the last join."""
    grain: Grain = Grain.STRAIGHT
    join: StripJoin = StripJoin.DIAGONAL


@dataclass(frozen=True, slots=True)
class Turned:
    """Quick finish: layers right sides together, sewn round, turned through an opening, topstitched."""

    backing_fabric: str
    backing_overage: Quantity
    """Per side, beyond the raw top."""
    batting_overage: Quantity
    """Per side, beyond the raw top."""
    opening: Quantity
    topstitch: Quantity
    """Distance of the topstitching from the edge."""
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Bound:
    """Quilted, squared up to the raw size of the top, and bound; finishes at that size."""

    backing_fabric: str
    backing_overage: Quantity
    """Per side, beyond the raw top."""
    batting_overage: Quantity
    """Per side, beyond the raw top."""
    backing_seam: Quantity
    """Seam allowance of a backing pieced from panels."""
    binding: Binding
    place: Place | None = field(default=None, compare=False)


Finish: TypeAlias = Union[Turned, Bound]


@dataclass(frozen=True, slots=True)
class Sleeve:
    """A hanging sleeve: a tube of cloth on the back, for a rod."""

    fabric: str
    cut_depth: Quantity
    """Cut across the tube: folded in half and sewn it makes the finished depth."""
    cut_extra: Quantity
    """Cut length beyond the finished width of the project; below zero when shorter."""
    hem: Quantity
    """Turned under at each end, in all."""
    drop: Quantity
    """How far below the top edge it is sewn."""
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class CornerPockets:
    """Two folded squares caught in the top corners, for a thin rod."""

    fabric: str
    square: Quantity
    """Cut size."""
    place: Place | None = field(default=None, compare=False)


Hanging: TypeAlias = Union[Sleeve, CornerPockets]


@dataclass(frozen=True, slots=True)
class Prose:
    """Text of the author: Markdown with {{ figures }}, and where it stands."""

    text: str
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Project:
    """One size of a pattern in one edition, with every override already applied.

    Lengths the author gave for this edition are in its unit; lengths inherited from the other unit are still in that
    one until the edition is re-drafted.
    """

    size: str
    """Slug: wall-hanging."""
    name: str
    """What a maker reads: Wall hanging."""
    unit: Unit
    """INCH or CENTIMETRE: the edition."""
    seam_allowance: Quantity
    usable_width: Quantity
    """Of the cloth, between the selvages."""
    fabrics: tuple[Fabric, ...]
    blocks: tuple[Block, ...]
    arrangement: Arrangement
    borders: tuple[Border, ...]
    """Innermost first."""
    finish: Finish
    hanging: Hanging | None
    patch_margin: Quantity
    """Added on every side of a foundation patch beyond the seam allowance."""
    batting_name: str
    use: str = ""
    """What it is for, when a caution follows from it: pot holder, infant, wall; empty otherwise."""
    summary: str = ""
    introduction: Prose | None = None
    additions: tuple[tuple[str, Prose], ...] = ()
    """The author's own words for a step, by step id."""
    place: Place | None = field(default=None, compare=False)
    shop_step: Quantity | None = None
    """The step cloth is sold by where the author's readers buy it, in yards or metres; None for the usual one."""

    def fabric(self, id: str) -> Fabric:
        """Return a fabric by its id. Raises KeyError."""
        for fabric in self.fabrics:
            if fabric.id == id:
                return fabric
        raise KeyError(id)

    def block(self, id: str) -> Block:
        """Return a block by its id. Raises KeyError."""
        for block in self.blocks:
            if block.id == id:
                return block
        raise KeyError(id)
