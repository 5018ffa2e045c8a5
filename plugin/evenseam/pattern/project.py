"""One project size: everything that was decided about it, nothing yet worked out."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from evenseam.exact import Unit
from evenseam.pattern.arrangement import Arrangement
from evenseam.pattern.block import Block
from evenseam.pattern.border import Border
from evenseam.pattern.fabric import Fabric
from evenseam.pattern.finish import Finish, Hanging
from evenseam.pattern.quantity import Quantity
from evenseam.problems import Place


@dataclass(frozen=True, slots=True)
class Prose:
    """Text of the author: Markdown with {{ figures }}, and where it stands."""

    text: str
    place: Place | None = field(default=None, compare=False)


class Choosing(Enum):
    """What sizing may choose so that a project comes near to a finished size."""

    ROWS_AND_COLUMNS = "rows and columns"
    BORDER_WIDTHS = "border widths"


@dataclass(frozen=True, slots=True)
class Fit:
    """A finished size the author asks for, by one of the trade's names or by figures."""

    name: str
    """What the page calls it: twin bed; empty for a size in figures."""
    width: Quantity
    """Finished."""
    height: Quantity
    """Finished."""
    may_choose: tuple[Choosing, ...] = (Choosing.ROWS_AND_COLUMNS, Choosing.BORDER_WIDTHS)
    place: Place | None = field(default=None, compare=False)
    widest_border: Quantity | None = None
    """How wide the outermost border may become; None for twice its own width."""
    drop: Quantity | None = None
    """How far it hangs over the sides and the foot of a bed; None for anything else."""
    note: str = ""
    """What was chosen where published sizes differ, and whose; empty for a size in figures."""


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
    fit: Fit | None = None
    """A finished size to come near to; sizing then chooses what the author left open, and clears it."""

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
