"""Roundings with a name, a grid and a direction, so that each can be shown in the working."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from evenseam.exact.surd import Number, Surd, ceiling, floor, nearest


class Direction(Enum):
    """Which way a rounding goes."""

    UP = "up"
    DOWN = "down"
    NEAREST = "to the nearest"


@dataclass(frozen=True, slots=True)
class Rounding:
    """A rounding: what it is for, the marks it lands on, and which way it goes.

    >>> Rounding("cut size", Fraction(1, 8), Direction.UP).apply(Fraction(33, 32))
    Fraction(9, 8)
    """

    name: str
    grid: Fraction
    direction: Direction

    def apply(self, number: Number) -> Fraction:
        """Return the mark of the grid the number lands on."""
        steps = number / self.grid
        match self.direction:
            case Direction.UP:
                return ceiling(steps) * self.grid
            case Direction.DOWN:
                return floor(steps) * self.grid
            case Direction.NEAREST:
                return nearest(steps) * self.grid


def is_multiple(number: Number, grid: Fraction) -> bool:
    """Tell whether the number lies exactly on a mark of the grid."""
    return not isinstance(number, Surd) and (number / grid).denominator == 1
