"""How the edge of a project is finished, and what it is hung by."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import TypeAlias, Union

from evenseam.pattern.border import StripJoin
from evenseam.pattern.quantity import Quantity
from evenseam.problems import Place


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
    shows: Quantity | None = None
    """How much of it shows on the front, which is the seam allowance it is sewn on with; `strip_width` is computed from
    it. None: it is sewn on with the pattern's own seam allowance, and shows as much as that."""


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
    corner_radius: Quantity | None = None
    """Of rounded corners, which need a bias binding; None for square ones."""


@dataclass(frozen=True, slots=True)
class Faced:
    """Quilted, squared up, and faced: strips sewn to every edge right sides together and turned to the back."""

    backing_fabric: str
    backing_overage: Quantity
    """Per side, beyond the raw top."""
    batting_overage: Quantity
    """Per side, beyond the raw top."""
    backing_seam: Quantity
    """Seam allowance of a backing pieced from panels."""
    facing_fabric: str
    facing_width: Quantity
    """Cut width of the facing strips."""
    facing_fold: Quantity
    """Turned under along the inner edge of the facing before it is sewn on."""
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class KnifeEdge:
    """Quilted, with the edges of top and backing folded in toward each other and sewn together; no other strip."""

    backing_fabric: str
    backing_overage: Quantity
    """Per side, beyond the raw top."""
    batting_overage: Quantity
    """Per side, beyond the raw top."""
    backing_seam: Quantity
    """Seam allowance of a backing pieced from panels."""
    quilting_stop: Quantity
    """How far inside the raw edge of the top the quilting stops, so that the edges can be folded in."""
    stitch: Quantity
    """Distance of the stitching from the folded edge."""
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class EnvelopeBack:
    """A cushion cover: the quilted and squared-up front, with two overlapping hemmed panels sewn on behind, turned."""

    backing_fabric: str
    """The lining behind the batting of the front, which nobody sees."""
    backing_overage: Quantity
    """Per side, beyond the raw top."""
    batting_overage: Quantity
    """Per side, beyond the raw top."""
    backing_seam: Quantity
    """Seam allowance of a lining pieced from panels."""
    panel_fabric: str
    overlap: Quantity
    """Finished, of the two panels across the middle; the opening lies across the width."""
    hem: Quantity
    """Folded under twice: each fold takes so much."""
    place: Place | None = field(default=None, compare=False)


Finish: TypeAlias = Union[Turned, Bound, Faced, KnifeEdge, EnvelopeBack]


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


@dataclass(frozen=True, slots=True)
class Loops:
    """Folded loops of cloth along the top edge, for a rod that shows."""

    fabric: str
    number: Quantity
    cut_width: Quantity
    """Folded lengthwise, sewn into a tube and turned: the loop finishes half of it less a seam allowance wide."""
    cut_length: Quantity
    """Folded in half; its raw ends are caught in, or sewn behind, the top edge."""
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Rings:
    """Small rings sewn to the back by hand below the top edge."""

    number: Quantity
    drop: Quantity
    """How far below the top edge."""
    place: Place | None = field(default=None, compare=False)


Hanging: TypeAlias = Union[Sleeve, CornerPockets, Loops, Rings]
