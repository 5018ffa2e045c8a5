"""The same fabrics on cloth of other widths, in fat quarters, and sold by other steps."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.cutting import Material, WaysToBuy, cloth_piece, plan_cutting, plan_pieces, shop_step, ways_to_buy
from evenseam.cutting.planning import usual_widths
from evenseam.cutting.yardage import shop_length
from evenseam.exact import Unit
from evenseam.pattern import Assumed, CutList, Project, Quantity, equation
from evenseam.sizing import cut_list, size_project
from hypothesis import given, settings
from support.cloth_checker import faults
from support.samples import LAP_QUILT, MUG_RUG, WALL_HANGING
from support.strategies import projects


def planned(project: Project) -> tuple[CutList, Project, tuple[Material, ...]]:
    sized = size_project(project).value
    assert sized is not None
    cuts = cut_list(sized)
    materials = plan_cutting(cuts, sized.project).value
    assert materials is not None
    return cuts, sized.project, materials


def check(cuts: CutList, project: Project, materials: tuple[Material, ...], found: tuple[WaysToBuy, ...]) -> None:
    own = {material.material: material for material in materials if material.plan}
    assert [ways.material for ways in found] == list(own)
    for ways in found:
        area = sum(
            cut.width.value * cut.height.value * Fraction(cut.count.whole)
            for cut in cuts.of(ways.material)
            if cut.shape.value in ("rectangle", "square", "strip")
        )
        for narrower, wider in zip(ways.widths, ways.widths[1:], strict=False):
            assert narrower.usable_width.value < wider.usable_width.value
            assert narrower.needed.value >= wider.needed.value, "a plan for narrower cloth can be cut from wider cloth"
        for at in ways.widths:
            assert at.needed.value * at.usable_width.value >= area, "never less cloth than the pieces cover"
            if at.plan is not None:
                on_width = replace(project, usable_width=at.usable_width)
                assert at.plan.usable_width.value == at.usable_width.value
                assert faults(at.plan, cuts.of(ways.material), on_width) == []
                full = [line for line in at.plan.lines if line.is_full_width]
                across = [strip for strip in at.plan.strips if strip.width == at.usable_width.value]
                assert sum(line.count for line in full) == len(across), "words and picture agree on whole strips"
            if at.usable_width.value == project.usable_width.value:
                assert at.needed.value <= own[ways.material].needed.value
                assert at.buy.value <= own[ways.material].buy.value
            elif at.usable_width.value > project.usable_width.value:
                assert at.buy.value <= own[ways.material].buy.value


@pytest.mark.parametrize("project", [MUG_RUG, WALL_HANGING, LAP_QUILT], ids=lambda project: project.size)
def test_samples_on_every_usual_width(project: Project) -> None:
    cuts, sized, materials = planned(project)
    found = ways_to_buy(cuts, sized, materials)
    check(cuts, sized, materials, found)
    for ways in found:
        assert {at.usable_width.value for at in ways.widths} <= {width.value for width in usual_widths(sized.unit)}
        assert ways.widths


@settings(max_examples=15, deadline=None)
@given(projects())
def test_wider_cloth_never_takes_more(project: Project) -> None:
    sized = size_project(project)
    if sized.value is None or not sized.is_valid:
        return
    cuts = cut_list(sized.value)
    materials = plan_cutting(cuts, sized.value.project).value or ()
    check(cuts, sized.value.project, materials, ways_to_buy(cuts, sized.value.project, materials))


def test_a_backing_that_fits_comes_from_the_fat_quarters_too() -> None:
    cuts, sized, materials = planned(MUG_RUG)
    for ways in ways_to_buy(cuts, sized, materials):
        backing = [cut for cut in cuts.of(ways.material) if cut.part == "backing"]
        with_backing = {
            plan.material: plan
            for plan in plan_pieces(cuts, sized, cloth_piece("fat quarter", sized.unit), ()).value or ()
        }
        if backing and ways.material in with_backing:
            assert ways.fat_quarters is not None and not ways.is_without_backing
            assert ways.fat_quarters.whole == with_backing[ways.material].number.whole


def test_a_backing_larger_than_a_fat_quarter_is_left_out_and_said() -> None:
    cuts, sized, materials = planned(LAP_QUILT)
    backing = {cut.material for cut in cuts.cuts if cut.part == "backing"}
    for ways in ways_to_buy(cuts, sized, materials):
        if ways.material in backing and ways.fat_quarters is not None:
            assert ways.is_without_backing


@pytest.mark.parametrize(
    ("step", "unit", "needed", "bought"),
    [
        # (18 1/2 ÷ 0.95 + 1) ÷ 36 = 0.5687 yd
        ("1/8", Unit.YARD, "37/2", "5/8"), ("1/4", Unit.YARD, "37/2", "3/4"), ("1/3", Unit.YARD, "37/2", "2/3"),
        # (50 ÷ 0.95 + 2) ÷ 100 = 0.5463 m
        ("1/10", Unit.METRE, "50", "3/5"), ("1/4", Unit.METRE, "50", "3/4"),
    ],
)  # fmt: skip
def test_shops_sell_by_their_own_step(step: str, unit: Unit, needed: str, bought: str) -> None:
    ruler = Unit.INCH if unit is Unit.YARD else Unit.CENTIMETRE
    length = Quantity("needed", Fraction(needed), ruler, Assumed("a sample"))
    quantity = shop_length("cloth", length, Quantity("shop step", Fraction(step), unit, Assumed("a sample")))
    assert (quantity.value, quantity.unit) == (Fraction(bought), unit)
    assert "÷" in equation(quantity)


def test_the_step_of_one_unit_leaves_the_other_edition_its_usual_one() -> None:
    quarter = Quantity("shop step", Fraction(1, 4), Unit.YARD, Assumed("a sample"))
    assert shop_step(replace(WALL_HANGING, shop_step=quarter)) is quarter
    metric = shop_step(replace(WALL_HANGING, unit=Unit.CENTIMETRE, shop_step=quarter))
    assert (metric.value, metric.unit) == (Fraction(1, 10), Unit.METRE)
    assert isinstance(metric.because, Assumed)


def test_everything_bought_is_a_whole_number_of_steps() -> None:
    third = Quantity("shop step", Fraction(1, 3), Unit.YARD, Assumed("a sample"))
    for material in planned(replace(WALL_HANGING, shop_step=third))[2]:
        assert (material.buy.value / Fraction(1, 3)).denominator == 1  # type: ignore[union-attr]
