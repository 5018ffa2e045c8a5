"""Small cases against general-purpose solvers: OR-Tools CP-SAT for whole plans, HiGHS for the relaxation."""

from __future__ import annotations

from fractions import Fraction
from itertools import product
from random import Random

import pytest
from evenseam.cutting.covering import Relaxation
from evenseam.cutting.demand import Demand, total_height
from evenseam.cutting.search import StripSearch, shortest_strips
from evenseam.cutting.simplex import Effort
from support.strip_reference import least_height


def small_case(seed: int) -> tuple[list[Demand], int]:
    """Return a few kinds of pieces in half inches, and the width of the cloth."""
    random = Random(seed)
    width = random.choice((36, 42, 80, 84))
    demands = []
    for _ in range(random.randint(1, 4)):
        across, along = random.randint(3, 30), random.randint(3, 24)
        lies = (
            ((across, along),) if across == along or random.randint(0, 3) == 0 else ((across, along), (along, across))
        )
        demands.append(Demand(lies, random.choice((1, 2, 3, 4, 5, 7))))
    return demands, width


@pytest.mark.parametrize("seed", range(60))
def test_plans_are_as_short_as_a_constraint_solver_finds(seed):
    pytest.importorskip("ortools", reason="OR-Tools is an extra for tests")
    demands, width = small_case(seed)
    solved = shortest_strips(demands, width)
    height = total_height(solved.patterns)
    reference, is_certain = least_height([(demand.lies, demand.count) for demand in demands], width, height, 5)
    if solved.is_shortest:
        assert reference >= height
    assert reference >= solved.bound
    if is_certain:
        assert solved.bound <= reference <= height


def test_nearly_all_small_cases_are_proved():
    proved = sum(shortest_strips(*small_case(seed)).is_shortest for seed in range(200))
    assert proved >= 195


def test_ties_between_strips_never_send_the_search_in_circles():
    """Many strips here are used up at once: by their first tie alone the same choices came back without an end."""
    demands = [
        Demand(((18, 31), (31, 18)), 3), Demand(((18, 30), (30, 18)), 3),
        Demand(((10, 11), (11, 10)), 3), Demand(((10, 13), (13, 10)), 3),
    ]  # fmt: skip
    search = StripSearch(demands, 168, 1_000_000, int)
    search.go_on(1_000)
    assert search.solved().is_shortest and search.effort.left > 900_000


@pytest.mark.parametrize("seed", range(25))
def test_the_relaxation_is_what_a_linear_solver_finds_over_all_patterns(seed):
    highspy = pytest.importorskip("highspy", reason="HiGHS is an extra for tests")
    demands, width = small_case(seed)
    relaxed = Relaxation(demands, width, Effort(100_000_000)).solve((), 10**6)
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    rows = [[] for _ in demands]
    columns = []
    for height, counts in _all_patterns(demands, width):
        amount = solver.addVariable(0, highspy.kHighsInf, height)
        columns.append(amount)
        for row, count in zip(rows, counts, strict=True):
            if count:
                row.append(count * amount)
    for demand, row in zip(demands, rows, strict=True):
        solver.addConstr(sum(row[1:], row[0]) >= demand.count)
    solver.run()
    assert abs(Fraction(solver.getObjectiveValue()) - relaxed.height) < Fraction(1, 10**6)


def _all_patterns(demands: list[Demand], width: int) -> set[tuple[int, tuple[int, ...]]]:
    """Return every strip: its height and how many of each demand, by trying all numbers of all lies."""
    lies = [(place, across, along) for place, demand in enumerate(demands) for across, along in demand.lies]
    patterns: set[tuple[int, tuple[int, ...]]] = set()
    for height in {along for _, _, along in lies}:
        fitting = [(place, across) for place, across, along in lies if along <= height]
        ranges = [range(min(demands[place].count, width // across) + 1) for place, across in fitting]
        for numbers in product(*ranges):
            if sum(number * across for number, (_, across) in zip(numbers, fitting, strict=True)) <= width:
                counts = [0] * len(demands)
                for number, (place, _) in zip(numbers, fitting, strict=True):
                    counts[place] += number
                if any(counts):
                    patterns.add((height, tuple(counts)))
    return patterns
