"""Cases in which the area of the pieces says the cloth is enough, and it is not."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.pattern import CutShape
from support.fabrics import cloth_used, cut, plan_of, project_on


@pytest.mark.parametrize(
    ("width", "height", "pieces", "cloth", "is_upright", "inches"),
    [
        # One square is a little more than half the width: one to a strip.
        ("85/4", "85/4", 4, 42, False, 85),
        # Nine squares of 8 1/2 in: four to a strip, so three strips for the ninth.
        ("17/2", "17/2", 9, 42, False, Fraction(51, 2)),
        # A print that must not be turned: 15 in high pieces, two to a strip.
        ("15", "20", 3, 42, True, 40),
        # The same may lie on its side: two to a strip of 15 in.
        ("15", "20", 3, 42, False, 30),
        # Ten and a half goes four times into 42 in and three times into 40 in.
        ("21/2", "21/2", 12, 42, False, Fraction(63, 2)),
        ("21/2", "21/2", 12, 40, False, 42),
    ],
)
def test_length_of_pieces_that_leave_gaps(width, height, pieces, cloth, is_upright, inches):
    piece = cut("piece", width, height, pieces, is_upright=is_upright)
    plan = plan_of(project_on(cloth), piece)
    assert cloth_used(plan) == inches
    assert plan.is_shortest
    area = Fraction(width) * Fraction(height) * pieces
    assert area <= inches * cloth


def test_the_area_alone_would_promise_too_little_cloth():
    """Four squares of 21 1/4 in have the area of 43 in of cloth and need 85."""
    plan = plan_of(project_on(42), cut("piece", "85/4", "85/4", 4, CutShape.SQUARE))
    by_area = Fraction(85, 4) ** 2 * 4 / 42
    assert by_area < 44
    assert plan.lower_bound > 85


def test_odd_triangles_take_a_whole_square():
    odd = plan_of(project_on(42), cut("triangle", 6, 6, 13, CutShape.HALF_SQUARE_TRIANGLE))
    even = plan_of(project_on(42), cut("triangle", 6, 6, 14, CutShape.HALF_SQUARE_TRIANGLE))
    more = plan_of(project_on(42), cut("triangle", 6, 6, 15, CutShape.HALF_SQUARE_TRIANGLE))
    quarters = plan_of(project_on(42), cut("triangle", 6, 6, 29, CutShape.QUARTER_SQUARE_TRIANGLE))
    assert cloth_used(odd) == cloth_used(even) == 6
    assert cloth_used(more) == cloth_used(quarters) == 12
    assert odd.lines[0].subcuts[0].count == 7


def test_wider_cloth_never_needs_more():
    pieces = [cut("a", "7/2", "13/2", 30), cut("b", 5, 5, 18), cut("c", "9/4", "17/2", 24)]
    lengths = [cloth_used(plan_of(project_on(width), *pieces)) for width in (36, 40, 42, 44, 60, 108)]
    assert lengths == sorted(lengths, reverse=True)
