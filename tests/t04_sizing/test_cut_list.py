"""The cut list: ids, labels, sizes and counts of everything that is cut."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Number, Unit
from evenseam.pattern import (
    BATTING,
    BlockPiece,
    BorderCorners,
    BorderOrder,
    Cut,
    CutList,
    CutShape,
    Grain,
    Method,
    Project,
    StripJoin,
)
from evenseam.sizing import cut_list
from hypothesis import given, settings
from support.samples import BOUND, LAP_QUILT, MUG_RUG, POCKETS, WALL_HANGING, grid, length, polygon
from support.strategies import projects
from support.tops import plain_block, plain_top, rows_of, sized


def _cuts(project: Project) -> CutList:
    return cut_list(sized(project))


def _line(cut: Cut) -> str:
    return f"{cut.id}: {cut.count.text} {cut.material} {cut.width.number} x {cut.height.number} {cut.shape.value}"


MUG_RUG_CUTS = """
lantern-a1: 1 lamp 5 x 4 patch
lantern-a2: 2 fog 5 x 2 1/2 patch
lantern-a4: 1 sea 7 x 3 patch
lantern-b1: 1 sea 4 x 4 patch
lantern-b2: 2 fog 5 1/4 x 3 3/4 patch
inner-border-sides: 2 fog 1 1/2 x 9 1/2 strip
inner-border-top-bottom: 2 fog 8 1/2 x 1 1/2 strip
backing: 1 sea 10 1/2 x 13 1/2 rectangle
batting: 1 batting 10 1/2 x 13 1/2 rectangle
"""
# The patches by hand: the glass is 3 × 4, the panes beside it 1 1/2 × 4, the sea 6 × 2, the roof 3 × 3, each with
# 1/4 + 1/4 on every side. The sky beside the roof is laid along its seam of √(1 1/2² + 3²) = 3.354: it reaches 4.025
# along and 2.683 across, so 5.025 × 3.683, rounded up to 5 1/4 × 3 3/4.
LAP_QUILT_CUTS = """
lantern-a1: 20 lamp 5 x 4 patch
lantern-a2: 40 fog 5 x 2 1/2 patch
lantern-a4: 20 sea 7 x 3 patch
lantern-b1: 20 sea 4 x 4 patch
lantern-b2: 40 fog 5 1/4 x 3 3/4 patch
sashing-vertical: 24 fog 2 x 9 1/2 strip
sashing-horizontal: 25 fog 6 1/2 x 2 strip
sashing-cornerstone: 30 lamp 2 x 2 square
inner-border-sides: 2 lamp 1 1/2 x 44 strip
inner-border-top-bottom: 2 lamp 41 1/2 x 1 1/2 strip
outer-border-sides: 2 reed 3 x 51 strip
outer-border-top-bottom: 2 reed 41 1/2 x 3 strip
backing: 1 sea 50 1/2 x 55 rectangle
batting: 1 batting 50 1/2 x 55 rectangle
binding: 1 sea 2 1/4 x 205 binding
"""


@pytest.mark.parametrize(("project", "cuts"), [(MUG_RUG, MUG_RUG_CUTS), (LAP_QUILT, LAP_QUILT_CUTS)])
def test_cut_lists_known_by_hand(project: Project, cuts: str) -> None:
    assert [_line(cut) for cut in _cuts(project).cuts] == cuts.strip().splitlines()


def test_labels_read_naturally() -> None:
    labels = {cut.id: cut.label for cut in _cuts(WALL_HANGING).cuts}
    assert labels == {
        "lantern-a1": "patch A1 of the Lantern block",
        "lantern-a2": "patches A2 and A3 of the Lantern block",
        "lantern-a4": "patch A4 of the Lantern block",
        "lantern-b1": "patch B1 of the Lantern block",
        "lantern-b2": "patches B2 and B3 of the Lantern block",
        "sashing-vertical": "vertical sashing strips",
        "sashing-horizontal": "long horizontal sashing strips",
        "inner-border-sides": "side strips of the inner border",
        "inner-border-top-bottom": "top and bottom strips of the inner border",
        "outer-border-sides": "side strips of the outer border",
        "outer-border-top-bottom": "top and bottom strips of the outer border",
        "backing": "backing",
        "batting": "batting",
        "binding": "binding",
        "sleeve": "hanging sleeve",
    }


def test_parts_tell_what_a_cut_belongs_to() -> None:
    parts = list(dict.fromkeys(cut.part for cut in _cuts(WALL_HANGING).cuts))
    assert parts == [
        "block:lantern", "sashing", "border:inner-border", "border:outer-border", "backing", "batting", "binding",
        "hanging",
    ]  # fmt: skip


def test_directional_cloth_is_cut_upright_and_nothing_else_is() -> None:
    upright = {cut.id for cut in _cuts(WALL_HANGING).cuts if cut.is_upright}
    assert upright == {"outer-border-sides", "outer-border-top-bottom"}


def test_directional_backing_is_cut_upright() -> None:
    finish = replace(BOUND, backing_fabric="reed")
    cuts = _cuts(replace(WALL_HANGING, finish=finish))
    assert cuts.cut("backing").is_upright and not cuts.cut("batting").is_upright


def test_pieces_of_one_width_and_two_heights_are_two_cuts() -> None:
    stripes = (
        BlockPiece("wide", "sea", polygon("0,0 3,0 3,2 0,2")),
        BlockPiece("narrow", "sea", polygon("0,2 3,2 3,3 0,3")),
    )
    flag = replace(plain_block(Fraction(6), Fraction(6), id="flag"), pieces=stripes, outline=polygon("0,0 3,0 3,3 0,3"))
    flag = replace(flag, grid_width=Fraction(3), grid_height=Fraction(3))
    cuts = _cuts(plain_top("10", "10", blocks=(flag,), arrangement=grid(1, 1, "flag")))
    lines = {_line(cut).split(": ")[1] for cut in cuts.cuts if cut.part == "block:flag"}
    assert lines == {"1 sea 6 1/2 x 4 1/2 rectangle", "1 sea 6 1/2 x 2 1/2 rectangle"}


def test_directional_patches_stand_as_the_print_does() -> None:
    # The panes beside the glass finish 1 1/2 × 4: upright they are 2 1/2 wide and 5 high, not laid on their seam.
    fabrics = tuple(replace(fabric, is_directional=fabric.id == "fog") for fabric in MUG_RUG.fabrics)
    cut = _cuts(replace(MUG_RUG, fabrics=fabrics)).cut("lantern-a2")
    assert (cut.width.number, cut.height.number, cut.is_upright) == ("2 1/2", "5", True)


def test_long_strips_say_how_they_are_joined() -> None:
    cuts = _cuts(WALL_HANGING)
    assert cuts.cut("inner-border-sides").join is StripJoin.DIAGONAL
    assert cuts.cut("sashing-horizontal").join is StripJoin.DIAGONAL
    assert cuts.cut("sashing-vertical").join is None
    assert cuts.cut("batting").join is None
    backing = cuts.cut("backing")
    assert backing.join is StripJoin.STRAIGHT and backing.join_seam == BOUND.backing_seam


def test_joins_of_a_directional_sashing_are_straight() -> None:
    fabrics = tuple(replace(fabric, is_directional=fabric.id == "fog") for fabric in WALL_HANGING.fabrics)
    assert _cuts(replace(WALL_HANGING, fabrics=fabrics)).cut("sashing-horizontal").join is StripJoin.STRAIGHT


def test_bias_binding_and_corner_pockets() -> None:
    binding = replace(BOUND.binding, grain=Grain.BIAS)
    cuts = _cuts(plain_top("20", "30", finish=replace(BOUND, binding=binding), hanging=POCKETS))
    assert _line(cuts.cut("binding")) == "binding: 1 sea 2 1/4 x 110 bias binding"
    assert _line(cuts.cut("corner-pockets")) == "corner-pockets: 2 sea 4 x 4 square"


@pytest.mark.parametrize(
    ("order", "sides", "top_bottom"),
    [(BorderOrder.SIDES_FIRST, "1 1/2 x 9 1/2", "6 1/2 x 1 1/2"), (BorderOrder.TOP_AND_BOTTOM_FIRST, "1 1/2 x 9 1/2", "6 1/2 x 1 1/2")],
)  # fmt: skip
def test_border_with_cornerstones_has_four_strips_as_long_as_its_inside(
    order: BorderOrder, sides: str, top_bottom: str
) -> None:
    border = replace(MUG_RUG.borders[0], corners=BorderCorners.CORNERSTONES, corner_fabric="lamp", order=order)
    cuts = _cuts(replace(MUG_RUG, borders=(border,)))
    assert _line(cuts.cut("inner-border-sides")) == f"inner-border-sides: 2 fog {sides} strip"
    assert _line(cuts.cut("inner-border-top-bottom")) == f"inner-border-top-bottom: 2 fog {top_bottom} strip"
    assert _line(cuts.cut("inner-border-cornerstones")) == "inner-border-cornerstones: 4 lamp 1 1/2 x 1 1/2 square"


def test_rotary_pieces_are_finished_size_and_two_seams() -> None:
    # A flag of three stripes on a grid of 3 × 3 that finishes 6 × 6: two sea stripes of 6 × 2 and one of fog.
    stripes = tuple(
        BlockPiece(f"p{row}", fabric, polygon(f"0,{row} 3,{row} 3,{row + 1} 0,{row + 1}"))
        for row, fabric in enumerate(("sea", "fog", "sea"))
    )
    flag = replace(plain_block(Fraction(6), Fraction(6), id="flag"), pieces=stripes, outline=polygon("0,0 3,0 3,3 0,3"))
    flag = replace(flag, grid_width=Fraction(3), grid_height=Fraction(3))
    cuts = _cuts(plain_top("10", "10", blocks=(flag,), arrangement=grid(2, 2, "flag")))
    lines = {_line(cut).split(": ")[1] for cut in cuts.cuts if cut.part == "block:flag"}
    assert lines == {"8 sea 6 1/2 x 2 1/2 rectangle", "4 fog 6 1/2 x 2 1/2 rectangle"}
    labels = sorted(cut.label for cut in cuts.cuts if cut.part == "block:flag")
    assert [label.split(" of ")[1] for label in labels] == ["the Flag block"] * 2
    assert {label.split()[0] for label in labels} == {"piece", "pieces"}
    assert _line(_cuts(rows_of(2, 2, "3 1/2", "3 1/2")).cut("plain-a")) == "plain-a: 4 fog 3 1/2 x 3 1/2 square"


@settings(max_examples=60)
@given(projects())
def test_every_list_is_in_order(project: Project) -> None:
    cuts = _cuts(project)
    ids = [cut.id for cut in cuts.cuts]
    assert len(set(ids)) == len(ids)
    fabrics = {fabric.id for fabric in project.fabrics}
    for cut in cuts.cuts:
        assert cut.material in fabrics or cut.material == BATTING
        assert cut.count.whole >= 1
        assert cut.width.value > 0 and cut.height.value > 0
        assert cut.width.unit is cut.height.unit is project.unit


def _is_turned_square(cut: Cut, areas: list[Number], seam: Number) -> bool:
    """Tell whether a cut is a square of one of these finished areas, to 1/32 in or half a millimetre."""
    near = Fraction(1, 32) if cut.width.unit is Unit.INCH else Fraction(1, 20)
    side = cut.width.value - 2 * seam
    return cut.shape is CutShape.SQUARE and any(
        (side - near) * (side - near) <= area <= (side + near) * (side + near) for area in areas
    )


@settings(max_examples=40)
@given(projects())
def test_no_piece_is_cut_smaller_than_finished_and_two_seams(project: Project) -> None:
    result = sized(project)
    cuts = cut_list(result)
    seam, unit = result.project.seam_allowance.value, result.project.unit
    step = length("patch step", "1/4") if unit is Unit.INCH else length("patch step", "0.5", unit)
    for block in result.project.blocks:
        across, down = block.scale
        for cut in (cut for cut in cuts.cuts if cut.part == f"block:{block.id}"):
            area = cut.width.value * cut.height.value
            pieces = [piece.outline for piece in block.pieces if piece.fabric == cut.material]
            least = min(outline.area * across * down for outline in pieces)
            assert area >= least
            if cut.shape in (CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE, CutShape.TEMPLATE):
                assert (min(cut.width.value, cut.height.value) / result.project.unit.ruler_mark).denominator == 1
            elif block.method is Method.ROTARY:
                sizes = set()
                for outline in pieces:
                    left, top, right, bottom = outline.bounds
                    sizes.add(((right - left) * across + 2 * seam, (bottom - top) * down + 2 * seam))
                areas = [outline.area * across * down for outline in pieces if len(outline.corners) == 4]
                assert (cut.width.value, cut.height.value) in sizes or _is_turned_square(cut, areas, seam)
            else:
                assert cut.shape is CutShape.PATCH
                assert min(cut.width.value, cut.height.value) >= 2 * (seam + result.project.patch_margin.value)
                assert (cut.width.value / step.value).denominator == 1  # type: ignore[union-attr]
