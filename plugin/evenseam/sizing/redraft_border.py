"""A border's lengths in the unit of its edition; a border of blocks is as wide as its re-drafted blocks are high."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from evenseam.pattern import Block, Border, derived
from evenseam.sizing.ruler import Ruler


def redraft_border(border: Border, blocks: Iterable[Block], ruler: Ruler) -> Border:
    """Return the border with every length on the ruler; `blocks` are re-drafted already."""
    ease = ruler.finished(border.ease) if border.ease else None
    pieced = border.pieced
    if pieced is None:
        return replace(border, width=ruler.finished(border.width), ease=ease)
    least = ruler.finished(pieced.least_spacer) if pieced.least_spacer else None
    high = {block.id: block.height for block in blocks}
    width = border.width
    if pieced.block in high:
        width = derived(f"{border.name} width", high[pieced.block], rule="as wide as its blocks are high")
    return replace(border, width=width, ease=ease, pieced=replace(pieced, least_spacer=least))
