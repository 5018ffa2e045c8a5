"""The least cloth any strips across can do with, by linear relaxation over all strip patterns, and the way to a plan.

Each pattern is one strip: a height, and how many of each request lie in it side by side. The relaxation lets a
pattern be used a fraction of a time. Counts of strips at least so high must be whole numbers: where they are not, the
search splits into "at most" and "at least" until the bound meets the plan or the effort is used up.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import gcd
from typing import TypeAlias

from evenseam.cutting.demand import Demand, Pattern
from evenseam.cutting.simplex import Column, Effort, Row, Tableau, cheapest_cover


@dataclass(frozen=True, slots=True)
class HeightRule:
    """The strips at least this high, or the pieces of one demand in them, are at least (or at most) so many."""

    height: int
    amount: int
    is_limit: bool
    demand: int | None = None

    def counted(self, pattern: Pattern) -> int:
        """Return what one strip counts for this rule."""
        if pattern.height < self.height:
            return 0
        if self.demand is None:
            return 1
        return sum(count for demand, _, count in pattern.pieces if demand == self.demand)


_Stage: TypeAlias = tuple[list[int], int, int, int, int]
"""The table before a piece was allowed, the length it takes, demand, lie, and how many at once (0 for any number)."""


@dataclass(frozen=True, slots=True)
class Relaxed:
    """The optimum of a relaxation: no whole number of strips can do with less."""

    height: Fraction
    used: tuple[tuple[Pattern, Fraction], ...]
    prices: tuple[int, ...]
    """What one piece of each demand costs at least, over the denominator; without rules, any strips cost at least
    their pieces' prices."""
    denominator: int
    tableau: Tableau
    """Where a relaxation with one more rule may start from."""


def _never(bound: Fraction, cost: Fraction) -> bool:
    return False


