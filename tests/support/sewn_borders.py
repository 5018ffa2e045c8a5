"""Borders that are mitred, pass their corners or are made of blocks, written down by hand round a plain mat.

The mat is one plain piece of sea, 12 × 6 in finished; the seam allowance is 1/4 in. The sums stand in the comments.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.pattern import (
    BATTING,
    PROJECT,
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    Arrangement,
    BlockPosition,
    Border,
    BorderCorners,
    BorderOrder,
    Cut,
    CutList,
    JoinRun,
    LayerTurned,
    PiecedBorder,
    Press,
    Program,
    Project,
    Run,
    Setting,
    Step,
    Topstitch,
    TurnOut,
)

from support.mat import MAT, cut, step
from support.samples import TURNED, count, length
from support.tops import plain_block, value

MITRED, PARTIAL = BorderCorners.MITRED, BorderCorners.PARTIAL_SEAM
Sewn = tuple[Project, CutList, Program]


def border(id: str, width: str, fabric: str, corners: BorderCorners = BorderCorners.BUTTED, **more: object) -> Border:
    made = Border(id, f"the {id} border", length(f"{id} width", width), fabric, BorderOrder.SIDES_FIRST, corners)
    return replace(made, **more)


def mat(borders: tuple[Border, ...], cuts: tuple[Cut, ...], steps: tuple[Step, ...], raw: str, *blocks: object) -> Sewn:
    """Return the mat with its borders, layered and turned; `raw` is the size of its top, the last step makes "top"."""
    wide, high = raw.split(" x ")
    plain = replace(plain_block(Fraction(12), Fraction(6)), pieces=plain_pieces("sea"))
    project = replace(
        MAT, blocks=(plain, *blocks), borders=borders, finish=replace(TURNED, opening=length("opening", "2")),
        arrangement=Arrangement(count("rows", 1), count("columns", 1), Setting.STRAIGHT, ((BlockPosition("plain"),),)),
        fabrics=tuple(replace(fabric, is_directional=False) for fabric in MAT.fabrics),
    )  # fmt: skip
    layer = f"{value(wide) + 2} x {value(high) + 2}"
    finished = f"{value(wide) - Fraction(1, 2)} x {value(high) - Fraction(1, 2)}"
    layers = LayerTurned("top", "backing", "batting", length("seam", "1/4"), length("opening", "2"), "left")
    return project, CutList((
        cut("centre", "sea", "12 1/2 x 6 1/2", 1, "block:plain"), *cuts,
        cut("backing", "sea", layer, 1), cut("batting", BATTING, layer, 1),
    )), Program((
        *steps, step("layered", layers), step("turned-out", TurnOut("layered"), finished),
        step(PROJECT, Topstitch("turned-out", length("topstitching", "1/8")), finished),
    ))  # fmt: skip


def plain_pieces(fabric: str) -> tuple[object, ...]:
    return tuple(replace(piece, fabric=fabric) for piece in plain_block(Fraction(1), Fraction(1)).pieces)


# Mitred, 2 in wide: from raw point to raw point 12 1/2 + 2 × 2 = 16 1/2 and 6 1/2 + 4 = 10 1/2; 4 in more of each.
# The top: 16 1/2 × 10 1/2.
ONE_MITRED = mat(
    (border("rim", "2", "lamp", MITRED),),
    (cut("sides", "lamp", "2 1/2 x 14 1/2", 2), cut("ends", "lamp", "20 1/2 x 2 1/2", 2)),
    (step("top", AddMitredBorder(("rim",), "centre", "sides", "ends"), "16 1/2 x 10 1/2"),),
    "16 1/2 x 10 1/2",
)

# Two mitred as one, 1 in of fog and 2 in of lamp: 3 in together. 12 1/2 + 6 = 18 1/2, 6 1/2 + 6 = 12 1/2, and 6 in more.
# Joined: 1 1/2 + 2 1/2 − 1/2 = 3 1/2 wide, the outer one at the left and at the top.
TWO_MITRED = mat(
    (border("inner", "1", "fog", MITRED), border("outer", "2", "lamp", MITRED)),
    (
        cut("inner-sides", "fog", "1 1/2 x 18 1/2", 2), cut("outer-sides", "lamp", "2 1/2 x 18 1/2", 2),
        cut("inner-ends", "fog", "24 1/2 x 1 1/2", 2), cut("outer-ends", "lamp", "24 1/2 x 2 1/2", 2),
    ),
    (
        step("sides", JoinRun(("outer-sides", "inner-sides"), Run.ACROSS, Press.OPEN, "strips"), "3 1/2 x 18 1/2", 2),
        step("ends", JoinRun(("outer-ends", "inner-ends"), Run.DOWN, Press.OPEN, "strips"), "24 1/2 x 3 1/2", 2),
        step("top", AddMitredBorder(("inner", "outer"), "centre", "sides", "ends"), "18 1/2 x 12 1/2"),
    ),
    "18 1/2 x 12 1/2",
)  # fmt: skip

# Each strip one edge and one width long: 12 1/2 + 2 = 14 1/2, 6 1/2 + 2 = 8 1/2. The top: 16 1/2 × 10 1/2.
PASSING = mat(
    (border("rim", "2", "lamp", PARTIAL),),
    (cut("sides", "lamp", "2 1/2 x 8 1/2", 2), cut("ends", "lamp", "14 1/2 x 2 1/2", 2)),
    (step("top", AddPartialSeamBorder("rim", "centre", "sides", "ends"), "16 1/2 x 10 1/2"),),
    "16 1/2 x 10 1/2",
)

# A border of blocks 4 wide and 2 high. 12 is three of them; 6 takes two, 8, with a spacer of 1 at top and bottom.
# Along the top: 3 blocks, 12 1/2, and corners of 2 1/2: 16 1/2. Along the sides: 2 blocks, 8 1/2. The top: 16 1/2 × 12 1/2.
EDGE_BLOCK = replace(plain_block(Fraction(4), Fraction(2), id="edge"), pieces=plain_pieces("fog"))
BLOCKS = PiecedBorder("edge", None, "reed")
OF_BLOCKS = mat(
    (border("rim", "2", "lamp", pieced=BLOCKS, corner_fabric="sea"),),
    (
        cut("spacers", "reed", "12 1/2 x 1 1/2", 2), cut("edge", "fog", "4 1/2 x 2 1/2", 10, "block:edge"),
        cut("stones", "sea", "2 1/2 x 2 1/2", 4),
    ),
    (
        step("even", AddBorderStrips("rim", "centre", "spacers", Run.DOWN, Press.OUTWARD), "12 1/2 x 8 1/2"),
        step("side", JoinRun(("edge",) * 2, Run.ACROSS, Press.OPEN, "blocks"), "8 1/2 x 2 1/2", 2),
        step("long", JoinRun(("stones", *("edge",) * 3, "stones"), Run.ACROSS, Press.OPEN, "blocks"), "16 1/2 x 2 1/2", 2),
        step(
            "with-sides",
            AddBorderStrips("rim", "even", "side", Run.ACROSS, Press.INWARD, quarter_turns=3, opposite_turns=1),
            "16 1/2 x 8 1/2",
        ),
        step("top", AddBorderStrips("rim", "with-sides", "long", Run.DOWN, Press.INWARD, opposite_turns=2), "16 1/2 x 12 1/2"),
    ),
    "16 1/2 x 12 1/2", EDGE_BLOCK,
)  # fmt: skip

# The same with a block of 2 × 2 at the corners: at the top left upright, at the top right turned a quarter; so that the
# same strip, turned half round, has the other two at the bottom.
CORNER_BLOCK = replace(plain_block(Fraction(2), Fraction(2), id="corner"), pieces=plain_pieces("sea"))
WITH_CORNERS = mat(
    (border("rim", "2", "lamp", pieced=replace(BLOCKS, corner_block="corner")),),
    tuple(
        replace(each, part="block:corner") if each.id == "stones" else each
        for each in OF_BLOCKS[1].cuts if each.id in ("spacers", "edge", "stones")
    ),
    tuple(
        replace(each, operation=replace(each.operation, quarter_turns=(0, 0, 0, 0, 1))) if each.makes == "long" else each
        for each in OF_BLOCKS[2].steps[:5]
    ),
    "16 1/2 x 12 1/2", EDGE_BLOCK, CORNER_BLOCK,
)  # fmt: skip
ALL = {
    "mitred": ONE_MITRED, "two mitred as one": TWO_MITRED, "partial seam": PASSING, "of blocks": OF_BLOCKS,
    "of blocks with corner blocks": WITH_CORNERS,
}  # fmt: skip
