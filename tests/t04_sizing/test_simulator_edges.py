"""Edges without straight binding, cushion backs, loops and rings, written down by hand on the mat of two blocks.

The top of the mat is 17 1/2 × 10 1/2 raw (see `support.mat`); the seam allowance is 1/4 in.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.pattern import (
    BATTING,
    PROJECT,
    AttachCornerPockets,
    AttachLoops,
    AttachRings,
    Bind,
    CloseEnvelope,
    CloseKnifeEdge,
    Cut,
    CutList,
    CutShape,
    EnvelopeBack,
    Face,
    Faced,
    Grain,
    HemPanel,
    KnifeEdge,
    LayerForQuilting,
    LayerTurned,
    Loops,
    MakeBinding,
    MakeCornerPockets,
    MakeLoop,
    Program,
    Project,
    QuiltLayers,
    Rings,
    RoundCorners,
    SquareUp,
    Step,
    TrimForKnifeEdge,
)
from evenseam.sizing.simulator import sew
from support.mat import MAT, TOP_CUTS, TOP_STEPS, TURNED_CUTS, TURNED_PROGRAM, cut, problems_of, step, with_cut
from support.samples import BOUND, count, length
from support.sewing_faults import mutants

SEAM = length("seam", "1/4")
LAYERS = {
    "backing_fabric": "sea", "backing_overage": length("backing overage", "2"),
    "batting_overage": length("batting overage", "2"), "backing_seam": length("backing seam allowance", "1/2"),
}  # fmt: skip
# Quilted: backing and batting 2 in larger on every side, 21 1/2 × 14 1/2.
QUILTED_CUTS = (*TOP_CUTS, cut("backing", "sea", "21 1/2 x 14 1/2", 1), cut("batting", BATTING, "21 1/2 x 14 1/2", 1))
QUILTED = (
    *TOP_STEPS,
    step("layered", LayerForQuilting("top", "backing", "batting"), "21 1/2 x 14 1/2"),
    step("quilted", QuiltLayers("layered")),
)
SQUARED = (
    *QUILTED,
    step("trimmed", SquareUp("quilted", length("width", "17 1/2"), length("height", "10 1/2")), "17 1/2 x 10 1/2"),
)
Sewn = tuple[Project, CutList, Program]


def sewn(project: Project, cuts: tuple[Cut, ...], *steps: Step) -> Sewn:
    return project, CutList(cuts), Program(steps)


# Faced: sides as long as the mat is high, top and bottom as long as it is wide; it finishes 17 × 10.
FACED = sewn(
    replace(MAT, finish=Faced(**LAYERS, facing_fabric="fog", facing_width=length("facing width", "2 1/2"), facing_fold=length("fold", "1/4"))),
    (*QUILTED_CUTS, cut("facing-sides", "fog", "2 1/2 x 10 1/2", 2), cut("facing-ends", "fog", "17 1/2 x 2 1/2", 2)),
    *SQUARED,
    step(PROJECT, Face("trimmed", "facing-sides", "facing-ends", SEAM, length("fold", "1/4")), "17 x 10"),
)  # fmt: skip

# A knife edge: quilted no nearer than 3/4 in, folded in by 1/4, stitched 1/8 from the fold: 17 × 10.
KNIFE = KnifeEdge(**LAYERS, quilting_stop=length("quilting stop", "3/4"), stitch=length("stitch", "1/8"))
KNIFE_EDGE = sewn(
    replace(MAT, finish=KNIFE), QUILTED_CUTS, *QUILTED,
    step("ready", TrimForKnifeEdge("quilted", SEAM), "17 1/2 x 10 1/2"),
    step(PROJECT, CloseKnifeEdge("ready", SEAM, length("stitch", "1/8")), "17 x 10"),
)  # fmt: skip

# An envelope back: two panels that overlap by 4 in are each (10 1/2 + 4) ÷ 2 = 7 1/4 high when hemmed, cut with two
# folds of 1/2 in: 8 1/4. Turned: 17 × 10.
CUSHION = sewn(
    replace(MAT, finish=EnvelopeBack(**LAYERS, panel_fabric="fog", overlap=length("overlap", "4"), hem=length("hem", "1/2"))),
    (*QUILTED_CUTS, cut("panels", "fog", "17 1/2 x 8 1/4", 2)),
    *SQUARED,
    step("hemmed", HemPanel("panels", length("hem", "1/2")), "17 1/2 x 7 1/4", 2),
    step(PROJECT, CloseEnvelope("trimmed", "hemmed", SEAM, length("overlap", "4")), "17 x 10"),
)  # fmt: skip

# Round corners: the binding is as long as for square ones, 2 × (17 1/2 + 10 1/2) + 10 = 66, and on the bias.
ROUND = sewn(
    replace(MAT, finish=replace(BOUND, corner_radius=length("radius", "2"), binding=replace(BOUND.binding, grain=Grain.BIAS))),
    (*QUILTED_CUTS, cut("binding", "sea", "2 1/4 x 66", 1, shape=CutShape.BIAS_BINDING)),
    *SQUARED,
    step("rounded", RoundCorners("trimmed", length("radius", "2")), "17 1/2 x 10 1/2"),
    step("folded", MakeBinding("binding", length("folded width", "1 1/8"))),
    step(PROJECT, Bind("rounded", "folded", SEAM), "17 1/2 x 10 1/2"),
)  # fmt: skip

# Three loops of a strip 2 1/2 × 6: half of 2 1/2 less the seam, 1 in wide; 3 in long when folded. (A pot holder's loop of
# 2 × 6 in folds to 3 in too: 52quilts, "Magic Squares", 2012, as read in the handbook.)
LOOPS = Loops("fog", count("number of loops", 3), length("loop width", "2 1/2"), length("loop length", "6"))
LOOP_CUT = cut("loops", "fog", "2 1/2 x 6", 3)
LOOP_STEP = step("loop", MakeLoop("loops", SEAM, length("width", "1"), length("length", "3")), "1 x 3", 3)
CAUGHT_IN_THE_SEAM = sewn(
    replace(MAT, hanging=LOOPS), (*TURNED_CUTS.cuts, LOOP_CUT), *TOP_STEPS, LOOP_STEP,
    step("with-loops", AttachLoops("top", "loop", 3), "17 1/2 x 10 1/2"),
    step("layered", LayerTurned("with-loops", "backing", "batting", SEAM, length("opening", "4"), "bottom")),
    *TURNED_PROGRAM.steps[7:],
)  # fmt: skip
UNDER_THE_BINDING = sewn(
    replace(MAT, finish=BOUND, hanging=LOOPS), (*QUILTED_CUTS, cut("binding", "sea", "2 1/4 x 66", 1, shape=CutShape.BINDING), LOOP_CUT),
    *SQUARED, LOOP_STEP, step("with-loops", AttachLoops("trimmed", "loop", 3)),
    step("folded", MakeBinding("binding", length("folded width", "1 1/8"))),
    step(PROJECT, Bind("with-loops", "folded", SEAM), "17 1/2 x 10 1/2"),
)  # fmt: skip
BY_HAND = sewn(
    replace(FACED[0], hanging=LOOPS), (*FACED[1].cuts, LOOP_CUT), *FACED[2].steps[:-1],
    replace(FACED[2].steps[-1], makes="faced", id="make-faced"), LOOP_STEP,
    step(PROJECT, AttachLoops("faced", "loop", 3), "17 x 10"),
)  # fmt: skip
RINGED = sewn(
    replace(KNIFE_EDGE[0], hanging=Rings(count("number of rings", 2), length("drop", "1"))), KNIFE_EDGE[1].cuts,
    *KNIFE_EDGE[2].steps[:-1], replace(KNIFE_EDGE[2].steps[-1], makes="closed", id="make-closed"),
    step(PROJECT, AttachRings("closed", 2, length("drop", "1")), "17 x 10"),
)  # fmt: skip
ALL = {
    "faced": FACED, "knife edge": KNIFE_EDGE, "cushion": CUSHION, "round corners": ROUND, "loops in the seam": CAUGHT_IN_THE_SEAM,
    "loops under the binding": UNDER_THE_BINDING, "loops by hand": BY_HAND, "rings": RINGED,
}  # fmt: skip


@pytest.mark.parametrize(("field", "name"), [("panel_fabric", "panels"), ("backing_fabric", "backing")])
def test_a_print_with_an_up_on_the_back_of_a_cushion(field: str, name: str) -> None:
    """Its panels, and the lining behind the front, are cut upright; one that lies down is noticed."""
    project, cuts, program = CUSHION
    printed = tuple(replace(fabric, is_directional=fabric.id == "reed") for fabric in project.fabrics)
    assert any(fabric.is_directional for fabric in printed)
    other = replace(project, fabrics=printed, finish=replace(project.finish, **{field: "reed"}))  # type: ignore[arg-type]
    for is_upright, problems in ((True, []), (False, ["print-lies-sideways"])):
        made = (replace(each, material="reed", is_upright=is_upright) if each.id == name else each for each in cuts.cuts)
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