@dataclass(slots=True)
class Relaxation:
    """All strip patterns of one fabric, priced when they are needed."""

    demands: Sequence[Demand]
    width: int
    effort: Effort
    patterns: list[Pattern] = field(default_factory=list)
    _known: dict[tuple[int, tuple[int, ...]], int] = field(default_factory=dict)
    _entries: list[tuple[tuple[int, int], ...]] = field(default_factory=list)
    """For each pattern, the demands it holds with their counts."""
    _counted: dict[tuple[int, int | None], list[int]] = field(default_factory=dict)
    """For each kind of rule, what the patterns count, as far as they were asked."""
    _lies: list[tuple[int, int, int, int]] = field(default_factory=list)
    """(along, across in coarse steps, demand, lie), lowest first."""
    _room: int = 0

    def __post_init__(self) -> None:
        step = gcd(*(across for demand in self.demands for across, _ in demand.lies))
        self._room = self.width // step
        self._lies = sorted(
            (along, across // step, place, number)
            for place, demand in enumerate(self.demands)
            for number, (across, along) in enumerate(demand.lies)
        )

    @property
    def heights(self) -> list[int]:
        """Every height a strip can have."""
        return sorted({along for along, _, _, _ in self._lies})

    def solve(
        self,
        rules: Sequence[HeightRule],
        penalty: int,
        start: Tableau | None = None,
        is_enough: Callable[[Fraction, Fraction], bool] = _never,
    ) -> Relaxed | None:
        """Return the optimum of the relaxation under the rules; None when effort runs out.

        `start` is where the relaxation without the last rule ended. `is_enough(bound, cost)` may end the work early.
        """
        if start is None:
            rows = [Row(demand.count) for demand in self.demands] + [Row(rule.amount, rule.is_limit) for rule in rules]
            tableau = Tableau(rows, penalty)
        else:
            last = rules[-1]
            tableau = start.with_row(
                Row(last.amount, last.is_limit), lambda number: last.counted(self.patterns[number])
            )
        optimum = cheapest_cover(tableau, _Ruled(self, rules), self.effort, is_enough)
        if optimum is None:
            return None
        used = tuple((self.patterns[number], amount) for number, amount in optimum.used)
        return Relaxed(optimum.bound, used, optimum.prices[: len(self.demands)], optimum.denominator, tableau)

    def add(self, pattern: Pattern) -> None:
        """Remember a pattern."""
        key = (pattern.height, pattern.counts(len(self.demands)))
        if key not in self._known:
            self._known[key] = len(self.patterns)
            self.patterns.append(pattern)
            self._entries.append(tuple((place, count) for place, count in enumerate(key[1]) if count))

    def counted(self, rule: HeightRule) -> list[int]:
        """Return what each pattern counts for a rule."""
        counts = self._counted.setdefault((rule.height, rule.demand), [])
        counts += [rule.counted(pattern) for pattern in self.patterns[len(counts) :]]
        return counts

    def best_known(self, prices: Sequence[int], denominator: int, rules: Sequence[HeightRule]) -> Column | None:
        """Return the known pattern whose pieces are worth most more than it costs; None when none is."""
        size = len(self.demands)
        self.effort.left -= len(self.patterns)
        costs = [
            pattern.height * denominator - sum([amount * prices[place] for place, amount in entries])
            for pattern, entries in zip(self.patterns, self._entries, strict=True)
        ]
        for rule, price in zip(rules, prices[size:], strict=True):
            if price:
                costs = [cost - price * count for cost, count in zip(costs, self.counted(rule), strict=True)]
        least = min(costs, default=0)
        if least >= 0:
            return None
        number = costs.index(least)
        entries = list(self._entries[number])
        entries += [(size + row, count) for row, rule in enumerate(rules) if (count := self.counted(rule)[number])]
        return Column(number, self.patterns[number].height, entries)

    def find(self, prices: Sequence[int], denominator: int, rules: Sequence[HeightRule]) -> tuple[int, int]:
        """Remember for each height the strip whose pieces are worth most, where that is more than the strip costs.

        Return worth and height of the one worth most for its height.
        """
        size = len(self.demands)
        self.effort.left -= len(self._lies) * self._room
        table = [0] * (self._room + 1)
        stages: list[_Stage] = []
        most, paid = 0, 1
        worth = list(prices[:size])
        crossed: set[int] = set()
        for position, (along, across, place, number) in enumerate(self._lies):
            changed = {row for row, rule in enumerate(rules) if rule.height <= along} - crossed
            crossed |= changed
            bonuses = [row for row in changed if rules[row].demand is not None and prices[size + row]]
            for row in bonuses:
                worth[rules[row].demand or 0] += prices[size + row]
            if bonuses:
                # Some pieces are worth more or less from this height on, so lower ones are weighed again.
                table, stages = [0] * (self._room + 1), []
                for _, lower_across, lower_place, lower_number in self._lies[:position]:
                    table = self._extend(table, stages, lower_across, worth[lower_place], lower_place, lower_number)
            table = self._extend(table, stages, across, worth[place], place, number)
            if position + 1 < len(self._lies) and self._lies[position + 1][0] == along:
                continue
            value = table[self._room] + sum(prices[size + row] for row in crossed if rules[row].demand is None)
            if value > along * denominator:
                self.add(Pattern(along, _traced(table, stages, self._room)))
            if value * paid > most * along:
                most, paid = value, along
        return most, paid

    def _extend(
        self,
        table: list[int],
        stages: list[_Stage],
        across: int,
        price: int,
        place: int,
        number: int,
    ) -> list[int]:
        room = self._room
        if price <= 0:
            return table
        most = min(self.demands[place].count, room // across)
        if most == room // across:
            after = table[:across]
            for start in range(across, room + 1, across):
                rest = zip(table[start : start + across], after[start - across : start], strict=False)
                after += [old if old > (new := less + price) else new for old, less in rest]
            stages.append((table, across, place, number, 0))
            return after
        portion = 1
        while most > 0:
            taken = min(portion, most)
            length, worth_taken = taken * across, taken * price
            rest = zip(table[length:], table, strict=False)
            after = table[:length] + [old if old > (new := less + worth_taken) else new for old, less in rest]
            stages.append((table, length, place, number, taken))
            table = after
            most -= taken
            portion *= 2
        return table


@dataclass(frozen=True, slots=True)
class _Ruled:
    """The patterns of a relaxation under its rules."""

    relaxation: Relaxation
    rules: Sequence[HeightRule]

    def best_known(self, prices: Sequence[int], denominator: int) -> Column | None:
        """Return the known pattern that is worth most more than it costs."""
        return self.relaxation.best_known(prices, denominator, self.rules)

    def find(self, prices: Sequence[int], denominator: int) -> tuple[int, int]:
        """Make better patterns known."""
        return self.relaxation.find(prices, denominator, self.rules)


def _traced(table: list[int], stages: Sequence[_Stage], room: int) -> tuple[tuple[int, int, int], ...]:
    counts: dict[tuple[int, int], int] = {}
    place = room
    for before, length, demand, lie, taken in reversed(stages):
        if taken:
            if table[place] != before[place]:
                counts[demand, lie] = counts.get((demand, lie), 0) + taken
                place -= length
        else:
            while table[place] != before[place]:
                counts[demand, lie] = counts.get((demand, lie), 0) + 1
                place -= length
        table = before
    return tuple((demand, lie, count) for (demand, lie), count in sorted(counts.items()))
