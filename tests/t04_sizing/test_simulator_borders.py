"""Borders that are mitred, pass their corners or are made of blocks, written down by hand round a plain mat.

The mat is one plain piece of sea, 12 × 6 in finished; the seam allowance is 1/4 in. The sums stand in the comments.
"""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import (
    BATTING,
    AddBorderStrips,
    AddMitredBorder,
    BlockPosition,
    BorderCorners,
    CutList,
    CutShape,
    JoinRun,
    Press,
    Program,
    Project,
    Quantity,
    Run,
)
from evenseam.sizing.simulator import sew
from support.mat import cut, problems_of, step, with_cut
from support.samples import count, length
from support.sewing_faults import mutants
from support.sewn_borders import (
    ALL,
    BLOCKS,
    EDGE_BLOCK,
    MITRED,
    OF_BLOCKS,
    ONE_MITRED,
    PARTIAL,
    PASSING,
    TWO_MITRED,
    WITH_CORNERS,
    Sewn,
    plain_pieces,
)
from support.tops import plain_block


@pytest.mark.parametrize("sewn", ALL.values(), ids=ALL.keys())
def test_borders_are_sewn_from_their_cut_lists(sewn: Sewn) -> None:
    outcome = sew(*sewn)
    assert outcome.problems == ()
    assert outcome.value is not None
    *_, top, layered, turned, finished = outcome.value.measurements
    assert (top.width, top.height) == (layered.width, layered.height)
    assert (top.width - Fraction(1, 2), top.height - Fraction(1, 2)) == (turned.width, turned.height)
    assert (finished.width, finished.height) == (outcome.value.finished_width, outcome.value.finished_height)


@pytest.mark.parametrize("sewn", ALL.values(), ids=ALL.keys())
def test_any_one_mistake_is_caught(sewn: Sewn) -> None:
    made = list(mutants(*sewn))
    assert len(made) > 250
    assert [mutant.change for mutant in made if sew(sewn[0], mutant.cuts, mutant.program).is_valid] == []


def turned_to_centimetres(sewn: Sewn) -> Sewn:
    """Return the same mat with every inch a centimetre: nothing in the sewing depends on the unit but the marks."""

    def metric(value: object) -> object:
        if isinstance(value, Quantity):
            return replace(value, unit=Unit.CENTIMETRE) if value.unit is Unit.INCH else value
        if isinstance(value, tuple):
            return tuple(metric(each) for each in value)
        if is_dataclass(value) and not isinstance(value, type):
            changed = {field.name: metric(getattr(value, field.name)) for field in fields(value) if field.init}
            return replace(value, **changed)
        return value

    project, cuts, program = (metric(each) for each in sewn)
    return replace(project, unit=Unit.CENTIMETRE), cuts, program  # type: ignore[return-value,type-var]


@pytest.mark.parametrize("sewn", ALL.values(), ids=ALL.keys())
def test_centimetres_are_sewn_alike(sewn: Sewn) -> None:
    metric = turned_to_centimetres(sewn)
    assert problems_of(*metric) == []
    names = {each.makes for each in metric[2].steps} | {each.id for each in metric[1].cuts}
    made = [mutant for mutant in mutants(*metric) if mutant.change.split(" ")[-1] not in names]
    assert [mutant.change for mutant in made if sew(metric[0], mutant.cuts, mutant.program).is_valid] == []


def other(sewn: Sewn, **changes: object) -> Project:
    """Return the project with its first border decided otherwise."""
    project = sewn[0]
    return replace(project, borders=(replace(project.borders[0], **changes), *project.borders[1:]))  # type: ignore[arg-type]


