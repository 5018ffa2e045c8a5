"""What the plan cuts and writes down, the simulator sews; and nothing else."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import (
    BlockPosition,
    CutList,
    Program,
    Project,
    Quantity,
    Setting,
    SettingTriangles,
    Sleeve,
)
from evenseam.sizing import SizedProject, assembly_program, cut_list, size_project
from evenseam.sizing.simulator import sew
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from support.every_project import every_project
from support.samples import LAP_QUILT, MUG_RUG, POCKETS, PROJECTS, SLEEVE, WALL_HANGING, grid
from support.sewing_faults import a_mutant, mutants
from support.strategies import projects

BY_HAND = (
    *PROJECTS,
    replace(MUG_RUG, size="mug-rug-with-pockets", hanging=POCKETS),
    replace(MUG_RUG, size="mug-rug-with-sleeve", hanging=SLEEVE, borders=()),
    replace(WALL_HANGING, size="wall-hanging-with-pockets", hanging=POCKETS),
)
SAMPLES = (*BY_HAND, *(replace(project, unit=Unit.CENTIMETRE, size=f"{project.size}-cm") for project in BY_HAND))


def planned(project: Project) -> tuple[SizedProject, CutList, Program]:
    outcome = size_project(project)
    assert outcome.is_valid
    assert outcome.value is not None
    cuts = cut_list(outcome.value)
    return outcome.value, cuts, assembly_program(outcome.value, cuts)


def planned_at_random(project: Project) -> tuple[SizedProject, CutList, Program]:
    """Return a plan; what is drawn may also be a project that no maker would start, and that is passed over."""
    outcome = size_project(project)
    assume(outcome.is_valid)
    assert outcome.value is not None
    assume(has_room_for_its_sleeve(outcome.value))
    return planned(project)


def has_room_for_its_sleeve(sized: SizedProject) -> bool:
    """A tube deeper than the project is high would hang out below: an author's mistake, not a fault of the plan."""
    sleeve = sized.project.hanging
    if not isinstance(sleeve, Sleeve):
        return True
    depth = (sleeve.cut_depth.value - 2 * sized.project.seam_allowance.value) / 2
    length = sized.finished_width.value + sleeve.cut_extra.value - 2 * sleeve.hem.value
    return sleeve.drop.value + depth <= sized.finished_height.value and length < sized.finished_width.value


def assert_sews_up(sized: SizedProject, cuts: CutList, program: Program) -> None:
    """The log must hold every measure of the plan, and end at the finished size."""
    outcome = sew(sized.project, cuts, program)
    assert outcome.errors == ()
    assert outcome.value is not None
    read = {measured.step: (measured.width, measured.height) for measured in outcome.value.measurements}
    for step in program.steps:
        if step.measures is not None:
            assert read[step.id] == (step.measures[0].value, step.measures[1].value)
    assert outcome.value.finished_width == sized.finished_width.value
    assert outcome.value.finished_height == sized.finished_height.value


@pytest.mark.parametrize("project", SAMPLES, ids=lambda project: project.size)
def test_samples_sew_up_in_both_editions(project: Project) -> None:
    assert_sews_up(*planned(project))


@settings(max_examples=120, deadline=None)
@given(projects())
def test_every_project_sews_up(project: Project) -> None:
    assert_sews_up(*planned_at_random(project))


@settings(max_examples=60, deadline=None)
@given(projects(units=(Unit.CENTIMETRE,)))
def test_every_centimetre_edition_sews_up(project: Project) -> None:
    assert_sews_up(*planned_at_random(project))


@pytest.mark.parametrize("project", (*BY_HAND, SAMPLES[6], SAMPLES[7]), ids=lambda project: project.size)
def test_any_one_wrong_figure_of_a_sample_is_caught(project: Project) -> None:
    """Every width and height a mark or two either way, every count, fabric, measure, and number of times."""
    sized, cuts, program = planned(project)
    names = {step.makes for step in program.steps} | {cut.id for cut in cuts.cuts}
    made = [mutant for mutant in mutants(sized.project, cuts, program) if mutant.change.split(" ")[-1] not in names]
    escaped = [mutant.change for mutant in made if sew(sized.project, mutant.cuts, mutant.program).is_valid]
    assert len(made) > 14 * len(cuts.cuts)
    assert escaped == []


