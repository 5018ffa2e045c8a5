"""Small projects cut and written down by hand, as a maker would on squared paper, and sewn by the simulator.

No figure here comes from the sizing of projects: the sums stand in the comments.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from evenseam.exact import square_root
from evenseam.geometry import Point, Polygon
from evenseam.pattern import (
    BATTING,
    PROJECT,
    AddBorderStrips,
    Arrangement,
    AttachCornerPockets,
    Bind,
    Block,
    BlockPiece,
    BlockPosition,
    BorderCorners,
    BorderOrder,
    CutList,
    CutShape,
    JoinPieces,
    JoinRun,
    LayerForQuilting,
    LayerTurned,
    MakeBinding,
    MakeCornerPockets,
    Method,
    PatchUse,
    PieceSection,
    Press,
    Program,
    Project,
    Quantity,
    QuiltLayers,
    Run,
    Setting,
    SquareUp,
    Step,
    Topstitch,
    TrimPart,
    TurnOut,
)
from evenseam.problems import Severity
from evenseam.sizing.simulator import sew
from support.mat import (
    BORDER,
    BOUND_CUTS,
    BOUND_PROGRAM,
    BOUND_STEPS,
    HUNG,
    MAT,
    POCKET_CUTS,
    POCKET_STEPS,
    TOP_STEPS,
    TURNED_CUTS,
    TURNED_PROGRAM,
    WIDTH_PLACE,
    cut,
    pieces,
    problems_of,
    step,
    with_cut,
)
from support.samples import BOUND, CONVEX_LANTERN, POCKETS, TURNED, count, length, polygon
from support.sewing_faults import mutants


def test_a_turned_mat_is_sewn_from_its_cut_list() -> None:
    outcome = sew(MAT, TURNED_CUTS, TURNED_PROGRAM)
    assert outcome.problems == ()
    assert outcome.value is not None
    assert (outcome.value.finished_width, outcome.value.finished_height) == (17, 10)
    read = {measured.workpiece: (measured.width, measured.height) for measured in outcome.value.measurements}
    assert read["upper"] == (Fraction(13, 2), Fraction(7, 2))
    assert read["row"] == (Fraction(27, 2), Fraction(13, 2))
    # Before it is turned, a layered piece still has its seam allowances outside.
    assert read["layered"] == (Fraction(35, 2), Fraction(21, 2))
    assert [measured.step for measured in outcome.value.measurements] == [step.id for step in TURNED_PROGRAM.steps]


def test_a_bound_mat_with_a_sleeve_is_sewn_from_its_cut_list() -> None:
    """A sleeve by the rule of the International Quilt Association ("Instructions for Making Sleeves", quilts.com):
    cut 8 1/2 × quilt width + 2, hemmed 1 1/2 at each end: finishes width − 1 by 4.
    """
    outcome = sew(HUNG, BOUND_CUTS, BOUND_PROGRAM)
    assert outcome.problems == ()
    assert outcome.value is not None
    assert (outcome.value.finished_width, outcome.value.finished_height) == (Fraction(35, 2), Fraction(21, 2))
    read = {measured.workpiece: (measured.width, measured.height) for measured in outcome.value.measurements}
    assert read["tube"] == (Fraction(33, 2), 4)


@pytest.mark.parametrize(
    ("project", "cuts", "program"), [(MAT, TURNED_CUTS, TURNED_PROGRAM), (HUNG, BOUND_CUTS, BOUND_PROGRAM)],
    ids=["turned", "bound"],
)  # fmt: skip
def test_any_one_mistake_is_caught(project: Project, cuts: CutList, program: Program) -> None:
    made = list(mutants(project, cuts, program))
    escaped = [mutant.change for mutant in made if sew(project, mutant.cuts, mutant.program).is_valid]
    assert len(made) > 800
    assert escaped == []


@pytest.mark.parametrize(
    ("id", "size", "sentence"),
    [
        ("sides", "2 1/2 x 7", "“sides” is 7 in long, the edge it is sewn to is 6 1/2 in"),
        ("ends", "17 x 2 1/2", "“ends” is 17 in long, the edge it is sewn to is 17 1/2 in"),
        ("sides", "2 1/4 x 6 1/2", "“sides” finishes 1 3/4 in wide, the outer border is decided as 2 in"),
        ("sashing", "1 3/4 x 6 1/2", "“sashing” finishes 1 1/4 in wide, the sashing is decided as 1 in"),
        (
            "sashing",
            "1 1/2 x 6 3/8",
            "the edge of “sashing” is 6 3/8 in, the edge of quay-block it is sewn to is 6 1/2",
        ),
        (
            "quay-sea",
            "3 3/8 x 3 1/2",
            "“quay sea” is 3 3/8 in × 3 1/2 in; piece p1 with its seam allowances needs 3 1/2",
        ),
        (
            "backing",
            "19 x 12 1/2",
            "the top is 17 1/2 in × 10 1/2 in, with 1 in more on every side the backing is 19 1/2",
        ),
    ],
)
def test_what_is_wrong_is_said_with_both_figures(id: str, size: str, sentence: str) -> None:
    problems = sew(MAT, with_cut(TURNED_CUTS, id, size), TURNED_PROGRAM).problems
    assert any(sentence in problem.message for problem in problems), [problem.message for problem in problems]


def test_a_problem_stands_where_the_author_gave_the_figure() -> None:
    (problem, *_) = sew(MAT, with_cut(TURNED_CUTS, "sides", "2 1/2 x 7"), TURNED_PROGRAM).problems
    assert problem.place == WIDTH_PLACE


def test_one_wrong_cut_is_told_once() -> None:
    """What is sewn from a wrong piece is not judged again, so that the cause is not buried under consequences."""
    assert problems_of(MAT, with_cut(TURNED_CUTS, "quay-sea", "3 x 3"), TURNED_PROGRAM) == ["piece-size-wrong"]


def test_every_wrong_cut_is_told_at_once() -> None:
    cuts = with_cut(with_cut(BOUND_CUTS, "sides", "2 1/2 x 7"), "sleeve", "19 1/2 x 9")
    assert {"edges-differ", "sleeve-size-differs"} <= set(problems_of(HUNG, cuts, BOUND_PROGRAM))


def test_a_step_before_its_parts_are_made_is_caught() -> None:
    """Any two steps of which the second uses what the first makes cannot change places."""
    caught = 0
    for index, (first, second) in enumerate(pairwise(BOUND_STEPS)):
        swapped = (*BOUND_STEPS[:index], second, first, *BOUND_STEPS[index + 2 :])
        uses = {str(getattr(second.operation, name)) for name in second.operation.__dataclass_fields__}
        uses |= {part for part in getattr(second.operation, "parts", ())}
        is_valid = sew(HUNG, BOUND_CUTS, Program(swapped)).is_valid
        assert is_valid == (first.makes not in uses), (first.id, second.id)
        caught += not is_valid
    assert caught == 9


def test_a_border_in_the_wrong_order_is_caught_even_if_cut_for_it() -> None:
    # Top and bottom first: 13 1/2 long; then sides of 10 1/2. Everything fits, and it is not what was decided.
    cuts = with_cut(with_cut(TURNED_CUTS, "ends", "13 1/2 x 2 1/2"), "sides", "2 1/2 x 10 1/2")
    steps = (
        *TOP_STEPS[:4],
        step("with-ends", AddBorderStrips("outer-border", "row", "ends", Run.DOWN, Press.OUTWARD), "13 1/2 x 10 1/2"),
        step(
            "top", AddBorderStrips("outer-border", "with-ends", "sides", Run.ACROSS, Press.OUTWARD), "17 1/2 x 10 1/2"
        ),
        *TURNED_PROGRAM.steps[6:],
    )
    assert problems_of(MAT, cuts, Program(steps)) == ["border-order-differs"]
    either = replace(MAT, borders=(replace(BORDER, order=BorderOrder.LONG_SIDES_FIRST),))
    assert problems_of(either, cuts, Program(steps)) == []


def test_a_border_with_cornerstones() -> None:
    """Both pairs are as long as the centre; the second has a cornerstone, 2 in and two seams, at each end."""
    project = replace(
        MAT, borders=(replace(BORDER, corners=BorderCorners.CORNERSTONES, corner_fabric="sea"),),
    )  # fmt: skip
    cuts = CutList((*with_cut(TURNED_CUTS, "ends", "13 1/2 x 2 1/2").cuts, cut("stones", "sea", "2 1/2 x 2 1/2", 4)))
    strip = JoinRun(("stones", "ends", "stones"), Run.ACROSS, Press.OPEN, "border strip")
    steps = (
        *TOP_STEPS[:5],
        step("long-strip", strip, "17 1/2 x 2 1/2", 2),
        step("top", AddBorderStrips("outer-border", "with-sides", "long-strip", Run.DOWN, Press.OUTWARD)),
        *TURNED_PROGRAM.steps[6:],
    )
    assert problems_of(project, cuts, Program(steps)) == []
    assert "wrong-fabric" in problems_of(
        replace(project, borders=(replace(project.borders[0], corner_fabric="fog"),)), cuts, Program(steps)
    )


def test_blocks_must_be_turned_as_the_arrangement_says() -> None:
    unturned = replace(
        MAT, arrangement=replace(MAT.arrangement, positions=((BlockPosition("quay"), BlockPosition("quay")),))
    )
    assert "blocks-not-as-arranged" in problems_of(unturned, TURNED_CUTS, TURNED_PROGRAM)
    other_way = replace(
        MAT, arrangement=replace(MAT.arrangement, positions=((BlockPosition("quay", 1), BlockPosition("quay")),))
    )
    (problem,) = sew(other_way, TURNED_CUTS, TURNED_PROGRAM).problems
    assert problem.message == (
        "row 1, place 1 of the arrangement is a quay block turned a quarter clockwise; a quay block is sewn there"
    ) or problem.message == (
        "row 1, place 2 of the arrangement is a quay block; a quay block turned a quarter clockwise is sewn there"
    )


def test_corner_pockets_are_caught_in_the_edge() -> None:
    project = replace(MAT, hanging=POCKETS)
    assert problems_of(project, POCKET_CUTS, Program(POCKET_STEPS)) == []
    late = (
        *TURNED_PROGRAM.steps[:8],
        step("pair", MakeCornerPockets("squares")),
        step("pocketed", AttachCornerPockets("turned-out", "pair")),
        step(PROJECT, Topstitch("pocketed", length("topstitching", "1/8"))),
    )
    assert "wrong-workpiece" in problems_of(project, POCKET_CUTS, Program(late))
    assert "hanging-differs" in problems_of(project, TURNED_CUTS, TURNED_PROGRAM)
    assert "hanging-differs" in problems_of(MAT, POCKET_CUTS, Program(POCKET_STEPS))


@pytest.mark.parametrize(
    ("strip", "seam", "expected"),
    [
        ("2", "1/4", []),
        ("2 1/4", "1/4", []),
        ("2 1/2", "3/8", []),
        ("3", "1/2", ["binding-barely-reaches"]),
        ("4", "3/4", ["binding-barely-reaches"]),
        ("5", "1", ["binding-barely-reaches"]),
        ("1", "1/4", ["binding-too-narrow"]),
    ],
)
def test_binding_must_reach_round_the_edge(strip: str, seam: str, expected: list[str]) -> None:
    """Half the strip holds seam, front and back: three seam allowances and the thickness of the layers.

    Rows but the last: "What size binding would you like with that, ma'am?", Along Came Quilting (as read in the
    handbook, where the rows of 4 and 5 in are marked as bad). With its seams "scant", the row of 3 in just fits; with
    full seams it is worth a warning.
    """
    allowance = length("seam allowance", seam)
    side = allowance.value * 2 + 6
    plain = Block(
        "plain", "Plain", length("width", "6"), length("height", "6"), Fraction(1), Fraction(1),
        polygon("0,0 1,0 1,1 0,1"), pieces("p1 sea 0,0 1,0 1,1 0,1"), Method.ROTARY,
    )  # fmt: skip
    finish = replace(BOUND, binding=replace(BOUND.binding, strip_width=length("binding strip width", strip)))
    project = replace(
        MAT, seam_allowance=allowance, blocks=(plain,), borders=(), finish=finish,
        arrangement=Arrangement(count("rows", 1), count("columns", 1), Setting.STRAIGHT, ((BlockPosition("plain"),),)),
    )  # fmt: skip

    def made(name: str, value: Fraction) -> Quantity:
        return replace(length(name, "1"), value=value)

    square = cut("square", "sea", "1 x 1", 1, "block:plain")
    larger = made("layer", side + 4)
    cuts = CutList((
        replace(square, width=made("w", side), height=made("h", side)),
        replace(cut("backing", "sea", "1 x 1", 1), width=larger, height=larger),
        replace(cut("batting", BATTING, "1 x 1", 1), width=larger, height=larger),
        replace(
            cut("binding", "sea", f"{strip} x 1", 1, shape=CutShape.BINDING), height=made("length", 4 * side + 10)
        ),
    ))  # fmt: skip
    half = made("folded width", finish.binding.strip_width.value / Fraction(2))
    program = Program((
        step("layered", LayerForQuilting("square", "backing", "batting")),
        step("quilted", QuiltLayers("layered")),
        step("trimmed", SquareUp("quilted", made("w", side), made("h", side))),
        step("folded", MakeBinding("binding", half)),
        step(PROJECT, Bind("trimmed", "folded", allowance)),
    ))  # fmt: skip
    outcome = sew(project, cuts, program)
    assert [problem.code.name for problem in outcome.problems] == expected
    assert outcome.is_valid == all(problem.severity is Severity.WARNING for problem in outcome.problems)


def triangles(finished: str, square: str, shape: CutShape) -> tuple[Project, CutList, Program]:
    """Return a mat of one block that is a square of two triangles, or four, cut from squares of a stated size."""
    corners = {
        CutShape.HALF_SQUARE_TRIANGLE: pieces("p1 sea 0,0 2,0 0,2", "p2 fog 2,0 2,2 0,2"),
        CutShape.QUARTER_SQUARE_TRIANGLE: pieces(
            "p1 sea 0,0 2,0 1,1", "p2 fog 2,0 2,2 1,1", "p3 sea 2,2 0,2 1,1", "p4 fog 0,2 0,0 1,1"
        ),
    }[shape]
    block = Block(
        "tern", "Tern", length("width", finished), length("height", finished), Fraction(2), Fraction(2),
        polygon("0,0 2,0 2,2 0,2"), corners, Method.ROTARY,
    )  # fmt: skip
    project = replace(
        MAT, blocks=(block,), borders=(), finish=replace(TURNED, opening=length("opening", "1/2")),
        arrangement=Arrangement(count("rows", 1), count("columns", 1), Setting.STRAIGHT, ((BlockPosition("tern"),),)),
    )  # fmt: skip
    layer = replace(length("layer", "1"), value=length("side", finished).value + Fraction(5, 2))
    each = len(corners) // 2
    cuts = CutList((
        cut("sea-triangle", "sea", f"{square} x {square}", each, shape=shape),
        cut("fog-triangle", "fog", f"{square} x {square}", each, shape=shape),
        replace(cut("backing", "sea", "1 x 1", 1), width=layer, height=layer),
        replace(cut("batting", BATTING, "1 x 1", 1), width=layer, height=layer),
    ))  # fmt: skip
    joined = [JoinPieces("tern", "sea-triangle", ("p1",), "fog-triangle", ("p2",), Press.OPEN)]
    if each == 2:
        joined += [
            JoinPieces("tern", "sea-triangle", ("p3",), "fog-triangle", ("p4",), Press.OPEN),
            JoinPieces("tern", "part-0", ("p1", "p2"), "part-1", ("p3", "p4"), Press.OPEN),
        ]
    steps = [step(f"part-{index}", operation) for index, operation in enumerate(joined)]
    whole = tuple(piece.id for piece in corners)
    steps.append(step("tern-block", TrimPart("tern", steps[-1].makes, whole, project.seam_allowance)))
    layers = LayerTurned(
        steps[-1].makes, "backing", "batting", length("seam", "1/4"), length("opening", "1/2"), "bottom"
    )
    steps += [
        step("layered", layers),
        step("turned-out", TurnOut("layered")),
        step(PROJECT, Topstitch("turned-out", length("topstitching", "1/8"))),
    ]
    return project, cuts, Program(tuple(steps))


HALF, QUARTER = CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE


@pytest.mark.parametrize(
    ("shape", "finished", "square"),
    [
        # "What size do I cut my triangles?", British Patchwork and Quilting / UKQU: finished + 7/8.
        (HALF, "2", "2 7/8"),
        (HALF, "3", "3 7/8"),
        # "Lesson 1 Allowing for Allowances", quilt lesson handout: 2 1/2 exactly cut.
        (HALF, "2 1/2", "3 3/8"),
        # "Quarter Square Triangle", Scissortail Quilting: finished + 1 1/4.
        (QUARTER, "1", "2 1/4"),
        (QUARTER, "2 1/2", "3 3/4"),
        (QUARTER, "4", "5 1/4"),
        (QUARTER, "6", "7 1/4"),
    ],
)
def test_triangles_are_cut_as_published(shape: CutShape, finished: str, square: str) -> None:
    """The published square sews up; an eighth more or less does not."""
    assert problems_of(*triangles(finished, square, shape)) == []
    for eighth in (Fraction(1, 8), Fraction(-1, 8)):
        project, cuts, program = triangles(finished, square, shape)
        wrong = tuple(
            replace(cut, width=replace(cut.width, value=cut.width.value + eighth)) if cut.shape is shape else cut
            for cut in cuts.cuts
        )
        assert set(problems_of(project, CutList(wrong), program)) == {"piece-size-wrong"}


@pytest.mark.parametrize(
    ("area", "patch"),
    [
        # "Cutting the Main Fabric for Paper Foundation Piecing", Gail Garber: 1 in more each way.
        ("2 1/2 x 6", "3 1/2 x 7"),
        ("3 x 3", "4 x 4"),
        # Off the quarter inch: up to the next mark.
        ("2 1/8 x 3", "3 1/4 x 4"),
    ],
)
def test_patches_cover_the_piece_and_half_an_inch_all_round(area: str, patch: str) -> None:
    """Seam allowance and margin, each 1/4 in, on every side: area + 1 in each way."""
    width, height = area.split(" x ")
    block = Block(
        "sail", "Sail", length("width", width), length("height", height), Fraction(1), Fraction(1),
        polygon("0,0 1,0 1,1 0,1"), pieces("p1 sea 0,0 1,0 1,1 0,1"), Method.FOUNDATION,
    )  # fmt: skip
    project = replace(
        MAT, blocks=(block,),
        arrangement=Arrangement(count("rows", 1), count("columns", 1), Setting.STRAIGHT, ((BlockPosition("sail"),),)),
    )  # fmt: skip
    program = Program((step("sail-block", PieceSection("sail", "A", (PatchUse("p1", "A1", "patch"),))),))

    def told(size: str) -> set[str]:
        found = set(problems_of(project, CutList((cut("patch", "sea", size, 1, shape=CutShape.PATCH),)), program))
        return {name for name in found if name.startswith("patch")}

    assert told(patch) == set()
    wide, high = patch.split(" x ")
    assert told(f"{high} x {wide}") == set(), "plain cloth may be laid either way"
    value = length("w", wide).value
    assert told(f"{value - Fraction(1, 4)} x {high}") == {"patch-too-small"}
    assert told(f"{value + Fraction(1, 4)} x {high}") == {"patch-too-large"}
    assert told(f"{(value + Fraction(1, 8)) * 8}/8 x {high}") == {"patch-off-grid"}


def foundation(block: Block, **patches: str) -> tuple[Project, CutList]:
    """Return a project of one foundation block, and the patches of its pieces: sea="5 x 5"."""
    project = replace(
        MAT, blocks=(block,),
        arrangement=Arrangement(count("rows", 1), count("columns", 1), Setting.STRAIGHT, ((BlockPosition(block.id),),)),
    )  # fmt: skip
    fabrics = {piece.id: piece.fabric for piece in block.pieces}
    cuts = tuple(cut(id, fabrics[id], size, 1, shape=CutShape.PATCH) for id, size in patches.items())
    return project, CutList(cuts)


def sewn_so_far(project: Project, cuts: CutList, *steps: Step) -> list[str]:
    """Return the problems of sewing some steps, but for the project not being finished yet."""
    return [name for name in problems_of(project, cuts, Program(steps)) if name != "project-unfinished"]


def section(*order: str, block: str) -> Step:
    patches = tuple(PatchUse(id, f"A{number}", id) for number, id in enumerate(order, start=1))
    return step("section-a", PieceSection(block, "A", patches))


def test_a_patch_is_laid_along_a_slanted_seam() -> None:
    """A 4 in square, one corner cut off √2 in from the corner: the seam there is 2 in long and the corner piece 1 in
    high. With 1/2 in all round its patch is 3 × 2; upright it would be √2 + 1, a 2 1/2 in square.

    The corners of these pieces lie on no mark and have no finite decimals.
    """
    root = square_root(2)
    corner = (Point(Fraction(0), Fraction(0)), Point(root, Fraction(0)), Point(Fraction(0), root))
    rest = (
        corner[1],
        Point(Fraction(4), Fraction(0)),
        Point(Fraction(4), Fraction(4)),
        Point(Fraction(0), Fraction(4)),
    )
    block = Block(
        "sail", "Sail", length("width", "4"), length("height", "4"), Fraction(4), Fraction(4),
        polygon("0,0 4,0 4,4 0,4"),
        (BlockPiece("p1", "sea", Polygon((*rest, corner[2]))), BlockPiece("p2", "fog", Polygon(corner))),
        Method.FOUNDATION,
    )  # fmt: skip
    whole = section("p1", "p2", block="sail")
    project, cuts = foundation(block, p1="5 x 5", p2="3 x 2")
    assert sewn_so_far(project, cuts, whole) == ["piece-left-over"], "the block is left, and nothing else"
    for wrong, name in (
        ("2 1/2 x 2 1/2", "patch-too-small"), ("3 1/8 x 2", "patch-off-grid"), ("3 1/4 x 2", "patch-too-large"),
    ):  # fmt: skip
        assert name in sewn_so_far(project, foundation(block, p1="5 x 5", p2=wrong)[1], whole)
    upright = replace(project, fabrics=tuple(replace(fabric, is_directional=True) for fabric in project.fabrics))
    standing = CutList(
        tuple(replace(each, is_upright=True) for each in foundation(block, p1="5 x 5", p2="2 1/2 x 2 1/2")[1].cuts)
    )
    assert sewn_so_far(upright, standing, whole) == ["piece-left-over"]


def test_a_section_is_sewn_in_an_order_that_straight_seams_allow() -> None:
    """In the lantern, the sky beside the lamp cannot follow the roof: it would leave an inward corner."""
    patches = {"p1": "5 x 4", "p2": "4 x 4", "p5": "2 1/2 x 5", "p6": "2 1/2 x 5"}
    project, cuts = foundation(CONVEX_LANTERN, **patches)
    assert "seam-not-whole" in sewn_so_far(project, cuts, section("p1", "p2", "p5", "p6", block="lantern"))
    del patches["p2"]
    project, cuts = foundation(CONVEX_LANTERN, **patches)
    # Lamp 3 × 4 and sky 1 1/2 × 4, each with 1 in more: 4 × 5 and 2 1/2 × 5; together 6 1/2 × 4 1/2 before trimming.
    beside = replace(section("p1", "p5", "p6", block="lantern"), measures=(length("w", "6 1/2"), length("h", "4 1/2")))
    assert sewn_so_far(project, cuts, beside) == ["piece-left-over"]


def test_rows_of_unequal_blocks_that_come_out_even() -> None:
    """6 + 3 in one row, 3 + 6 in the next: the seams do not meet, and every edge is still equal to its neighbour."""
    outline = polygon("0,0 1,0 1,1 0,1")
    wide, slim = (
        Block(
            id, id, length("width", width), length("height", "6"), Fraction(1), Fraction(1), outline,
            (BlockPiece("p1", "sea", outline),), Method.ROTARY,
        )
        for id, width in (("wide", "6"), ("slim", "3"))
    )  # fmt: skip
    rows = ((BlockPosition("wide"), BlockPosition("slim")), (BlockPosition("slim"), BlockPosition("wide")))
    project = replace(
        MAT, blocks=(wide, slim), borders=(),
        arrangement=Arrangement(count("rows", 2), count("columns", 2), Setting.STRAIGHT, rows),
    )  # fmt: skip
    cuts = CutList((
        cut("wide-square", "sea", "6 1/2 x 6 1/2", 2, "block:wide"), cut("slim-strip", "sea", "3 1/2 x 6 1/2", 2, "block:slim"),
        cut("backing", "sea", "11 1/2 x 14 1/2", 1), cut("batting", BATTING, "11 1/2 x 14 1/2", 1),
    ))  # fmt: skip

    def program(second: tuple[str, str]) -> Program:
        return Program((
            step("upper", JoinRun(("wide-square", "slim-strip"), Run.ACROSS, Press.OPEN, "blocks"), "9 1/2 x 6 1/2"),
            step("lower", JoinRun(second, Run.ACROSS, Press.OPEN, "blocks"), "9 1/2 x 6 1/2"),
            step("top", JoinRun(("upper", "lower"), Run.DOWN, Press.OPEN, "rows"), "9 1/2 x 12 1/2"),
            *TURNED_PROGRAM.steps[6:7],
            step("turned-out", TurnOut("layered"), "9 x 12"),
            step(PROJECT, Topstitch("turned-out", length("topstitching", "1/8")), "9 x 12"),
        ))  # fmt: skip

    assert problems_of(project, cuts, program(("slim-strip", "wide-square"))) == []
    assert problems_of(project, cuts, program(("wide-square", "slim-strip"))) == ["blocks-not-as-arranged"]
