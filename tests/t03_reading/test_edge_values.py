"""Finishes, what a project hangs by, and sizes to come near to, as they are read."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import (
    Assumed,
    Bound,
    Choosing,
    EnvelopeBack,
    Faced,
    Fit,
    Grain,
    KnifeEdge,
    Loops,
    Project,
    Quantity,
    Rings,
    Sleeve,
)
from support.pattern_texts import pattern_from

HEAD = """\
format: 1
title: Sample
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
blocks:
  buoy:
    finished size: 4 x 4
    grid: 4 x 4
    pieces:
      - sea: 0,0 4,0 4,4
      - fog: 0,0 4,4 0,4
arrangement: {rows: 1, columns: 2, block: buoy}
"""
TURNED = "finish: {kind: turned, backing: {fabric: sea}}\n"


def _project(text: str, size: str = "  mat: {}\n") -> Project:
    return pattern_from(HEAD + text + "sizes:\n" + size).projects[0]


def _is_usual(quantity: Quantity, value: str) -> bool:
    return isinstance(quantity.because, Assumed) and quantity.value == Fraction(value)


class TestFinishes:
    """Each kind has keys of its own; what is left out takes the usual figure, with its reason."""

    def test_faced(self) -> None:
        finish = _project("finish: {kind: faced, backing: {fabric: sea}, facing: {fabric: fog}}\n").finish
        assert isinstance(finish, Faced)
        assert (finish.backing_fabric, finish.facing_fabric) == ("sea", "fog")
        assert _is_usual(finish.facing_width, "5/2") and _is_usual(finish.facing_fold, "1/4")
        assert _is_usual(finish.backing_overage, "2") and _is_usual(finish.batting_overage, "1")

    def test_knife_edge(self) -> None:
        finish = _project("finish: {kind: knife edge, backing: {fabric: sea}, quilting stop: 1}\n").finish
        assert isinstance(finish, KnifeEdge)
        assert finish.quilting_stop.value == 1 and _is_usual(finish.stitch, "1/8")

    def test_envelope_back(self) -> None:
        text = "finish: {kind: envelope back, backing: {fabric: sea}, panels: {fabric: fog, overlap: 5}}\n"
        finish = _project(text).finish
        assert isinstance(finish, EnvelopeBack)
        assert (finish.panel_fabric, finish.overlap.value) == ("fog", 5)
        assert _is_usual(finish.hem, "1/2")

    def test_rounded_corners(self) -> None:
        bound = (
            "finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: fog, grain: bias}, corners: rounded%s}\n"
        )
        usual, stated = (_project(bound % more).finish for more in ("", ", radius: 3"))
        assert isinstance(usual, Bound) and isinstance(stated, Bound)
        assert usual.corner_radius is not None and _is_usual(usual.corner_radius, "2")
        assert stated.corner_radius is not None and stated.corner_radius.value == 3
        assert stated.binding.grain is Grain.BIAS

    def test_corners_are_square_unless_said(self) -> None:
        finish = _project("finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: fog}}\n").finish
        assert isinstance(finish, Bound)
        assert finish.corner_radius is None and finish.binding.shows is None

    def test_a_size_may_choose_another_kind_and_keeps_what_both_have(self) -> None:
        project = _project(TURNED, "  hanging:\n    finish: {kind: faced, facing: {fabric: fog}}\n")
        assert isinstance(project.finish, Faced)
        assert project.finish.backing_fabric == "sea"

    def test_a_size_may_say_how_much_shows_in_place_of_the_strip(self) -> None:
        text = "finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: fog, strip width: 2 1/2}}\n"
        project = _project(text, "  mat:\n    finish: {binding: {shows: 1/2}}\n")
        assert isinstance(project.finish, Bound)
        assert project.finish.binding.shows is not None
        assert project.finish.binding.shows.value == Fraction(1, 2)


class TestHangings:
    """What a project hangs by."""

    @pytest.mark.parametrize(
        ("said", "depth", "extra", "hem"),
        [
            # International Quilt Association, Instructions for Making Sleeves.
            ("", "17/2", "2", "3/2"), (", rule: show", "17/2", "2", "3/2"),
            # W. Robertson: 6 for a small piece, cut as long as it is wide, 1/2 turned twice.
            (", rule: home", "6", "0", "1"),
        ],
    )  # fmt: skip
    def test_sleeves_follow_a_rule(self, said: str, depth: str, extra: str, hem: str) -> None:
        sleeve = _project(TURNED + f"hanging: {{kind: sleeve, fabric: sea{said}}}\n").hanging
        assert isinstance(sleeve, Sleeve)
        assert _is_usual(sleeve.cut_depth, depth) and _is_usual(sleeve.cut_extra, extra) and _is_usual(sleeve.hem, hem)

    def test_a_figure_goes_before_the_rule(self) -> None:
        sleeve = _project(TURNED + "hanging: {kind: sleeve, fabric: sea, rule: home, cut depth: 7}\n").hanging
        assert isinstance(sleeve, Sleeve) and sleeve.cut_depth.value == 7

    def test_loops_and_rings(self) -> None:
        loops = _project(TURNED + "hanging: {kind: loops, fabric: fog, number: 4}\n").hanging
        assert isinstance(loops, Loops)
        assert (loops.number.value, loops.cut_width.value, loops.cut_length.value) == (4, 4, 6)
        rings = _project(TURNED + "hanging: {kind: rings}\n").hanging
        assert isinstance(rings, Rings)
        assert (rings.number.value, rings.drop.value) == (3, Fraction(1, 2))


def _fit(said: str, **unit: str) -> Fit:
    head = "units: centimetres\n" if unit.get("unit") == "centimetres" else ""
    text = HEAD.replace("format: 1\n", "format: 1\n" + head)
    fit = pattern_from(text + TURNED + f"sizes:\n  quilt:\n    fit: {said}\n").projects[0].fit
    assert fit is not None
    return fit


class TestFit:
    """A name of the trade, figures, or more about it."""

    @pytest.mark.parametrize(
        ("said", "name", "width", "height"),
        [
            ("60 x 80", "", "60", "80"),
            ("48", "", "48", "48"),
            # CIA's Palette, Standard Mattress Sizes: 60 × 80 with a drop of 12 is 84 × 92.
            ("queen", "queen bed", "84", "92"),
            ("{size: queen, drop: 14}", "queen bed", "88", "94"),
            ("{size: twin, pillow tuck: 10}", "twin bed", "63", "97"),
            ("place mat", "place mat", "18", "12"),
            ("{size: place mat, turned: yes}", "place mat", "12", "18"),
            ("cushion", "cushion pad", "18", "18"),
            ("single", "single bed", "150", "220"),
        ],
    )
    def test_forms(self, said: str, name: str, width: str, height: str) -> None:
        fit = _fit(said)
        assert (fit.name, fit.width.value, fit.height.value) == (name, Fraction(width), Fraction(height))

    def test_a_pattern_in_centimetres_knows_the_beds_of_its_own(self) -> None:
        fit = _fit("king", unit="centimetres")
        assert (fit.width.value, fit.width.unit) == (210, Unit.CENTIMETRE)

    def test_where_published_sizes_differ_the_choice_is_kept(self) -> None:
        assert "78 × 80" in _fit("king").note
        assert _fit("60 x 80").note == ""

    @pytest.mark.parametrize(
        ("said", "may_choose"),
        [
            ("60 x 80", (Choosing.ROWS_AND_COLUMNS, Choosing.BORDER_WIDTHS)),
            ("{size: 60 x 80, choose: rows and columns}", (Choosing.ROWS_AND_COLUMNS,)),
            ("{size: 60 x 80, choose: borders}", (Choosing.BORDER_WIDTHS,)),
        ],
    )
    def test_what_may_be_chosen(self, said: str, may_choose: tuple[Choosing, ...]) -> None:
        assert _fit(said).may_choose == may_choose

    def test_a_large_size_asked_for_takes_the_figures_of_quilts(self) -> None:
        finish = "finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: fog}}\n"
        small, large = (_project(finish, f"  quilt:\n    fit: {said}\n") for said in ("12 x 12", "queen"))
        assert (small.finish.backing_overage.value, large.finish.backing_overage.value) == (2, 4)
