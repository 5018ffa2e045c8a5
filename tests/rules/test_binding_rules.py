"""The rules for binding, against published examples."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit, ceiling
from evenseam.pattern import Bound, Project
from hypothesis import assume, given, settings
from support.samples import BOUND, length
from support.strategies import projects
from support.tops import figure, plain_top, sized, value


def _bound(width: str, height: str, extra: str = "10", strip: str = "2 1/4", unit: Unit = Unit.INCH) -> Project:
    binding = replace(
        BOUND.binding,
        extra_length=replace(length("binding extra length", "1", unit), value=value(extra)),
        strip_width=length("binding strip width", strip, unit),
    )
    return plain_top(width, height, unit, finish=replace(BOUND, binding=binding))


class TestBindingLength:
    """The strips must reach around the project, with something over for the corners and the join."""

    @pytest.mark.parametrize(
        ("width", "height", "extra", "needed"),
        [
            # "Tips and Tricks", onceuponaquilt: 78 × 56, one inch a corner and four for the join.
            ("78", "56", "8", "276"),
            # "Measuring fabric for continuous strips", Sylvia's Quilt Depot: 46 × 46, nothing over.
            ("46", "46", "0", "184"),
            # "How to measure for binding", Cotton Patch Fabrics: 40 × 50, nothing over.
            ("40", "50", "0", "180"),
            # "Quilt-as-you-go place mat", American Patchwork & Quilting, 2017: 18 × 12, perimeter.
            ("18", "12", "0", "60"),
        ],
    )
    def test_published_lengths(self, width: str, height: str, extra: str, needed: str) -> None:
        assert figure(_bound(width, height, extra), "binding_length") == value(needed)

    @pytest.mark.parametrize(
        ("width", "height", "extra", "usable", "strips"),
        [
            ("46", "46", "0", "40", 5),  # Sylvia's Quilt Depot: 4.6, so 5
            ("78", "56", "8", "40", 7),  # onceuponaquilt: 6.9, so 7
            ("18", "12", "0", "42", 2),  # American Patchwork & Quilting, 2017
        ],
    )
    def test_published_strip_counts(self, width: str, height: str, extra: str, usable: str, strips: int) -> None:
        assert ceiling(figure(_bound(width, height, extra), "binding_length") / value(usable)) == strips

    def test_metric_way_round(self) -> None:
        # "Fabric measuring tips", Eternal Maker: 1.5 m × 1 m is 5 m round; on cloth of 1.10 m that is 5 strips.
        seam = length("seam allowance", "0.75", Unit.CENTIMETRE)
        project = plain_top("150", "100", Unit.CENTIMETRE, seam_allowance=seam)
        assert figure(project, "way_round") == 500
        assert ceiling(figure(project, "way_round") / 110) == 5

    def test_usual_extra_lies_within_what_is_published(self) -> None:
        # Binding Yardage, piecefulkwilter, 2009, and nine other pages print 0 to 24 in; there is no standard.
        assert 0 <= BOUND.binding.extra_length.value <= 24

    @settings(max_examples=40)
    @given(projects())
    def test_strips_reach_around_with_the_extra_to_spare(self, project: Project) -> None:
        assume(isinstance(project.finish, Bound))
        result = sized(project)
        around = 2 * (result.finished_width.value + result.finished_height.value)
        assert result.figure("binding_length").value - around == result.figure("binding_extra_length").value > 0


class TestBindingWidth:
    """Half a double-fold strip has to cover the seam, the front and the back: at least three times the seam."""

    # "What size binding would you like with that, ma'am?", Along Came Quilting: cut = 4 × finished + 1, with a seam as
    # wide as the finished binding. The first three rows can be folded over; the last two cannot reach the stitch line.
    ROWS = (("1/4", "2", True), ("3/8", "2 1/2", True), ("1/2", "3", True), ("3/4", "4", False), ("1", "5", False))

    @pytest.mark.parametrize(("finished", "strip", "reaches"), ROWS)
    def test_published_widths(self, finished: str, strip: str, reaches: bool) -> None:
        assert value(strip) == 4 * value(finished) + 1
        seam = length("seam allowance", finished)
        project = replace(_bound("40", "50", strip=strip), seam_allowance=seam)
        folded, front = figure(project, "binding_folded_width"), figure(project, "binding_front_width")
        assert front == value(finished)
        assert (folded - seam.value - front >= front) is reaches


class TestBoundSize:
    """A bound project finishes at the raw size of its top: the binding covers the outer seam allowance."""

    def test_finished_is_raw(self) -> None:
        project = plain_top("40", "50")
        assert (figure(project, "finished_width"), figure(project, "finished_height")) == (40, 50)

    def test_binding_shows_as_wide_as_the_seam_allowance(self) -> None:
        result = sized(plain_top("40", "50"))
        frame = [placed for placed in result.placed if placed.part == "binding"]
        inside = [placed for placed in result.placed if placed.part != "binding"]
        assert len(frame) == 4
        assert {placed.outline.bounds for placed in inside} == {
            (Fraction(1, 4), Fraction(1, 4), value("39 3/4"), value("49 3/4"))
        }
