"""A net of lines to the areas between them: exact crossings, loose ends, and the shape of every area."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cmp_to_key
from itertools import pairwise
from math import lcm

from evenseam.reading.plane import Corner, Shape, doubled_area, without_straight_corners

MOST_STRETCHES = 600
"""Lines of a net; more would take too long."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A straight line of the net, and which shape of the drawing it is of."""

    start: Corner
    end: Corner
    source: int


@dataclass(frozen=True, slots=True)
class LooseEnd:
    """An end of a line that meets no other."""

    at: Corner
    source: int


@dataclass(frozen=True, slots=True)
class Area:
    """An area between lines: its corners clockwise, and the shapes its edges are of."""

    shape: Shape
    sources: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Net:
    """What a net of lines encloses."""

    areas: tuple[Area, ...]
    loose: tuple[LooseEnd, ...]
    islands: tuple[Area, ...]
    """Outlines of parts that hang in another area without touching its edge."""


def areas_of(stretches: Sequence[Stretch]) -> Net:
    """Return the areas between straight lines. Work is done in whole numbers wherever the corners allow it."""
    scale = lcm(*(Fraction(n).denominator for s in stretches for spot in (s.start, s.end) for n in spot), 1)
    lines = [
        (_scaled(stretch.start, scale), _scaled(stretch.end, scale), stretch.source)
        for stretch in stretches
        if stretch.start != stretch.end
    ]
    sources = _cut(lines)
    beside: dict[Corner, set[Corner]] = {}
    for one, other in sources:
        beside.setdefault(one, set()).add(other)
        beside.setdefault(other, set()).add(one)
    loose = _drop_loose(beside, sources)
    areas, outsides = _trace(beside, sources)
    areas.sort(key=lambda area: min((y, x) for x, y in area.shape))
    islands = [outside for outside in outsides if any(_is_inside(outside.shape[0], area.shape) for area in areas)]
    return Net(
        tuple(Area(_unscaled(area.shape, scale), area.sources) for area in areas),
        tuple(LooseEnd(_unscaled((spot,), scale)[0], source) for spot, source in loose),
        tuple(Area(_unscaled(area.shape, scale), area.sources) for area in islands),
    )


_Line = tuple[Corner, Corner, int]
_Sources = dict[tuple[Corner, Corner], int]


def _scaled(corner: Corner, scale: int) -> Corner:
    return int(corner[0] * scale), int(corner[1] * scale)


def _unscaled(shape: Shape, scale: int) -> Shape:
    return tuple((Fraction(x) / scale, Fraction(y) / scale) for x, y in shape)


def _cut(lines: list[_Line]) -> _Sources:
    """Cut all lines where they cross or touch; return the source of each stretch between neighbouring points."""
    points: list[set[Corner]] = [{start, end} for start, end, _ in lines]
    for index, (a, b, _) in enumerate(lines):
        for second in range(index):
            c, d, _ = lines[second]
            if (
                max(a[0], b[0]) < min(c[0], d[0]) or max(c[0], d[0]) < min(a[0], b[0])
                or max(a[1], b[1]) < min(c[1], d[1]) or max(c[1], d[1]) < min(a[1], b[1])
            ):  # fmt: skip
                continue
            for spot in _common(a, b, c, d):
                points[index].add(spot)
                points[second].add(spot)
    sources: _Sources = {}
    for (a, b, source), found in zip(lines, points, strict=True):
        step = (b[0] - a[0], b[1] - a[1])
        order = sorted(found, key=lambda spot: step[0] * (spot[0] - a[0]) + step[1] * (spot[1] - a[1]))
        for one, other in pairwise(order):
            sources.setdefault((min(one, other), max(one, other)), source)
    return sources


def _common(a: Corner, b: Corner, c: Corner, d: Corner) -> list[Corner]:
    """Return where two stretches meet: a crossing, or the ends of one that lie on the other."""
    turn = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
    if turn != 0:
        share = (c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])
        other = (c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])
        if turn < 0:
            turn, share, other = -turn, -share, -other
        if not (0 <= share <= turn and 0 <= other <= turn):
            return []
        part = Fraction(share) / turn
        spot = (a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1]))
        return [(_whole(spot[0]), _whole(spot[1]))]
    return [spot for spot, (e, f) in ((a, (c, d)), (b, (c, d)), (c, (a, b)), (d, (a, b))) if _lies_on(spot, e, f)]


