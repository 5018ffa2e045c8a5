"""Blocks that cannot simply be sewn and then turned become blocks of their own, drawn as they stand.

A mirrored block needs mirrored templates and patches. A turned block that holds a directional fabric needs its
patches cut anew, because the print has to stand upright in the project.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block, BlockPosition, Border, Project, UnequalRow
from evenseam.sizing.border_blocks import standing_along, standing_corners


def draw_standing(project: Project) -> Project:
    """Return the project with a block of its own for every position that needs one; the others stay as they are.

    A position says how far its block is turned, and then that it is mirrored left to right; the mirrored block
    reaches the same place when it is turned the other way. A block that is its own mirror image needs no other.

    ::

        +--+   turned   +--+   mirrored   +--+
        |F |  ------->  |  |  --------->  |  |
        |  |            | F|              |F |
        +--+            +--+              +--+
    """
    stand_ins = _StandIns(project)
    positions = tuple(
        tuple(stand_ins.turn_print(stand_ins.mirror(position)) for position in row)
        for row in project.arrangement.positions
    )
    borders = tuple(stand_ins.stand_border(border) for border in project.borders)
    if positions == project.arrangement.positions and borders == project.borders:
        return project
    rows = _with_blocks(project.arrangement.unequal_rows, positions)
    arrangement = replace(project.arrangement, positions=positions, unequal_rows=rows)
    return replace(project, blocks=tuple(stand_ins.blocks.values()), arrangement=arrangement, borders=borders)


def _with_blocks(
    rows: tuple[UnequalRow, ...], positions: tuple[tuple[BlockPosition, ...], ...]
) -> tuple[UnequalRow, ...]:
    """Return rows of unequal blocks with other blocks in the same places."""
    found = []
    for row, blocks in zip(rows, positions, strict=False):
        left = iter(blocks)
        parts = tuple(next(left) if isinstance(part, BlockPosition) else part for part in row.parts)
        found.append(replace(row, parts=parts))
    return tuple(found)


class _StandIns:
    """The blocks of a project, and those that are drawn anew from them."""

    def __init__(self, project: Project) -> None:
        self.project = project
        self.blocks = {block.id: block for block in project.blocks}
        self._made: dict[tuple[str, str], str] = {}

    def mirror(self, position: BlockPosition) -> BlockPosition:
        """Return a position of the same look that is not mirrored."""
        if not position.is_mirrored:
            return position
        block = self.blocks[position.block]
        mirrored = _drawn(block, lambda point: Point(block.grid_width - point.x, point.y))
        turns = -position.quarter_turns % 4
        if _look(mirrored) == _look(block):
            return BlockPosition(block.id, turns)
        return BlockPosition(self._known(block, mirrored, "mirrored", f"mirrored {block.name}"), turns)

    def turn_print(self, position: BlockPosition) -> BlockPosition:
        """Return a position of the same look that is not turned, if its block holds a directional fabric."""
        block, turns = self.blocks[position.block], position.quarter_turns % 4
        if not turns or not any(self.project.fabric(piece.fabric).is_directional for piece in block.pieces):
            return replace(position, quarter_turns=turns)
        turned = block
        for _ in range(turns):
            turned = _quarter_turned(turned)
        degrees = 90 * turns
        return BlockPosition(self._known(block, turned, f"turned-{degrees}", f"{block.name} turned {degrees}°"))

    def stand_border(self, border: Border) -> Border:
        """Return a border whose blocks stand with their print upright on all four sides."""
        pieced = border.pieced
        if pieced is None:
            return border
        along = tuple(self.turn_print(position) for position in standing_along(pieced))
        corners = tuple(self.turn_print(position) for position in standing_corners(pieced))
        if along == standing_along(pieced) and corners == standing_corners(pieced):
            return border
        return replace(border, pieced=replace(pieced, standing=along, corners_standing=corners))

    def _known(self, block: Block, drawn: Block, how: str, name: str) -> str:
        """Return the id of a block drawn anew, entering it the first time."""
        if (block.id, how) not in self._made:
            id = f"{block.id}-{how}"
            while id in self.blocks:
                id += "-again"
            self._made[block.id, how] = id
            self.blocks[id] = replace(drawn, id=id, name=name)
        return self._made[block.id, how]


def _quarter_turned(block: Block) -> Block:
    # A quarter turn clockwise on the page takes (x, y) to (height - y, x).
    drawn = _drawn(block, lambda point: Point(block.grid_height - point.y, point.x))
    return replace(
        drawn, width=block.height, height=block.width, grid_width=block.grid_height, grid_height=block.grid_width
    )


def _drawn(block: Block, move: Callable[[Point], Point]) -> Block:
    def moved(outline: Polygon) -> Polygon:
        return Polygon(tuple(move(corner) for corner in outline.corners)).clockwise()

    pieces = tuple(replace(piece, outline=moved(piece.outline)) for piece in block.pieces)
    return replace(block, outline=moved(block.outline), pieces=pieces, drawn_in=None)


def _look(block: Block) -> frozenset[tuple[str, frozenset[tuple[Point, Point]]]]:
    """Return the fabrics and edges of a block, whatever the order and first corner of its pieces."""
    return frozenset((piece.fabric, frozenset(piece.outline.clockwise().edges)) for piece in block.pieces)
