"""What is asked of a stretch of cloth, and strips across it, in whole steps."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Demand:
    """So many equal rectangles, and the ways they may lie: (across, along)."""

    lies: tuple[tuple[int, int], ...]
    count: int

    @property
    def area(self) -> int:
        """Cloth of all of them."""
        return self.count * self.lies[0][0] * self.lies[0][1]


@dataclass(frozen=True, slots=True)
class Pattern:
    """One strip: as high as its highest piece, and how many pieces of which demand, lying which way, are in it."""

    height: int
    pieces: tuple[tuple[int, int, int], ...]
    """(demand, lie, count), highest first."""

    def counts(self, size: int) -> tuple[int, ...]:
        """Return how many pieces of each demand are in the strip."""
        counts = [0] * size
        for demand, _, count in self.pieces:
            counts[demand] += count
        return tuple(counts)


def total_height(patterns: Iterable[Pattern]) -> int:
    """Return the cloth strips use one after the other."""
    return sum(pattern.height for pattern in patterns)


def merit(patterns: Sequence[Pattern], demands: Sequence[Demand]) -> tuple[int, int, int, int]:
    """Return what makes strips good, smaller is better: length, different strip widths, cuts, different strips."""
    cuts = 0
    for pattern in patterns:
        cuts += 1
        for demand, lie, count in pattern.pieces:
            cuts += count if demands[demand].lies[lie][1] == pattern.height else 2 * count
    kinds = {(pattern.height, tuple(demand for demand, _, _ in pattern.pieces)) for pattern in patterns}
    return total_height(patterns), len({pattern.height for pattern in patterns}), cuts, len(kinds)
