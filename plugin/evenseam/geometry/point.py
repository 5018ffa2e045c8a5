"""A point of the drawing plane: x to the right, y down, as the finished piece is looked at."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.exact import Number


@dataclass(frozen=True, slots=True)
class Point:
    """An exact point; also used as the step from one point to another."""

    x: Number
    y: Number

    def __add__(self, other: Point) -> Point:
        return Point(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Point) -> Point:
        return Point(self.x - other.x, self.y - other.y)

    def scaled(self, across: Number, down: Number) -> Point:
        """Return the point with x multiplied by `across` and y by `down`."""
        return Point(self.x * across, self.y * down)

    def cross(self, other: Point) -> Number:
        """Return the cross product of two steps: above zero when `other` turns clockwise on the page from here."""
        return self.x * other.y - self.y * other.x

    def dot(self, other: Point) -> Number:
        """Return the dot product of two steps."""
        return self.x * other.x + self.y * other.y
