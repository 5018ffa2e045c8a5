"""Lengths as they are written and printed."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import (
    Direction,
    LengthError,
    Rounding,
    Unit,
    format_length,
    format_number,
    is_multiple,
    parse_length,
    square_root,
)
from hypothesis import given
from hypothesis import strategies as st


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("2", "2", None), ("2.5", "5/2", None), ("5/8", "5/8", None), ("1 1/4", "5/4", None), ("1-1/4", "5/4", None),
        ("1½", "3/2", None), ("⅞", "7/8", None), ("1 ¾ in", "7/4", Unit.INCH), ('12"', "12", Unit.INCH), ("12 in", "12", Unit.INCH),
        ("26.5 cm", "53/2", Unit.CENTIMETRE), ("26.5cm", "53/2", Unit.CENTIMETRE), ("  3 / 8 ", None, None), ("3/8 yd", "3/8", Unit.YARD),
        ("0", "0", None), ("1.5 m", "3/2", Unit.METRE), ("6/4", "3/2", None),
    ],
)  # fmt: skip
def test_what_an_author_writes(text: str, value: str | None, unit: Unit | None) -> None:
    if value is None:
        with pytest.raises(LengthError):
            parse_length(text)
        return
    parsed = parse_length(text)
    assert (parsed.value, parsed.unit) == (Fraction(value), unit)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "x",
        "-2",
        "1/0",
        "2.5.1",
        "1e3",
        "1 1/4 1/4",
        "½½",
        "1/2/3",
        "٣",
        "2 feet",
        "∞",
        "nan",
        "1" * 41,
        "1 2",
        ".5",
        "5.",
        "1_000",
        "1,5",
    ],
)
def test_what_is_not_a_length(text: str) -> None:
    with pytest.raises(LengthError, match=r"."):
        parse_length(text)


@given(st.text(max_size=60))
def test_any_text_is_a_length_or_a_length_error(text: str) -> None:
    try:
        value = parse_length(text).value
    except LengthError:
        return
    assert value >= 0


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        ("59/8", Unit.INCH, "7 3/8 in"), ("1/4", Unit.INCH, "1/4 in"), ("12", Unit.INCH, "12 in"), ("53/2", Unit.CENTIMETRE, "26.5 cm"),
        ("3/4", Unit.CENTIMETRE, "0.75 cm"), ("1/3", Unit.YARD, "1/3 yd"), ("-1/2", Unit.INCH, "−1/2 in"), ("-1/4", Unit.CENTIMETRE, "−0.25 cm"),
        ("1/7", Unit.CENTIMETRE, "about 0.1 cm"), ("1/7", Unit.METRE, "about 0.14 m"), ("1/100", Unit.INCH, "about 0 in"), ("3", Unit.COUNT, "3"), ("45", Unit.DEGREE, "45°"),
    ],
)  # fmt: skip
def test_what_a_maker_reads(value: str, unit: Unit, text: str) -> None:
    assert format_length(Fraction(value), unit) == text


def test_a_root_is_printed_as_about() -> None:
    assert format_number(square_root(2), Unit.INCH) == "about 1 7/16"


@given(st.integers(0, 20000), st.sampled_from([1, 2, 4, 8, 16]))
def test_inches_read_back_as_they_were(top: int, bottom: int) -> None:
    value = Fraction(top, bottom)
    assert parse_length(format_length(value, Unit.INCH)).value == value


@given(st.integers(0, 100000))
def test_centimetres_read_back_as_they_were(hundredths: int) -> None:
    value = Fraction(hundredths, 100)
    assert parse_length(format_length(value, Unit.CENTIMETRE)).value == value


GRIDS = st.sampled_from([Fraction(1, 8), Fraction(1, 4), Fraction(1, 2), Fraction(1, 10)])


@given(st.fractions(min_value=0, max_value=100, max_denominator=1000), GRIDS, st.sampled_from(list(Direction)))
def test_a_rounding_lands_on_its_grid_and_moves_less_than_a_step(
    value: Fraction, grid: Fraction, direction: Direction
) -> None:
    rounded = Rounding("a test", grid, direction).apply(value)
    assert is_multiple(rounded, grid)
    assert abs(rounded - value) < grid
    assert direction is not Direction.UP or rounded >= value
    assert direction is not Direction.DOWN or rounded <= value
    assert direction is not Direction.NEAREST or abs(rounded - value) * 2 <= grid


class TestPublishedConversions:
    """1 in is 25.4 mm and 1 yd is 0.9144 m exactly (Judson, Addendum to NBS Circular 572, 1960)."""

    def test_inch(self) -> None:
        from evenseam.exact import CENTIMETRES_PER_INCH

        assert Fraction("25.4") == CENTIMETRES_PER_INCH * 10
        assert Fraction("0.9144") == 36 * CENTIMETRES_PER_INCH / 100
