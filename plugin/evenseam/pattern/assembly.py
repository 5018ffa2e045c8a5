"""The assembly program: the steps of the making, each using workpieces that are there and leaving a new one.

A workpiece is named by a text. Cut pieces are named by their cut's id; a step's `makes` names what it leaves. Every
step is done `times` times, so a row that is sewn four times uses up four times its parts and leaves four rows. The
last step leaves one workpiece, `PROJECT`, and nothing else.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import TypeAlias, Union

from evenseam.pattern.edge_assembly import (
    AttachLoops,
    AttachRings,
    CloseEnvelope,
    CloseKnifeEdge,
    Face,
    HemPanel,
    MakeLoop,
    RoundCorners,
    TrimForKnifeEdge,
)
from evenseam.pattern.quantity import Quantity
from evenseam.pattern.top_assembly import (
    AddMitredBorder,
    AddPartialSeamBorder,
    AddSettingTriangles,
    JoinDiagonalRows,
    TrimTop,
)
from evenseam.pattern.unit_assembly import MakeUnits

PROJECT = "project"
"""The name of the finished piece."""


class Press(Enum):
    """Where a seam's allowances are pressed."""

    OPEN = "open"
    FIRST = "toward the first part"
    SECOND = "toward the second part"
    OUTWARD = "toward the border"
    INWARD = "away from the border"
    DARKER = "toward the darker fabric"
    SASHING = "toward the sashing"


class Run(Enum):
    """How joined parts lie: across from left to right, or down from top to bottom."""

    ACROSS = "across"
    DOWN = "down"


@dataclass(frozen=True, slots=True)
class PatchUse:
    """One piece of a foundation section and the patch cut for it."""

    piece: str
    """Piece id in the block."""
    label: str
    """A1, A2, …"""
    cut: str
    """Cut id of its patch."""


@dataclass(frozen=True, slots=True)
class PieceSection:
    """Sew patches in order onto one printed section, and trim it on its cutting line."""

    block: str
    section: str
    patches: tuple[PatchUse, ...]


@dataclass(frozen=True, slots=True)
class JoinPieces:
    """Sew two parts of one block along the whole of the straight seam between them."""

    block: str
    first: str
    """Workpiece, or cut id of a single rotary piece."""
    first_pieces: tuple[str, ...]
    """Piece ids that the first part is made of."""
    second: str
    second_pieces: tuple[str, ...]
    press: Press
    also: tuple[tuple[str, ...], ...] = ()
    """The other places in the block where the same unit is used, turned by quarter turns or not: the piece ids there,
    in the order of `first_pieces` and then `second_pieces`."""


@dataclass(frozen=True, slots=True)
class TrimPart:
    """Trim a sewn part of a block until one seam allowance is left beyond its seam lines all round.

    Triangles are cut from squares brought up to a mark of the ruler, so that what is sewn from them is a little large.
    """

    block: str
    part: str
    """Workpiece."""
    pieces: tuple[str, ...]
    """Piece ids that the part is made of."""
    seam: Quantity
    """What is left beyond the seam lines."""


@dataclass(frozen=True, slots=True)
class JoinRun:
    """Sew parts edge to edge, in order, left to right or top to bottom."""

    parts: tuple[str, ...]
    run: Run
    press: Press
    kind: str
    """What is joined, for the words: blocks, rows, sashed row, …"""
    quarter_turns: tuple[int, ...] = ()
    """How far each part is turned clockwise before it is joined, 0 to 3; empty when none is turned."""


@dataclass(frozen=True, slots=True)
class AddBorderStrips:
    """Sew two strips of a border to opposite edges of the centre."""

    border: str
    centre: str
    strip: str
    """Cut id, or the workpiece of a strip with cornerstones; two are used each time."""
    run: Run
    """ACROSS: to the left and right edges; DOWN: to the top and bottom edges."""
    press: Press
    opposite: str | None = None
    """What is sewn to the right or bottom edge, when it is not a second one of `strip`."""
    quarter_turns: int = 0
    """How far the strip at the left or top edge is turned clockwise before it is sewn on: a strip of blocks, joined as
    it lies along the top, is turned three quarters for the left edge."""
    opposite_turns: int = 0
    """How far the one at the right or bottom edge is turned."""


