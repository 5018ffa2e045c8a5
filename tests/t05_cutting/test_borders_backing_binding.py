"""What is longer or wider than the cloth: joined borders, pieced backings, binding."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.cutting import AlternativeKind, plan_cutting, plan_usual_widths
from evenseam.cutting.joining import join_cost, joined_lengths
from evenseam.exact import Unit
from evenseam.pattern import CutList, CutShape, StripDirection, StripJoin
from support.cloth_checker import faults
from support.fabrics import cloth_used, cut, plan_of, project_on

STRAIGHT, DIAGONAL = StripJoin.STRAIGHT, StripJoin.DIAGONAL


def strips_of(plan) -> int:
    return sum(line.count for line in plan.lines)


def binding(length, strip, width, join=DIAGONAL, unit=Unit.INCH):
    return plan_of(
        project_on(width, unit),
        cut("binding", strip, length, 1, CutShape.BINDING, part="binding", join=join, unit=unit),
    )


@pytest.mark.parametrize(
    ("length", "strip", "width", "join", "strips"),
    [
        # Sylvia's Quilt Depot, "Measuring fabric for continuous strips": 46 × 46, 184 ÷ 40, five strips, 12 1/2 in.
        (184, "5/2", 40, DIAGONAL, 5),
        # onceuponaquilt, "Tips and Tricks": 78 × 56, 276 in, seven strips of 40 in.
        (276, "2", 40, STRAIGHT, 7),
        # Cotton Patch Fabrics, "How to measure for binding": 40 × 50, 180 ÷ 42; in whole strips five of 3 1/2 in.
        (180, "7/2", 42, DIAGONAL, 5),
        # American Patchwork & Quilting, 2017: place mat 18 × 12, two strips 2 1/2 × 42.
        (60, "5/2", 42, DIAGONAL, 2),
    ],
)
def test_published_numbers_of_binding_strips(length, strip, width, join, strips):
    plan = binding(length, strip, width, join)
    assert strips_of(plan) == strips
    assert cloth_used(plan) == strips * Fraction(strip)


def test_diagonal_joins_are_counted_where_the_published_rule_forgets_them():
    """276 in from strips of 40 in: seven strips are 280 in, but six diagonal joins of 2 in strips take 12."""
    assert strips_of(binding(276, "2", 40)) == 8


def test_metric_binding():
    """Eternal Maker, "Fabric measuring tips": 1.5 × 1 m, 5 m ÷ 1.10, five strips of 12 cm, 60 cm."""
    plan = binding(500, 12, 110, unit=Unit.CENTIMETRE)
    assert strips_of(plan) == 5
    assert cloth_used(plan) == 60


@pytest.mark.parametrize(
    ("length", "strip", "published", "most"),
    [
        # "Calculating bias", Quilters Question Time and others, 2021: the square root of length × strip width, rounded
        # up to a whole inch. It leaves out seams and part strips, so the square is never smaller, and at most 3 in
        # larger: one compilation adds 3 in.
        (250, "2", 23, 3), (100, "7/2", 19, 3), (55, "5/2", 12, 3),
        # Yields measured by makers, from republished notes: 12 in gives 60, 15 in gives 100 of 2 in strip; 32 in
        # gives 450 of 2 1/4 in strip.
        (60, "2", 12, 0), (100, "2", 15, 0), (450, "9/4", 32, 1),
    ],
)  # fmt: skip
def test_squares_for_continuous_bias_binding(length, strip, published, most):
    bias = cut("binding", strip, length, 1, CutShape.BIAS_BINDING, part="binding", join=DIAGONAL)
    plan = plan_of(project_on(42), bias)
    (square,) = plan.bias
    assert square.squares == 1
    assert published <= square.side.value <= published + most
    assert faults(plan, [bias], project_on(42)) == []


def test_long_bias_binding_takes_several_squares():
    bias = cut("binding", "5/2", 1200, 1, CutShape.BIAS_BINDING, part="binding", join=DIAGONAL)
    plan = plan_of(project_on(42), bias)
    assert plan.bias[0].squares == 2
    assert plan.bias[0].side.value <= 42
    assert faults(plan, [bias], project_on(42)) == []


def test_a_diagonal_join_takes_a_square_of_the_strip():
    """quiltingboard, "amount of yardage thread", 2010: from 40 in cloth a 4 in border strip is worth 36 in."""
    cost = join_cost(DIAGONAL, Fraction(4), Fraction(1, 4))
    for strips in range(2, 9):
        exactly = 40 + (strips - 1) * 36
        assert len(joined_lengths(Fraction(exactly), Fraction(40), cost)) == strips
        assert len(joined_lengths(Fraction(exactly) + Fraction(1, 8), Fraction(40), cost)) == strips + 1


def test_a_straight_join_takes_two_seam_allowances():
    assert join_cost(STRAIGHT, Fraction(4), Fraction(1, 4)) == Fraction(1, 2)


def test_the_extra_border_strip_a_longarmer_asks_for_is_what_the_joins_take():
    """borderbrae, "Applying Borders to your Quilt": 60 × 80, 280 ÷ 40 = 7, cut 8 of 4 in, 32 in."""
    border = cut("border", 280, 4, 1, CutShape.STRIP, part="border:outer", join=DIAGONAL)
    plan = plan_of(project_on(40), border)
    assert strips_of(plan) == 8
    assert cloth_used(plan) == 32


def lengthwise(width, length, pieces=4):
    return cut("border", width, length, pieces, CutShape.STRIP, part="border:outer", direction=StripDirection.ALONG)


@pytest.mark.parametrize(
    ("border", "length", "inches"),
    # quiltingboard, 2009: strips of 90 in when four fit the width; of 12 in borders two fit, so 5 yd; 82 in for 72.
    [("10", 90, 90), ("12", 90, 180), ("4", 82, 82)],
)
def test_unpieced_borders(border, length, inches):
    plan = plan_of(project_on(42), lengthwise(border, length))
    assert cloth_used(plan) == inches
    assert {strip.direction for strip in plan.strips} == {StripDirection.ALONG}


def test_borders_joined_across_need_far_less_than_a_published_method():
    """Missouri Star blog, border calculator for 40 × 50 with 5 in: 3 1/4 yd. Joined: 27 1/2 in; unpieced: 1 1/2 yd."""
    settings = {"part": "border:outer", "shape": CutShape.STRIP}
    joined = plan_of(
        project_on(42),
        cut("sides", "11/2", "101/2", 2, join=STRAIGHT, **settings),
        cut("ends", "101/2", "11/2", 2, join=STRAIGHT, **settings),
    )
    assert cloth_used(joined) == Fraction(55, 2)
    unpieced = plan_of(project_on(42), lengthwise("11/2", Fraction(101, 2)))
    assert cloth_used(unpieced) <= 54
    assert max(cloth_used(joined), cloth_used(unpieced)) < Fraction(13, 4) * 36


def backing(width, height, cloth=42):
    piece = cut("backing", width, height, 1, part="backing", join=STRAIGHT, join_seam=None)
    plan = plan_of(project_on(cloth, seam="1/2"), piece)
    assert faults(plan, [piece], project_on(cloth, seam="1/2")) == []
    return plan


@pytest.mark.parametrize(
    ("width", "height", "inches"),
    [
        # BellaOnline, "Quilt Backings": quilt 72 × 90, two lengths of 94 in.
        (80, 94, 188),
        # St Croix guild and others: 84 × 92 with 6 in more, three widths of 90 in, seam along the width, 7 1/2 yd.
        (90, 98, 270),
        # A book's corrections: 45 1/2 × 54 1/2, 50 × 59, two lengths of 50 in.
        (50, 59, 100),
        # 59 × 65: two lengths of 67 1/2 in reach 83 in.
        (83, "135/2", 135),
    ],
)
def test_published_backings(width, height, inches):
    assert cloth_used(backing(Fraction(width), Fraction(height))) == inches


def test_the_area_of_a_backing_says_too_little():
    """BellaOnline's estimate, area ÷ 1296 + 1/2 yd, is enough for 72 × 90 by chance; for 60 × 60 it is not."""
    estimate = Fraction(60 * 60, 1296) + Fraction(1, 2)
    assert cloth_used(backing(Fraction(64), Fraction(64))) > estimate * 36


