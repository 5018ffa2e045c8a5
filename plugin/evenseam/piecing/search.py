"""Straight seams right across a block: down to the fewest sections, or down to single pieces."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from evenseam.exact import Number, sign
from evenseam.geometry import ArrangedLine, members
from evenseam.piecing.fewest import FewestSections
from evenseam.piecing.peel import Peeler
from evenseam.piecing.seam_tree import InOrder, Parting, Ruler, SeamTree, before, points_to_match, sides

_MOST_CHOICES = 400
"""Sets of pieces looked at to choose among equally few sections; after that the first line that fits is taken."""


@dataclass(frozen=True, slots=True)
class SectionTree:
    """A tree of seams down to sections."""

    tree: SeamTree
    is_fewest: bool
    """True when it is proved that no tree has fewer sections."""
    at_least: int
    """No tree has fewer sections than this."""


def section_tree(peeler: Peeler, ruler: Ruler) -> SectionTree:
    """Return a tree down to the fewest sections, the best of them for the maker.

    Among trees with equally few sections: sections of even size, then few points to match, then long seams last.
    The block must not be locked.
    """
    everything = peeler.arrangement.everything
    search = FewestSections.of(peeler)
    fewest, at_least = search.fewest(everything), search.at_least(everything)
    tree = _Choice(peeler, ruler, search, {}).best(everything).tree
    return SectionTree(tree, search.is_proved or fewest == at_least, at_least)


def piece_tree(peeler: Peeler, ruler: Ruler) -> SeamTree:
    """Return a tree down to single pieces: seams along the block's edges before slanted ones, long seams last.

    The block must not be locked.
    """
    return _PieceTree(peeler, ruler, peeler.arrangement.lines).tree(peeler.arrangement.everything)


@dataclass(frozen=True, slots=True)
class _Rated:
    """A tree, and what speaks for it; less is better."""

    unevenness: int
    """Sum of the squares of the section sizes."""
    match_points: int
    tree: SeamTree


@dataclass(frozen=True, slots=True)
class _Choice:
    """Chooses among trees with the fewest sections."""

    peeler: Peeler
    ruler: Ruler
    search: FewestSections
    rated: dict[int, _Rated]

    def best(self, pieces: int) -> _Rated:
        """Return the best tree over these pieces."""
        known = self.rated.get(pieces)
        if known is not None:
            return known
        if self.search.fewest(pieces) == 1:
            found = _Rated(pieces.bit_count() ** 2, 0, pieces)
        else:
            found = self._best_parting(pieces)
        self.rated[pieces] = found
        return found

    def _best_parting(self, pieces: int) -> _Rated:
        chosen: tuple[tuple[Number | int, ...], _Rated] | None = None
        for line in self._fitting(pieces):
            first, second = sides(line, pieces)
            one, other = self.best(first), self.best(second)
            matches = one.match_points + other.match_points + points_to_match(line, first, second)
            unevenness = one.unevenness + other.unevenness
            wish = (unevenness, matches, *self._nearer(line, pieces))
            if chosen is None or before(wish, chosen[0]):
                chosen = wish, _Rated(unevenness, matches, Parting(pieces, line, one.tree, other.tree))
            if len(self.rated) > _MOST_CHOICES:
                break
        if chosen is None:
            raise ValueError(f"no line parts {list(members(pieces))} as the search did")
        return chosen[1]

    def _fitting(self, pieces: int) -> Iterator[ArrangedLine]:
        """Yield the lines that a tree with the fewest sections may open first, long seams before short ones."""
        fewest = self.search.fewest(pieces)
        lines = [line for line in self.search.lines if line.separates(pieces)]
        lines.sort(key=lambda line: InOrder(self._nearer(line, pieces)))
        for line in lines:
            one, other = sides(line, pieces)
            if len(lines) == 1 or self.search.are_strangers(one, other):
                # No section reaches across, whatever is opened first: only the order of the seams is to be chosen.
                yield line
                return
        for line in lines:
            one, other = sides(line, pieces)
            if (
                self.search.at_least(one) + self.search.at_least(other) <= fewest
                and self.search.fewest(one) + self.search.fewest(other) == fewest
            ):
                yield line

    def _nearer(self, line: ArrangedLine, pieces: int) -> tuple[Number | int, ...]:
        """Return what speaks for a line by itself."""
        first, second = sides(line, pieces)
        imbalance = abs(first.bit_count() - second.bit_count())
        return -self.ruler.square_of_length(*line.chord(pieces)), imbalance, first


@dataclass(frozen=True, slots=True)
class _PieceTree:
    """Opens seams one after the other down to pieces."""

    peeler: Peeler
    ruler: Ruler
    lines: tuple[ArrangedLine, ...]

    def tree(self, pieces: int) -> SeamTree:
        """Return the tree over these pieces."""
        if not pieces & (pieces - 1):
            return pieces
        chosen: tuple[tuple[Number | int, ...], ArrangedLine] | None = None
        for line in self.lines:
            if line.separates(pieces):
                wish = self._wish(line, pieces)
                if chosen is None or before(wish, chosen[0]):
                    chosen = wish, line
        if chosen is None:
            raise ValueError(f"pieces {list(members(pieces))} are locked")
        one, other = sides(chosen[1], pieces)
        return Parting(pieces, chosen[1], self.tree(one), self.tree(other))

    def _wish(self, line: ArrangedLine, pieces: int) -> tuple[Number | int, ...]:
        first, second = sides(line, pieces)
        start, end = line.chord(pieces)
        step = self.ruler.step(start, end)
        is_slanted = sign(step.x) != 0 and sign(step.y) != 0
        imbalance = abs(first.bit_count() - second.bit_count())
        return int(is_slanted), -step.dot(step), imbalance, points_to_match(line, first, second), first
