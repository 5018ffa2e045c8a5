"""From requests to strips across a stretch of cloth: the constructive plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from evenseam.cutting.knapsack import Choice, best_filling
from evenseam.cutting.request import Lie, Request

_MOST_WAYS = 32
"""So many combinations of turned and unturned pieces are tried at most; beyond, one kind at a time is turned."""


@dataclass(frozen=True, slots=True)
class Slot:
    """So many pieces of one request side by side in a strip."""

    request: int
    lie: Lie
    count: int


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip across the stretch: as high as its highest piece, lower ones are trimmed."""

    height: int
    slots: tuple[Slot, ...]

    @property
    def used(self) -> int:
        """How much of the strip's length is used."""
        return sum(slot.count * slot.lie.across for slot in self.slots)


@dataclass(frozen=True, slots=True)
class Filled:
    """Strips, and how many of each request they hold."""

    strips: tuple[Strip, ...]

    @property
    def height(self) -> int:
        """Cloth used, along the selvage."""
        return sum(strip.height for strip in self.strips)

    @property
    def merit(self) -> tuple[int, int, int]:
        """Least length, then fewest different strip widths, then fewest cuts: smaller is better."""
        cuts = sum(_cuts(strip) for strip in self.strips)
        return self.height, len({strip.height for strip in self.strips}), cuts


def _cuts(strip: Strip) -> int:
    trims = sum(slot.count for slot in strip.slots if slot.lie.along < strip.height)
    return 1 + sum(slot.count for slot in strip.slots) + trims


def fill_strips(requests: Sequence[Request], width: int) -> Filled:
    """Return the best of many constructive plans for all pieces in strips across cloth of this width."""
    best: Filled | None = None
    for openers in _ways(requests, width):
        for fills in (openers, [request.lies for request in requests]):
            filled = _tallest_first(requests, width, openers, fills)
            if best is None or filled.merit < best.merit:
                best = filled
    return best or Filled(())


def _ways(requests: Sequence[Request], width: int) -> list[list[tuple[Lie, ...]]]:
    """Return which lie each request opens strips with: every combination, or one turned at a time when many."""
    options: list[list[tuple[Lie, ...]]] = [[(lie,) for lie in request.lies] for request in requests]
    combinations = 1
    for option in options:
        combinations *= len(option)
    if combinations <= _MOST_WAYS:
        return [list(way) for way in product(*options)]
    start = [
        min(option, key=lambda lies: _alone(request, lies[0], width))
        for request, option in zip(requests, options, strict=True)
    ]
    ways = [start]
    for place, option in enumerate(options):
        ways += [[*start[:place], other, *start[place + 1 :]] for other in option if other != start[place]]
    return ways[: 2 * _MOST_WAYS]


def _alone(request: Request, lie: Lie, width: int) -> tuple[int, int]:
    return -(-request.count // (width // lie.across)) * lie.along, lie.along


def _tallest_first(
    requests: Sequence[Request], width: int, openers: Sequence[tuple[Lie, ...]], fills: Sequence[tuple[Lie, ...]]
) -> Filled:
    """Open a strip for the highest piece left, fill it as full as can be with what is left, and go on."""
    left = [request.count for request in requests]
    strips: list[Strip] = []
    while any(left):
        lie, opener = max(
            ((lie, place) for place, lies in enumerate(openers) if left[place] for lie in lies),
            key=lambda entry: (entry[0].along, entry[0].across, -entry[1]),
        )
        height = lie.along
        choices = [
            Choice(place, lie.across, lie.across * lie.along, left[place] - (place == opener), lie)
            for place, lies in enumerate(fills)
            for lie in lies
            if lie.along <= height and left[place] - (place == opener) > 0
        ]
        chosen = best_filling(choices, width - lie.across)
        counts: dict[tuple[int, Lie], int] = {(opener, lie): 1}
        for choice, count in chosen:
            key = (choice.request, choice.lie)
            counts[key] = counts.get(key, 0) + count
        slots = tuple(
            Slot(place, way, count)
            for (place, way), count in sorted(
                counts.items(), key=lambda item: (-item[0][1].along, -item[0][1].across, item[0][0])
            )
        )
        per_request: dict[int, int] = {}
        for slot in slots:
            per_request[slot.request] = per_request.get(slot.request, 0) + slot.count
        times = min(left[place] // count for place, count in per_request.items())
        strips += [Strip(height, slots)] * times
        for place, count in per_request.items():
            left[place] -= times * count
    return Filled(tuple(strips))
