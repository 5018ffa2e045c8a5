"""The sample projects, worked out by hand once."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import Project
from support.samples import LAP_QUILT, MUG_RUG, WALL_HANGING
from support.tops import sized

CENTIMETRES = Unit.CENTIMETRE

# One lantern of 6 × 9 with a border of 1, turned at 1/4: the top is 6 + 2 + 1/2 wide and loses the 1/2 again.
MUG_RUG_FIGURES = """
lantern_block_raw_width 6 1/2 in
lantern_block_raw_height 9 1/2 in
block_count 1
inner_border_strip_width 1 1/2 in
inner_border_side_strip_length 9 1/2 in
inner_border_top_strip_length 8 1/2 in
top_width 8 1/2 in
top_height 11 1/2 in
finished_width 8 in
finished_height 11 in
backing_width 10 1/2 in
backing_height 13 1/2 in
batting_width 10 1/2 in
"""
# Three lanterns with four sashes of 1 side by side: 18 + 4 + 1/2. The long sides of 22 1/2 × 11 1/2 are top and bottom.
WALL_HANGING_FIGURES = """
centre_width 22 1/2 in
centre_height 11 1/2 in
vertical_sash_length 9 1/2 in
vertical_sash_count 4
sashing_strip_length 22 1/2 in
sashing_strip_count 2
inner_border_top_strip_length 22 1/2 in
inner_border_side_strip_length 13 1/2 in
outer_border_strip_width 3 in
outer_border_top_strip_length 24 1/2 in
outer_border_side_strip_length 18 1/2 in
finished_width 29 1/2 in
finished_height 18 1/2 in
backing_width 33 1/2 in
backing_height 22 1/2 in
way_round 96 in
binding_length 106 in
binding_folded_width 1 1/8 in
sleeve_cut_length 31 1/2 in
sleeve_cut_width 8 1/2 in
sleeve_finished_length 28 1/2 in
sleeve_finished_depth 4 in
"""
# Five across and four down with sashing of 1 1/2: 30 + 9 + 1/2 and 36 + 7 1/2 + 1/2.
LAP_QUILT_FIGURES = """
block_count 20
centre_width 39 1/2 in
centre_height 44 in
cornerstone_size 2 in
vertical_sash_count 24
horizontal_sash_count 25
horizontal_sash_length 6 1/2 in
inner_border_side_strip_length 44 in
inner_border_top_strip_length 41 1/2 in
outer_border_top_strip_length 41 1/2 in
outer_border_side_strip_length 51 in
finished_width 46 1/2 in
finished_height 51 in
binding_length 205 in
"""
# Re-drafted: 15 × 22.5 with a seam of 0.75; the border of 1 in is 2.5 cm, the overage of 1 in too.
MUG_RUG_CENTIMETRES = """
seam_allowance 0.75 cm
usable_width 107 cm
lantern_block_width 15 cm
lantern_block_height 22.5 cm
lantern_block_raw_width 16.5 cm
inner_border_strip_width 4 cm
inner_border_side_strip_length 24 cm
inner_border_top_strip_length 21.5 cm
top_width 21.5 cm
finished_width 20 cm
finished_height 27.5 cm
backing_width 26.5 cm
opening_length 10 cm
topstitch_distance 0.3 cm
"""


@pytest.mark.parametrize(
    ("project", "figures"),
    [
        (MUG_RUG, MUG_RUG_FIGURES),
        (WALL_HANGING, WALL_HANGING_FIGURES),
        (LAP_QUILT, LAP_QUILT_FIGURES),
        (replace(MUG_RUG, unit=CENTIMETRES), MUG_RUG_CENTIMETRES),
    ],
    ids=["mug rug", "wall hanging", "lap quilt", "mug rug in centimetres"],
)
def test_figures_known_by_hand(project: Project, figures: str) -> None:
    result = sized(project)
    stated = dict(line.split(maxsplit=1) for line in figures.strip().splitlines())
    assert {name: result.figure(name).text for name in stated} == stated


def test_figures_stand_in_order_of_working() -> None:
    names = [name for name, _ in sized(WALL_HANGING).figures]
    order = ["seam_allowance", "lantern_block_width", "centre_width", "inner_border_strip_width",
             "outer_border_strip_width", "top_width", "finished_width", "backing_width", "binding_length",
             "sleeve_cut_length"]  # fmt: skip
    assert sorted(order, key=names.index) == order


def test_unknown_figure_is_our_own_mistake() -> None:
    with pytest.raises(KeyError):
        sized(MUG_RUG).figure("finished_depth")


def test_pieces_of_the_mug_rug_lie_where_they_are_sewn() -> None:
    # The border is 1 in wide and starts at the finished edge; the flame of the lantern stands inside it.
    result = sized(MUG_RUG)
    glass = [placed for placed in result.placed if placed.fabric == "lamp"]
    assert [placed.outline.bounds for placed in glass] == [(Fraction(5, 2), 4, Fraction(11, 2), 8)]
    assert (glass[0].part, glass[0].row, glass[0].column) == ("block:lantern", 0, 0)
    borders = [placed.outline.bounds for placed in result.placed if placed.part == "border:inner-border"]
    assert borders == [(0, 1, 1, 10), (7, 1, 8, 10), (0, 0, 8, 1), (0, 10, 8, 11)]
