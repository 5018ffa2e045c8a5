"""Places on true-scale paper: exact inches until they are written."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Number
from evenseam.figures.drawing import Label, Line, Shape
from evenseam.figures.plane import Spot
from evenseam.figures.rational import rational_point
from evenseam.geometry import Point, Polygon


def at(x: Number | int, y: Number | int) -> Point:
    """Return a point from exact numbers."""
    return Point(Fraction(x) if isinstance(x, int) else x, Fraction(y) if isinstance(y, int) else y)


def rectangle(left: Number | int, top: Number | int, width: Number | int, height: Number | int) -> Polygon:
    """Return an upright rectangle from exact numbers."""
    corner, size = at(left, top), at(width, height)
    return Polygon.rectangle(corner.x, corner.y, size.x, size.y)


def exact(spot: Spot) -> Point:
    """Return an exact place as fractions. Raises TypeError for decimals, which would not be true to scale."""
    if not isinstance(spot, Point):
        raise TypeError("only exact places are true to scale")
    return rational_point(spot)


def letters_size(label: Label) -> Fraction:
    """Return the size of a label's letters in points."""
    if not isinstance(label.size, (int, float, Fraction)):
        raise TypeError("letters have a plain number for a size")
    return Fraction(label.size)


def moved(shape: Shape, step: Point) -> Line | Label:
    """Return a line or a label shifted."""
    match shape:
        case Line(points=points):
            return replace(shape, points=tuple(exact(point) + step for point in points))
        case Label(at=spot):
            return replace(shape, at=exact(spot) + step)
        case _:
            raise TypeError(f"a template has lines and words only, not a {type(shape).__name__}")


def scaled(shape: Shape, factor: Fraction) -> Line | Label:
    """Return a line or a label with its places in another unit; letters keep their size."""
    match shape:
        case Line(points=points):
            return replace(shape, points=tuple(exact(point).scaled(factor, factor) for point in points))
        case Label(at=spot):
            return replace(shape, at=exact(spot).scaled(factor, factor))
        case _:
            raise TypeError(f"true-scale paper has lines and words only, not a {type(shape).__name__}")
