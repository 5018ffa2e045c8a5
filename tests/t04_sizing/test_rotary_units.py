"""Blocks cut to size: what is cut for each piece, which units are sewn, and when they are trimmed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import (
    Block,
    BlockPiece,
    Cut,
    CutList,
    CutShape,
    JoinPieces,
    Method,
    Program,
    Project,
    Step,
    TrimPart,
)
from evenseam.sizing import SizedProject, assembly_program, cut_list, size_project
from evenseam.sizing.simulator import sew
from support.samples import BOUND, MUG_RUG, grid, length, polygon
from support.sewing_faults import mutants

HALF, QUARTER, TEMPLATE = CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE, CutShape.TEMPLATE

STAR = (
    "fog 0,0 2,0 2,2 0,2", "fog 2,0 4,0 3,1", "sea 4,0 4,2 3,1", "lamp 4,2 2,2 3,1", "sea 2,2 2,0 3,1",
    "fog 4,0 6,0 6,2 4,2", "sea 0,2 2,2 1,3", "lamp 2,2 2,4 1,3", "sea 2,4 0,4 1,3", "fog 0,4 0,2 1,3",
    "lamp 2,2 4,2 4,4 2,4", "sea 4,2 6,2 5,3", "fog 6,2 6,4 5,3", "sea 6,4 4,4 5,3", "lamp 4,4 4,2 5,3",
    "fog 0,4 2,4 2,6 0,6", "lamp 2,4 4,4 3,5", "sea 4,4 4,6 3,5", "fog 4,6 2,6 3,5", "sea 2,6 2,4 3,5",
    "fog 4,4 6,4 6,6 4,6",
)  # fmt: skip
"""An eight-pointed star of four hourglasses round a square."""
GOOSE = ("lamp 0,2 2,0 4,2", "fog 0,0 2,0 0,2", "fog 2,0 4,0 4,2")
DIAMOND = ("lamp 2,0 4,2 2,4 0,2", "sea 0,0 2,0 0,2", "sea 2,0 4,0 4,2", "sea 4,2 4,4 2,4", "sea 2,4 0,4 0,2")
KITE = ("lamp 0,0 4,0 1,4 0,4", "fog 4,0 4,4 1,4")


def block(pieces: tuple[str, ...], size: str, grid_size: tuple[int, int]) -> Block:
    """Return a block cut to size; each piece is a fabric and its corners."""
    width, height = size.split(" x ")
    wide, high = grid_size
    drawn = tuple(
        BlockPiece(f"p{number}", text.split(" ", 1)[0], polygon(text.split(" ", 1)[1]))
        for number, text in enumerate(pieces, start=1)
    )
    return Block(
        "tern", "Tern", length("tern width", width), length("tern height", height), Fraction(wide), Fraction(high),
        polygon(f"0,0 {wide},0 {wide},{high} 0,{high}"), drawn, Method.ROTARY,
    )  # fmt: skip


def project(pieces: tuple[str, ...], size: str, grid_size: tuple[int, int], rows: int = 1, columns: int = 1) -> Project:
    made = block(pieces, size, grid_size)
    return replace(MUG_RUG, blocks=(made,), arrangement=grid(rows, columns, "tern"), borders=(), finish=BOUND)


def planned(project: Project) -> tuple[SizedProject, CutList, Program]:
    outcome = size_project(project)
    assert outcome.value is not None, outcome.problems
    cuts = cut_list(outcome.value)
    return outcome.value, cuts, assembly_program(outcome.value, cuts)


def block_cuts(project: Project) -> dict[str, str]:
    """Return what is cut for the block, by labels: "4 half-square triangle 2 7/8"."""
    _, cuts, _ = planned(project)
    return {
        " ".join(cut.labels): f"{cut.count.whole} {cut.shape.value} {cut.width.number} x {cut.height.number}"
        for cut in cuts.cuts
        if cut.part == "block:tern"
    }


def problems(sized: SizedProject, cuts: CutList, steps: tuple[Step, ...]) -> list[str]:
    return [problem.code.name for problem in sew(sized.project, cuts, Program(steps)).problems]


def test_a_star_is_cut_from_squares() -> None:
    assert block_cuts(project(STAR, "9 x 9", (6, 6), 2, 2)) == {
        "A F P U": "16 square 3 1/2 x 3 1/2",
        "B J M S": "16 quarter-square triangle 4 1/4 x 4 1/4",
        "C E G I L N R T": "32 quarter-square triangle 4 1/4 x 4 1/4",
        "D H O Q": "16 quarter-square triangle 4 1/4 x 4 1/4",
        "K": "4 square 3 1/2 x 3 1/2",
    }


def test_an_hourglass_is_sewn_once_for_all_its_places_and_trimmed() -> None:
    _, _, program = planned(project(STAR, "9 x 9", (6, 6), 2, 2))
    blocks = [step for step in program.steps if isinstance(step.operation, (JoinPieces, TrimPart))]
    times = {step.id: step.times for step in blocks}
    assert times["join-tern-b-c"] == times["join-tern-d-e"] == times["trim-tern-b-c-d-e"] == 16
    trims = [step for step in blocks if isinstance(step.operation, TrimPart)]
    assert len(trims) == 1
    assert trims[0].measures is not None
    assert [figure.number for figure in trims[0].measures] == ["3 1/2", "3 1/2"]
    hourglass = next(step.operation for step in blocks if step.id == "join-tern-b-c-d-e")
    assert isinstance(hourglass, JoinPieces)
    # Turned by a quarter to the left and to the right; the fourth is in a row that is sewn twice.
    assert len(hourglass.also) == 2
    assert blocks[-1].makes == "tern-block"
    assert blocks[-1].measures is not None


def test_geese_are_a_quarter_square_and_two_half_square_triangles() -> None:
    assert block_cuts(project(GOOSE, "6 x 3", (4, 2))) == {
        "A": "1 quarter-square triangle 7 1/4 x 7 1/4",
        "B C": "2 half-square triangle 3 7/8 x 3 7/8",
    }


def test_a_square_on_its_corner_is_cut_to_the_nearest_mark_or_with_a_template() -> None:
    # 6 × √2 + 1/2 = 8.985: 9 is near enough. 2 × √2 + 1/2 = 3.328 lies 3/64 from a mark.
    assert block_cuts(project(DIAMOND, "12 x 12", (4, 4)))["A"] == "1 square 9 x 9"
    assert block_cuts(project(DIAMOND, "4 x 4", (4, 4)))["A"] == "1 template 3 3/8 x 3 3/8"
    metric = replace(project(DIAMOND, "4 x 4", (4, 4)), unit=Unit.CENTIMETRE)
    assert block_cuts(metric)["A"] == "1 square 8.6 x 8.6"


def test_an_odd_piece_is_cut_with_a_template_that_may_be_turned() -> None:
    turned = ("lamp 0,0 4,0 4,3 0,0", "fog 0,0 4,3 0,3")
    found = block_cuts(project(turned, "8 x 6", (4, 3)))
    assert {text.split()[1] for text in found.values()} == {"template"}
    _, cuts, _ = planned(project(KITE, "4 x 4", (4, 4)))
    outline = next(cut.outline for cut in cuts.cuts if cut.labels == ("A",))
    assert outline is not None
    assert outline.bounds[:2] == (0, 0)


def test_a_print_with_an_up_is_never_cut_as_a_triangle() -> None:
    plain = project(GOOSE, "6 x 3", (4, 2))
    fabrics = tuple(replace(fabric, is_directional=fabric.id == "fog") for fabric in plain.fabrics)
    found = block_cuts(replace(plain, fabrics=fabrics))
    assert found["A"] == "1 quarter-square triangle 7 1/4 x 7 1/4"
    # Mirror images: one template each, for neither may be turned over or round.
    assert found["B"].startswith("1 template") and found["C"].startswith("1 template")


def test_equal_units_with_a_print_are_not_turned() -> None:
    plain = project(STAR, "9 x 9", (6, 6))
    fabrics = tuple(replace(fabric, is_directional=fabric.id == "lamp") for fabric in plain.fabrics)
    sized, cuts, program = planned(replace(plain, fabrics=fabrics))
    assert problems(sized, cuts, program.steps) == []
    joined = [step.operation for step in program.steps if isinstance(step.operation, JoinPieces)]
    lamps = {piece.id for piece in sized.project.blocks[0].pieces if piece.fabric == "lamp"}
    assert all(
        not operation.also or not lamps & {*operation.first_pieces, *operation.second_pieces} for operation in joined
    )


class TestTrimming:
    """What is cut from a square brought up to a mark is a little large: it is trimmed before its size matters."""

    def test_a_part_that_is_not_trimmed_cannot_be_sewn_on(self) -> None:
        sized, cuts, program = planned(project(STAR, "9 x 9", (6, 6)))
        steps = []
        for step in program.steps:
            if isinstance(step.operation, TrimPart):
                before = steps.pop()
                step = replace(before, makes=step.makes)
            steps.append(step)
        assert "unit-not-trimmed" in problems(sized, cuts, tuple(steps))

    def test_an_edge_of_several_pieces_must_be_even(self) -> None:
        """Square and triangle side by side, sewn on along both: the triangle reaches further than the square."""
        pieces = ("fog 0,0 2,0 2,2 0,2", "sea 2,0 4,2 2,2", "lamp 0,2 4,2 6,4 0,4", "sea 2,0 6,0 6,4")
        sized, cuts, program = planned(project(pieces, "12 x 8", (6, 4)))
        assert problems(sized, cuts, program.steps) == []
        odd = [step for step in program.steps if isinstance(step.operation, TrimPart) and step.measures is None]
        assert len(odd) == 1
        trimmed = {step.operation.part: step.makes for step in odd if isinstance(step.operation, TrimPart)}
        without = tuple(
            replace(step, makes=trimmed.get(step.makes, step.makes)) for step in program.steps if step not in odd
        )
        assert "unit-not-trimmed" in problems(sized, cuts, without)


def test_a_unit_that_would_be_trimmed_to_no_mark_is_told_once() -> None:
    """Ten inches on three cells: every square is brought up to a mark, but units finish at 3 1/3."""
    cells = [(x, y) for x in range(3) for y in range(3)]
    halves = tuple(
        text
        for x, y in cells
        for text in (f"fog {x},{y} {x + 1},{y} {x},{y + 1}", f"sea {x + 1},{y} {x + 1},{y + 1} {x},{y + 1}")
    )
    told = size_project(project(halves, "10 x 10", (3, 3))).problems
    assert [problem.code.name for problem in told] == ["off-the-ruler"]
    assert "would be trimmed to about 3 13/16 in" in told[0].message
    assert "9 3/4 in and 10 1/8 in" in told[0].hint
    assert size_project(project(halves, "9 x 9", (3, 3))).problems == ()


@pytest.mark.parametrize(
    ("pieces", "size", "cells"),
    [(STAR, "9 x 9", (6, 6)), (GOOSE, "6 x 3", (4, 2)), (DIAMOND, "4 x 4", (4, 4)), (KITE, "4 x 4", (4, 4))],
    ids=["star", "goose", "diamond", "kite"],
)
@pytest.mark.parametrize("unit", [Unit.INCH, Unit.CENTIMETRE], ids=["inch", "centimetre"])
def test_any_one_mistake_is_caught(pieces: tuple[str, ...], size: str, cells: tuple[int, int], unit: Unit) -> None:
    sized, cuts, program = planned(replace(project(pieces, size, cells), unit=unit))
    assert problems(sized, cuts, program.steps) == []
    made = list(mutants(sized.project, cuts, program))
    assert len(made) > 200
    assert [one.change for one in made[::7] if sew(sized.project, one.cuts, one.program).is_valid] == []


def test_a_unit_is_not_used_where_another_belongs() -> None:
    """The other places of an hourglass name pieces of the same shape in other fabrics, or turned another way."""
    sized, cuts, program = planned(project(STAR, "9 x 9", (6, 6)))
    for place in (("p10", "p9", "p8", "p7"), ("p2", "p3", "p4", "p6"), ("p1", "p3", "p4", "p5")):
        steps = tuple(
            replace(step, operation=replace(step.operation, also=(*step.operation.also[:-1], place)))
            if isinstance(step.operation, JoinPieces) and step.operation.also and len(step.operation.also[0]) == 4
            else step
            for step in program.steps
        )
        assert steps != program.steps
        assert "units-differ" in problems(sized, cuts, steps)


def test_a_triangle_is_cut_with_its_grain_along_the_block() -> None:
    """A half-square triangle has two edges along the grain, a quarter-square triangle one: they are not exchanged."""
    sized, cuts, program = planned(project(GOOSE, "6 x 3", (4, 2)))

    def recut(id: str, shape: CutShape, square: str) -> CutList:
        return CutList(tuple(_as(cut, shape, square) if cut.id == id else cut for cut in cuts.cuts))

    # A goose from a half square: its short side is 3 × √2, so the square would be 4.243 + 0.854, up to 5 1/8.
    assert "wrong-workpiece" in problems(sized, recut("tern-a", HALF, "5 1/8"), program.steps)
    # Its sky from a quarter square: the long side is 3 × √2, so 4.243 + 1.207, up to 5 1/2.
    assert "wrong-workpiece" in problems(sized, recut("tern-b", QUARTER, "5 1/2"), program.steps)


def _as(cut: Cut, shape: CutShape, square: str) -> Cut:
    side = length("square", square)
    return replace(cut, shape=shape, width=side, height=side)
