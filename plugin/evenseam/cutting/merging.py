"""Requests of equal size as one demand, and strips given back to the requests."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from evenseam.cutting.demand import Demand, Pattern
from evenseam.cutting.request import Lie, Request


@dataclass(frozen=True, slots=True)
class Slot:
    """So many pieces of one request side by side in a strip."""

    request: int
    lie: Lie
    count: int


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip across: as high as its highest piece, lower ones are trimmed."""

    height: int
    slots: tuple[Slot, ...]


@dataclass(slots=True)
class Merged:
    """Requests of equal size asked for together, and given back one after the other."""

    requests: Sequence[Request]
    demands: list[Demand]
    members: list[list[tuple[int, int]]]
    """For each demand, the requests in it with their counts still to be given."""

    @staticmethod
    def of(requests: Sequence[Request], left: Sequence[int], width: int, height: int | None = None) -> Merged:
        """Merge what is left of the requests, as far as it fits a stretch of this width and height."""
        merged: dict[tuple[tuple[int, int], ...], list[tuple[int, int]]] = {}
        for place, request in enumerate(requests):
            sizes = {(lie.across, lie.along) for lie in request.lies}
            fitting = sorted(size for size in sizes if size[0] <= width and (height is None or size[1] <= height))
            if left[place] and fitting:
                merged.setdefault(tuple(fitting), []).append((place, left[place]))
        demands = [Demand(lies, sum(count for _, count in members)) for lies, members in merged.items()]
        return Merged(requests, demands, list(merged.values()))

    def strip(self, pattern: Pattern) -> Strip:
        """Return a strip of a pattern, its pieces given to the requests in turn."""
        slots: list[Slot] = []
        for demand, number, count in pattern.pieces:
            size = self.demands[demand].lies[number]
            while count:
                place, waiting = self.members[demand][0]
                taken = min(count, waiting)
                lie = next(lie for lie in self.requests[place].lies if (lie.across, lie.along) == size)
                slots.append(Slot(place, lie, taken))
                count -= taken
                self.members[demand][:1] = [(place, waiting - taken)] if waiting > taken else []
        return Strip(pattern.height, tuple(slots))
