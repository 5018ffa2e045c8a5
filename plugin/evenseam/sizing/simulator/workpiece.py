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
    is_from_point: bool = False
    """A top of blocks set on point, squared up: compared with the arrangement row by row as it was sewn."""


@dataclass(frozen=True, slots=True, eq=False)
class DiagonalRow:
    """A row of blocks set on point with a triangle at either end."""

    row: Flat
    number: int
    start: Cut
    """The triangle at the lower left end of the finished top."""
    end: Cut
    """The triangle at the upper right end."""


@dataclass(frozen=True, slots=True, eq=False)
class DiagonalTop:
    """All diagonal rows sewn together, with ragged edges."""


@dataclass(frozen=True, slots=True)
class Pair:
    """Two strips of a border on opposite edges."""

    run: Run
    is_spacer: bool = False


@dataclass(frozen=True, slots=True)
class Bordered:
    """A centre with strips of borders sewn on."""

    centre: Flat
    width: Number
    height: Number
    done: int = 0
    """How many borders are sewn on whole, from the inside."""
    pairs: tuple[Pair, ...] = ()
    """Pairs of strips of the next border that are sewn on already."""
    inside: tuple[Number, Number] | None = None
    """Raw width and height before the first of these pairs."""
    spacers: tuple[Number, Number] = (Fraction(0), Fraction(0))
    """What spacer strips added to the finished width and height so far."""


class Stage(Enum):
    """How far a layered project has come."""

    SEWN_ROUND = "sewn round, wrong side out"
    TURNED = "turned right side out"
    BASTED = "layered for quilting"
    QUILTED = "quilted"
    TRIMMED = "squared up"
    FOLDABLE = "trimmed layer by layer for a knife edge"
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
    has_loops: bool = False
    has_rings: bool = False
    is_round: bool = False
    """Its corners are cut round."""


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
class Loop:
    """A strip sewn into a tube and folded in half."""

    cut: Cut
    width: Number
    length: Number
    """Folded, raw ends included."""


@dataclass(frozen=True, slots=True)
class HemmedPanel:
    """A back panel of a cushion with one long edge hemmed."""

    cut: Cut
    width: Number
    height: Number


@dataclass(frozen=True, slots=True)
class Pocketed:
    """A top or a backing with corner pockets or loops laid on it, before the layers are sewn round."""

    piece: CutPiece | Flat | Bordered
    has_pockets: bool = True
    has_loops: bool = False


Workpiece: TypeAlias = Union[
    Spoilt,
    CutPiece,
    Part,
    Flat,
    DiagonalRow,
    DiagonalTop,
    Bordered,
    Layered,
    FoldedBinding,
    Tube,
    PocketPair,
    Loop,
    HemmedPanel,
    Pocketed,
]


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


def turned_whole(piece: Flat, quarter_turns: int, most: int) -> Flat | None:
    """Return a block, a strip or one plain run of them turned clockwise as a whole; None for anything else, and for a
    run of more than so many parts.
    """
    quarter_turns %= 4
    if not piece.parts or piece.run is None:
        return turned(piece, quarter_turns) if quarter_turns else piece
    parts = side_by_side(piece, piece.run, most)
    if parts is None:
        return None
    known: dict[int, Flat] = {}
    laid = [known.setdefault(id(part), turned(part, quarter_turns) if quarter_turns else part) for part in parts]
    width, height = (piece.height, piece.width) if quarter_turns % 2 else (piece.width, piece.height)
    is_across = (piece.run is Run.ACROSS) is (quarter_turns % 2 == 0)
    # What lies left comes to lie on top, then right, then at the bottom; what lies on top comes to lie right first.
    if quarter_turns in ((2, 3) if piece.run is Run.ACROSS else (1, 2)):
        laid.reverse()
    blocks = {(block, (turns + quarter_turns) % 4): number for (block, turns), number in piece.blocks.items()}
    run = Run.ACROSS if is_across else Run.DOWN
    return Flat(width, height, run=run, parts=tuple(laid), blocks=blocks, leaves=piece.leaves)


def side_by_side(piece: Flat, run: Run, most: int) -> list[Flat] | None:
    """Return the blocks and strips of a run in order; None when they do not all lie that way, or are too many."""
    if piece.leaves > most:
        return None
    found: list[Flat] = []
    waiting = [piece]
    while waiting:
        part = waiting.pop()
        if not part.parts:
            found.append(part)
        elif part.run is run:
            waiting.extend(reversed(part.parts))
        else:
            return None
    return found


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
        case HemmedPanel(width=width, height=height) | Loop(width=width, length=height):
            return width, height
        case Pocketed(piece=inner):
            return size_on_table(inner)
    return None
