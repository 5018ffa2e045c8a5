"""A block as a tree of straight seams: what every seam parts, down to sections."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias, Union

from evenseam.exact import Number, sign
from evenseam.geometry import ArrangedLine, Arrangement, Point


@dataclass(frozen=True, slots=True)
class Parting:
    """A seam right across some pieces, and what lies on its two sides."""

    pieces: int
    line: ArrangedLine
    first: SeamTree
    """The side that holds the piece the author drew first."""
    second: SeamTree


SeamTree: TypeAlias = Union[int, Parting]
"""A section (a set of pieces, as bits), or a parting of two trees."""


def pieces_of(tree: SeamTree) -> int:
    """Return all pieces of a tree."""
    return tree if isinstance(tree, int) else tree.pieces


def sections_of(tree: SeamTree) -> Iterator[int]:
    """Yield the sections in the order in which they are sewn."""
    if isinstance(tree, int):
        yield tree
    else:
        yield from sections_of(tree.first)
        yield from sections_of(tree.second)


def sides(line: ArrangedLine, pieces: int) -> tuple[int, int]:
    """Return what a separating line parts, the side with the first-drawn piece first."""
    left, right = pieces & line.left, pieces & line.right
    return (left, right) if left & -left < right & -right else (right, left)


@dataclass(frozen=True, slots=True)
class Ruler:
    """Measures seams of an arrangement as they will be sewn, so that long and short mean what a maker means."""

    arrangement: Arrangement
    scale: tuple[Number, Number]
    """Finished length of one grid unit, across and down."""

    def square_of_length(self, start: int, end: int) -> Number:
        """Return the square of the finished distance between two corners; enough to tell longer from shorter."""
        step = self.step(start, end)
        return step.dot(step)

    def step(self, start: int, end: int) -> Point:
        """Return the finished step from one corner to another."""
        corners = self.arrangement.corners
        return (corners[end] - corners[start]).scaled(*self.scale)


def before(one: tuple[Number | int, ...], other: tuple[Number | int, ...]) -> bool:
    """Tell whether one row of exact numbers comes before another of the same length, decided exactly."""
    for left, right in zip(one, other, strict=True):
        difference = sign(left - right)
        if difference:
            return difference < 0
    return False


@dataclass(frozen=True, slots=True)
class InOrder:
    """A row of exact numbers that can be sorted whatever their kinds."""

    row: tuple[Number | int, ...]

    def __lt__(self, other: InOrder) -> bool:
        return before(self.row, other.row)


def points_to_match(line: ArrangedLine, first: int, second: int) -> int:
    """Count the points of a seam where a seam of each side ends."""
    return len(inner_ends(line, first) & inner_ends(line, second))


def inner_ends(line: ArrangedLine, side: int) -> set[int]:
    """Return the corners inside the stretch of one side along a line where seams of that side end."""
    lying = line.edges_of(side)
    places = {edge.start for edge in lying} & {edge.end for edge in lying}
    return {line.corners[place] for place in places}
