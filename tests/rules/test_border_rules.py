"""The rules for borders and sashing, against published examples."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.pattern import BorderCorners, BorderOrder, Project
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from support.samples import LAP_QUILT, border
from support.strategies import projects
from support.tops import figure, plain_top, rows_of, sized, value

LONG_FIRST, SHORT_FIRST = BorderOrder.LONG_SIDES_FIRST, BorderOrder.SHORT_SIDES_FIRST
SIDES, TOP_AND_BOTTOM = BorderOrder.SIDES_FIRST, BorderOrder.TOP_AND_BOTTOM_FIRST


def _bordered(width: str, height: str, border_width: str, order: BorderOrder) -> Project:
    return plain_top(width, height, borders=(border("only border", border_width, "fog", order),))


class TestButtedBorders:
    """The first two strips are as long as the raw edge they are sewn to; the other two reach across them as well."""

    @pytest.mark.parametrize(
        ("order", "sides", "top_and_bottom"),
        [(SIDES, "40 1/2", "34 1/2"), (TOP_AND_BOTTOM, "42 1/2", "32 1/2"), (LONG_FIRST, "40 1/2", "34 1/2"),
         (SHORT_FIRST, "42 1/2", "32 1/2")],
    )  # fmt: skip
    def test_each_of_the_four_orders(self, order: BorderOrder, sides: str, top_and_bottom: str) -> None:
        # Worked by hand: a raw centre of 32 1/2 × 40 1/2 with a border that finishes 1 in wide.
        project = _bordered("32 1/2", "40 1/2", "1", order)
        assert figure(project, "only_border_side_strip_length") == value(sides)
        assert figure(project, "only_border_top_strip_length") == value(top_and_bottom)

    def test_long_sides_of_a_wide_centre_are_top_and_bottom(self) -> None:
        project = _bordered("40 1/2", "32 1/2", "1", LONG_FIRST)
        assert figure(project, "only_border_top_strip_length") == value("40 1/2")
        assert figure(project, "only_border_side_strip_length") == value("34 1/2")

    @pytest.mark.parametrize(("order", "sides"), [(LONG_FIRST, "32 1/2"), (SHORT_FIRST, "34 1/2")])
    def test_a_square_centre_counts_its_left_and_right_edges_as_the_long_ones(
        self, order: BorderOrder, sides: str
    ) -> None:
        project = _bordered("32 1/2", "32 1/2", "1", order)
        assert figure(project, "only_border_side_strip_length") == value(sides)

    def test_seam_is_not_counted_twice(self) -> None:
        # "Determining Border Lengths", Annie's, prints top and bottom = W + 2 × finished border + 1/2. That holds for a
        # FINISHED W; measured raw edge to raw edge, as the page tells the reader to, it counts the seam twice.
        raw, finished_border = value("32 1/2"), Fraction(1)
        ours = figure(_bordered("32 1/2", "32 1/2", "1", SIDES), "only_border_top_strip_length")
        assert ours == (raw - Fraction(1, 2)) + 2 * finished_border + Fraction(1, 2) == value("34 1/2")
        assert ours != raw + 2 * finished_border + Fraction(1, 2)

    @settings(max_examples=40)
    @given(projects(), st.sampled_from(BorderOrder))
    def test_order_changes_lengths_but_not_the_finished_size(self, project: Project, order: BorderOrder) -> None:
        assume(project.borders)
        others = replace(project, borders=tuple(replace(each, order=order) for each in project.borders))
        one, other = sized(project), sized(others)
        assert (one.finished_width, one.finished_height) == (other.finished_width, other.finished_height)

    @settings(max_examples=40)
    @given(projects())
    def test_opposite_orders_swap_which_pair_is_longer(self, project: Project) -> None:
        assume(project.borders and project.borders[0].corners is BorderCorners.BUTTED)
        first = project.borders[0]
        name = first.id.replace("-", "_")
        by_order = {
            order: sized(replace(project, borders=(replace(first, order=order),))) for order in (SIDES, TOP_AND_BOTTOM)
        }
        for strip, shorter, longer in (("side", SIDES, TOP_AND_BOTTOM), ("top", TOP_AND_BOTTOM, SIDES)):
            lengths = {order: result.figure(f"{name}_{strip}_strip_length").value for order, result in by_order.items()}
            width = by_order[SIDES].figure(f"{name}_width").value
            assert lengths[longer] - lengths[shorter] == 2 * width


class TestMeasuringForBorders:
    """Strips are cut to the true raw size of the centre, not to what a stretched edge measures."""

    def test_three_ten_inch_blocks(self) -> None:
        # "Another Lesson on Measuring Borders", Carole, From My Carolina Home, 2017: three 10 in blocks measure 30 1/2;
        # badly measured edges gave 31 5/8 and 33.
        project = rows_of(3, 3, "10 1/2", "10 1/2", borders=(border("only border", "2", "fog", SIDES),))
        length = figure(project, "only_border_side_strip_length")
        assert length == value("30 1/2")
        assert length not in (value("31 5/8"), value("33"))


class TestSashingCounts:
    """Sashing all round n × m blocks has (n + 1)(m + 1) cornerstones and (n + 1)m + (m + 1)n sashes."""

    def test_four_by_five(self) -> None:
        # "Quilt math algorithms for cornerstones", Susan in Texas, 2009: 4 × 5 blocks, 30 cornerstones, 49 sashes.
        assert figure(LAP_QUILT, "cornerstone_count") == 30
        assert figure(LAP_QUILT, "sash_count") == 49

    def test_sashing_between_only(self) -> None:
        # Counted by hand: 4 × 5 blocks have 4 × 4 upright and 3 × 5 level sashes, and 3 × 4 inner crossings.
        sashing = LAP_QUILT.arrangement.sashing
        assert sashing is not None
        between = replace(LAP_QUILT.arrangement, sashing=replace(sashing, is_around=False))
        project = replace(LAP_QUILT, arrangement=between)
        assert figure(project, "sash_count") == 31
        assert figure(project, "cornerstone_count") == 12
