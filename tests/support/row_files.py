"""Pattern files of rows of unequal blocks, read."""

from __future__ import annotations

from evenseam.pattern import Project
from evenseam.problems import SourceText
from evenseam.reading import read_pattern

HEAD = """\
format: 1
title: Sample
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
  reed: {colour: "#7a8b69", directional: yes}
blocks:
"""
TAIL = """\
finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: sea}}
sizes: {wall hanging: {}}
"""
BOATS = """\
  ketch: {finished size: 6 x 8, method: rotary, grid: 1 x 1, pieces: [sea: "0,0 1,0 1,1 0,1"]}
  buoy: {finished size: 3 x 8, method: rotary, grid: 1 x 1, pieces: [sea: "0,0 1,0 1,1 0,1"]}
  gull: {finished size: 4 x 4, grid: 2 x 2, pieces: [sea: "0,0 2,0 2,2", fog: "0,0 2,2 0,2"]}
"""


def read(rows: str, blocks: str = BOATS) -> Project:
    """Return the only project of a file with these rows."""
    outcome = read_pattern(
        "sample", SourceText("pattern.yaml", f"{HEAD}{blocks}arrangement:\n  unequal rows:\n{rows}{TAIL}")
    )
    assert outcome.value is not None, outcome.problems
    (project,) = outcome.value.projects
    return project
