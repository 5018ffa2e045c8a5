"""Edges without straight binding, cushion backs, loops and rings, written down by hand on the mat of two blocks.

The top of the mat is 17 1/2 × 10 1/2 raw (see `support.mat`); the seam allowance is 1/4 in.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.pattern import (
    PROJECT,
    AttachCornerPockets,
    AttachLoops,
    AttachRings,
    Bind,
    CutList,
    CutShape,
    KnifeEdge,
    MakeBinding,
    MakeCornerPockets,
    Program,
    Project,
    Rings,
    RoundCorners,
    Step,
)
from evenseam.sizing.simulator import sew
from support.mat import MAT, TOP_CUTS, TOP_STEPS, TURNED_PROGRAM, cut, problems_of, step, with_cut
from support.samples import BOUND, count, length
from support.sewing_faults import mutants
from support.sewn_edges import (
    ALL,
    BY_HAND,
    CAUGHT_IN_THE_SEAM,
    CUSHION,
    FACED,
    KNIFE_EDGE,
    LOOP_STEP,
    LOOPS,
    RINGED,
    ROUND,
    SEAM,
    Sewn,
)


@pytest.mark.parametrize(("field", "name"), [("panel_fabric", "panels"), ("backing_fabric", "backing")])
def test_a_print_with_an_up_on_the_back_of_a_cushion(field: str, name: str) -> None:
    """Its panels, and the lining behind the front, are cut upright; one that lies down is noticed."""
    project, cuts, program = CUSHION
    printed = tuple(replace(fabric, is_directional=fabric.id == "reed") for fabric in project.fabrics)
    assert any(fabric.is_directional for fabric in printed)
    other = replace(project, fabrics=printed, finish=replace(project.finish, **{field: "reed"}))  # type: ignore[arg-type]
    for is_upright, problems in ((True, []), (False, ["print-lies-sideways"])):
        made = (
            replace(each, material="reed", is_upright=is_upright) if each.id == name else each for each in cuts.cuts
        )
        assert problems_of(other, CutList(tuple(made)), program) == problems


@pytest.mark.parametrize("made", ALL.values(), ids=ALL.keys())
def test_edges_are_sewn_from_their_cut_lists(made: Sewn) -> None:
    outcome = sew(*made)
    assert outcome.problems == ()
    assert outcome.value is not None
    size = (outcome.value.finished_width, outcome.value.finished_height)
    is_bound = made[0].finish.__class__ is BOUND.__class__
    assert size == ((Fraction(35, 2), Fraction(21, 2)) if is_bound else (17, 10))


@pytest.mark.parametrize("made", ALL.values(), ids=ALL.keys())
def test_any_one_mistake_is_caught(made: Sewn) -> None:
    project, cuts, program = made
    # The steps of the top are tried in the tests of the mat.
    of_the_top = tuple(
        f"{what} {each.id}:" for what, these in (("cut", TOP_CUTS), ("step", TOP_STEPS)) for each in these
    )
    wrong = [mutant for mutant in mutants(project, cuts, program) if not mutant.change.startswith(of_the_top)]
    assert len(wrong) > 150
    assert [mutant.change for mutant in wrong if sew(project, mutant.cuts, mutant.program).is_valid] == []


def finish_of(made: Sewn, **changes: object) -> Project:
    return replace(made[0], finish=replace(made[0].finish, **changes))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("project", "made", "name"),
    [
        (finish_of(FACED, facing_width=length("width", "1/2")), FACED, "facing-size-differs"),
        (finish_of(KNIFE_EDGE, quilting_stop=length("stop", "3/8")), KNIFE_EDGE, "quilting-too-near-edge"),
        (finish_of(KNIFE_EDGE, quilting_stop=length("stop", "6")), KNIFE_EDGE, "quilting-too-near-edge"),
        (finish_of(KNIFE_EDGE, stitch=length("stitch", "1/4")), KNIFE_EDGE, "topstitch-too-far"),
        (finish_of(CUSHION, overlap=length("overlap", "11")), CUSHION, "panel-size-differs"),
        (finish_of(CUSHION, hem=length("hem", "5")), CUSHION, "figure-differs"),
        (finish_of(ROUND, corner_radius=None), ROUND, "figure-differs"),
        (finish_of(ROUND, corner_radius=length("radius", "6")), ROUND, "corners-not-sewable"),
        (finish_of(ROUND, binding=BOUND.binding), ROUND, "wrong-workpiece"),
        (finish_of(ROUND, binding=replace(ROUND[0].finish.binding, shows=length("shows", "3/8"))), ROUND, "figure-differs"),
        (replace(RINGED[0], hanging=Rings(count("n", 2), length("drop", "10"))), RINGED, "sleeve-does-not-fit"),
        (replace(BY_HAND[0], hanging=replace(LOOPS, cut_length=length("l", "1/2"))), BY_HAND, "loop-size-differs"),
        (replace(BY_HAND[0], hanging=replace(LOOPS, cut_width=length("w", "1/2"))), BY_HAND, "loop-size-differs"),
        (replace(BY_HAND[0], hanging=None), BY_HAND, "hanging-differs"),
        (MAT, FACED, "wrong-workpiece"),
        (KNIFE_EDGE[0], CUSHION, "wrong-workpiece"),
    ],
)  # fmt: skip
def test_what_does_not_go_together_is_told(project: Project, made: Sewn, name: str) -> None:
    finish = project.finish
    steps = tuple(_as_decided(each, finish) for each in made[2].steps)
    assert name in problems_of(project, made[1], Program(steps))


def _as_decided(each: Step, finish: object) -> Step:
    """Return a step with the figures of another finish, so that it is the finish itself that does not work."""
    operation = each.operation
    for field in ("stitch", "overlap"):
        if hasattr(operation, field) and hasattr(finish, field):
            operation = replace(operation, **{field: getattr(finish, field)})
    if isinstance(operation, RoundCorners) and getattr(finish, "corner_radius", None) is not None:
        operation = replace(operation, radius=finish.corner_radius)  # type: ignore[attr-defined]
    if isinstance(operation, AttachRings) and isinstance(finish, KnifeEdge):
        operation = replace(operation, drop=length("drop", "10"))
    return replace(each, operation=operation)


class TestRoundCorners:
    """Round corners are cut before the binding is sewn on, and the binding is on the bias."""

    def test_square_corners_where_round_ones_were_decided(self) -> None:
        project, cuts, program = ROUND
        steps = [each for each in program.steps if each.makes != "rounded"]
        steps[-1] = step(PROJECT, Bind("trimmed", "folded", SEAM))
        assert problems_of(project, cuts, Program(tuple(steps))) == ["figure-differs"]

    def test_binding_along_the_grain(self) -> None:
        project = finish_of(ROUND, binding=BOUND.binding)
        cuts = CutList(
            tuple(replace(each, shape=CutShape.BINDING) if each.id == "binding" else each for each in ROUND[1].cuts)
        )
        assert problems_of(project, cuts, ROUND[2]) == ["corners-not-sewable"]

    def test_binding_that_shows_more(self) -> None:
        """Sewn on 3/8 in from the edge it shows as much; 3 in strips fold to 1 1/2 and reach round."""
        binding = replace(ROUND[0].finish.binding, shows=length("shows", "3/8"), strip_width=length("strip", "3"))  # type: ignore[union-attr]
        project = finish_of(ROUND, binding=binding)
        cuts = with_cut(ROUND[1], "binding", "3 x 66")
        steps = [*ROUND[2].steps[:-2], step("folded", MakeBinding("binding", length("w", "1 1/2")))]
        sewn_on = step(PROJECT, Bind("rounded", "folded", length("shows", "3/8")))
        assert problems_of(project, cuts, Program((*steps, sewn_on))) == []
        narrow = step(PROJECT, Bind("rounded", "folded", SEAM))
        assert problems_of(project, cuts, Program((*steps, narrow))) == ["figure-differs"]


class TestLoops:
    """Loops are caught in what closes the top edge, or sewn behind it at the end."""

    def test_loops_after_the_seam_is_sewn(self) -> None:
        project, cuts, _ = CAUGHT_IN_THE_SEAM
        late = (
            *TURNED_PROGRAM.steps[:8], LOOP_STEP, step("late", AttachLoops("turned-out", "loop", 3)),
            replace(TURNED_PROGRAM.steps[8], operation=replace(TURNED_PROGRAM.steps[8].operation, turned="late")),
        )  # fmt: skip
        assert "wrong-workpiece" in problems_of(project, cuts, Program(late))
        by_hand = (
            *TURNED_PROGRAM.steps[:8], LOOP_STEP, replace(TURNED_PROGRAM.steps[8], makes="closed", id="close"),
            step(PROJECT, AttachLoops("closed", "loop", 3)),
        )  # fmt: skip
        assert problems_of(project, cuts, Program(by_hand)) == []

    def test_more_loops_than_fit(self) -> None:
        project, cuts, program = BY_HAND
        many = replace(project, hanging=replace(LOOPS, number=count("number", 18)))
        more = CutList(tuple(replace(each, count=count("n", 18)) if each.id == "loops" else each for each in cuts.cuts))
        steps = [replace(each, times=18) if each.makes == "loop" else each for each in program.steps[:-1]]
        assert problems_of(many, more, Program((*steps, step(PROJECT, AttachLoops("faced", "loop", 18))))) == [
            "sleeve-does-not-fit"
        ]

    def test_loops_beyond_counting(self) -> None:
        project, cuts, program = BY_HAND
        endless = replace(project, hanging=replace(LOOPS, number=replace(LOOPS.number, value=Fraction(10**30))))
        steps = (*program.steps[:-1], step(PROJECT, AttachLoops("faced", "loop", 10**30)))
        assert "piece-missing" in problems_of(endless, cuts, Program(steps))

    def test_pockets_are_not_loops(self) -> None:
        project, cuts, program = CAUGHT_IN_THE_SEAM
        squares = (*cuts.cuts, cut("squares", "sea", "4 x 4", 2))
        both = (
            *TOP_STEPS, LOOP_STEP, step("pair", MakeCornerPockets("squares")),
            step("pocketed", AttachCornerPockets("top", "pair")), step("with-loops", AttachLoops("pocketed", "loop", 3)),
            *program.steps[len(TOP_STEPS) + 2 :],
        )  # fmt: skip
        assert "hanging-differs" in problems_of(project, CutList(squares), Program(both))


def test_a_cushion_back_that_gapes() -> None:
    """Panels an eighth shorter leave an overlap a quarter of an inch less than decided."""
    project, cuts, program = CUSHION
    steps = tuple(replace(each, measures=None) for each in program.steps)
    assert problems_of(project, with_cut(cuts, "panels", "17 1/2 x 8 1/8"), Program(steps)) == ["panel-size-differs"]
