"""Blocks that are mirrored, or turned with a directional print, become blocks of their own."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evenseam.pattern import Block, BlockPiece, BlockPosition, Project
from evenseam.sizing import cut_list
from evenseam.sizing.standing import draw_standing
from hypothesis import given, settings
from support.samples import CONVEX_LANTERN, MUG_RUG, grid, polygon
from support.strategies import projects
from support.tops import sized

PENNANT = replace(
    CONVEX_LANTERN, id="pennant", name="Pennant",
    pieces=(BlockPiece("p1", "sea", polygon("0,0 12,0 0,18")), BlockPiece("p2", "fog", polygon("12,0 12,18 0,18"))),
)  # fmt: skip
"""Not its own mirror image."""


def _standing(block: Block, *positions: BlockPosition, directional: str = "") -> Project:
    fabrics = tuple(replace(fabric, is_directional=fabric.id == directional) for fabric in MUG_RUG.fabrics)
    arrangement = replace(grid(1, len(positions), block.id), positions=(positions,))
    return replace(MUG_RUG, blocks=(block,), arrangement=arrangement, fabrics=fabrics)


def _corners(project: Project, block: str, piece: str) -> set[tuple[object, object]]:
    outline = next(each.outline for each in project.block(block).pieces if each.id == piece)
    return {(corner.x, corner.y) for corner in outline.corners}


def test_mirrored_block_is_drawn_mirrored() -> None:
    project = draw_standing(_standing(PENNANT, BlockPosition("pennant"), BlockPosition("pennant", 0, True)))
    assert project.arrangement.positions == ((BlockPosition("pennant"), BlockPosition("pennant-mirrored")),)
    assert project.block("pennant-mirrored").name == "mirrored Pennant"
    assert _corners(project, "pennant-mirrored", "p1") == {(0, 0), (12, 0), (12, 18)}


@pytest.mark.parametrize(("turns", "turned_back"), [(0, 0), (1, 3), (2, 2), (3, 1)])
def test_turned_and_then_mirrored_is_mirrored_and_turned_the_other_way(turns: int, turned_back: int) -> None:
    project = draw_standing(_standing(PENNANT, BlockPosition("pennant", turns, True)))
    assert project.arrangement.positions == ((BlockPosition("pennant-mirrored", turned_back),),)


def test_block_that_is_its_own_mirror_image_stays() -> None:
    project = draw_standing(_standing(CONVEX_LANTERN, BlockPosition("lantern", 0, True)))
    assert project.arrangement.positions == ((BlockPosition("lantern"),),)
    assert [block.id for block in project.blocks] == ["lantern"]


def test_print_of_a_turned_block_stands_upright() -> None:
    # A quarter turn clockwise takes the corner at the left bottom to the left top.
    project = draw_standing(_standing(PENNANT, BlockPosition("pennant", 1), directional="sea"))
    assert project.arrangement.positions == ((BlockPosition("pennant-turned-90"),),)
    turned = project.block("pennant-turned-90")
    assert (turned.width, turned.height) == (PENNANT.height, PENNANT.width)
    assert (turned.grid_width, turned.grid_height) == (18, 12)
    assert _corners(project, "pennant-turned-90", "p1") == {(18, 0), (18, 12), (0, 0)}
    cut = next(cut for cut in cut_list(sized(project)).cuts if cut.material == "sea" and cut.part.startswith("block:"))
    # 9 wide and 6 high as it stands, with 1/2 on every side.
    assert (cut.width.number, cut.height.number, cut.is_upright) == ("10", "7", True)


def test_turned_block_without_directional_print_is_only_turned() -> None:
    project = _standing(PENNANT, BlockPosition("pennant", 1), directional="lamp")
    assert draw_standing(project) is project


def test_turned_block_is_seen_turned_clockwise() -> None:
    # The sea half lies at the left top; after a quarter turn clockwise it lies at the right top, 9 wide and 6 high.
    result = sized(replace(_standing(PENNANT, BlockPosition("pennant", 1)), borders=()))
    sea = next(placed.outline for placed in result.placed if placed.fabric == "sea")
    assert {(corner.x, corner.y) for corner in sea.corners} == {(0, 0), (9, 0), (9, 6)}


def test_name_that_is_taken_is_not_taken_again() -> None:
    other = replace(CONVEX_LANTERN, id="pennant-mirrored")
    project = _standing(PENNANT, BlockPosition("pennant", 0, True))
    made = draw_standing(replace(project, blocks=(PENNANT, other)))
    assert made.arrangement.positions == ((BlockPosition("pennant-mirrored-again"),),)
    assert made.block("pennant-mirrored") == other


@settings(max_examples=40)
@given(projects())
def test_the_look_of_the_project_does_not_change(project: Project) -> None:
    standing = draw_standing(project)
    assert not any(position.is_mirrored for row in standing.arrangement.positions for position in row)
    assert draw_standing(standing) == standing
    for before, after in zip(project.arrangement.positions, standing.arrangement.positions, strict=True):
        for old, new in zip(before, after, strict=True):
            assert _seen(project, old) == _seen(standing, new)


def _seen(project: Project, position: BlockPosition) -> set[tuple[str, frozenset[tuple[object, object]]]]:
    """Return fabrics and corners as they are seen: turned first, then mirrored, by plain arithmetic on pairs."""
    block = project.block(position.block)
    pieces = [(piece.fabric, [(corner.x, corner.y) for corner in piece.outline.corners]) for piece in block.pieces]
    width, height = block.grid_width, block.grid_height
    for _ in range(position.quarter_turns % 4):
        pieces = [(fabric, [(height - y, x) for x, y in corners]) for fabric, corners in pieces]
        width, height = height, width
    if position.is_mirrored:
        pieces = [(fabric, [(width - x, y) for x, y in corners]) for fabric, corners in pieces]
    return {(fabric, frozenset(corners)) for fabric, corners in pieces}
