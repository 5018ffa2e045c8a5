"""Points and shapes of a picture, in decimals.

Below pictures everything is exact. Here a place is turned into decimals once, when it is taken onto the picture, on a
net so fine that no eye or printer sees it and so coarse that sums of places carry no error: two pieces that share a
corner share it to the last bit, however each of them came to lie there. Nothing but the four operations and the square
root is used, which are the same to the last bit on every machine.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import sqrt
from typing import NamedTuple, Protocol, SupportsFloat

_NET = float(1 << 32)
NEAR = 1e-6
"""What lies nearer than this lies in the same place."""


class Spot(Protocol):
    """A place, exact or in decimals."""

    @property
    def x(self) -> SupportsFloat:
        """To the right."""

    @property
    def y(self) -> SupportsFloat:
        """Down."""


class Outline(Protocol):
    """A shape, exact or in decimals."""

    @property
    def corners(self) -> tuple[Spot, ...]:
        """In order around it."""


class Point(NamedTuple):
    """A place of a picture, or the step from one to another: x to the right, y down."""

    x: float
    y: float

    def __add__(self, other: Point) -> Point:  # type: ignore[override]  # a step onwards, not a longer tuple
        return Point(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Point) -> Point:
        return Point(self.x - other.x, self.y - other.y)

    def scaled(self, across: float, down: float) -> Point:
        """Return the point with x multiplied by `across` and y by `down`."""
        return Point(self.x * across, self.y * down)

    def cross(self, other: Point) -> float:
        """Return the cross product of two steps: above zero when `other` turns clockwise on the page from here."""
        return self.x * other.y - self.y * other.x

    def dot(self, other: Point) -> float:
        """Return the dot product of two steps."""
        return self.x * other.x + self.y * other.y

    @property
    def length(self) -> float:
        """How long the step is."""
        return sqrt(self.x * self.x + self.y * self.y)


@dataclass(frozen=True, slots=True)
class Polygon:
    """Corners in order around the shape; the last joins the first."""

    corners: tuple[Point, ...]

    @staticmethod
    def rectangle(left: float, top: float, width: float, height: float) -> Polygon:
        """Return an upright rectangle, clockwise on the page from its top left corner."""
        right, bottom = left + width, top + height
        return Polygon((Point(left, top), Point(right, top), Point(right, bottom), Point(left, bottom)))

    @property
    def edges(self) -> tuple[tuple[Point, Point], ...]:
        """Pairs of neighbouring corners, in order."""
        return tuple(zip(self.corners, (*self.corners[1:], self.corners[0]), strict=True))

    @property
    def signed_area(self) -> float:
        """Area, above zero when the corners run clockwise on the page (y grows downwards)."""
        return sum(start.cross(end) for start, end in self.edges) / 2

    @property
    def area(self) -> float:
        """Area, never negative."""
        return abs(self.signed_area)

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Left, top, right, bottom."""
        across, down = [x for x, _ in self.corners], [y for _, y in self.corners]
        return min(across), min(down), max(across), max(down)

    def moved(self, step: Point) -> Polygon:
        """Return the polygon shifted by a step."""
        over, down = step
        return Polygon(tuple(Point(x + over, y + down) for x, y in self.corners))

    def clockwise(self) -> Polygon:
        """Return the same shape with corners running clockwise on the page."""
        return self if self.signed_area >= 0 else Polygon(tuple(reversed(self.corners)))


def decimal(number: SupportsFloat) -> float:
    """Return an exact number as a decimal on the net of pictures.

    >>> from fractions import Fraction
    >>> decimal(Fraction(1, 3)) + decimal(Fraction(1, 3)) == 2 * decimal(Fraction(1, 3))
    True
    """
    return round(float(number) * _NET) / _NET


def is_on_line(point: Point, start: Point, end: Point) -> bool:
    """Tell whether a point lies on the straight line through two others."""
    along, over = end.x - start.x, end.y - start.y
    return abs(along * (point.y - start.y) - over * (point.x - start.x)) <= NEAR * (abs(along) + abs(over))


def convex_hull(points: Iterable[Point]) -> Polygon:
    """Return the convex hull, clockwise on the page, without straight corners. Needs three points not in a line."""
    ordered = sorted(set(points))
    upper, lower = _chain(ordered), _chain(ordered[::-1])
    return Polygon(tuple(upper[:-1] + lower[:-1]))


def _chain(ordered: Sequence[Point]) -> list[Point]:
    chain: list[Point] = []
    for point in ordered:
        while len(chain) > 1:
            start, middle = chain[-2], chain[-1]
            if (middle - start).cross(point - middle) > 0 and not is_on_line(middle, start, point):
                break
            chain.pop()
        chain.append(point)
    return chain


def placed(spot: Spot, across: SupportsFloat = 1, down: SupportsFloat = 1) -> Point:
    """Return an exact point in decimals, stretched across and down."""
    return Point(decimal(float(spot.x) * float(across)), decimal(float(spot.y) * float(down)))


def shaped(outline: Outline, across: SupportsFloat = 1, down: SupportsFloat = 1) -> Polygon:
    """Return an exact polygon in decimals, stretched across and down."""
    wide, high = float(across), float(down)
    return Polygon(tuple(Point(decimal(float(c.x) * wide), decimal(float(c.y) * high)) for c in outline.corners))
