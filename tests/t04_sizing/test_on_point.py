"""Blocks on point: what is worked out, cut and sewn for them, whatever their number, float and sashing."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Number, Unit, is_multiple, to_float
from evenseam.pattern import (
    AddSettingTriangles,
    Arrangement,
    BlockPosition,
    CutShape,
    JoinDiagonalRows,
    JoinRun,
    Program,
    Project,
    TrimTop,
)
from evenseam.problems import SourceText
from evenseam.reading import read_pattern
from evenseam.sizing import SizedProject, assembly_program, cut_list, sew, size_project
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon as Shape
from shapely import unary_union
from support.on_point import on_point
from support.samples import REED, length
from support.sewing_faults import mutants
from support.tops import sized, value

DIRECTIONAL = tuple(replace(fabric, is_directional=fabric.id == "lamp") for fabric in on_point("6").fabrics)


@st.composite
def tops(draw: st.DrawFn) -> Project:
    """Return a top of plain blocks on point, in either unit."""
    unit = draw(st.sampled_from((Unit.INCH, Unit.CENTIMETRE)))
    inches = unit is Unit.INCH
    sash = draw(st.sampled_from((None, "1", "1 1/2"))) if inches else draw(st.sampled_from((None, "2", "3.5")))
    return on_point(
        draw(st.sampled_from(("4", "5 1/8", "6", "9 1/2") if inches else ("10", "12.5", "15.3"))),
        rows=draw(st.integers(1, 5)), columns=draw(st.integers(1, 5)),
        floated=draw(st.sampled_from((None, "0", "1/2", "2"))), seam=draw(st.sampled_from(("1/4", "3/8")))
        if inches else draw(st.sampled_from(("0.6", "0.75"))),
        sash=sash, around=draw(st.booleans()), cornerstones=draw(st.sampled_from((None, "lamp"))), unit=unit,
    )  # fmt: skip


def made(project: Project) -> tuple[SizedProject, Program]:
    """Return a project sized and its program, which the table of the simulator has sewn."""
    result = sized(project)
    cuts = cut_list(result)
    program = assembly_program(result, cuts)
    log = sew(result.project, cuts, program)
    assert log.value is not None, [problem.message for problem in log.problems]
    assert (log.value.finished_width, log.value.finished_height) == (
        result.finished_width.value, result.finished_height.value,
    )  # fmt: skip
    return result, program


@settings(max_examples=60, deadline=None)
@given(tops())
def test_every_top_sews_up(project: Project) -> None:
    result, program = made(project)
    kinds = [type(step.operation) for step in program.steps]
    assert kinds.count(AddSettingTriangles) == result.figure("rows").whole + result.figure("columns").whole - 1
    assert kinds.count(JoinDiagonalRows) == kinds.count(TrimTop) == 1


@settings(max_examples=20, deadline=None)
@given(tops())
def test_visible_pieces_fill_the_top_and_do_not_overlap(project: Project) -> None:
    result = sized(project)
    area: Number = Fraction(0)
    for placed in result.placed:
        area = area + placed.outline.area
    assert area == result.finished_width.value * result.finished_height.value
    whole = unary_union(
        [Shape([(to_float(c.x), to_float(c.y)) for c in each.outline.corners]) for each in result.placed]
    )
    assert abs(whole.area - to_float(area)) < 1e-6 * to_float(area)


@settings(max_examples=25, deadline=None)
@given(tops())
def test_a_top_without_a_stated_float_is_on_the_ruler(project: Project) -> None:
    triangles = project.arrangement.setting_triangles
    assert triangles is not None
    outcome = size_project(project)
    assert outcome.value is not None
    told = [problem for problem in outcome.problems if problem.code.name == "off-the-ruler"]
    mark = project.unit.ruler_mark
    sizes = [outcome.value.figure(name).value for name in ("centre_width", "centre_height")]
    assert bool(told) is any(not is_multiple(size, mark) for size in sizes)
    assert not (told and triangles.chooses_float)


@pytest.mark.parametrize(
    "project",
    [
        on_point("6"), on_point("6", rows=2, sash="1", around=True, cornerstones="lamp"),
        on_point("6", rows=2, sash="1", floated="1"), on_point("15", rows=1, columns=2, unit=Unit.CENTIMETRE, seam="0.75"),
    ],
    ids=("plain", "framed", "long strips", "centimetres"),
)  # fmt: skip
def test_any_one_wrong_figure_is_caught(project: Project) -> None:
    """Every width, height and count of what lies round the blocks, every distance, measure and turn of the rows."""
    result = sized(project)
    cuts = cut_list(result)
    program = assembly_program(result, cuts)
    names = {step.makes for step in program.steps} | {cut.id for cut in cuts.cuts}
    about = ("cut setting", "cut corner", "cut sashing", "step join", "step diagonal", "step trim")
    made = [
        mutant
        for mutant in mutants(result.project, cuts, program)
        if mutant.change.startswith(about) and mutant.change.split(" ")[-1] not in names
    ]
    assert len(made) > 40
    assert [mutant.change for mutant in made if sew(result.project, mutant.cuts, mutant.program).is_valid] == []


class TestLeastFloat:
    """A least float is brought up until the trimmed top lies on a mark of the ruler."""

    def _floated(self, least: str) -> Project:
        project = on_point("6")
        triangles = project.arrangement.setting_triangles
        assert triangles is not None
        triangles = replace(triangles, least_float=length("least float", least))
        return replace(project, arrangement=replace(project.arrangement, setting_triangles=triangles))

    def test_counted_by_hand(self) -> None:
        # Two columns of 6 in are 16.97 in from corner to corner, three rows 25.46: with 1 in at either end 18.97 and
        # 27.46, so 19 and 27 1/2.
        result, _ = made(self._floated("1"))
        centre = (result.figure("centre_width").value, result.figure("centre_height").value)
        assert centre == (Fraction(39, 2), Fraction(28))
        assert all(1 < result.figure(name).value < Fraction(9, 8) for name in ("float_width", "float_height"))
        assert not size_project(self._floated("1")).problems

    def test_the_simulator_knows_it(self) -> None:
        result, program = made(self._floated("1"))
        triangles = result.project.arrangement.setting_triangles
        assert triangles is not None
        more = replace(triangles, least_float=length("least float", "1 1/4"))
        project = replace(result.project, arrangement=replace(result.project.arrangement, setting_triangles=more))
        outcome = sew(project, cut_list(result), program)
        assert {problem.code.name for problem in outcome.problems} == {"figure-differs"}

    @pytest.mark.parametrize("stated", ["1/2", "1", "2"])
    def test_the_way_out_of_a_stated_float_leads_out(self, stated: str) -> None:
        warnings = [each for each in size_project(on_point("6", floated=stated)).problems if "float" in each.hint]
        assert warnings and all(f"`least float: {stated} in`" in each.hint for each in warnings)
        assert not size_project(self._floated(stated)).problems


class TestSashing:
    """Strips frame every block when they go all round; otherwise they run between the rows from edge to edge."""

    def test_counts_all_round(self) -> None:
        # Drawn on squared paper: three rows of two blocks and two between them, in a net of cords.
        cuts = cut_list(sized(on_point("6", sash="1", around=True, cornerstones="lamp")))
        counts = {cut.id: cut.count.whole for cut in cuts.cuts if cut.part == "sashing"}
        assert counts == {
            "sashing-in-rows": 12, "sashing-in-sashing-rows": 12, "sashing-cornerstone": 7, "sashing-end-cornerstone": 10,
        }  # fmt: skip

    def test_counts_between(self) -> None:
        cuts = cut_list(sized(on_point("6", sash="1", cornerstones="lamp")))
        counts = {cut.id: cut.count.whole for cut in cuts.cuts if cut.part == "sashing"}
        assert counts == {
            "sashing-in-rows": 4, "sashing-in-sashing-rows": 4, "sashing-ends": 6, "sashing-cornerstone": 7,
        }  # fmt: skip

    def test_long_strips_without_cornerstones(self) -> None:
        cuts = cut_list(sized(on_point("6", sash="1", around=True)))
        counts = {cut.id: cut.count.whole for cut in cuts.cuts if cut.part == "sashing"}
        assert counts == {"sashing-in-rows": 12, "sashing-along-1": 2, "sashing-along-3": 2, "sashing-along-4": 1}

    def test_edge_runs_through_the_middle_of_the_end_cornerstones(self) -> None:
        result = sized(on_point("6", floated="0", sash="2", around=True, cornerstones="lamp"))
        stones = [placed.outline.area for placed in result.placed if placed.part == "cornerstone"]
        assert sorted({*stones}) == [2, 4]
        assert stones.count(Fraction(2)) == 10

    def test_a_single_block_has_no_sashing_between(self) -> None:
        outcome = size_project(on_point("6", rows=1, columns=1, sash="1"))
        assert [problem.code.name for problem in outcome.problems] == ["sashing-unused"]


class TestDirectionalSashing:
    """A print with an up leans one way in all strips: a single one cut the other way is noticed."""

    @pytest.mark.parametrize(
        "project",
        [
            on_point("6", sash="1", fabrics=DIRECTIONAL),
            on_point("6", sash="1", around=True, fabrics=DIRECTIONAL),
            on_point("6", sash="1", around=True, cornerstones="sea", fabrics=DIRECTIONAL),
            on_point("6", sash="1", cornerstones="lamp", fabrics=DIRECTIONAL),
        ],
        ids=["long strips", "all round", "with cornerstones", "cornerstones of the print"],
    )
    def test_every_turned_strip_is_caught(self, project: Project) -> None:
        result, program = made(project)
        cuts = cut_list(result)
        printed = [cut for cut in cuts.cuts if cut.part == "sashing" and cut.material == "lamp"]
        assert printed and all(cut.is_upright for cut in printed)
        turned = [each for each in mutants(result.project, cuts, program) if "print lying down" in each.change]
        assert {each.change for each in turned} >= {f"cut {cut.id}: with its print lying down" for cut in printed}
        for each in turned:
            outcome = sew(result.project, each.cuts, each.program)
            assert [problem.code.name for problem in outcome.problems] == ["print-lies-sideways"], each.change

    def test_a_strip_turned_as_it_is_sewn_in(self) -> None:
        result, program = made(on_point("6", sash="6", cornerstones="sea", fabrics=DIRECTIONAL))
        wrong = [
            each
            for each in mutants(result.project, cut_list(result), program)
            if each.change.startswith("step join") and "quarter_turns" in each.change
        ]
        assert all(not sew(result.project, each.cuts, each.program).is_valid for each in wrong)
        steps = tuple(
            replace(step, operation=replace(step.operation, quarter_turns=(2,) * len(step.operation.parts)))
            if isinstance(step.operation, JoinRun) and all(part.startswith("sashing") for part in step.operation.parts)
            else step
            for step in program.steps
        )
        assert steps != program.steps
        outcome = sew(result.project, cut_list(result), Program(steps))
        assert "print-lies-sideways" in {problem.code.name for problem in outcome.problems}


class TestDirectionalTriangles:
    """Of an upright square cut in four each triangle goes to an edge of its own; what is left over is said."""

    @pytest.mark.parametrize(
        ("rows", "columns", "cuts"),
        [
            (3, 3, {"setting-triangles": (8, None)}),
            (4, 2, {"setting-triangles": (4, None), "setting-triangles-sides": (4, 2)}),
            (2, 4, {"setting-triangles": (4, None), "setting-triangles-top-bottom": (4, 2)}),
            (1, 3, {"setting-triangles-top-bottom": (4, 2)}),
        ],
    )
    def test_squares(self, rows: int, columns: int, cuts: dict[str, tuple[int, int | None]]) -> None:
        result, _ = made(_upright(on_point("6", rows=rows, columns=columns)))
        found = [cut for cut in cut_list(result).cuts if cut.shape is CutShape.QUARTER_SQUARE_TRIANGLE]
        assert {cut.id: (cut.count.whole, cut.used_of_square) for cut in found} == cuts
        assert all(cut.is_upright for cut in found)


def _upright(project: Project) -> Project:
    triangles = project.arrangement.setting_triangles
    assert triangles is not None
    arrangement = replace(
        project.arrangement, setting_triangles=replace(triangles, fabric="reed", corner_fabric="reed")
    )
    fabrics = (*(fabric for fabric in project.fabrics if fabric.id != "reed"), REED)
    return replace(project, fabrics=fabrics, arrangement=arrangement)


HEAD = """\
format: 1
title: Sample
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
  lamp: {colour: "#e9b44c"}
