"""Where the blocks and spacers of unequal rows lie in the finished top."""

from __future__ import annotations

from evenseam.geometry import Point, Polygon
from evenseam.pattern import BlockPosition, Project
from evenseam.sizing.centre import standing_size
from evenseam.sizing.sized import Placed
from evenseam.sizing.standing_shapes import stand
from evenseam.sizing.unequal_rows import UnequalCentre


def place_unequal_rows(project: Project, centre: UnequalCentre, corner: Point) -> list[Placed]:
    """Return the pieces of the centre; `corner` is its top left corner on the page."""
    placed: list[Placed] = []
    top = corner.y
    for number, row in enumerate(centre.rows):
        left, column = corner.x, 0
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
                placed.append(Placed(strip, part.fabric, "spacer"))
                left = left + part.width.value
        top = top + row.height.value
    return placed
