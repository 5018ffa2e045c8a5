"""A project in the other unit is re-drafted: finished sizes move to marks of the ruler, and everything follows."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit, is_multiple
from evenseam.pattern import Assumed, Block, Bound, Derived, Method, Project, Quantity, explain
from evenseam.sizing import redraft
from hypothesis import given, settings
from support.samples import CONVEX_LANTERN, MUG_RUG, PROJECTS, WALL_HANGING, grid, length
from support.strategies import projects
from support.tops import plain_block, value

INCH, CENTIMETRE = Unit.INCH, Unit.CENTIMETRE


def _redrafted(project: Project) -> Project:
    outcome = redraft(project)
    assert outcome.value is not None
    return outcome.value


def _block(width: str, height: str, unit: Unit, method: Method = Method.FOUNDATION, grid: str = "1 x 1") -> Block:
    across, down = (Fraction(cells) for cells in grid.split(" x "))
    block = plain_block(value(width), value(height), unit)
    return replace(block, method=method, grid_width=across, grid_height=down)


class TestBlocks:
    """A block keeps its proportions: both sides change by one scale, the nearest that puts both on the ruler."""

    @pytest.mark.parametrize(
        ("inches", "centimetres"),
        # Worked by hand: k times the smallest half-centimetre rectangle of the same proportions.
        [(("6", "9"), ("15", "22.5")), (("12", "12"), ("30.5", "30.5")), (("8", "10"), ("20", "25")),
         (("3", "12"), ("7.5", "30")), (("4 1/2", "6"), ("12", "16"))],
    )  # fmt: skip
    def test_inches_to_centimetres(self, inches: tuple[str, str], centimetres: tuple[str, str]) -> None:
        outcome = redraft(
            replace(MUG_RUG, unit=CENTIMETRE, blocks=(_block(*inches, INCH),), arrangement=grid(1, 1, "plain"))
        )
        assert outcome.value is not None and not outcome.problems
        block = outcome.value.blocks[0]
        assert (block.width.number, block.height.number) == centimetres

    def test_centimetres_to_inches(self) -> None:
        block = _redrafted(replace(MUG_RUG, blocks=(_block("15", "22.5", CENTIMETRE),))).blocks[0]
        assert (block.width.text, block.height.text) == ("6 in", "9 in")

    @pytest.mark.parametrize(
        ("inches", "centimetres"),
        [
            # 22 : 29 needs steps of 11 × 14.5 cm; the true size of 13.97 × 18.42 cm is too far from any of them.
            (("5 1/2", "7 1/4"), ("14", "18.5")),
            # 7 : 8 at the nearest step is 14 × 16 cm, a tenth below the true size of 15.56 × 17.78 cm.
            (("6 1/8", "7"), ("15.5", "18")),
        ],
    )
    def test_odd_proportions_are_set_side_by_side_with_a_warning(
        self, inches: tuple[str, str], centimetres: tuple[str, str]
    ) -> None:
        block = _block(*inches, INCH)
        outcome = redraft(replace(MUG_RUG, unit=CENTIMETRE, blocks=(block,), arrangement=grid(1, 1, "plain")))
        assert [problem.code.name for problem in outcome.problems] == ["proportions-changed"]
        assert outcome.value is not None
        made = outcome.value.blocks[0]
        assert (made.width.number, made.height.number) == centimetres

    def test_nothing_is_said_about_a_block_that_is_not_used(self) -> None:
        spare = replace(_block("5 1/2", "7 1/4", INCH), id="spare")
        assert redraft(replace(MUG_RUG, unit=CENTIMETRE, blocks=(CONVEX_LANTERN, spare))).problems == ()

    def test_grid_of_a_rotary_block_lands_on_the_ruler(self) -> None:
        # 6 × 9 on 12 × 18 cells: a cell of 1.27 cm becomes 1.3 cm.
        rotary = _block("6", "9", INCH, Method.ROTARY, "12 x 18")
        block = _redrafted(replace(MUG_RUG, unit=CENTIMETRE, blocks=(rotary,))).blocks[0]
        assert (block.width.text, block.height.text) == ("15.6 cm", "23.4 cm")

    def test_one_side_in_the_edition_is_left_alone(self) -> None:
        block = replace(_block("6", "9", INCH), height=length("plain height", "23", CENTIMETRE))
        outcome = redraft(replace(MUG_RUG, unit=CENTIMETRE, blocks=(block,), arrangement=grid(1, 1, "plain")))
        assert outcome.value is not None
        assert (outcome.value.blocks[0].width.text, outcome.value.blocks[0].height.text) == ("15 cm", "23 cm")
        assert [problem.code.name for problem in outcome.problems] == ["proportions-changed"]

    @settings(max_examples=60)
    @given(projects())
    def test_proportions_are_kept_unless_a_warning_says_otherwise(self, project: Project) -> None:
        outcome = redraft(project)
        assert outcome.value is not None
        warned = {problem.message.split(" near ")[0] for problem in outcome.problems}
        used = {position.block for row in project.arrangement.positions for position in row}
        for before, after in zip(project.blocks, outcome.value.blocks, strict=True):
            if before.id not in used:
                continue
            kept = before.width.value * after.height.value == before.height.value * after.width.value
            assert kept or any(before.name in message for message in warned)


class TestOtherLengths:
    """Finished sizes go to half centimetres or eighths; the seam allowance and the cloth are the usual ones."""

    def test_wall_hanging_in_centimetres(self) -> None:
        project = _redrafted(replace(WALL_HANGING, unit=CENTIMETRE))
        assert isinstance(project.finish, Bound)
        sashing = project.arrangement.sashing
        assert sashing is not None
        found = [
            sashing.width, *(border.width for border in project.borders), project.finish.backing_overage,
            project.finish.binding.strip_width, project.finish.backing_seam, project.patch_margin,
        ]  # fmt: skip
        assert [length.text for length in found] == [
            "2.5 cm", "2.5 cm", "6.5 cm", "5 cm", "5.5 cm", "1.5 cm", "0.6 cm",
        ]  # fmt: skip

    def test_seam_and_cloth_are_assumed_with_their_source(self) -> None:
        metric, imperial = _redrafted(replace(MUG_RUG, unit=CENTIMETRE)), MUG_RUG
        back = _redrafted(replace(metric, unit=INCH))
        assert (metric.seam_allowance.text, metric.usable_width.text) == ("0.75 cm", "107 cm")
        assert (back.seam_allowance.text, back.usable_width.text) == (
            imperial.seam_allowance.text, imperial.usable_width.text,
        )  # fmt: skip
        for assumed in (metric.seam_allowance, metric.usable_width, back.seam_allowance, back.usable_width):
            assert isinstance(assumed.because, Assumed)
            assert assumed.because.source not in ("", "common practice")

    def test_lengths_of_the_edition_stay_as_they_are(self) -> None:
        assert _redrafted(MUG_RUG) == MUG_RUG
        width = length("sashing width", "3.3", CENTIMETRE)
        border = replace(MUG_RUG.borders[0], width=width)
        assert _redrafted(replace(MUG_RUG, unit=CENTIMETRE, borders=(border,))).borders[0].width is width

    @pytest.mark.parametrize(
        ("inches", "centimetres"),
        [("1/8", "0.3"), ("1/64", "0.1"), ("1/4", "0.6"), ("1/2", "1.5"), ("2", "5"), ("-1/2", "-1.5")],
    )
    def test_narrow_strips_do_not_vanish(self, inches: str, centimetres: str) -> None:
        border = replace(MUG_RUG.borders[0], width=length("border width", inches))
        made = _redrafted(replace(MUG_RUG, unit=CENTIMETRE, borders=(border,))).borders[0].width
        expected = value(centimetres.lstrip("-")) * (-1 if centimetres.startswith("-") else 1)
        assert made.value == expected

    def test_derivation_shows_the_true_length_and_the_mark(self) -> None:
        border = _redrafted(replace(MUG_RUG, unit=CENTIMETRE)).borders[0]
        assert explain(border.width).splitlines() == [
            "inner border width: 2.5 cm",
            "  re-drafted: set to the nearest 0.5 cm, not converted",
            "  1 ÷ 1 × 2.54 = 2.54 cm, rounded to the nearest to a multiple of 0.5 cm (centimetre ruler)",
            "  inner border width: 1 in",
            "    assumed: a sample (common practice)",
            "  one inch: 1 in",
            "    assumed: the unit of the ruler (the ruler)",
            "  one inch in centimetres: 2.54 cm",
            "    assumed: 1 in = 2.54 cm exactly (NBS Circular 572, addendum of 1960, section 2)",
        ]

    @settings(max_examples=60)
    @given(projects())
    def test_every_length_is_in_the_unit_of_the_edition_and_near_the_true_one(self, project: Project) -> None:
        made = _redrafted(project)
        for before, after in zip(_lengths(project), _lengths(made), strict=True):
            assert after.unit is project.unit
            if before.unit is not after.unit:
                factor = Fraction(127, 50) if after.unit is CENTIMETRE else Fraction(50, 127)
                assert isinstance(after.because, Derived) and after.because.rounding is not None
                assert abs(after.value - before.value * factor) <= after.because.rounding.grid / 2
                assert is_multiple(after.value, after.unit.ruler_mark)

    @settings(max_examples=30)
    @given(projects())
    def test_a_second_time_changes_nothing(self, project: Project) -> None:
        once = _redrafted(project)
        assert _redrafted(once) == once


def _lengths(project: Project) -> list[Quantity]:
    """Return every length that is converted, in one order."""
    finish, found = project.finish, [project.patch_margin]
    found += [side for block in project.blocks for side in (block.width, block.height)]
    found += [border.width for border in project.borders]
    found += [finish.backing_overage, finish.batting_overage]
    if isinstance(finish, Bound):
        found += [finish.backing_seam, finish.binding.strip_width, finish.binding.extra_length]
    else:
        found += [finish.opening, finish.topstitch]
    return found


def test_every_sample_has_both_editions() -> None:
    for project in PROJECTS:
        made = _redrafted(replace(project, unit=CENTIMETRE))
        assert made.blocks[0].pieces == CONVEX_LANTERN.pieces
        assert {each.unit for each in _lengths(made)} == {CENTIMETRE}
