"""A small linear program solved with whole numbers only: cover every demand with columns at least cost.

Every entry is a whole number over one common denominator, and every division is exact (fraction-free pivoting), so
the optimum and its prices are exact and the same on every machine.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from operator import mul
from typing import TypeAlias

Column = tuple[int, tuple[int, ...]]
"""Cost, and how much of each row one unit of the column covers."""


@dataclass(frozen=True, slots=True)
class Row:
    """One demand: at least (or, if `is_limit`, at most) this much."""

    amount: int
    is_limit: bool = False


@dataclass(frozen=True, slots=True)
class Optimum:
    """The least cost, and how much of which column."""

    cost: Fraction
    used: tuple[tuple[Column, Fraction], ...]
    is_possible: bool
    """False when the rows contradict each other; the cost is then only a bound that no choice goes below."""
    prices: tuple[Fraction, ...]
    """What one more of each row costs: no column covers more worth than it costs."""


@dataclass(slots=True)
class Effort:
    """Counts steps of arithmetic, so that a search ends after so much work, never after so much time."""

    left: int


class _Tableau:
    def __init__(self, rows: Sequence[Row], penalty: int) -> None:
        size = len(rows)
        self.rows = rows
        self.costs = [penalty] * size
        self.columns: list[Column | None] = [None] * size
        self.is_filler = [True] * size
        self.denominator = 1
        # Each line: the inverse of the basis, then the amount of its column that is used; all over the denominator.
        self.lines = [[int(place == other) for other in range(size)] + [row.amount] for place, row in enumerate(rows)]

    def prices(self) -> list[int]:
        # Column by column, so that the sums of products run without a step of Python for each.
        columns = list(zip(*self.lines, strict=True))
        return [sum(map(mul, self.costs, column)) for column in columns[:-1]]

    def enter(self, column: Column | None, cost: int, covers: Sequence[int]) -> bool:
        size = len(self.rows)
        entries = [(place, amount) for place, amount in enumerate(covers) if amount]
        change = [0] * size
        for place, amount in entries:
            change = [so_far + line[place] * amount for so_far, line in zip(change, self.lines, strict=True)]
        leaving = -1
        for place in range(size):
            if change[place] > 0 and (
                leaving < 0 or self.lines[place][size] * change[leaving] < self.lines[leaving][size] * change[place]
            ):
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
        self.costs[leaving], self.columns[leaving], self.is_filler[leaving] = cost, column, False
        return True


def cheapest_cover(
    rows: Sequence[Row],
    pool: list[Column],
    find_columns: Callable[[Sequence[int], int], Sequence[Column]],
    penalty: int,
    effort: Effort,
) -> Optimum | None:
    """Return the optimum over all columns, known ones first, new ones from `find_columns`; None when effort runs out.

    `find_columns(prices, denominator)` returns columns whose covered prices exceed cost × denominator, or nothing
    when there is none. New columns are added to the pool.
    """
    tableau = _Tableau(rows, penalty)
    size = len(rows)
    thin = [_thin(column) for column in pool]
    while True:
        if effort.left <= 0:
            return None
        effort.left -= size * size + len(pool) * size // 4
        prices = tableau.prices()
        slack = _slack_to_enter(rows, prices)
        if slack is not None:
            covers = [0] * size
            covers[slack] = 1 if rows[slack].is_limit else -1
            if not tableau.enter(None, 0, covers):
                return None
            continue
        column = _best(thin, prices, tableau.denominator)
        if column is None:
            found = find_columns(prices, tableau.denominator)
            pool.extend(found)
            thin += [_thin(column) for column in found]
            column = _best(thin[len(thin) - len(found) :], prices, tableau.denominator)
        if column is None:
            break
        if not tableau.enter(column, column[0], column[1]):
            return None
    cost = Fraction(
        sum(cost * line[size] for cost, line in zip(tableau.costs, tableau.lines, strict=True)), tableau.denominator
    )
    used = tuple(
        (column, Fraction(line[size], tableau.denominator))
        for column, line in zip(tableau.columns, tableau.lines, strict=True)
        if column is not None and line[size]
    )
    is_possible = not any(filler and line[size] for filler, line in zip(tableau.is_filler, tableau.lines, strict=True))
    priced = tuple(Fraction(price, tableau.denominator) for price in tableau.prices())
    return Optimum(cost, used, is_possible, priced)


def _slack_to_enter(rows: Sequence[Row], prices: Sequence[int]) -> int | None:
    best, worst = None, 0
    for place, (row, price) in enumerate(zip(rows, prices, strict=True)):
        reduced = -price if row.is_limit else price
        if reduced < worst:
            best, worst = place, reduced
    return best


_Thin: TypeAlias = tuple[int, tuple[tuple[int, int], ...], Column]
"""Cost, the rows a column covers with how much of each, and the column: most columns cover few rows."""


def _thin(column: Column) -> _Thin:
    cost, covers = column
    return cost, tuple((place, amount) for place, amount in enumerate(covers) if amount), column


def _best(columns: Sequence[_Thin], prices: Sequence[int], denominator: int) -> Column | None:
    best, least = None, 0
    for cost, covers, column in columns:
        reduced = cost * denominator
        for place, amount in covers:
            reduced -= amount * prices[place]
        if reduced < least:
            best, least = column, reduced
    return best
