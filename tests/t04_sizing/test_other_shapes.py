"""Blocks that are no rectangles are told of, not sized wrongly."""

from __future__ import annotations

from evenseam.pattern import Project
from evenseam.problems import SourceText
from evenseam.reading import read_pattern
from evenseam.sizing import size_project

HEXAGON = """\
format: 1
title: Sample
fabrics: {sea: {colour: "#23465f"}, fog: {colour: "#d9dcd6"}}
blocks:
  float:
    shape: hexagon
    finished size: 8
    grid: 8 x 8
    pieces:
      - fog: 2,0 6,0 8,4 0,4
      - sea: 8,4 6,8 2,8 0,4
arrangement: {rows: 1, columns: 1, block: float}
finish: {kind: turned, backing: {fabric: sea}}
sizes: {mat: {}}
"""


def project() -> Project:
    pattern = read_pattern("sample", SourceText("pattern.yaml", HEXAGON)).value
    assert pattern is not None
    return pattern.projects[0]


def test_a_hexagon_cannot_be_arranged_yet() -> None:
    outcome = size_project(project())
    assert outcome.value is None
    assert [problem.code.name for problem in outcome.errors] == ["not-yet"]
    assert outcome.errors[0].place is not None and outcome.errors[0].place.line == 5
