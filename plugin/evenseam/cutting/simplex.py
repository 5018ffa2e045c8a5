"""A small linear program solved with whole numbers only: cover every demand with columns at least cost.

Every entry is a whole number over one common denominator, and every division is exact (fraction-free pivoting), so
the optimum and its prices are exact and the same on every machine.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from operator import mul
from typing import Protocol, TypeAlias

Entries: TypeAlias = Sequence[tuple[int, int]]
"""The rows a column covers, with how much of each: most columns cover few rows."""


@dataclass(frozen=True, slots=True)
class Column:
    """Something that can be used: its number, what it costs, and what it covers."""

    number: int
    cost: int
    entries: Entries


@dataclass(frozen=True, slots=True)
class Row:
    """One demand: at least (or, if `is_limit`, at most) this much."""

    amount: int
    is_limit: bool = False


class Columns(Protocol):
    """All columns there are, the known ones at hand and the others found when they are worth it."""

    def best_known(self, prices: Sequence[int], denominator: int) -> Column | None:
        """Return the known column that covers most more than it costs × denominator; None when none does."""

    def find(self, prices: Sequence[int], denominator: int) -> tuple[int, int]:
        """Make better columns known; return the worth and the cost of one that covers most for what it costs."""


@dataclass(frozen=True, slots=True)
class Optimum:
    """The least cost, and how much of which column; or, where less was enough, a bound and what was used so far."""

    bound: Fraction
    """No choice costs less."""
    used: tuple[tuple[int, Fraction], ...]
    prices: tuple[int, ...]
    """What one more of each row costs, over the denominator: no column covers more worth than it costs."""
    denominator: int


@dataclass(slots=True)
class Effort:
    """Counts steps of arithmetic, so that a search ends after so much work, never after so much time."""

    left: int


_SLACK = -1


class Tableau:
    """A choice of columns that covers all rows, and its inverse; what no column covers yet is filled at a penalty."""

    def __init__(self, rows: Sequence[Row], penalty: int) -> None:
        size = len(rows)
        self.rows = tuple(rows)
        self.penalty = penalty
        self.costs = [penalty] * size
        self.columns = [_SLACK] * size
        self.denominator = 1
        # Each line: the inverse of the basis, then the amount of its column that is used; all over the denominator.
        self.lines = [[int(place == other) for other in range(size)] + [row.amount] for place, row in enumerate(rows)]

    def with_row(self, row: Row, covers: Callable[[int], int]) -> Tableau:
        """Return the same choice under one more row, of which `covers` tells how much each column covers."""
        size = len(self.rows)
        covered = [0] * (size + 1)
        for number, line in zip(self.columns, self.lines, strict=True):
            amount = 0 if number == _SLACK else covers(number)
            if amount:
                covered = [so_far + amount * entry for so_far, entry in zip(covered, line, strict=True)]
        missing = row.amount * self.denominator - covered[size]
        # What is missing is filled, what is too much is taken away, both at the penalty.
        sign = 1 if missing >= 0 else -1
        other = object.__new__(Tableau)
        other.rows = (*self.rows, row)
        other.penalty = self.penalty
        other.costs = [*self.costs, self.penalty]
        other.columns = [*self.columns, _SLACK]
        other.denominator = self.denominator
        other.lines = [[*line[:size], 0, line[size]] for line in self.lines]
        other.lines.append([*(-sign * entry for entry in covered[:size]), sign * self.denominator, sign * missing])
        return other

    def prices(self) -> list[int]:
        """Return what one more of each row costs, times the denominator."""
        # Column by column, so that the sums of products run without a step of Python for each.
        columns = list(zip(*self.lines, strict=True))
        return [sum(map(mul, self.costs, column)) for column in columns[:-1]]

    def cost(self) -> int:
        """Return what everything used costs, times the denominator."""
        size = len(self.rows)
        return sum(cost * line[size] for cost, line in zip(self.costs, self.lines, strict=True))

    def used(self) -> tuple[tuple[int, Fraction], ...]:
        """Return how much of which column is used."""
        return tuple(
            (number, Fraction(line[-1], self.denominator))
            for number, line in zip(self.columns, self.lines, strict=True)
            if number != _SLACK and line[-1]
        )

    def _is_used_up_before(self, place: int, other: int, change: Sequence[int]) -> bool:
        """Tell whether one column is used up before another; where both are at once, by the rest of their lines.

        The rest decides as if every row asked for a hair more than it does, the newest rows for most: then no two are
        ever used up at once, the work goes strictly down, and no choice of columns comes twice.
        """
        mine, its = self.lines[place], self.lines[other]
        for at in range(len(self.rows), -1, -1):
            difference = mine[at] * change[other] - its[at] * change[place]
            if difference:
                return difference < 0
        return False

    def enter(self, number: int, cost: int, entries: Entries) -> bool:
        """Use as much of a column as can be, in place of the one that is used up first; False when there is none."""
        size = len(self.rows)
        change = [sum([line[place] * amount for place, amount in entries]) for line in self.lines]
        leaving = -1
        for place in range(size):
            if change[place] > 0 and (leaving < 0 or self._is_used_up_before(place, leaving, change)):
                leaving = place
        if leaving < 0:
            return False
        pivot, old, pivot_line = change[leaving], self.denominator, self.lines[leaving]
        for place in range(size):
            if place != leaving:
                factor, line = change[place], self.lines[place]
                if factor:
                    self.lines[place] = [
                        (entry * pivot - factor * other) // old for entry, other in zip(line, pivot_line, strict=True)
                    ]
                elif pivot != old:
                    self.lines[place] = [entry * pivot // old for entry in line]
        self.denominator = pivot
        self.costs[leaving], self.columns[leaving] = cost, number
        return True


def cheapest_cover(
    tableau: Tableau, columns: Columns, effort: Effort, is_enough: Callable[[Fraction, Fraction], bool]
) -> Optimum | None:
    """Return the optimum over all columns, known ones first, then those that are found; None when effort runs out.

    `is_enough(bound, cost)` may end the work early, when it need not be known how far above the bound the optimum is.
    The tableau is left at the last choice.
    """
    size = len(tableau.rows)
    while True:
        if effort.left <= 0:
            return None
        effort.left -= 2 * size * size
        prices, denominator = tableau.prices(), tableau.denominator
        slack = _slack_to_enter(tableau.rows, prices)
        if slack is not None:
            if not tableau.enter(_SLACK, 0, ((slack, 1 if tableau.rows[slack].is_limit else -1),)):
                return None
            continue
        column = columns.best_known(prices, denominator)
        if column is None:
            worth, paid = columns.find(prices, denominator)
            cost = tableau.cost()
            if worth <= paid * denominator:
                return Optimum(Fraction(cost, denominator), tableau.used(), tuple(prices), denominator)
            # Prices so much lower that no column is worth more than it costs are a bound as well.
            bound = Fraction(cost * paid, worth)
            if is_enough(bound, Fraction(cost, denominator)):
                return Optimum(bound, tableau.used(), tuple(price * paid for price in prices), worth)
            column = columns.best_known(prices, denominator)
        if column is None or not tableau.enter(column.number, column.cost, column.entries):
            return None


def _slack_to_enter(rows: Sequence[Row], prices: Sequence[int]) -> int | None:
    best, worst = None, 0
    for place, (row, price) in enumerate(zip(rows, prices, strict=True)):
        reduced = -price if row.is_limit else price
        if reduced < worst:
            best, worst = place, reduced
    return best
