"""A measurement typed by hand is found; counts, needles, dates, times and names of cloth are left alone."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from evenseam.exact import Unit
from evenseam.wording.typed_measurement import typed_measurements
from hypothesis import given
from hypothesis import strategies as st

TYPED = [
    ("Cut the strip 2 1/2 in wide.", "2 1/2 in", "5/2"),
    ("Cut the strip 2 1/2in wide.", "2 1/2in", "5/2"),
    ("Cut strips 2 in wide", "2 in", "2"),
    ("cut it at 2 in.", "2 in.", "2"),
    ("a 2-in strip", "2-in", "2"),
    ("a 2-1/2-inch strip", "2-1/2-inch", "5/2"),
    ("a 2½ inch strip", "2½ inch", "5/2"),
    ("a ½\" seam", '½"', "1/2"),
    ('a 12" block', '12"', "12"),
    ("a 12″ block", "12″", "12"),
    ("a 12'' block", "12''", "12"),
    ("leave 10 inches", "10 inches", "10"),
    ("leave 1 inch", "1 inch", "1"),
    ("leave ten inches", "ten inches", "10"),
    ("leave twenty-four inches", "twenty-four inches", "24"),
    ("three and a half inches", "three and a half inches", "7/2"),
    ("two and three-quarter inches", "two and three-quarter inches", "11/4"),
    ("half an inch", "half an inch", "1/2"),
    ("a quarter inch seam", "a quarter inch", "1/4"),
    ("a quarter-inch seam", "a quarter-inch", "1/4"),
    ("three quarters of an inch", "three quarters of an inch", "3/4"),
    ("an inch from the edge", "an inch", None),
    ("a few inches longer", "a few inches", None),
    ("30 cm", "30 cm", "30"),
    ("30cm of cloth", "30cm", "30"),
    ("0.75 cm seams", "0.75 cm", "3/4"),
    ("0,75 cm seams", "0,75 cm", "3/4"),
    ("twelve centimetres", "twelve centimetres", "12"),
    ("1.5 m of backing", "1.5 m", "3/2"),
    ("2 metres of backing", "2 metres", "2"),
    ("3/8 yard", "3/8 yard", "3/8"),
    ("1 1/4 yd of Fog", "1 1/4 yd", "5/4"),
    ("half a yard", "half a yard", "1/2"),
    ("sew 3 mm from the edge", "3 mm", "3"),
    ("topstitch 3 mm from the edge", "3 mm", "3"),
    ("6 mm seams", "6 mm", "6"),
    ("two feet long", "two feet", "2"),
    ("5 ft", "5 ft", "5"),
    ("a scant 1/4 seam", "1/4", "1/4"),
    ("add 2 1/2 all round", "2 1/2", "5/2"),
    ("a 12 x 15 top", "12 x 15", "12"),
    ("12 1/2 × 15 1/2 in", "12 1/2 × 15 1/2", "25/2"),
    ("12 by 15", "12 by 15", "12"),
    ("2 to 3 in from the end", "3 in", "3"),
    ("about 2–3 in", "3 in", "3"),
    ("use 2\n1/2 in strips", "2 1/2 in", "5/2"),
]  # fmt: skip

NOT_TYPED = [
    "Make 20 blocks.",
    "Sew 3 in a row.",
    "Lay 5 in each row.",
    "Join the 2 in order.",
    "Fold the 2 in half.",
    "Cut 4 in Fog and 2 in Deep Sea.",
    "Use a 90/14 needle, or an 80/12.",
    "Set the stitch length to 1.5 mm.",
    "Use stitches of about 2.5 mm.",
    "A short stitch, about 1.5 mm long, tears the paper.",
    "Two fat quarters, or one fat eighth, are enough.",
    "Half of the patches are dark.",
    "1/2 of the patches are dark.",
    "Cut 3/4 of them first.",
    "A quarter turn to the left.",
    "Corrected on 2026-03-14, 3 May and 14/3/2026.",
    "Version 1.2 of 2026.",
    "Wait 10 minutes, or half an hour.",
    "Iron at 150 °C.",
    "3 x 4 blocks, or a 2 × 3 layout.",
    "Rows 1 to 4.",
    "Section A1 goes first.",
    "50 wt cotton thread",
    "Print at 100 percent.",
    "Nine patches make one block.",
    "Turn it 90° and again 180°.",
    'The block is called "Harbour 12" here.',
    "Sew the first 10, then press.",
    "Step 4 in this pattern",
    "Half-square triangles and quarter-square triangles",
    "in 2 colours",
    "A 50/50 blend",
    "The 1970s in print",
    "M is the middle; 5 M blocks.",
    "and/or",
    "24/7",
    "one third of the row",
    "Use two pins in each corner.",
    "Press 2 or 3 times.",
]  # fmt: skip


@pytest.mark.parametrize(("text", "found", "value"), TYPED, ids=[row[0] for row in TYPED])
def test_typed_measurement_is_found(text: str, found: str, value: str | None) -> None:
    (typed,) = typed_measurements(text)[:1]
    assert typed.text == found
    if value is not None:
        assert typed.value == Fraction(value)


@pytest.mark.parametrize("text", NOT_TYPED)
def test_other_numbers_are_left_alone(text: str) -> None:
    assert typed_measurements(text) == ()


def test_unit_is_told() -> None:
    found = typed_measurements("2 in, 3 cm, 4 m, 1/2 yd and 5 mm")
    assert [typed.unit for typed in found] == [Unit.INCH, Unit.CENTIMETRE, Unit.METRE, Unit.YARD, None]


def test_stretches_do_not_overlap() -> None:
    found = typed_measurements("12 1/2 × 15 1/2 in, then 2 1/2 in")
    assert all(one.end <= other.start for one, other in pairwise(found))


@given(st.text(alphabet="0123456789/ .,-½inchm\"'x×yd\n", max_size=200))
def test_any_text_is_read_to_its_end(text: str) -> None:
    """Whatever is written, places lie inside the text, in order, and the search ends."""
    end = 0
    for typed in typed_measurements(text):
        assert end <= typed.start < typed.end <= len(text)
        end = typed.end