@pytest.mark.parametrize("project", [MUG_RUG, BY_HAND[3]], ids=lambda project: project.size)
def test_any_one_wrong_name_in_a_sample_is_caught(project: Project) -> None:
    """Every part, piece and result called by every other name there is."""
    sized, cuts, program = planned(project)
    made = list(mutants(sized.project, cuts, program))
    assert [mutant.change for mutant in made if sew(sized.project, mutant.cuts, mutant.program).is_valid] == []


@settings(max_examples=60, deadline=None)
@given(projects(), st.data())
def test_any_one_mistake_in_any_project_is_caught(project: Project, data: st.DataObject) -> None:
    sized, cuts, program = planned_at_random(project)
    assert sew(sized.project, cuts, program).is_valid
    for _ in range(8):
        mutant = a_mutant(lambda low, high: data.draw(st.integers(low, high)), sized.project, cuts, program)
        assert not sew(sized.project, mutant.cuts, mutant.program).is_valid, mutant.change


@settings(max_examples=40, deadline=None)
@given(projects(), st.data())
def test_a_step_done_before_what_it_needs_is_caught(project: Project, data: st.DataObject) -> None:
    sized, cuts, program = planned_at_random(project)
    assert sew(sized.project, cuts, program).is_valid
    at = data.draw(st.integers(0, len(program.steps) - 1))
    step = program.steps[at]
    users = [
        index
        for index, later in enumerate(program.steps)
        if any(step.makes in (value if isinstance(value, tuple) else (value,)) for value in _values(later.operation))
    ]
    assume(users)
    steps = list(program.steps)
    steps.insert(at, steps.pop(users[0]))
    assert not sew(sized.project, cuts, Program(tuple(steps))).is_valid


def _values(operation: object) -> list[object]:
    return [getattr(operation, name) for name in operation.__dataclass_fields__]  # type: ignore[attr-defined]


@settings(max_examples=60, deadline=None)
@given(projects(), st.data())
def test_a_top_that_is_not_the_one_decided_is_caught(project: Project, data: st.DataObject) -> None:
    """A sound plan, sewn up for a project of which one decision is another: the plan no longer fits."""
    sized, cuts, program = planned_at_random(project)
    decided = sized.project
    assert sew(decided, cuts, program).is_valid
    rows = decided.arrangement.positions
    changed: list[Project] = []
    for index, border in enumerate(decided.borders):
        wider = replace(border, width=replace(border.width, value=border.width.value + Fraction(1, 8)))
        changed.append(replace(decided, borders=(*decided.borders[:index], wider, *decided.borders[index + 1 :])))
    row = data.draw(st.integers(0, len(rows) - 1))
    column = data.draw(st.integers(0, len(rows[0]) - 1))
    position = rows[row][column]
    for other in (BlockPosition(position.block, (position.quarter_turns + 2) % 4), *_others(decided, position)):
        line = (*rows[row][:column], other, *rows[row][column + 1 :])
        positions = (*rows[:row], line, *rows[row + 1 :])
        if len(rows) * len(rows[0]) > 1 or other.block != position.block:
            changed.append(replace(decided, arrangement=replace(decided.arrangement, positions=positions)))
    sashing = decided.arrangement.sashing
    # Without neighbours and without an outer strip there is no sashing to see.
    if sashing is not None and (sashing.is_around or len(rows) * len(rows[0]) > 1):
        wider_sashing = replace(sashing, width=replace(sashing.width, value=sashing.width.value + Fraction(1, 8)))
        for other_sashing in (wider_sashing, None):
            changed.append(replace(decided, arrangement=replace(decided.arrangement, sashing=other_sashing)))
    for other_project in changed:
        assert not sew(other_project, cuts, program).is_valid


