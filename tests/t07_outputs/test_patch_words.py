"""Which edge of a patch goes along the seam, against a reference library that turns the piece until its seam lies level."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from evenseam.pattern import PieceSection
from evenseam.problems import SourceText
from evenseam.publish.checked import check_pattern
from evenseam.publish.sources import PatternSource
from evenseam.wording.patch_words import section_patches
from shapely import Polygon
from shapely.affinity import rotate

# A post of two tall pieces, the second sewn to the end of the first, and a level slat below them.
TEXT = """\
format: 1
title: Post
summary: A post in the mud.
version: "1.0"
fabrics:
  sky: {name: Sky, colour: "#cfe0e6"@SKY@}
  sea: {name: Sea, colour: "#3f7f7a"}
blocks:
  post:
    finished size: 2 x 9
    grid: 2 x 9
    pieces:
      - sea: 0,0 2,0 2,3 0,3
      - sky: 0,3 2,3 2,8 0,8
      - sea: 0,8 2,8 2,9 0,9
arrangement: {rows: 1, columns: 1, block: post}
finish: {kind: turned, backing: {fabric: sea}}
sizes:
  mug rug: {}
"""
PATTERNS = sorted((Path(__file__).parents[2] / "patterns").glob("*/pattern.yaml"))


def sheets(text: str):
    source = PatternSource("post", SourceText("pattern.yaml", text), {})
    return check_pattern(source).sheets


def level_box(sheet, block: str, member, piece: str) -> tuple[float, float]:
    """Return width and height of a piece's reach when its seam lies level."""
    drawn = sheet.project.block(block)
    across, down = (float(scale) for scale in drawn.scale)
    outline = next(each for each in drawn.pieces if each.id == piece).outline
    shape = Polygon([(float(corner.x) * across, float(corner.y) * down) for corner in outline.corners])
    step = member.seam.end - member.seam.start
    level = rotate(shape, -math.degrees(math.atan2(float(step.y) * down, float(step.x) * across)), origin=(0, 0))
    left, top, right, bottom = level.bounds
    return right - left, bottom - top


def notes(sheet) -> list[str]:
    found = []
    for step in sheet.program.steps:
        if not isinstance(step.operation, PieceSection):
            continue
        piecing = step.operation
        pieced = next(each for each in sheet.blocks if each.block == piecing.block)
        members = {member.label: member for member in pieced.section(piecing.section).pieces}
        pieces = {patch.label: patch.piece for patch in piecing.patches}
        for words in section_patches(sheet, piecing):
            found.append(words["lies"])
            member = members[words["label"]]
            if words["lies"] == "upright" or member.seam is None:
                continue
            wide, high = level_box(sheet, piecing.block, member, pieces[words["label"]])
            if words["width"].value == words["height"].value:
                assert words["lies"] == "", "a square patch lies either way"
            else:
                assert words["lies"] == ("short" if wide < high - 1e-9 else ""), words["label"]
    return found


def test_each_kind_of_note_is_made_where_it_is_due() -> None:
    (sheet, *_) = sheets(TEXT.replace("@SKY@", ""))
    assert set(notes(sheet)) == {"", "short"}


def test_a_print_with_an_up_stands_upright() -> None:
    (sheet, *_) = sheets(TEXT.replace("@SKY@", ", directional: yes"))
    assert notes(sheet).count("upright") == 1


@pytest.mark.parametrize("path", PATTERNS, ids=lambda path: path.parent.name)
def test_the_demo_patterns_agree(path: Path) -> None:
    drawings = {file.name: SourceText(file.as_posix(), file.read_text("utf-8")) for file in path.parent.glob("*.svg")}
    source = PatternSource(path.parent.name, SourceText(path.as_posix(), path.read_text("utf-8")), drawings)
    (sheet, *_) = check_pattern(source).sheets
    notes(sheet)
