"""How many blocks go along one side of a border, and what is left for spacer strips: the numbers alone."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from evenseam.exact import Number, ceiling, is_multiple


def is_even(inside: Number, block: Number) -> bool:
    """Tell whether whole blocks fill a side without spacer strips."""
    return is_multiple(inside / block, Fraction(1))


def fewest_blocks(inside: Number, block: Number, least: Number) -> int:
    """Return the fewest blocks that reach past a side and a narrowest spacer strip at either end of it."""
    return ceiling((inside + 2 * least) / block)


def spacer_for(inside: Number, block: Number, blocks: int) -> Number:
    """Return the finished width of the two spacer strips that so many blocks call for."""
    return (blocks * block - inside) / 2


def fit(inside: Number, block: Number, least: Number | None, mark: Fraction) -> tuple[int, Number] | None:
    """Return the number of blocks and the width of a spacer strip on a mark of the ruler; None where there is none.

    `least` is the narrowest spacer strip allowed; None when there is no cloth for any.
    """
    if is_even(inside, block):
        whole = inside / block
        assert isinstance(whole, Fraction)
        return int(whole), Fraction(0)
    if least is None:
        return None
    blocks = fewest_blocks(inside, block, least)
    spacer = spacer_for(inside, block, blocks)
    return (blocks, spacer) if is_multiple(spacer, mark) else None


def nearest_blocks(
    insides: Iterable[Number], block: Number, least: Number | None, mark: Fraction
) -> tuple[Fraction, ...]:
    """Return the widths of blocks, on marks of the ruler, nearest below and above this one, that fit every side.

    Only widths from half to one and a half times this one are looked at: another block would be another pattern.
    """
    sides = tuple(insides)
    middle = ceiling(block / mark)
    found: list[Fraction] = []
    for marks in (range(middle - 1, middle // 2, -1), range(middle + 1, middle + middle // 2 + 1)):
        for width in (mark * number for number in marks):
            if width > 0 and all(fit(inside, width, least, mark) is not None for inside in sides):
                found.append(width)
                break
    return tuple(found)