class TestMitredStrips:
    """A mitred strip reaches from raw point to raw point, and all four are longer than that by the same round figure."""

    @pytest.mark.parametrize(
        ("side", "end", "problems"),
        [
            # Published: twice the width and nothing, 1, 6 or about 10 in more ("Mitered borders", QuiltingHub;
            # quiltingboard.com; "Determining Border Lengths", Annie's; as read in the handbook).
            ("10 1/2", "16 1/2", []), ("11 1/2", "17 1/2", []), ("16 1/2", "22 1/2", []), ("20 1/2", "26 1/2", []),
            ("10 3/8", "16 3/8", ["edges-differ", "edges-differ"]), ("14 1/2", "20 5/8", ["edges-differ"]),
            ("14 1/2", "21", ["edges-differ"]), ("10", "20 1/2", ["edges-differ"]), ("30 1/2", "36 1/2", ["edges-differ"] * 2),
        ],
    )  # fmt: skip
    def test_lengths(self, side: str, end: str, problems: list[str]) -> None:
        project, cuts, program = ONE_MITRED
        other_cuts = with_cut(with_cut(cuts, "sides", f"2 1/2 x {side}"), "ends", f"{end} x 2 1/2")
        assert problems_of(project, other_cuts, program) == problems

    def test_an_ease_the_author_decided(self) -> None:
        _, cuts, program = ONE_MITRED
        assert problems_of(other(ONE_MITRED, ease=length("ease", "4")), cuts, program) == []
        assert problems_of(other(ONE_MITRED, ease=length("ease", "6")), cuts, program) == ["edges-differ"] * 2

    def test_a_published_mitred_border(self) -> None:
        """A side of 17 1/2, a border of 3 1/2 in all and 6 in to spare: 30 1/2 ("Mitered borders", QuiltingHub).

        Here the side is the raw edge; read as a finished one, the spare is 5 1/2.
        """
        project = other(ONE_MITRED, width=length("width", "3 1/2"))
        block = replace(plain_block(Fraction(17), Fraction(17)), pieces=plain_pieces("sea"))
        cuts = (
            cut("centre", "sea", "17 1/2 x 17 1/2", 1, "block:plain"), cut("strips", "lamp", "4 x 30 1/2", 2),
            cut("ends", "lamp", "30 1/2 x 4", 2), cut("backing", "sea", "26 1/2 x 26 1/2", 1),
            cut("batting", BATTING, "26 1/2 x 26 1/2", 1),
        )  # fmt: skip
        program = Program((
            step("top", AddMitredBorder(("rim",), "centre", "strips", "ends"), "24 1/2 x 24 1/2"),
            *(replace(each, measures=None) for each in ONE_MITRED[2].steps[1:]),
        ))  # fmt: skip
        assert problems_of(replace(project, blocks=(block,)), CutList(cuts), program) == []

    def test_neighbouring_mitred_borders_are_one(self) -> None:
        project, cuts, program = TWO_MITRED
        alone = replace(program.steps[2], operation=AddMitredBorder(("inner",), "centre", "sides", "ends"))
        assert "border-order-differs" in problems_of(
            project, cuts, Program((*program.steps[:2], alone, *program.steps[3:]))
        )
        swapped = replace(program.steps[2], operation=AddMitredBorder(("outer", "inner"), "centre", "sides", "ends"))
        assert "border-order-differs" in problems_of(
            project, cuts, Program((*program.steps[:2], swapped, *program.steps[3:]))
        )

    def test_a_print_with_an_up_is_not_turned_half_round(self) -> None:
        """Joined with another strip it would stand on its head at the right or at the bottom."""
        project, cuts, program = TWO_MITRED
        upright = tuple(replace(fabric, is_directional=fabric.id == "lamp") for fabric in project.fabrics)
        standing = CutList(tuple(replace(each, is_upright=True) for each in cuts.cuts))
        assert problems_of(replace(project, fabrics=upright), standing, program) == ["border-order-differs"]

    def test_other_corners_are_not_mitred(self) -> None:
        for corners in (BorderCorners.BUTTED, BorderCorners.CORNERSTONES, PARTIAL):
            assert "border-order-differs" in problems_of(other(ONE_MITRED, corners=corners), *ONE_MITRED[1:])
        assert "border-order-differs" in problems_of(other(PASSING, corners=MITRED), *PASSING[1:])


