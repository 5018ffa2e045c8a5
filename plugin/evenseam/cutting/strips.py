"""From demands to strips across a stretch of cloth: the constructive plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product
from math import gcd
from operator import mul

from evenseam.cutting.demand import Demand, Pattern, merit
from evenseam.cutting.knapsack import Choice, best_filling

_MOST_WAYS = 8
"""So many combinations of turned and unturned pieces are tried at most; beyond, one kind at a time is turned."""

_MOST_CHOICES = 24
"""So many kinds of pieces are weighed for a strip at most: those that are trimmed least."""

Way = list[tuple[int, ...]]
"""For each demand, the lies that are allowed."""


def filling_steps(demands: Sequence[Demand], width: int) -> int:
    """Return about how many steps of arithmetic one constructive plan takes."""
    room = width // gcd(*(across for demand in demands for across, _ in demand.lies))
    lies = sum(len(demand.lies) for demand in demands)
    return 3 * len(demands) * min(lies, _MOST_CHOICES) * room


def most_ways(demands: Sequence[Demand], width: int, steps: int) -> int:
    """Return how many constructive plans may be tried with so many steps: at least two."""
    return max(2, min(_MOST_WAYS, steps // filling_steps(demands, width)))


@dataclass(frozen=True, slots=True)
class Floor:
    """What strips are high at least for the pieces in them: so much for each piece, over a common denominator."""

    prices: tuple[int, ...]
    denominator: int

    @staticmethod
    def by_area(demands: Sequence[Demand], width: int) -> Floor:
        """Return what the cloth of the pieces alone takes."""
        return Floor(tuple(_area(demand, 0) for demand in demands), width)


def fill_strips(demands: Sequence[Demand], width: int, most: int = _MOST_WAYS) -> tuple[Pattern, ...]:
    """Return the best of many constructive plans for all pieces in strips across cloth of this width."""
    return fill_low(demands, width, most, Floor.by_area(demands, width), None) or ()


def fill_low(
    demands: Sequence[Demand], width: int, most: int, floor: Floor, limit: int | None
) -> tuple[Pattern, ...] | None:
    """Return the best constructive plan that is at most so high; None when none is."""
    best: tuple[Pattern, ...] | None = None
    best_merit: tuple[int, ...] | None = None
    every: Way = [tuple(range(len(demand.lies))) for demand in demands]
    for openers in _ways(demands, width, most):
        for fills in (openers, every) if openers != every else (openers,):
            filled = _tallest_first(demands, width, openers, fills, floor, limit)
            if filled is None:
                continue
            filled_merit = merit(filled, demands)
            if best_merit is None or filled_merit < best_merit:
                best, best_merit, limit = filled, filled_merit, filled_merit[0]
    return best


def _ways(demands: Sequence[Demand], width: int, most: int) -> list[Way]:
    """Return which lie each demand opens strips with: every combination, or one turned at a time when many."""
    options = [[(number,) for number in range(len(demand.lies))] for demand in demands]
    combinations = 1
    for option in options:
        combinations *= len(option)
    if combinations <= most:
        return [list(way) for way in product(*options)]
    start: Way = [
        min(option, key=lambda way, demand=demand: _alone(demand, way[0], width))  # type: ignore[misc]
        for demand, option in zip(demands, options, strict=True)
    ]
    flat: Way = [
        min(option, key=lambda way, demand=demand: demand.lies[way[0]][1])  # type: ignore[misc]
        for demand, option in zip(demands, options, strict=True)
    ]
    ways = [start, flat]
    for place, option in enumerate(options):
        ways += [[*start[:place], other, *start[place + 1 :]] for other in option if other != start[place]]
    return ways[:most]


def _alone(demand: Demand, lie: int, width: int) -> tuple[int, int]:
    across, along = demand.lies[lie]
    return -(-demand.count // (width // across)) * along, along


def _tallest_first(
    demands: Sequence[Demand], width: int, openers: Way, fills: Way, floor: Floor, limit: int | None
) -> tuple[Pattern, ...] | None:
    """Open a strip for the highest piece left, fill it as full as can be with what is left, and go on.

    None as soon as the strips are bound to be higher together than the limit.
    """
    left = [demand.count for demand in demands]
    prices, denominator = floor.prices, floor.denominator
    patterns: list[Pattern] = []
    height, rest = 0, sum(map(mul, prices, left))
    while any(left):
        if limit is not None and (height - limit) * denominator + rest > 0:
            return None
        pattern = _next_strip(demands, width, openers, fills, left)
        counts = pattern.counts(len(demands))
        times = min(have // count for have, count in zip(left, counts, strict=True) if count)
        patterns += [pattern] * times
        height += times * pattern.height
        for place, count in enumerate(counts):
            left[place] -= times * count
            rest -= times * count * prices[place]
    return tuple(patterns) if limit is None or height <= limit else None


def _next_strip(demands: Sequence[Demand], width: int, openers: Way, fills: Way, left: Sequence[int]) -> Pattern:
    opener, lie = max(
        ((place, number) for place, lies in enumerate(openers) if left[place] for number in lies),
        key=lambda entry: (*reversed(demands[entry[0]].lies[entry[1]]), -entry[0]),
    )
    across, height = demands[opener].lies[lie]
    choices = [
        Choice(place, number, demands[place].lies[number][0], _area(demands[place], number), room)
        for place, lies in enumerate(fills)
        for number in lies
        if demands[place].lies[number][1] <= height and (room := left[place] - (place == opener)) > 0
    ]
    choices.sort(key=lambda choice: -demands[choice.owner].lies[choice.way][1])
    counts = {(opener, lie): 1}
    for choice, count in best_filling(choices[:_MOST_CHOICES], width - across):
        key = (choice.owner, choice.way)
        counts[key] = counts.get(key, 0) + count
    return Pattern(height, in_cutting_order(counts, demands))


def _area(demand: Demand, lie: int) -> int:
    across, along = demand.lies[lie]
    return across * along


def in_cutting_order(counts: dict[tuple[int, int], int], demands: Sequence[Demand]) -> tuple[tuple[int, int, int], ...]:
    """Return the pieces of a strip, highest first, then longest first."""

    def order(piece: tuple[int, int, int]) -> tuple[int, ...]:
        across, along = demands[piece[0]].lies[piece[1]]
        return -along, -across, piece[0], piece[1]

    return tuple(sorted(((demand, lie, count) for (demand, lie), count in counts.items() if count), key=order))
