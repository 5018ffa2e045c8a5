"""Units sewn from whole squares within blocks: the simulator notices every single mistake, and nothing is lost."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.pattern import MakeUnits, Project, UnitBatch
from evenseam.problems import SourceText
from evenseam.reading import read_pattern
from evenseam.sizing import assembly_program, chosen_methods, cut_list, sew, size_project, unit_methods
from support.sewing_faults import mutants
from support.tops import sized

BIRD = """
format: 1
title: Bird
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
  lamp: {colour: "#efc25e"}
blocks:
  bird:
    finished size: 12
    method: rotary
    unit method: METHOD
    units:
      - [half-square sea/fog, 2x1 geese lamp/fog, half-square sea/fog turned 90]
      - [1x2 geese lamp/fog turned 270, 2x2 quarter-square sea/fog/lamp/fog, 1x2 geese lamp/fog turned 90]
      - [half-square sea/fog turned 270, 2x1 geese lamp/fog turned 180, half-square sea/fog turned 180]
  ball:
    finished size: 12
    method: rotary
    unit method: METHOD
    units: [[snowball fog/sea]]
arrangement: {layout: [[bird, ball], [ball, bird]]}
finish: {kind: turned, backing: {fabric: sea}}
sizes:
  mat: {}
"""


def project(batch: UnitBatch) -> Project:
    outcome = read_pattern("bird", SourceText("pattern.yaml", BIRD.replace("METHOD", batch.value)))
    assert outcome.value is not None, outcome.problems
    return outcome.value.projects[0]


@pytest.mark.parametrize("batch", list(UnitBatch))
def test_every_unit_is_sewn_some_way(batch: UnitBatch) -> None:
    ready = sized(project(batch))
    cuts = cut_list(ready)
    program = assembly_program(ready, cuts)
    log = sew(ready.project, cuts, program).value
    assert log is not None
    assert (log.finished_width, log.finished_height) == (24, 24)
    # The author's choice replaces what it covers: never a step of both ways.
    replaced = {id for method in chosen_methods(ready) for id in method.steps}
    assert not replaced & {step.id for step in program.steps}
    assert not {method.pieces for method in chosen_methods(ready)} & {method.pieces for method in unit_methods(ready)}


@pytest.mark.parametrize(
    ("batch", "ways"),
    [
        (UnitBatch.ONE, ["flying geese, one at a time", "squares sewn on the corners of a whole piece"]),
        (
            UnitBatch.TWO,
            [
                "half-square triangle units, two at a time", "flying geese, one at a time",
                "squares sewn on the corners of a whole piece",
            ],
        ),
        (
            UnitBatch.EIGHT,
            [
                "half-square triangle units, eight at a time", "flying geese, four at a time",
                "quarter-square triangle units, four at a time", "squares sewn on the corners of a whole piece",
            ],
        ),
    ],
)  # fmt: skip
def test_the_most_at_once_that_was_asked_for(batch: UnitBatch, ways: list[str]) -> None:
    assert [method.kind.value for method in chosen_methods(sized(project(batch)))] == ways


@pytest.mark.parametrize("batch", [UnitBatch.ONE, UnitBatch.EIGHT])
def test_any_one_wrong_figure_of_the_units_is_noticed(batch: UnitBatch) -> None:
    ready = sized(project(batch))
    cuts = cut_list(ready)
    program = assembly_program(ready, cuts)
    tried, missed = 0, []
    for mutant in mutants(ready.project, cuts, program):
        is_cut_of_units = "-squares-" in mutant.change.split(":", 1)[0]
        if not (is_cut_of_units or mutant.change.startswith("step make-")):
            continue
        tried += 1
        # One name in seven stands for all the wrong names that can be put in a place.
        if mutant.change.startswith("step") and tried % 7:
            continue
        if sew(ready.project, mutant.cuts, mutant.program).value is not None:
            missed.append(mutant.change)
    assert not missed
    assert tried > 100


def test_squares_a_mark_too_large_are_not_taken() -> None:
    ready = sized(project(UnitBatch.FOUR))
    cuts = cut_list(ready)
    program = assembly_program(ready, cuts)
    for cut in cuts.cuts:
        if "-squares-" in cut.id and not cut.id.startswith("ball"):
            wider = replace(cut.width, value=cut.width.value + Fraction(1, 8))
            larger = replace(cut, width=wider, height=wider)
            changed = replace(cuts, cuts=tuple(larger if one is cut else one for one in cuts.cuts))
            assert sew(ready.project, changed, program).value is None, cut.label


def test_a_spare_unit_is_counted() -> None:
    ready = sized(project(UnitBatch.FOUR))
    steps = [step for step in assembly_program(ready, cut_list(ready)).steps if isinstance(step.operation, MakeUnits)]
    made = {step.makes: (step.times, step.operation.gives, step.operation.spare) for step in steps}
    assert made["bird-c-d-e"] == (2, 4, 0)
    assert [made[name][2] for name in made if name != "bird-c-d-e"] == [0, 2, 0]


def test_a_print_with_an_up_keeps_its_templates() -> None:
    plain = project(UnitBatch.EIGHT)
    upright = replace(plain, fabrics=tuple(replace(fabric, is_directional=True) for fabric in plain.fabrics))
    outcome = size_project(upright)
    assert outcome.value is not None
    cuts = cut_list(outcome.value)
    assert sew(outcome.value.project, cuts, assembly_program(outcome.value, cuts)).value is not None
