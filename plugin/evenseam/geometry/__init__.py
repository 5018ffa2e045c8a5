"""Points and polygons with exact coordinates."""

from evenseam.geometry.point import Point
from evenseam.geometry.polygon import Polygon

__all__ = ["Point", "Polygon"]
