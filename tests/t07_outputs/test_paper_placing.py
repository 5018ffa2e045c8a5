"""Rectangles on as few sheets as possible."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations
from random import Random

import pytest
from evenseam.figures.paper.placing import Item, lay_out, least_sheets
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import box

WIDTH, HEIGHT = Fraction(15, 2), Fraction(9)
SIDES = st.integers(2, 28).map(lambda quarters: Fraction(quarters, 4))


def item(name: str, width: Fraction, height: Fraction) -> Item:
    return Item(name, width, height, height, width)


def assert_laid_well(items: list[Item]) -> int:
    """Check that every item lies on a sheet once, inside it and clear of others; return the number of sheets."""
    laid = lay_out(items, WIDTH, HEIGHT)
    assert sorted(one.name for one in laid) == sorted(one.name for one in items)
    sizes = {one.name: one for one in items}
    boxes = []
    for one in laid:
        size = sizes[one.name]
        wide, high = (size.sideways_width, size.sideways_height) if one.is_turned else (size.width, size.height)
        assert one.x >= 0 and one.y >= 0 and one.x + wide <= WIDTH and one.y + high <= HEIGHT
        boxes.append((one.sheet, box(float(one.x), float(one.y), float(one.x + wide), float(one.y + high))))
    for (sheet, one), (other_sheet, other) in combinations(boxes, 2):
        assert sheet != other_sheet or one.intersection(other).area < 1e-9
    sheets = {sheet for sheet, _ in boxes}
    assert sheets == set(range(len(sheets)))
    return len(sheets)


@settings(max_examples=80)
@given(st.lists(st.tuples(SIDES, SIDES), min_size=1, max_size=16))
def test_every_template_is_laid_once_inside_and_clear_of_others(sides: list[tuple[Fraction, Fraction]]) -> None:
    items = [item(str(number), *pair) for number, pair in enumerate(sides)]
    assert assert_laid_well(items) >= least_sheets(items, WIDTH, HEIGHT)


def test_few_sheets_are_used() -> None:
    """Sheets cut into rectangles by straight cuts, shuffled, are laid on nearly as few sheets again."""
    random, used, made = Random(7), 0, 0
    for _ in range(20):
        count = random.randint(1, 4)
        items = []
        for sheet in range(count):
            x, y = Fraction(random.randint(8, 22), 4), Fraction(random.randint(8, 28), 4)
            pieces = ((x, y), (x, HEIGHT - y), (WIDTH - x, HEIGHT))
            items += [item(f"{sheet}-{number}", *pair) for number, pair in enumerate(pieces)]
        random.shuffle(items)
        used += assert_laid_well(items)
        made += count
    assert used <= made * 1.15


def test_what_fits_only_sideways_is_turned() -> None:
    laid = lay_out([item("long", Fraction(17, 2), Fraction(2))], WIDTH, HEIGHT)
    assert laid[0].is_turned


def test_two_that_share_a_sheet_do() -> None:
    wide = item("a", Fraction(7), Fraction(4))
    assert assert_laid_well([wide, item("b", Fraction(11, 2), Fraction(15, 2))]) == 2
    assert assert_laid_well([wide, item("b", Fraction(5), Fraction(7))]) == 1
    assert assert_laid_well([wide, item("b", Fraction(5), Fraction(7, 2))]) == 1


def test_no_template_is_lost_silently() -> None:
    with pytest.raises(ValueError, match="wide does not fit"):
        lay_out([item("wide", Fraction(10), Fraction(10))], WIDTH, HEIGHT)


def test_nothing_needs_no_sheet() -> None:
    assert lay_out([], WIDTH, HEIGHT) == ()
