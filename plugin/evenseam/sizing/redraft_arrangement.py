"""An arrangement with every length on the ruler of its edition."""

from __future__ import annotations

from dataclasses import replace

from evenseam.pattern import Arrangement, SettingTriangles, Spacer, UnequalRow
from evenseam.sizing.ruler import Ruler


def redraft_arrangement(arrangement: Arrangement, ruler: Ruler) -> Arrangement:
    """Return the arrangement with every length in the unit of the ruler."""
    if arrangement.sashing:
        sashing = replace(arrangement.sashing, width=ruler.finished(arrangement.sashing.width))
        arrangement = replace(arrangement, sashing=sashing)
    triangles = arrangement.setting_triangles
    if triangles:
        arrangement = replace(arrangement, setting_triangles=_triangles(triangles, ruler))
    if arrangement.unequal_rows:
        arrangement = replace(arrangement, unequal_rows=tuple(_row(row, ruler) for row in arrangement.unequal_rows))
    return arrangement


def _row(row: UnequalRow, ruler: Ruler) -> UnequalRow:
    return replace(
        row,
        parts=tuple(
            replace(part, width=ruler.finished(part.width)) if isinstance(part, Spacer) and part.width else part
            for part in row.parts
        ),
    )


def _triangles(triangles: SettingTriangles, ruler: Ruler) -> SettingTriangles:
    height = triangles.float_height
    return replace(
        triangles,
        float_width=ruler.finished(triangles.float_width),
        float_height=ruler.finished(height) if height else None,
        least_float=ruler.finished(triangles.least_float) if triangles.least_float else None,
    )
