"""Ways to sew units of triangles from whole squares, and the operation that sews them."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from evenseam.pattern.quantity import Quantity


class UnitMethodKind(Enum):
    """Which way, by what it makes and how many at a time."""

    TWO_HALF_SQUARE = "half-square triangle units, two at a time"
    FOUR_HALF_SQUARE = "half-square triangle units, four at a time"
    """Two squares sewn all round and cut on both diagonals: the outer edges of the units lie on the bias."""
    EIGHT_HALF_SQUARE = "half-square triangle units, eight at a time"
    ONE_GOOSE = "flying geese, one at a time"
    """Squares sewn on two corners of a rectangle."""
    FOUR_GEESE = "flying geese, four at a time"
    TWO_QUARTER_SQUARE = "quarter-square triangle units, two at a time"
    """Of two fabrics, each in two opposite triangles."""
    FOUR_QUARTER_SQUARE = "quarter-square triangle units, four at a time"
    """Of three fabrics: one in two opposite triangles, and one in each of the other two."""
    CORNER_SQUARES = "squares sewn on the corners of a whole piece"
    """The corners of a square or rectangle, cut off by triangles."""


class UnitBatch(Enum):
    """How many units of a block its maker sews at once from whole squares, at most."""

    ONE = "one at a time"
    TWO = "two at a time"
    FOUR = "four at a time"
    EIGHT = "eight at a time"

    @property
    def number(self) -> int:
        """The number itself."""
        return {UnitBatch.ONE: 1, UnitBatch.TWO: 2, UnitBatch.FOUR: 4, UnitBatch.EIGHT: 8}[self]


@dataclass(frozen=True, slots=True)
class MakeUnits:
    """Sew whole squares on each other a seam allowance beside a line, cut on the line, press and trim.

    ::

        +---------+      - : sewn     two half-square triangle units at a time: two squares right sides together,
        |    ,'/,'|      / : cut      sewn on both sides of one diagonal
        |  ,'/,'  |
        |,'/,'    |
        +---------+
    """

    block: str
    kind: UnitMethodKind
    squares: tuple[str, ...]
    """Cut ids of what one batch takes, each as often as it is used: two squares for half-square triangle units; the
    large one first for geese; the two of opposite sides, then twice the third, for units of three fabrics; for pieces
    with squares on their corners the cut of each piece, in the order of `pieces`."""
    pieces: tuple[str, ...]
    """Piece ids of one unit."""
    also: tuple[tuple[str, ...], ...]
    """The other places in the block where the same unit is used, piece for piece."""
    seam: Quantity
    """Distance from the line to the stitches on either side."""
    gives: int
    """Units from one batch."""
    spare: int
    """Units of the last batch that the project does not need."""
