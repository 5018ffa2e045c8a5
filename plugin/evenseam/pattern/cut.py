"""The cut list: every piece of cloth and batting, with its size, count and reason."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from evenseam.geometry import Polygon
from evenseam.pattern.border import StripDirection, StripJoin
from evenseam.pattern.quantity import Quantity


class CutShape(Enum):
    """What a cut is, in the words of the trade."""

    RECTANGLE = "rectangle"
    SQUARE = "square"
    STRIP = "strip"
    PATCH = "patch"
    """A rectangle for one foundation piece: cut generously, trimmed after sewing."""
    BINDING = "binding"
    """A long strip of given total length; `height` is its length, joined from as many strips as it takes."""
    BIAS_BINDING = "bias binding"
    HALF_SQUARE_TRIANGLE = "half-square triangle"
    """`width` × `height` is the square, cut once diagonally; the count is of triangles."""
    QUARTER_SQUARE_TRIANGLE = "quarter-square triangle"
    """`width` × `height` is the square, cut twice diagonally; the count is of triangles."""
    TEMPLATE = "template"
    """`width` × `height` is the rectangle that a cutting template is laid on; `outline` is the piece."""


@dataclass(frozen=True, slots=True)
class Cut:
    """Equal pieces to cut from one material.

    ::

         <- width ->        width and height are as the piece stands in the finished project, seen upright;
        +-----------+  ^    a directional print points to the top edge.
        |           |  |
        |           |  height
        +-----------+  v
    """

    id: str
    """Stable, readable: outer-border-top-bottom."""
    label: str
    """For the cutting list: top and bottom strips of the outer border."""
    material: str
    """A fabric id, BATTING or INSULATION."""
    shape: CutShape
    width: Quantity
    height: Quantity
    count: Quantity
    part: str
    """Which part of the project it belongs to: block:lantern, border:outer-border, backing, binding, hanging, …"""
    is_upright: bool = False
    """True when the print has an up: height must lie along the selvage."""
    join: StripJoin | None = None
    """How it may be joined from shorter strips; None when it must be one piece."""
    direction: StripDirection = StripDirection.EITHER
    join_seam: Quantity | None = None
    """Seam allowance of those joins; None for the pattern's own."""
    labels: tuple[str, ...] = ()
    """Of pieces of a block: their labels in its key, A1, A4, …; of pieces cut to size A, B, …"""
    outline: Polygon | None = None
    """Of a TEMPLATE: the finished piece as it lies on the grain, clockwise, its leftmost x and topmost y 0. It lies as
    it stands in the block, but for a turned rectangle, whose sides lie along the grain. The cutting line is a seam
    allowance outside it on every side."""
    used_of_square: int | None = None
    """Of triangles of a fabric with an up, cut from squares: how many of each square stand the right way and are used;
    None: all of them."""


@dataclass(frozen=True, slots=True)
class CutList:
    """All cuts of one project."""

    cuts: tuple[Cut, ...]

    def of(self, material: str) -> tuple[Cut, ...]:
        """Return the cuts from one material, in list order."""
        return tuple(cut for cut in self.cuts if cut.material == material)

    def cut(self, id: str) -> Cut:
        """Return one cut by id. Raises KeyError."""
        for cut in self.cuts:
            if cut.id == id:
                return cut
        raise KeyError(id)

    @property
    def materials(self) -> tuple[str, ...]:
        """Materials in order of first use."""
        return tuple(dict.fromkeys(cut.material for cut in self.cuts))
