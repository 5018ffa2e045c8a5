"""Numbers with roots, held against sixty digits of the standard library's decimal arithmetic."""

from __future__ import annotations

from decimal import Decimal, localcontext
from fractions import Fraction

import pytest
from evenseam.exact import Number, Surd, ceiling, floor, nearest, sign, square_root
from hypothesis import assume, given
from hypothesis import strategies as st

rationals = st.fractions(min_value=-50, max_value=50, max_denominator=48)
roots = st.sampled_from([1, 2, 3, 5, 6, 7, 8, 10, 12, 50])


@st.composite
def numbers(draw: st.DrawFn) -> Number:
    total: Number = draw(rationals)
    for _ in range(draw(st.integers(0, 3))):
        total = total + draw(rationals) * square_root(draw(roots))
    return total


def in_digits(number: Number) -> Decimal:
    terms = number.terms if isinstance(number, Surd) else ((1, number),)
    with localcontext() as context:
        context.prec = 60
        total = Decimal(0)
        for radicand, coefficient in terms:
            total += Decimal(coefficient.numerator) / Decimal(coefficient.denominator) * Decimal(radicand).sqrt()
        return total


def close(left: Decimal, right: Decimal) -> bool:
    return abs(left - right) <= Decimal(10) ** -40 * max(1, abs(left), abs(right))


@given(numbers(), numbers())
def test_arithmetic_agrees_with_sixty_digits(left: Number, right: Number) -> None:
    with localcontext() as context:
        context.prec = 60
        assert close(in_digits(left + right), in_digits(left) + in_digits(right))
        assert close(in_digits(left - right), in_digits(left) - in_digits(right))
        assert close(in_digits(left * right), in_digits(left) * in_digits(right))


@given(numbers(), numbers())
def test_division_undoes_multiplication(left: Number, right: Number) -> None:
    assume(right != 0)
    assert left / right * right == left


@given(numbers(), numbers())
def test_order_agrees_with_sixty_digits(left: Number, right: Number) -> None:
    assert (left < right) == (in_digits(left) < in_digits(right))
    assert (left == right) == (left - right == 0)
    assert sign(left - right) == -sign(right - left)


@given(numbers())
def test_whole_numbers_enclose_the_number(number: Number) -> None:
    assert floor(number) <= number < floor(number) + 1
    assert ceiling(number) - 1 < number <= ceiling(number)
    assert abs(2 * (nearest(number) - number)) <= 1


@given(st.fractions(min_value=0, max_value=1000, max_denominator=100))
def test_a_square_root_squares_back(value: Fraction) -> None:
    assert square_root(value) * square_root(value) == value


@given(numbers())
def test_equal_numbers_are_equal_values(number: Number) -> None:
    detour = (number + square_root(2)) * 3 / 3 - square_root(2)
    assert detour == number
    assert hash(detour) == hash(number)
    assert isinstance(detour, Fraction) == isinstance(number, Fraction)


def test_numbers_that_nearly_cancel_are_still_ordered() -> None:
    # 1393/985 is a convergent of √2: they differ by less than 4e-7; its far descendant by less than 1e-30.
    above, below = Fraction(1), Fraction(1)
    for _ in range(100):
        above, below = above + 2 * below, above + below
    assert sign(square_root(2) - above / below) == sign(2 * below * below - above * above)


def test_no_root_of_a_negative_number() -> None:
    with pytest.raises(ValueError, match="no real square root"):
        square_root(-2)
