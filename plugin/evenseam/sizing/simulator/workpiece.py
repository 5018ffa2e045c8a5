"""What can lie on the table: cut pieces, parts of blocks, flat pieces, layers, and what the back is hung by."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction
from typing import TypeAlias, Union

from evenseam.exact import Number
from evenseam.pattern import Cut, Run
from evenseam.sizing.simulator.plane import Outline


@dataclass(frozen=True, slots=True)
class Spoilt:
    """Something a problem has been told about already: what is made of it is not judged again."""


@dataclass(frozen=True, slots=True)
class CutPiece:
    """A piece as it was cut."""

    cut: Cut


@dataclass(frozen=True, slots=True)
class Part:
    """Some pieces of a block, sewn."""

    block: str
    pieces: frozenset[str]
    outline: Outline
    """Seam lines, in grid units."""
    loose: Mapping[str, tuple[str, Number]] = field(default_factory=dict)
    """The pieces cut from squares larger than they need, and not trimmed yet: shape and side of the square."""
    order: tuple[str, ...] = ()
    """The pieces in the order they are listed in."""
    also: tuple[tuple[str, ...], ...] = ()
    """Other places in the block where the same unit goes, piece for piece in that order."""


@dataclass(frozen=True, slots=True, eq=False)
class Flat:
    """A flat piece of patchwork: its size, and what is where in it.

    A leaf is a block (with its id) or a cut strip; anything else is a run of such.
    """

    width: Number
    """Raw edge to raw edge."""
    height: Number
    block: str = ""
    turns: int = 0
    """Quarter turns clockwise of a leaf, 0 to 3."""
    cut: Cut | None = None
    run: Run | None = None
    parts: tuple[Flat, ...] = ()
    blocks: dict[tuple[str, int], int] = field(default_factory=dict)
    """How many blocks are in it, by id and quarter turns."""
    leaves: int = 1
    """Blocks and strips in it; may be far more than anyone could list."""


@dataclass(frozen=True, slots=True)
class Bordered:
    """A centre with strips of borders sewn on."""

    centre: Flat
    width: Number
    height: Number
    strips: tuple[tuple[str, Run], ...]
    """Border ids and sides, in the order they were sewn."""


class Stage(Enum):
    """How far a layered project has come."""

    SEWN_ROUND = "sewn round, wrong side out"
    TURNED = "turned right side out"
    BASTED = "layered for quilting"
    QUILTED = "quilted"
    TRIMMED = "squared up"
    FINISHED = "finished at the edge"


@dataclass(frozen=True, slots=True)
class Layered:
    """Top, batting and backing together."""

    stage: Stage
    width: Number
    """What the ruler reads now."""
    height: Number
    top_width: Number
    """Raw size of the top."""
    top_height: Number
    has_pockets: bool = False
    has_sleeve: bool = False


@dataclass(frozen=True, slots=True)
class FoldedBinding:
    """Binding, joined and folded."""

    cut: Cut
    folded_width: Number
    length: Number


@dataclass(frozen=True, slots=True)
class Tube:
    """A hanging sleeve."""

    cut: Cut
    length: Number
    depth: Number


@dataclass(frozen=True, slots=True)
class PocketPair:
    """Two squares, folded diagonally."""

    cut: Cut


@dataclass(frozen=True, slots=True)
class Pocketed:
    """A top or a backing with corner pockets laid on it, before the layers are sewn round."""

    piece: CutPiece | Flat | Bordered


Workpiece: TypeAlias = Union[Spoilt, CutPiece, Part, Flat, Bordered, Layered, FoldedBinding, Tube, PocketPair, Pocketed]


def run_of(run: Run, parts: tuple[Flat, ...], seam: Number) -> Flat:
    """Return the parts sewn edge to edge; the edges that meet are known to be equal."""
    lost = 2 * (len(parts) - 1) * seam
    width: Number = parts[0].width
    height: Number = parts[0].height
    blocks: dict[tuple[str, int], int] = {}
    total: Number = Fraction(0)
    for part in parts:
        total = total + (part.width if run is Run.ACROSS else part.height)
        for key, number in part.blocks.items():
            blocks[key] = blocks.get(key, 0) + number
    if run is Run.ACROSS:
        width = total - lost
    else:
        height = total - lost
    return Flat(width, height, run=run, parts=parts, blocks=blocks, leaves=sum(part.leaves for part in parts))


def turned(piece: Flat, quarter_turns: int) -> Flat:
    """Return a block or strip turned clockwise; its sides change places with every quarter."""
    turns = (piece.turns + quarter_turns) % 4
    width, height = (piece.height, piece.width) if quarter_turns % 2 else (piece.width, piece.height)
    blocks = {(piece.block, turns): 1} if piece.block else {}
    return Flat(width, height, piece.block, turns, piece.cut, blocks=blocks)


def size_on_table(piece: Workpiece) -> tuple[Number, Number] | None:
    """Return what a ruler reads across and down; None where there is no upright rectangle to measure."""
    match piece:
        case (
            Flat(width=width, height=height)
            | Bordered(width=width, height=height)
            | Layered(width=width, height=height)
        ):
            return width, height
        case CutPiece(cut=cut):
            return cut.width.value, cut.height.value
        case FoldedBinding(folded_width=width, length=length):
            return width, length
        case Tube(length=length, depth=depth):
            return length, depth
        case Pocketed(piece=inner):
            return size_on_table(inner)
    return None
