"""Borders of every kind: the figures agree with geometry, the pieces fill the top, and the plan sews up."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Number, Unit, to_float
from evenseam.geometry import Point
from evenseam.pattern import (
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    BlockPosition,
    BorderCorners,
    CutList,
    CutShape,
    JoinRun,
    Press,
    Program,
    Project,
    Quantity,
)
from evenseam.sizing import SizedProject, assembly_program, block_count, cut_list, size_project
from evenseam.sizing.simulator import sew
from hypothesis import assume, given, settings
from shapely import Polygon as Shape
from shapely import unary_union
from support.borders import (
    MEDALLION,
    MEDALLION_WITH_PRINT,
    border_projects,
    bordered,
    mitred,
    of_blocks,
    passing,
    pennant,
)
from support.samples import BOUND, LAP_QUILT, border
from support.sewing_faults import mutants
from support.tops import plain_block, plain_top, sized, value

SAMPLES = (
    bordered(mitred("only border", "2 1/2")),
    bordered(mitred("inner border", "1", "lamp"), mitred("outer border", "2 1/2", "sea", "6")),
    bordered(mitred("inner border", "1", "reed"), mitred("outer border", "2 1/2", "sea")),
    bordered(passing("only border", "2", "reed")),
    bordered(of_blocks("ring", "pennant", "corner"), blocks=(pennant(), pennant("2", "2", "corner"))),
    bordered(of_blocks("ring", "pennant", "corner"), blocks=(pennant("2 1/2"), pennant("2", "2", "corner"))),
    bordered(of_blocks("ring", "pennant"), blocks=(pennant("2 1/2"),)),
    MEDALLION,
    MEDALLION_WITH_PRINT,
)
NAMES = (
    "mitred", "two-mitred", "print-mitred-alone", "passing", "blocks-even", "blocks-with-spacers", "corner-squares",
    "medallion", "medallion-with-print",
)  # fmt: skip


def _planned(project: Project) -> tuple[SizedProject, CutList, Program]:
    result = sized(project)
    cuts = cut_list(result)
    return result, cuts, assembly_program(result, cuts)


def _assert_sews_up(result: SizedProject, cuts: CutList, program: Program) -> None:
    outcome = sew(result.project, cuts, program)
    assert outcome.errors == (), [problem.message for problem in outcome.errors]
    assert outcome.value is not None
    assert outcome.value.finished_width == result.finished_width.value
    assert outcome.value.finished_height == result.finished_height.value


@pytest.mark.parametrize("unit", [Unit.INCH, Unit.CENTIMETRE], ids=["inches", "centimetres"])
@pytest.mark.parametrize("project", SAMPLES, ids=NAMES)
def test_samples_sew_up_in_both_editions(project: Project, unit: Unit) -> None:
    _assert_sews_up(*_planned(replace(project, unit=unit)))


@settings(max_examples=40, deadline=None)
@given(border_projects())
def test_every_kind_of_border_round_every_top_sews_up(project: Project) -> None:
    outcome = size_project(project)
    assume(outcome.value is not None)
    _assert_sews_up(*_planned(project))


@settings(max_examples=15, deadline=None)
@given(border_projects())
def test_pieces_fill_the_finished_project_and_do_not_overlap(project: Project) -> None:
    outcome = size_project(project)
    assume(outcome.value is not None)
    result = sized(project)
    width, height = to_float(result.finished_width.value), to_float(result.finished_height.value)
    shapes = [Shape([(to_float(c.x), to_float(c.y)) for c in placed.outline.corners]) for placed in result.placed]
    assert abs(sum(shape.area for shape in shapes) - width * height) < 1e-6 * width * height
    whole = unary_union(shapes)
    assert abs(whole.area - width * height) < 1e-6 * width * height
    assert all(abs(found - bound) < 1e-9 for found, bound in zip(whole.bounds, (0, 0, width, height), strict=True))


@pytest.mark.parametrize(
    "project", [SAMPLES[0], SAMPLES[1], SAMPLES[3], SAMPLES[5]], ids=[NAMES[i] for i in (0, 1, 3, 5)]
)
def test_any_one_wrong_figure_is_caught(project: Project) -> None:
    """Every width and height of a border's strips a mark or two either way, every count, measure and turn."""
    result, cuts, program = _planned(project)
    names = {step.makes for step in program.steps} | {cut.id for cut in cuts.cuts}
    wanted = ("cut only", "cut inner", "cut outer", "cut ring", "step only", "step mitre", "step join", "step ring")
    made = [
        mutant
        for mutant in mutants(result.project, cuts, program)
        if mutant.change.startswith(wanted) and mutant.change.split(" ")[-1] not in names
    ]
    assert len(made) > 40
    assert [mutant.change for mutant in made if sew(result.project, mutant.cuts, mutant.program).is_valid] == []


