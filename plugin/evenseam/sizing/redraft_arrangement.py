"""An arrangement with every length on the ruler of its edition, and plain blocks as large as those they lie beside."""

from __future__ import annotations

from dataclasses import replace

from evenseam.pattern import Arrangement, Block, SettingTriangles
from evenseam.sizing.ruler import Ruler


def redraft_arrangement(arrangement: Arrangement, ruler: Ruler) -> Arrangement:
    """Return the arrangement with every length in the unit of the ruler."""
    if arrangement.sashing:
        sashing = replace(arrangement.sashing, width=ruler.finished(arrangement.sashing.width))
        arrangement = replace(arrangement, sashing=sashing)
    triangles = arrangement.setting_triangles
    if triangles:
        arrangement = replace(arrangement, setting_triangles=_triangles(triangles, ruler))
    return arrangement


def redraft_plain_blocks(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """Return the blocks, plain ones at the size of the block they lie beside."""
    sizes = {block.id: (block.width, block.height) for block in blocks}
    return tuple(
        replace(block, width=sizes[block.plain_beside][0], height=sizes[block.plain_beside][1])
        if block.plain_beside is not None
        else block
        for block in blocks
    )


def _triangles(triangles: SettingTriangles, ruler: Ruler) -> SettingTriangles:
    height = triangles.float_height
    return replace(
        triangles,
        float_width=ruler.finished(triangles.float_width),
        float_height=ruler.finished(height) if height else None,
    )
