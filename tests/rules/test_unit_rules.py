"""Units sewn from whole squares, as the author chose: published squares, and the simulator's answer to every row.

The tables are for a seam allowance of 1/4 in unless they say otherwise. Each names its publisher.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit, square_root
from evenseam.pattern import CutList, CutShape, MakeUnits, Project, Quantity, UnitBatch
from evenseam.sizing import SizedProject, assembly_program, chosen_methods, cut_list, sew, size_project, unit_methods
from evenseam.sizing.rotary import half_square_triangle_square, quarter_square_triangle_square
from hypothesis import given, settings
from hypothesis import strategies as st
from support.samples import length
from support.tops import sized, value
from support.units import (
    GOOSE,
    HALF_SQUARES,
    QUARTER_SQUARES,
    SQUARE_IN_SQUARE,
    THREE_FABRICS,
    methods,
    project,
)

SNOWBALL = (
    "fog 1,0 2,0 3,1 3,2 2,3 1,3 0,2 0,1", "sea 0,0 1,0 0,1", "sea 2,0 3,0 3,1", "sea 3,2 3,3 2,3", "sea 0,2 1,3 0,3",
)  # fmt: skip


def chosen(
    pieces: tuple[str, ...], width: str, height: str, units: int, batch: UnitBatch, unit: Unit = Unit.INCH,
    seam: str = "1/4",
) -> Project:  # fmt: skip
    plain = project(pieces, width, height, units, unit, seam)
    return replace(plain, blocks=tuple(replace(block, unit_method=batch) for block in plain.blocks))


def squares(ready: SizedProject) -> list[tuple[str, str, int]]:
    """Return fabric, width and count of what the units are cut from."""
    cuts = [cut for cut in cut_list(ready).cuts if cut.part == "block:unit"]
    assert all(cut.shape in (CutShape.SQUARE, CutShape.RECTANGLE) for cut in cuts)
    return [(cut.material, cut.width.number, cut.count.whole) for cut in cuts]


def told(ready: SizedProject, sides: tuple[str, ...] = ()) -> str:
    """Sew, with the squares cut to other sides if any are given, and return what the simulator says of the units."""
    cuts = list(cut_list(ready).cuts)
    for number, side in enumerate(sides):
        other = replace(cuts[number].width, value=value(side))
        cuts[number] = replace(cuts[number], width=other, height=other)
    changed = CutList(tuple(cuts))
    outcome = sew(ready.project, changed, assembly_program(ready, changed))
    assert (outcome.value is None) == bool(outcome.errors)
    return " ".join(problem.message for problem in outcome.errors)


class TestTwoAtATime:
    """Two squares sewn on both sides of a diagonal give two half-square triangle units."""

    @pytest.mark.parametrize(
        ("finished", "square", "larger"),
        [
            # "Half-Square Triangles Four Ways" and "Lesson 1: Allowing for Seam Allowances", lesson handouts: F + 7/8;
            # F + 1, to be trimmed, where units come out small.
            ("2", "2 7/8", "3"), ("3", "3 7/8", "4"), ("2 1/2", "3 3/8", "3 1/2"),
        ],
    )  # fmt: skip
    def test_published_squares(self, finished: str, square: str, larger: str) -> None:
        ready = sized(chosen(HALF_SQUARES, finished, finished, 6, UnitBatch.TWO))
        assert squares(ready) == [("sea", square, 3), ("fog", square, 3)]
        assert told(ready) == ""
        (method,) = chosen_methods(ready)
        assert [each.larger and each.larger.number for each in method.squares] == [larger, larger]

    @pytest.mark.parametrize(
        ("block", "unit", "plain", "square"), [("6", "2", "2 1/2", "2 7/8"), ("9", "3", "3 1/2", "3 7/8")]
    )
    def test_a_block_of_nine(self, block: str, unit: str, plain: str, square: str) -> None:
        # "What size do I cut my triangles?", British Patchwork and Quilting: 3 × 3 grids.
        nine = ("sea 0,0 1,0 0,1", "fog 1,0 1,1 0,1", "lamp 1,0 3,0 3,1 1,1", "lamp 0,1 3,1 3,3 0,3")
        ready = sized(chosen(nine, block, block, 2, UnitBatch.TWO))
        assert squares(ready)[-2:] == [("sea", square, 1), ("fog", square, 1)]
        (method,) = chosen_methods(ready)
        assert (method.width.number, value(plain) - value("1/2")) == (plain, value(unit))

    def test_an_odd_one_is_spare(self) -> None:
        ready = sized(chosen(HALF_SQUARES, "3", "3", 7, UnitBatch.TWO))
        assert squares(ready) == [("sea", "3 7/8", 4), ("fog", "3 7/8", 4)]
        (step,) = [s for s in assembly_program(ready, cut_list(ready)).steps if isinstance(s.operation, MakeUnits)]
        assert (step.times, step.operation.gives, step.operation.spare, step.leaves) == (4, 2, 1, 7)


class TestEightAtATime:
    """Two squares of twice the size sewn beside both diagonals give eight."""

    @pytest.mark.parametrize(
        ("finished", "square"),
        # "Half-square triangle tip", Mesquite Quilt Guild, 2014; "How to Make Half-Square Triangles", Craftsy, 2014.
        [("2 1/2", "6 3/4"), ("3", "7 3/4"), ("5", "11 3/4"), ("1 1/2", "4 3/4")],
    )
    def test_published_squares(self, finished: str, square: str) -> None:
        ready = sized(chosen(HALF_SQUARES, finished, finished, 9, UnitBatch.EIGHT))
        assert squares(ready) == [("sea", square, 2), ("fog", square, 2)]
        assert told(ready) == ""
        assert "do not come out" in told(ready, (str(value(square) - Fraction(1, 4)),) * 2)

    def test_fewer_than_eight_are_sewn_in_twos(self) -> None:
        assert squares(sized(chosen(HALF_SQUARES, "3", "3", 5, UnitBatch.EIGHT)))[0] == ("sea", "3 7/8", 3)


class TestFourSewnAllRound:
    """Two squares sewn all round and cut on both diagonals give four: √2 × unfinished size and two seam allowances."""

    @pytest.mark.parametrize(
        ("finished", "exact", "by_rule"),
        [
            # "The real maths for four-at-a-time HSTs and the 0.64 number", montsemgm, r/quilting, 2025; the figures for
            # each size follow from its formula and from the rule "unfinished size ÷ 0.64".
            ("1", "2.62", "2.34"), ("2", "4.04", "3.91"), ("2 1/2", "4.74", "4.69"), ("3", "5.45", "5.47"),
            ("4", "6.86", "7.03"), ("6", "9.69", "10.16"),
        ],
    )  # fmt: skip
    def test_published_squares(self, finished: str, exact: str, by_rule: str) -> None:
        ready = sized(chosen(HALF_SQUARES, finished, finished, 8, UnitBatch.FOUR))
        (_, side, count), _ = squares(ready)
        assert count == 2
        assert Fraction(exact) - Fraction(1, 100) <= value(side) < Fraction(exact) + Fraction(1, 8)
        assert told(ready) == ""
        # The rule of thumb is too small for small units: the simulator does not get them out of such squares.
        is_short = "do not come out" in told(ready, (by_rule, by_rule))
        assert is_short == (value(finished) < 3)

    def test_the_published_example(self) -> None:
        # The same: squares of 5 give units of 3.18, unfinished.
        root = square_root(2)
        unit = (5 - Fraction(1, 2)) / root
        assert Fraction("3.18") <= unit < Fraction("3.19")

    @pytest.mark.parametrize(
        ("start", "claimed", "is_right"),
        [
            # "Easiest HST Ever", Classic Quilters of LA, 2010; four of its twelve rows are too large for their square.
            ("2", "1", True), ("2 1/2", "1 1/2", False), ("3 1/2", "2", True), ("4", "2 1/2", False),
            ("5", "3", True), ("5 1/2", "3 1/2", True), ("6", "4", False), ("7", "4 1/2", True), ("8", "5", True),
            ("8 1/2", "5 1/2", True), ("9", "6", True), ("10", "7", False),
        ],
    )  # fmt: skip
    def test_a_cheat_sheet(self, start: str, claimed: str, is_right: bool) -> None:
        finished = str(value(claimed) - Fraction(1, 2))
        ready = sized(chosen(HALF_SQUARES, finished, finished, 4, UnitBatch.FOUR))
        assert ("do not come out" in told(ready, (start, start))) != is_right
        assert (value(squares(ready)[0][1]) <= value(start)) == is_right

    def test_it_is_never_offered(self) -> None:
        kinds = {method.kind for method in unit_methods(sized(project(HALF_SQUARES, "3", "3", 8)))}
        assert [kind.value for kind in kinds if "four" in kind.value] == []


class TestQuarterSquareUnits:
    """Halves laid on each other and sewn across their seams give quarter-square units."""

    @pytest.mark.parametrize(
        ("finished", "exact", "larger"),
        # "How to Sew a Basic Hourglass", fabric406; "Easy Quarter Square Triangles", Perkins Dry Goods: F + 1 1/4 at
        # least, F + 1 1/2 for room to trim.
        [("2", "3 1/4", "3 1/2"), ("4", "5 1/4", "5 1/2"), ("3 1/2", "4 3/4", "5"), ("3", "4 1/4", "4 1/2")],
    )
    def test_published_squares(self, finished: str, exact: str, larger: str) -> None:
        ready = sized(chosen(QUARTER_SQUARES, finished, finished, 4, UnitBatch.TWO))
        assert sorted(squares(ready)) == [("fog", exact, 2), ("sea", exact, 2)]
        (method,) = chosen_methods(ready)
        assert method.squares[0].larger and method.squares[0].larger.number == larger
        assert told(ready) == ""
        assert "do not come out" in told(ready, (str(value(exact) - Fraction(1, 8)),) * 2)

    def test_from_the_short_side(self) -> None:
        # "What size should my triangle be?", Black Forest Quilting: short side 2, 2 × 1.414 + 1 1/4 = 4.08, cut 4 1/8.
        long = Quantity("long side", 2 * square_root(2), Unit.INCH, length("x", "1").because)
        side = quarter_square_triangle_square("square", long, length("seam allowance", "1/4"))
        assert side.number == "4 1/8"

    def test_three_fabrics(self) -> None:
        ready = sized(chosen(THREE_FABRICS, "3", "3", 6, UnitBatch.FOUR))
        assert sorted(squares(ready)) == [("fog", "4 1/4", 4), ("lamp", "4 1/4", 2), ("sea", "4 1/4", 2)]
        assert told(ready) == ""


class TestGeese:
    """Four small squares and a large one give four geese; a rectangle and two squares give one."""

    @pytest.mark.parametrize(
        ("width", "height", "large", "small"),
        [
            # "Fast Flying Geese", Beverly's Quilting Page, 2011, and three other pages.
            ("2", "1", "3 1/4", "1 7/8"), ("2 1/2", "1 1/4", "3 3/4", "2 1/8"), ("3", "1 1/2", "4 1/4", "2 3/8"),
            ("3 1/2", "1 3/4", "4 3/4", "2 5/8"), ("4", "2", "5 1/4", "2 7/8"), ("4 1/2", "2 1/4", "5 3/4", "3 1/8"),
            ("5", "2 1/2", "6 1/4", "3 3/8"), ("5 1/2", "2 3/4", "6 3/4", "3 5/8"), ("6", "3", "7 1/4", "3 7/8"),
            ("7", "3 1/2", "8 1/4", "4 3/8"), ("8", "4", "9 1/4", "4 7/8"),
        ],
    )  # fmt: skip
    def test_four_at_a_time(self, width: str, height: str, large: str, small: str) -> None:
        ready = sized(chosen(GOOSE, width, height, 4, UnitBatch.FOUR))
        assert squares(ready) == [("lamp", large, 1), ("fog", small, 4)]
        assert told(ready) == ""

    def test_small_squares_that_leave_more_to_trim(self) -> None:
        # "Bright New Day block 3 tips", American Patchwork & Quilting: 3 instead of 2 7/8, trimmed to 2 1/2 × 4 1/2.
        (method,) = chosen_methods(sized(chosen(GOOSE, "4", "2", 4, UnitBatch.FOUR)))
        assert [each.larger and each.larger.number for each in method.squares] == [None, "3"]
        assert (method.squares[0].side.number, method.height.number, method.width.number) == ("5 1/4", "2 1/2", "4 1/2")

    def test_a_recipe_that_mixes_two_methods(self) -> None:
        # Forum post, quiltingboard, 2010: small squares of 3 1/2 with a large one of 7 1/4; the method needs 3 7/8.
        ready = sized(chosen(GOOSE, "6", "3", 4, UnitBatch.FOUR))
        assert "do not come out" in told(ready, ("7 1/4", "3 1/2"))

    def test_one_at_a_time(self) -> None:
        # Plain geometry: a rectangle of the unfinished unit, squares of its height.
        ready = sized(chosen(GOOSE, "6", "3", 3, UnitBatch.ONE))
        assert squares(ready) == [("lamp", "6 1/2", 3), ("fog", "3 1/2", 6)]
        assert told(ready) == ""

    def test_from_triangles(self) -> None:
        # "Flying geese thread", The Sewing Place: goose from w + 1 1/4 cut twice, sky from h + 7/8 cut once.
        ready = sized(project(GOOSE, "6", "3", 3))
        cuts = {cut.shape: cut.width.number for cut in cut_list(ready).cuts if cut.part == "block:unit"}
        assert cuts == {CutShape.QUARTER_SQUARE_TRIANGLE: "7 1/4", CutShape.HALF_SQUARE_TRIANGLE: "3 7/8"}


class TestTrianglesOnASquare:
    """The side sewn to the square is the long one: divide by √2 first, then add 7/8."""

    @pytest.mark.parametrize(
        ("square", "cut"),
        # Explanations in a classroom thread, quiltube forum, 2019, and on quiltingboard.
        [("6", "5 1/8"), ("5", "4 1/2")],
    )
    def test_published_squares(self, square: str, cut: str) -> None:
        short = Quantity("short side", value(square) / square_root(2), Unit.INCH, length("x", "1").because)
        side = half_square_triangle_square("square", short, length("seam allowance", "1/4"))
        assert side.number == cut

    def test_a_published_mistake(self) -> None:
        # quiltingboard, 2011: adds only 1/2, so 5 gives 4.03; that is short by about 3/8.
        short = Quantity("short side", 5 / square_root(2), Unit.INCH, length("x", "1").because)
        side = half_square_triangle_square("square", short, length("seam allowance", "1/4"))
        assert Fraction(3, 8) < side.value - Fraction("4.03") < Fraction(1, 2)

    def test_from_the_block_inward(self) -> None:
        # "Lesson 5: A Square in a Square", lesson handout: 12 finished, centre 9, corners 6 + 7/8; and a centre of
        # 3 1/2, corners 2.475, up to 2 1/2, and 7/8: 3 3/8.
        ready = sized(project(SQUARE_IN_SQUARE, "12", "12"))
        cuts = [(cut.shape, cut.width.number) for cut in cut_list(ready).cuts if cut.part == "block:unit"]
        assert cuts == [(CutShape.SQUARE, "9"), (CutShape.HALF_SQUARE_TRIANGLE, "6 7/8")]
        short = Quantity("short side", Fraction(7, 2) / square_root(2), Unit.INCH, length("x", "1").because)
        assert half_square_triangle_square("square", short, length("seam allowance", "1/4")).number == "3 3/8"


class TestSnowballs:
    """A corner square is the finished corner and two seam allowances, sewn on its own diagonal."""

    def test_published_squares(self) -> None:
        # "Snowball Fight, week two", Katie Mae Quilts, 2013; "Snowball Blocks", talkischeapquilts, 2013.
        ready = sized(chosen(SNOWBALL, "6", "6", 3, UnitBatch.ONE))
        assert squares(ready) == [("fog", "6 1/2", 3), ("sea", "2 1/2", 12)]
        assert told(ready) == ""

    @pytest.mark.parametrize("side", ["2 3/8", "2 5/8", "2 7/8"])
    def test_other_squares_cut_other_corners(self, side: str) -> None:
        ready = sized(chosen(SNOWBALL, "6", "6", 3, UnitBatch.ONE))
        assert "do not come out" in told(ready, ("6 1/2", side))


class TestEveryWay:
    """Whatever the size, seam allowance and unit, the squares are what the simulator needs, and not a mark more."""

    @given(
        st.sampled_from([(HALF_SQUARES, 1), (QUARTER_SQUARES, 1), (THREE_FABRICS, 1), (GOOSE, 2), (SNOWBALL, 1)]),
        st.integers(4, 22), st.sampled_from(list(UnitBatch)), st.integers(1, 9),
        st.sampled_from([(Unit.INCH, "1/4", 8), (Unit.CENTIMETRE, "0.75", 2), (Unit.CENTIMETRE, "0.6", 2)]),
    )  # fmt: skip
    @settings(max_examples=25, deadline=None)
    def test_units_come_out(
        self, drawn: tuple[tuple[str, ...], int], marks: int, batch: UnitBatch, units: int, ruler: tuple[Unit, str, int]
    ) -> None:
        pieces, shape = drawn
        unit, seam, parts = ruler
        side = Fraction(marks * 3, parts)
        wide, high = (str(side), str(side / shape))
        ready = sized(chosen(pieces, wide, high, units, batch, unit, seam))
        messages = told(ready)
        assert messages == ""
        found = chosen_methods(ready)
        unused = [p for p in size_project(ready.project).problems if p.code.name == "unit-method-unused"]
        assert bool(found) != bool(unused)
        for method in found:
            assert 0 <= method.spare < method.at_a_time
            assert method.units.whole == units


def test_a_chosen_way_is_not_offered_as_well() -> None:
    assert methods(chosen(HALF_SQUARES, "3", "3", 8, UnitBatch.TWO)) == {}
