"""Sections and sewing order: checked by sewing with shapely, and by trying everything on small drawings."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from random import Random

import pytest
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block, Method
from evenseam.piecing import PiecedBlock, piece_block
from hypothesis import given, settings
from hypothesis import strategies as st
from support.drawings import (
    block_of,
    drawn,
    merged_grid,
    random_partition,
    rings_of_strips,
    split_squares,
    squares,
    triangle_hexagon,
)
from support.samples import CONVEX_LANTERN
from support.sewing_check import check_sewing, fewest_by_opening_every_line, fewest_by_trying_everything, shape_of


def pieced_of(block: Block) -> PiecedBlock:
    """Piece a block that can be sewn."""
    outcome = piece_block(block)
    assert outcome.value is not None, outcome.problems
    return outcome.value


def partitions(most: int) -> st.SearchStrategy[list[Polygon]]:
    """Random partitions that straight cuts made, so that straight seams can sew them."""
    return st.builds(random_partition, st.randoms(use_true_random=False), st.integers(1, most))


def merged_grids(most: int) -> st.SearchStrategy[list[Polygon]]:
    """Grids with diagonals whose neighbours are merged: lines that cross, end and go on; some are locked."""
    return st.builds(
        merged_grid, st.randoms(use_true_random=False), st.integers(2, 5), st.integers(2, 4), st.integers(4, most)
    ).filter(lambda outlines: len(outlines) <= most)


class TestSewingOrder:
    """Every seam is straight, runs along the whole edge of both parts, and has one part on each side."""

    @given(partitions(80), st.sampled_from(Method))
    @settings(max_examples=60)
    def test_random_partitions_can_be_sewn_as_told(self, outlines: list[Polygon], method: Method) -> None:
        block = block_of(outlines, method)
        check_sewing(block, pieced_of(block))

    @pytest.mark.parametrize("method", Method)
    @pytest.mark.parametrize(
        "outlines",
        [
            squares(5, 4),
            split_squares(4, 4, lambda x, y: "/\\"[(x + y) % 2]),
            split_squares(3, 3, lambda x, y: "/\\"),
            triangle_hexagon(2),
            rings_of_strips(60),
        ],
        ids=["squares", "half-square triangles", "quarter-square triangles", "hexagon of triangles", "rings of strips"],
    )
    def test_grids_can_be_sewn_as_told(self, outlines: list[Polygon], method: Method) -> None:
        block = block_of(outlines, method)
        check_sewing(block, pieced_of(block))

    def test_a_lantern_is_sewn_from_its_glass_outward(self) -> None:
        pieced = pieced_of(CONVEX_LANTERN)
        assert [[sewn.piece for sewn in section.pieces] for section in pieced.sections] == [
            ["p1", "p5", "p6", "p7"],
            ["p2", "p3", "p4"],
        ]

    def test_corners_drawn_in_the_middle_of_an_edge_change_nothing(self) -> None:
        plain = drawn("0,0 4,0 4,4 0,4\n4,0 6,0 6,4 4,4\n0,4 6,4 6,6 0,6")
        dotted = drawn("0,0 2,0 4,0 4,3 4,4 0,4 0,1\n4,0 6,0 6,4 4,4\n0,4 4,4 5,4 6,4 6,6 0,6")
        assert pieced_of(dotted) == pieced_of(plain)

    def test_slivers_are_sewn_like_any_other_piece(self) -> None:
        thin = Fraction(1, 1000)
        block = block_of(
            [
                Polygon.rectangle(Fraction(0), Fraction(0), Fraction(3), Fraction(6)),
                Polygon.rectangle(Fraction(3), Fraction(0), thin, Fraction(6)),
                Polygon.rectangle(3 + thin, Fraction(0), 3 - thin, Fraction(6)),
            ]
        )
        pieced = pieced_of(block)
        check_sewing(block, pieced)
        assert len(pieced.sections) == 1

    def test_the_largest_block_in_one_long_chain_of_seams_is_sewn(self) -> None:
        assert len(pieced_of(block_of(rings_of_strips(296))).sections) == 297

    def test_a_kite_is_sewn(self) -> None:
        block = drawn("3,0 6,3 3,3\n3,0 3,3 0,3\n0,3 3,3 3,9\n3,3 6,3 3,9")
        pieced = pieced_of(block)
        check_sewing(block, pieced)
        assert len(pieced.sections) == 2


class TestFewestSections:
    """No way of sewing the block has fewer sections."""

    @given(partitions(7))
    @settings(max_examples=120)
    def test_small_partitions_have_as_few_as_trying_everything_finds(self, outlines: list[Polygon]) -> None:
        shapes = {number: shape_of(outline) for number, outline in enumerate(outlines)}
        assert len(pieced_of(block_of(outlines)).sections) == fewest_by_trying_everything(shapes)

    @pytest.mark.parametrize(("across", "down"), [(1, 5), (2, 2), (2, 3), (2, 4), (3, 3)])
    def test_grids_have_as_few_as_trying_everything_finds(self, across: int, down: int) -> None:
        outlines = squares(across, down)
        shapes = {number: shape_of(outline) for number, outline in enumerate(outlines)}
        assert len(pieced_of(block_of(outlines)).sections) == fewest_by_trying_everything(shapes) == min(across, down)

    @pytest.mark.parametrize("diagonals", ["/", "\\", "/\\"])
    def test_split_squares_have_as_few_as_trying_everything_finds(self, diagonals: str) -> None:
        below = Polygon.rectangle(Fraction(0), Fraction(1), Fraction(2), Fraction(1))
        outlines = [*split_squares(2, 1, lambda x, y: diagonals), below]
        shapes = {number: shape_of(outline) for number, outline in enumerate(outlines)}
        assert len(pieced_of(block_of(outlines)).sections) == fewest_by_trying_everything(shapes)

    @given(st.one_of(partitions(16), merged_grids(16)))
    @settings(max_examples=80)
    def test_drawings_have_as_few_as_opening_every_line_finds(self, outlines: list[Polygon]) -> None:
        fewest = fewest_by_opening_every_line([shape_of(outline) for outline in outlines])
        pieced = piece_block(block_of(outlines)).value
        assert (len(pieced.sections) if pieced else None) == fewest

    def test_a_drawing_where_the_likeliest_seam_is_not_the_best(self) -> None:
        # Found by trying seeds: opening the seam that looks best at every turn gives 5.
        outlines = merged_grid(Random(676), 3, 2, 12)
        assert fewest_by_opening_every_line([shape_of(outline) for outline in outlines]) == 4
        assert len(pieced_of(block_of(outlines)).sections) == 4

    @given(merged_grids(24), st.sampled_from(Method))
    @settings(max_examples=40)
    def test_merged_grids_are_sewn_as_told_or_locked(self, outlines: list[Polygon], method: Method) -> None:
        block = block_of(outlines, method)
        outcome = piece_block(block)
        if outcome.value is None:
            assert {problem.code.name for problem in outcome.problems} == {"block-locked"}
        else:
            check_sewing(block, outcome.value)

    @given(partitions(40))
    @settings(max_examples=40)
    def test_a_part_of_a_block_never_needs_more(self, outlines: list[Polygon]) -> None:
        whole = pieced_of(block_of(outlines))
        if whole.joins:
            part = [outlines[int(name[1:]) - 1] for name in whole.joins[-1].first_pieces]
            assert len(pieced_of(block_of(part)).sections) <= len(whole.sections)

    def test_rotary_blocks_have_one_piece_in_every_section(self) -> None:
        pieced = pieced_of(replace(CONVEX_LANTERN, method=Method.ROTARY))
        assert [[sewn.label for sewn in section.pieces] for section in pieced.sections] == [
            [f"{name}1"] for name in "ABCDEFG"
        ]
        assert len(pieced.joins) == 6


QUARTER_TURN, MIRROR, LARGER = (
    lambda p: Point(-p.y, p.x),
    lambda p: Point(-p.x, p.y),
    lambda p: p.scaled(Fraction(7, 3), Fraction(7, 3)),
)


def moved(block: Block, move: Callable[[Point], Point]) -> Block:
    """Return the block with every corner moved."""
    outlines = [Polygon(tuple(move(corner) for corner in piece.outline.corners)).clockwise() for piece in block.pieces]
    return replace(
        block_of(outlines, block.method), outline=Polygon(tuple(map(move, block.outline.corners))).clockwise()
    )


def structure(pieced: PiecedBlock) -> object:
    """Return everything about a pieced block but its coordinates."""
    return (
        [(section.name, [(sewn.piece, sewn.label) for sewn in section.pieces]) for section in pieced.sections],
        [
            (j.makes, j.first, j.second, j.first_pieces, j.second_pieces, j.press, len(j.match_points))
            for j in pieced.joins
        ],
    )


class TestTheDrawingMayBeTurned:
    """Rotating, mirroring or scaling a drawing changes nothing but the coordinates."""

    @given(partitions(40), st.sampled_from(Method))
    @settings(max_examples=30)
    def test_random_partitions(self, outlines: list[Polygon], method: Method) -> None:
        block = block_of(outlines, method)
        expected = structure(pieced_of(block))
        for move in (QUARTER_TURN, MIRROR, LARGER):
            assert structure(pieced_of(moved(block, move))) == expected

    @pytest.mark.parametrize("method", Method)
    @pytest.mark.parametrize(
        "outlines",
        [squares(4, 4), split_squares(4, 4, lambda x, y: "/\\"[(x + y) % 2]), split_squares(3, 3, lambda x, y: "/\\")],
        ids=["squares", "half-square triangles", "quarter-square triangles"],
    )
    def test_drawings_that_are_their_own_turn(self, outlines: list[Polygon], method: Method) -> None:
        block = block_of(outlines, method)
        expected = structure(pieced_of(block))
        for move in (QUARTER_TURN, MIRROR, LARGER):
            assert structure(pieced_of(moved(block, move))) == expected


def test_pieces_taken_in_another_order_give_as_many_sections() -> None:
    for seed in range(12):
        outlines = random_partition(Random(seed), 30)
        counts = {len(pieced_of(block_of(Random(turn).sample(outlines, 30))).sections) for turn in range(3)}
        assert len(counts) == 1
