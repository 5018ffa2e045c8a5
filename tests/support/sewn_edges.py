"""Edges without straight binding, cushion backs, loops and rings, written down by hand on the mat of two blocks.

The top of the mat is 17 1/2 × 10 1/2 raw (see `support.mat`); the seam allowance is 1/4 in.
"""

from __future__ import annotations

from dataclasses import replace

from evenseam.pattern import (
    BATTING,
    PROJECT,
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

from support.mat import MAT, TOP_CUTS, TOP_STEPS, TURNED_CUTS, TURNED_PROGRAM, cut, step
from support.samples import BOUND, count, length

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
