"""Which pieces can be peeled off a section one at a time, and in what order they are sewn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from evenseam.geometry import ArrangedLine, Arrangement, members


@dataclass(frozen=True, slots=True)
class Peeler:
    """Answers for one arrangement whether pieces make one section.

    Peeling is confluent: a piece that can be peeled off a set can be peeled off every smaller set that still holds
    it, so taking whatever comes off first never leads astray.
    """

    arrangement: Arrangement
    edges: tuple[tuple[tuple[int, int], ...], ...]
    """For each piece, for each of its edges: the line's number, and every other piece that is not wholly beyond it."""

    @staticmethod
    def of(arrangement: Arrangement) -> Peeler:
        """Prepare an arrangement."""
        edges: list[list[tuple[int, int]]] = [[] for _ in arrangement.outlines]
        for number, line in enumerate(arrangement.lines):
            for edge in line.edges:
                beyond = line.left if edge.is_right else line.right
                in_the_way = arrangement.everything & ~beyond & ~(1 << edge.piece)
                edges[edge.piece].append((number, in_the_way))
        return Peeler(arrangement, tuple(tuple(found) for found in edges))

    def is_one_section(self, pieces: int) -> bool:
        """Tell whether single pieces can be peeled off until one is left."""
        # Pieces are often drawn from the inside out or from the outside in; going to and fro suits both.
        order = list(members(pieces))
        while len(order) > 1:
            stuck = len(order)
            for piece in reversed(order):
                for _, in_the_way in self.edges[piece]:
                    if not pieces & in_the_way:
                        pieces ^= 1 << piece
                        break
                if not pieces & (pieces - 1):
                    return True
            order = [piece for piece in reversed(order) if pieces >> piece & 1]
            if len(order) == stuck:
                return False
        return True

    def seams(self, pieces: int) -> list[tuple[int, int]]:
        """Return pairs of (piece, line number) for every piece that can be peeled off now."""
        return [
            (piece, number)
            for piece in members(pieces)
            for number, in_the_way in self.edges[piece]
            if not pieces & in_the_way
        ]


def lines_within(lines: Sequence[ArrangedLine], pieces: int) -> list[ArrangedLine]:
    """Return the lines that run through the inside of these pieces together; no other can ever separate them."""
    return [line for line in lines if pieces & (line.left | line.crossing) and pieces & (line.right | line.crossing)]