def _whole(number: int | Fraction) -> int | Fraction:
    return int(number) if number == int(number) else number


def _lies_on(spot: Corner, a: Corner, b: Corner) -> bool:
    turn = (b[0] - a[0]) * (spot[1] - a[1]) - (b[1] - a[1]) * (spot[0] - a[0])
    return turn == 0 and min(a[0], b[0]) <= spot[0] <= max(a[0], b[0]) and min(a[1], b[1]) <= spot[1] <= max(a[1], b[1])


def _drop_loose(beside: dict[Corner, set[Corner]], sources: _Sources) -> list[tuple[Corner, int]]:
    """Take away stretches that end in nothing; return the ends that were loose to begin with."""
    ends = [spot for spot, others in beside.items() if len(others) == 1]
    loose = [(spot, _source(sources, spot, next(iter(beside[spot])))) for spot in ends]
    while ends:
        spot = ends.pop()
        for other in beside.pop(spot, ()):
            beside[other].discard(spot)
            if len(beside[other]) == 1:
                ends.append(other)
            elif not beside[other]:
                ends = [end for end in ends if end != other]
                del beside[other]
    return loose


def _source(sources: _Sources, one: Corner, other: Corner) -> int:
    return sources[min(one, other), max(one, other)]


def _trace(beside: dict[Corner, set[Corner]], sources: _Sources) -> tuple[list[Area], list[Area]]:
    """Walk round every area with its inside to the right; return areas, and the outsides of connected parts."""
    order = {spot: _round(spot, others) for spot, others in beside.items()}
    following = {
        (other, spot): (spot, others[index - 1]) for spot, others in order.items() for index, other in enumerate(others)
    }
    left = dict.fromkeys(following)
    areas: list[Area] = []
    outsides: list[Area] = []
    while left:
        first = way = next(iter(left))
        corners: list[Corner] = []
        found: dict[int, None] = {}
        while True:
            del left[way]
            corners.append(way[0])
            found[_source(sources, *way)] = None
            way = following[way]
            if way == first:
                break
        area = doubled_area(tuple(corners))
        if area > 0:
            areas.append(Area(without_straight_corners(tuple(corners)), tuple(found)))
        else:
            outsides.append(Area(tuple(corners), tuple(found)))
    return areas, outsides


def _round(spot: Corner, others: set[Corner]) -> list[Corner]:
    """Return the neighbours of a spot in clockwise order on the page."""

    def half(other: Corner) -> int:
        x, y = other[0] - spot[0], other[1] - spot[1]
        return 0 if y > 0 or (y == 0 and x > 0) else 1

    def compare(one: Corner, other: Corner) -> int:
        if half(one) != half(other):
            return half(one) - half(other)
        turn = (one[0] - spot[0]) * (other[1] - spot[1]) - (one[1] - spot[1]) * (other[0] - spot[0])
        return -1 if turn > 0 else 1 if turn < 0 else 0

    return sorted(others, key=cmp_to_key(compare))


def _is_inside(spot: Corner, shape: Shape) -> bool:
    return holds(shape, spot) and not any(
        _lies_on(spot, a, b) for a, b in zip(shape, (*shape[1:], shape[0]), strict=True)
    )


def holds(shape: Shape, spot: Corner) -> bool:
    """Tell whether a spot lies within a simple shape, by counting the edges a ray to the right crosses."""
    is_in = False
    for a, b in zip(shape, (*shape[1:], shape[0]), strict=True):
        if (a[1] > spot[1]) != (b[1] > spot[1]):
            turn = (b[0] - a[0]) * (spot[1] - a[1]) - (b[1] - a[1]) * (spot[0] - a[0])
            if (turn > 0) == (b[1] < a[1]):
                is_in = not is_in
    return is_in