@dataclass(frozen=True, slots=True)
class LayerTurned:
    """Batting, backing right side up, top right side down; pinned, sewn round except for the opening, and trimmed."""

    top: str
    backing: str
    batting: str
    seam: Quantity
    opening: Quantity
    opening_edge: str
    """bottom, left, …"""
    insulation: str | None = None
    """Heat-resistant batting, laid between batting and backing; None for what comes near no heat."""


@dataclass(frozen=True, slots=True)
class TurnOut:
    """Clip the corners, turn through the opening, press, close."""

    layered: str


@dataclass(frozen=True, slots=True)
class Topstitch:
    """Stitch all round near the edge, which also closes the opening."""

    turned: str
    distance: Quantity


@dataclass(frozen=True, slots=True)
class LayerForQuilting:
    """Backing right side down, batting, top right side up; basted."""

    top: str
    backing: str
    batting: str
    insulation: str | None = None
    """Heat-resistant batting, laid between backing and batting; None for what comes near no heat."""


@dataclass(frozen=True, slots=True)
class QuiltLayers:
    """Quilt through all layers."""

    layered: str


@dataclass(frozen=True, slots=True)
class SquareUp:
    """Trim all layers to the size of the top."""

    quilted: str
    width: Quantity
    height: Quantity


@dataclass(frozen=True, slots=True)
class MakeBinding:
    """Join the strips, fold in half along the length, press."""

    binding: str
    folded_width: Quantity


@dataclass(frozen=True, slots=True)
class Bind:
    """Sew the binding on all round, with mitred corners, join its ends, fold to the back, sew down."""

    trimmed: str
    binding: str
    seam: Quantity


@dataclass(frozen=True, slots=True)
class MakeSleeve:
    """Hem the short ends, fold lengthwise, sew into a tube."""

    sleeve: str
    hem: Quantity
    seam: Quantity
    finished_length: Quantity
    finished_depth: Quantity


@dataclass(frozen=True, slots=True)
class AttachSleeve:
    """Sew the tube to the back by hand below the top edge."""

    project: str
    sleeve: str
    drop: Quantity


@dataclass(frozen=True, slots=True)
class MakeCornerPockets:
    """Fold two squares diagonally: each time two are used, and the pair is one workpiece."""

    square: str


@dataclass(frozen=True, slots=True)
class AttachCornerPockets:
    """Lay the folded squares on the top corners of the back, to be caught in the edge."""

    project: str
    pockets: str


Operation: TypeAlias = Union[
    PieceSection,
    JoinPieces,
    TrimPart,
    JoinRun,
    AddBorderStrips,
    LayerTurned,
    TurnOut,
    Topstitch,
    LayerForQuilting,
    QuiltLayers,
    SquareUp,
    MakeBinding,
    Bind,
    MakeSleeve,
    AttachSleeve,
    MakeCornerPockets,
    AttachCornerPockets,
    AddSettingTriangles,
    JoinDiagonalRows,
    TrimTop,
    AddMitredBorder,
    AddPartialSeamBorder,
    RoundCorners,
    Face,
    TrimForKnifeEdge,
    CloseKnifeEdge,
    HemPanel,
    CloseEnvelope,
    MakeLoop,
    AttachLoops,
    AttachRings,
    MakeUnits,
]


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the making."""

    id: str
    """Stable and readable, so that an author can add words to it: outer-border-sides."""
    operation: Operation
    makes: str
    times: int
    measures: tuple[Quantity, Quantity] | None
    """What the plan says the workpiece measures afterwards, raw edge to raw edge: width and height; None for parts
    that a maker would not measure. The simulator must arrive at the same."""

    @property
    def leaves(self) -> int:
        """How many equal workpieces it leaves for the steps that follow."""
        if isinstance(self.operation, MakeUnits):
            return self.times * self.operation.gives - self.operation.spare
        return self.times


@dataclass(frozen=True, slots=True)
class Program:
    """The steps in order."""

    steps: tuple[Step, ...]

    def step(self, id: str) -> Step:
        """Return one step by id. Raises KeyError."""
        for step in self.steps:
            if step.id == id:
                return step
        raise KeyError(id)
