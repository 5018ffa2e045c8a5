"""A mat written down by hand, as a maker would on squared paper: its cuts and its steps, turned or bound.

No figure here comes from the sizing of projects: the sums stand in the comments.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import (
    BATTING,
    PROJECT,
    AddBorderStrips,
    Arrangement,
    AttachCornerPockets,
    AttachSleeve,
    Bind,
    Block,
    BlockPiece,
    BlockPosition,
    Border,
    BorderOrder,
    Cut,
    CutList,
    CutShape,
    Given,
    JoinPieces,
    JoinRun,
    LayerForQuilting,
    LayerTurned,
    MakeBinding,
    MakeCornerPockets,
    MakeSleeve,
    Method,
    Operation,
    Press,
    Program,
    Project,
    Quantity,
    QuiltLayers,
    Run,
    Sashing,
    Setting,
    SquareUp,
    Step,
    Topstitch,
    TurnOut,
)
from evenseam.problems import Place
from evenseam.sizing.simulator import sew

from support.samples import BOUND, FOG, LAMP, REED, SEA, SLEEVE, TURNED, count, length, polygon


def cut(id: str, material: str, size: str, pieces: int, part: str = "", shape: CutShape = CutShape.RECTANGLE) -> Cut:
    """Return a cut from "3 1/2 x 4"."""
    width, height = size.split(" x ")
    return Cut(
        id, id.replace("-", " "), material, shape, length(f"{id} width", width), length(f"{id} height", height),
        count(f"{id} count", pieces), part,
    )  # fmt: skip


def step(makes: str, operation: Operation, measures: str = "", times: int = 1) -> Step:
    """Return a step named like what it makes."""
    sides = measures.split(" x ") if measures else []
    read = tuple(length(name, side) for name, side in zip(("width", "height"), sides, strict=False))
    return Step(f"make-{makes}", operation, makes, times, (read[0], read[1]) if read else None)


def pieces(*rows: str) -> tuple[BlockPiece, ...]:
    """Return pieces from "p1 sea 0,0 3,0 3,3 0,3"."""
    return tuple(
        BlockPiece(id, fabric, polygon(corners)) for id, fabric, corners in (row.split(" ", 2) for row in rows)
    )


def with_cut(cuts: CutList, id: str, size: str) -> CutList:
    width, height = size.split(" x ")
    return CutList(
        tuple(
            replace(cut, width=length("width", width), height=length("height", height)) if cut.id == id else cut
            for cut in cuts.cuts
        )
    )


def problems_of(project: Project, cuts: CutList, program: Program) -> list[str]:
    return [problem.code.name for problem in sew(project, cuts, program).problems]


# Two four-patch blocks, 6 in finished, of squares cut 3 1/2 (3 and two seams of 1/4); 1 in of sashing between them;
# a 2 in border, sides first. Row: 6 1/2 + 1 1/2 + 6 1/2 − 4 × 1/4 = 13 1/2 wide, 6 1/2 high. With the border
# 13 1/2 + 2 × 2 1/2 − 4 × 1/4 = 17 1/2 wide, 6 1/2 + 4 = 10 1/2 high; turned: 17 × 10.
FOUR_PATCH = Block(
    "quay", "Quay", length("quay width", "6"), length("quay height", "6"), Fraction(2), Fraction(2),
    polygon("0,0 2,0 2,2 0,2"),
    pieces("p1 sea 0,0 1,0 1,1 0,1", "p2 fog 1,0 2,0 2,1 1,1", "p3 fog 0,1 1,1 1,2 0,2", "p4 sea 1,1 2,1 2,2 1,2"),
    Method.ROTARY,
)  # fmt: skip
WIDTH_PLACE = Place("patterns/quay/pattern.yaml", 12, 10, 12, 11)
BORDER = Border(
    "outer-border", "the outer border",
    Quantity("outer border width", Fraction(2), Unit.INCH, Given(WIDTH_PLACE, "2")), "lamp", BorderOrder.SIDES_FIRST,
)  # fmt: skip
MAT = Project(
    "mat", "Mat", Unit.INCH, length("seam allowance", "1/4"), length("usable width", "42"), (SEA, FOG, LAMP, REED),
    (FOUR_PATCH,),
    Arrangement(
        count("rows", 1), count("columns", 2), Setting.STRAIGHT, ((BlockPosition("quay"), BlockPosition("quay", 1)),),
        Sashing(length("sashing width", "1"), "fog", is_around=False),
    ),
    (BORDER,), TURNED, None, length("patch margin", "1/4"), "Cotton batting",
)  # fmt: skip
TOP_CUTS = (
    cut("quay-sea", "sea", "3 1/2 x 3 1/2", 4), cut("quay-fog", "fog", "3 1/2 x 3 1/2", 4),
    cut("sashing", "fog", "1 1/2 x 6 1/2", 1), cut("sides", "lamp", "2 1/2 x 6 1/2", 2),
    cut("ends", "lamp", "17 1/2 x 2 1/2", 2),
)  # fmt: skip
TOP_STEPS = (
    step("upper", JoinPieces("quay", "quay-sea", ("p1",), "quay-fog", ("p2",), Press.OPEN), "6 1/2 x 3 1/2", 2),
    step("lower", JoinPieces("quay", "quay-fog", ("p3",), "quay-sea", ("p4",), Press.OPEN), "6 1/2 x 3 1/2", 2),
    step("quay-block", JoinPieces("quay", "upper", ("p1", "p2"), "lower", ("p3", "p4"), Press.OPEN), "6 1/2 x 6 1/2", 2),
    step(
        "row", JoinRun(("quay-block", "sashing", "quay-block"), Run.ACROSS, Press.SASHING, "blocks", (0, 0, 1)),
        "13 1/2 x 6 1/2",
    ),
    step("with-sides", AddBorderStrips("outer-border", "row", "sides", Run.ACROSS, Press.OUTWARD), "17 1/2 x 6 1/2"),
    step("top", AddBorderStrips("outer-border", "with-sides", "ends", Run.DOWN, Press.OUTWARD), "17 1/2 x 10 1/2"),
)  # fmt: skip
# Backing and batting 1 in larger on every side: 19 1/2 × 12 1/2.
TURNED_CUTS = CutList(
    (*TOP_CUTS, cut("backing", "sea", "19 1/2 x 12 1/2", 1), cut("batting", BATTING, "19 1/2 x 12 1/2", 1))
)
TURNED_PROGRAM = Program((
    *TOP_STEPS,
    step("layered", LayerTurned("top", "backing", "batting", length("seam", "1/4"), length("opening", "4"), "bottom")),
    step("turned-out", TurnOut("layered"), "17 x 10"),
    step(PROJECT, Topstitch("turned-out", length("topstitching", "1/8")), "17 x 10"),
))  # fmt: skip
# Bound, with a sleeve by the show rule: 2 in more on every side: 21 1/2 × 14 1/2. Binding: 2 × (17 1/2 + 10 1/2) + 10
# = 66, folded to 1 1/8. Sleeve: cut 17 1/2 + 2 = 19 1/2 × 8 1/2, hems 1 1/2: 16 1/2 × (8 1/2 − 1/2) ÷ 2 = 4.
HUNG = replace(MAT, finish=BOUND, hanging=SLEEVE)
BOUND_CUTS = CutList((
    *TOP_CUTS, cut("backing", "sea", "21 1/2 x 14 1/2", 1), cut("batting", BATTING, "21 1/2 x 14 1/2", 1),
    cut("binding", "sea", "2 1/4 x 66", 1, shape=CutShape.BINDING), cut("sleeve", "sea", "19 1/2 x 8 1/2", 1),
))  # fmt: skip
BOUND_STEPS = (
    *TOP_STEPS,
    step("layered", LayerForQuilting("top", "backing", "batting")),
    step("quilted", QuiltLayers("layered")),
    step("trimmed", SquareUp("quilted", length("width", "17 1/2"), length("height", "10 1/2")), "17 1/2 x 10 1/2"),
    step("folded", MakeBinding("binding", length("folded width", "1 1/8"))),
    step("bound", Bind("trimmed", "folded", length("seam", "1/4")), "17 1/2 x 10 1/2"),
    step(
        "tube",
        MakeSleeve(
            "sleeve", length("hem", "1 1/2"), length("seam", "1/4"), length("length", "16 1/2"), length("depth", "4")
        ),
    ),
    step(PROJECT, AttachSleeve("bound", "tube", length("drop", "1")), "17 1/2 x 10 1/2"),
)  # fmt: skip
BOUND_PROGRAM = Program(BOUND_STEPS)


POCKET_CUTS = CutList((*TURNED_CUTS.cuts, cut("squares", "sea", "4 x 4", 2, shape=CutShape.SQUARE)))
POCKET_STEPS = (
    *TOP_STEPS,
    step("pair", MakeCornerPockets("squares")),
    step("top-with-pockets", AttachCornerPockets("top", "pair")),
    step(
        "layered",
        LayerTurned("top-with-pockets", "backing", "batting", length("seam", "1/4"), length("opening", "4"), "top"),
    ),
    *TURNED_PROGRAM.steps[7:],
)
