"""Pictures may round: numbers with roots as fractions that differ by less than any eye or printer can tell."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from evenseam.exact import Number, Surd
from evenseam.geometry import Point

BITS = 32


def rational(number: Number | int) -> Fraction:
    """Return the number itself, or for one with roots a fraction within a few billionths."""
    return number.approximately(BITS) if isinstance(number, Surd) else Fraction(number)


def rational_point(point: Point) -> Point:
    """Return the point with fractions for coordinates."""
    return Point(rational(point.x), rational(point.y))


def length_of(step: Point) -> Fraction:
    """Return how long a step is, within a few billionths."""
    across, down = rational(step.x), rational(step.y)
    if across == 0 or down == 0:
        return abs(across + down)
    square = across * across + down * down
    # The whole root of a number shifted far to the left: no factoring, as an exact root would need.
    return Fraction(isqrt(square.numerator * square.denominator << (2 * BITS)), square.denominator << BITS)
