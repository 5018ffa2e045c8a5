"""Lengths as whole numbers of a common small step, so that plans are searched with integers and stay exact."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import lcm

from evenseam.exact import Number, Surd, Unit, ceiling

_FINEST = 480
"""Steps in one unit of length beyond which sizes are first rounded up to a half ruler mark."""


@dataclass(frozen=True, slots=True)
class Scale:
    """So many whole steps in one unit of length."""

    steps: int

    def whole(self, length: Number) -> int:
        """Return a length in steps; what falls between two steps is rounded up, so a piece is never cut too small."""
        return ceiling(length * self.steps)

    def below(self, length: Number) -> int:
        """Return a length in steps, rounded down: for cloth."""
        return -ceiling(-length * self.steps)

    def length(self, steps: int) -> Fraction:
        """Return steps as a length."""
        return _length(steps, self.steps)


# A plan has the same few hundred places again and again.
@lru_cache(maxsize=8192)
def _length(steps: int, in_one: int) -> Fraction:
    return Fraction(steps, in_one)


def common_scale(lengths: Iterable[Number], unit: Unit) -> Scale:
    """Return the coarsest scale that holds all lengths exactly, or half ruler marks where that would be too fine."""
    half_mark = 2 * unit.ruler_mark.denominator
    steps = 1
    for length in lengths:
        steps = lcm(steps, half_mark if isinstance(length, Surd) else length.denominator)
    return Scale(steps if steps <= _FINEST else half_mark)
