"""Units sewn from whole squares: the squares on each other, where they are sewn and cut, and what comes out."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.figures.cloth_work import draw_cloth, draw_work
from evenseam.figures.drawing import Side, Stroke
from evenseam.figures.folding import mirrored
from evenseam.figures.frame import Frame, at
from evenseam.figures.plane import Point, Polygon, decimal
from evenseam.figures.scene import Scene
from evenseam.pattern import Cut, MakeUnits, Step, UnitMethodKind

SIDE = 128.0
THREE = 78.0
"""The side of a picture where there are three of them."""
BETWEEN = 44.0
_LATER = {UnitMethodKind.TWO_QUARTER_SQUARE, UnitMethodKind.FOUR_QUARTER_SQUARE}
_ON_CORNERS = {UnitMethodKind.CORNER_SQUARES, UnitMethodKind.ONE_GOOSE}


@dataclass(frozen=True, slots=True)
class _Lines:
    """Where a pile of squares is sewn and where it is cut."""

    sewn: tuple[tuple[Point, Point], ...]
    cut: tuple[tuple[Point, Point], ...]


def draw_units(scene: Scene, step: Step, operation: MakeUnits) -> None:
    """Draw the pile with its stitches and cuts, the second pile where there is one, and a finished unit."""
    cuts = [scene.sheet.cuts.cut(id) for id in operation.squares]
    has_three = operation.kind in _LATER or operation.kind is UnitMethodKind.FOUR_GEESE
    side = THREE if has_three else SIDE
    if operation.kind in _ON_CORNERS:
        left = _draw_corners(scene, operation)
    elif operation.kind is UnitMethodKind.FOUR_GEESE:
        left = _draw_geese(scene, cuts)
    else:
        left = _draw_pile(scene, operation.kind, cuts, side)
        if has_three:
            left = _draw_halves(scene, operation.kind, cuts, left)
    _draw_unit(scene, step, left, side)


def _draw_unit(scene: Scene, step: Step, left: float, side: float) -> None:
    work, pen = scene.bench(step).makes, scene.pen
    frame = Frame.fitting(work.raw_width, work.raw_height, side, side)
    wide, high = frame.length(work.raw_width), frame.length(work.raw_height)
    pen.arrow(at(left + 8, side / 2), at(left + BETWEEN - 8, side / 2))
    seam, top = frame.length(work.seam), (side - high) / 2
    draw_work(pen, work, frame.moved_by(left + BETWEEN + seam, top + seam), has_letters=True)
    if step.measures is not None:
        start = left + BETWEEN
        pen.measure(at(start, top + high + 14), at(start + wide, top + high + 14), step.measures[0].text)
        pen.measure(at(start + wide + 12, top), at(start + wide + 12, top + high), step.measures[1].text)


def _draw_pile(scene: Scene, kind: UnitMethodKind, cuts: list[Cut], whole_side: float) -> float:
    """Draw two squares right sides together, the corner of the upper one folded back so that both are seen."""
    lower, upper = cuts[0], cuts[1] if kind is not UnitMethodKind.FOUR_QUARTER_SQUARE else cuts[2]
    size = decimal(lower.width.value)
    frame = Frame.fitting(size, size, whole_side, whole_side)
    side, seam = frame.length(size), frame.length(scene.seam)
    pen = scene.pen
    whole = Polygon.rectangle(0.0, 0.0, side, side)
    draw_cloth(pen, ((lower.material, whole),))
    draw_cloth(pen, ((upper.material, whole),), Side.WRONG)
    _draw_lines(scene, _lines(kind, side, seam))
    pen.measure(at(0, side + 14), at(side, side + 14), lower.width.text)
    return side


def _lines(kind: UnitMethodKind, side: float, seam: float) -> _Lines:
    falling = (Point(0.0, 0.0), Point(side, side))
    rising = (Point(0.0, side), Point(side, 0.0))
    if kind is UnitMethodKind.EIGHT_HALF_SQUARE:
        middle = side / 2
        across = (Point(0.0, middle), Point(side, middle))
        down = (Point(middle, 0.0), Point(middle, side))
        return _Lines((*_beside(falling, seam, side), *_beside(rising, seam, side)), (falling, rising, across, down))
    if kind is UnitMethodKind.FOUR_HALF_SQUARE:
        near, far = seam, side - seam
        corners = (Point(near, near), Point(far, near), Point(far, far), Point(near, far))
        return _Lines(Polygon(corners).edges, (falling, rising))
    return _Lines(_beside(falling, seam, side), (falling,))


def _beside(line: tuple[Point, Point], seam: float, side: float) -> tuple[tuple[Point, Point], ...]:
    """Return the stitches on both sides of a diagonal of a square."""
    # A seam allowance from the diagonal is √2 of it along an edge.
    step = seam * Point(1.0, 1.0).length
    (_, top), _ = line
    if top == 0.0:
        return (
            (Point(step, 0.0), Point(side, side - step)),
            (Point(0.0, step), Point(side - step, side)),
        )
    return (
        (Point(0.0, side - step), Point(side - step, 0.0)),
        (Point(step, side), Point(side, step)),
    )


def _draw_lines(scene: Scene, lines: _Lines, away: Point | None = None) -> None:
    away = away or Point(0.0, 0.0)
    for start, end in lines.sewn:
        scene.pen.line((start + away, end + away), Stroke.SEWN)
    for start, end in lines.cut:
        scene.pen.line((start + away, end + away), Stroke.CUT)


def _draw_halves(scene: Scene, kind: UnitMethodKind, cuts: list[Cut], left: float) -> float:
    """Draw two halves laid on each other, seam on seam, with the stitches across the seam."""
    first, second = cuts[0], cuts[1]
    third = cuts[2] if kind is UnitMethodKind.FOUR_QUARTER_SQUARE else second
    size = decimal(first.width.value) - scene.seam * Point(1.0, 1.0).length
    frame = Frame.fitting(decimal(first.width.value), decimal(first.width.value), THREE, THREE)
    side, seam = frame.length(size), frame.length(scene.seam)
    start, pen = left + BETWEEN, scene.pen
    top = (frame.length(decimal(first.width.value)) - side) / 2
    pen.arrow(at(left + 8, THREE / 2), at(start - 8, THREE / 2))
    away = Point(start, top)
    upper = Polygon((Point(0.0, 0.0), Point(side, 0.0), Point(side, side))).moved(away)
    lower = Polygon((Point(0.0, 0.0), Point(side, side), Point(0.0, side))).moved(away)
    over = second if kind is UnitMethodKind.FOUR_QUARTER_SQUARE else first
    draw_cloth(pen, ((third.material, upper), (over.material, lower)), Side.WRONG)
    pen.line((away, away + Point(side, side)), Stroke.SEAM)
    rising = (Point(0.0, side), Point(side, 0.0))
    _draw_lines(scene, _Lines(_beside(rising, seam, side), (rising,)), away)
    return start + side


def _draw_geese(scene: Scene, cuts: list[Cut]) -> float:
    """Draw the large square with two small ones on it, and a half of it with a third."""
    large, small = decimal(cuts[0].width.value), decimal(cuts[1].width.value)
    frame = Frame.fitting(large, large, THREE, THREE)
    side, square, seam = frame.length(large), frame.length(small), frame.length(scene.seam)
    pen = scene.pen
    draw_cloth(pen, ((cuts[0].material, Polygon.rectangle(0.0, 0.0, side, side)),))
    corners = (
        Polygon.rectangle(0.0, 0.0, square, square),
        Polygon.rectangle(side - square, side - square, square, square),
    )
    for corner in corners:
        draw_cloth(pen, ((cuts[1].material, corner),), Side.WRONG)
    falling = (Point(0.0, 0.0), Point(side, side))
    _draw_lines(scene, _Lines(_beside(falling, seam, side), (falling,)))
    pen.measure(at(0, side + 14), at(side, side + 14), cuts[0].width.text)
    pen.measure(at(0, -28), at(square, -28), cuts[1].width.text)
    start = side + BETWEEN
    pen.arrow(at(side + 8, THREE / 2), at(start - 8, THREE / 2))
    # The half below the cut: its triangle, the two wings folded back, the third square on its right angle.
    step = seam * Point(1.0, 1.0).length
    half = Polygon((Point(0.0, step), Point(side - step, side), Point(0.0, side)))
    wings = (
        Polygon((Point(0.0, step), Point(square - step, square), Point(0.0, square))),
        Polygon((Point(side - square, side - square + step), Point(side - step, side), Point(side - square, side))),
    )
    away = Point(start, 0.0)
    draw_cloth(pen, ((cuts[0].material, half.moved(away)),))
    seam_line = (Point(0.0, step), Point(side - step, side))
    draw_cloth(pen, ((cuts[1].material, mirrored(wing, *seam_line).moved(away)) for wing in wings))
    third = Polygon.rectangle(0.0, side - square, square, square)
    draw_cloth(pen, ((cuts[1].material, third.moved(away)),), Side.WRONG)
    reach = square + step
    line = (Point(0.0, side), Point(square, side - square))
    aside = (
        (Point(0.0, side - step), Point(square - step, side - square)),
        (Point(step, side), Point(square, side - square + step)),
    )
    _draw_lines(scene, _Lines(aside, (line,)), away)
    return start + max(side, reach)


def _draw_corners(scene: Scene, operation: MakeUnits) -> float:
    """Draw the whole piece with a square on each corner, sewn on its diagonal, and the corners to be cut off."""
    block = scene.sheet.project.block(operation.block)
    across, down = (decimal(scale) for scale in block.scale)
    shapes = [
        Polygon(tuple(Point(float(c.x) * across, float(c.y) * down) for c in piece.outline.corners))
        for name in operation.pieces
        for piece in block.pieces
        if piece.id == name
    ]
    corners = [corner for shape in shapes for corner in shape.corners]
    left, top, right, bottom = Polygon(tuple(corners)).bounds
    bulk = max(range(len(shapes)), key=lambda number: shapes[number].area)
    seam, pen = scene.seam, scene.pen
    frame = Frame.fitting(right - left + 2 * seam, bottom - top + 2 * seam, SIDE, SIDE)
    wide, high = frame.length(right - left + 2 * seam), frame.length(bottom - top + 2 * seam)
    base = (SIDE - high) / 2
    whole = scene.sheet.cuts.cut(operation.squares[bulk])
    draw_cloth(pen, ((whole.material, Polygon.rectangle(0.0, base, wide, high)),))
    for number, shape in enumerate(shapes):
        if number == bulk:
            continue
        cut = scene.sheet.cuts.cut(operation.squares[number])
        side, (low_x, low_y, _, _) = frame.length(decimal(cut.width.value)), shape.bounds
        is_right, is_low = low_x - left > right - shape.bounds[2], low_y - top > bottom - shape.bounds[3]
        x, y = (wide - side) * is_right, base + (high - side) * is_low
        draw_cloth(pen, ((cut.material, Polygon.rectangle(x, y, side, side)),), Side.WRONG)
        inner = frame.length(seam) * Point(1.0, 1.0).length
        if is_right == is_low:
            stitches = (Point(x, y + side), Point(x + side, y))
            shift = inner if is_right else -inner
        else:
            stitches = (Point(x, y), Point(x + side, y + side))
            shift = inner if is_right else -inner
        pen.line(stitches, Stroke.SEWN)
        trimmed = tuple(Point(spot.x + shift, spot.y) for spot in stitches)
        pen.line(tuple(_within(spot, trimmed, (x, side)) for spot in trimmed), Stroke.CUT)
    pen.measure(at(0, base + high + 14), at(wide, base + high + 14), whole.width.text)
    return wide


def _within(spot: Point, line: tuple[Point, ...], square: tuple[float, float]) -> Point:
    """Return an end of a diagonal line brought back to the edge of a square it runs out of."""
    left, side = square
    over = max(left - spot.x, spot.x - left - side, 0.0)
    if over == 0.0:
        return spot
    other = line[1] if spot == line[0] else line[0]
    return Point(
        spot.x + (over if other.x > spot.x else -over),
        spot.y + (over if other.y > spot.y else -over),
    )
