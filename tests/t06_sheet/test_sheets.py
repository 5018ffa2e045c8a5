"""The sheet: whole, repeatable, and open as data."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import format_number, parse_length
from evenseam.pattern import Assumed, Claim, Derived, Given, Pattern, Project, Quantity
from evenseam.problems import Place
from evenseam.sheet import PatternSheet, audit_claims, compute_sheet, sheet_as_json
from evenseam.sheet.codes import CLAIM_NOT_CHECKED, CLAIM_OTHER_UNIT, CLAIM_UNKNOWN_FIGURE, CLAIM_WRONG
from hypothesis import given, settings
from support import samples
from support.strategies import projects


def sheet_of(project: Project) -> PatternSheet:
    outcome = compute_sheet(samples.PATTERN, project)
    assert outcome.value is not None, outcome.problems
    return outcome.value


@pytest.fixture(scope="module")
def wall_hanging() -> PatternSheet:
    return sheet_of(samples.WALL_HANGING)


@settings(max_examples=25)
@given(projects())
def test_what_can_be_cut_has_a_sheet_and_the_sheet_is_the_same_twice(project: Project) -> None:
    first, second = compute_sheet(samples.PATTERN, project), compute_sheet(samples.PATTERN, project)
    assert first == second
    assert first.value is not None or any(problem.severity.value == "error" for problem in first.problems)
    if first.value is not None:
        text = json.dumps(sheet_as_json(first.value), sort_keys=True)
        assert second.value is not None
        assert text == json.dumps(sheet_as_json(second.value), sort_keys=True)


def test_data_says_what_the_sheet_says(wall_hanging: PatternSheet) -> None:
    data = json.loads(json.dumps(sheet_as_json(wall_hanging)))
    assert data["finished"] == {
        "width": wall_hanging.sized.finished_width.number,
        "height": wall_hanging.sized.finished_height.number,
    }
    assert [cut["id"] for cut in data["cuts"]] == [cut.id for cut in wall_hanging.cuts.cuts]
    for told, cut in zip(data["cuts"], wall_hanging.cuts.cuts, strict=True):
        assert parse_length(told["width"]).value == cut.width.value
        assert parse_length(told["height"]).value == cut.height.value
        assert told["count"] == cut.count.value
        assert told["why"]["width"].startswith(cut.width.number)
    assert {checkpoint["step"] for checkpoint in data["checkpoints"]} <= {step["id"] for step in data["steps"]}
    assert [fabric["id"] for fabric in data["fabrics"]] == [material.material for material in wall_hanging.materials]


def test_pieces_of_the_plans_are_the_cut_list(wall_hanging: PatternSheet) -> None:
    data = sheet_as_json(wall_hanging)
    counts: dict[str, int] = {}
    for fabric in data["fabrics"]:
        for strip in fabric.get("plan", {}).get("strips", ()):
            for piece in strip["pieces"]:
                counts[piece["cut"]] = counts.get(piece["cut"], 0) + 1
    for cut in wall_hanging.cuts.cuts:
        if cut.join is None and cut.material != "batting":
            assert counts[cut.id] == cut.count.value, cut.id


def test_every_figure_has_a_reason(wall_hanging: PatternSheet) -> None:
    for name, quantity in wall_hanging.figures:
        assert name == name.lower() and " " not in name
        match quantity.because:
            case Derived(expression=expression, rounding=rounding):
                expected = rounding.apply(expression.value) if rounding else expression.value
                assert quantity.value == expected, name
            case Assumed(reason=reason):
                assert reason
            case Given(place=place):
                assert place.line > 0


def test_a_project_the_simulator_cannot_sew_has_no_sheet(monkeypatch: pytest.MonkeyPatch) -> None:
    from evenseam.sheet import compute

    plain = compute.cut_list

    def short(sized: object) -> object:
        cuts = plain(sized)  # type: ignore[arg-type]
        wrong = next(cut for cut in cuts.cuts if cut.part.startswith("border"))
        longer = replace(wrong, width=replace(wrong.width, value=wrong.width.value + Fraction(1, 8)))
        return replace(cuts, cuts=tuple(longer if cut is wrong else cut for cut in cuts.cuts))

    monkeypatch.setattr(compute, "cut_list", short)
    outcome = compute_sheet(samples.PATTERN, samples.WALL_HANGING)
    assert outcome.value is None and outcome.errors


def claim(figure: str, value: Quantity, size: str = "wall-hanging") -> Pattern:
    stated = replace(value, because=Given(Place("pattern.yaml", 7, 3, 7, 9)))
    return replace(samples.PATTERN, claims=(Claim(size, figure, stated),))


class TestClaims:
    """An older printed version is audited figure by figure."""

    def test_a_right_claim_is_right(self, wall_hanging: PatternSheet) -> None:
        pattern = claim("finished width", wall_hanging.sized.finished_width)
        outcome = audit_claims(pattern, {"wall-hanging": wall_hanging})
        assert outcome.value is not None and [result.is_right for result in outcome.value] == [True]
        assert outcome.problems == ()

    @pytest.mark.parametrize("figure", ["finished width", "finished_width", "Finished-Width"])
    def test_a_wrong_claim_says_by_how_much(self, wall_hanging: PatternSheet, figure: str) -> None:
        computed = wall_hanging.sized.finished_width
        pattern = claim(figure, replace(computed, value=computed.value - Fraction(1, 2)))
        outcome = audit_claims(pattern, {"wall-hanging": wall_hanging})
        assert outcome.value is not None and [result.is_right for result in outcome.value] == [False]
        (problem,) = outcome.problems
        assert problem.code is CLAIM_WRONG and "1/2 in too small" in problem.message
        assert computed.text in problem.message and problem.place == Place("pattern.yaml", 7, 3, 7, 9)

    def test_an_unknown_figure_is_told_with_its_neighbours(self, wall_hanging: PatternSheet) -> None:
        outcome = audit_claims(claim("finished widht", samples.length("stated", "1")), {"wall-hanging": wall_hanging})
        (problem,) = outcome.problems
        assert problem.code is CLAIM_UNKNOWN_FIGURE and "finished_width" in problem.hint

    def test_a_claim_in_another_unit_is_not_compared(self, wall_hanging: PatternSheet) -> None:
        from evenseam.exact import Unit

        stated = samples.length("stated", "75", Unit.CENTIMETRE)
        outcome = audit_claims(claim("finished width", stated), {"wall-hanging": wall_hanging})
        (problem,) = outcome.problems
        assert problem.code is CLAIM_OTHER_UNIT and outcome.value == ()

    def test_a_size_without_a_sheet_is_never_silently_right(self) -> None:
        outcome = audit_claims(claim("finished width", samples.length("stated", "1")), {})
        (problem,) = outcome.problems
        assert problem.code is CLAIM_NOT_CHECKED


@pytest.mark.parametrize("project", samples.PROJECTS, ids=lambda project: project.size)
def test_checkpoints_are_what_the_plan_expects(project: Project) -> None:
    sheet = sheet_of(project)
    read = {reading.step: (reading.width, reading.height) for reading in sheet.log.measurements}
    unit = sheet.project.unit
    for step in sheet.program.steps:
        if step.measures and step.id in read:
            expected = tuple(format_number(side.value, unit) for side in step.measures)
            assert tuple(format_number(side, unit) for side in read[step.id]) == expected, step.id
    assert len(read) >= len(sheet.program.steps) // 2


def test_the_cloth_has_figures_that_can_be_asked_why(wall_hanging: PatternSheet) -> None:
    names = [name for name, _ in wall_hanging.figures]
    assert len(names) == len(set(names))
    for material in wall_hanging.materials:
        assert wall_hanging.figure(f"{material.material}_needed") is material.needed
        assert wall_hanging.figure(f"{material.material}_buy") is material.buy
    for ways in wall_hanging.ways_to_buy:
        for at in ways.widths:
            assert wall_hanging.figure(f"{ways.material}_buy_at_{at.usable_width.number}") is at.buy


def test_data_holds_the_other_ways_to_buy() -> None:
    sheet = sheet_of(samples.LAP_QUILT)
    data = {fabric["id"]: fabric for fabric in sheet_as_json(sheet)["fabrics"]}
    assert data["batting"]["packaged"]["unit"] == "in"
    for ways in sheet.ways_to_buy:
        told = data[ways.material]["other_widths"]
        assert [(one["usable_width"], one["buy"]) for one in told] == [
            (at.usable_width.number, at.buy.text) for at in ways.widths
        ]
    kinds = {other["kind"] for fabric in data.values() for other in fabric.get("alternatives", ())}
    assert kinds == {other.kind.value for material in sheet.materials for other in material.alternatives}
    assert kinds
