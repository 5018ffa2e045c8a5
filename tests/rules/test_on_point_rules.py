"""Blocks on point: setting and corner triangles, counts and diagonals, against published tables.

The tables are for a seam allowance of 1/4 in and for blocks whose corners touch the edge, so that the float is 0.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import Direction, Rounding, is_multiple, sign, square_root
from evenseam.pattern import CutShape, Project
from evenseam.sizing import cut_list
from hypothesis import given, settings
from hypothesis import strategies as st
from support.on_point import FLOATED, on_point
from support.tops import figure, sized, value

ROOT = square_root(2)
EIGHTH = Fraction(1, 8)


def squares(project: Project) -> tuple[str, str]:
    """Return the side of the squares for setting and for corner triangles."""
    cuts = cut_list(sized(project))
    return cuts.cut("setting-triangles").width.number, cuts.cut("corner-triangles").width.number


class TestSettingTriangles:
    """Side triangles: the diagonal of the block and 5 seam allowances, up to 1/8 in, cut twice. Corner triangles: the
    block divided by √2 and 3 1/2 seam allowances, up to 1/8 in, cut once.
    """

    @pytest.mark.parametrize(
        ("block", "side", "corner"),
        [
            # "How to Make Setting Triangles", Marcia Hohn, Quilter's Cache, 2002; all rows but 16, which see below.
            ("4", "7", "3 3/4"), ("5", "8 3/8", "4 1/2"), ("6", "9 3/4", "5 1/8"), ("7", "11 1/4", "5 7/8"),
            ("8", "12 5/8", "6 5/8"), ("9", "14", "7 1/4"), ("10", "15 1/2", "8"), ("12", "18 1/4", "9 3/8"),
            ("14", "21 1/8", "10 7/8"), ("15", "22 1/2", "11 1/2"),
            # "Tip: On Point Settings", Moonlight Quilters guild: 6 in. "Setting a Block On-Point", Pine Meadows
            # Designs: the corners of 12 in. "Math for Quilters, Part 2", Everyone Deserves a Quilt, 2014: 6 in.
            ("6", "9 3/4", "5 1/8"), ("12", "18 1/4", "9 3/8"),
        ],
    )  # fmt: skip
    def test_published_squares(self, block: str, side: str, corner: str) -> None:
        assert squares(on_point(block, floated="0")) == (side, corner)

    def test_a_table_made_with_a_shorter_root(self) -> None:
        # Quilter's Cache prints 23 7/8 for a 16 in block, because it takes √2 as 1.414: 23.874 goes up to 23 7/8, but
        # 16 × √2 + 1 1/4 = 23.877 goes up to 24. "Piecing a Quilt on Point", Phoebe Moon Designs, prints 24, as we do.
        assert squares(on_point("16", floated="0")) == ("24", "12 1/4")

    @pytest.mark.parametrize(
        ("block", "side", "corner"),
        [
            # "Piecing a Quilt on Point", Phoebe Moon Designs, rounded up to quarters.
            ("4", "7", "3 3/4"), ("5", "8 1/2", "4 1/2"), ("6", "9 3/4", "5 1/4"), ("7", "11 1/4", "6"),
            ("8", "12 3/4", "6 3/4"), ("9", "14", "7 1/2"), ("10", "15 1/2", "8"), ("11", "17", "8 3/4"),
            ("12", "18 1/4", "9 1/2"), ("13", "19 3/4", "10 1/4"), ("15", "22 1/2", "11 3/4"), ("16", "24", "12 1/4"),
            ("18", "26 3/4", "13 3/4"), ("19", "28 1/4", "14 1/2"),
        ],
    )  # fmt: skip
    def test_a_table_in_quarters_is_never_smaller(self, block: str, side: str, corner: str) -> None:
        quarter = Rounding("quarters", Fraction(1, 4), Direction.UP)
        ours = [value(square) for square in squares(on_point(block, floated="0"))]
        assert quarter.apply(ours[0]) == value(side)
        # The corners of 9 in and 15 in are printed one quarter more than the rule asks for.
        spare = Fraction(1, 4) if block in ("9", "15") else 0
        assert quarter.apply(ours[1]) + (spare if quarter.apply(ours[1]) != value(corner) else 0) == value(corner)

    @pytest.mark.parametrize(
        ("block", "printed"),
        [
            # The same table, rounded down against its own rule: 14 in does not even cover the bare need.
            ("14", "21"), ("17", "25 1/4"), ("20", "29 1/2"),
            # "Challenges", knitnkwilt: 1.41 and rounded down.
            ("5", "8 1/4"),
        ],
    )  # fmt: skip
    def test_squares_rounded_down_are_not_what_is_cut(self, block: str, printed: str) -> None:
        assert value(squares(on_point(block, floated="0"))[0]) > value(printed)

    def test_sashing_counts_with_the_block_where_the_cornerstones_stay_whole(self) -> None:
        # "On-Point Settings, Lesson 7", Quilting Passion University, 2004: of 9 1/2 in blocks and 2 in sashing, take
        # 11 1/2. That is for cornerstones whose corners touch the edge; ours are cut through at a float of 0, and
        # whole from a float of half their diagonal.
        sashed = on_point("9 1/2", floated="0", sash="2", around=True, float_value=ROOT)
        assert sized(sashed).figure("setting_triangle_long_side").value == Fraction(23, 2) * ROOT

    @given(st.integers(8, 160), st.sampled_from(("1/4", "3/8")), st.sampled_from(("0", "1/2", "1")))
    @settings(max_examples=25, deadline=None)
    def test_squares_are_large_enough_and_hardly_larger(self, eighths: int, seam: str, floated: str) -> None:
        block, allowance = Fraction(eighths, 8), value(seam)
        cuts = cut_list(sized(on_point(str(block), floated=floated, seam=seam)))
        side, corner = cuts.cut("setting-triangles"), cuts.cut("corner-triangles")
        assert (side.shape, corner.shape) == (CutShape.QUARTER_SQUARE_TRIANGLE, CutShape.HALF_SQUARE_TRIANGLE)
        beyond = 2 * value(floated)
        for cut, need in (
            (side, block * ROOT + beyond + (2 + 2 * ROOT) * allowance),
            (corner, block / ROOT + beyond + (2 + ROOT) * allowance),
        ):
            assert cut.width.value == cut.height.value
            assert is_multiple(cut.width.value, EIGHTH)
            assert sign(cut.width.value - need) >= 0
            assert sign(cut.width.value - need - EIGHTH - allowance / 5) < 0


class TestCounts:
    """There are rows × columns blocks and (rows − 1) × (columns − 1) between them, and a triangle for every gap."""

    def test_published_count(self) -> None:
        # "Reference chart for squares on point", APQS: a top of 35 blocks set straight has 32 on point. That is the
        # count of 5 rows of 4 blocks.
        assert figure(on_point("6", rows=5, columns=4), "block_count") == 32

    @pytest.mark.parametrize(
        ("rows", "columns", "blocks", "triangles"),
        # By drawing the tops on squared paper: blocks, and the gaps at the edges between their corners.
        [(1, 1, 1, 0), (1, 3, 3, 4), (2, 2, 5, 4), (3, 2, 8, 6), (3, 3, 13, 8), (5, 4, 32, 14)],
    )
    def test_counted_on_paper(self, rows: int, columns: int, blocks: int, triangles: int) -> None:
        project = on_point("6", rows=rows, columns=columns)
        counts = {cut.id: cut.count.whole for cut in cut_list(sized(project)).cuts}
        assert figure(project, "block_count") == blocks
        assert counts.get("setting-triangles", 0) == triangles
        assert counts["corner-triangles"] == 4

    def test_a_published_need_of_squares(self) -> None:
        # "Challenges", knitnkwilt: two squares give the eight side triangles of three rows of three.
        cut = cut_list(sized(on_point("5", rows=3, columns=3))).cut("setting-triangles")
        assert -(-cut.count.whole // 4) == 2


class TestSize:
    """From corner to corner a block is √2 times its side; the float brings the finished top up to a mark."""

    @pytest.mark.parametrize(
        ("block", "diagonal"),
        # "Math Charts Page", Marcia Hohn, Quilter's Cache, 2002: to the nearest 1/8 in.
        [
            ("4", "5 5/8"), ("5", "7 1/8"), ("6", "8 1/2"), ("7", "9 7/8"), ("8", "11 3/8"), ("9", "12 3/4"),
            ("10", "14 1/8"), ("12", "17"), ("14", "19 3/4"),
        ],
    )  # fmt: skip
    def test_published_diagonals(self, block: str, diagonal: str) -> None:
        found = sized(on_point(block, rows=1, columns=1, floated="0")).figure("blocks_width").value
        assert Rounding("chart", EIGHTH, Direction.NEAREST).apply(found) == value(diagonal)

    @given(st.integers(16, 64), st.integers(1, 6), st.integers(1, 6))
    @settings(max_examples=25, deadline=None)
    def test_a_chosen_float_is_the_least_that_reaches_a_mark(self, eighths: int, rows: int, columns: int) -> None:
        block = Fraction(eighths, 8)
        top = sized(on_point(str(block), rows=rows, columns=columns))
        for name, count, way in (("float_width", columns, "width"), ("float_height", rows, "height")):
            exact, floated = count * block * ROOT, top.figure(name).value
            assert sign(floated) > 0
            assert sign(2 * floated - FLOATED) < 0
            assert is_multiple(exact + 2 * floated, FLOATED)
            assert top.figure(f"centre_{way}").value == exact + 2 * floated + Fraction(1, 2)
