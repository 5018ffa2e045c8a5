"""Blocks that no straight seam opens: which pieces lock, and the fewest added seams that free them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import combinations

from evenseam.exact import Number, sign
from evenseam.geometry import Arrangement, Point, Polygon, arrange, members, split_convex
from evenseam.pattern import Block
from evenseam.piecing.pieced import Seam
from evenseam.piecing.seam_tree import InOrder, sides

MOST_TRIES = 150
"""Lines tried for one locked set before the search for the fewest added seams is given up and says so."""

MOST_LOCKED = 24
"""For more pieces than this in one locked set the fewest added seams are not searched for."""


@dataclass(frozen=True, slots=True)
class AddedSeam:
    """A proposed seam right across one piece, in grid units."""

    piece: str
    seam: Seam
    parts: tuple[Polygon, Polygon]
    """What it leaves of the piece, or of the part of the piece that earlier added seams left."""


@dataclass(frozen=True, slots=True)
class LockedSet:
    """Pieces that lock one another, and what would free them."""

    pieces: tuple[str, ...]
    outline: Polygon
    """Round all of them."""
    seams: tuple[AddedSeam, ...]
    """In the order they would be drawn."""
    replacements: tuple[tuple[str, tuple[Polygon, ...]], ...]
    """For each piece that is cut, the pieces to draw in its place."""
    at_least: int
    """No fewer added seams along lines through two corners of the drawing free these pieces."""

    @property
    def is_fewest(self) -> bool:
        """True when it is proved that no fewer added seams do."""
        return len(self.seams) == self.at_least


@dataclass(frozen=True, slots=True)
class LockedReport:
    """Everything about a locked block, enough for words and a picture."""

    block: str
    sets: tuple[LockedSet, ...]


def locked_report(block: Block) -> LockedReport | None:
    """Return what locks a block of convex pieces and what would free it; None when it can be sewn as drawn."""
    arrangement = arrange([piece.outline for piece in block.pieces])
    found = tuple(_locked_set(block, arrangement, pieces) for pieces in locked_sets(arrangement))
    return LockedReport(block.id, found) if found else None


def locked_sets(arrangement: Arrangement) -> tuple[int, ...]:
    """Return the smallest sets of two or more pieces that no straight seam parts, once all that can be are opened.

    Opening seams is confluent: whatever is opened first, the same sets stay. None when the block can be sewn.
    """
    waiting = [arrangement.everything]
    locked: list[int] = []
    while waiting:
        pieces = waiting.pop()
        line = next((line for line in arrangement.lines if line.separates(pieces)), None)
        if line is not None:
            waiting += sides(line, pieces)
        elif pieces & (pieces - 1):
            locked.append(pieces)
    return tuple(sorted(locked, key=lambda pieces: pieces & -pieces))


def _locked_set(block: Block, arrangement: Arrangement, pieces: int) -> LockedSet:
    cells = tuple((piece, block.pieces[piece].outline.clockwise()) for piece in members(pieces))
    search = _Freeing()
    cuts, at_least = search.fewest(cells)
    parts: dict[int, list[Polygon]] = {}
    for cut in cuts:
        left = parts.setdefault(cut.cell[0], [cut.cell[1]])
        left.remove(cut.cell[1])
        left += cut.parts
    return LockedSet(
        tuple(block.pieces[piece].id for piece in members(pieces)),
        arrangement.outline(pieces),
        tuple(AddedSeam(block.pieces[cut.cell[0]].id, cut.seam, cut.parts) for cut in cuts),
        tuple((block.pieces[piece].id, tuple(outlines)) for piece, outlines in sorted(parts.items())),
        at_least,
    )


_Cell = tuple[int, Polygon]
"""The number of a drawn piece, and what is left of it."""


@dataclass(frozen=True, slots=True)
class _Cut:
    cell: _Cell
    seam: Seam
    parts: tuple[Polygon, Polygon]


@dataclass(frozen=True, slots=True)
class _Line:
    """A line through two corners of a locked set, and how the set lies to it."""

    wish: tuple[Number | int, ...]
    left: tuple[_Cell, ...]
    right: tuple[_Cell, ...]
    cuts: tuple[_Cut, ...]


@dataclass(slots=True)
class _Freeing:
    """Searches the fewest cuts by asking for one, two, three, …; each answer of "no" is a proof."""

    tries: int = 0
    _hopeless: set[tuple[frozenset[_Cell], int]] = field(default_factory=set)

    def fewest(self, cells: tuple[_Cell, ...]) -> tuple[tuple[_Cut, ...], int]:
        """Return cuts that free the cells, and a number that is certainly needed."""
        allowed = 1
        if len(cells) > MOST_LOCKED:
            return self._quickly(cells), allowed
        while self.tries <= MOST_TRIES:
            cuts = self._open_with(cells, allowed)
            if cuts is not None:
                return cuts, allowed
            if self.tries <= MOST_TRIES:
                allowed += 1
        return self._quickly(cells), allowed

    def _free(self, cells: tuple[_Cell, ...], allowed: int) -> tuple[_Cut, ...] | None:
        """Return at most `allowed` cuts that free the cells, or None when there are none."""
        waiting = _locked(cells)
        if len(waiting) > allowed:
            return None
        found: tuple[_Cut, ...] = ()
        for index, locked in enumerate(waiting):
            spare = allowed - len(found) - (len(waiting) - index - 1)
            cuts = next((cuts for some in range(1, spare + 1) if (cuts := self._open_with(locked, some))), None)
            if cuts is None:
                return None
            found += cuts
        return found

    def _open_with(self, cells: tuple[_Cell, ...], exactly: int) -> tuple[_Cut, ...] | None:
        key = frozenset(cells), exactly
        if key in self._hopeless:
            return None
        for line in _lines(cells, exactly):
            self.tries += 1
            if self.tries > MOST_TRIES:
                return None
            rest = exactly - len(line.cuts)
            one = self._free(line.left, rest)
            if one is None:
                continue
            other = self._free(line.right, rest - len(one))
            if other is not None:
                return (*line.cuts, *one, *other)
        if self.tries <= MOST_TRIES:
            self._hopeless.add(key)
        return None

    def _quickly(self, cells: tuple[_Cell, ...]) -> tuple[_Cut, ...]:
        """Return cuts that free the cells, taking the seam that runs on across the fewest pieces each time."""
        found: list[_Cut] = []
        waiting = [cells]
        while waiting:
            locked = waiting.pop()
            arrangement = arrange([outline for _, outline in locked])
            run_on = min(
                (line for line in arrangement.lines if line.crossing),
                key=lambda line: (line.crossing.bit_count(), line.crossing),
            )
            line = _line(locked, arrangement, (run_on.corners[0], run_on.corners[-1]), run_on.crossing)
            found += line.cuts
            waiting += [*_locked(line.left), *_locked(line.right)]
        return tuple(found)


def _locked(cells: tuple[_Cell, ...]) -> list[tuple[_Cell, ...]]:
    if len(cells) < 2:
        return []
    arrangement = arrange([outline for _, outline in cells])
    return [tuple(cells[number] for number in members(pieces)) for pieces in locked_sets(arrangement)]


def _lines(cells: tuple[_Cell, ...], most_cuts: int) -> Iterator[_Line]:
    """Yield the lines through two corners that part the cells with few enough cuts, the likeliest first.

    Likely are few cuts, then seams that run on, then short cuts. A line that crosses pieces can be shifted and
    turned until it runs through two corners without crossing more, so no others are tried.
    """
    arrangement = arrange([outline for _, outline in cells])
    edge_pairs = [(line.corners[0], line.corners[-1]) for line in arrangement.lines]
    pairs = [(True, pair) for pair in edge_pairs]
    pairs += [(False, pair) for pair in combinations(range(len(arrangement.corners)), 2)]
    alike: dict[tuple[int, bool], list[tuple[tuple[int, int], int]]] = {}
    seen: set[int] = set()
    for is_seam, pair in pairs:
        on_line, crossing = _crossed(arrangement, *pair)
        count = crossing.bit_count()
        if on_line not in seen and 0 < count <= most_cuts:
            alike.setdefault((count, not is_seam), []).append((pair, crossing))
        # Two lines that share two corners are one line.
        seen.add(on_line)
    # Cutting the pieces takes the most time, so it is left until a line is wanted.
    for _, found in sorted(alike.items()):
        lines = [_line(cells, arrangement, pair, crossing) for pair, crossing in found]
        yield from sorted(lines, key=lambda line: InOrder(line.wish))


def _crossed(arrangement: Arrangement, start: int, end: int) -> tuple[int, int]:
    """Return which corners lie on the line through two corners, and which pieces it cuts."""
    (x, y), (u, v) = arrangement.lattice[start], arrangement.lattice[end]
    across, down = u - x, v - y
    left = right = 0
    signs = [sign(across * (q - y) - down * (p - x)) for p, q in arrangement.lattice]
    for piece, outline in enumerate(arrangement.outlines):
        left |= any(signs[corner] < 0 for corner in outline) << piece
        right |= any(signs[corner] > 0 for corner in outline) << piece
    return sum(1 << corner for corner, side in enumerate(signs) if side == 0), left & right


def _line(cells: tuple[_Cell, ...], arrangement: Arrangement, ends: tuple[int, int], crossing: int) -> _Line:
    start, end = (arrangement.corners[number] for number in ends)
    direction = end - start
    left: list[_Cell] = []
    right: list[_Cell] = []
    cuts: list[_Cut] = []
    length: Number | int = 0
    for number, cell in enumerate(cells):
        halves = split_convex(cell[1], start, end) if crossing >> number & 1 else None
        if halves is None:
            is_left = any(sign(direction.cross(corner - start)) < 0 for corner in cell[1].corners)
            (left if is_left else right).append(cell)
            continue
        left.append((cell[0], halves[0]))
        right.append((cell[0], halves[1]))
        seam = _seam_between(halves, start, direction)
        cuts.append(_Cut(cell, seam, halves))
        step = seam.end - seam.start
        length = step.dot(step) + length
    order = sum(1 << cut.cell[0] for cut in cuts)
    return _Line((length, order), tuple(left), tuple(right), tuple(cuts))


def _seam_between(halves: tuple[Polygon, Polygon], start: Point, direction: Point) -> Seam:
    on_line = [corner for corner in halves[0].corners if sign(direction.cross(corner - start)) == 0]
    first, last = on_line[0], on_line[-1]
    return Seam(first, last) if sign(direction.dot(last - first)) > 0 else Seam(last, first)
