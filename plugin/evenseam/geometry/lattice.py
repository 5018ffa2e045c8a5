"""Exact points to whole-number points that lie in the same way, so that questions of order are answered quickly."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import lcm
from typing import TypeAlias, Union

from evenseam.exact import Number, Surd
from evenseam.geometry.point import Point

Coordinate: TypeAlias = Union[int, Number]
"""A whole number wherever the axis allows it, otherwise the exact number itself."""


def lattice_points(points: Sequence[Point]) -> tuple[tuple[Coordinate, Coordinate], ...]:
    """Return the points with each axis stretched on its own until every coordinate on it is a whole number.

    Stretching an axis keeps straight lines straight and sides apart, so anything about sides, order and betweenness
    may be asked of the result; lengths and angles may not. An axis whose coordinates have no common measure (1 and
    √2 on one axis) is left as it is, which is slower and no less exact.
    """
    across = _whole([point.x for point in points])
    down = _whole([point.y for point in points])
    return tuple(zip(across, down, strict=True))


def _whole(numbers: Sequence[Number]) -> Sequence[Coordinate]:
    unit = next((number for number in numbers if isinstance(number, Surd)), None)
    ratios: list[Fraction] = []
    for number in numbers:
        ratio = number / unit if unit is not None else number
        if isinstance(ratio, Surd):
            return numbers
        ratios.append(Fraction(ratio))
    if unit is not None and unit < 0:
        # Dividing by a number below zero would turn the axis round.
        ratios = [-ratio for ratio in ratios]
    measure = lcm(*(ratio.denominator for ratio in ratios)) if ratios else 1
    return [ratio.numerator * (measure // ratio.denominator) for ratio in ratios]
