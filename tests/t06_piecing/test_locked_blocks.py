"""Blocks no straight seam opens: recognised, named, and freed by the seams proposed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import combinations
from random import Random

import pytest
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block, BlockPiece
from evenseam.piecing import LockedSet, locked_report, piece_block
from evenseam.problems import Place
from shapely.geometry import LineString
from shapely.geometry import Polygon as Shape
from shapely.ops import split
from support.drawings import (
    NESTED_PINWHEELS,
    PINWHEEL,
    THREE_RHOMBS,
    block_of,
    drawn,
    merged_grid,
    random_partition,
    squares,
)
from support.samples import polygon
from support.sewing_check import can_be_sewn, check_sewing, shape_of

TWO_PINWHEELS = PINWHEEL + "\n".join(
    " ".join(f"{int(corner.split(',')[0]) + 6},{corner.split(',')[1]}" for corner in line.split())
    for line in PINWHEEL.strip().splitlines()
)
LONG_PINWHEEL = """
0,0 7,0 7,3 0,3
7,0 10,0 10,8 7,8
4,8 10,8 10,12 4,12
0,3 4,3 4,12 0,12
4,3 7,3 7,5 4,5
4,5 7,5 7,8 4,8
"""
LOCKED = {
    "pinwheel": (drawn(PINWHEEL), 1),
    "two pinwheels side by side": (drawn(TWO_PINWHEELS), 2),
    "pinwheel in a pinwheel": (drawn(NESTED_PINWHEELS), 2),
    "pinwheel with a parted middle": (drawn(LONG_PINWHEEL), 1),
    "three rhombs in a hexagon": (block_of(THREE_RHOMBS), 1),
}


def repaired(block: Block) -> Block:
    """Return the block with every proposed replacement drawn in."""
    report = locked_report(block)
    assert report is not None
    parts = {piece: outlines for locked in report.sets for piece, outlines in locked.replacements}
    return replace(
        block,
        pieces=tuple(
            BlockPiece(piece.id if len(outlines) == 1 else f"{piece.id}-{number}", piece.fabric, outline)
            for piece in block.pieces
            for outlines in (parts.get(piece.id, (piece.outline,)),)
            for number, outline in enumerate(outlines)
        ),
    )


def one_added_seam_frees(shapes: list[Shape]) -> bool:
    """Try every seam across one piece along a line through two corners."""
    corners = sorted({corner for shape in shapes for corner in shape.exterior.coords})
    for (x, y), (u, v) in combinations(corners, 2):
        far = LineString([(x - 50 * (u - x), y - 50 * (v - y)), (u + 50 * (u - x), v + 50 * (v - y))])
        for number, shape in enumerate(shapes):
            parts = [part for part in split(shape, far).geoms if part.area > 1e-9]
            if len(parts) == 2 and can_be_sewn([*shapes[:number], *shapes[number + 1 :], *parts]):
                return True
    return False


@pytest.mark.parametrize(("block", "seams"), LOCKED.values(), ids=LOCKED)
class TestLockedFigures:
    """A block no straight seam opens is reported, and the seams proposed free it."""

    def test_it_is_reported(self, block: Block, seams: int) -> None:
        outcome = piece_block(block)
        assert outcome.value is None
        assert {problem.code.name for problem in outcome.problems} == {"block-locked"}

    def test_as_few_seams_are_proposed_as_will_do(self, block: Block, seams: int) -> None:
        report = locked_report(block)
        assert report is not None
        assert sum(len(locked.seams) for locked in report.sets) == seams
        assert all(locked.is_fewest for locked in report.sets)
        shapes = [shape_of(piece.outline) for piece in block.pieces]
        assert not can_be_sewn(shapes)
        assert one_added_seam_frees(shapes) is (seams == 1)

    def test_the_proposed_seams_free_it(self, block: Block, seams: int) -> None:
        freed = repaired(block)
        assert len(freed.pieces) == len(block.pieces) + seams
        outcome = piece_block(freed)
        assert outcome.value is not None
        check_sewing(freed, outcome.value)


class TestWhichPiecesLock:
    """Only the pieces that hold one another are named."""

    def test_pieces_round_a_pinwheel_are_not_named(self) -> None:
        report = locked_report(drawn(PINWHEEL + "6,0 9,0 9,6 6,6\n0,6 9,6 9,7 0,7"))
        assert report is not None
        assert [locked.pieces for locked in report.sets] == [("p1", "p2", "p3", "p4", "p5")]
        assert report.sets[0].outline == polygon("0,0 6,0 6,6 0,6")

    def test_two_pinwheels_are_two_sets(self) -> None:
        report = locked_report(drawn(TWO_PINWHEELS))
        assert report is not None
        assert [locked.pieces for locked in report.sets] == [
            ("p1", "p2", "p3", "p4", "p5"),
            ("p6", "p7", "p8", "p9", "p10"),
        ]

    def test_a_block_that_can_be_sewn_has_no_report(self) -> None:
        assert locked_report(block_of(squares(3, 3))) is None

    @pytest.mark.parametrize("seed", range(12))
    def test_random_merged_grids_are_freed_by_what_is_proposed(self, seed: int) -> None:
        outlines = merged_grid(Random(seed), 4, 4, 14)
        block = block_of(outlines)
        locked = locked_report(block)
        assert (locked is None) == can_be_sewn([shape_of(outline) for outline in outlines])
        if locked is not None:
            freed = repaired(block)
            assert piece_block(freed).value is not None
            assert sum(piece.outline.area for piece in freed.pieces) == block.outline.area


class TestManyLockedPieces:
    """Where the search would take too long a bound is stated instead, and the seams proposed still free the block."""

    def test_a_large_locked_figure_is_freed_within_its_bound(self) -> None:
        pinwheels = [
            outline.moved(step) for step in _tiles(3) for outline in map(polygon, PINWHEEL.strip().split("\n"))
        ]
        report = locked_report(block_of(pinwheels))
        assert report is not None
        assert len(report.sets) == 9

    def test_rings_of_pinwheels(self) -> None:
        outlines = _nested(6)
        report = locked_report(block_of(outlines))
        assert report is not None
        (locked,) = report.sets
        assert isinstance(locked, LockedSet)
        assert locked.at_least <= len(locked.seams) == 6
        assert piece_block(repaired(block_of(outlines))).value is not None


def _tiles(across: int) -> list[Point]:
    return [Point(Fraction(6 * x), Fraction(6 * y)) for x in range(across) for y in range(across)]


def _nested(rings: int) -> list[Polygon]:
    """Pinwheels about one middle, each holding the next in its centre."""
    outlines: list[Polygon] = []
    low, high = Fraction(0), Fraction(3**rings)
    for _ in range(rings):
        third = (high - low) / 3
        inner, outer = low + third, high - third
        outlines += [
            Polygon.rectangle(low, low, outer - low, third),
            Polygon.rectangle(outer, low, third, outer - low),
            Polygon.rectangle(inner, outer, high - inner, third),
            Polygon.rectangle(low, inner, third, high - inner),
        ]
        low, high = inner, outer
    outlines.append(Polygon.rectangle(low, low, high - low, high - low))
    return outlines


class TestTheWords:
    """The problem names the pieces and gives lines that can be pasted into the pattern file."""

    def test_a_pinwheel(self) -> None:
        (problem,) = piece_block(drawn(PINWHEEL)).problems
        assert problem.message == (
            "block 'Sample': p1, p2, p3, p4 and p5 lock one another; no straight seam runs right across them"
        )
        assert problem.hint == (
            "one added seam frees them: from 2,2 to 2,0 across p1; "
            "in place of p1 draw `fog: 0,0 2,0 2,2 0,2` and `fog: 2,0 4,0 4,2 2,2`"
        )

    def test_every_locked_piece_is_labelled_where_it_is_written(self) -> None:
        block = drawn(PINWHEEL)
        places = [Place("pattern.yaml", number, 1, number, 9) for number in range(1, 6)]
        pieces = tuple(replace(piece, place=place) for piece, place in zip(block.pieces, places, strict=True))
        (problem,) = piece_block(replace(block, pieces=pieces)).problems
        assert [label.place for label in problem.labels] == places


def test_random_partitions_made_by_straight_cuts_are_never_locked() -> None:
    for seed in range(15):
        assert locked_report(block_of(random_partition(Random(seed), 40))) is None
