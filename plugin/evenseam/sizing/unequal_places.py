"""Where the blocks, spacers and sashing of unequal rows lie in the finished top."""

from __future__ import annotations

from fractions import Fraction

from evenseam.geometry import Point, Polygon
from evenseam.pattern import BlockPosition, Project
from evenseam.sizing.centre import standing_size, strips_between
from evenseam.sizing.sized import Placed
from evenseam.sizing.standing_shapes import stand
from evenseam.sizing.unequal_rows import Sash, UnequalCentre


def place_unequal_rows(project: Project, centre: UnequalCentre, corner: Point) -> list[Placed]:
    """Return the pieces of the centre; `corner` is its top left corner on the page."""
    placed: list[Placed] = []
    top, sashing = corner.y, project.arrangement.sashing
    strips = strips_between(len(centre.rows), sashing)
    is_around = sashing is not None and sashing.is_around
    wide = centre.width.value - 2 * project.seam_allowance.value
    for number in range(len(centre.rows) + 1):
        if sashing is not None and strips and (is_around or 0 < number < len(centre.rows)):
            between = Polygon.rectangle(corner.x, top, wide, sashing.width.value)
            placed.append(Placed(between, sashing.fabric, "sashing"))
            top = top + sashing.width.value
        if number == len(centre.rows):
            break
        row = centre.rows[number]
        left, column = corner.x + Fraction(0), 0
        for part in row.parts:
            if isinstance(part, BlockPosition):
                step = Point(left, top)
                placed += [
                    Placed(outline.moved(step), fabric, f"block:{part.block}", number, column)
                    for fabric, outline in stand(project.block(part.block), part)
                ]
                left, column = left + standing_size(project, part)[0].value, column + 1
            else:
                strip = Polygon.rectangle(left, top, part.width.value, row.height.value)
                placed.append(Placed(strip, part.fabric, "sashing" if isinstance(part, Sash) else "spacer"))
                left = left + part.width.value
        top = top + row.height.value
    return placed
