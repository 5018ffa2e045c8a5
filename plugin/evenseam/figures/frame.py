"""From the work's own measure to drawing units: a scale and a place."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Number
from evenseam.figures.rational import rational
from evenseam.geometry import Point, Polygon

WIDE = Fraction(400)
"""Width of a usual picture in drawing units."""
HIGH = Fraction(300)

ORIGIN = Point(Fraction(0), Fraction(0))


def at(x: Number | int, y: Number | int) -> Point:
    """Return a point from numbers of any kind."""
    return Point(Fraction(x) if isinstance(x, int) else x, Fraction(y) if isinstance(y, int) else y)


def rectangle(left: Number | int, top: Number | int, width: Number | int, height: Number | int) -> Polygon:
    """Return an upright rectangle from numbers of any kind."""
    corner, size = at(left, top), at(width, height)
    return Polygon.rectangle(corner.x, corner.y, size.x, size.y)


@dataclass(frozen=True, slots=True)
class Frame:
    """Drawing units for one unit of the work, and where its top left corner lies in the drawing."""

    scale: Fraction
    origin: Point = ORIGIN

    @staticmethod
    def fitting(
        width: Number | int, height: Number | int, wide: Number | int = WIDE, high: Number | int = HIGH
    ) -> Frame:
        """Return the largest scale at which a rectangle fits into another, with its corner at the origin."""
        scale = min(rational(wide) / rational(width), rational(high) / rational(height))
        # A round scale keeps coordinates short and loses less than half a percent.
        return Frame(scale.limit_denominator(60) or scale)

    def moved_to(self, origin: Point) -> Frame:
        """Return the same scale somewhere else."""
        return Frame(self.scale, origin)

    def moved_by(self, across: Number | int, down: Number | int) -> Frame:
        """Return the frame shifted in drawing units."""
        return Frame(self.scale, self.origin + at(across, down))

    def point(self, point: Point) -> Point:
        """Return where a point of the work lies in the drawing."""
        return Point(self.origin.x + point.x * self.scale, self.origin.y + point.y * self.scale)

    def spot(self, x: Number | int, y: Number | int) -> Point:
        """Return where a place of the work lies in the drawing."""
        return self.point(at(x, y))

    def polygon(self, polygon: Polygon) -> Polygon:
        """Return a polygon of the work in the drawing."""
        return Polygon(tuple(self.point(corner) for corner in polygon.corners))

    def length(self, length: Number | int) -> Fraction:
        """Return a length of the work in drawing units."""
        return rational(length) * self.scale
