"""The rules for facings, folded edges, cushion backs, loops and the width of binding, against published examples."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import Project
from hypothesis import given, settings
from hypothesis import strategies as st
from support.edges import ENVELOPE, FACED, KNIFE_EDGE, LOOPS, ROUNDED, showing
from support.samples import length
from support.tops import figure, plain_top, sized, value


class TestBindingThatShows:
    """A strip is six times as wide as what shows of it, and a little wider for the edge it goes round."""

    # "What size binding would you like with that, ma'am?", Along Came Quilting: 1/4 from 2, 3/8 from 2 1/2, 1/2 from 3.
    # "Binding: How Wide?", learnhowtoquilt: 3 in, sewn with 1/2, finishes 1/2.
    ROWS = (("1/4", "2"), ("3/8", "2 1/2"), ("1/2", "3"))

    @pytest.mark.parametrize(("shows", "published"), ROWS)
    def test_published_strips_are_met_within_a_quarter_inch(self, shows: str, published: str) -> None:
        strip = figure(plain_top("40", "50", finish=showing(shows)), "binding_strip_width")
        assert abs(strip - value(published)) <= Fraction(1, 4)

    def test_the_usual_two_and_a_half_inches_show_three_eighths(self) -> None:
        assert figure(plain_top("40", "50", finish=showing("3/8")), "binding_strip_width") == value("2 1/2")

    @pytest.mark.parametrize(("shows", "published"), [("3/4", "4"), ("1", "5")])
    def test_published_strips_that_cannot_reach_are_not_followed(self, shows: str, published: str) -> None:
        # The last rows of the same shop's table: half the strip, less the seam and the front, does not reach the seam.
        assert value(published) < 6 * value(shows) < figure(
            plain_top("40", "50", finish=showing(shows)), "binding_strip_width"
        )  # fmt: skip

    @given(st.integers(2, 12), st.sampled_from([Unit.INCH, Unit.CENTIMETRE]))
    def test_it_reaches_the_seam_line_on_the_back(self, marks: int, unit: Unit) -> None:
        shows = Fraction(marks, 8) if unit is Unit.INCH else Fraction(marks, 2)
        seam = length("seam allowance", "1/4" if unit is Unit.INCH else "0.75", unit)
        text = str(shows) if shows < 1 or shows.denominator == 1 else f"{int(shows)} {shows - int(shows)}"
        project = plain_top("60", "50", unit, finish=showing(text, unit), seam_allowance=seam)
        if shows < seam.value:
            return
        result = sized(project)
        folded, front = result.figure("binding_folded_width").value, result.figure("binding_front_width").value
        assert front == shows
        assert folded - 2 * front > front

    def test_it_is_sewn_on_with_a_seam_as_wide_as_it_shows(self) -> None:
        result = sized(plain_top("40", "50", finish=showing("1/2")))
        frame = [placed for placed in result.placed if placed.part == "binding"]
        inside = [placed.outline.bounds for placed in result.placed if placed.part != "binding"]
        assert len(frame) == 4
        assert inside == [(Fraction(1, 2), Fraction(1, 2), value("39 1/2"), value("49 1/2"))]


class TestFacing:
    """Side strips are as long as the raw side; top and bottom strips reach over the turned sides and fold in."""

    @pytest.mark.parametrize(("width", "height"), [("20 1/2", "30 1/2"), ("36 1/2", "36 1/2"), ("12", "60")])
    def test_lengths(self, width: str, height: str) -> None:
        # Common practice: no published table was found.
        project = plain_top(width, height, finish=FACED)
        assert figure(project, "facing_side_strip_length") == value(height)
        assert figure(project, "facing_top_strip_length") == value(width)
        assert figure(project, "finished_width") == value(width) - Fraction(1, 2)

    def test_it_lies_on_the_back_without_its_seam_and_its_fold(self) -> None:
        assert figure(plain_top("20", "30", finish=FACED), "facing_finished_width") == 2


class TestEnvelopeBack:
    """Two panels as wide as the front; together they are its height, the overlap, and two folds of each hem."""

    def test_published_place_mat(self) -> None:
        # "Another no-binding finish for a quilt", quiltsbyjen: a piece of 12 1/2 × 15 1/2 raw, backs of 8 1/2 and
        # 9 1/2 × 12 1/2, one fold of 1/2 to 3/4 on one or both: they overlap by 1 3/4 to 2 in. Two equal panels are
        # 9 in each; with the two folds of 1/4 that a hem of 1/2 in all takes, 2 in are left to overlap less two hems.
        finish = replace(ENVELOPE, overlap=length("overlap", "1 1/2"), hem=length("hem", "1/4"))
        project = plain_top("12 1/2", "15 1/2", finish=finish)
        assert figure(project, "back_panel_width") == value("12 1/2")
        assert figure(project, "back_panel_height") == 9

    @settings(max_examples=60, deadline=None)
    @given(st.integers(80, 200), st.integers(8, 40), st.integers(2, 8))
    def test_panels_meet_the_front_with_the_overlap(self, eighths: int, overlap: int, hem: int) -> None:
        height = Fraction(eighths, 8)
        finish = replace(
            ENVELOPE, overlap=replace(ENVELOPE.overlap, value=Fraction(overlap, 8)),
            hem=replace(ENVELOPE.hem, value=Fraction(hem, 8)),
        )  # fmt: skip
        whole, rest = divmod(height, 1)
        project = plain_top("16 1/2", f"{whole} {rest}" if rest else str(whole), finish=finish)
        if Fraction(overlap, 8) + Fraction(hem, 4) + 1 >= height:
            return
        panel = figure(project, "back_panel_height")
        assert panel.denominator <= 8  # on the ruler
        real = 2 * (panel - 2 * Fraction(hem, 8)) - height
        assert real == figure(project, "back_overlap")
        assert 0 <= real - Fraction(overlap, 8) <= Fraction(1, 8)

    def test_pad_is_as_large_as_the_cover_or_a_little_larger(self) -> None:
        project = plain_top("16 3/4", "18 1/2", finish=ENVELOPE)
        assert (figure(project, "pad_width"), figure(project, "pad_height")) == (17, 18)


class TestKnifeEdge:
    """Top and backing are folded in by a seam allowance; the quilting has to stop further inside."""

    def test_size_and_stop(self) -> None:
        project = plain_top("20", "30", finish=KNIFE_EDGE)
        assert figure(project, "finished_width") == value("19 1/2")
        assert figure(project, "quilting_stop") > project.seam_allowance.value


class TestLoop:
    """A strip folded and sewn along its length is half as wide less a seam; folded across it is half as long."""

    def test_published_pot_holder_loop(self) -> None:
        # "Magic squares tutorial", 52quilts, 2012: a 2 × 6 strip folded to a 3 in loop.
        loops = replace(LOOPS, cut_width=length("loop cut width", "2"), cut_length=length("loop cut length", "6"))
        project = plain_top("8 1/2", "8 1/2", hanging=loops)
        assert figure(project, "loop_finished_length") == 3
        assert figure(project, "loop_finished_width") == Fraction(3, 4)


class TestRoundCorners:
    """Bias binding goes round; the strip for a square edge is more than long enough."""

    def test_length_is_that_of_the_square_edge(self) -> None:
        project = plain_top("12", "18", finish=ROUNDED)
        assert figure(project, "binding_length") == 60 + 10

    def test_finished_outline_is_round_at_the_corners(self) -> None:
        result = sized(plain_top("12", "18", finish=ROUNDED))
        corners = {
            (corner.x, corner.y)
            for placed in result.placed
            if placed.part == "binding"
            for corner in placed.outline.corners
        }
        assert (0, 0) not in corners
        # A point of the circle of radius 2 round (2, 2), at the tangent 1/2 of half its angle: (3/5, 4/5) of the way.
        assert (2 - Fraction(6, 5), 2 - Fraction(8, 5)) in corners
        left, top, right, bottom = result.placed[-1].outline.bounds
        assert left >= 0 and top >= 0 and right <= 12 and bottom <= 18


def _rod(project: Project) -> Fraction:
    return figure(project, "rod_length")


def test_loops_hang_from_a_rod_that_reaches_beyond_both_sides() -> None:
    assert _rod(plain_top("30", "20", hanging=LOOPS)) == 34
