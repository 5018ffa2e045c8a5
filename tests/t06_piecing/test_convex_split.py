"""Pieces that bend inward: named, and split into convex pieces with as few cuts as can be."""

from __future__ import annotations

from dataclasses import replace

import pytest
import shapely
from evenseam.geometry import Polygon
from evenseam.pattern import BlockPiece
from evenseam.piecing import piece_block, split_into_convex
from hypothesis import given, settings
from hypothesis import strategies as st
from support.drawings import drawn
from support.samples import polygon
from support.sewing_check import shape_of

SHAPES = {
    "corner": ("0,0 4,0 4,2 2,2 2,4 0,4", 1),
    "tee": ("0,0 6,0 6,2 4,2 4,4 2,4 2,2 0,2", 1),
    "cross": ("2,0 4,0 4,2 6,2 6,4 4,4 4,6 2,6 2,4 0,4 0,2 2,2", 2),
    "arrow": ("0,0 6,3 0,6 2,3", 1),
    "channel": ("0,0 6,0 6,6 4,6 4,2 2,2 2,6 0,6", 2),
    "four-pointed star": ("3,0 4,2 6,3 4,4 3,6 2,4 0,3 2,2", 2),
    "square": ("0,0 4,0 4,4 0,4", 0),
    "square with dots on its edges": ("0,0 2,0 4,0 4,4 2,4 0,4", 0),
}


def check_split(outline: Polygon) -> int:
    """Check with shapely that the parts are convex and make up the shape; return the number of cuts."""
    found = split_into_convex(outline)
    assert found is not None
    assert len(found.parts) == len(found.cuts) + 1
    assert all(part.is_convex and part.signed_area > 0 for part in found.parts)
    shapes = [shape_of(part) for part in found.parts]
    whole = shape_of(outline)
    assert shapely.union_all(shapes).symmetric_difference(whole).area < 1e-9
    assert sum(part.area for part in found.parts) == outline.area
    for cut in found.cuts:
        ends = [(float(point.x), float(point.y)) for point in (cut.start, cut.end)]
        assert whole.buffer(1e-9).contains(shapely.LineString(ends))
    return len(found.cuts)


class TestSplit:
    """The parts are convex, do not overlap, and are the shape again."""

    @pytest.mark.parametrize(("text", "cuts"), SHAPES.values(), ids=SHAPES)
    def test_known_shapes_take_as_few_cuts_as_can_be(self, text: str, cuts: int) -> None:
        assert check_split(polygon(text)) == cuts

    @given(st.lists(st.integers(1, 7), min_size=8, max_size=8))
    @settings(max_examples=80)
    def test_random_shapes(self, radii: list[int]) -> None:
        outline = random_shape(radii)
        inward = sum(_turn(outline, index) < 0 for index in range(len(outline.corners)))
        assert (inward + 1) // 2 <= check_split(outline) <= inward

    def test_a_line_has_no_split(self) -> None:
        assert split_into_convex(polygon("0,0 2,0 4,0")) is None


class TestTheWords:
    """The problem names the piece and gives lines to paste."""

    def test_a_square_set_into_a_corner(self) -> None:
        (problem,) = piece_block(drawn("0,0 4,0 4,2 2,2 2,4 0,4\n2,2 4,2 4,4 2,4")).problems
        assert problem.code.name == "piece-needs-splitting"
        assert problem.message == "block 'Sample': p1 bends inward; straight seams make no such piece"
        assert problem.hint == (
            "split it from 2,2 to 0,2; in its place draw `fog: 2,2 2,4 0,4 0,2` and `fog: 0,2 0,0 4,0 4,2`"
        )

    def test_the_proposed_pieces_can_be_sewn(self) -> None:
        block = drawn("0,0 4,0 4,2 2,2 2,4 0,4\n2,2 4,2 4,4 2,4")
        split = split_into_convex(block.pieces[0].outline)
        assert split is not None
        mended = replace(
            block,
            pieces=(
                *(BlockPiece(f"n{number}", "sea", part) for number, part in enumerate(split.parts)),
                block.pieces[1],
            ),
        )
        assert piece_block(mended).is_valid

    def test_every_bent_piece_is_named(self) -> None:
        problems = piece_block(drawn("0,0 4,0 4,2 2,2 2,6 0,6\n2,2 4,2 4,4 6,4 6,6 2,6\n4,0 6,0 6,4 4,4")).problems
        assert [problem.message.split(": ")[1].split()[0] for problem in problems] == ["p1", "p2"]


class TestOtherDrawingsThatCannotBeSewn:
    """What a reader of files would have caught is still caught here."""

    def test_a_gap(self) -> None:
        block = drawn("0,0 4,0 4,4 0,4")
        (problem,) = piece_block(replace(block, outline=polygon("0,0 6,0 6,4 0,4"))).problems
        assert problem.code.name == "pieces-do-not-fill-block"
        assert "cover 16 square grid units, its outline holds 24" in problem.message

    def test_no_pieces(self) -> None:
        block = replace(drawn("0,0 4,0 4,4 0,4"), pieces=())
        assert [problem.code.name for problem in piece_block(block).problems] == ["pieces-do-not-fill-block"]

    def test_an_outline_that_bends_inward(self) -> None:
        block = drawn("0,0 4,0 4,2 0,2\n0,2 2,2 2,4 0,4")
        problems = piece_block(replace(block, outline=polygon("0,0 4,0 4,2 2,2 2,4 0,4"))).problems
        assert [problem.code.name for problem in problems] == ["block-outline-bends-inward"]

    def test_too_many_pieces(self) -> None:
        lines = "\n".join(f"{x},0 {x + 1},0 {x + 1},1 {x},1" for x in range(301))
        assert [problem.code.name for problem in piece_block(drawn(lines)).problems] == ["too-many-pieces-in-block"]


def _turn(outline: Polygon, index: int) -> int:
    corners = outline.corners
    before, here, after = corners[index - 1], corners[index], corners[(index + 1) % len(corners)]
    turn = (here - before).cross(after - here)
    return (turn > 0) - (turn < 0)


def random_shape(radii: list[int]) -> Polygon:
    """A polygon with a corner in each of eight directions from its middle, so that it never crosses itself."""
    ways = ((0, -1), (1, -1), (1, 0), (1, 1), (0, 1), (-1, 1), (-1, 0), (-1, -1))
    return polygon(" ".join(f"{radius * x},{radius * y}" for radius, (x, y) in zip(radii, ways, strict=True)))
