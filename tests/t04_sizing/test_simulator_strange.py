"""Cut lists and programs that make no sense: each is answered with problems, soon, and never with an exception."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import fields, replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit, square_root
from evenseam.pattern import (
    PROJECT,
    Arrangement,
    BlockPosition,
    BorderCorners,
    Cut,
    CutList,
    CutShape,
    JoinRun,
    LayerTurned,
    PatchUse,
    Press,
    Program,
    Project,
    Quantity,
    Run,
    Setting,
    Step,
)
from evenseam.problems import Outcome, Severity
from evenseam.sizing import SewingLog
from evenseam.sizing.simulator import codes, sew
from hypothesis import given, settings
from hypothesis import strategies as st
from support.mat import (
    BOUND_CUTS,
    BOUND_PROGRAM,
    BOUND_STEPS,
    HUNG,
    MAT,
    POCKET_CUTS,
    POCKET_STEPS,
    TURNED_CUTS,
    TURNED_PROGRAM,
    cut,
    step,
    with_cut,
)
from support.samples import POCKETS, REED, SLEEVE, count, length, polygon
from support.sewing_on_point import Wanted, on_point
from support.sewn_borders import ALL as BORDERS
from support.sewn_edges import ALL as EDGES

TOPS_ON_POINT = (Wanted(2, 2), Wanted(2, 3, sash="1", is_around=True))


def names(outcome: Outcome[SewingLog]) -> set[str]:
    return {problem.code.name for problem in outcome.problems}


def seconds(work: Callable[[], object]) -> float:
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


class TestSizeOfNumbers:
    """Counts are multiplied, never counted through."""

    def test_a_step_done_more_often_than_there_are_atoms(self) -> None:
        often = Program(tuple(replace(step, times=step.times * 10**90) for step in TURNED_PROGRAM.steps))
        assert seconds(lambda: sew(MAT, TURNED_CUTS, often)) < 1
        assert "piece-missing" in names(sew(MAT, TURNED_CUTS, often))

    def test_strips_doubled_two_hundred_times(self) -> None:
        """Each step sews the last run to itself: 2^200 strips, in 200 steps."""
        pieces = replace(cut("strip", "fog", "1 1/2 x 6 1/2", 1), count=replace(count("n", 1), value=Fraction(2**200)))
        doubled = [step("run-0", JoinRun(("strip", "strip"), Run.DOWN, Press.OPEN, "strips"), times=2**199)]
        for index in range(1, 200):
            parts = (f"run-{index - 1}",) * 2
            doubled.append(
                step(f"run-{index}", JoinRun(parts, Run.DOWN, Press.OPEN, "strips"), times=2 ** (199 - index))
            )
        layers = LayerTurned("run-199", "backing", "batting", length("seam", "1/4"), length("opening", "4"), "bottom")
        program = Program((*doubled, step(PROJECT, layers)))
        cuts = CutList((*TURNED_CUTS.cuts, pieces))
        assert seconds(lambda: sew(MAT, cuts, program)) < 1
        assert not sew(MAT, cuts, program).is_valid

    def test_sashing_of_more_strips_than_anyone_can_sew(self) -> None:
        """The blocks are right, and between them lies a run of 2^60 strips; it is not walked through."""
        strips = replace(cut("strip", "fog", "1 1/2 x 6 1/2", 1), count=replace(count("n", 1), value=Fraction(2**60)))
        doubled = [step("run-0", JoinRun(("strip", "strip"), Run.ACROSS, Press.OPEN, "strips"), times=2**59)]
        for index in range(1, 60):
            parts = (f"run-{index - 1}",) * 2
            doubled.append(
                step(f"run-{index}", JoinRun(parts, Run.ACROSS, Press.OPEN, "strips"), times=2 ** (59 - index))
            )
        row = JoinRun(("quay-block", "run-59", "quay-block"), Run.ACROSS, Press.OPEN, "blocks", (0, 0, 1))
        layers = LayerTurned("row", "backing", "batting", length("seam", "1/4"), length("opening", "4"), "bottom")
        program = Program((*TURNED_PROGRAM.steps[:3], *doubled, step("row", row), step(PROJECT, layers)))
        cuts = CutList((*TURNED_CUTS.cuts, strips))
        assert seconds(lambda: sew(MAT, cuts, program)) < 1
        assert "sashing-not-as-decided" in names(sew(MAT, cuts, program))

    def test_a_chain_of_three_thousand_runs(self) -> None:
        """Each run contains the last one; nothing may depend on how deep that goes."""
        chain = [step("run-0", JoinRun(("sashing", "sashing"), Run.DOWN, Press.OPEN, "strips"))]
        for index in range(1, 3000):
            parts = (f"run-{index - 1}", "sashing")
            chain.append(step(f"run-{index}", JoinRun(parts, Run.DOWN, Press.OPEN, "strips")))
        layers = LayerTurned("run-2999", "backing", "batting", length("seam", "1/4"), length("opening", "4"), "bottom")
        strips = tuple(
            replace(each, count=count("n", 3001)) if each.id == "sashing" else each for each in TURNED_CUTS.cuts
        )
        program = Program((*chain, step(PROJECT, layers)))
        assert seconds(lambda: sew(MAT, CutList(strips), program)) < 3
        assert not sew(MAT, CutList(strips), program).is_valid

    def test_figures_with_long_fractions(self) -> None:
        odd = Fraction(10**30 + 1, 10**30)
        cuts = tuple(replace(each, width=replace(each.width, value=odd)) for each in TURNED_CUTS.cuts)
        assert seconds(lambda: sew(MAT, CutList(cuts), TURNED_PROGRAM)) < 1

    def test_figures_that_no_ruler_shows(self) -> None:
        cuts = tuple(
            replace(each, width=replace(each.width, value=square_root(2) * each.width.value))
            for each in TURNED_CUTS.cuts
        )
        assert not sew(MAT, CutList(cuts), TURNED_PROGRAM).is_valid


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_nothing_that_is_handed_in_raises(data: st.DataObject) -> None:
    """Steps in any order, fields swapped among steps, names, numbers and shapes drawn from all that occur."""
    project = data.draw(st.sampled_from([MAT, HUNG, replace(MAT, hanging=POCKETS), replace(HUNG, hanging=None)]))
    known = [each for each in (*BOUND_CUTS.cuts, *POCKET_CUTS.cuts)]
    steps = [*BOUND_STEPS, *POCKET_STEPS, *TURNED_PROGRAM.steps]
    called = st.sampled_from(sorted({each.id for each in known} | {each.makes for each in steps} | {"", "quay", "p1"}))
    cuts = tuple(data.draw(strange_cuts(known)) for _ in range(data.draw(st.integers(0, 10))))
    program = tuple(data.draw(strange_steps(steps, called)) for _ in range(data.draw(st.integers(0, 12))))
    outcome = sew(project, CutList(cuts), Program(program))
    assert outcome.is_valid == (outcome.value is not None)
    assert outcome.value is not None or outcome.errors


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_nothing_of_other_tops_and_edges_raises(data: st.DataObject) -> None:
    """The same for blocks on point, borders of every kind, other edges, and cuts and steps of one in another."""
    sources = [*BORDERS.values(), *EDGES.values(), *(on_point(wanted) for wanted in TOPS_ON_POINT)]
    project, own_cuts, own_program = data.draw(st.sampled_from(sources))
    _, other_cuts, other_program = data.draw(st.sampled_from(sources))
    known = [*own_cuts.cuts, *other_cuts.cuts]
    steps = [*own_program.steps, *other_program.steps]
    called = st.sampled_from(sorted({each.id for each in known} | {each.makes for each in steps} | {""}))
    strange = {data.draw(st.integers(0, len(known) - 1)): data.draw(strange_cuts(known)) for _ in range(2)}
    cuts = tuple(strange.get(index, each) for index, each in enumerate(own_cuts.cuts))
    made = list(own_program.steps)
    for _ in range(data.draw(st.integers(0, 3))):
        made[data.draw(st.integers(0, len(made) - 1))] = data.draw(strange_steps(steps, called))
    outcome = sew(project, CutList(cuts), Program(tuple(made)))
    assert outcome.is_valid == (outcome.value is not None)
    assert outcome.value is not None or outcome.errors


@st.composite
def strange_cuts(draw: st.DrawFn, known: list[Cut]) -> Cut:
    chosen = draw(st.sampled_from(known))
    other = draw(st.sampled_from(known))
    return replace(
        chosen, width=draw(strange_lengths(other.width)), height=draw(strange_lengths(other.height)),
        count=draw(strange_lengths(chosen.count)), material=other.material,
        shape=draw(st.sampled_from(CutShape)),
    )  # fmt: skip


def strange_lengths(length: Quantity) -> st.SearchStrategy[Quantity]:
    values = st.sampled_from(
        [length.value, length.value, length.value, Fraction(0), Fraction(-1), Fraction(1, 3), square_root(3)]
    )
    units = st.sampled_from([length.unit, length.unit, length.unit, Unit.CENTIMETRE, Unit.COUNT])
    return st.builds(lambda value, unit: replace(length, value=value, unit=unit), values, units)


@st.composite
def strange_steps(draw: st.DrawFn, steps: list[Step], called: st.SearchStrategy[str]) -> Step:
    chosen = draw(st.sampled_from(steps))
    operation = chosen.operation
    for field in fields(operation):
        if draw(st.integers(0, 3)) > 0:
            continue
        value = getattr(operation, field.name)
        if isinstance(value, str):
            operation = replace(operation, **{field.name: draw(called)})
        elif isinstance(value, Quantity):
            operation = replace(operation, **{field.name: draw(strange_lengths(value))})
        elif isinstance(value, int):
            operation = replace(operation, **{field.name: data_number(draw)})
        elif field.name == "quarter_turns":
            turns = tuple(draw(st.lists(st.integers(-5, 9), max_size=4)))
            operation = replace(operation, **{field.name: turns})
        elif field.name == "patches":
            used = draw(st.lists(st.builds(PatchUse, called, called, called), max_size=3))
            operation = replace(operation, **{field.name: tuple(used)})
        elif isinstance(value, tuple):
            operation = replace(operation, **{field.name: tuple(draw(st.lists(called, max_size=4)))})
        elif isinstance(value, Run):
            operation = replace(operation, **{field.name: draw(st.sampled_from(Run))})
    times = draw(st.sampled_from([chosen.times, chosen.times, 0, -3, 10**20]))
    return Step(draw(called), operation, draw(called), times, chosen.measures)


def data_number(draw: st.DrawFn) -> int:
    """Return a number that makes no sense, or just may."""
    return draw(st.sampled_from([0, 1, 2, 3, -1, 7, 10**20]))


STEPS = TURNED_PROGRAM.steps
ON_POINT = replace(MAT, arrangement=replace(MAT.arrangement, setting=Setting.ON_POINT))
MIRRORED = replace(
    MAT, arrangement=replace(MAT.arrangement, positions=((BlockPosition("quay"), BlockPosition("quay", 1, True)),))
)


def changed(index: int, **fields: object) -> Program:
    """Return the turned program with some fields of one step's operation changed."""
    made = replace(STEPS[index], operation=replace(STEPS[index].operation, **fields))
    return Program((*STEPS[:index], made, *STEPS[index + 1 :]))


