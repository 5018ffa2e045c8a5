"""Projects of any convex outline: figures by plain geometry, each single mistake noticed, and what cannot be yet."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
import shapely
from evenseam.exact import Unit, square_root
from evenseam.pattern import CutShape, LayerTurned, Method, Project
from evenseam.problems import SourceText
from evenseam.reading import read_pattern
from evenseam.sizing import SizedProject, assembly_program, cut_list, sew, size_project
from support.sewing_faults import mutants
from support.tops import sized, value

HEXAGON = """
format: 1
title: Shell
units: inches
editions: [inches, centimetres]
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
blocks:
  shell:
    shape: hexagon
    finished size: 8
    grid: 4 x 4
    method: METHOD
    pieces:
      - sea: 0,2 1,0 3,0 4,2
      - fog: 0,2 4,2 3,4 1,4
arrangement: {rows: 1, columns: 1, block: shell}
FINISH
sizes: {mat: {}}
"""
OCTAGON = """
format: 1
title: Buoy
units: inches
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
blocks:
  buoy:
    finished size: 9
    grid: 3 x 3
    outline: "1,0 2,0 3,1 3,2 2,3 1,3 0,2 0,1"
    pieces:
      - sea: 1,0 2,0 3,1 0,1
      - fog: 0,1 3,1 3,2 0,2
      - sea: 0,2 3,2 2,3 1,3
arrangement: {rows: 1, columns: 1, block: buoy}
FINISH
sizes: {mat: {}}
"""
KITE = """
format: 1
title: Kite
units: inches
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
blocks:
  kite:
    finished size: 6 x 9
    grid: 6 x 9
    outline: "3,0 6,3 3,9 0,3"
    pieces:
      - sea: 3,0 6,3 0,3
      - fog: 0,3 6,3 3,9
arrangement: {rows: 1, columns: 1, block: kite}
FINISH
sizes: {mat: {}}
"""
TURNED = "finish: {kind: turned, backing: {fabric: sea}, opening: 2}"
BOUND = "finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: sea}}"
SHAPES = {"hexagon": HEXAGON, "octagon": OCTAGON, "kite": KITE}


def project(text: str, finish: str = TURNED, unit: Unit = Unit.INCH, method: str = "foundation") -> Project:
    written = text.replace("FINISH", finish).replace("METHOD", method)
    outcome = read_pattern("shell", SourceText("pattern.yaml", written))
    assert outcome.value is not None, outcome.problems
    return next(found for found in outcome.value.projects if found.unit is unit)


def shape(ready: SizedProject) -> shapely.Polygon:
    block = ready.project.blocks[0]
    across, down = block.scale
    return shapely.Polygon([(float(c.x * across), float(c.y * down)) for c in block.outline.corners])


@pytest.mark.parametrize("name", list(SHAPES))
@pytest.mark.parametrize("finish", [TURNED, BOUND], ids=["turned", "bound"])
def test_figures_by_an_independent_offset(name: str, finish: str) -> None:
    """Raw size, way round and layers agree with shapely's mitred buffer; the simulator arrives at the finished size."""
    ready = sized(project(SHAPES[name], finish))
    seam = float(ready.project.seam_allowance.value)
    raw = shape(ready).buffer(seam, join_style="mitre", mitre_limit=50)
    left, top, right, bottom = raw.bounds
    assert float(ready.top_width.value) == pytest.approx(right - left)
    assert float(ready.top_height.value) == pytest.approx(bottom - top)
    is_bound = finish == BOUND
    edge = raw if is_bound else shape(ready)
    assert float(ready.figure("way_round").value) == pytest.approx(edge.length)
    assert ready.outline is not None
    placed = shapely.Polygon([(float(c.x), float(c.y)) for c in ready.outline.corners])
    assert placed.area == pytest.approx(edge.area) and placed.bounds[:2] == pytest.approx((0, 0))
    seen = sum(shapely.Polygon([(float(c.x), float(c.y)) for c in p.outline.corners]).area for p in ready.placed)
    assert seen == pytest.approx(edge.area)
    for layer, overage in (("backing", 2 if is_bound else 1), ("batting", 1)):
        wide = float(ready.figure(f"{layer}_width").value)
        assert 0 <= wide - (right - left + 2 * overage) < 0.125
    if is_bound:
        assert 0 <= float(ready.figure("binding_length").value) - (raw.length + 10) < 0.125
    cuts = cut_list(ready)
    log = sew(ready.project, cuts, assembly_program(ready, cuts)).value
    assert log is not None
    assert (log.finished_width, log.finished_height) == (ready.finished_width.value, ready.finished_height.value)


