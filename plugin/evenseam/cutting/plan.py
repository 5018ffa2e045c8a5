"""Cutting plans: where every piece lies on the cloth, in the order a person cuts with a rotary cutter."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from evenseam.exact import Number, Unit
from evenseam.pattern import Quantity, StripDirection, StripJoin

HARDLY_ANYTHING = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}
"""Less of the usable width than this is lost by a crooked selvage alone: common practice."""


@dataclass(frozen=True, slots=True)
class PlannedPiece:
    """One rectangle on the cloth: a cut piece, or one length of a piece that is joined from several.

    x runs across the cloth from the left selvage, y along it from the squared-up end.
    """

    cut: str
    """Cut id."""
    x: Number
    y: Number
    width: Number
    """Across the cloth."""
    height: Number
    """Along the cloth."""
    is_turned: bool
    """True when the cut's own width lies along the cloth."""
    is_length_of_joined: bool = False
    """True for one of several lengths joined into one piece."""


@dataclass(frozen=True, slots=True)
class PlannedStrip:
    """One strip cut from the cloth, and what is subcut from it."""

    direction: StripDirection
    """ACROSS or ALONG."""
    x: Number
    y: Number
    width: Number
    """Across the cloth."""
    height: Number
    """Along the cloth."""
    pieces: tuple[PlannedPiece, ...]
    section: int = 0
    """From 1: cut from this section of the cloth; 0: cut from the cloth itself."""


@dataclass(frozen=True, slots=True)
class SubcutLine:
    """Part of a cutting instruction: so many pieces of one cut from each group of strips."""

    cut: str
    width: Number
    """As the cut lists it (upright in the project)."""
    height: Number
    count: int
    is_trimmed: bool
    """True when the piece is narrower than its strip and must be trimmed."""
    is_left_over: bool = False
    """True when it comes from what is left of a strip that is cut for another piece."""
    also: tuple[str, ...] = ()
    """Other cuts that are just like this one on the cloth, and counted with it."""


@dataclass(frozen=True, slots=True)
class CuttingLine:
    """One instruction: cut `count` strips of this size, then subcut."""

    direction: StripDirection
    strip_width: Number
    """The measure the ruler is set to."""
    strip_length: Number
    is_full_width: bool
    """True when the strip runs from selvage to selvage."""
    count: int
    subcuts: tuple[SubcutLine, ...]
    section: int = 0
    """From 1: these strips are cut from that section of the cloth; 0: from the cloth itself."""


@dataclass(frozen=True, slots=True)
class JoinedPieces:
    """Pieces that are longer than one strip: how many lengths are joined into each."""

    cut: str
    pieces: int
    lengths: int
    """Number of strip lengths used for all the pieces together."""
    join: StripJoin
    total: Quantity
    """Length of one joined piece."""
    strip: str = ""
    """Names the joined strip the pieces are cut from: the id of the first cut that uses it. Several cuts with the same
    name share one joined strip, and `lengths` is then the number of lengths in that strip, the same for each."""
    panels: bool = False
    """True for a backing pieced from panels as wide as the cloth."""
    spare: Quantity | None = None
    """What the joined strip is longer for each piece than the piece; None where the piece has its own spare."""


@dataclass(frozen=True, slots=True)
class BiasSquares:
    """The squares a continuous bias binding is made from."""

    cut: str
    side: Quantity
    squares: int


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """How all pieces of one fabric are cut from one length of cloth."""

    material: str
    usable_width: Quantity
    strips: tuple[PlannedStrip, ...]
    lines: tuple[CuttingLine, ...]
    """The same as sentences-to-be, in cutting order."""
    joined: tuple[JoinedPieces, ...]
    length: Quantity
    """Cloth used, with squaring up."""
    lower_bound: Number
    """No two-stage plan of these pieces, joined strips cut in the lengths they are cut in here or as long as the cloth
    is wide, can use less."""
    is_shortest: bool
    """True when proved: the length is the least any two-stage plan can use."""
    sections: tuple[Number, ...] = ()
    """Lengths of the sections: stretches of cloth, selvage to selvage, cut off first, from the squared-up end on.
    Lengthwise strips and the short strips beside them are cut from a section."""
    bias: tuple[BiasSquares, ...] = ()
    alike: tuple[tuple[str, ...], ...] = ()
    """Cuts that are the same on the cloth, such as upright and lying strips of one size: they are cut as one."""

    @property
    def fills_width(self) -> bool:
        """True when the pieces of some strip leave hardly anything of the usable width: cloth must not be narrower."""
        return any(self._fills(strip) for strip in self.strips)

    def _fills(self, strip: PlannedStrip) -> bool:
        if strip.direction is not StripDirection.ACROSS or any(piece.is_length_of_joined for piece in strip.pieces):
            return False
        end = max(piece.x + piece.width for piece in strip.pieces)
        return self.usable_width.value - end < HARDLY_ANYTHING[self.usable_width.unit]

    @property
    def numbers(self) -> dict[str, int]:
        """A number for each cut, in the order it first lies on the cloth: the same in the picture and in the words.

        Cuts that are alike have one number.
        """
        first = {cut: group[0] for group in self.alike for cut in group}
        cuts = dict.fromkeys(piece.cut for strip in self.strips for piece in strip.pieces)
        numbers = {
            cut: number for number, cut in enumerate(dict.fromkeys(first.get(cut, cut) for cut in cuts), start=1)
        }
        return {cut: numbers[first.get(cut, cut)] for cut in cuts}


@dataclass(frozen=True, slots=True)
class Packaged:
    """A packaged batting, in inches."""

    name: str
    width: Number
    length: Number


class AlternativeKind(Enum):
    """Another way to buy and cut a fabric."""

    UNPIECED_BORDERS = "borders cut lengthwise in one piece"
    JOINED_BORDERS = "borders joined from strips across the cloth"
    WIDE_BACKING = "wide backing without a seam"


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another way for one fabric, worked out so that the maker can choose."""

    kind: AlternativeKind
    usable_width: Quantity
    needed: Quantity
    buy: Quantity


@dataclass(frozen=True, slots=True)
class Material:
    """One line of the materials list."""

    material: str
    """Fabric id, or BATTING."""
    name: str
    needed: Quantity
    """Length of cloth the plan uses; for batting the longer side."""
    buy: Quantity
    """In the shop's steps, with shrinkage and spare: yards or metres."""
    piece: tuple[Quantity, Quantity] | None
    """Width and height when it is bought as one piece, as batting is."""
    plan: CuttingPlan | None
    packaged: Packaged | None = None
    """The smallest packaged batting that is large enough; None for fabrics, and when none is."""
    alternatives: tuple[Alternative, ...] = ()
