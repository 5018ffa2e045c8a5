"""A block's finished size in the other unit, keeping the block's proportions."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Number, Surd, Unit, nearest
from evenseam.pattern import Block, Method, derived
from evenseam.problems import Report
from evenseam.sizing.codes import PROPORTIONS_CHANGED
from evenseam.sizing.ruler import FINE_MARK, FINISHED_MARK, Ruler

FURTHEST = Fraction(8, 100)
"""A block that keeps its proportions may differ from the true size by this share of it."""


def redraft_block(block: Block, unit: Unit, ruler: Ruler, report: Report) -> Block:
    """Return the block with its finished size in `unit`.

    Both sides change by one scale, the nearest at which both land on a mark. Where none lies within 8 % of the true
    size each side is set by itself, and a warning says that the proportions change.
    """
    if block.width.unit is unit and block.height.unit is unit:
        return block
    ratio = block.height.value / block.width.value
    if isinstance(ratio, Surd):
        # A height that follows from the width, as that of a hexagon, follows from it again.
        width = ruler.finished(block.width)
        rule = "as high to its width as it was drawn"
        return replace(block, width=width, height=derived(block.height.name, width * ratio, rule=rule))
    steps = _least_steps(block, unit) if block.width.unit is block.height.unit else None
    if steps is not None and _is_near(ruler.converted(block.width).value, steps[0]):
        on_ruler = "its grid" if block.method is Method.ROTARY else "both sides"
        rule = f"re-drafted: the nearest size that keeps the block's proportions and puts {on_ruler} on the ruler"
        return replace(
            block,
            width=ruler.set(block.width, steps[0], rule),
            height=ruler.set(block.height, steps[1], rule),
        )
    width, height = ruler.finished(block.width), ruler.finished(block.height)
    report.add(
        PROPORTIONS_CHANGED, block.place,
        f"no size of the block {block.name} near {block.width.text} × {block.height.text} keeps its proportions on the "
        f"{unit.symbol} ruler; it is drafted at {width.text} × {height.text}",
        hint=f"give the block a finished size in {unit.symbol}, or change its proportions slightly",
    )  # fmt: skip
    return replace(block, width=width, height=height)


def _is_near(true_size: Number, step: Fraction) -> bool:
    times = nearest(true_size / step)
    off = times * step / true_size - 1
    return times > 0 and -FURTHEST <= off <= FURTHEST


def _least_steps(block: Block, unit: Unit) -> tuple[Fraction, Fraction] | None:
    """Return the smallest width and height that are in proportion and on the marks; None if there are none."""
    # Both sides of a foundation block land on the marks of finished sizes, the grid cells of a rotary one on any mark.
    mark = FINE_MARK[unit] if block.method is Method.ROTARY else FINISHED_MARK[unit]
    sides: tuple[Number, Number] = (block.width.value, block.height.value)
    if block.method is Method.ROTARY:
        across, down = block.grid_width, block.grid_height
        if isinstance(across, Fraction) and isinstance(down, Fraction) and across / down == sides[0] / sides[1]:
            return mark * across, mark * down
    ratio = sides[0] / sides[1]
    if not isinstance(ratio, Fraction):
        return None
    return mark * ratio.numerator, mark * ratio.denominator