def test_a_hexagon_is_root_three_of_its_side_across() -> None:
    # "How to cut the hexagon shape", Slaney, 2019; "Cutting Hexagons", Debby Kratovil, 2019: across the flats is the
    # side times 1.732, and a machine-sewn hexagon is cut 1/2 wider: 2 3/4 across the flats from a strip of 3 1/4.
    ready = sized(project(HEXAGON))
    side = ready.finished_width.value / 2
    assert ready.finished_height.value == side * square_root(3)
    assert ready.top_height.value - ready.finished_height.value == Fraction(1, 2)
    assert Fraction("2.75") + (ready.top_height.value - ready.finished_height.value) == value("3 1/4")


def test_the_other_edition_keeps_the_angles() -> None:
    ready = sized(project(HEXAGON, unit=Unit.CENTIMETRE))
    assert ready.finished_width.text == "20.5 cm"
    assert ready.finished_height.value == ready.finished_width.value * square_root(3) / 2
    assert [problem.code.name for problem in size_project(project(HEXAGON, unit=Unit.CENTIMETRE)).problems] == []


@pytest.mark.parametrize("name", list(SHAPES))
@pytest.mark.parametrize("finish", [TURNED, BOUND], ids=["turned", "bound"])
def test_any_one_wrong_figure_is_noticed(name: str, finish: str) -> None:
    ready = sized(project(SHAPES[name], finish))
    cuts = cut_list(ready)
    missed = [
        mutant.change
        for mutant in mutants(ready.project, cuts, assembly_program(ready, cuts))
        if sew(ready.project, mutant.cuts, mutant.program).value is not None
    ]
    assert missed == []


def test_cut_to_size_it_needs_templates() -> None:
    ready = sized(project(HEXAGON, method="rotary"))
    assert ready.project.blocks[0].method is Method.ROTARY
    cuts = cut_list(ready)
    assert {cut.shape for cut in cuts.cuts if cut.part == "block:shell"} == {CutShape.TEMPLATE}
    assert sew(ready.project, cuts, assembly_program(ready, cuts)).value is not None


@pytest.mark.parametrize(("name", "edge"), [("hexagon", "bottom"), ("octagon", "bottom"), ("kite", "longest")])
def test_the_opening_is_left_in_an_edge_that_is_there(name: str, edge: str) -> None:
    ready = sized(project(SHAPES[name]))
    steps = assembly_program(ready, cut_list(ready)).steps
    (layer,) = [step.operation for step in steps if isinstance(step.operation, LayerTurned)]
    assert layer.opening_edge == edge


def test_an_opening_longer_than_every_edge_is_told() -> None:
    outcome = size_project(project(HEXAGON, TURNED.replace("opening: 2", "opening: 4")))
    assert [problem.code.name for problem in outcome.errors] == ["opening-longer-than-edge"]
    assert "no edge of the project is longer than 4 in" in outcome.errors[0].message


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (("rows: 1", "rows: 2"), "with others"),
        (("sizes:", "borders: {rim: {width: 1, fabric: fog}}\nsizes:"), "borders"),
        (("sizes:", "hanging: {kind: sleeve, fabric: fog}\nsizes:"), "hung"),
        (("{rows: 1, columns: 1, block: shell}", "{layout: [[shell turned 90]]}"), "turned or mirrored"),
        ((TURNED, "finish: {kind: knife edge, backing: {fabric: sea}}"), "turned or bound"),
    ],
)
def test_what_cannot_be_yet(change: tuple[str, str], words: str) -> None:
    outcome = size_project(project(HEXAGON.replace("FINISH", TURNED).replace(*change)))
    (problem,) = [problem for problem in outcome.errors if problem.code.name == "not-yet"]
    assert words in problem.message and "whole project" in problem.hint
    assert problem.place is not None and problem.place.line == 10


def test_a_block_that_is_not_used_may_have_any_outline() -> None:
    plain = project(HEXAGON)
    other = replace(plain.blocks[0], id="other", name="Other")
    assert size_project(replace(plain, blocks=(*plain.blocks, other))).value is not None