def bound(index: int, **fields: object) -> Program:
    """Return the bound program with some fields of one step's operation changed."""
    made = replace(BOUND_STEPS[index], operation=replace(BOUND_STEPS[index].operation, **fields))
    return Program((*BOUND_STEPS[:index], made, *BOUND_STEPS[index + 1 :]))


def recut(cuts: CutList, id: str, **fields: object) -> CutList:
    """Return a cut list with some fields of one cut changed."""
    return CutList(tuple(replace(each, **fields) if each.id == id else each for each in cuts.cuts))  # type: ignore[arg-type]


def with_sleeve(**fields: object) -> Project:
    return replace(HUNG, hanging=replace(SLEEVE, **fields))  # type: ignore[arg-type]


def with_turned(**fields: object) -> Project:
    return replace(MAT, finish=replace(MAT.finish, **fields))  # type: ignore[arg-type]


DIRECTIONAL = replace(MAT, fabrics=(replace(MAT.fabrics[0], is_directional=True), *MAT.fabrics[1:]))
QUAY = MAT.blocks[0]
GAP = replace(QUAY, pieces=(*QUAY.pieces[:3], replace(QUAY.pieces[3], outline=polygon("1,1 2,1 2,2 1,3"))))
SHIFTED = replace(
    QUAY, pieces=(QUAY.pieces[0], replace(QUAY.pieces[1], outline=polygon("1,1/2 2,1/2 2,3/2 1,3/2")), *QUAY.pieces[2:])
)
NOTCHED = replace(QUAY, outline=polygon("0,0 2,0 2,3 0,3"))
THIN = cut("sashing", "fog", "1/2 x 6 1/2", 1)


