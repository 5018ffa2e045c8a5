"""Hexagons with equal sides, lying on a point, on a grid of triangles.

A grid of 8 x 8 for a hexagon is 8 sides of a triangle across and 8 rows of triangles down. Corners stay plain
fractions; only the height of a row, √3/2 of a side, has a root in it, and it comes in with the finished height.
"""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import square_root
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Quantity, derived

HEXAGON = "hexagon"
HEXAGON_ROW = Fraction(8660254, 10_000_000)
"""√3/2, near enough to tell whether a drawing has the right proportions."""


def hexagon(across: Fraction, down: Fraction) -> Polygon:
    """Return the hexagon that reaches all four sides of a grid."""
    corners = ((1, 0), (3, 0), (4, 2), (3, 4), (1, 4), (0, 2))
    return Polygon(tuple(Point(across * x / 4, down * y / 4) for x, y in corners))


def hexagon_height(id: str, width: Quantity) -> Quantity:
    """Return the height of a hexagon from its width, corner to corner."""
    rule = "the height of a hexagon with equal sides: √3/2 of its width from corner to corner"
    return derived(f"{id} block height", width * (square_root(3) / 2), rule=rule)
