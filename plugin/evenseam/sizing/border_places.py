"""Where every visible piece of a border lies."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from evenseam.exact import Number
from evenseam.geometry import Point, Polygon
from evenseam.pattern import BlockPosition, BorderCorners, PiecedBorder, Project
from evenseam.sizing.border_blocks import standing_along, standing_corners
from evenseam.sizing.sized import Placed
from evenseam.sizing.sized_border import AnyBorder, SizedBorder, SizedPiecedBorder
from evenseam.sizing.standing_shapes import stand


def place_border(project: Project, ring: AnyBorder, outer: Point) -> list[Placed]:
    """Place one border whose outer top left corner is at `outer`."""
    seams = 2 * project.seam_allowance.value
    width, height = ring.inside_width.value - seams, ring.inside_height.value - seams
    if isinstance(ring, SizedPiecedBorder):
        return _pieced(project, ring, outer, width, height)
    part = f"border:{ring.border.id}"
    fabric = ring.border.fabric
    match ring.border.corners:
        case BorderCorners.MITRED:
            strips = _mitred(outer, ring.border.width.value, width, height)
        case BorderCorners.PARTIAL_SEAM:
            strips = _passing(outer, ring.border.width.value, width, height)
        case _:
            return _straight(ring, outer, width, height)
    return [Placed(strip, fabric, part) for strip in strips]


def _straight(border: SizedBorder, outer: Point, width: Number, height: Number) -> list[Placed]:
    """Place four strips with butted corners, or with squares in the corners."""
    thick, corners = border.border.width.value, border.border.corners
    stretch_down = corners is BorderCorners.BUTTED and not border.sides_first
    stretch_across = corners is BorderCorners.BUTTED and border.sides_first
    left, top = outer.x + thick, outer.y + thick
    top_left, top_width = (outer.x, width + 2 * thick) if stretch_across else (left, width)
    side_top, side_height = (outer.y, height + 2 * thick) if stretch_down else (top, height)
    part = f"border:{border.border.id}"
    strips = [
        Polygon.rectangle(outer.x, side_top, thick, side_height),
        Polygon.rectangle(left + width, side_top, thick, side_height),
        Polygon.rectangle(top_left, outer.y, top_width, thick),
        Polygon.rectangle(top_left, top + height, top_width, thick),
    ]
    placed = [Placed(strip, border.border.fabric, part) for strip in strips]
    if corners is BorderCorners.CORNERSTONES:
        fabric = border.border.corner_fabric or border.border.fabric
        placed += [Placed(square, fabric, part) for square in _squares(outer, thick, width, height)]
    return placed


def _squares(outer: Point, side: Number, width: Number, height: Number) -> Iterator[Polygon]:
    """Yield squares at the top left, top right, bottom left and bottom right corner."""
    for y in (outer.y, outer.y + side + height):
        for x in (outer.x, outer.x + side + width):
            yield Polygon.rectangle(x, y, side, side)


def _mitred(outer: Point, thick: Number, width: Number, height: Number) -> list[Polygon]:
    around = Polygon.rectangle(outer.x, outer.y, width + 2 * thick, height + 2 * thick).corners
    inside = Polygon.rectangle(outer.x + thick, outer.y + thick, width, height).corners
    return [Polygon((around[i], around[(i + 1) % 4], inside[(i + 1) % 4], inside[i])) for i in range(4)]


def _passing(outer: Point, thick: Number, width: Number, height: Number) -> list[Polygon]:
    r"""Place strips that pass one corner each.

    ::

        +-------+--+
        | top   |  |
        +--+----+ r|
        |l |    |  |
        |  +----+--+
        +--+ bottom|
        +--+-------+
    """
    right, below = outer.x + thick + width, outer.y + thick + height
    return [
        Polygon.rectangle(outer.x, outer.y, thick + width, thick),
        Polygon.rectangle(right, outer.y, thick, thick + height),
        Polygon.rectangle(outer.x + thick, below, width + thick, thick),
        Polygon.rectangle(outer.x, outer.y + thick, thick, height + thick),
    ]


def _pieced(project: Project, ring: SizedPiecedBorder, outer: Point, width: Number, height: Number) -> list[Placed]:
    pieced, thick, part = ring.border.pieced, ring.border.width.value, f"border:{ring.border.id}"
    assert pieced is not None
    across, down = ring.across - thick, ring.down - thick
    left, top = outer.x + thick, outer.y + thick
    placed: list[Placed] = []
    if pieced.spacer_fabric is not None:
        spacers = [
            Polygon.rectangle(left, top + down, across, height),
            Polygon.rectangle(left + across + width, top + down, across, height),
            Polygon.rectangle(left, top, width + 2 * across, down),
            Polygon.rectangle(left, top + down + height, width + 2 * across, down),
        ]
        placed += [Placed(strip, pieced.spacer_fabric, part) for strip in spacers if strip.area > 0]
    wide, high = width + 2 * across, height + 2 * down
    placed += _along(project, ring, pieced, outer, wide, high)
    corners = standing_corners(pieced)
    squares = list(_squares(outer, thick, wide, high))
    if not corners:
        fabric = ring.border.corner_fabric or ring.border.fabric
        return placed + [Placed(square, fabric, part) for square in squares]
    # The squares go row by row, the corners clockwise.
    for corner, square in zip(corners, (squares[0], squares[1], squares[3], squares[2]), strict=True):
        placed += _block(project, corner, square.corners[0], part)
    return placed


def _along(
    project: Project, ring: SizedPiecedBorder, pieced: PiecedBorder, outer: Point, wide: Number, high: Number
) -> Iterable[Placed]:
    """Yield the blocks of all four sides."""
    step, thick, part = project.block(pieced.block).width.value, ring.border.width.value, f"border:{ring.border.id}"
    top, right, bottom, left = standing_along(pieced)
    for number in range(ring.blocks_across.whole):
        x = outer.x + thick + number * step
        yield from _block(project, top, Point(x, outer.y), part)
        yield from _block(project, bottom, Point(x, outer.y + thick + high), part)
    for number in range(ring.blocks_down.whole):
        y = outer.y + thick + number * step
        yield from _block(project, left, Point(outer.x, y), part)
        yield from _block(project, right, Point(outer.x + thick + wide, y), part)


def _block(project: Project, position: BlockPosition, at: Point, part: str) -> list[Placed]:
    shapes = stand(project.block(position.block), position)
    return [Placed(outline.moved(at), fabric, part) for fabric, outline in shapes]