blocks:
  sail:
    finished size: 6
    method: rotary
    units: [[half-square sea/fog, square lamp], [square fog, square sea]]
  buoy: {finished size: 6, grid: 2 x 2, pieces: [sea: "0,0 2,0 2,2", lamp: "0,0 2,2 0,2"]}
arrangement:
  setting: on point
  setting triangles: {fabric: fog}
"""
TAIL = """\
finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: sea}}
sizes: {runner: {}}
editions: [inches, centimetres]
"""


def _read(arrangement: str) -> tuple[Project, Project]:
    outcome = read_pattern("sample", SourceText("pattern.yaml", HEAD + arrangement + TAIL))
    assert outcome.value is not None, outcome.problems
    first, second = outcome.value.projects
    return first, second


def test_turned_and_mirrored_blocks_stand_where_the_layout_says() -> None:
    layout = "  layout: [[sail, sail turned 90], [buoy mirrored], [sail turned 180 mirrored, buoy]]\n"
    for project in _read(layout):
        result, program = made(project)
        arrangement: Arrangement = result.project.arrangement
        assert [len(line) for line in arrangement.positions] == [2, 1, 2]
        joined = [step.operation for step in program.steps if isinstance(step.operation, JoinRun)]
        assert [run.parts for run in joined] == [
            ("sail-mirrored-block", "buoy-mirrored-block", "sail-block"),
        ]  # fmt: skip
        assert joined[0].quarter_turns == (2, 0, 1)


def test_a_turned_block_alone_in_its_row_is_turned_when_its_triangles_are_sewn_on() -> None:
    for project in _read("  layout: [[sail turned 270, sail]]\n"):
        _, program = made(project)
        triangles = [step.operation for step in program.steps if isinstance(step.operation, AddSettingTriangles)]
        assert [each.quarter_turns for each in triangles] == [3, 0]


def test_plain_squares_in_the_lines_between_need_no_steps() -> None:
    for project in _read("  rows: 3\n  columns: 2\n  block: buoy\n  alternate: lamp\n"):
        result, program = made(project)
        plain = [cut for cut in cut_list(result).cuts if cut.part == "block:plain"]
        assert [(cut.shape, cut.count.whole, cut.material) for cut in plain] == [(CutShape.SQUARE, 2, "lamp")]
        # As large as the blocks they lie beside, on either ruler.
        assert plain[0].width.value == result.figure("buoy_block_raw_width").value
        assert not any(step.id.startswith(("piece-plain", "join-plain")) for step in program.steps)


def test_plain_squares_of_a_straight_top_take_turns() -> None:
    text = HEAD.replace("  setting: on point\n  setting triangles: {fabric: fog}\n", "")
    text += "  rows: 2\n  columns: 3\n  block: sail\n  alternate: lamp\n" + TAIL
    outcome = read_pattern("sample", SourceText("pattern.yaml", text))
    assert outcome.value is not None, outcome.problems
    for project in outcome.value.projects:
        result, _ = made(project)
        assert [[position.block for position in line] for line in result.project.arrangement.positions] == [
            ["sail", "plain", "sail"], ["plain", "sail", "plain"],
        ]  # fmt: skip


def test_one_column_is_written_without_lines_between() -> None:
    for project in _read("  layout: [[sail], [buoy], [sail]]\n"):
        result, _ = made(project)
        assert result.project.arrangement.positions == (
            (BlockPosition("sail"),), (), (BlockPosition("buoy"),), (), (BlockPosition("sail"),),
        )  # fmt: skip


def test_a_stated_float_is_re_drafted_and_the_chosen_one_worked_out_anew() -> None:
    inches, centimetres = _read("  rows: 2\n  columns: 2\n  block: sail\n")
    assert to_float(sized(inches).figure("float_width").value) == pytest.approx((17 - 12 * 2**0.5) / 2)
    result = sized(centimetres)
    finished = result.figure("centre_width").value - 2 * value("0.75")
    assert is_multiple(finished, Fraction(1, 2))
