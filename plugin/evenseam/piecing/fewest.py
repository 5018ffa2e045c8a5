"""The fewest sections a set of pieces can be sewn in: an exact search over the lines that separate it.

A tree of seams over a set of pieces, looked at on one side of a line that cuts none of them, is a tree of seams
over that side, and what was one section is still one. Three things follow, and they carry the search:

* a set inside another never needs more sections than that other;
* two pieces can share a section only if the smallest set of pieces around both that straight seams can free is one
  section: where it is not, the two are strangers, and a set needs as many sections as it has pieces that are
  strangers all to one another;
* a line across which all pieces are strangers may be opened first: nothing is lost by it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from evenseam.exact import sign
from evenseam.geometry import ArrangedLine, EdgeOnLine, members
from evenseam.piecing.peel import Peeler, lines_within
from evenseam.piecing.seam_tree import sides

MOST_STEPS = 60_000
"""Sets looked at before the search is given up and says so. Drawings of 150 pieces seldom need a hundredth of it."""


@dataclass(slots=True)
class FewestSections:
    """Counts sections for one arrangement that is not locked."""

    peeler: Peeler
    lines: tuple[ArrangedLine, ...]
    """In an order that turning or mirroring the drawing does not change."""
    friends: tuple[int, ...]
    """For each piece, all pieces that can share a section with it, itself among them."""
    steps: int = 0
    _counts: dict[int, int] = field(default_factory=dict)
    _bounds: dict[int, int] = field(default_factory=dict)

    @staticmethod
    def of(peeler: Peeler) -> FewestSections:
        """Prepare the search."""
        lines = tuple(sorted(peeler.arrangement.lines, key=_standing))
        return FewestSections(peeler, lines, _friends(peeler, lines))

    @property
    def is_proved(self) -> bool:
        """True unless the search was given up."""
        return self.steps <= MOST_STEPS

    def fewest(self, pieces: int) -> int:
        """Return the fewest sections for a set of pieces that straight seams can free."""
        known = self._counts.get(pieces)
        if known is not None:
            return known
        if self.peeler.is_one_section(pieces):
            self._counts[pieces] = 1
            return 1
        self.steps += 1
        options = self.partings(pieces)
        # A line without a rival is opened as if all were strangers across it.
        apart = next(
            ((one, other) for one, other in options if len(options) == 1 or self.are_strangers(one, other)), None
        )
        if apart is not None:
            count = self.fewest(apart[0]) + self.fewest(apart[1])
        else:
            count = self._search(pieces, options)
        self._counts[pieces] = count
        return count

    def partings(self, pieces: int) -> list[tuple[int, int]]:
        """Return every way a line separates the pieces."""
        return [sides(line, pieces) for line in self.lines if line.separates(pieces)]

    def at_least(self, pieces: int) -> int:
        """Return a number of sections that is certainly needed: pieces that are strangers all to one another."""
        known = self._bounds.get(pieces)
        if known is not None:
            return known
        count, waiting = 0, pieces
        while waiting:
            # The piece with the fewest friends left spoils the fewest others.
            chosen = min(members(waiting), key=lambda piece: (self.friends[piece] & waiting).bit_count())
            waiting &= ~self.friends[chosen]
            count += 1
        self._bounds[pieces] = count
        return count

    def _search(self, pieces: int, options: list[tuple[int, int]]) -> int:
        goal = max(2, self.at_least(pieces))
        rated = sorted(
            (self.at_least(one) + self.at_least(other), abs(one.bit_count() - other.bit_count()), one, other)
            for one, other in options
        )
        best = pieces.bit_count() + 1
        for bound, _, one, other in rated:
            if bound >= best or best <= goal or (self.steps > MOST_STEPS and best <= pieces.bit_count()):
                break
            count = self.fewest(one)
            if count + self.at_least(other) < best:
                best = min(best, count + self.fewest(other))
        return best

    def are_strangers(self, one: int, other: int) -> bool:
        """Tell whether no section holds pieces of both sets."""
        if one.bit_count() > other.bit_count():
            one, other = other, one
        return not any(self.friends[piece] & other for piece in members(one))


def _standing(line: ArrangedLine) -> tuple[int, int, int]:
    return line.crossing, min(line.left, line.right), max(line.left, line.right)


def _friends(peeler: Peeler, lines: tuple[ArrangedLine, ...]) -> tuple[int, ...]:
    """Find all pairs of pieces that can share a section, going down one tree of seams.

    A pair is looked at where the tree parts it: the smallest set around both lies inside what is parted there.
    """
    friends = [1 << piece for piece in range(len(peeler.arrangement.outlines))]
    waiting = [(peeler.arrangement.everything, list(lines))]
    while waiting:
        pieces, known = waiting.pop()
        if peeler.is_one_section(pieces):
            for piece in members(pieces):
                friends[piece] |= pieces
            continue
        inside = lines_within(known, pieces)
        line = min(
            (line for line in inside if line.separates(pieces)),
            key=lambda line: abs((line.left & pieces).bit_count() - (line.right & pieces).bit_count()),
        )
        one, other = sides(line, pieces)
        if any(peeler.is_one_section(smallest_around(bridge, pieces, inside)) for bridge in bridges(line, pieces)):
            for piece in members(one):
                for partner in members(other):
                    pair = 1 << piece | 1 << partner
                    if peeler.is_one_section(smallest_around(pair, pieces, inside)):
                        friends[piece] |= 1 << partner
                        friends[partner] |= 1 << piece
        waiting += [(one, inside), (other, inside)]
    return tuple(friends)


def smallest_around(wanted: int, pieces: int, lines: list[ArrangedLine]) -> int:
    """Return the smallest set that straight seams can free from `pieces` with the wanted ones whole inside it."""
    changed = True
    while changed:
        changed = False
        for line in lines:
            if pieces & line.crossing:
                continue
            for beyond, kept in ((line.left, line.right), (line.right, line.left)):
                if pieces & beyond and not wanted & beyond:
                    pieces &= kept
                    changed = True
                    break
    return pieces


def bridges(line: ArrangedLine, pieces: int) -> Iterator[int]:
    """Yield sets of pieces one of which every section that reaches across a separating line holds whole.

    The first piece of such a section to be sewn on across the line has a whole edge on it, and what was sewn before
    lies along all of that edge and ends at both its ends. The outline stays convex, so at neither end may the two
    together bend inward::

        ----o====x====o----    piece x above, edges of the others below: corners below at both ends, no bend
            |  y | z  |
    """
    lying = line.edges_of(pieces)
    for edge in lying:
        beyond = [other for other in lying if other.is_right is not edge.is_right]
        begins = next((other for other in beyond if other.start == edge.start), None)
        finishes = next((other for other in beyond if other.end == edge.end), None)
        if begins and finishes and _is_convex_across(edge, begins, finishes):
            along = [other for other in beyond if other.start >= edge.start and other.end <= edge.end]
            yield sum(1 << other.piece for other in (edge, *along))


def _is_convex_across(edge: EdgeOnLine, begins: EdgeOnLine, finishes: EdgeOnLine) -> bool:
    way = -1 if edge.is_right else 1
    (a, b), (c, d) = edge.start_ray, begins.start_ray
    (p, q), (r, s) = edge.end_ray, finishes.end_ray
    return sign(a * d - b * c) * way >= 0 and sign(p * s - q * r) * way <= 0