CASES: dict[str, tuple[Project, CutList, Program]] = {
    "piece-missing": (MAT, recut(TURNED_CUTS, "sides", count=count("n", 1)), TURNED_PROGRAM),
    "piece-left-over": (MAT, recut(TURNED_CUTS, "sides", count=count("n", 3)), TURNED_PROGRAM),
    "workpiece-unknown": (MAT, TURNED_CUTS, Program(STEPS[1:])),
    "name-used-twice": (MAT, CutList((*TURNED_CUTS.cuts, TURNED_CUTS.cuts[0])), TURNED_PROGRAM),
    "count-not-whole": (
        MAT, recut(TURNED_CUTS, "sides", count=replace(count("n", 1), value=Fraction(5, 2))), TURNED_PROGRAM,
    ),
    "edges-differ": (MAT, with_cut(TURNED_CUTS, "sides", "2 1/2 x 7"), TURNED_PROGRAM),
    "measure-disagrees": (
        MAT, TURNED_CUTS,
        Program((replace(STEPS[0], measures=(length("w", "6"), length("h", "3 1/2"))), *STEPS[1:])),
    ),
    "wrong-fabric": (MAT, recut(TURNED_CUTS, "backing", material="fog"), TURNED_PROGRAM),
    "wrong-workpiece": (HUNG, TURNED_CUTS, TURNED_PROGRAM),
    "seam-not-whole": (replace(MAT, blocks=(SHIFTED,)), TURNED_CUTS, TURNED_PROGRAM),
    "pieces-listed-wrongly": (MAT, TURNED_CUTS, changed(2, first_pieces=("p1", "p3"))),
    "block-not-filled": (replace(MAT, blocks=(NOTCHED,)), TURNED_CUTS, TURNED_PROGRAM),
    "piece-size-wrong": (MAT, with_cut(TURNED_CUTS, "quay-sea", "3 1/2 x 3 5/8"), TURNED_PROGRAM),
    "blocks-not-as-arranged": (MAT, TURNED_CUTS, changed(3, quarter_turns=(0, 0, 0))),
    "sashing-not-as-decided": (MAT, with_cut(TURNED_CUTS, "sashing", "1 3/4 x 6 1/2"), TURNED_PROGRAM),
    "border-width-differs": (MAT, with_cut(TURNED_CUTS, "sides", "3 x 6 1/2"), TURNED_PROGRAM),
    "border-order-differs": (MAT, TURNED_CUTS, changed(4, run=Run.DOWN)),
    "top-size-differs": (
        replace(MAT, arrangement=Arrangement(
            count("rows", 2), count("columns", 1), Setting.STRAIGHT,
            ((BlockPosition("quay"),), (BlockPosition("quay", 1),)), MAT.arrangement.sashing,
        )), TURNED_CUTS, TURNED_PROGRAM,
    ),
    "layer-size-differs": (MAT, with_cut(TURNED_CUTS, "batting", "19 x 12 1/2"), TURNED_PROGRAM),
    "figure-differs": (MAT, TURNED_CUTS, changed(6, seam=length("seam", "3/8"))),
    "opening-too-long": (
        with_turned(opening=length("opening", "17")), TURNED_CUTS, changed(6, opening=length("opening", "17")),
    ),
    "topstitch-too-far": (
        with_turned(topstitch=length("topstitching", "5")), TURNED_CUTS, changed(8, distance=length("d", "5")),
    ),
    "topstitch-crosses-border": (
        with_turned(topstitch=length("topstitching", "2")), TURNED_CUTS, changed(8, distance=length("d", "2")),
    ),
    "binding-length-differs": (HUNG, with_cut(BOUND_CUTS, "binding", "2 1/4 x 65"), BOUND_PROGRAM),
    "sleeve-size-differs": (HUNG, with_cut(BOUND_CUTS, "sleeve", "19 x 8 1/2"), BOUND_PROGRAM),
    "sleeve-does-not-fit": (
        with_sleeve(drop=length("drop", "9")), BOUND_CUTS, bound(12, drop=length("drop", "9")),
    ),
    "pocket-size-differs": (
        replace(MAT, hanging=POCKETS), with_cut(POCKET_CUTS, "squares", "4 x 4 1/8"), Program(POCKET_STEPS),
    ),
    "hanging-differs": (replace(MAT, hanging=POCKETS), TURNED_CUTS, TURNED_PROGRAM),
    "print-lies-sideways": (DIRECTIONAL, TURNED_CUTS, TURNED_PROGRAM),
    "project-unfinished": (MAT, TURNED_CUTS, Program(STEPS[:-1])),
    "unit-differs": (replace(MAT, unit=Unit.CENTIMETRE), TURNED_CUTS, TURNED_PROGRAM),
    "not-sewable-yet": (MIRRORED, TURNED_CUTS, TURNED_PROGRAM),
    "step-listed-twice": (MAT, TURNED_CUTS, Program((*STEPS[:-1], replace(STEPS[-1], id=STEPS[0].id)))),
    "cut-size-not-positive": (
        MAT, recut(TURNED_CUTS, "sides", width=replace(length("w", "1"), value=Fraction(0))), TURNED_PROGRAM,
    ),
}  # fmt: skip
ELSEWHERE = {
    "patch-too-small", "patch-too-large", "patch-off-grid", "binding-too-narrow", "binding-barely-reaches",
    "unit-not-trimmed", "units-differ", "corners-not-sewable", "quilting-too-near-edge", "facing-size-differs",
    "panel-size-differs", "loop-size-differs",
}  # fmt: skip
"""Told in the tests of projects written down by hand."""


