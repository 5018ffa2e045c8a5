"""Strips for each yard, yardages worked out in print, and the parts of a yard."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.cutting.yardage import shop_length, squaring_up
from evenseam.exact import Unit, parse_length
from evenseam.pattern import Assumed, CutShape, Quantity, StripDirection
from support.fabrics import cloth_used, cut, plan_of, project_on

# "Number of Squares from a Fat Quarter (handout)", republished, no author: strips across the cloth after squaring up,
# from one yard and from half a yard. The handout has 13 strips of 2 1/2 in; with half an inch for squaring up there
# are 14.
STRIPS = """
1 1/2 23 11
2 17 8
3 11 5
3 1/2 10 5
4 8 4
4 1/2 7 3
5 7 3
5 1/2 6 3
6 5 2
7 5 2
8 4 2
"""


def strip_rows() -> list[tuple[str, int, int]]:
    found = []
    for line in STRIPS.strip().splitlines():
        *width, whole, half = line.split()
        found += [(" ".join(width), int(whole), 36), (" ".join(width), int(half), 18)]
    return [*found, ("2 1/2", 7, 18)]


def length_of_strips(width: str, number: int) -> Fraction:
    plan = plan_of(
        project_on(42),
        cut("strip", 42, parse_length(width).value, number, CutShape.STRIP, direction=StripDirection.ACROSS),
    )
    assert plan.is_shortest
    return plan.length.value


@pytest.mark.parametrize(("width", "number", "cloth"), strip_rows())
def test_as_many_strips_as_the_handout_says_and_not_one_more(width, number, cloth):
    assert length_of_strips(width, number) <= cloth < length_of_strips(width, number + 1)


def test_one_strip_more_than_the_handout_where_it_is_more_careful():
    assert length_of_strips("2 1/2", 13) < length_of_strips("2 1/2", 14) <= 36 < length_of_strips("2 1/2", 15)


@pytest.mark.parametrize(
    ("number", "width", "height", "cloth", "inches"),
    # Bobbin In Quilts; Cortez Quilt Company; quiltingboard; harriger; Quilter's Cache: yardage lessons. The length of
    # the 100 and the 112 pieces is worked out here by the lessons' rule.
    [
        (56, "6 1/2", "6 1/2", 42, "65"),
        (63, "9 1/2", "9 1/2", 42, "152"),
        (100, "3 1/2", "3 1/2", 44, "31 1/2"),
        (112, "3 7/8", "7 3/4", 42, "89 1/8"),
        # Judy Laquidara (name from memory), "Calculating Yardage", Patchwork Times, 2011.
        (12, "4 1/2", "4 1/2", 40, "9"),
        (48, "2 1/2", "4 1/2", 40, "13 1/2"),
    ],
)
def test_lengths_worked_out_in_yardage_lessons(number, width, height, cloth, inches):
    sizes = (parse_length(width).value, parse_length(height).value)
    plan = plan_of(project_on(cloth), cut("piece", *sizes, number))
    assert cloth_used(plan) == parse_length(inches).value
    assert plan.is_shortest


def test_a_lesson_that_tries_one_direction_only_is_followed_with_a_print_and_beaten_without():
    """Bobbin In Quilts: 300 pieces of 3 × 2 in from 40 in, 13 to a strip, 24 strips, 48 in."""
    lesson = plan_of(project_on(40), cut("piece", 3, 2, 300, is_upright=True))
    free = plan_of(project_on(40), cut("piece", 3, 2, 300))
    assert cloth_used(lesson) == 48
    assert cloth_used(free) == 45
    assert lesson.is_shortest and free.is_shortest


def test_half_strips_of_both_directions():
    """Patchwork Times, 2011: 48 pieces of 2 1/2 × 4 1/2 in are 15 in of 2 1/2 in strips, 13 1/2 of 4 1/2 in strips."""
    upright = plan_of(project_on(40), cut("piece", "9/2", "5/2", 48, is_upright=True))
    assert cloth_used(upright) == 15


@pytest.mark.parametrize("width", [40, 42, 44, Fraction(449, 10)])
def test_precut_sizes_from_strips(width):
    """Annie's, "Precuts to Yardage": a strip gives eight 5 in squares, or four 10 in squares."""
    for side, number in ((5, 8), (10, 4)):
        for strips in (1, 3):
            plan = plan_of(project_on(width), cut("precut", side, side, strips * number, CutShape.SQUARE))
            assert [(line.count, line.strip_width, line.strip_length) for line in plan.lines] == [(strips, side, width)]
        more = plan_of(project_on(width), cut("precut", side, side, number + 1, CutShape.SQUARE))
        assert cloth_used(more) == 2 * side


@pytest.mark.parametrize(
    ("yards", "inches"),
    # "How many inches in a fraction of a yard", quiltingboard, 2014; "Fraction Conversions", catbirdquilts, 2014.
    [("1/8", "4 1/2"), ("1/4", "9"), ("3/8", "13 1/2"), ("1/2", "18"), ("5/8", "22 1/2"), ("3/4", "27"),
     ("7/8", "31 1/2"), ("1", "36")],
)  # fmt: skip
def test_shop_steps_are_the_published_parts_of_a_yard(yards, inches):
    """What is bought covers need, washing and spare; an eighth less would not."""
    inches, yards = parse_length(inches).value, parse_length(yards).value
    exact = (inches - 1) * Fraction(19, 20)
    for needed, bought in ((exact, yards), (exact + Fraction(1, 100), yards + Fraction(1, 8))):
        quantity = shop_length("cloth", Quantity("needed", needed, Unit.INCH, Assumed("a sample")))
        assert (quantity.value, quantity.unit) == (bought, Unit.YARD)


def test_metric_shop_steps_are_ten_centimetres():
    needed = Quantity("needed", Fraction(36), Unit.CENTIMETRE, Assumed("a sample"))
    quantity = shop_length("cloth", needed)
    assert (quantity.value, quantity.unit) == (Fraction(4, 10), Unit.METRE)
    assert quantity.text == "0.4 m"


def test_squaring_up_is_in_the_length_and_in_its_reason():
    plan = plan_of(project_on(42), cut("piece", 4, 4, 30))
    assert plan.length.value == cloth_used(plan) + squaring_up(Unit.INCH).value
    assert plan.length.because.expression.formula == "3 × 4 + 1/2"
