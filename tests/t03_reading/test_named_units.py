"""Blocks of named units, and hexagons: what they expand to."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import square_root
from evenseam.pattern import Block, Pattern
from evenseam.piecing import piece_block, section_templates
from evenseam.problems import SourceText, show_problems
from evenseam.reading import read_pattern
from evenseam.reading.named_units import KINDS
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon as Reference
from shapely import unary_union
from support.samples import length

HEAD = """\
format: 1
title: Sample
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
  lamp: {colour: "#e9b44c"}
  reed: {colour: "#7a8b69"}
blocks:
  buoy:
"""
TAIL = """
arrangement: {rows: 1, columns: 1, block: buoy}
finish: {kind: turned, backing: {fabric: sea}}
sizes:
  mat: {}
"""


def pattern_of(lines: str, drawings: dict[str, SourceText] | None = None) -> Pattern:
    text = SourceText("pattern.yaml", HEAD + "\n".join("    " + line for line in lines.splitlines()) + TAIL)
    outcome = read_pattern("sample", text, drawings or {})
    assert outcome.value is not None, show_problems(outcome.problems, {text.name: text})
    return outcome.value


def block_of(lines: str, drawings: dict[str, SourceText] | None = None) -> Block:
    return pattern_of(lines, drawings).projects[0].blocks[0]


def as_text(block: Block) -> set[str]:
    """Return each piece as its fabric and its corners, the smallest first."""
    found = set()
    for piece in block.pieces:
        corners = [(p.x, p.y) for p in piece.outline.corners]
        first = corners.index(min(corners))  # type: ignore[type-var]
        ordered = [*corners[first:], *corners[:first]]
        found.add(" ".join([piece.fabric, *(f"{x},{y}" for x, y in ordered)]))
    return found


# The shapes of the units as the trade draws them; the turns are clockwise.
UNITS = {
    "square sea": {"sea 0,0 1,0 1,1 0,1"},
    "2 x 1 square sea": {"sea 0,0 2,0 2,1 0,1"},
    "rectangle fog": {"fog 0,0 2,0 2,1 0,1"},
    "rectangle fog turned 90": {"fog 0,0 1,0 1,2 0,2"},
    "half-square sea/fog": {"sea 0,0 1,0 0,1", "fog 0,1 1,0 1,1"},
    "half-square sea/fog turned 90": {"sea 0,0 1,0 1,1", "fog 0,0 1,1 0,1"},
    "half-square sea/fog turned 180": {"fog 0,0 1,0 0,1", "sea 0,1 1,0 1,1"},
    "half-square sea/fog turned 270": {"fog 0,0 1,0 1,1", "sea 0,0 1,1 0,1"},
    "quarter-square sea/fog": {"sea 0,0 1,0 1/2,1/2", "fog 1/2,1/2 1,0 1,1", "sea 0,1 1/2,1/2 1,1", "fog 0,0 1/2,1/2 0,1"},
    "quarter-square sea/fog/lamp/reed": {"sea 0,0 1,0 1/2,1/2", "fog 1/2,1/2 1,0 1,1", "lamp 0,1 1/2,1/2 1,1", "reed 0,0 1/2,1/2 0,1"},
    "geese sea/fog": {"fog 0,0 1,0 0,1", "sea 0,1 1,0 2,1", "fog 1,0 2,0 2,1"},
    "geese sea/fog turned 90": {"fog 0,0 1,0 1,1", "sea 0,0 1,1 0,2", "fog 0,2 1,1 1,2"},
    "geese sea/fog turned 180": {"fog 0,0 1,1 0,1", "sea 0,0 2,0 1,1", "fog 1,1 2,0 2,1"},
    "square in a square sea/fog": {
        "fog 0,0 1/2,0 0,1/2", "fog 1/2,0 1,0 1,1/2", "sea 0,1/2 1/2,0 1,1/2 1/2,1", "fog 0,1/2 1/2,1 0,1", "fog 1/2,1 1,1/2 1,1",
    },
    "snowball corner sea/fog": {"fog 0,0 1/2,0 0,1/2", "sea 0,1/2 1/2,0 1,0 1,1 0,1"},
    "snowball corner sea/fog turned 180": {"fog 1/2,1 1,1/2 1,1", "sea 0,0 1,0 1,1/2 1/2,1 0,1"},
    "3 x 3 snowball sea/fog": {
        "fog 0,0 1,0 0,1", "fog 2,0 3,0 3,1", "sea 0,1 1,0 2,0 3,1 3,2 2,3 1,3 0,2", "fog 0,2 1,3 0,3", "fog 2,3 3,2 3,3",
    },
}  # fmt: skip


@pytest.mark.parametrize("unit", UNITS)
def test_one_unit(unit: str) -> None:
    assert as_text(block_of(f"finished size: 4\nunits: [[{unit}]]")) == UNITS[unit] or " x " in unit
    size = "4 x 2" if len(UNITS[unit]) == 1 and "square" not in unit else "4"
    assert as_text(block_of(f"finished size: {size}\nunits: [[{unit}]]")) == UNITS[unit]


def test_a_star_of_units() -> None:
    """Units two squares high fill the row below them, so that the third row stands at the bottom."""
    block = block_of(
        "finished size: 8\nunits:\n"
        "  - [square fog, geese fog/sea turned 180, square fog]\n"
        "  - [geese fog/sea turned 90, 2 x 2 square lamp, geese fog/sea turned 270]\n"
        "  - [square fog, geese fog/sea, square fog]"
    )
    assert (block.grid_width, block.grid_height) == (4, 4)
    assert len(block.pieces) == 17
    assert "lamp 1,1 3,1 3,3 1,3" in as_text(block)
    assert piece_block(block).value is not None


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_rows_of_any_units_fill_their_grid(data: st.DataObject) -> None:
    """Checked by a general-purpose library: areas add up, nothing overlaps."""
    names = {1: [kind.name for kind in KINDS if kind.width == 1], 2: ["geese", "rectangle"]}
    rows = []
    for _ in range(data.draw(st.integers(1, 4))):
        row, left = [], 4
        while left:
            width = data.draw(st.integers(1, min(2, left)))
            name = data.draw(st.sampled_from(names[width]))
            kind = next(kind for kind in KINDS if kind.name == name)
            fabrics = "/".join(data.draw(st.sampled_from(["sea", "fog", "lamp"])) for _ in range(kind.fabrics[-1]))
            turn = data.draw(
                st.sampled_from(["", " turned 180"] if width == 2 else ["", " turned 90", " turned 180", " turned 270"])
            )
            row.append(f"{name} {fabrics}{turn}")
            left -= width
        rows.append(f"  - [{', '.join(row)}]")
    block = block_of(f"finished size: 4 x {len(rows)}\nunits:\n" + "\n".join(rows))
    shapes = [Reference([(float(p.x), float(p.y)) for p in piece.outline.corners]) for piece in block.pieces]
    assert abs(sum(shape.area for shape in shapes) - 4 * len(rows)) < 1e-9
    assert abs(unary_union(shapes).area - 4 * len(rows)) < 1e-9


HEXAGON = """\
shape: hexagon
finished size: 8
grid: 8 x 8
pieces:
  - fog: 2,0 6,0 4,4
  - sea: 6,0 8,4 4,4
  - fog: 8,4 6,8 4,4
  - lamp: 6,8 2,8 4,4
  - sea: 2,8 0,4 4,4
  - lamp: 0,4 2,0 4,4"""


def test_a_hexagon_has_equal_sides() -> None:
    block = block_of(HEXAGON)
    across, down = block.scale
    assert block.height.value == 4 * square_root(3)
    for start, end in block.outline.scaled(across, down).edges:
        step = end - start
        assert step.dot(step) == 16
    for piece in block.pieces:
        for start, end in piece.outline.scaled(across, down).edges:
            step = end - start
            assert step.dot(step) == 16, "six triangles with equal sides"


def test_a_hexagon_is_pieced_and_has_templates() -> None:
    block = block_of(HEXAGON)
    pieced = piece_block(block).value
    assert pieced is not None
    assert len(pieced.sections) == 2
    templates = section_templates(block, pieced, length("seam allowance", "1/4"))
    area = sum((template.outline.area for template in templates), start=Fraction(0))
    assert area == block.outline.scaled(*block.scale).area == 24 * square_root(3)


def test_a_hexagon_may_be_a_drawing() -> None:
    """Drawn to scale, with the rows √3/2 as high as the squares are wide."""
    rows = 0.8660254037844386
    spots = {
        "fog": "2,0 6,0 4,4",
        "sea": "6,0 8,4 4,4",
        "reed": "8,4 6,8 4,4",
        "lamp": "6,8 2,8 4,4",
        "x": "2,8 0,4 4,4",
        "y": "0,4 2,0 4,4",
    }
    body = "".join(
        f'<polygon class="{fabric if fabric not in "xy" else "sea"}" points="'
        + " ".join(f"{x},{float(y) * rows:.5f}" for x, y in (spot.split(",") for spot in corners.split()))
        + '"/>'
        for fabric, corners in spots.items()
    )
    drawing = SourceText("hexagon.svg", f'<svg xmlns="http://www.w3.org/2000/svg">{body}</svg>')
    lines = HEXAGON.partition("pieces:")[0] + "drawing: hexagon.svg"
    block = block_of(lines, {drawing.name: drawing})
    corners = {frozenset((p.x, p.y) for p in piece.outline.corners) for piece in block.pieces}
    assert corners == {frozenset((p.x, p.y) for p in piece.outline.corners) for piece in block_of(HEXAGON).pieces}


def test_a_size_may_draw_a_block_anew() -> None:
    text = (
        HEAD
        + "    finished size: 4\n    grid: 2 x 2\n    pieces:\n      - sea: 0,0 2,0 2,2\n      - fog: 0,0 2,2 0,2"
        + TAIL
    )
    text = text.replace(
        "sizes:\n  mat: {}",
        "sizes:\n  mat: {}\n  large:\n    blocks: {buoy: {units: [[square sea, square fog]], finished size: 8 x 4}}",
    )
    outcome = read_pattern("sample", SourceText("pattern.yaml", text))
    assert outcome.value is not None, show_problems(outcome.problems, {})
    assert [len(project.blocks[0].pieces) for project in outcome.value.projects] == [2, 2]
    assert outcome.value.projects[1].blocks[0].grid_height == 1
