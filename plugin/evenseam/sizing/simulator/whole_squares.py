r"""Squares of cloth sewn on each other beside a line, cut apart on it and pressed open: what is seen then, exactly.

A piece of cloth that lies open is a tuple of patches that do not overlap, each a fabric and an outline. Two of them
are laid right sides together, sewn along a straight line and cut; what is left of the upper one is folded over:

::

      lower and upper           sewn beside the diagonal       cut on it and opened, twice
      +-------+                 +-------+                      +----+
      |       |                 |   / / |                      | ,' |
      |       |                 | / / / |                      |'   |
      +-------+                 +-------+                      +----+
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from evenseam.exact import Number, sign, square_root
from evenseam.pattern import UnitMethodKind
from evenseam.sizing.simulator.plane import Outline, Spot

Patch: TypeAlias = tuple[str, Outline]
Cloth: TypeAlias = tuple[Patch, ...]
ZERO, ONE = Fraction(0), Fraction(1)
FALLING: Spot = (ONE, -ONE)
"""Across the diagonal that falls from the top left corner."""
RISING: Spot = (ONE, ONE)


@dataclass(frozen=True, slots=True)
class Line:
    """The spots (x, y) with x·across + y·down = distance; its positive side is where that is more."""

    normal: Spot
    distance: Number

    def beyond(self, spot: Spot) -> Number:
        """Return how far beyond the line a spot lies, times the length of the normal."""
        return self.normal[0] * spot[0] + self.normal[1] * spot[1] - self.distance

    @property
    def turned_round(self) -> Line:
        """The same line with its other side positive."""
        return Line((-self.normal[0], -self.normal[1]), -self.distance)

    def moved(self, way: Number) -> Line:
        """Return the line moved to its positive side."""
        across, down = self.normal
        return Line(self.normal, self.distance + way * square_root(_rational(across * across + down * down)))


@dataclass(frozen=True, slots=True)
class Batch:
    """Units as they come out, untrimmed, and the spot in each that says where it is trimmed."""

    units: tuple[Cloth, ...]
    spots: tuple[Spot, ...]


def kept(shape: Outline, line: Line) -> Outline:
    """Return what of a convex shape lies on the positive side of a line; empty when nothing does."""
    found: list[Spot] = []
    for start, end in zip(shape, (*shape[1:], shape[0]), strict=True):
        one, two = line.beyond(start), line.beyond(end)
        if sign(one) >= 0:
            found.append(start)
        if sign(one) * sign(two) < 0:
            share = one / (one - two)
            found.append((start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share))
    distinct = [spot for index, spot in enumerate(found) if spot != found[index - 1]]
    return tuple(distinct) if len(distinct) > 2 else ()


def clipped(shape: Outline, window: Outline) -> Outline:
    """Return what two convex clockwise shapes have in common."""
    for (ax, ay), (bx, by) in zip(window, (*window[1:], window[0]), strict=True):
        if not shape:
            return ()
        # Clockwise with y downward, the inside lies to the right of the way from a to b.
        normal = (-(by - ay), bx - ax)
        shape = kept(shape, Line(normal, normal[0] * ax + normal[1] * ay))
    return shape


def area(shape: Outline) -> Number:
    """Return the area of a shape."""
    twice: Number = ZERO
    for (ax, ay), (bx, by) in zip(shape, (*shape[1:], *shape[:1]), strict=True):
        twice = twice + ax * by - bx * ay
    return (twice if sign(twice) > 0 else -twice) / 2


def opened(lower: Cloth, upper: Cloth, seam: Line) -> Cloth:
    """Sew two cloths along a line, cut off what lies on its other side, and fold the upper one over."""
    below = [(fabric, kept(shape, seam)) for fabric, shape in lower]
    above = [(fabric, _folded(kept(shape, seam), seam)) for fabric, shape in upper]
    return tuple((fabric, shape) for fabric, shape in (*below, *above) if shape)


def both_sides(lower: Cloth, upper: Cloth, line: Line, seam: Number) -> tuple[Cloth, Cloth]:
    """Sew on both sides of a line and cut on it: two pieces."""
    return opened(lower, upper, line.moved(seam)), opened(lower, upper, line.turned_round.moved(seam))


def sewn_in_batches(kind: UnitMethodKind, cloths: list[Patch], seam: Number) -> Batch | None:
    """Sew one batch of a kind from its squares, each a fabric and an outline with its top left corner at (0, 0).

    Returns None for squares that are too few or not as large as they have to be for the others.
    """
    squares: list[Cloth] = [(cloth,) for cloth in cloths]
    match kind, len(squares):
        case UnitMethodKind.TWO_HALF_SQUARE, 2:
            return _at_middle(_pair(squares[0], squares[1], _side(cloths[0]), seam))
        case UnitMethodKind.EIGHT_HALF_SQUARE, 2:
            return _at_middle(_eight(squares[0], squares[1], _side(cloths[0]), seam))
        case UnitMethodKind.FOUR_HALF_SQUARE, 2:
            return _at_middle(_all_round(squares[0], squares[1], _side(cloths[0]), seam))
        case UnitMethodKind.TWO_QUARTER_SQUARE, 2:
            one, other = _pair(squares[0], squares[1], _side(cloths[0]), seam)
            return _at_middle(_crossed(one, other, seam))
        case UnitMethodKind.FOUR_QUARTER_SQUARE, 4:
            one, other = _pair(squares[0], squares[2], _side(cloths[0]), seam)
            first, second = _pair(squares[1], squares[3], _side(cloths[1]), seam)
            return _at_middle((*_crossed(one, second, seam), *_crossed(other, first, seam)))
        case UnitMethodKind.FOUR_GEESE, 5:
            return _geese(squares, _side(cloths[0]), _side(cloths[1]), seam)
    return None


def with_corners(whole: Patch, corners: list[tuple[Patch, Spot]]) -> Cloth:
    """Sew squares on corners of a whole piece, each along the diagonal that cuts the corner off, and fold them out.

    Each corner is given as the square and where its corner lies: x and y each 0 or 1, left or right, top or bottom.
    """
    wide, high = _reach(whole[1])
    cloth: Cloth = (whole,)
    for (fabric, shape), (right, bottom) in corners:
        side, _ = _reach(shape)
        left, top = (wide - side) * right, (high - side) * bottom
        # The diagonal runs between the two neighbours of the corner; its positive side is away from the corner.
        normal = (ONE - 2 * right, ONE - 2 * bottom)
        on_line = (left + side * (1 - right), top + side * bottom)
        seam = Line(normal, normal[0] * on_line[0] + normal[1] * on_line[1])
        cloth = opened(cloth, ((fabric, _moved(shape, left, top)),), seam)
    return cloth


def turned_about(cloth: Cloth, spot: Spot) -> Cloth:
    """Return a cloth turned a quarter about a spot."""
    return tuple(
        (fabric, tuple((spot[0] - (y - spot[1]), spot[1] + (x - spot[0])) for x, y in shape)) for fabric, shape in cloth
    )


def moved(cloth: Cloth, across: Number, down: Number) -> Cloth:
    """Return a cloth laid elsewhere."""
    return tuple((fabric, _moved(shape, across, down)) for fabric, shape in cloth)


def _pair(lower: Cloth, upper: Cloth, side: Number, seam: Number) -> tuple[Cloth, Cloth]:
    """Sew two squares on both sides of the falling diagonal; each half lies from (0, 0) then."""
    one, other = both_sides(lower, upper, Line(FALLING, ZERO), seam)
    return _from_corner(one), _from_corner(other)


def _eight(lower: Cloth, upper: Cloth, side: Number, seam: Number) -> tuple[Cloth, ...]:
    half = side / 2
    units: list[Cloth] = []
    for x, y in ((0, 0), (1, 0), (1, 1), (0, 1)):
        left, top = half * x, half * y
        window = ((left, top), (left + half, top), (left + half, top + half), (left, top + half))
        cut = [
            tuple((fabric, part) for fabric, shape in cloth if (part := clipped(shape, window)))
            for cloth in (lower, upper)
        ]
        line = Line(FALLING, ZERO) if x == y else Line(RISING, side)
        units += both_sides(cut[0], cut[1], line, seam)
    return tuple(units)


def _all_round(lower: Cloth, upper: Cloth, side: Number, seam: Number) -> tuple[Cloth, ...]:
    """Cut on both diagonals: each quarter was sewn along its edge of the square. It is turned to stand upright."""
    units: list[Cloth] = []
    middle = (side / 2, side / 2)
    for _ in range(4):
        quarter: list[Cloth] = []
        for cloth in (lower, upper):
            # The top quarter: above both diagonals.
            shapes = ((fabric, kept(shape, Line(FALLING, ZERO))) for fabric, shape in cloth)
            top = ((fabric, kept(shape, Line((-ONE, -ONE), -side))) for fabric, shape in shapes if shape)
            quarter.append(tuple((fabric, shape) for fabric, shape in top if shape))
        unit = opened(quarter[0], quarter[1], Line((ZERO, ONE), seam))
        root = square_root(Fraction(1, 2))
        units.append(tuple((f, tuple(((x - y) * root, (x + y) * root) for x, y in shape)) for f, shape in unit))
        lower, upper = turned_about(lower, middle), turned_about(upper, middle)
    return tuple(units)


def _crossed(lower: Cloth, upper: Cloth, seam: Number) -> tuple[Cloth, Cloth]:
    """Lay two half-square triangle units on each other, seam on seam, and sew across the seam."""
    right = max(x for _, shape in lower for x, _ in shape)
    return both_sides(lower, upper, Line(RISING, right), seam)


def _geese(squares: list[Cloth], large: Number, small: Number, seam: Number) -> Batch | None:
    """Two small squares on opposite corners of a large one; then one on the corner each half has left."""
    far = large - small
    if far < 0:
        return None
    halves = both_sides(squares[0], (*squares[1], *moved(squares[2], far, far)), Line(FALLING, ZERO), seam)
    corners = (moved(squares[3], far, ZERO), moved(squares[4], ZERO, far))
    units: list[Cloth] = []
    tips: list[Spot] = []
    for number, (half, corner) in enumerate(zip(halves, corners, strict=True)):
        line = Line(RISING, large)
        units += both_sides(half, corner, line, seam)
        # The tip lies where the two seams cross.
        first = Line(FALLING, ZERO) if number == 0 else Line(FALLING, ZERO).turned_round
        for second in (line, line.turned_round):
            tips.append(_crossing(first.moved(seam), second.moved(seam)))
    return Batch(tuple(units), tuple(tips))


def _crossing(one: Line, other: Line) -> Spot:
    (a, b), (c, d) = one.normal, other.normal
    turn = a * d - b * c
    return (one.distance * d - other.distance * b) / turn, (a * other.distance - c * one.distance) / turn


def _at_middle(units: tuple[Cloth, ...]) -> Batch:
    spots = []
    for unit in units:
        xs = [x for _, shape in unit for x, _ in shape]
        ys = [y for _, shape in unit for _, y in shape]
        spots.append(((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2))
    return Batch(units, tuple(spots))


def _from_corner(cloth: Cloth) -> Cloth:
    left = min(x for _, shape in cloth for x, _ in shape)
    top = min(y for _, shape in cloth for _, y in shape)
    return moved(cloth, -left, -top)


def _folded(shape: Outline, line: Line) -> Outline:
    across, down = line.normal
    square = across * across + down * down
    spots = []
    for spot in shape:
        back = 2 * line.beyond(spot) / square
        spots.append((spot[0] - across * back, spot[1] - down * back))
    # A mirror image runs the other way round.
    return tuple(reversed(spots))


def _moved(shape: Outline, across: Number, down: Number) -> Outline:
    return tuple((x + across, y + down) for x, y in shape)


def _reach(shape: Outline) -> Spot:
    return max(x for x, _ in shape), max(y for _, y in shape)


def _side(patch: Patch) -> Number:
    return _reach(patch[1])[0]


def _rational(number: Number) -> Fraction:
    assert isinstance(number, Fraction)
    return number