@pytest.mark.parametrize(
    ("width", "height", "cloth", "inches"),
    # Backing compilations and "Beginner's Guide to Quilting" (UK), 2020: 103 × 110 from 108 in cloth, 110 in; 59 × 80
    # with a few inches from 90 in cloth, 63 in.
    [(103, 110, 108, 110), (63, 84, 90, 63)],
)
def test_wide_backing_is_one_length(width, height, cloth, inches):
    plan = backing(Fraction(width), Fraction(height), cloth)
    assert cloth_used(plan) == inches
    assert plan.joined == ()


def test_what_lies_beside_the_last_panel_is_used():
    pieces = [
        cut("backing", 68, 88, 1, part="backing", join=STRAIGHT),
        cut("patch", 3, 5, 24),
    ]
    plan = plan_of(project_on(42), *pieces)
    assert cloth_used(plan) == 2 * 88
    assert plan.sections == (88,)
    assert faults(plan, pieces, project_on(42)) == []


def test_borders_of_one_part_share_a_joined_strip():
    settings = {"part": "border:outer", "join": DIAGONAL, "shape": CutShape.STRIP}
    pieces = [cut("sides", "9/2", 80, 2, **settings), cut("ends", 60, "9/2", 2, **settings)]
    plan = plan_of(project_on(42), *pieces)
    assert {joined.strip for joined in plan.joined} == {"sides"}
    # 280 in from strips worth 37 1/2 in, the first 42: (280 − 4 1/2) ÷ 37 1/2 = 7.3.
    assert strips_of(plan) == 8
    assert faults(plan, pieces, project_on(42)) == []


