"""The fewest equal pieces of cloth that hold all demands: strips across or along each piece, then subcuts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from evenseam.cutting.demand import Demand, Pattern
from evenseam.cutting.knapsack import Choice, best_filling
from evenseam.cutting.strips import fill_strips, in_cutting_order


@dataclass(frozen=True, slots=True)
class Sheet:
    """Strips from one piece of cloth, one after the other."""

    is_along: bool
    """True when the strips run along the cloth."""
    patterns: tuple[Pattern, ...]


@dataclass(frozen=True, slots=True)
class Sheets:
    """What every piece of cloth is cut into, and a number no plan can go below."""

    sheets: tuple[Sheet, ...]
    bound: int


def fewest_sheets(demands: Sequence[Demand], width: int, height: int) -> Sheets:
    """Return the best of several plans. Every demand has a lie that fits a sheet."""
    fitting = [Demand(tuple(lie for lie in d.lies if lie[0] <= width and lie[1] <= height), d.count) for d in demands]
    bound = least_sheets(fitting, width, height)
    best: list[Sheet] = []
    for plan in _plans(fitting, width, height):
        if not best or len(plan) < len(best):
            best = plan
        if len(best) <= bound:
            break
    return Sheets(tuple(best), bound)


def _plans(demands: Sequence[Demand], width: int, height: int) -> Iterator[list[Sheet]]:
    """Make one plan after the other, so that none is made once the bound is met."""
    yield [Sheet(False, strips) for strips in _stacked(fill_strips(demands, width), height)]
    yield [Sheet(True, strips) for strips in _stacked(fill_strips(_turned(demands), height), width)]
    yield _one_by_one(demands, width, height, largest_first=True)
    yield _one_by_one(demands, width, height, largest_first=False)


def least_sheets(demands: Sequence[Demand], width: int, height: int) -> int:
    """Return a number of sheets that no plan can go below.

    By area; by the pieces higher than half a sheet, which stand side by side; by those wider than half, which stand one
    above the other.
    """
    area = sum(demand.area for demand in demands)
    high = sum(
        demand.count * min(across for across, _ in demand.lies)
        for demand in demands
        if all(2 * along > height for _, along in demand.lies)
    )
    wide = sum(
        demand.count * min(along for _, along in demand.lies)
        for demand in demands
        if all(2 * across > width for across, _ in demand.lies)
    )
    large = sum(
        demand.count
        for demand in demands
        if all(2 * along > height and 2 * across > width for across, along in demand.lies)
    )
    return max(-(-area // (width * height)), -(-high // width), -(-wide // height), large)


def _turned(demands: Sequence[Demand]) -> list[Demand]:
    return [Demand(tuple((along, across) for across, along in demand.lies), demand.count) for demand in demands]


def _stacked(patterns: Sequence[Pattern], height: int) -> list[tuple[Pattern, ...]]:
    """Put finished strips into as few sheets as can be: fill each sheet as high as possible."""
    left = list(patterns)
    sheets: list[tuple[Pattern, ...]] = []
    while left:
        choices = [Choice(number, 0, pattern.height, pattern.height, 1) for number, pattern in enumerate(left)]
        chosen = sorted(choice.owner for choice, _ in best_filling(choices, height))
        sheets.append(tuple(left[number] for number in chosen))
        left = [pattern for number, pattern in enumerate(left) if number not in chosen]
    return sheets


def _one_by_one(demands: Sequence[Demand], width: int, height: int, *, largest_first: bool) -> list[Sheet]:
    """Fill one sheet after the other as full as can be, either way round."""
    left = [demand.count for demand in demands]
    sheets: list[Sheet] = []
    while any(left):
        upright = _filled(demands, left, width, height, largest_first)
        turned = _filled(_turned(demands), left, height, width, largest_first)
        is_along = _cloth(turned, demands) > _cloth(upright, demands)
        patterns = turned if is_along else upright
        counts = [sum(column) for column in zip(*(pattern.counts(len(left)) for pattern in patterns), strict=True)]
        times = min(have // count for have, count in zip(left, counts, strict=True) if count)
        sheets += [Sheet(is_along, patterns)] * times
        left = [have - times * count for have, count in zip(left, counts, strict=True)]
    return sheets


def _cloth(patterns: Sequence[Pattern], demands: Sequence[Demand]) -> int:
    return sum(
        demands[demand].lies[lie][0] * demands[demand].lies[lie][1] * count
        for pattern in patterns
        for demand, lie, count in pattern.pieces
    )


def _filled(
    demands: Sequence[Demand], counts: Sequence[int], width: int, height: int, largest_first: bool
) -> tuple[Pattern, ...]:
    left, room = list(counts), height
    patterns: list[Pattern] = []
    while True:
        strips = [strip for high in _heights(demands, left, room) if (strip := _strip(demands, left, width, high))]
        if largest_first and not patterns and strips:
            most = max(_largest(demands[place], left[place]) for place in range(len(left)))
            holding = [s for s in strips if any(_largest(demands[d], left[d]) == most for d, _, _ in s.pieces)]
            strips = holding or strips
        if not strips:
            return tuple(patterns)
        # What the rest of the sheet is worth is estimated by the same strips again.
        choices = [Choice(number, 0, s.height, _cloth([s], demands), room) for number, s in enumerate(strips)]
        chosen = best_filling(choices, room)
        best = max((strips[choice.owner] for choice, _ in chosen), key=lambda s: (_cloth([s], demands), s.height))
        patterns.append(best)
        room -= best.height
        left = [have - count for have, count in zip(left, best.counts(len(left)), strict=True)]


def _largest(demand: Demand, left: int) -> int:
    return demand.lies[0][0] * demand.lies[0][1] if left else 0


def _heights(demands: Sequence[Demand], left: Sequence[int], room: int) -> list[int]:
    heights = {along for d, count in zip(demands, left, strict=True) if count for _, along in d.lies if along <= room}
    return sorted(heights, reverse=True)


def _strip(demands: Sequence[Demand], left: Sequence[int], width: int, height: int) -> Pattern | None:
    """Return the fullest strip of this height, only as high as its highest piece."""
    choices = [
        Choice(place, number, across, across * along, left[place])
        for place, demand in enumerate(demands)
        if left[place]
        for number, (across, along) in enumerate(demand.lies)
        if along <= height and across <= width
    ]
    counts: dict[tuple[int, int], int] = {}
    for choice, count in best_filling(choices, width):
        counts[choice.owner, choice.way] = counts.get((choice.owner, choice.way), 0) + count
    if not counts:
        return None
    highest = max(demands[demand].lies[lie][1] for demand, lie in counts)
    return Pattern(highest, in_cutting_order(counts, demands))
