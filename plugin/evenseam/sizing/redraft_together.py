"""Blocks that stand side by side at one size stay equal on the ruler of another edition."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from math import gcd, lcm

from evenseam.exact import Number, Unit, nearest
from evenseam.pattern import Block, Method
from evenseam.sizing.redraft_block import FURTHEST
from evenseam.sizing.ruler import FINE_MARK, Ruler

_RULE = "re-drafted: the nearest size that puts the grids of all blocks beside each other on the ruler"


def redraft_together(drafted: tuple[Block, ...], blocks: tuple[Block, ...], ruler: Ruler) -> tuple[Block, ...]:
    """Return re-drafted blocks, square ones that were equally large brought to one size again.

    `drafted` are the same blocks before. Each by itself moves to the nearest size that suits its own grid; where those
    differ, all take the nearest one that suits every grid. Plain blocks become as large as the ones they lie beside.
    """
    sizes: dict[Number, list[int]] = {}
    for number, block in enumerate(drafted):
        if block.width.value == block.height.value and block.width.unit is not ruler.unit:
            sizes.setdefault(block.width.value, []).append(number)
    found = list(blocks)
    for numbers in sizes.values():
        step = _common_step((blocks[number] for number in numbers), ruler.unit)
        if len({blocks[number].width.value for number in numbers}) == 1 or step is None:
            continue
        true_size = ruler.converted(drafted[numbers[0]].width).value
        share = nearest(true_size / step) * step / true_size - 1
        if not -FURTHEST <= share <= FURTHEST:
            continue
        for number in numbers:
            before = drafted[number]
            width, height = ruler.set(before.width, step, _RULE), ruler.set(before.height, step, _RULE)
            found[number] = replace(blocks[number], width=width, height=height)
    return _plain_as_their_neighbours(tuple(found))


def _plain_as_their_neighbours(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    sizes = {block.id: (block.width, block.height) for block in blocks}
    return tuple(
        replace(block, width=sizes[block.plain_beside][0], height=sizes[block.plain_beside][1])
        if block.plain_beside is not None
        else block
        for block in blocks
    )


def _common_step(blocks: Iterable[Block], unit: Unit) -> Fraction | None:
    """Return the smallest size that is whole marks in every grid cell; None where a grid has a root in it."""
    step = FINE_MARK[unit]
    for block in blocks:
        if block.method is not Method.ROTARY or block.plain_beside is not None:
            continue
        for cells in (block.grid_width, block.grid_height):
            if not isinstance(cells, Fraction):
                return None
            other = FINE_MARK[unit] * cells
            step = Fraction(lcm(step.numerator, other.numerator), gcd(step.denominator, other.denominator))
    return step