def test_both_ways_to_cut_borders_and_wide_backing_are_offered():
    settings = {"part": "border:outer", "join": DIAGONAL, "shape": CutShape.STRIP}
    cuts = CutList(
        (
            cut("sides", "11/2", "101/2", 2, **settings),
            cut("ends", "101/2", "11/2", 2, **settings),
            cut("backing", 58, 68, 1, part="backing", join=STRAIGHT, material="fog"),
        )
    )
    sea, fog = plan_cutting(cuts, project_on(42)).value
    (unpieced,) = sea.alternatives
    assert unpieced.kind is AlternativeKind.UNPIECED_BORDERS
    assert (sea.needed.text, unpieced.needed.text) == ("33 1/2 in", "51 in")
    (wide,) = fog.alternatives
    assert wide.kind is AlternativeKind.WIDE_BACKING
    assert (fog.needed.text, wide.needed.text, wide.usable_width.text) == ("116 1/2 in", "58 in", "108 in")

    along = tuple(replace(one, direction=StripDirection.ALONG) for one in cuts.of("sea"))
    (sea,) = plan_cutting(CutList(along), project_on(42)).value
    (joined,) = sea.alternatives
    assert joined.kind is AlternativeKind.JOINED_BORDERS
    assert (sea.needed.text, joined.needed.text) == ("51 in", "33 1/2 in")


def test_wide_backing_in_centimetres_is_no_wider_than_it_is_sold():
    """108 in of 2.54 cm (international yard and pound agreement, 1959) are 274.32 cm."""
    sides = {"part": "backing", "join": STRAIGHT, "material": "fog", "unit": Unit.CENTIMETRE}
    (fog,) = plan_cutting(CutList((cut("backing", 150, 180, 1, **sides),)), project_on(107, Unit.CENTIMETRE)).value
    (wide,) = fog.alternatives
    assert wide.kind is AlternativeKind.WIDE_BACKING
    assert wide.usable_width.text == "274 cm" and wide.usable_width.value < Fraction("2.54") * 108


def test_plans_for_the_usual_widths():
    cuts = CutList((cut("square", "21/2", "21/2", 12),))
    lengths = [(width.text, outcome.value[0].needed.text) for width, outcome in plan_usual_widths(cuts, project_on(42))]
    assert lengths == [("40 in", "42 1/2 in"), ("42 in", "32 in"), ("44 in", "32 in")]


@pytest.mark.parametrize(
    ("width", "height", "package"),
    # Karen Daniel, "Common Quilt and Batting Sizes", Honey Be Good, 2012: quilts about 39 × 54 to 104 × 93 with 6 in
    # more each way, and the batting sold for them.
    [(39, 54, "crib"), (65, 84, "twin"), (75, 88, "full"), (84, 93, "queen"), (104, 93, "king"), (120, 120, None)],
)
def test_packaged_batting(width, height, package):
    batting = cut("batting", width + 6, height + 6, 1, material="batting", part="batting")
    (material,) = plan_cutting(CutList((batting,)), project_on(42)).value
    assert (material.packaged.name if material.packaged else None) == package
    assert [side.value for side in material.piece] == [width + 6, height + 6]
    assert material.needed.value == max(width, height) + 6
    assert material.plan is None
