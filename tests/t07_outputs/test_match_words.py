"""Seams that meet at a join are named in its step, so that a maker pins them first."""

from __future__ import annotations

from evenseam.problems import SourceText
from evenseam.reading import read_pattern
from evenseam.sheet import PatternSheet, compute_sheet
from evenseam.wording import write_document
from support.document_words import as_text

FOUR_PATCH = """
format: 1
title: Four Patch
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
blocks:
  patch:
    finished size: 6
    method: METHOD
    grid: 4 x 4
    pieces:
      - sea: 0,0 2,0 2,2 0,2
      - fog: 2,0 4,0 4,2 2,2
      - fog: 0,2 MIDDLE,2 MIDDLE,4 0,4
      - sea: MIDDLE,2 4,2 4,4 MIDDLE,4
arrangement: {rows: 1, columns: 1, block: patch}
finish: {kind: turned, backing: {fabric: sea}}
sizes: {mat: {}}
"""


def sheet(method: str, middle: str) -> PatternSheet:
    text = FOUR_PATCH.replace("METHOD", method).replace("MIDDLE", middle)
    pattern = read_pattern("patch", SourceText("pattern.yaml", text)).value
    assert pattern is not None
    found = compute_sheet(pattern, pattern.projects[0]).value
    assert found is not None
    return found


def words(ready: PatternSheet) -> str:
    document = write_document(ready).value
    assert document is not None
    return " ".join(as_text(document).split())


def test_pieces_cut_to_size() -> None:
    told = words(sheet("rotary", "2"))
    assert told.count("Match the seam between") == 1
    assert "Match the seam between A and B to the seam between C and D, and pin there first." in told


def test_sections_on_paper() -> None:
    told = words(sheet("foundation", "2"))
    assert "Match the seam between A1 and A2 to the seam between B1 and B2, and pin there first." in told


def test_seams_that_do_not_meet_are_not_matched() -> None:
    assert "Match the seam" not in words(sheet("rotary", "1"))
