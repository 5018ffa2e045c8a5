"""How many squares a yard holds: published tables, each value both reached and not exceeded by a plan."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import parse_length
from evenseam.pattern import CutShape
from support.fabrics import cloth_used, cut, plan_of, project_on

YARD = 36

# "How many 5-inch squares in a yard of fabric", republished chart, original author not identified; whole rows from
# usable widths of 39, 40, 41 and 42 in, no squaring up.
PER_YARD = """
1/2 5616 5760 5904 6048
1 1404 1440 1476 1512
1 1/2 624 624 648 672
2 342 360 360 378
2 1/2 210 224 224 224
3 156 156 156 168
3 1/2 110 110 110 120
4 81 90 90 90
4 1/2 64 64 72 72
5 49 56 56 56
5 1/2 42 42 42 42
6 36 36 36 42
6 1/2 30 30 30 30
7 25 25 25 30
7 1/2 20 20 20 20
8 16 20 20 20
8 1/2 16 16 16 16
9 16 16 16 16
9 1/2 12 12 12 12
"""

# Bonnie Hunter, "How Many Squares in a Yard?", Quiltville, 2005: cloth 36 and 45 in wide.
ON_36_AND_45 = """
3 144 180
4 81 99
5 49 63
6 36 42
7 25 30
9 16 20
10 9 12
11 9 12
13 4 6
14 4 6
16 4 4
17 4 4
18 4 4
"""
MISPRINTS_ON_45 = (("8", 25, 20), ("12", 12, 9), ("15", 4, 6))

# "Number of Squares from a Fat Quarter", piecefulliving, 2011, and "Math Charts", Quilter's Cache: 18 × 22 in. The
# second figure, for 18 × 21 in, is worked out here: whole rows.
PER_FAT_QUARTER = """
2 99 90
2 1/2 56 56
2 7/8 42 42
3 42 42
3 1/2 30 30
3 7/8 20 20
4 20 20
4 1/2 16 16
4 7/8 12 12
5 12 12
5 1/2 12 9
5 7/8 9 9
6 9 9
6 1/2 6 6
6 7/8 6 6
"""


def rows(table: str, widths: tuple[int, ...]) -> list[tuple[str, int, int]]:
    """Return (square, width, number) for every value of a table."""
    found = []
    for line in table.strip().splitlines():
        (*square,) = line.split()[: -len(widths)]
        numbers = line.split()[-len(widths) :]
        found += [(" ".join(square), width, int(number)) for width, number in zip(widths, numbers, strict=True)]
    return found


def needed_for(square: str, number: int, width: int) -> Fraction:
    """Return the cloth a plan uses for so many squares, without squaring up."""
    side = parse_length(square).value
    plan = plan_of(project_on(width), cut("square", side, side, number, CutShape.SQUARE))
    assert plan.is_shortest
    return cloth_used(plan)


def test_all_values_of_the_chart_are_here():
    assert len(rows(PER_YARD, (39, 40, 41, 42))) == 76


@pytest.mark.parametrize(("square", "width", "number"), rows(PER_YARD, (39, 40, 41, 42)))
def test_a_yard_holds_as_many_squares_as_the_chart_says_and_not_one_more(square, width, number):
    assert needed_for(square, number, width) <= YARD
    assert needed_for(square, number + 1, width) > YARD


@pytest.mark.parametrize(("square", "width", "number"), rows(ON_36_AND_45, (36, 45)))
def test_a_yard_of_narrow_and_wide_cloth(square, width, number):
    assert needed_for(square, number, width) <= YARD
    assert needed_for(square, number + 1, width) > YARD


@pytest.mark.parametrize(("square", "printed", "right"), MISPRINTS_ON_45)
def test_misprints_of_the_chart_are_not_followed(square, printed, right):
    assert (needed_for(square, printed, 45) <= YARD) == (printed <= right)
    assert needed_for(square, right, 45) <= YARD < needed_for(square, right + 1, 45)


@pytest.mark.parametrize(("square", "width", "number"), rows(PER_FAT_QUARTER, (22, 21)))
def test_half_a_yard_of_half_the_width_holds_what_a_fat_quarter_holds(square, width, number):
    assert needed_for(square, number, width) <= 18
    assert needed_for(square, number + 1, width) > 18