class TestMitred:
    def test_borders_that_follow_each_other_are_joined_and_mitred_as_one(self) -> None:
        _, cuts, program = _planned(SAMPLES[1])
        joins = [step for step in program.steps if isinstance(step.operation, JoinRun)]
        assert [(step.operation.parts, step.times) for step in joins] == [
            (("outer-border-sides", "inner-border-sides"), 2),
            (("outer-border-top-bottom", "inner-border-top-bottom"), 2),
        ]
        assert {step.operation.press for step in joins} == {Press.FIRST, Press.SECOND}, "seams nest in the corner"
        (mitre,) = (step.operation for step in program.steps if isinstance(step.operation, AddMitredBorder))
        assert mitre.borders == ("inner-border", "outer-border")
        # By hand: 9 1/2 + 2 × 3 1/2 + 6, the larger ease of the two; and 6 1/2 + 7 + 6.
        assert {cuts.cut(f"{name}-border-sides").height.text for name in ("inner", "outer")} == {"22 1/2 in"}
        assert {cuts.cut(f"{name}-border-top-bottom").width.text for name in ("inner", "outer")} == {"19 1/2 in"}

    def test_a_print_with_an_up_is_mitred_by_itself(self) -> None:
        _, cuts, program = _planned(SAMPLES[2])
        mitres = [step.operation for step in program.steps if isinstance(step.operation, AddMitredBorder)]
        assert [mitre.borders for mitre in mitres] == [("inner-border",), ("outer-border",)]
        assert all(cuts.cut(f"inner-border-{side}").is_upright for side in ("sides", "top-bottom"))

    def test_a_butted_border_between_keeps_mitred_ones_apart(self) -> None:
        project = bordered(mitred("inner", "1"), border("middle", "1", "sea"), mitred("outer", "1"))
        mitres = [step.operation for step in _planned(project)[2].steps if isinstance(step.operation, AddMitredBorder)]
        assert [mitre.borders for mitre in mitres] == [("inner",), ("outer",)]

    def test_corners_are_seen_at_45_degrees(self) -> None:
        strips = [placed.outline for placed in sized(SAMPLES[0]).placed if placed.part == "border:only-border"]
        assert len(strips) == 4
        for strip in strips:
            slanting = [(end - start) for start, end in strip.edges if start.x != end.x and start.y != end.y]
            assert len(slanting) == 2
            assert all(abs(step.x) == abs(step.y) == Fraction(5, 2) for step in slanting)


class TestPassing:
    def test_every_strip_is_one_edge_and_one_border_long(self) -> None:
        # By hand: a raw centre of 6 1/2 × 9 1/2 and a border that finishes 2 in wide.
        _, cuts, program = _planned(SAMPLES[3])
        assert (cuts.cut("only-border-sides").width.text, cuts.cut("only-border-sides").height.text) == (
            "2 1/2 in", "11 1/2 in",
        )  # fmt: skip
        assert (cuts.cut("only-border-top-bottom").width.text, cuts.cut("only-border-top-bottom").height.text) == (
            "8 1/2 in", "2 1/2 in",
        )  # fmt: skip
        assert [step.operation for step in program.steps if isinstance(step.operation, AddPartialSeamBorder)] == [
            AddPartialSeamBorder("only-border", "lantern-block", "only-border-sides", "only-border-top-bottom")
        ]

    def test_strips_are_seen_past_one_corner_each(self) -> None:
        # Drawn by hand: the top strip covers the top left corner, the right one the top right corner, and so on round.
        seam = value("1/4")
        strips = [placed.outline.bounds for placed in sized(SAMPLES[3]).placed if placed.part == "border:only-border"]
        moved = [tuple(bound - seam for bound in bounds) for bounds in strips]
        assert moved == [(0, 0, 8, 2), (8, 0, 10, 11), (2, 11, 10, 13), (0, 2, 2, 13)]


