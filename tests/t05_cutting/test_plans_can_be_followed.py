"""Random cut lists: every plan is edge to edge, on the cloth, complete, along the grain, and told as it is drawn."""

from __future__ import annotations

from fractions import Fraction

from evenseam.cutting import plan_cutting
from evenseam.exact import Unit
from evenseam.pattern import Cut, CutList, CutShape, StripDirection, StripJoin
from hypothesis import given, settings
from hypothesis import strategies as st
from support.cloth_checker import faults
from support.fabrics import cut, project_on

EIGHTHS = st.integers(6, 140).map(lambda eighths: Fraction(eighths, 8))
MILLIMETRES = st.integers(15, 300).map(lambda tenths: Fraction(tenths, 10))
COUNTS = st.sampled_from((1, 2, 3, 4, 6, 8, 12, 20, 35, 60, 96))
SHAPES = st.sampled_from(
    (CutShape.RECTANGLE, CutShape.PATCH, CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE)
)


@st.composite
def cut_lists(draw: st.DrawFn, unit: Unit) -> list[Cut]:
    """Return the cuts of one fabric: patches, borders, a binding, a backing, in any company."""
    side = EIGHTHS if unit is Unit.INCH else MILLIMETRES
    inch = 1 if unit is Unit.INCH else 2
    cuts: list[Cut] = []
    for number in range(draw(st.integers(0, 4))):
        shape = draw(SHAPES)
        width = draw(side)
        is_triangle = shape in (CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE)
        height = width if is_triangle else draw(side)
        direction = draw(st.sampled_from(StripDirection))
        is_upright = draw(st.booleans())
        cuts.append(
            cut(
                f"patch-{number}", width, height, draw(COUNTS), shape, unit=unit, is_upright=is_upright,
                direction=StripDirection.EITHER if is_upright else direction,
            )
        )  # fmt: skip
    if draw(st.booleans()):
        width, across, down = draw(side) / 4 + 1, draw(st.integers(20, 110)) * inch, draw(st.integers(20, 110)) * inch
        more = {
            "join": draw(st.sampled_from((*StripJoin, None))), "is_upright": draw(st.booleans()),
            "direction": draw(st.sampled_from((StripDirection.EITHER, StripDirection.ALONG))),
            "part": "border:outer", "unit": unit,
        }  # fmt: skip
        if more["is_upright"]:
            more |= {"direction": StripDirection.EITHER, "join": StripJoin.STRAIGHT}
        cuts.append(cut("sides", width, down, 2, CutShape.STRIP, **more))
        cuts.append(cut("ends", across, width, 2, CutShape.STRIP, **more))
    if draw(st.booleans()):
        shape = draw(st.sampled_from((CutShape.BINDING, CutShape.BIAS_BINDING)))
        length = draw(st.integers(40, 400)) * inch
        cuts.append(
            cut("binding", Fraction(9, 4) * inch, length, 1, shape, part="binding", join=StripJoin.DIAGONAL, unit=unit)
        )
    if not cuts or draw(st.integers(0, 4)) == 0:
        sizes = [draw(st.integers(30, 100)) * inch for _ in range(2)]
        upright = draw(st.booleans())
        cuts.append(cut("backing", *sizes, 1, part="backing", join=StripJoin.STRAIGHT, is_upright=upright, unit=unit))
    return cuts


@given(cut_lists(Unit.INCH), st.sampled_from((36, 40, 42, 44)))
@settings(max_examples=250)
def test_plans_in_inches(cuts, width):
    check(cuts, project_on(width))


@given(cut_lists(Unit.CENTIMETRE), st.sampled_from((107, 112)))
@settings(max_examples=100)
def test_plans_in_centimetres(cuts, width):
    check(cuts, project_on(width, Unit.CENTIMETRE, "3/4"))


def check(cuts, project):
    """Plan, and look at the plan from outside."""
    outcome = plan_cutting(CutList(tuple(cuts)), project)
    assert outcome.errors == ()
    (material,) = outcome.value
    plan = material.plan
    assert faults(plan, cuts, project) == []
    assert plan.lower_bound <= plan.length.value
    assert plan.is_shortest == (plan.lower_bound == plan.length.value)
    assert material.needed == plan.length
    inches = {Unit.YARD: 36, Unit.METRE: 100}[material.buy.unit]
    assert material.buy.value * inches > plan.length.value
    assert plan_cutting(CutList(tuple(cuts)), project) == outcome
