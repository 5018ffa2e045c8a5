"""The assembly program: its steps, how often each is done, and that it uses up exactly what is cut."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import to_float
from evenseam.pattern import (
    PROJECT,
    AddBorderStrips,
    Arrangement,
    AttachCornerPockets,
    AttachSleeve,
    Bind,
    BlockPiece,
    BlockPosition,
    BorderCorners,
    BorderOrder,
    JoinPieces,
    JoinRun,
    LayerForQuilting,
    LayerTurned,
    MakeBinding,
    MakeCornerPockets,
    MakeSleeve,
    Method,
    PieceSection,
    Press,
    Program,
    Project,
    QuiltLayers,
    Run,
    SquareUp,
    Step,
    Topstitch,
    TrimPart,
    TurnOut,
)
from evenseam.sizing import assembly_program, cut_list
from hypothesis import given, settings
from shapely import Polygon as Shape
from shapely import unary_union
from support.samples import LAP_QUILT, MUG_RUG, POCKETS, SLEEVE, TURNED, WALL_HANGING, grid, polygon
from support.strategies import projects
from support.tops import plain_block, rows_of, sized


def _program(project: Project) -> Program:
    result = sized(project)
    return assembly_program(result, cut_list(result))


def _line(step: Step) -> str:
    measures = " x ".join(measure.number for measure in step.measures) if step.measures else "-"
    return f"{step.id} {step.times} {measures}"


MUG_RUG_STEPS = """
piece-lantern-a 1 6 1/2 x 6 1/2
piece-lantern-b 1 6 1/2 x 3 1/2
join-lantern-a-b 1 6 1/2 x 9 1/2
inner-border-sides 1 8 1/2 x 9 1/2
inner-border-top-bottom 1 8 1/2 x 11 1/2
layer 1 -
turn 1 8 x 11
topstitch 1 8 x 11
"""
WALL_HANGING_STEPS = """
piece-lantern-a 3 6 1/2 x 6 1/2
piece-lantern-b 3 6 1/2 x 3 1/2
join-lantern-a-b 3 6 1/2 x 9 1/2
join-row 1 22 1/2 x 9 1/2
join-rows 1 22 1/2 x 11 1/2
inner-border-top-bottom 1 22 1/2 x 13 1/2
inner-border-sides 1 24 1/2 x 13 1/2
outer-border-top-bottom 1 24 1/2 x 18 1/2
outer-border-sides 1 29 1/2 x 18 1/2
layer 1 -
quilt 1 -
square-up 1 29 1/2 x 18 1/2
make-binding 1 -
bind 1 29 1/2 x 18 1/2
make-sleeve 1 28 1/2 x 4
attach-sleeve 1 29 1/2 x 18 1/2
"""
LAP_QUILT_STEPS = """
piece-lantern-a 20 6 1/2 x 6 1/2
piece-lantern-b 20 6 1/2 x 3 1/2
join-lantern-a-b 20 6 1/2 x 9 1/2
join-row 4 39 1/2 x 9 1/2
join-sashing-row 5 39 1/2 x 2
join-rows 1 39 1/2 x 44
inner-border-sides 1 41 1/2 x 44
inner-border-top-bottom 1 41 1/2 x 46
outer-border-top-bottom 1 41 1/2 x 51
outer-border-sides 1 46 1/2 x 51
layer 1 -
quilt 1 -
square-up 1 46 1/2 x 51
make-binding 1 -
bind 1 46 1/2 x 51
"""


@pytest.mark.parametrize(
    ("project", "steps"),
    [(MUG_RUG, MUG_RUG_STEPS), (WALL_HANGING, WALL_HANGING_STEPS), (LAP_QUILT, LAP_QUILT_STEPS)],
    ids=["mug rug", "wall hanging", "lap quilt"],
)
def test_programs_known_by_hand(project: Project, steps: str) -> None:
    assert [_line(step) for step in _program(project).steps] == steps.strip().splitlines()


def test_rows_of_the_lap_quilt_alternate_with_sashing_rows() -> None:
    program = _program(LAP_QUILT)
    row, sashing_row = program.step("join-row").operation, program.step("join-sashing-row").operation
    rows = program.step("join-rows").operation
    assert isinstance(row, JoinRun) and isinstance(sashing_row, JoinRun) and isinstance(rows, JoinRun)
    sashed_block = ("lantern-block", "sashing-vertical")
    assert row.parts == ("sashing-vertical", *sashed_block * 5)
    assert sashing_row.parts == ("sashing-cornerstone", *("sashing-horizontal", "sashing-cornerstone") * 5)
    assert rows.parts == ("sashing-row", *("row", "sashing-row") * 4)
    assert (row.run, rows.run, rows.press) == (Run.ACROSS, Run.DOWN, Press.SASHING)


def test_rows_that_differ_are_steps_of_their_own() -> None:
    one, other = BlockPosition("lantern"), BlockPosition("lantern", quarter_turns=2)
    arrangement = replace(grid(3, 2), positions=((one, other), (other, one), (one, other)))
    program = _program(replace(MUG_RUG, arrangement=arrangement))
    assert [(step.id, step.times) for step in program.steps if step.id.startswith("join-row")] == [
        ("join-row-1", 2), ("join-row-2", 1), ("join-rows", 1),
    ]  # fmt: skip
    first, second, rows = (program.step(id).operation for id in ("join-row-1", "join-row-2", "join-rows"))
    assert isinstance(first, JoinRun) and isinstance(second, JoinRun) and isinstance(rows, JoinRun)
    assert (first.quarter_turns, second.quarter_turns, rows.quarter_turns) == ((0, 2), (2, 0), ())
    assert rows.parts == ("row-1", "row-2", "row-1")


def test_every_other_row_of_pieces_cut_to_size_is_pressed_the_other_way() -> None:
    # "Press so that the seams of neighbouring rows nest": preparation pages, stitchworkstudio and quiltyourquilt.
    program = _program(rows_of(5, 3, "4 1/2", "4 1/2"))
    first, second = program.step("join-row-1"), program.step("join-row-2")
    assert isinstance(first.operation, JoinRun) and isinstance(second.operation, JoinRun)
    assert (first.operation.press, first.times) == (Press.FIRST, 3)
    assert (second.operation.press, second.times) == (Press.SECOND, 2)


def test_one_column_is_joined_without_rows_of_one() -> None:
    program = _program(rows_of(3, 1, "4 1/2", "4 1/2"))
    runs = [step for step in program.steps if isinstance(step.operation, JoinRun)]
    assert [(step.id, step.operation.parts) for step in runs] == [("join-rows", ("plain-a",) * 3)]


def test_corner_pockets_are_caught_in_the_edge_and_a_sleeve_comes_last() -> None:
    bound = [step.id for step in _program(replace(WALL_HANGING, hanging=POCKETS)).steps]
    assert bound[-4:] == ["square-up", "attach-corner-pockets", "make-binding", "bind"]
    turned = [step.id for step in _program(replace(MUG_RUG, hanging=replace(POCKETS))).steps]
    assert turned[-4:] == ["attach-corner-pockets", "layer", "turn", "topstitch"]
    assert turned.index("make-corner-pockets") < turned.index("attach-corner-pockets")
    sleeved = _program(replace(MUG_RUG, hanging=SLEEVE))
    assert [step.id for step in sleeved.steps][-3:] == ["topstitch", "make-sleeve", "attach-sleeve"]
    assert sleeved.steps[-1].makes == PROJECT


def test_opening_goes_to_the_bottom_unless_only_the_side_is_long_enough() -> None:
    wide = _program(MUG_RUG).step("layer").operation
    assert isinstance(wide, LayerTurned) and wide.opening_edge == "bottom"
    narrow = replace(TURNED, opening=replace(TURNED.opening, value=MUG_RUG.blocks[0].width.value + 3))
    layer = _program(replace(MUG_RUG, finish=narrow)).step("layer").operation
    assert isinstance(layer, LayerTurned) and layer.opening_edge == "left"


@pytest.mark.parametrize(
    ("order", "steps"),
    [
        (BorderOrder.SIDES_FIRST, ["inner-border-cornerstones", "inner-border-sides", "inner-border-top-bottom"]),
        (
            BorderOrder.TOP_AND_BOTTOM_FIRST,
            ["inner-border-cornerstones", "inner-border-top-bottom", "inner-border-sides"],
        ),
    ],
)
def test_cornerstones_of_a_border_are_joined_to_the_second_pair(order: BorderOrder, steps: list[str]) -> None:
    border = replace(MUG_RUG.borders[0], corners=BorderCorners.CORNERSTONES, corner_fabric="lamp", order=order)
    program = _program(replace(MUG_RUG, borders=(border,)))
    assert [step.id for step in program.steps if step.id.startswith("inner-border")] == steps
    stones, last = program.step(steps[0]), program.step(steps[2])
    assert stones.times == 2
    assert isinstance(last.operation, AddBorderStrips) and last.operation.strip == stones.makes


def _takes(step: Step) -> Counter[str]:
    """Return what a step takes from the table each time it is done."""
    match step.operation:
        case PieceSection(patches=patches):
            return Counter(patch.cut for patch in patches)
        case JoinPieces(first=first, second=second):
            return Counter([first, second])
        case TrimPart(part=part):
            return Counter([part])
        case JoinRun(parts=parts):
            return Counter(parts)
        case AddBorderStrips(centre=centre, strip=strip):
            return Counter([centre, strip, strip])
        case LayerTurned(top=top, backing=backing, batting=batting):
            return Counter([top, backing, batting])
        case LayerForQuilting(top=top, backing=backing, batting=batting):
            return Counter([top, backing, batting])
        case TurnOut(layered=one) | QuiltLayers(layered=one) | Topstitch(turned=one) | SquareUp(quilted=one):
            return Counter([one])
        case MakeBinding(binding=one) | MakeSleeve(sleeve=one):
            return Counter([one])
        case MakeCornerPockets(square=square):
            return Counter([square, square])
        case Bind(trimmed=one, binding=other) | AttachSleeve(project=one, sleeve=other):
            return Counter([one, other])
        case AttachCornerPockets(project=one, pockets=other):
            return Counter([one, other])


@settings(max_examples=80)
@given(projects())
def test_program_uses_up_exactly_what_is_cut_and_leaves_the_project(project: Project) -> None:
    result = sized(project)
    cuts = cut_list(result)
    program = assembly_program(result, cuts)
    table = Counter({cut.id: cut.count.whole for cut in cuts.cuts})
    for step in program.steps:
        for part, number in _takes(step).items():
            table[part] -= number * step.times
            assert table[part] >= 0, (step.id, part)
        table[step.makes] += step.times
    assert +table == Counter({PROJECT: 1})


@settings(max_examples=40)
@given(projects())
def test_steps_and_cuts_are_named_once(project: Project) -> None:
    result = sized(project)
    cuts = cut_list(result)
    program = assembly_program(result, cuts)
    ids = [step.id for step in program.steps]
    made = [step.makes for step in program.steps]
    assert len(set(ids)) == len(ids)
    assert len(set(made)) == len(made)
    assert not set(made) & {cut.id for cut in cuts.cuts}


@settings(max_examples=60)
@given(projects())
def test_parts_of_a_block_are_measured_exactly_when_they_are_rectangles(project: Project) -> None:
    """A rectangle that is a little large is measured once it is trimmed, not before."""
    result = sized(project)
    seams = 2 * result.project.seam_allowance.value
    steps = assembly_program(result, cut_list(result)).steps
    untrimmed = {step.operation.part for step in steps if isinstance(step.operation, TrimPart)}
    for step in steps:
        match step.operation:
            case PieceSection(block=id, patches=patches):
                members = {patch.piece for patch in patches}
            case JoinPieces(block=id, first_pieces=first, second_pieces=second):
                members = {*first, *second}
            case TrimPart(block=id, pieces=pieces):
                members = set(pieces)
            case _:
                continue
        block = result.project.block(id)
        across, down = block.scale
        whole = unary_union([
            Shape([(to_float(corner.x * across), to_float(corner.y * down)) for corner in piece.outline.corners])
            for piece in block.pieces if piece.id in members
        ])  # fmt: skip
        left, top, right, bottom = whole.bounds
        is_rectangle = abs(whole.area - (right - left) * (bottom - top)) < 1e-9
        assert (step.measures is not None) is (is_rectangle and step.makes not in untrimmed)
        if step.measures is not None:
            width, height = (to_float(measure.value - seams) for measure in step.measures)
            assert abs(width - (right - left)) < 1e-9 and abs(height - (bottom - top)) < 1e-9


def test_joined_part_that_is_a_triangle_is_not_measured() -> None:
    # Half the block is a triangle of two sections, joined from (12, 0) to (6, 6); the other half is one piece.
    outlines = ("0,0 12,12 0,12", "0,0 12,0 9,3 3,3", "3,3 9,3 6,6", "12,0 12,12 9,9 9,3", "9,3 9,9 6,6")
    pieces = tuple(BlockPiece(f"p{n}", "fog", polygon(text)) for n, text in enumerate(outlines))
    sail = replace(
        plain_block(Fraction(6), Fraction(6), id="sail"), pieces=pieces, outline=polygon("0,0 12,0 12,12 0,12"),
        grid_width=Fraction(12), grid_height=Fraction(12), method=Method.FOUNDATION,
    )  # fmt: skip
    program = _program(replace(MUG_RUG, blocks=(sail,), arrangement=grid(1, 1, "sail")))
    joins = [step for step in program.steps if isinstance(step.operation, JoinPieces)]
    assert [step.measures is None for step in joins] == [True, False]
    assert [measure.text for measure in joins[1].measures or ()] == ["6 1/2 in", "6 1/2 in"]


def test_arrangement_of_one_turned_block_stands_as_it_is_turned() -> None:
    arrangement: Arrangement = replace(grid(1, 1), positions=((BlockPosition("lantern", 1),),))
    result = sized(replace(MUG_RUG, arrangement=arrangement))
    assert (result.finished_width.text, result.finished_height.text) == ("11 in", "8 in")