class TestEveryArrangementBorderAndFinish:
    """Blocks set straight, on point or in unequal rows; borders of every kind; every finish and way of hanging."""

    @pytest.mark.parametrize("setting", Setting, ids=lambda setting: setting.value)
    @settings(max_examples=20, deadline=None)
    @given(data=st.data())
    def test_it_sews_up(self, setting: Setting, data: st.DataObject) -> None:
        assert_sews_up(*planned_at_random(data.draw(every_project(settings=(setting,)))))

    @pytest.mark.parametrize("setting", Setting, ids=lambda setting: setting.value)
    @settings(max_examples=12, deadline=None)
    @given(data=st.data())
    def test_any_one_mistake_is_caught(self, setting: Setting, data: st.DataObject) -> None:
        sized, cuts, program = planned_at_random(data.draw(every_project(settings=(setting,), most=2)))
        for _ in range(8):
            mutant = a_mutant(lambda low, high: data.draw(st.integers(low, high)), sized.project, cuts, program)
            assert not sew(sized.project, mutant.cuts, mutant.program).is_valid, mutant.change

    @settings(max_examples=25, deadline=None)
    @given(every_project(), st.data())
    def test_another_decision_is_caught(self, project: Project, data: st.DataObject) -> None:
        """A sound plan, sewn up for a project of which one width, float or distance is a mark more: it no longer fits."""
        sized, cuts, program = planned_at_random(project)
        decided = list(other_decisions(sized.project))
        assume(decided)
        what, other = data.draw(st.sampled_from(decided))
        assert not sew(other, cuts, program).is_valid, what


def other_decisions(project: Project) -> Iterator[tuple[str, Project]]:
    """Yield the project with one length decided otherwise that can be seen in the sewn piece."""
    mark = project.unit.ruler_mark
    for index, border in enumerate(project.borders):
        wider = replace(border, width=_more(border.width, mark))
        yield "border width", replace(project, borders=(*project.borders[:index], wider, *project.borders[index + 1 :]))
    triangles = project.arrangement.setting_triangles
    if isinstance(triangles, SettingTriangles):
        for field in ("float_width", "float_height"):
            value = getattr(triangles, field)
            if value is not None:
                floated = replace(triangles, **{field: _more(value, mark)})
                yield field, replace(project, arrangement=replace(project.arrangement, setting_triangles=floated))
    for field in ("backing_overage", "batting_overage", "facing_width", "facing_fold", "stitch", "overlap", "hem"):
        value = getattr(project.finish, field, None)
        if value is not None:
            yield field, replace(project, finish=replace(project.finish, **{field: _more(value, mark)}))
    for field in ("cut_depth", "cut_extra", "square", "cut_width", "cut_length", "drop", "number"):
        value = getattr(project.hanging, field, None)
        if value is not None:
            more = _more(value, Fraction(1) if field == "number" else mark)
            yield field, replace(project, hanging=replace(project.hanging, **{field: more}))  # type: ignore[type-var]
    yield "seam allowance", replace(project, seam_allowance=_more(project.seam_allowance, mark))


def _more(figure: Quantity, by: Fraction) -> Quantity:
    return replace(figure, value=figure.value + by)


def _others(project: Project, position: BlockPosition) -> list[BlockPosition]:
    return [BlockPosition(block.id, position.quarter_turns) for block in project.blocks if block.id != position.block]


def test_a_quilt_of_four_hundred_blocks_is_sewn_quickly() -> None:
    """Work grows with the different steps and the places to compare, not with the 2,800 patches."""
    import time

    block = MUG_RUG.blocks[0]
    small = replace(
        block, width=replace(block.width, value=Fraction(4)), height=replace(block.height, value=Fraction(5))
    )
    quilt = replace(
        LAP_QUILT, blocks=(small,),
        arrangement=replace(grid(20, 20), sashing=LAP_QUILT.arrangement.sashing),
    )  # fmt: skip
    sized, cuts, program = planned(quilt)
    spent = []
    for _ in range(5):
        begun = time.perf_counter()
        assert sew(sized.project, cuts, program).is_valid
        spent.append(time.perf_counter() - begun)
    assert min(spent) < 0.05
