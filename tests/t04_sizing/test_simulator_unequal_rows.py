"""Rows of unequal blocks with spacers, written down by hand: every row comes out as wide as the widest one."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.pattern import (
    BATTING,
    PROJECT,
    Arrangement,
    BlockPosition,
    Cut,
    CutList,
    JoinRun,
    LayerTurned,
    Press,
    Program,
    Project,
    Run,
    Sashing,
    Setting,
    Spacer,
    Topstitch,
    TurnOut,
    UnequalRow,
)
from evenseam.sizing.simulator import sew
from support.mat import MAT, cut, problems_of, step, with_cut
from support.samples import TURNED, count, length
from support.sewing_faults import mutants
from support.tops import plain_block

# Three kinds of plain blocks: wide 6 × 4, slim 3 × 4, low 5 × 3. The upper row: wide, a spacer of 1, slim: 10 wide and 4
# high. The lower row: share, low, share: it lacks 5, so each share is 2 1/2; 3 high. Together 10 × 7, raw 10 1/2 × 7 1/2.
BLOCKS = tuple(
    plain_block(Fraction(wide), Fraction(high), id=id)
    for id, wide, high in (("wide", 6, 4), ("slim", 3, 4), ("low", 5, 3))
)
ROWS = (
    UnequalRow((BlockPosition("wide"), Spacer("sea", length("spacer", "1")), BlockPosition("slim"))),
    UnequalRow((Spacer("lamp", None), BlockPosition("low"), Spacer("lamp", None))),
)
PROJECT_ = replace(
    MAT, blocks=BLOCKS, borders=(), finish=replace(TURNED, opening=length("opening", "2")),
    fabrics=tuple(replace(fabric, is_directional=False) for fabric in MAT.fabrics),
    arrangement=Arrangement(
        count("rows", 2), count("columns", 2), Setting.UNEQUAL_ROWS,
        ((BlockPosition("wide"), BlockPosition("slim")), (BlockPosition("low"),)), unequal_rows=ROWS,
    ),
)  # fmt: skip
CUTS = CutList((
    cut("wide", "fog", "6 1/2 x 4 1/2", 1, "block:wide"), cut("slim", "fog", "3 1/2 x 4 1/2", 1, "block:slim"),
    cut("low", "fog", "5 1/2 x 3 1/2", 1, "block:low"), cut("spacer-1", "sea", "1 1/2 x 4 1/2", 1, "spacer"),
    cut("spacer-2", "lamp", "3 x 3 1/2", 2, "spacer"), cut("backing", "sea", "12 1/2 x 9 1/2", 1),
    cut("batting", BATTING, "12 1/2 x 9 1/2", 1),
))  # fmt: skip
STEPS = (
    step("upper", JoinRun(("wide", "spacer-1", "slim"), Run.ACROSS, Press.OPEN, "blocks"), "10 1/2 x 4 1/2"),
    step("lower", JoinRun(("spacer-2", "low", "spacer-2"), Run.ACROSS, Press.OPEN, "blocks"), "10 1/2 x 3 1/2"),
    step("top", JoinRun(("upper", "lower"), Run.DOWN, Press.OPEN, "rows"), "10 1/2 x 7 1/2"),
    step("layered", LayerTurned("top", "backing", "batting", length("seam", "1/4"), length("opening", "2"), "bottom")),
    step("turned-out", TurnOut("layered"), "10 x 7"),
    step(PROJECT, Topstitch("turned-out", length("topstitching", "1/8")), "10 x 7"),
)
PROGRAM = Program(STEPS)


def with_rows(*rows: UnequalRow) -> Project:
    """Return the project with other rows, and the positions that go with them."""
    blocks = tuple(tuple(part for part in row.parts if isinstance(part, BlockPosition)) for row in rows)
    arrangement = replace(PROJECT_.arrangement, positions=blocks, unequal_rows=rows)
    return replace(PROJECT_, arrangement=arrangement)


def test_rows_of_unequal_blocks_are_sewn() -> None:
    outcome = sew(PROJECT_, CUTS, PROGRAM)
    assert outcome.problems == ()
    assert outcome.value is not None
    assert (outcome.value.finished_width, outcome.value.finished_height) == (10, 7)


def test_any_one_mistake_is_caught() -> None:
    made = list(mutants(PROJECT_, CUTS, PROGRAM))
    assert len(made) > 400
    assert [mutant.change for mutant in made if sew(PROJECT_, mutant.cuts, mutant.program).is_valid] == []


def test_two_mistakes_that_make_up_for_each_other() -> None:
    """One spacer an eighth wider, and the block beside it an eighth slimmer: every edge is still equal."""
    wrong = with_cut(with_cut(CUTS, "spacer-1", "1 5/8 x 4 1/2"), "slim", "3 3/8 x 4 1/2")
    assert not sew(PROJECT_, wrong, PROGRAM).is_valid
    other = tuple(replace(block, width=length("slim", "2 7/8")) if block.id == "slim" else block for block in BLOCKS)
    assert problems_of(replace(PROJECT_, blocks=other), wrong, PROGRAM) == ["sashing-not-as-decided"]


def test_spacers_that_share_otherwise() -> None:
    """1 1/2 on the left and 3 1/2 on the right of the low block: it comes out even, and is not what was decided."""
    cuts: list[Cut] = [each for each in CUTS.cuts if each.id != "spacer-2"]
    cuts += [cut("left", "lamp", "2 x 3 1/2", 1, "spacer"), cut("right", "lamp", "4 x 3 1/2", 1, "spacer")]
    joined = step("lower", JoinRun(("left", "low", "right"), Run.ACROSS, Press.OPEN, "blocks"), "10 1/2 x 3 1/2")
    program = Program((STEPS[0], joined, *STEPS[2:]))
    assert problems_of(PROJECT_, CutList(tuple(cuts)), program) == ["sashing-not-as-decided"]
    given = UnequalRow((
        Spacer("lamp", length("left", "1 1/2")), BlockPosition("low"), Spacer("lamp", length("right", "3 1/2")),
    ))  # fmt: skip
    assert problems_of(with_rows(ROWS[0], given), CutList(tuple(cuts)), program) == []


def test_a_spacer_with_nothing_to_share_is_left_out() -> None:
    """A spacer that takes a share in the widest row has no width; no strip is cut for it."""
    first = UnequalRow((Spacer("sea", None), *ROWS[0].parts))
    assert problems_of(with_rows(first, ROWS[1]), CUTS, PROGRAM) == []


def test_rows_in_each_others_place() -> None:
    assert problems_of(with_rows(ROWS[1], ROWS[0]), CUTS, PROGRAM) == ["blocks-not-as-arranged"]
    down = step("top", JoinRun(("lower", "upper"), Run.DOWN, Press.OPEN, "rows"), "10 1/2 x 7 1/2")
    assert problems_of(PROJECT_, CUTS, Program((*STEPS[:2], down, *STEPS[3:]))) == ["blocks-not-as-arranged"]


def test_a_block_where_a_spacer_belongs() -> None:
    swapped = step("upper", JoinRun(("wide", "slim", "spacer-1"), Run.ACROSS, Press.OPEN, "blocks"), "10 1/2 x 4 1/2")
    assert problems_of(PROJECT_, CUTS, Program((swapped, *STEPS[1:]))) == ["blocks-not-as-arranged"]


def test_arrangements_that_contradict_themselves() -> None:
    arrangement = PROJECT_.arrangement
    for changes in (
        {"positions": (arrangement.positions[0], (BlockPosition("slim"),))},
        {"columns": count("columns", 3)},
        {"rows": count("rows", 3)},
        {"unequal_rows": ROWS[:1]},
        {"unequal_rows": (ROWS[0], UnequalRow(ROWS[1].parts[:1])), "positions": (arrangement.positions[0], ())},
    ):
        other = replace(PROJECT_, arrangement=replace(arrangement, **changes))  # type: ignore[arg-type]
        assert "blocks-not-as-arranged" in problems_of(other, CUTS, PROGRAM)
    stones = replace(arrangement, sashing=Sashing(length("sashing", "1"), "fog", False, cornerstone_fabric="sea"))
    assert problems_of(replace(PROJECT_, arrangement=stones), CUTS, PROGRAM) == ["not-sewable-yet"]


# The same with a third row of two slim blocks, and sashing of 1 all round. The third row: slim, sash, slim, share: 7
# and a share of 3. So every row is 10, with a sash at either end 12; three rows of 4, 3 and 4 and four strips make 15.
SASHED = replace(
    with_rows(*ROWS, UnequalRow((BlockPosition("slim"), BlockPosition("slim"), Spacer("lamp", None)))),
    finish=PROJECT_.finish,
)
SASHED = replace(
    SASHED,
    arrangement=replace(
        SASHED.arrangement, rows=count("rows", 3), sashing=Sashing(length("sashing", "1"), "fog", is_around=True)
    ),
)
SASHED_CUTS = CutList((
    cut("wide", "fog", "6 1/2 x 4 1/2", 1, "block:wide"), cut("slim", "fog", "3 1/2 x 4 1/2", 3, "block:slim"),
    cut("low", "fog", "5 1/2 x 3 1/2", 1, "block:low"), cut("spacer-1", "sea", "1 1/2 x 4 1/2", 1, "spacer"),
    cut("spacer-2", "lamp", "3 x 3 1/2", 2, "spacer"), cut("spacer-3", "lamp", "3 1/2 x 4 1/2", 1, "spacer"),
    cut("sash-1", "fog", "1 1/2 x 4 1/2", 5, "sashing"), cut("sash-2", "fog", "1 1/2 x 3 1/2", 2, "sashing"),
    cut("strip", "fog", "12 1/2 x 1 1/2", 4, "sashing"), cut("backing", "sea", "14 1/2 x 17 1/2", 1),
    cut("batting", BATTING, "14 1/2 x 17 1/2", 1),
))  # fmt: skip
SASHED_STEPS = (
    step("upper", JoinRun(("sash-1", "wide", "spacer-1", "slim", "sash-1"), Run.ACROSS, Press.OPEN, "blocks"),
         "12 1/2 x 4 1/2"),
    step("lower", JoinRun(("sash-2", "spacer-2", "low", "spacer-2", "sash-2"), Run.ACROSS, Press.OPEN, "blocks"),
         "12 1/2 x 3 1/2"),
    step("last", JoinRun(("sash-1", "slim", "sash-1", "slim", "spacer-3", "sash-1"), Run.ACROSS, Press.OPEN, "blocks"),
         "12 1/2 x 4 1/2"),
    step("top", JoinRun(("strip", "upper", "strip", "lower", "strip", "last", "strip"), Run.DOWN, Press.SASHING,
                        "rows"), "12 1/2 x 15 1/2"),
    step("layered", LayerTurned("top", "backing", "batting", length("seam", "1/4"), length("opening", "2"), "bottom")),
    step("turned-out", TurnOut("layered"), "12 x 15"),
    step(PROJECT, Topstitch("turned-out", length("topstitching", "1/8")), "12 x 15"),
)  # fmt: skip


def resewn(number: int, *parts: str) -> Program:
    """Return the sashed program with other parts in one run."""
    run = SASHED_STEPS[number].operation
    assert isinstance(run, JoinRun)
    changed = replace(SASHED_STEPS[number], operation=replace(run, parts=parts))
    return Program((*SASHED_STEPS[:number], changed, *SASHED_STEPS[number + 1 :]))


class TestSashing:
    """Sashing lies between unequal rows and stands wherever two of their blocks would touch."""

    def test_sewn_from_cuts_counted_by_hand(self) -> None:
        outcome = sew(SASHED, SASHED_CUTS, Program(SASHED_STEPS))
        assert outcome.problems == ()
        assert outcome.value is not None
        assert (outcome.value.finished_width, outcome.value.finished_height) == (12, 15)

    def test_any_one_mistake_is_caught(self) -> None:
        made = list(mutants(SASHED, SASHED_CUTS, Program(SASHED_STEPS)))
        assert len(made) > 500
        assert [each.change for each in made if sew(SASHED, each.cuts, each.program).is_valid] == []

    def test_a_sash_and_a_spacer_in_each_others_place(self) -> None:
        program = resewn(0, "spacer-1", "wide", "sash-1", "slim", "sash-1")
        assert problems_of(SASHED, SASHED_CUTS, program) == ["wrong-fabric"]

    def test_a_sash_beside_the_wrong_block(self) -> None:
        program = resewn(2, "sash-1", "slim", "slim", "sash-1", "spacer-3", "sash-1")
        assert problems_of(SASHED, SASHED_CUTS, program) == ["sashing-not-as-decided"]

    def test_a_strip_in_the_place_of_a_row(self) -> None:
        program = resewn(3, "strip", "upper", "strip", "strip", "lower", "last", "strip")
        assert problems_of(SASHED, SASHED_CUTS, program) == ["blocks-not-as-arranged"]
        program = resewn(3, "upper", "strip", "strip", "lower", "strip", "last", "strip")
        assert problems_of(SASHED, SASHED_CUTS, program) == ["sashing-not-as-decided"]

    def test_sashing_between_rows_only(self) -> None:
        assert SASHED.arrangement.sashing is not None
        only = replace(SASHED.arrangement, sashing=replace(SASHED.arrangement.sashing, between_blocks=False))
        # Without the sash between the two slim blocks their spacer has an inch more to fill.
        assert problems_of(replace(SASHED, arrangement=only), SASHED_CUTS, Program(SASHED_STEPS)) == [
            "blocks-not-as-arranged"
        ]

    def test_a_print_with_an_up_in_the_sashing(self) -> None:
        upright = tuple(replace(fabric, is_directional=fabric.id == "fog") for fabric in SASHED.fabrics)
        project = replace(SASHED, fabrics=upright)
        assert set(problems_of(project, SASHED_CUTS, Program(SASHED_STEPS))) == {"print-lies-sideways"}
        standing = CutList(tuple(replace(each, is_upright=each.material == "fog") for each in SASHED_CUTS.cuts))
        assert problems_of(project, standing, Program(SASHED_STEPS)) == []


def test_a_print_with_an_up_in_a_spacer() -> None:
    upright = tuple(replace(fabric, is_directional=fabric.id == "lamp") for fabric in PROJECT_.fabrics)
    project = replace(PROJECT_, fabrics=upright)
    assert problems_of(project, CUTS, PROGRAM) == ["print-lies-sideways"]
    standing = CutList(tuple(replace(each, is_upright=each.material == "lamp") for each in CUTS.cuts))
    assert problems_of(project, standing, PROGRAM) == []
