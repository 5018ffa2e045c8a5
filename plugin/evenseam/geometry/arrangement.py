"""Straight-edged convex pieces that fill an outline, as sets of bits and the lines along their edges."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cmp_to_key
from math import gcd
from typing import TypeAlias

from evenseam.exact import sign
from evenseam.geometry.hull import hull_of, without_straight_corners
from evenseam.geometry.lattice import Coordinate, lattice_points
from evenseam.geometry.point import Point
from evenseam.geometry.polygon import Polygon

_Pair: TypeAlias = tuple[Coordinate, Coordinate]
_LineKey: TypeAlias = tuple[Coordinate, Coordinate, Coordinate]


@dataclass(frozen=True, slots=True)
class EdgeOnLine:
    """One edge of a piece that lies on a line of the arrangement."""

    piece: int
    is_right: bool
    """On which side of the line the piece lies."""
    start: int
    """Where along the line it starts and ends: places in the line's row of corners."""
    end: int
    start_ray: _Pair
    """From the start along the piece's other edge there, in lattice coordinates."""
    end_ray: _Pair


@dataclass(frozen=True, slots=True)
class ArrangedLine:
    """A line along at least one edge, and how every piece lies to it. Sets of pieces are bits: piece 0 is 1."""

    left: int
    """Pieces wholly to the left, as the line is walked on the page."""
    right: int
    crossing: int
    """Pieces with inside on both sides."""
    corners: tuple[int, ...]
    """Corner numbers on the line that end some edge on it, in the order of the line."""
    edges: tuple[EdgeOnLine, ...]

    def separates(self, pieces: int) -> bool:
        """Tell whether the line parts these pieces into two sets without cutting one."""
        return not pieces & self.crossing and bool(pieces & self.left) and bool(pieces & self.right)

    def edges_of(self, pieces: int) -> list[EdgeOnLine]:
        """Return the edges of these pieces that lie on the line."""
        return [edge for edge in self.edges if pieces >> edge.piece & 1]

    def chord(self, pieces: int) -> tuple[int, int]:
        """Return the first and last corner number of the stretch along which these pieces touch the line."""
        lying = self.edges_of(pieces)
        return self.corners[min(edge.start for edge in lying)], self.corners[max(edge.end for edge in lying)]


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Convex pieces and every line along an edge of one of them."""

    corners: tuple[Point, ...]
    """Every corner of every piece, once."""
    lattice: tuple[tuple[Coordinate, Coordinate], ...]
    """The same corners in lattice coordinates."""
    outlines: tuple[tuple[int, ...], ...]
    """For each piece its true corners, clockwise on the page."""
    lines: tuple[ArrangedLine, ...]
    """In the order of the pieces that first use them."""

    @property
    def everything(self) -> int:
        """The set of all pieces."""
        return (1 << len(self.outlines)) - 1

    def outline(self, pieces: int) -> Polygon:
        """Return the convex outline of a set of pieces, clockwise on the page."""
        numbers = (number for piece in members(pieces) for number in self.outlines[piece])
        return Polygon(tuple(self.corners[number] for number in hull_of(numbers, self.lattice.__getitem__)))


def members(pieces: int) -> Iterator[int]:
    """Yield the pieces of a set, lowest first."""
    while pieces:
        lowest = pieces & -pieces
        yield lowest.bit_length() - 1
        pieces ^= lowest


def arrange(outlines: Sequence[Polygon]) -> Arrangement:
    """Arrange convex pieces. Corners in the middle of a straight edge are left out of the piece's own outline."""
    clean = [without_straight_corners(outline.clockwise()) for outline in outlines]
    numbers: dict[Point, int] = {}
    for outline in clean:
        for corner in outline.corners:
            numbers.setdefault(corner, len(numbers))
    corners = tuple(numbers)
    lattice = lattice_points(corners)
    faces = tuple(tuple(numbers[corner] for corner in outline.corners) for outline in clean)
    owners = [0] * len(corners)
    for piece, face in enumerate(faces):
        for number in face:
            owners[number] |= 1 << piece
    on_line: dict[_LineKey, list[tuple[int, int, int, int, int]]] = {}
    for piece, face in enumerate(faces):
        for index, start in enumerate(face):
            end = face[(index + 1) % len(face)]
            before, after = face[index - 1], face[(index + 2) % len(face)]
            on_line.setdefault(_line_key(lattice[start], lattice[end]), []).append((piece, before, start, end, after))
    lines = tuple(_arranged_line(lattice, owners, found) for found in on_line.values())
    return Arrangement(corners, lattice, faces, lines)


def _arranged_line(
    lattice: Sequence[_Pair], owners: Sequence[int], found: Sequence[tuple[int, int, int, int, int]]
) -> ArrangedLine:
    _, _, first, second, _ = found[0]
    (x, y), (u, v) = lattice[first], lattice[second]
    across, down = u - x, v - y
    level = across * y - down * x
    on_left = on_right = 0
    for (p, q), owner in zip(lattice, owners, strict=True):
        side = sign(across * q - down * p - level)
        if side < 0:
            on_left |= owner
        elif side > 0:
            on_right |= owner

    used = {number for _, _, start, end, _ in found for number in (start, end)}
    row = tuple(sorted(used, key=cmp_to_key(_order_along(lattice, across, down))))
    place = {number: index for index, number in enumerate(row)}
    edges: list[EdgeOnLine] = []
    for piece, before, start, end, after in found:
        start_ray, end_ray = _ray(lattice, start, before), _ray(lattice, end, after)
        # Outlines run clockwise, so a piece lies to the right of its own edges.
        if place[start] < place[end]:
            edges.append(EdgeOnLine(piece, True, place[start], place[end], start_ray, end_ray))
        else:
            edges.append(EdgeOnLine(piece, False, place[end], place[start], end_ray, start_ray))
    edges.sort(key=lambda edge: (edge.start, edge.is_right))
    return ArrangedLine(on_left & ~on_right, on_right & ~on_left, on_left & on_right, row, tuple(edges))


def _order_along(lattice: Sequence[_Pair], across: Coordinate, down: Coordinate) -> Callable[[int, int], int]:
    def compare(first: int, second: int) -> int:
        (x, y), (u, v) = lattice[first], lattice[second]
        return sign((x - u) * across + (y - v) * down)

    return compare


def _ray(lattice: Sequence[_Pair], start: int, end: int) -> _Pair:
    return lattice[end][0] - lattice[start][0], lattice[end][1] - lattice[start][1]


def _line_key(start: _Pair, end: _Pair) -> _LineKey:
    """Return the same key for every pair of places on one line."""
    across, down = end[0] - start[0], end[1] - start[1]
    level = across * start[1] - down * start[0]
    if isinstance(across, int) and isinstance(down, int) and isinstance(level, int):
        common = gcd(across, down)
        if across < 0 or (across == 0 and down < 0):
            common = -common
        return across // common, down // common, level // common
    if sign(across) == 0:
        return 0, 1, level / Fraction(1) / down
    return 1, down / Fraction(1) / across, level / Fraction(1) / across
