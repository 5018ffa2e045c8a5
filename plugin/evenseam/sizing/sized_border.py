"""Borders with every figure of theirs worked out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias, Union

from evenseam.exact import Number
from evenseam.pattern import Border, Quantity


@dataclass(frozen=True, slots=True)
class SizedBorder:
    """One border of plain strips with its figures."""

    border: Border
    sides_first: bool
    """True when the left and right strips go on before the top and bottom ones."""
    inside_width: Quantity
    """Raw edge to raw edge, before this border."""
    inside_height: Quantity
    strip_width: Quantity
    """Cut width."""
    side_length: Quantity
    """Cut length of the left and right strips, without their cornerstones."""
    top_length: Quantity
    """Cut length of the top and bottom strips, without their cornerstones."""
    width: Quantity
    """Raw edge to raw edge, with this border."""
    height: Quantity

    @property
    def across(self) -> Number:
        """What the border adds at the left, finished."""
        return self.border.width.value

    @property
    def down(self) -> Number:
        """What the border adds at the top, finished."""
        return self.border.width.value


@dataclass(frozen=True, slots=True)
class SizedPiecedBorder:
    """A border of blocks with its figures."""

    border: Border
    inside_width: Quantity
    """Raw edge to raw edge, before the spacers and the blocks."""
    inside_height: Quantity
    blocks_across: Quantity
    """How many blocks lie along the top, without the corners."""
    blocks_down: Quantity
    side_spacer: Quantity | None
    """Finished width of the spacer strips at the left and right; None when the blocks come out even across."""
    top_spacer: Quantity | None
    width: Quantity
    """Raw edge to raw edge, with spacers and blocks."""
    height: Quantity

    @property
    def across(self) -> Number:
        """What spacer and blocks add at the left, finished."""
        return self.border.width.value + (self.side_spacer.value if self.side_spacer else 0)

    @property
    def down(self) -> Number:
        """What spacer and blocks add at the top, finished."""
        return self.border.width.value + (self.top_spacer.value if self.top_spacer else 0)


AnyBorder: TypeAlias = Union[SizedBorder, SizedPiecedBorder]
"""One ring round the centre, of either kind."""