class TestBlocks:
    def test_blocks_in_the_arrangement_and_in_borders_are_counted_together(self) -> None:
        square = plain_block(value("3"), value("3"), id="plain")
        project = plain_top("6 1/2", "6 1/2", blocks=(square,), finish=BOUND)
        project = replace(
            project,
            arrangement=replace(LAP_QUILT.arrangement, rows=_count(2), columns=_count(2), sashing=None,
                                positions=((BlockPosition("plain"),) * 2,) * 2),
            borders=(of_blocks("ring", "plain", "plain", None),),
        )  # fmt: skip
        result, cuts, program = _planned(project)
        # 2 × 2 blocks, and a ring of 4 × 4 − 2 × 2 round them.
        assert block_count(result, "plain").value == 16
        assert sum(int(cut.count.value) for cut in cuts.cuts if cut.part == "block:plain") == 16
        _assert_sews_up(result, cuts, program)

    def test_strips_turn_with_the_sides(self) -> None:
        adds = [step.operation for step in _planned(SAMPLES[4])[2].steps if isinstance(step.operation, AddBorderStrips)]
        assert [(add.quarter_turns, add.opposite_turns) for add in adds] == [(3, 1), (0, 2)]

    def test_top_edges_of_the_blocks_point_outward(self) -> None:
        # A pennant has sea at its top left and fog at its bottom right: turned with the sides, the sea lies outside.
        result = sized(bordered(of_blocks("ring", "pennant"), blocks=(pennant("3", "2"),)))
        seam, width, height = value("1/4"), result.finished_width.value, result.finished_height.value
        on_edge = {
            side: {
                placed.fabric
                for placed in result.placed
                if placed.part == "border:ring" and len(placed.outline.corners) == 3
                and sum(_at(corner, side, seam, width, height) for corner in placed.outline.corners) == 2
            }
            for side in ("left", "top", "right", "bottom")
        }  # fmt: skip
        assert on_edge == {side: {"sea"} for side in ("left", "top", "right", "bottom")}

    def test_a_print_with_an_up_stays_upright_on_all_sides(self) -> None:
        result, cuts, program = _planned(MEDALLION_WITH_PRINT)
        assert [block.id for block in result.project.blocks if block.id.startswith("pennant-turned")] == [
            "pennant-turned-90", "pennant-turned-180", "pennant-turned-270",
        ]  # fmt: skip
        adds = [
            step.operation for step in program.steps
            if isinstance(step.operation, AddBorderStrips) and step.operation.opposite is not None
        ]  # fmt: skip
        assert [(add.strip, add.opposite) for add in adds] == [
            ("ring-left-strip", "ring-right-strip"), ("ring-top-strip", "ring-bottom-strip"),
        ]  # fmt: skip
        assert all(add.quarter_turns == add.opposite_turns == 0 for add in adds)
        assert all(cut.is_upright for cut in cuts.of("sea") if cut.part.startswith("block:"))

    def test_spacers_of_each_direction_have_their_own_width(self) -> None:
        result, cuts, _ = _planned(SAMPLES[5])
        # By hand: 6 = 3 × 2 1/2 − 2 × 3/4, and 9 = 4 × 2 1/2 − 2 × 1/2.
        assert result.figure("ring_border_side_spacer_width").text == "3/4 in"
        assert result.figure("ring_border_top_spacer_width").text == "1/2 in"
        sides, tops = cuts.cut("ring-side-spacers"), cuts.cut("ring-top-bottom-spacers")
        assert (sides.width.text, sides.height.text) == ("1 1/4 in", "9 1/2 in")
        assert (tops.width.text, tops.height.text) == ("8 in", "1 in")
        assert sides.shape is tops.shape is CutShape.STRIP

    def test_no_spacer_where_a_direction_comes_out_even(self) -> None:
        project = bordered(of_blocks("ring", "pennant", "corner"), blocks=(pennant("2"), pennant("2", "2", "corner")))
        result, cuts, program = _planned(project)
        assert "ring_border_side_spacer_width" not in dict(result.figures)
        assert {cut.id for cut in cuts.cuts if cut.part == "border:ring"} == {"ring-top-bottom-spacers"}
        _assert_sews_up(result, cuts, program)

    def test_centimetre_edition_is_solved_anew(self) -> None:
        metric = sized(replace(SAMPLES[5], unit=Unit.CENTIMETRE))
        spacer, number = metric.figure("ring_border_side_spacer_width"), metric.figure("ring_border_blocks_across")
        inside, block = metric.figure("ring_border_inside_across"), metric.project.block("pennant")
        assert number.value * block.width.value == inside.value + 2 * spacer.value
        assert spacer.value >= 1, "the narrowest spacer strip is set to the other ruler as well"
        assert metric.project.borders[0].width.value == block.height.value
        assert spacer.unit is Unit.CENTIMETRE

    def test_a_single_block_fills_a_side(self) -> None:
        project = bordered(of_blocks("ring", "pennant", "corner"), blocks=(pennant("9"), pennant("2", "2", "corner")))
        result, cuts, program = _planned(project)
        assert result.figure("ring_border_blocks_down").value == 1
        _assert_sews_up(result, cuts, program)


def test_corners_of_every_kind_finish_at_one_size() -> None:
    sizes = {
        (result.finished_width.value, result.finished_height.value)
        for corners in BorderCorners
        for result in [sized(bordered(replace(border("only border", "2", "fog"), corners=corners)))]
    }
    assert len(sizes) == 1


def _count(number: int) -> Quantity:
    return replace(LAP_QUILT.arrangement.rows, value=Fraction(number))


def _at(corner: Point, side: str, seam: Number, width: Number, height: Number) -> bool:
    """Tell whether a corner lies on the outer edge of the border, inside the binding."""
    edges = {
        "left": (corner.x, seam), "top": (corner.y, seam), "right": (corner.x, width - seam),
        "bottom": (corner.y, height - seam),
    }  # fmt: skip
    one, other = edges[side]
    return one == other
