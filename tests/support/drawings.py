"""Drawn blocks for tests: random straight-line partitions, grids, and figures no straight seam opens."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from random import Random

from evenseam.exact import Number, Surd, square_root
from evenseam.geometry import Point, Polygon, convex_hull, split_convex
from evenseam.pattern import Block, BlockPiece, Method

from support.samples import length, polygon

FABRICS = ("sea", "fog", "lamp")


def block_of(outlines: Iterable[Polygon], method: Method = Method.FOUNDATION, side: str = "6") -> Block:
    """Return a block of these pieces p1, p2, …; its outline is the hull of all of them, one grid unit a `side`-th."""
    outlines = tuple(outlines)
    whole = convex_hull(corner for outline in outlines for corner in outline.corners)
    left, top, right, bottom = whole.bounds
    width, height = right - left, bottom - top
    # Both sides get the same scale, so that lengths compare as they look.
    tall = length("block height", side)
    if height != width:
        tall = type(tall)(tall.name, tall.value * (height / width), tall.unit, tall.because)
    return Block(
        "sample", "Sample", length("block width", side), tall, width, height, whole,
        tuple(BlockPiece(f"p{n}", FABRICS[n % 3], outline) for n, outline in enumerate(outlines, start=1)), method,
    )  # fmt: skip


def drawn(text: str, method: Method = Method.FOUNDATION) -> Block:
    """Return a block from polygons written one a line: 0,0 4,0 4,6."""
    return block_of((polygon(line) for line in text.strip().splitlines()), method)


def random_partition(random: Random, pieces: int, grid: int = 24) -> list[Polygon]:
    """Cut a square again and again: upright cuts, slanted cuts, cuts from corner to corner, cuts across everything."""
    cells = [Polygon.rectangle(Fraction(0), Fraction(0), Fraction(grid), Fraction(grid))]
    while len(cells) < pieces:
        kind = random.randrange(8)
        index = random.randrange(len(cells)) if kind % 2 else _largest(cells)
        start, end = _cut(random, cells[index], kind, grid)
        # Now and then the cut runs on through every cell in its way, so that lines cross.
        chosen = range(len(cells)) if random.randrange(10) == 0 else (index,)
        parts: list[Polygon] = []
        for number, cell in enumerate(cells):
            halves = split_convex(cell, start, end) if number in chosen and start != end else None
            parts += halves if halves else (cell,)
        if len(parts) > pieces:
            parts = [
                part
                for number, cell in enumerate(cells)
                for part in (split_convex(cell, start, end) or (cell,) if number == index else (cell,))
            ]
        cells = parts
    random.shuffle(cells)
    return cells


def _largest(cells: Sequence[Polygon]) -> int:
    return max(range(len(cells)), key=lambda number: cells[number].area)


def _cut(random: Random, cell: Polygon, kind: int, grid: int) -> tuple[Point, Point]:
    left, top, right, bottom = cell.bounds
    if kind < 3:
        across = left + (right - left) * Fraction(random.randrange(1, 8), 8)
        down = top + (bottom - top) * Fraction(random.randrange(1, 8), 8)
        if random.randrange(2):
            return Point(across, top), Point(across, bottom)
        return Point(left, down), Point(right, down)
    edges = random.sample(range(len(cell.corners)), 2)
    shares = [Fraction(0 if kind > 5 else random.randrange(0, 4), 4) for _ in edges]
    places = [
        start + (end - start).scaled(share, share)
        for (start, end), share in zip((cell.edges[edge] for edge in edges), shares, strict=True)
    ]
    return places[0], places[1]


def squares(across: int, down: int) -> list[Polygon]:
    """A grid of unit squares."""
    return [
        Polygon.rectangle(Fraction(x), Fraction(y), Fraction(1), Fraction(1))
        for y in range(down) for x in range(across)
    ]  # fmt: skip


def split_squares(across: int, down: int, diagonals: Callable[[int, int], str]) -> list[Polygon]:
    """A grid of unit squares, each cut along the diagonals named for it: slash, backslash, both or none."""
    found: list[Polygon] = []
    for y in range(down):
        for x in range(across):
            cells = [Polygon.rectangle(Fraction(x), Fraction(y), Fraction(1), Fraction(1))]
            for sign in diagonals(x, y):
                ends = (Point(Fraction(x), Fraction(y + 1)), Point(Fraction(x + 1), Fraction(y)))
                if sign == "\\":
                    ends = (Point(Fraction(x), Fraction(y)), Point(Fraction(x + 1), Fraction(y + 1)))
                cells = [part for cell in cells for part in (split_convex(cell, *ends) or (cell,))]
            found += cells
    return found


def triangle_hexagon(side: int) -> list[Polygon]:
    """A hexagon of equal triangles, `side` of them along each edge; the heights are multiples of √3/2."""
    tall, half = square_root(3) / 2, Fraction(1, 2)
    found: list[Polygon] = []
    for row in range(-side, side):
        for column in range(-4 * side, 4 * side):
            x, top, bottom = column * half, tall * row, tall * (row + 1)
            tip, base = (top, bottom) if (row + column) % 2 == 0 else (bottom, top)
            triangle = Polygon((Point(x, tip), Point(x + half, base), Point(x - half, base))).clockwise()
            if all(_in_hexagon(corner, side, tall) for corner in triangle.corners):
                found.append(triangle)
    return found


def _in_hexagon(corner: Point, side: int, tall: Number) -> bool:
    row = corner.y / tall
    assert not isinstance(row, Surd) and not isinstance(corner.x, Surd)
    return abs(row) <= side and abs(corner.x) <= side - abs(row) / 2


PINWHEEL = """
0,0 4,0 4,2 0,2
4,0 6,0 6,4 4,4
2,4 6,4 6,6 2,6
0,2 2,2 2,6 0,6
2,2 4,2 4,4 2,4
"""

NESTED_PINWHEELS = """
0,0 12,0 12,6 0,6
12,0 18,0 18,12 12,12
6,12 18,12 18,18 6,18
0,6 6,6 6,18 0,18
6,6 10,6 10,8 6,8
10,6 12,6 12,10 10,10
8,10 12,10 12,12 8,12
6,8 8,8 8,12 6,12
8,8 10,8 10,10 8,10
"""

THREE_RHOMBS = tuple(
    Polygon(tuple(Point(Fraction(x, 2), square_root(3) / 2 * y) for x, y in corners))
    for corners in (
        ((0, 0), (-1, -1), (1, -1), (2, 0)),
        ((0, 0), (2, 0), (1, 1), (-1, 1)),
        ((0, 0), (-1, 1), (-2, 0), (-1, -1)),
    )
)
"""A hexagon of three rhombs: they meet in its middle, each in the inward corner of the other two."""


def merged_grid(random: Random, across: int, down: int, pieces: int) -> list[Polygon]:
    """A grid with random diagonals whose neighbours are merged at random while they stay convex.

    Lines cross, end in the middle of others and go on behind them; some of these drawings are locked.
    """
    cells = split_squares(across, down, lambda x, y: random.choice(("", "", "/", "\\", "/\\")))
    misses = 0
    while len(cells) > pieces and misses < 200:
        one, other = random.sample(range(len(cells)), 2)
        together = convex_hull((*cells[one].corners, *cells[other].corners))
        if together.area == cells[one].area + cells[other].area:
            cells = [cell for number, cell in enumerate(cells) if number not in (one, other)] + [together]
        else:
            misses += 1
    random.shuffle(cells)
    return cells


def rings_of_strips(strips: int) -> list[Polygon]:
    """Four squares with strips sewn round and round them: every seam but the first two can only be opened in turn."""
    cells = squares(2, 2)
    one, left, top, right, bottom = Fraction(1), Fraction(0), Fraction(0), Fraction(2), Fraction(2)
    for number in range(strips):
        match number % 4:
            case 0:
                top -= 1
                cells.append(Polygon.rectangle(left, top, right - left, one))
            case 1:
                cells.append(Polygon.rectangle(right, top, one, bottom - top))
                right += 1
            case 2:
                cells.append(Polygon.rectangle(left, bottom, right - left, one))
                bottom += 1
            case _:
                left -= 1
                cells.append(Polygon.rectangle(left, top, one, bottom - top))
    return cells
