"""Dots that show where a seam starts, stops or meets another."""

from __future__ import annotations

from evenseam.figures.plane import Point, Polygon

_RADIUS = 3.4
_ROUND = (
    (1.0, 0.4), (0.4, 1.0), (-0.4, 1.0), (-1.0, 0.4), (-1.0, -0.4), (-0.4, -1.0), (0.4, -1.0), (1.0, -0.4),
)  # fmt: skip
"""Corners of a shape that looks round when it is small."""


def dot(middle: Point) -> Polygon:
    """Return a small shape that looks round."""
    return Polygon(tuple(Point(middle.x + x * _RADIUS, middle.y + y * _RADIUS) for x, y in _ROUND))
