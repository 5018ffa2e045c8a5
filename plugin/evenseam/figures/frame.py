"""From the work's own measure to drawing units: a scale and a place."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import SupportsFloat

from evenseam.figures.drawing import WIDEST
from evenseam.figures.plane import Outline, Point, Polygon, Spot

WIDE = WIDEST - 15.0
"""Width of a usual picture in drawing units: as wide as any may be, without the empty room round it
and a hair for scales that are made round."""
HIGH = 300.0

ORIGIN = Point(0.0, 0.0)


def at(x: SupportsFloat, y: SupportsFloat) -> Point:
    """Return a point from numbers of any kind."""
    return Point(float(x), float(y))


def rectangle(left: SupportsFloat, top: SupportsFloat, width: SupportsFloat, height: SupportsFloat) -> Polygon:
    """Return an upright rectangle from numbers of any kind."""
    return Polygon.rectangle(float(left), float(top), float(width), float(height))


@dataclass(frozen=True, slots=True)
class Frame:
    """Drawing units for one unit of the work, and where its top left corner lies in the drawing."""

    scale: float
    origin: Point = ORIGIN

    @staticmethod
    def fitting(
        width: SupportsFloat, height: SupportsFloat, wide: SupportsFloat = WIDE, high: SupportsFloat = HIGH
    ) -> Frame:
        """Return the largest scale at which a rectangle fits into another, with its corner at the origin."""
        scale = min(float(wide) / float(width), float(high) / float(height))
        # A round scale keeps coordinates short and loses less than half a percent.
        return Frame(float(Fraction(scale).limit_denominator(60)) or scale)

    def moved_to(self, origin: Point) -> Frame:
        """Return the same scale somewhere else."""
        return Frame(self.scale, origin)

    def moved_by(self, across: SupportsFloat, down: SupportsFloat) -> Frame:
        """Return the frame shifted in drawing units."""
        return Frame(self.scale, self.origin + at(across, down))

    def point(self, point: Spot) -> Point:
        """Return where a point of the work lies in the drawing."""
        return Point(self.origin.x + float(point.x) * self.scale, self.origin.y + float(point.y) * self.scale)

    def spot(self, x: SupportsFloat, y: SupportsFloat) -> Point:
        """Return where a place of the work lies in the drawing."""
        return self.point(at(x, y))

    def polygon(self, polygon: Outline) -> Polygon:
        """Return a polygon of the work in the drawing."""
        left, top = self.origin
        scale = self.scale
        return Polygon(tuple(Point(left + float(c.x) * scale, top + float(c.y) * scale) for c in polygon.corners))

    def length(self, length: SupportsFloat) -> float:
        """Return a length of the work in drawing units."""
        return float(length) * self.scale