class TestBordersOfBlocks:
    """What the inside lacks to whole blocks is filled with spacers; blocks turn with the sides, and the corners too."""

    def test_a_spacer_too_narrow_to_sew(self) -> None:
        """A spacer of 1 in is not worth sewing if 2 in is the least: then there are three blocks of 4 in along a side
        of 6, and a spacer of 3 at top and bottom.
        """
        _, cuts, program = OF_BLOCKS
        wider = other(OF_BLOCKS, pieced=replace(BLOCKS, least_spacer=length("least", "2")))
        assert "border-width-differs" in problems_of(wider, cuts, program)
        # The side strips are three blocks, 12 1/2; the top is 16 1/2 × 16 1/2.
        made = {each.id: each for each in cuts.cuts}
        larger = CutList((
            made["centre"], cut("spacers", "reed", "12 1/2 x 3 1/2", 2),
            replace(made["edge"], count=count("edge count", 12)), made["stones"],
            cut("backing", "sea", "18 1/2 x 18 1/2", 1), cut("batting", BATTING, "18 1/2 x 18 1/2", 1),
        ))  # fmt: skip
        steps = [replace(each, measures=None) for each in program.steps]
        steps[1] = replace(steps[1], operation=JoinRun(("edge",) * 3, Run.ACROSS, Press.OPEN, "blocks"))
        assert problems_of(wider, larger, Program(tuple(steps))) == []
        least = other(OF_BLOCKS, pieced=replace(BLOCKS, least_spacer=length("least", "1")))
        assert problems_of(least, cuts, program) == []

    def test_without_a_spacer_it_does_not_come_out_even(self) -> None:
        project = other(OF_BLOCKS, pieced=replace(BLOCKS, spacer_fabric=None))
        assert "border-order-differs" in problems_of(project, *OF_BLOCKS[1:])

    @pytest.mark.parametrize("turns", [(0, 0, 0, 0, 0), (1, 0, 0, 0, 1), (0, 0, 2, 0, 1), (0, 1, 0, 0, 1)])
    def test_blocks_turned_otherwise(self, turns: tuple[int, ...]) -> None:
        project, cuts, program = WITH_CORNERS
        wrong = replace(program.steps[2], operation=replace(program.steps[2].operation, quarter_turns=turns))
        assert not sew(project, cuts, Program((*program.steps[:2], wrong, *program.steps[3:]))).is_valid

    def test_a_block_for_each_side_where_a_print_has_an_up(self) -> None:
        """Four blocks, one for each side, none of them turned: rows lie as they are sewn on."""
        ids = ("edge", "right", "below", "left")
        shapes = [(4, 2), (2, 4), (4, 2), (2, 4)]
        blocks = [
            replace(plain_block(Fraction(wide), Fraction(high), id=id), pieces=plain_pieces("fog"))
            for id, (wide, high) in zip(ids, shapes, strict=True)
        ]
        standing = tuple(BlockPosition(id) for id in ids)
        project, cuts, _ = OF_BLOCKS
        project = replace(
            other(OF_BLOCKS, pieced=replace(BLOCKS, standing=standing)), blocks=(project.blocks[0], *blocks)
        )
        made = {each.id: each for each in cuts.cuts}
        pieces = CutList((
            *(each for each in cuts.cuts if each.id != "edge"),
            cut("edge", "fog", "4 1/2 x 2 1/2", 3, "block:edge"), cut("right", "fog", "2 1/2 x 4 1/2", 2, "block:right"),
            cut("below", "fog", "4 1/2 x 2 1/2", 3, "block:below"), cut("left", "fog", "2 1/2 x 4 1/2", 2, "block:left"),
        ))  # fmt: skip
        assert "stones" in made

        def program(left: str, right: str) -> Program:
            return Program((
                OF_BLOCKS[2].steps[0],
                step("left-row", JoinRun((left,) * 2, Run.DOWN, Press.OPEN, "blocks")),
                step("right-row", JoinRun((right,) * 2, Run.DOWN, Press.OPEN, "blocks")),
                step("above", JoinRun(("stones", *("edge",) * 3, "stones"), Run.ACROSS, Press.OPEN, "blocks")),
                step("under", JoinRun(("stones", *("below",) * 3, "stones"), Run.ACROSS, Press.OPEN, "blocks")),
                step("with-sides", AddBorderStrips("rim", "even", "left-row", Run.ACROSS, Press.INWARD, "right-row")),
                step("top", AddBorderStrips("rim", "with-sides", "above", Run.DOWN, Press.INWARD, "under")),
                *OF_BLOCKS[2].steps[5:],
            ))  # fmt: skip

        assert problems_of(project, pieces, program("left", "right")) == []
        assert problems_of(project, pieces, program("right", "left")) == ["blocks-not-as-arranged"] * 2

    def test_one_block_on_a_side_is_turned_like_a_row_of_them(self) -> None:
        """A mat of 4 × 4: one block on every side, 4 in, and corners: 8 1/2."""
        block = replace(plain_block(Fraction(4), Fraction(4)), pieces=plain_pieces("sea"))
        project = replace(OF_BLOCKS[0], blocks=(block, EDGE_BLOCK))
        cuts = CutList((
            cut("centre", "sea", "4 1/2 x 4 1/2", 1, "block:plain"), cut("edge", "fog", "4 1/2 x 2 1/2", 4, "block:edge"),
            cut("stones", "sea", "2 1/2 x 2 1/2", 4), cut("backing", "sea", "10 1/2 x 10 1/2", 1),
            cut("batting", BATTING, "10 1/2 x 10 1/2", 1),
        ))  # fmt: skip
        program = Program((
            step("long", JoinRun(("stones", "edge", "stones"), Run.ACROSS, Press.OPEN, "blocks"), "8 1/2 x 2 1/2", 2),
            step(
                "with-sides",
                AddBorderStrips("rim", "centre", "edge", Run.ACROSS, Press.INWARD, quarter_turns=3, opposite_turns=1),
                "8 1/2 x 4 1/2",
            ),
            *(replace(each, measures=None) for each in OF_BLOCKS[2].steps[4:]),
        ))  # fmt: skip
        assert problems_of(project, cuts, program) == []


def test_a_strip_that_passes_a_corner_is_no_longer_than_an_edge_and_a_width() -> None:
    project, cuts, program = PASSING
    for size in ("2 1/2 x 8 5/8", "2 1/2 x 8 3/8", "2 5/8 x 8 1/2"):
        assert not sew(project, with_cut(cuts, "sides", size), program).is_valid


def test_a_mitred_border_of_strips_that_are_no_strips() -> None:
    project, cuts, program = ONE_MITRED
    shaped = tuple(replace(each, shape=CutShape.TEMPLATE) if each.id == "sides" else each for each in cuts.cuts)
    assert problems_of(project, CutList(shaped), program) == ["wrong-workpiece"]
