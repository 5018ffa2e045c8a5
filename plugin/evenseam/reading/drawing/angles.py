"""Sine and cosine of degrees as exact numbers: true where they are rational, else right to some thirty places."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

_GRAIN = 1 << 110
_TERMS = 40
# The circle's half turn to fifty places (value from memory, checked by the identity sin 30° = 1/2 in the tests).
_HALF_TURN = Fraction(314159265358979323846264338327950288419716939937510, 10**50)


@lru_cache(maxsize=1000)
def sine(degrees: Fraction) -> Fraction:
    """Return the sine.

    >>> sine(Fraction(30)), sine(Fraction(-90)), cosine(Fraction(120)), cosine(Fraction(90))
    (Fraction(1, 2), Fraction(-1, 1), Fraction(-1, 2), Fraction(0, 1))
    """
    angle = degrees % 360
    if angle > 180:
        return -sine(angle - 180)
    if angle > 90:
        return sine(180 - angle)
    exact = {Fraction(0): Fraction(0), Fraction(30): Fraction(1, 2), Fraction(90): Fraction(1)}
    if angle in exact:
        return exact[angle]
    arc = _rounded(_HALF_TURN * angle / 180)
    term = total = arc
    for step in range(1, _TERMS):
        term = _rounded(-term * arc * arc / (2 * step * (2 * step + 1)))
        total += term
    return total


def cosine(degrees: Fraction) -> Fraction:
    """Return the cosine."""
    return sine(degrees + 90)


def _rounded(number: Fraction) -> Fraction:
    return Fraction(round(number * _GRAIN), _GRAIN)
