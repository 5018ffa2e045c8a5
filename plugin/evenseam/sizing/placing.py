"""Where every visible piece of the finished top lies, for the finished picture."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from evenseam.exact import Number
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block, BlockPosition, BorderCorners, Bound, Project
from evenseam.sizing.borders import SizedBorder
from evenseam.sizing.centre import Centre
from evenseam.sizing.sized import Placed


def place_pieces(project: Project, centre: Centre, borders: tuple[SizedBorder, ...]) -> tuple[Placed, ...]:
    """Return the pieces of the top as they are seen, from the top left corner of the finished project.

    Every piece shows at its finished size: a turned edge lies on the outer seam line, and a binding covers exactly
    the outer seam allowance and is placed as a frame of four strips with mitred corners.
    """
    edge: Number = project.seam_allowance.value if isinstance(project.finish, Bound) else Fraction(0)
    inset = edge + _sum(border.border.width.value for border in borders)
    corner = Point(inset, inset)
    placed = [*_blocks(project, centre, corner), *_sashing(centre, corner)]
    left = inset
    seams = 2 * project.seam_allowance.value
    for border in borders:
        placed += _border(border, left, border.inside_width.value - seams, border.inside_height.value - seams)
        left = left - border.border.width.value
    if isinstance(project.finish, Bound):
        last = borders[-1] if borders else centre
        placed += _binding(project.finish.binding.fabric, edge, last.width.value, last.height.value)
    return tuple(placed)


def _sum(numbers: Iterable[Number]) -> Number:
    total: Number = Fraction(0)
    for number in numbers:
        total = total + number
    return total


def stand(block: Block, position: BlockPosition) -> tuple[tuple[str, Polygon], ...]:
    """Return the fabric and the outline of every piece of a block as it stands, from its own top left corner."""
    across, down = block.scale
    width, height = block.width.value, block.height.value
    pieces = [(piece.fabric, piece.outline.scaled(across, down)) for piece in block.pieces]
    for _ in range(position.quarter_turns % 4):
        # A quarter turn clockwise on the page takes (x, y) to (height - y, x).
        pieces = [
            (fabric, Polygon(tuple(Point(height - corner.y, corner.x) for corner in outline.corners)))
            for fabric, outline in pieces
        ]
        width, height = height, width
    return tuple(pieces)


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


def _border(border: SizedBorder, left: Number, width: Number, height: Number) -> list[Placed]:
    """Place the four strips round an inside whose top left corner is at (left, left)."""
    thick = border.border.width.value
    outer = left - thick
    stretch_down = border.border.corners is BorderCorners.BUTTED and not border.sides_first
    stretch_across = border.border.corners is BorderCorners.BUTTED and border.sides_first
    top_left, top_width = (outer, width + 2 * thick) if stretch_across else (left, width)
    side_top, side_height = (outer, height + 2 * thick) if stretch_down else (left, height)
    part = f"border:{border.border.id}"
    strips = [
        Polygon.rectangle(outer, side_top, thick, side_height),
        Polygon.rectangle(left + width, side_top, thick, side_height),
        Polygon.rectangle(top_left, outer, top_width, thick),
        Polygon.rectangle(top_left, left + height, top_width, thick),
    ]
    placed = [Placed(strip, border.border.fabric, part) for strip in strips]
    if border.border.corners is BorderCorners.CORNERSTONES:
        fabric = border.border.corner_fabric or border.border.fabric
        placed += [
            Placed(Polygon.rectangle(x, y, thick, thick), fabric, part)
            for y in (outer, left + height)
            for x in (outer, left + width)
        ]
    return placed


def _binding(fabric: str, edge: Number, width: Number, height: Number) -> list[Placed]:
    outer = Polygon.rectangle(Fraction(0), Fraction(0), width, height).corners
    inner = Polygon.rectangle(edge, edge, width - 2 * edge, height - 2 * edge).corners
    return [
        Placed(Polygon((outer[i], outer[(i + 1) % 4], inner[(i + 1) % 4], inner[i])), fabric, "binding")
        for i in range(4)
    ]