@pytest.mark.parametrize("name", CASES)
def test_each_problem_has_a_case(name: str) -> None:
    outcome = sew(*CASES[name])
    assert name in names(outcome)
    code = next(code for code in codes.CODES if code.name == name)
    assert outcome.is_valid == (code.severity is Severity.WARNING)
    for problem in outcome.problems:
        assert problem.message[0] != " "
        assert "Fraction" not in problem.message
        assert "Quantity" not in problem.message


def test_each_code_has_a_case() -> None:
    listed = {value.name for value in vars(codes).values() if isinstance(value, codes.Code)}
    assert {code.name for code in codes.CODES} == listed
    assert set(CASES) | ELSEWHERE == listed


@pytest.mark.parametrize(
    ("project", "name"),
    [
        (ON_POINT, "blocks-not-as-arranged"),
        (replace(MAT, borders=(replace(MAT.borders[0], corners=BorderCorners.MITRED),)), "border-order-differs"),
        (replace(MAT, borders=(replace(MAT.borders[0], corners=BorderCorners.PARTIAL_SEAM),)), "border-order-differs"),
        (replace(MAT, blocks=(GAP,)), "wrong-workpiece"),
        (replace(MAT, blocks=(replace(QUAY, width=length("w", "0")),)), "cut-size-not-positive"),
        (replace(MAT, blocks=()), "workpiece-unknown"),
        (replace(MAT, arrangement=replace(MAT.arrangement, positions=())), "blocks-not-as-arranged"),
        (replace(MAT, arrangement=replace(MAT.arrangement, rows=count("rows", 3))), "blocks-not-as-arranged"),
        (replace(MAT, borders=()), "workpiece-unknown"),
        (HUNG, "wrong-workpiece"),
        (with_turned(backing_overage=length("overage", "-1")), "cut-size-not-positive"),
        (replace(MAT, fabrics=(*MAT.fabrics[:2], replace(MAT.fabrics[2], is_directional=True), REED)), "print-lies-sideways"),
    ],
)  # fmt: skip
def test_a_project_that_does_not_go_with_the_plan(project: Project, name: str) -> None:
    assert name in names(sew(project, TURNED_CUTS, TURNED_PROGRAM))


def test_a_strip_that_two_seams_eat_up() -> None:
    cuts = recut(TURNED_CUTS, "sashing", width=THIN.width)
    thin = replace(MAT, arrangement=replace(MAT.arrangement, sashing=None))
    assert not sew(thin, cuts, TURNED_PROGRAM).is_valid
    assert not sew(MAT, cuts, TURNED_PROGRAM).is_valid


@pytest.mark.parametrize("program", [Program(()), Program(STEPS[:1])])
def test_a_program_that_stops_early(program: Program) -> None:
    assert "project-unfinished" in names(sew(MAT, TURNED_CUTS, program))
    assert "project-unfinished" in names(sew(MAT, CutList(()), program))
