"""Cloth sold in pieces: how few fat quarters are enough, and which sizes a bundle can make."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.cutting import ClothPiece, cloth_piece, cloth_piece_names, codes, plan_pieces, sizes_from_bundle
from evenseam.exact import Unit, parse_length
from evenseam.pattern import Assumed, CutList, CutShape, Quantity, StripJoin
from hypothesis import given, settings
from hypothesis import strategies as st
from support.cloth_checker import faults_of_pieces
from support.fabrics import cut, project_on

# "Number of Squares from a Fat Quarter", piecefulliving, 2011, and "Math Charts", Quilter's Cache: 18 × 22 in. The
# second figure, for the 18 × 21 in that other pages give, is worked out here: whole rows.
PER_FAT_QUARTER = (
    ("2", 99, 90), ("2 1/2", 56, 56), ("2 7/8", 42, 42), ("3", 42, 42), ("3 1/2", 30, 30), ("3 7/8", 20, 20),
    ("4", 20, 20), ("4 1/2", 16, 16), ("4 7/8", 12, 12), ("5", 12, 12), ("5 1/2", 12, 9), ("5 7/8", 9, 9),
    ("6", 9, 9), ("6 1/2", 6, 6), ("6 7/8", 6, 6),
)  # fmt: skip
FAT_QUARTER = cloth_piece("fat quarter", Unit.INCH)


def cloth_of(width: object, height: object) -> ClothPiece:
    because = Assumed("a sample")
    sizes = [Quantity(side, Fraction(value), Unit.INCH, because) for side, value in (("w", width), ("h", height))]
    return ClothPiece("piece", "pieces", *sizes)


def number_for(cloth: ClothPiece, *cuts: object) -> int:
    """Return how many pieces of cloth the one fabric takes, after a look at the plan from outside."""
    project = project_on(42)
    outcome = plan_pieces(CutList(cuts), project, cloth)
    assert outcome.problems == ()
    (plan,) = outcome.value
    assert faults_of_pieces(plan, cuts, project) == []
    assert plan.lower_bound <= plan.number.value
    assert plan.is_fewest == (plan.lower_bound == plan.number.value)
    return plan.number.whole


@pytest.mark.parametrize(("square", "on_22", "on_21"), PER_FAT_QUARTER)
def test_a_fat_quarter_holds_as_many_squares_as_published_and_not_one_more(square, on_22, on_21):
    side = parse_length(square).value
    for cloth, number in ((cloth_of(22, 18), on_22), (FAT_QUARTER, on_21)):
        assert number_for(cloth, cut("square", side, side, number, CutShape.SQUARE)) == 1
        assert number_for(cloth, cut("square", side, side, number + 1, CutShape.SQUARE)) == 2


def test_strips_along_the_cloth_are_tried_too():
    """One piece 4 × 18 stands upright beside others; across, only strips of 4 in would be left."""
    piece = cut("piece", 5, 18, 4, is_upright=True)
    assert number_for(FAT_QUARTER, piece) == 1


def test_mixed_sizes_share_a_fat_quarter():
    pieces = [cut("large", "19/2", "19/2", 2), cut("small", "7/2", "7/2", 9), cut("strip", "3/2", "18", 1)]
    assert number_for(FAT_QUARTER, *pieces) == 1


def test_area_misleads_on_small_cloth():
    """Two squares of 10 in are little more than half a fat quarter; the third and fourth need another."""
    assert number_for(FAT_QUARTER, cut("square", 10, 10, 2)) == 1
    assert number_for(FAT_QUARTER, cut("square", 10, 10, 3)) == 2


def test_joined_strips_come_from_several_pieces_of_cloth():
    binding = cut("binding", "9/4", 150, 1, CutShape.BINDING, part="binding", join=StripJoin.DIAGONAL)
    # Strips of 21 in are worth 18 3/4 in: eight of them, all in one fat quarter of eight strips.
    assert number_for(FAT_QUARTER, binding) == 1
    assert number_for(FAT_QUARTER, replace(binding, height=Quantity("h", Fraction(153), Unit.INCH, Assumed("a")))) == 2


def test_a_piece_larger_than_the_cloth_is_a_problem_and_other_fabrics_are_planned():
    cuts = CutList((cut("panel", 20, 20, 1), cut("square", 3, 3, 10, material="fog")))
    outcome = plan_pieces(cuts, project_on(42), FAT_QUARTER)
    assert [problem.code for problem in outcome.problems] == [codes.PIECE_LARGER_THAN_CLOTH_PIECE]
    assert "21 in × 18 in" in outcome.problems[0].message
    assert [plan.material for plan in outcome.value] == ["fog"]


def test_sizes_a_bundle_can_make():
    def size(name: str, squares: int):
        pieces = (
            cut("a", 3, 3, squares),
            cut("b", 3, 3, squares, material="fog"),
            cut("back", 40, 40, 1, part="backing"),
        )
        return CutList(pieces), replace(project_on(42), size=name)

    small, large = size("mug-rug", 20), size("lap-quilt", 200)
    answers = sizes_from_bundle((small, large), FAT_QUARTER, 4)
    assert [(answer.size, answer.needed, answer.is_enough) for answer in answers] == [
        ("mug-rug", 2, True),
        ("lap-quilt", 10, False),
    ]


@pytest.mark.parametrize("unit", [Unit.INCH, Unit.CENTIMETRE])
def test_every_named_piece_of_cloth_has_a_size_and_a_source(unit):
    for name in cloth_piece_names(unit):
        cloth = cloth_piece(name, unit)
        assert cloth.width.value > 0 and cloth.height.value > 0
        assert cloth.width.unit is unit
        assert cloth.width.because.source


SIDES = st.integers(8, 70).map(lambda quarters: Fraction(quarters, 4))


@given(
    st.lists(st.tuples(SIDES, SIDES, st.sampled_from((1, 2, 3, 6, 12, 25)), st.booleans()), min_size=1, max_size=5),
    st.booleans(),
)
@settings(max_examples=150)
def test_plans_on_pieces_of_cloth_can_be_followed(sizes, has_binding):
    cuts = [
        cut(f"piece-{place}", width, height, number, is_upright=is_upright)
        for place, (width, height, number, is_upright) in enumerate(sizes)
    ]
    if has_binding:
        cuts.append(cut("binding", "9/4", 90, 1, CutShape.BINDING, part="binding", join=StripJoin.DIAGONAL))
    assert number_for(FAT_QUARTER, *cuts) >= 1
