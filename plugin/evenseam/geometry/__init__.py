"""Points and polygons with exact coordinates, and straight-edged pieces laid side by side."""

from evenseam.geometry.arrangement import ArrangedLine, Arrangement, EdgeOnLine, arrange, members
from evenseam.geometry.hull import convex_hull, without_straight_corners
from evenseam.geometry.lattice import Coordinate, lattice_points
from evenseam.geometry.offset import length_of, mitred_offset
from evenseam.geometry.point import Point
from evenseam.geometry.polygon import Polygon
from evenseam.geometry.split import split_convex

__all__ = [
    "ArrangedLine",
    "Arrangement",
    "Coordinate",
    "EdgeOnLine",
    "Point",
    "Polygon",
    "arrange",
    "convex_hull",
    "lattice_points",
    "length_of",
    "members",
    "mitred_offset",
    "split_convex",
    "without_straight_corners",
]
