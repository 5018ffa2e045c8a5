"""Borders as they are written: mitred, passing, and made of blocks; in sizes and editions as well."""

from __future__ import annotations

from fractions import Fraction

import jsonschema
import pytest
import yaml
from evenseam.exact import Unit
from evenseam.pattern import BorderCorners, Given, PiecedBorder
from evenseam.reading import schema
from support.pattern_texts import pattern_from, read

TEXT = """\
format: 1
title: Sample
units: inches
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
  lamp: {colour: "#e9b44c"}
blocks:
  buoy:
    finished size: 6 x 6
    grid: 4 x 4
    pieces:
      - sea: 0,0 4,0 4,4
      - fog: 0,0 4,4 0,4
  pennant:
    finished size: 3 x 2
    grid: 3 x 2
    pieces:
      - sea: 0,0 3,0 0,2
      - fog: 3,0 3,2 0,2
  knot:
    finished size: 2 x 2
    grid: 2 x 2
    pieces:
      - lamp: 0,0 2,0 0,2
      - fog: 2,0 2,2 0,2
arrangement: {rows: 1, columns: 1, block: buoy}
borders:
  inner border: {width: 1, fabric: lamp, corners: mitred, ease: 6}
  ring of pennants:
    corner fabric: lamp
    pieced: {block: pennant, corner block: knot, spacer: fog, least spacer: 3/4}
  last border: {width: 2, fabric: sea, corners: partial seam}
finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: sea}}
editions: [inches, centimetres]
sizes:
  cushion: {}
  mat:
    borders:
      inner border: none
      last border: {corners: mitred}
      ring of pennants: {width: 2, fabric: fog}
  rug:
    borders:
      last border:
        corner fabric: lamp
        pieced: {block: pennant}
    editions:
      centimetres:
        borders:
          inner border: {ease: 12}
          ring of pennants:
            pieced: {least spacer: 2}
"""
PATTERN = pattern_from(TEXT)


def test_mitred_border_with_its_ease() -> None:
    inner = PATTERN.project("cushion", Unit.INCH).borders[0]
    assert inner.corners is BorderCorners.MITRED
    assert inner.ease is not None and inner.ease.text == "6 in"
    assert isinstance(inner.ease.because, Given)


def test_strips_past_one_corner() -> None:
    last = PATTERN.project("cushion", Unit.INCH).borders[2]
    assert last.corners is BorderCorners.PARTIAL_SEAM
    assert last.ease is None


def test_border_of_blocks_is_as_wide_as_its_blocks_are_high() -> None:
    ring = PATTERN.project("cushion", Unit.INCH).borders[1]
    assert ring.width.text == "2 in"
    assert ring.pieced is not None and ring.pieced.least_spacer is not None
    assert (ring.pieced.block, ring.pieced.corner_block, ring.pieced.spacer_fabric) == ("pennant", "knot", "fog")
    assert ring.pieced.least_spacer.value == Fraction(3, 4)
    assert ring.corner_fabric == "lamp"


def test_blocks_of_borders_belong_to_the_size() -> None:
    assert [block.id for block in PATTERN.project("cushion", Unit.INCH).blocks] == ["buoy", "pennant", "knot"]
    assert [block.id for block in PATTERN.project("mat", Unit.INCH).blocks] == ["buoy"]


def test_a_size_may_say_strips_in_place_of_blocks_and_blocks_in_place_of_strips() -> None:
    mat, rug = (PATTERN.project(size, Unit.INCH).borders for size in ("mat", "rug"))
    assert [(border.id, border.pieced, border.width.text) for border in mat] == [
        ("ring-of-pennants", None, "2 in"), ("last-border", None, "2 in"),
    ]  # fmt: skip
    assert mat[1].corners is BorderCorners.MITRED
    assert rug[2].pieced == PiecedBorder("pennant", None, None)
    assert rug[2].corner_fabric == "lamp"


def test_an_edition_says_its_own_ease_and_spacer() -> None:
    inner, ring, _ = PATTERN.project("rug", Unit.CENTIMETRE).borders
    assert inner.ease is not None and inner.ease.text == "12 cm"
    assert ring.pieced is not None and ring.pieced.least_spacer is not None
    assert ring.pieced.least_spacer.text == "2 cm"
    assert ring.pieced.block == "pennant"


@pytest.mark.parametrize("key", ["width: 2", "fabric: sea", "order: short sides first", "corners: mitred", "ease: 2"])
def test_what_is_said_of_strips_cannot_be_said_of_blocks(key: str) -> None:
    text = TEXT.replace("    corner fabric: lamp\n    pieced", f"    corner fabric: lamp\n    {key}\n    pieced", 1)
    outcome = read(text)
    assert outcome.value is None
    assert "said-two-ways" in {problem.code.name for problem in outcome.problems}


def test_schema_knows_the_keys() -> None:
    validator = jsonschema.Draft202012Validator(schema())
    document = yaml.load(TEXT, yaml.BaseLoader)
    del document["format"]  # a number in the file, a text to this loader
    assert [fault.message for fault in validator.iter_errors(document) if "format" not in fault.message] == []
    document["borders"]["last border"]["corners"] = "rounded"
    assert list(validator.iter_errors(document))
