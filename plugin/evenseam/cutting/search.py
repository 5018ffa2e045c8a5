"""The shortest strips across, with a proof or with the bound the proof reached."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from heapq import heappop, heappush
from operator import mul

from evenseam.cutting.covering import HeightRule, Relaxation, Relaxed
from evenseam.cutting.demand import Demand, Pattern, total_height
from evenseam.cutting.simplex import Effort, Tableau
from evenseam.cutting.strips import Floor, fill_low, fill_strips, filling_steps, in_cutting_order, most_ways
from evenseam.exact import ceiling, floor

MOST_STEPS = 20_000_000
"""Steps of arithmetic for one fabric, about a second of plain Python."""
MOST_NODES = 300
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


@dataclass(frozen=True, slots=True)
class _Node:
    """Part of what is left to search: all plans that keep these rules."""

    rules: tuple[HeightRule, ...] = ()
    start: Tableau | None = None
    """Where the relaxation without the last rule ended."""


class StripSearch:
    """A search for the shortest strips across that can be interrupted and taken up again.

    `as_good_from` names the least height that is no better than another: nothing is searched between the two.
    The effort is limited by counts of steps and nodes, so the answer is the same on every machine.
    """

    def __init__(
        self,
        demands: Sequence[Demand],
        width: int,
        steps: int = MOST_STEPS,
        as_good_from: Callable[[int], int] = int,
    ) -> None:
        self.demands = demands
        self.width = width
        self.as_good_from = as_good_from
        self.best = fill_strips(demands, width, most_ways(demands, width, steps // 10)) if demands else ()
        self.height = total_height(self.best)
        self.limit = min(self.height, as_good_from(self.height))
        """Plans as high as this are of no use."""
        self.simple = simple_bound(demands, width) if demands else 0
        self.bound = min(self.simple, self.height)
        self.is_over = self.bound >= self.limit
        self.nodes = 0
        self.stuck = self.height
        """The least bound of a node that could neither be split nor be made a plan."""
        self.effort = Effort(steps)
        self.heap: list[tuple[int, int, _Node]] = []
        self.rests: dict[tuple[int, ...], tuple[int, tuple[Pattern, ...] | None]] = {}
        """Strips for what was missing before, by what it was, and how high they were allowed to be."""

    def solved(self) -> Solved:
        """Return the best strips found so far, and the bound proven so far."""
        return Solved(self.best, min(self.bound, self.height))

    def beat(self, height: int) -> None:
        """Search only for strips lower than this, because there is something else that is so high."""
        self.limit = min(self.limit, self.as_good_from(height))
        self.is_over = self.is_over or self.bound >= self.limit

    def go_on(self, nodes: int) -> None:
        """Search until nothing better is possible, or until so many nodes were visited."""
        if self.is_over or not nodes:
            return
        if not self.nodes:
            self._start()
        while self.heap and not self.is_over:
            self.bound = min(self.heap[0][0], self.stuck)
            if self.bound >= self.limit:
                self.is_over = True
            elif self.nodes >= nodes:
                break
            elif not self._visit():
                self.is_over = True
        if not self.heap and self.nodes:
            self.bound, self.is_over = self.stuck, True

    def _start(self) -> None:
        self.relaxation = Relaxation(self.demands, self.width, self.effort)
        for pattern in self.best:
            self.relaxation.add(pattern)
        self.floor = Floor.by_area(self.demands, self.width)
        """By area, then by the prices of the relaxation without rules."""
        self.sums = _sums(self.relaxation.heights, self.height)
        """Bit h is set when some strips together are h high."""
        self.penalty = 8 * self.height
        heappush(self.heap, (self._reachable(Fraction(self.simple)), 0, _Node()))

    def _offer(self, patterns: tuple[Pattern, ...]) -> None:
        # Only a shorter plan replaces the constructive one: among equals that one is easier to follow.
        height = total_height(patterns)
        if height < self.height:
            self.best, self.height = patterns, height
            self.limit = min(self.limit, self.as_good_from(height))

    def _reachable(self, height: Fraction) -> int:
        """Return the least height at or above this one that strips can add up to."""
        least = ceiling(height)
        above = self.sums >> least
        return least + ((above & -above).bit_length() - 1) if above else self.height

    def _is_enough(self, bound: Fraction, cost: Fraction) -> bool:
        """Tell whether it need not be known how far above the bound a relaxation is."""
        least = self._reachable(bound)
        return least >= self.limit

    def _visit(self) -> bool:
        """Work on the most promising node; return False when the effort is used up."""
        bound, _, node = self.heap[0]
        relaxed = self.relaxation.solve(node.rules, self.penalty, node.start, self._is_enough)
        if relaxed is None:
            return False
        heappop(self.heap)
        self.nodes += 1
        if not node.rules:
            self.floor = Floor(relaxed.prices, relaxed.denominator)
        bound = max(bound, self._reachable(relaxed.height))
        if bound >= self.limit:
            self.stuck = min(self.stuck, bound)
            return True
        self._round(relaxed)
        if bound < self.limit and self.nodes == 1:
            self._dive(relaxed)
        split = _split(relaxed) if bound < self.limit else None
        if split is None:
            # Nothing better is here, or whole numbers of strips and pieces at every height, yet no such plan was found.
            self.stuck = min(self.stuck, bound)
            return True
        height, amount, demand = split
        fewer, more = HeightRule(height, amount, True, demand), HeightRule(height, amount + 1, False, demand)
        # Among equally promising nodes the newest comes first: the search goes deep and meets whole plans early.
        heappush(self.heap, (bound, -2 * self.nodes, _Node((*node.rules, fewer), relaxed.tableau)))
        heappush(self.heap, (bound, -2 * self.nodes - 1, _Node((*node.rules, more), relaxed.tableau)))
        return True

    def _round(self, relaxed: Relaxed) -> None:
        """Make whole plans of a fractional one: take patterns rounded down, then more of those nearest to one more."""
        by_rest = sorted(relaxed.used, key=lambda use: (-(use[1] - floor(use[1])), -use[0].height, use[0].pieces))
        whole = [(pattern, floor(amount)) for pattern, amount in by_rest]
        fractional = [pattern for pattern, amount in by_rest if amount != floor(amount)]
        few = {0, 1, 2, len(fractional) // 2, len(fractional) - 1, len(fractional)}
        for more in sorted(few & set(range(len(fractional) + 1))):
            chosen = [pattern for pattern, times in whole for _ in range(times)] + fractional[:more]
            self._complete(chosen)

    def _dive(self, relaxed: Relaxed) -> None:
        """Fix strips step by step, solving the relaxation anew for what is left after each."""
        chosen: list[Pattern] = []
        left = [demand.count for demand in self.demands]
        effort = Effort(self.effort.left // _SHARE_OF_A_DIVE)
        used = relaxed.used
        while used:
            step = [pattern for pattern, amount in used for _ in range(floor(amount))]
            if not step:
                step = [max(used, key=lambda use: (use[1], use[0].height, use[0].pieces))[0]]
            chosen += step
            for pattern in step:
                for place, count in enumerate(pattern.counts(len(left))):
                    left[place] = max(0, left[place] - count)
            places = [place for place, count in enumerate(left) if count]
            if not places:
                break
            rest = Relaxation([Demand(self.demands[place].lies, left[place]) for place in places], self.width, effort)
            solved = rest.solve((), self.penalty, is_enough=_is_near)
            if solved is None:
                break
            used = tuple(
                (Pattern(one.height, tuple((places[d], lie, n) for d, lie, n in one.pieces)), amount)
                for one, amount in solved.used
            )
            self._complete(chosen)
        self._complete(chosen)

    def _complete(self, chosen: Sequence[Pattern]) -> None:
        """Offer the chosen strips without the pieces they have too many, and strips for what is missing."""
        demands = self.demands
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
            room = self.limit - 1 - total_height(kept)
            worth = sum(map(mul, self.floor.prices, left))
            if worth > room * self.floor.denominator:
                return
            rest = [Demand(demands[place].lies, left[place]) for place in places]
            if simple_bound(rest, self.width) > room:
                return
            filled = self._fill_rest(left, places, rest, room)
            if filled is None:
                return
            kept += [Pattern(p.height, tuple((places[d], lie, n) for d, lie, n in p.pieces)) for p in filled]
        self._offer(tuple(kept))

    def _fill_rest(
        self, left: Sequence[int], places: Sequence[int], rest: Sequence[Demand], limit: int
    ) -> tuple[Pattern, ...] | None:
        """Return strips for what is missing, at most so high; None when there are none."""
        allowed, filled = self.rests.get(tuple(left), (-1, None))
        if filled is None and limit > allowed:
            self.effort.left -= _WAYS_OF_A_REST * filling_steps(rest, self.width)
            # The relaxation's prices show early that strips will be too high, long before the last one is filled.
            floor = Floor(tuple(self.floor.prices[place] for place in places), self.floor.denominator)
            filled = fill_low(rest, self.width, _WAYS_OF_A_REST, floor, limit)
            self.rests[tuple(left)] = limit, filled
        return filled


def shortest_strips(
    demands: Sequence[Demand],
    width: int,
    steps: int = MOST_STEPS,
    nodes: int = MOST_NODES,
    as_good_from: Callable[[int], int] = int,
) -> Solved:
    """Return the best strips found for all demands across cloth of this width, and the proven bound."""
    search = StripSearch(demands, width, steps, as_good_from)
    search.go_on(nodes)
    return search.solved()


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


def _is_near(bound: Fraction, cost: Fraction) -> bool:
    return ceiling(bound) >= ceiling(cost)


def _sums(heights: Sequence[int], most: int) -> int:
    sums, inside = 1, (1 << (most + 1)) - 1
    for height in heights:
        shift = height
        while shift <= most:
            sums |= (sums << shift) & inside
            shift *= 2
    return sums


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
