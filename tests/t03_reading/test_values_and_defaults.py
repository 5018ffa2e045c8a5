"""Single values as authors write them, and the figures that hold when nothing is written."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import Assumed, Bound, CornerPockets, Project, Quantity, Sleeve, Turned
from support.pattern_texts import FULL, SMALL, changed, pattern_from, read

INCH, CM = Unit.INCH, Unit.CENTIMETRE


def project(*edits: tuple[str, str], unit: Unit = INCH) -> Project:
    """Return the only size of a small pattern after some edits."""
    text = changed(SMALL, "title:", "editions: [inches, centimetres]\ntitle:")
    for old, new in edits:
        text = changed(text, old, new)
    return pattern_from(text).project("mug-rug", unit)


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("1/4", "1/4"), (".25", None), ("0.25", "1/4"), ("1 1/4", "5/4"), ("1-1/4", "5/4"), ("1¼", "5/4"), ("¼", "1/4"),
        ("'1/4\"'", "1/4"), ("1/4 in", "1/4"), ("1/4 inches", "1/4"), ("¼″", "1/4"), ("1/3", "1/3"), ("1,5", None),
        ("1e1", None), ("0x10", None), ("١", None), ("1/4/4", None), ("1 / 4", None), ("one", None), ("+1", None), ("240", "240"),
        ("240.001", None), ("NaN", None), ("inf", None), ("1 1/4 1/4", None),
    ],
)  # fmt: skip
def test_lengths(written: str, value: str | None) -> None:
    outcome = read(changed(SMALL, "title:", f"usable width: {written}\ntitle:"))
    if value is None:
        assert len(outcome.errors) == 1 and outcome.errors[0].place is not None
        assert outcome.errors[0].place.line == 2
    else:
        assert outcome.value is not None
        assert outcome.value.projects[0].usable_width.value == Fraction(value)


@pytest.mark.parametrize(
    ("written", "width", "height"),
    [
        ("4 x 4", "4", "4"), ("4x4", "4", "4"), ("4 × 4", "4", "4"), ("4", "4", "4"), ("4 in x 4 in", "4", "4"),
        ("4 x 4 in", "4", "4"), ("3 1/2 x 3 1/2", "7/2", "7/2"), ("4.5 x 4.5", "9/2", "9/2"), ("4 1/8 x 4", "33/8", "4"),
        ('"4 x 4"', "4", "4"),
    ],
)  # fmt: skip
def test_finished_sizes(written: str, width: str, height: str) -> None:
    block = project(("finished size: 4 x 4", f"finished size: {written}")).blocks[0]
    assert (block.width.value, block.height.value) == (Fraction(width), Fraction(height))


def test_a_metric_size_with_one_unit_for_both_sides() -> None:
    text = changed(SMALL, "title:", "units: centimetres\ntitle:")
    block = pattern_from(changed(text, "finished size: 4 x 4", "finished size: 10 x 10 cm")).projects[0].blocks[0]
    assert (block.width.text, block.height.text) == ("10 cm", "10 cm")


@pytest.mark.parametrize(
    ("written", "block", "turns", "is_mirrored"),
    [
        ("buoy", "buoy", 0, False), ("buoy turned 90", "buoy", 1, False), ("buoy turned 180", "buoy", 2, False),
        ("buoy turned 270 mirrored", "buoy", 3, True), ("buoy mirrored", "buoy", 0, True), ("buoy  turned  90", "buoy", 1, False),
    ],
)  # fmt: skip
def test_placements(written: str, block: str, turns: int, is_mirrored: bool) -> None:
    position = project(("block: buoy", f"layout: [[buoy, {written}]]")).arrangement.positions[0][1]
    assert (position.block, position.quarter_turns, position.is_mirrored) == (block, turns, is_mirrored)


@pytest.mark.parametrize(
    ("word", "truth"), [("yes", True), ("no", False), ("true", True), ("No", False), ('"yes"', True)]
)
def test_yes_and_no(word: str, truth: bool) -> None:
    fabric = project(('sea: {colour: "#23465f"}', f'sea: {{colour: "#23465f", directional: {word}}}')).fabrics[0]
    assert fabric.is_directional is truth


def test_names_that_are_read_out_and_names_for_addresses() -> None:
    text = changed(SMALL, "mug rug: {}", "Déjà-vu Runner No. 2: {}")
    named = pattern_from(text).projects[0]
    assert (named.size, named.name) == ("deja-vu-runner-no-2", "Déjà-vu Runner No. 2")


def because(quantity: Quantity) -> Assumed:
    """Return the reason of a figure nobody wrote."""
    assert isinstance(quantity.because, Assumed)
    assert quantity.because.reason and quantity.because.source
    return quantity.because


BOUND = ("kind: turned, backing: {fabric: sea}", "kind: bound, backing: {fabric: sea}, binding: {fabric: sea}")
LARGE = ("finished size: 4 x 4", "finished size: 18 x 18")


class TestDefaults:
    """The usual figures of the trade, with the page they were published on."""

    def test_seam_allowance(self) -> None:
        """0.75 cm in print: weednstitch 2012; lonesockproductions 2010 (handbook MET-3). 1/4 in is common practice."""
        assert project().seam_allowance.text == "1/4 in"
        assert project(unit=CM).seam_allowance.text == "0.75 cm"

    def test_usable_width(self) -> None:
        """42 in: American Patchwork & Quilting patterns, among others (handbook FAB-1)."""
        assert project().usable_width.text == "42 in"
        assert project(unit=CM).usable_width.text == "107 cm"

    def test_patch_margin(self) -> None:
        """1/2 in beyond the piece on every side, seam allowance included: Gail Garber (handbook FPP-1), FPP-2."""
        whole = project()
        assert whole.patch_margin.value + whole.seam_allowance.value == Fraction(1, 2)
        assert "Gail Garber" in because(whole.patch_margin).source

    def test_turned_small(self) -> None:
        """Opening of 4 to 5 in: beebees, place mat tutorial, 2013 (handbook TRN-1); backing 2 in longer in all (TRN-2)."""
        finish = project().finish
        assert isinstance(finish, Turned)
        assert Fraction(4) <= finish.opening.value <= Fraction(5)
        assert "beebees" in because(finish.opening).source
        assert 2 * finish.backing_overage.value == 2
        assert finish.batting_overage.value > 0
        assert finish.topstitch.text == "1/8 in"

    def test_turned_large(self) -> None:
        """Opening of 15 to 20 in for a quilt: Fabric Mill, Pre-Bind a Quilt (handbook TRN-2)."""
        finish = project(LARGE).finish
        assert isinstance(finish, Turned)
        assert Fraction(15) <= finish.opening.value <= Fraction(20)
        assert "Fabric Mill" in because(finish.opening).source

    def test_bound_small(self) -> None:
        """2 in per side, batting 1: W. Robertson, small wall quilt 20 x 22 (handbook BCK-1)."""
        finish = project(BOUND).finish
        assert isinstance(finish, Bound)
        assert (finish.backing_overage.text, finish.batting_overage.text) == ("2 in", "1 in")
        assert "W. Robertson" in because(finish.backing_overage).source

    def test_bound_large(self) -> None:
        """Backing + 8 in all, batting + 6: Log House Quilting, Preparing Your Quilt (handbook BCK-2)."""
        finish = project(LARGE, BOUND).finish
        assert isinstance(finish, Bound)
        assert (2 * finish.backing_overage.value, 2 * finish.batting_overage.value) == (8, 6)
        assert "Log House Quilting" in because(finish.batting_overage).source

    def test_backing_seam(self) -> None:
        """1/2 in seams: Janet Wickell, Quilt backing, about.com (handbook BCK-8)."""
        finish = project(BOUND).finish
        assert isinstance(finish, Bound) and finish.backing_seam.text == "1/2 in"
        assert "Janet Wickell" in because(finish.backing_seam).source

    def test_binding(self) -> None:
        """Strips of 2 1/4 in: angiequilts, Brilliant Binding (handbook JOIN-1); 10 in extra: Monica Curry 2019 (BND-7)."""
        finish = project(BOUND).finish
        assert isinstance(finish, Bound)
        assert (finish.binding.strip_width.text, finish.binding.extra_length.text) == ("2 1/4 in", "10 in")
        assert "Monica Curry, 2019" in because(finish.binding.extra_length).source

    def test_sleeve(self) -> None:
        """8 1/2 x (width + 2), hems of 1 1/2, 1 in below the edge; finishes 4 in deep and 1 in shorter than the quilt:
        International Quilt Association, Instructions for Making Sleeves (handbook SLV-1).
        """
        sleeve = project(("sizes:", "hanging: {kind: sleeve, fabric: sea}\nsizes:")).hanging
        assert isinstance(sleeve, Sleeve)
        assert (sleeve.cut_depth.text, sleeve.cut_extra.text) == ("8 1/2 in", "2 in")
        assert (sleeve.hem.text, sleeve.drop.text) == ("1 1/2 in", "1 in")
        assert (sleeve.cut_depth.value - 2 * Fraction(1, 4)) / 2 == 4
        assert sleeve.cut_extra.value - 2 * sleeve.hem.value == -1
        assert "International Quilt Association" in because(sleeve.cut_depth).source

    def test_corner_pockets(self) -> None:
        """4 to 6 in squares: from memory, no page found (handbook CRN-1); the page of the site says so."""
        pockets = project(("sizes:", "hanging: {kind: corner pockets, fabric: sea}\nsizes:")).hanging
        assert isinstance(pockets, CornerPockets) and pockets.square.text == "4 in"
        assert "from memory" in because(pockets.square).source

    def test_metric_figures_are_near_the_inch_figures(self) -> None:
        for edits in ((), (BOUND,), (LARGE,), (LARGE, BOUND)):
            inch, metric = project(*edits).finish, project(*edits, unit=CM).finish
            pairs = [(inch.backing_overage, metric.backing_overage), (inch.batting_overage, metric.batting_overage)]
            if isinstance(inch, Turned) and isinstance(metric, Turned):
                pairs += [(inch.opening, metric.opening), (inch.topstitch, metric.topstitch)]
            if isinstance(inch, Bound) and isinstance(metric, Bound):
                pairs += [
                    (inch.binding.strip_width, metric.binding.strip_width),
                    (inch.backing_seam, metric.backing_seam),
                ]
            for one, other in pairs:
                assert (one.unit, other.unit) == (INCH, CM)
                assert abs(other.value - one.value * Fraction(127, 50)) <= other.value / 5, one.name

    def test_a_figure_that_was_written_is_no_default(self) -> None:
        sleeve = pattern_from(FULL).project("wall-hanging", INCH).hanging
        assert isinstance(sleeve, Sleeve) and sleeve.cut_depth.place is not None


@pytest.mark.parametrize(
    ("written", "value", "unit"),
    [
        ("1/8 yd", "1/8", Unit.YARD), ("1/4 yd", "1/4", Unit.YARD), ("1/3 yd", "1/3", Unit.YARD),
        ("10 cm", "1/10", Unit.METRE), ("25 cm", "1/4", Unit.METRE),
    ],
)  # fmt: skip
def test_the_step_cloth_is_sold_by(written: str, value: str, unit: Unit) -> None:
    step = project(("title:", f"shop step: {written}\ntitle:")).shop_step
    assert step is not None
    assert (step.value, step.unit) == (Fraction(value), unit)


def test_without_a_step_the_usual_one_is_left_to_planning() -> None:
    assert project().shop_step is None
