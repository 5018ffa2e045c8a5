"""A border's lengths in the unit of its edition; a border of blocks is as wide as its re-drafted blocks are high."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, Block, Border, Quantity, derived
from evenseam.sizing.ruler import Ruler

LEAST_SPACER = {Unit.INCH: Fraction(1, 2), Unit.CENTIMETRE: Fraction(1)}
"""Finished width of the narrowest spacer strip, where the author names none (common practice)."""


def redraft_border(border: Border, blocks: Iterable[Block], ruler: Ruler) -> Border:
    """Return the border with every length on the ruler; `blocks` are re-drafted already."""
    ease = ruler.finished(border.ease) if border.ease else None
    pieced = border.pieced
    if pieced is None:
        return replace(border, width=ruler.finished(border.width), ease=ease)
    least = ruler.finished(pieced.least_spacer) if pieced.least_spacer else _usual_least(border, ruler.unit)
    high = {block.id: block.height for block in blocks}
    width = border.width
    if pieced.block in high:
        width = derived(f"{border.name} width", high[pieced.block], rule="as wide as its blocks are high")
    return replace(border, width=width, ease=ease, pieced=replace(pieced, least_spacer=least))


def _usual_least(border: Border, unit: Unit) -> Quantity:
    reason = Assumed("a narrower strip is hard to sew straight")
    return Quantity(f"least spacer of the {border.name}", LEAST_SPACER[unit], unit, reason)
