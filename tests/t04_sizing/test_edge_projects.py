"""Every finish and everything a project hangs by: cut, planned and sewn by the simulator."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import sign
from evenseam.pattern import (
    PROJECT,
    AttachLoops,
    Bound,
    EnvelopeBack,
    Faced,
    Finish,
    Hanging,
    KnifeEdge,
    Loops,
    MakeLoop,
    Project,
)
from evenseam.sizing import assembly_program, cut_list, sew, size_project
from hypothesis import assume, given, settings
from support.edges import ENVELOPE, FACED, KNIFE_EDGE, LOOPS, RINGS, ROUNDED, edged_projects, showing
from support.samples import BOUND, MUG_RUG, POCKETS, SLEEVE, TURNED, WALL_HANGING
from support.tops import sized

FINISHES = (TURNED, BOUND, ROUNDED, showing("3/8"), FACED, KNIFE_EDGE, ENVELOPE)
HANGINGS = (None, SLEEVE, POCKETS, LOOPS, RINGS)


def _goes_together(finish: Finish, hanging: Hanging | None) -> bool:
    if isinstance(finish, EnvelopeBack):
        return hanging is None
    return not (isinstance(finish, KnifeEdge) and hanging is POCKETS)


TOGETHER = [(finish, hanging) for finish in FINISHES for hanging in HANGINGS if _goes_together(finish, hanging)]


@pytest.mark.parametrize(
    ("finish", "hanging"), TOGETHER, ids=[f"{type(f).__name__} {type(h).__name__}" for f, h in TOGETHER]
)
class TestEveryEdge:
    """What holds for every finish with everything it can hang by."""

    def test_it_sews_up(self, finish: Finish, hanging: Hanging | None) -> None:
        result = sized(replace(WALL_HANGING, finish=finish, hanging=hanging))
        cuts = cut_list(result)
        program = assembly_program(result, cuts)
        outcome = sew(result.project, cuts, program)
        assert outcome.value is not None, outcome.problems
        assert not outcome.problems
        assert outcome.value.finished_width == result.finished_width.value
        assert program.steps[-1].makes == PROJECT

    def test_pieces_cover_the_finished_project_once(self, finish: Finish, hanging: Hanging | None) -> None:
        result = sized(replace(WALL_HANGING, finish=finish, hanging=hanging))
        whole = result.finished_width.value * result.finished_height.value
        if isinstance(finish, Bound) and finish.corner_radius is not None:
            # Four corners are gone: a square less a quarter circle, drawn in straight pieces just inside the circle.
            radius = finish.corner_radius.value
            lost = whole - sum((placed.outline.area for placed in result.placed), Fraction(0))
            assert radius * radius * (4 - Fraction(22, 7)) < lost < radius * radius * (4 - Fraction(31, 10))
        else:
            assert sum((placed.outline.area for placed in result.placed), Fraction(0)) == whole

    def test_other_edition_sews_up(self, finish: Finish, hanging: Hanging | None) -> None:
        from evenseam.exact import Unit

        result = sized(replace(WALL_HANGING, finish=finish, hanging=hanging, unit=Unit.CENTIMETRE))
        cuts = cut_list(result)
        assert all(cut.width.unit is Unit.CENTIMETRE for cut in cuts.cuts)
        outcome = sew(result.project, cuts, assembly_program(result, cuts))
        assert outcome.value is not None, outcome.problems


def _finished(project: Project) -> tuple[object, object]:
    result = sized(project)
    return result.finished_width.value, result.finished_height.value


class TestSizes:
    """What an edge takes from the raw top."""

    @pytest.mark.parametrize("finish", [FACED, KNIFE_EDGE, ENVELOPE, TURNED])
    def test_sewn_and_folded_edges_take_a_seam_allowance_all_round(self, finish: Finish) -> None:
        assert _finished(replace(MUG_RUG, finish=finish)) == (8, 11)

    @pytest.mark.parametrize("finish", [BOUND, ROUNDED, showing("3/8"), showing("1/2")])
    def test_bound_edges_take_nothing(self, finish: Finish) -> None:
        assert _finished(replace(MUG_RUG, finish=finish)) == (Fraction(17, 2), Fraction(23, 2))


class TestLoops:
    """Where loops come in."""

    def test_they_are_caught_in_the_edge_where_it_can_catch_them(self) -> None:
        for finish in (TURNED, BOUND, FACED):
            result = sized(replace(WALL_HANGING, finish=finish, hanging=LOOPS))
            steps = assembly_program(result, cut_list(result)).steps
            place = next(number for number, step in enumerate(steps) if isinstance(step.operation, AttachLoops))
            assert isinstance(steps[place - 1].operation, MakeLoop)
            assert steps[place - 1].times == 3
            assert place < len(steps) - 1, finish

    def test_they_are_sewn_on_by_hand_where_the_edge_is_folded_in(self) -> None:
        result = sized(replace(WALL_HANGING, finish=KNIFE_EDGE, hanging=LOOPS))
        assert isinstance(assembly_program(result, cut_list(result)).steps[-1].operation, AttachLoops)


class TestRandomEdges:
    """Any arrangement with any finish, in either edition."""

    @settings(max_examples=30, deadline=None)
    @given(edged_projects())
    def test_whatever_can_be_sized_sews_up(self, project: Project) -> None:
        outcome = size_project(project)
        # A random project may be too small for the loops, the corners or the facing it drew; that is told as such.
        told = {problem.code.name for problem in outcome.errors}
        assume(not told & {"finish-does-not-fit", "hanging-too-large", "corners-too-round", "binding-shows-too-little"})
        assert outcome.value is not None, outcome.problems
        cuts = cut_list(outcome.value)
        sewn = sew(outcome.value.project, cuts, assembly_program(outcome.value, cuts))
        assert sewn.value is not None, sewn.problems
        assert sewn.value.finished_height == outcome.value.finished_height.value

    @settings(max_examples=25, deadline=None)
    @given(edged_projects())
    def test_nothing_placed_lies_outside_the_finished_project(self, project: Project) -> None:
        outcome = size_project(project)
        assume(outcome.value is not None)
        assert outcome.value is not None
        width, height = outcome.value.finished_width.value, outcome.value.finished_height.value
        for placed in outcome.value.placed:
            left, top, right, bottom = placed.outline.bounds
            assert sign(left) >= 0 and sign(top) >= 0
            assert sign(width - right) >= 0 and sign(height - bottom) >= 0
            assert placed.outline.is_convex


def test_rod_is_told_for_everything_that_hangs() -> None:
    for hanging in (SLEEVE, POCKETS, LOOPS, RINGS):
        result = sized(replace(WALL_HANGING, hanging=hanging))
        rod, width = result.figure("rod_length").value, result.finished_width.value
        assert (rod > width) is isinstance(hanging, Loops)
        if hanging is SLEEVE:
            assert result.figure("sleeve_finished_length").value < rod <= width
        assert result.figure("weight").unit.symbol == "lb"


def test_faced_edge_shows_no_strip() -> None:
    result = sized(replace(MUG_RUG, finish=FACED))
    assert isinstance(result.project.finish, Faced)
    assert {placed.fabric for placed in result.placed} == {"lamp", "sea", "fog"}
