"""What cannot be cut is reported with its figures, its place and a way out; the other fabrics are still planned."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.cutting import codes, plan_cutting
from evenseam.exact import Unit
from evenseam.pattern import CutList, CutShape, Given, Quantity, StripDirection, StripJoin, derived
from evenseam.problems import Place
from support.fabrics import cut, project_on

HERE = Place("patterns/quay/pattern.yaml", 31, 17, 31, 23)
GOOD = cut("good", 3, 3, 10, material="fog")


def given(name: str, value: object) -> Quantity:
    return Quantity(name, Fraction(value), Unit.INCH, Given(HERE))


BAD = [
    (
        codes.PIECE_WIDER_THAN_CLOTH,
        replace(cut("panel", 45, 50, 1), width=derived("panel width", given("centre", 40) + given("overage", 5))),
        "45 in × 50 in",
        "divide it in its block by a seam",
    ),
    (
        codes.PIECE_WIDER_THAN_CLOTH,
        replace(cut("banner", 50, 4, 1, is_upright=True), width=given("banner", 50)),
        "print must stay upright",
        "not directional",
    ),
    (
        codes.PIECE_WIDER_THAN_CLOTH,
        replace(cut("band", 50, 4, 1, direction=StripDirection.ACROSS), width=given("band", 50)),
        "usable width is 42 in",
        "wider cloth",
    ),
    (
        codes.TOO_MANY_PIECES,
        replace(cut("dot", 1, 1, 1), count=Quantity("dots", Fraction(20_001), Unit.COUNT, Given(HERE))),
        "20001",
        "rows and columns",
    ),
    (codes.SIZE_NOT_CUTTABLE, replace(cut("slip", 1, 5, 1), width=given("slip", 0)), "0 in × 5 in", "sizes"),
    (
        codes.BIAS_BINDING_TOO_LONG,
        replace(
            cut("edge", "5/2", 1, 1, CutShape.BIAS_BINDING, part="binding", join=StripJoin.DIAGONAL),
            height=given("edge", 10_000),
        ),
        "10000 in",
        "straight strips",
    ),
]


@pytest.mark.parametrize(("code", "bad", "figures", "way_out"), BAD, ids=lambda value: getattr(value, "id", None))
def test_a_fabric_that_cannot_be_cut(code, bad, figures, way_out):
    outcome = plan_cutting(CutList((bad, GOOD)), project_on(42))
    (problem,) = outcome.problems
    assert problem.code is code
    assert problem.place == HERE
    assert figures in problem.message
    assert way_out in problem.hint
    assert [material.material for material in outcome.value] == ["fog"]


def test_all_mistakes_at_once():
    outcome = plan_cutting(CutList((*(bad for _, bad, _, _ in BAD), GOOD)), project_on(42))
    assert len(outcome.problems) == len(BAD)


def test_strips_against_the_print_are_a_warning_and_the_print_wins():
    banner = cut("banner", 30, 4, 2, CutShape.STRIP, is_upright=True, direction=StripDirection.ALONG)
    outcome = plan_cutting(CutList((banner,)), project_on(42))
    assert [problem.code for problem in outcome.problems] == [codes.STRIPS_AGAINST_THE_PRINT]
    assert outcome.is_valid
    assert not outcome.value[0].plan.strips[0].pieces[0].is_turned


def test_no_usable_width():
    outcome = plan_cutting(CutList((GOOD,)), project_on(0))
    assert [problem.code for problem in outcome.problems] == [codes.USABLE_WIDTH_NOT_POSITIVE]
    assert outcome.value == ()


def test_codes_are_numbered_for_this_floor_and_named_once():
    assert all(500 <= code.number < 600 for code in codes.CODES)
    assert len({code.number for code in codes.CODES}) == len({code.name for code in codes.CODES}) == len(codes.CODES)
