"""Where every visible piece of the finished top lies, for the finished picture."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from evenseam.exact import Number
from evenseam.geometry import Point, Polygon
from evenseam.pattern import BlockPosition, Bound, Project
from evenseam.sizing.any_centre import AnyCentre
from evenseam.sizing.border_places import place_border
from evenseam.sizing.centre import Centre
from evenseam.sizing.edge_places import place_binding
from evenseam.sizing.on_point import OnPointCentre
from evenseam.sizing.on_point_places import place_on_point
from evenseam.sizing.sized import Placed
from evenseam.sizing.sized_border import AnyBorder
from evenseam.sizing.standing_shapes import stand
from evenseam.sizing.unequal_places import place_unequal_rows
from evenseam.sizing.unequal_rows import UnequalCentre


def place_pieces(project: Project, centre: AnyCentre, borders: tuple[AnyBorder, ...]) -> tuple[Placed, ...]:
    """Return the pieces of the top as they are seen, from the top left corner of the finished project.

    Every piece shows at its finished size: a turned edge lies on the outer seam line, and a binding covers exactly
    the outer seam allowance and is placed as a frame of four strips with mitred corners.
    """
    edge: Number = project.seam_allowance.value if isinstance(project.finish, Bound) else Fraction(0)
    corner = Point(edge + _sum(border.across for border in borders), edge + _sum(border.down for border in borders))
    if isinstance(centre, OnPointCentre):
        placed = place_on_point(project, centre, corner)
    elif isinstance(centre, UnequalCentre):
        placed = place_unequal_rows(project, centre, corner)
    else:
        placed = [*_blocks(project, centre, corner), *_sashing(centre, corner)]
    outer = corner
    for border in borders:
        outer = outer - Point(border.across, border.down)
        placed += place_border(project, border, outer)
    if isinstance(project.finish, Bound):
        last = borders[-1] if borders else centre
        placed = place_binding(project.finish, project.seam_allowance, placed, last.width.value, last.height.value)
    return tuple(placed)


def _sum(numbers: Iterable[Number]) -> Number:
    total: Number = Fraction(0)
    for number in numbers:
        total = total + number
    return total


def _blocks(project: Project, centre: Centre, corner: Point) -> list[Placed]:
    shapes: dict[BlockPosition, tuple[tuple[str, Polygon], ...]] = {}
    placed = []
    for row, positions in enumerate(project.arrangement.positions):
        for column, position in enumerate(positions):
            if position not in shapes:
                shapes[position] = stand(project.block(position.block), position)
            step = corner + Point(centre.left(column), centre.top(row))
            placed += [
                Placed(outline.moved(step), fabric, f"block:{position.block}", row, column)
                for fabric, outline in shapes[position]
            ]
    return placed


def _sashing(centre: Centre, corner: Point) -> list[Placed]:
    sashing = centre.sashing
    if sashing is None:
        return []
    sash, width, height = sashing.width.value, centre.block_width.value, centre.block_height.value
    fabric, cornerstone = sashing.fabric, sashing.cornerstone_fabric or sashing.fabric
    shift = 0 if sashing.is_around else 1
    lefts = [centre.left(column + shift) - sash for column in range(centre.sashes_in_row)]
    tops = [centre.top(row + shift) - sash for row in range(centre.sashing_rows)]
    found: list[tuple[Polygon, str, str]] = []
    for row in range(centre.rows):
        found += [(Polygon.rectangle(left, centre.top(row), sash, height), fabric, "sashing") for left in lefts]
    for top in tops:
        if not centre.has_cornerstones:
            whole = centre.left(centre.columns - 1) + width + (sash if sashing.is_around else 0)
            found.append((Polygon.rectangle(Fraction(0), top, whole, sash), fabric, "sashing"))
            continue
        found += [
            (Polygon.rectangle(centre.left(column), top, width, sash), fabric, "sashing")
            for column in range(centre.columns)
        ]
        found += [(Polygon.rectangle(left, top, sash, sash), cornerstone, "cornerstone") for left in lefts]
    return [Placed(outline.moved(corner), cloth, part) for outline, cloth, part in found]
