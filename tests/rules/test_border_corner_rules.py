"""The rules for mitred, passing and pieced borders, against published examples and plain geometry."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import Assumed, Derived, Project
from evenseam.problems import Severity
from evenseam.sizing import size_project
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from support.borders import border_projects, bordered, mitred, of_blocks, passing, pennant
from support.samples import length
from support.tops import figure, plain_top, sized, value


class TestMitredStrips:
    """A mitred strip is as long as the raw edge, twice the finished width of all mitred borders, and some ease."""

    @pytest.mark.parametrize(
        ("side", "total_border_width", "ease", "strip"),
        [("17 1/2", "3 1/2", "6", "30 1/2"), ("22 1/2", "3 1/2", "6", "35 1/2"), ("50", "7", "1", "65"),
         ("60", "7", "1", "75")],
    )  # fmt: skip
    def test_published_lengths(self, side: str, total_border_width: str, ease: str, strip: str) -> None:
        # Rows 1 and 2: "Mitered borders", QuiltingHub. Rows 3 and 4: "Calculating required border lengths for multiple
        # borders, mitered corners", quiltingboard (which prints 7 × 2 = 15; the sum it uses is right).
        project = plain_top(side, "20", borders=(mitred("only border", total_border_width, ease=ease),))
        assert figure(project, "only_border_top_strip_length") == value(strip)

    def test_several_borders_are_one_strip_of_the_total_width(self) -> None:
        # The same rows of QuiltingHub, with the 3 1/2 in of border made up of two: both sources treat several borders
        # sewn together as one strip of the total width.
        borders = (mitred("inner border", "1", ease="6"), mitred("outer border", "2 1/2", "sea", ease="6"))
        project = plain_top("17 1/2", "22 1/2", borders=borders)
        for name in ("inner", "outer"):
            assert figure(project, f"{name}_border_top_strip_length") == value("30 1/2")
            assert figure(project, f"{name}_border_side_strip_length") == value("35 1/2")

    def test_at_least_twice_the_width_is_added(self) -> None:
        # "Determining Border Lengths", Annie's: mitred, add at least twice the border width.
        ours = figure(
            plain_top("32 1/2", "40 1/2", borders=(mitred("only border", "3"),)), "only_border_top_strip_length"
        )
        assert ours >= value("32 1/2") + 2 * 3

    def test_usual_ease_lies_within_the_published_ones_and_says_that_it_is_usual(self) -> None:
        # Published: 1 in (quiltingboard), 6 in (QuiltingHub), about 10 in (QuiltingHub). 4 in is our own choice.
        project = plain_top("32 1/2", "40 1/2", borders=(mitred("only border", "3"),))
        ease = sized(project).figure("only_border_mitre_ease")
        assert ease.text == "4 in" and 1 <= ease.value <= 10
        assert isinstance(ease.because, Assumed) and ease.because.source == "common practice"
        metric = sized(replace(project, unit=Unit.CENTIMETRE)).figure("only_border_mitre_ease")
        assert metric.text == "10 cm"

    def test_length_names_its_source(self) -> None:
        made = sized(plain_top("32 1/2", "40 1/2", borders=(mitred("only border", "3"),)))
        because = made.figure("only_border_side_strip_length").because
        assert isinstance(because, Derived) and "QuiltingHub" in because.source

    @settings(max_examples=25, deadline=None)
    @given(border_projects())
    def test_strips_always_reach_the_outer_corners(self, project: Project) -> None:
        outcome = size_project(project)
        assume(outcome.value is not None)
        assert outcome.value is not None
        figures = dict(outcome.value.figures)
        for name, ease in figures.items():
            if name.endswith("_mitre_ease"):
                stem = name.removesuffix("mitre_ease")
                reach = figures[f"width_with_{stem.removesuffix('_')}"].value + ease.value
                # Raw edge to raw edge with the outermost of the mitred borders, and the ease.
                assert figures[f"{stem}top_strip_length"].value == reach


class TestPartialSeams:
    """A strip that passes one corner is as long as the raw edge and one finished border (common practice)."""

    def test_four_strips_and_the_square_close_up(self) -> None:
        # Drawn by hand: round a raw square of 12 1/2 with a border that finishes 3 in wide all strips are 15 1/2 long,
        # and 15 1/2 + 3 1/2 less the two halves of a seam is the raw edge of 18 1/2.
        project = plain_top("12 1/2", "12 1/2", borders=(passing("only border", "3"),))
        assert figure(project, "only_border_side_strip_length") == value("15 1/2")
        assert figure(project, "only_border_top_strip_length") == value("15 1/2")
        assert figure(project, "width_with_only_border") == value("18 1/2")


class TestBordersOfBlocks:
    """Blocks fill every side: their widths together are the inside and the two spacer strips (plain geometry)."""

    @pytest.mark.parametrize(
        ("width", "height", "block", "across", "down", "side", "top"),
        [
            # Worked by hand for raw insides; a spacer is (blocks × block − inside) ÷ 2, and at least 1/2 in.
            ("24 1/2", "24 1/2", "4", 6, 6, None, None),
            ("24 1/2", "32 1/2", "4", 6, 8, None, None),
            ("25 1/2", "30 1/2", "4", 7, 8, "1 1/2", "1"),
            ("24 1/2", "30 1/2", "4", 6, 8, None, "1"),
            ("27 3/4", "27 3/4", "4", 8, 8, "2 3/8", "2 3/8"),
            ("10 1/2", "13 1/2", "2 1/2", 4, 6, None, "1"),
        ],
    )  # fmt: skip
    def test_by_hand(
        self, width: str, height: str, block: str, across: int, down: int, side: str | None, top: str | None
    ) -> None:
        project = plain_top(width, height)
        project = replace(
            project, borders=(of_blocks("ring", "pennant"),), blocks=(*project.blocks, pennant(block, "2"))
        )
        figures = {name: quantity.value for name, quantity in sized(project).figures}
        assert figures["ring_border_blocks_across"] == across
        assert figures["ring_border_blocks_down"] == down
        assert figures.get("ring_border_side_spacer_width") == (value(side) if side else None)
        assert figures.get("ring_border_top_spacer_width") == (value(top) if top else None)

    @settings(max_examples=25, deadline=None)
    @given(border_projects())
    def test_blocks_fill_every_side_and_no_block_fewer_would(self, project: Project) -> None:
        outcome = size_project(project)
        assume(outcome.value is not None)
        assert outcome.value is not None
        figures = {name: quantity.value for name, quantity in outcome.value.figures}
        for border in outcome.value.project.borders:
            if border.pieced is None:
                continue
            stem = f"{border.id.replace('-', '_')}"
            width = outcome.value.project.block(border.pieced.block).width.value
            least = border.pieced.least_spacer
            assert least is not None
            for direction, pair in (("across", "side"), ("down", "top")):
                inside, blocks = figures[f"{stem}_inside_{direction}"], figures[f"{stem}_blocks_{direction}"]
                spacer = figures.get(f"{stem}_{pair}_spacer_width", Fraction(0))
                assert blocks * width == inside + 2 * spacer
                assert spacer == 0 or least.value <= spacer < least.value + width / 2

    @given(st.integers(1, 4))
    def test_a_wider_least_spacer_takes_one_block_more(self, number: int) -> None:
        blocks = (pennant("2 1/2"),)
        usual = bordered(of_blocks("ring", "pennant"), blocks=blocks)
        wider = bordered(of_blocks("ring", "pennant", least=f"{number * 5}/4"), blocks=blocks)
        # By hand: inside 6 in, blocks of 2 1/2: spacers of 3/4, then 2, then 3 1/4 in, … half a block more each time.
        assert figure(usual, "ring_border_side_spacer_width") == value("3/4")
        assert figure(wider, "ring_border_side_spacer_width") == Fraction(3, 4) + number * Fraction(5, 4)


class TestWhatCannotComeOutEven:
    def test_nearest_sewable_blocks_are_named(self) -> None:
        project = bordered(of_blocks("ring", "pennant", spacer=None), blocks=(pennant("2 1/2"),))
        problems = [p for p in size_project(project).problems if p.code.name == "pieced-border-uneven"]
        assert len(problems) == 2
        # By hand: 6 and 9 in are both multiples of 1 1/2 and of 3; of nothing nearer to 2 1/2 that lies on 1/8 in.
        assert "1 1/2 in or 3 in" in problems[0].hint
        assert "3 blocks and left and right spacer strips of 3/4 in" in problems[0].hint
        for text in ("1 1/2", "3"):
            tried = bordered(of_blocks("ring", "pennant", spacer=None), blocks=(pennant(text),))
            assert size_project(tried).is_valid

    def test_spacers_off_the_ruler_are_warned_of_and_each_way_out_helps(self) -> None:
        # By hand: inside 6 1/8 in, blocks of 2 1/2: (3 × 2 1/2 − 6 1/8) ÷ 2 = 11/16, on no mark.
        inside = bordered(of_blocks("ring", "pennant"), blocks=(pennant("2 1/2"),))
        odd = replace(inside, blocks=(replace(inside.blocks[0], width=length("width", "6 1/8")), inside.blocks[1]))
        outcome = size_project(odd)
        (warning,) = [p for p in outcome.problems if "spacer" in p.message]
        assert warning.severity is Severity.WARNING
        assert "11/16 in" in warning.message
        # By hand: 3 × 2 5/8 = 6 1/8 + 2 × 7/8 and 4 × 2 5/8 = 9 + 2 × 3/4; no narrower block does for both directions.
        assert "2 5/8 in wide" in warning.hint
        mended = replace(odd, blocks=(odd.blocks[0], pennant("2 5/8")))
        assert not [p for p in size_project(mended).problems if "spacer" in p.message]
