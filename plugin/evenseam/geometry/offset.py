"""A convex outline moved outward by the same distance on every side, with mitred corners, exactly."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, isqrt, lcm

from evenseam.exact import Number, Surd, sign, square_root
from evenseam.geometry.hull import without_straight_corners
from evenseam.geometry.point import Point
from evenseam.geometry.polygon import Polygon

_BITS = 96


def length_of(step: Point) -> Number:
    """Return the length of a step.

    Exact for upright steps, and whenever the square of the length is rational, which holds for every drawing on a
    square or triangular grid. A root of a root has no exact form here and is taken to within 2^-90.
    """
    if sign(step.x) == 0 or sign(step.y) == 0:
        along = step.x + step.y
        return -along if sign(along) < 0 else along
    if not isinstance(step.x, Surd) and not isinstance(step.y, Surd):
        across, down = Fraction(step.x), Fraction(step.y)
        measure = lcm(across.denominator, down.denominator)
        whole = (int(across * measure), int(down * measure))
        common = gcd(*whole) or 1
        # Without the common factor the number under the root stays small and is quickly made square-free.
        return square_root((whole[0] // common) ** 2 + (whole[1] // common) ** 2) * Fraction(common, measure)
    square = step.dot(step)
    if not isinstance(square, Surd):
        return square_root(square)
    scaled = square.approximately(2 * _BITS) * (1 << (2 * _BITS))
    return Fraction(isqrt(int(scaled)), 1 << _BITS)


def mitred_offset(outline: Polygon, distance: Number) -> Polygon:
    """Return the outline whose every edge is `distance` outside the edge of a convex outline.

    Corners are mitred: the moved edges run on until they meet, however sharp the corner. The result is clockwise on
    the page and has one corner for each true corner of the outline, in the same order. Raises ValueError for an
    outline that is not convex.
    """
    corners = without_straight_corners(outline.clockwise()).corners
    moved: list[Point] = []
    for before, here, after in zip((corners[-1], *corners[:-1]), corners, (*corners[1:], corners[0]), strict=True):
        first, second = here - before, after - here
        turn = first.cross(second)
        if sign(turn) <= 0:
            raise ValueError("only a convex outline can be given a mitred offset")
        # A point d outside an edge has direction × (point − here) = −d × length; two such equations place the corner.
        out_first = distance * length_of(first)
        out_second = distance * length_of(second)
        moved.append(
            Point(
                here.x + (out_second * first.x - out_first * second.x) / turn,
                here.y + (out_second * first.y - out_first * second.y) / turn,
            )
        )
    return Polygon(tuple(moved))
