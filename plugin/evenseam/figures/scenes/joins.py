"""Two parts of a block, the seam that joins them, and what they become."""

from __future__ import annotations

from evenseam.figures.allowance import raw_outline
from evenseam.figures.cloth_work import draw_work
from evenseam.figures.dots import dot
from evenseam.figures.drawing import SMALL_SIZE, Anchor, Ink, Label, Stroke, Tone
from evenseam.figures.folding import between
from evenseam.figures.frame import WIDE, Frame, at
from evenseam.figures.measure_line import AWAY, room_beside
from evenseam.figures.plane import NEAR, Point, Polygon, is_on_line, placed, shaped
from evenseam.figures.scene import Scene
from evenseam.figures.workbench import outline_of
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import Block, JoinPieces, Step

APART = 40.0
SIDE = 170.0
HIGHEST = 290.0
BETWEEN = 50.0
MATCH = "match the dots"


def draw_join(scene: Scene, step: Step, operation: JoinPieces) -> None:
    """Draw both parts pulled apart across their seam, and beside them the parts joined.

    A part is labelled with its section's name; the seam is drawn on both edges, and dots mark
    where seams of the one meet seams of the other.
    """
    block = scene.sheet.project.block(operation.block)
    first = _part(scene, block, operation.first_pieces)
    second = _part(scene, block, operation.second_pieces)
    whole = outline_of(first.patches + second.patches)
    seam = _common(first, second)
    left, top, right, bottom = raw_outline(whole, scene.seam).bounds
    away = _away(seam, first)
    apart = _apart(first, second, away)
    beside = 0.0 if step.measures is None else room_beside(step.measures[1].text)
    frame = Frame.fitting(
        apart[2] - apart[0] + right - left, apart[3] - apart[1],
        min(WIDE - BETWEEN - beside - APART * abs(away.x), 2 * SIDE), HIGHEST - APART * abs(away.y),
    )  # fmt: skip
    # The raw edges, not the seam lines, are drawn APART from each other.
    half = APART / 2 + frame.length(scene.seam)
    step_first = away.scaled(half, half)
    gap = APART / 2 * abs(away.x)
    frame = frame.moved_by(gap - frame.length(apart[0]), -frame.length(top))
    _draw_apart(scene, block, first, second, seam, frame, step_first)
    if dots := _match_points(scene, block, operation):
        for move in (step_first, step_first.scaled(-1, -1)):
            for place in dots:
                scene.pen.area(dot(frame.point(place) + move), Tone.DOT)
        below = frame.length(max(bottom, apart[3]) - top) + APART / 2 * abs(away.y) + 16
        words = Label(at(0, below), MATCH, SMALL_SIZE, Ink.QUIET, anchor=Anchor.START)
        scene.pen.draw((words,))
    makes = Workpiece(step.makes, first.patches + second.patches, whole, scene.seam)
    wide, high = frame.length(right - left), frame.length(bottom - top)
    reach = frame.length(apart[2] - apart[0]) + 2 * gap
    joined = frame.moved_to(at(reach + BETWEEN - frame.length(left), -frame.length(top)))
    scene.pen.arrow(at(reach + 10, high / 2), at(reach + BETWEEN - 10, high / 2))
    draw_work(scene.pen, makes, joined, has_letters=True)
    scene.pen.line((joined.point(seam[0]), joined.point(seam[1])), Stroke.SEWN)
    if step.measures is not None:
        start = reach + BETWEEN
        scene.pen.measure(at(start, high + 14), at(start + wide, high + 14), step.measures[0].text)
        scene.pen.measure(at(start + wide + AWAY, 0), at(start + wide + AWAY, high), step.measures[1].text)


def _match_points(scene: Scene, block: Block, operation: JoinPieces) -> tuple[Point, ...]:
    """Return where a seam of the one part meets a seam of the other, at the block's finished size."""
    across, down = block.scale
    for join in scene.sheet.sized.pieced(block.id).joins:
        if (join.first_pieces, join.second_pieces) == (operation.first_pieces, operation.second_pieces):
            return tuple(placed(point, across, down) for point in join.match_points)
    return ()


def _part(scene: Scene, block: Block, pieces: tuple[str, ...]) -> Workpiece:
    across, down = block.scale
    patches = tuple(
        Patch(shaped(piece.outline, across, down), piece.fabric, piece.id)
        for piece in block.pieces
        if piece.id in pieces
    )
    return Workpiece("", patches, outline_of(patches), scene.seam)


def _common(first: Workpiece, second: Workpiece) -> tuple[Point, Point]:
    """Return the seam: the stretch that an edge of one part has in common with an edge of the other."""
    best = (first.outline.corners[0], first.outline.corners[1])
    longest = -1.0
    for start, end in first.outline.edges:
        way = end - start
        square = way.dot(way)
        for other_start, other_end in second.outline.edges:
            if not (is_on_line(other_start, start, end) and is_on_line(other_end, start, end)):
                continue
            shares = sorted((point - start).dot(way) / square for point in (other_start, other_end))
            low, high = max(shares[0], 0.0), min(shares[1], 1.0)
            if high - low > NEAR and (high - low) * (high - low) * square > longest:
                longest = (high - low) * (high - low) * square
                best = start + way.scaled(low, low), start + way.scaled(high, high)
    return best


def _apart(first: Workpiece, second: Workpiece, away: Point) -> tuple[float, float, float, float]:
    """Return how far both parts reach, raw, each an allowance away from where it will lie."""
    corners: list[Point] = []
    for part, way in ((first, 1.0), (second, -1.0)):
        move = away.scaled(part.seam * way, part.seam * way)
        corners += [corner + move for corner in raw_outline(part.outline, part.seam).corners]
    return Polygon(tuple(corners)).bounds


def _away(seam: tuple[Point, Point], first: Workpiece) -> Point:
    """Return the step of length 1 that leads from the seam into the first part."""
    way = seam[1] - seam[0]
    normal = Point(way.y / way.length, -way.x / way.length)
    total = sum(normal.dot(corner - seam[0]) for corner in first.outline.corners)
    return normal if total > 0 else normal.scaled(-1, -1)


def _draw_apart(
    scene: Scene,
    block: Block,
    first: Workpiece,
    second: Workpiece,
    seam: tuple[Point, Point],
    frame: Frame,
    step: Point,
) -> None:
    for part, move in ((first, step), (second, Point(-step.x, -step.y))):
        place = frame.moved_by(move.x, move.y)
        draw_work(scene.pen, part, place, has_letters=True)
        scene.pen.line((place.point(seam[0]), place.point(seam[1])), Stroke.SEWN)
    long = step.length
    for share in (0.25, 0.75):
        spot = frame.point(between(seam[0], seam[1], share))
        for sign in (1, -1):
            tail, head = (sign * reach / long for reach in (APART / 2 - 1, 2.0))
            scene.pen.arrow(spot + step.scaled(tail, tail), spot + step.scaled(head, head))
