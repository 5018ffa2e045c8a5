"""The shortest strips across, with a proof or with the bound the proof reached."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from heapq import heappop, heappush
from math import lcm
from operator import mul

from evenseam.cutting.covering import HeightRule, Relaxation, Relaxed
from evenseam.cutting.demand import Demand, Pattern, total_height
from evenseam.cutting.simplex import Effort
from evenseam.cutting.strips import Floor, fill_low, fill_strips, filling_steps, in_cutting_order, most_ways
from evenseam.exact import ceiling, floor

MOST_STEPS = 20_000_000
"""Steps of arithmetic for one fabric, about a second of plain Python."""
MOST_NODES = 120
_SHARE_OF_A_DIVE = 5
"""A dive may use one part in so many of the effort."""
_WAYS_OF_A_REST = 4


@dataclass(frozen=True, slots=True)
class Solved:
    """Strips for all demands, and a height no strips can go below."""

    patterns: tuple[Pattern, ...]
    bound: int

    @property
    def is_shortest(self) -> bool:
        """True when the strips reach the bound."""
        return total_height(self.patterns) == self.bound


@dataclass(slots=True)
class _Search:
    demands: Sequence[Demand]
    width: int
    relaxation: Relaxation
    best: tuple[Pattern, ...]
    floor: Floor
    """By area, then by the prices of the relaxation without rules."""
    sums: int
    """Bit h is set when some strips together are h high."""
    heap: list[tuple[int, int, tuple[HeightRule, ...]]] = field(default_factory=list)
    nodes: int = 0
    stuck: int = 0
    """The least bound of a node that could neither be split nor be made a plan."""
    as_good_from: Callable[[int], int] = int
    """The least height that is no better than this one."""
    limit: int = 0
    """Plans as high as this are of no use."""
    rests: dict[tuple[int, ...], tuple[int, tuple[Pattern, ...] | None]] = field(default_factory=dict)
    """Strips for what was missing before, by what it was, and how high they were allowed to be."""

    @property
    def height(self) -> int:
        return total_height(self.best)

    def offer(self, patterns: tuple[Pattern, ...]) -> None:
        # Only a shorter plan replaces the constructive one: among equals that one is easier to follow.
        if total_height(patterns) < self.height:
            self.best = patterns
            self.limit = min(self.limit, self.as_good_from(self.height))

    def reachable(self, height: Fraction) -> int:
        """Return the least height at or above this one that strips can add up to."""
        least = ceiling(height)
        above = self.sums >> least
        return least + ((above & -above).bit_length() - 1) if above else self.height


def shortest_strips(
    demands: Sequence[Demand],
    width: int,
    steps: int = MOST_STEPS,
    nodes: int = MOST_NODES,
    as_good_from: Callable[[int], int] = int,
) -> Solved:
    """Return the best strips found for all demands across cloth of this width, and the proven bound.

    `as_good_from` names the least height that is no better than another: nothing is searched between the two.
    The effort is limited by counts of steps and nodes, so the answer is the same on every machine.
    """
    if not demands:
        return Solved((), 0)
    effort = Effort(steps)
    best = fill_strips(demands, width, most_ways(demands, width, steps // 10))
    relaxation = Relaxation(demands, width, effort)
    for pattern in best:
        relaxation.add(pattern)
    sums = _sums(relaxation.heights, total_height(best))
    search = _Search(demands, width, relaxation, best, Floor.by_area(demands, width), sums)
    search.stuck = search.height
    search.as_good_from, search.limit = as_good_from, min(search.height, as_good_from(search.height))
    heappush(search.heap, (search.reachable(Fraction(simple_bound(demands, width))), 0, ()))
    bound = search.height
    while search.heap:
        bound = search.heap[0][0]
        if bound >= search.limit or search.nodes >= nodes or not _visit(search):
            break
    else:
        bound = search.height
    return Solved(search.best, min(bound, search.stuck, search.height))


def simple_bound(demands: Sequence[Demand], width: int) -> int:
    """Return the height the pieces need by area, or because some cannot lie beside each other.

    Pieces wider than half the cloth lie one above the other, and so does any piece that leaves too little beside it.
    """
    area = sum(demand.area for demand in demands)
    return max(-(-area // width), *(_above(demand, demands, width) for demand in demands))


def _above(demand: Demand, demands: Sequence[Demand], width: int) -> int:
    """Return the height of one piece of a demand and of all that cannot lie beside it nor beside each other."""
    heights = []
    for across, along in demand.lies:
        room = max(width - across, width // 2)
        height = along
        for other in demands:
            if all(wide > room for wide, _ in other.lies):
                number = other.count - (other is demand)
                height += number * min(high for _, high in other.lies)
        heights.append(height)
    return min(heights)


def _sums(heights: Sequence[int], most: int) -> int:
    sums, inside = 1, (1 << (most + 1)) - 1
    for height in heights:
        shift = height
        while shift <= most:
            sums |= (sums << shift) & inside
            shift *= 2
    return sums


def _visit(search: _Search) -> bool:
    """Work on the most promising node; return False when the effort is used up."""
    bound, _, rules = search.heap[0]
    relaxed = search.relaxation.solve(rules, 8 * search.height)
    if relaxed is None:
        return False
    heappop(search.heap)
    search.nodes += 1
    if not rules:
        denominator = lcm(*(price.denominator for price in relaxed.prices))
        search.floor = Floor(tuple(int(price * denominator) for price in relaxed.prices), denominator)
    bound = max(bound, search.reachable(relaxed.height))
    if bound >= search.limit:
        search.stuck = min(search.stuck, bound)
        return True
    _round(search, relaxed)
    if bound < search.limit and search.nodes == 1:
        _dive(search, relaxed)
    if bound >= search.limit:
        search.stuck = min(search.stuck, bound)
        return True
    split = _split(relaxed)
    if split is None:
        # Whole numbers of strips and pieces at every height, yet no such plan was found: stays open.
        search.stuck = min(search.stuck, bound)
        return True
    height, amount, demand = split
    fewer, more = HeightRule(height, amount, True, demand), HeightRule(height, amount + 1, False, demand)
    # Among equally promising nodes the newest comes first: the search goes deep and meets whole plans early.
    heappush(search.heap, (bound, -2 * search.nodes, (*rules, fewer)))
    heappush(search.heap, (bound, -2 * search.nodes - 1, (*rules, more)))
    return True


def _split(relaxed: Relaxed) -> tuple[int, int, int | None] | None:
    """Return a height from which on a count is not whole, the count rounded down, and whose (None: strips)."""
    heights = sorted({pattern.height for pattern, _ in relaxed.used}, reverse=True)
    demands = sorted({demand for pattern, _ in relaxed.used for demand, _, _ in pattern.pieces})
    for group in ([None], demands):
        found: tuple[Fraction, int, int, int | None] | None = None
        for demand in group:
            for height in heights:
                rule = HeightRule(height, 0, False, demand)
                total = sum((amount * rule.counted(pattern) for pattern, amount in relaxed.used), Fraction(0))
                below = floor(total)
                distance = abs(total - below - Fraction(1, 2))
                if total != below and (found is None or distance < found[0]):
                    found = (distance, height, below, demand)
        if found:
            return found[1:]
    return None


def _round(search: _Search, relaxed: Relaxed) -> None:
    """Make whole plans of a fractional one: take patterns rounded down, then more of those nearest to one more."""
    by_rest = sorted(relaxed.used, key=lambda use: (-(use[1] - floor(use[1])), -use[0].height, use[0].pieces))
    whole = [(pattern, floor(amount)) for pattern, amount in by_rest]
    fractional = [pattern for pattern, amount in by_rest if amount != floor(amount)]
    few = {0, 1, 2, len(fractional) // 2, len(fractional) - 1, len(fractional)}
    for more in sorted(few & set(range(len(fractional) + 1))):
        chosen = [pattern for pattern, times in whole for _ in range(times)] + fractional[:more]
        _complete(search, chosen)


def _dive(search: _Search, relaxed: Relaxed) -> None:
    """Fix strips step by step, solving the relaxation anew for what is left after each."""
    chosen: list[Pattern] = []
    left = [demand.count for demand in search.demands]
    effort = Effort(search.relaxation.effort.left // _SHARE_OF_A_DIVE)
    while relaxed.used:
        step = [pattern for pattern, amount in relaxed.used for _ in range(floor(amount))]
        if not step:
            step = [max(relaxed.used, key=lambda use: (use[1], use[0].height, use[0].pieces))[0]]
        chosen += step
        for pattern in step:
            for place, count in enumerate(pattern.counts(len(left))):
                left[place] = max(0, left[place] - count)
        places = [place for place, count in enumerate(left) if count]
        if not places:
            break
        rest = Relaxation([Demand(search.demands[place].lies, left[place]) for place in places], search.width, effort)
        solved = rest.solve((), 8 * search.height)
        if solved is None:
            break
        relaxed = Relaxed(
            solved.height,
            tuple(
                (Pattern(one.height, tuple((places[d], lie, n) for d, lie, n in one.pieces)), amount)
                for one, amount in solved.used
            ),
            (),
        )
        _complete(search, chosen)
    _complete(search, chosen)


def _complete(search: _Search, chosen: Sequence[Pattern]) -> None:
    """Offer the chosen strips without the pieces they have too many, and strips for what is missing."""
    demands = search.demands
    left = [demand.count for demand in demands]
    kept: list[Pattern] = []
    for pattern in sorted(chosen, key=lambda one: -one.height):
        counts: dict[tuple[int, int], int] = {}
        for demand, lie, count in pattern.pieces:
            taken = min(count, left[demand])
            left[demand] -= taken
            if taken:
                counts[demand, lie] = taken
        if counts:
            pieces = in_cutting_order(counts, demands)
            kept.append(Pattern(max(demands[demand].lies[lie][1] for demand, lie, _ in pieces), pieces))
    places = [place for place, count in enumerate(left) if count]
    if places:
        # Most attempts cannot become shorter than the plan there is; those are not worked out.
        room = search.limit - 1 - total_height(kept)
        worth = sum(map(mul, search.floor.prices, left))
        if worth > room * search.floor.denominator:
            return
        rest = [Demand(demands[place].lies, left[place]) for place in places]
        if simple_bound(rest, search.width) > room:
            return
        filled = _fill_rest(search, left, places, rest, room)
        if filled is None:
            return
        kept += [Pattern(p.height, tuple((places[d], lie, n) for d, lie, n in p.pieces)) for p in filled]
    search.offer(tuple(kept))


def _fill_rest(
    search: _Search, left: Sequence[int], places: Sequence[int], rest: Sequence[Demand], limit: int
) -> tuple[Pattern, ...] | None:
    """Return strips for what is missing, at most so high; None when there are none."""
    allowed, filled = search.rests.get(tuple(left), (-1, None))
    if filled is None and limit > allowed:
        search.relaxation.effort.left -= _WAYS_OF_A_REST * filling_steps(rest, search.width)
        # The relaxation's prices show early that strips will be too high, long before the last one is filled.
        floor = Floor(tuple(search.floor.prices[place] for place in places), search.floor.denominator)
        filled = fill_low(rest, search.width, _WAYS_OF_A_REST, floor, limit)
        search.rests[tuple(left)] = limit, filled
    return filled
