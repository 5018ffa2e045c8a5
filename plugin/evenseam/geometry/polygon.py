"""A simple polygon with exact corners."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Number, sign
from evenseam.geometry.point import Point


@dataclass(frozen=True, slots=True)
class Polygon:
    """Corners in order around the shape; the last joins the first. Units are those of whoever made it."""

    corners: tuple[Point, ...]

    @staticmethod
    def rectangle(left: Number, top: Number, width: Number, height: Number) -> Polygon:
        """Return an upright rectangle, clockwise on the page from its top left corner."""
        right, bottom = left + width, top + height
        return Polygon((Point(left, top), Point(right, top), Point(right, bottom), Point(left, bottom)))

    @property
    def edges(self) -> tuple[tuple[Point, Point], ...]:
        """Pairs of neighbouring corners, in order."""
        return tuple(zip(self.corners, (*self.corners[1:], self.corners[0]), strict=True))

    @property
    def signed_area(self) -> Number:
        """Area, above zero when the corners run clockwise on the page (y grows downwards)."""
        total: Number = Fraction(0)
        for start, end in self.edges:
            total = total + start.cross(end)
        return total / 2

    @property
    def area(self) -> Number:
        """Area in square units, never negative."""
        area = self.signed_area
        return -area if sign(area) < 0 else area

    @property
    def is_convex(self) -> bool:
        """True when no corner bends inward; straight corners are allowed."""
        turns = {
            sign((middle - start).cross(end - middle))
            for start, middle, end in zip(
                self.corners, (*self.corners[1:], self.corners[0]), (*self.corners[2:], *self.corners[:2]), strict=True
            )
        }
        return not {1, -1} <= turns

    @property
    def bounds(self) -> tuple[Number, Number, Number, Number]:
        """Left, top, right, bottom."""
        across = [corner.x for corner in self.corners]
        down = [corner.y for corner in self.corners]
        return _least(across), _least(down), -_least([-x for x in across]), -_least([-y for y in down])

    def moved(self, step: Point) -> Polygon:
        """Return the polygon shifted by a step."""
        return Polygon(tuple(corner + step for corner in self.corners))

    def scaled(self, across: Number, down: Number) -> Polygon:
        """Return the polygon with every x multiplied by `across` and every y by `down`."""
        return Polygon(tuple(corner.scaled(across, down) for corner in self.corners))

    def clockwise(self) -> Polygon:
        """Return the same shape with corners running clockwise on the page."""
        return self if sign(self.signed_area) >= 0 else Polygon(tuple(reversed(self.corners)))


def _least(numbers: list[Number]) -> Number:
    """Return the smallest; `min` alone does not type-check over mixed exact numbers."""
    least = numbers[0]
    for number in numbers[1:]:
        if number < least:
            least = number
    return least
