"""Two parts of a block, the seam that joins them, and what they become."""

from __future__ import annotations

from evenseam.figures.allowance import raw_outline
from evenseam.figures.cloth_work import draw_work
from evenseam.figures.dots import dot
from evenseam.figures.drawing import SMALL_SIZE, Ink, Stroke, Tone
from evenseam.figures.folding import between
from evenseam.figures.frame import Frame, at
from evenseam.figures.plane import NEAR, Point, is_on_line, placed, shaped
from evenseam.figures.scene import Scene
from evenseam.figures.workbench import outline_of
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import Block, JoinPieces, Step

APART = 40.0
SIDE = 170.0
BETWEEN = 56.0
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
    frame = Frame.fitting(right - left, bottom - top, SIDE, SIDE + 70)
    frame = frame.moved_by(-frame.length(left), -frame.length(top))
    away = _away(seam, first)
    # The raw edges, not the seam lines, are drawn APART from each other.
    half = APART / 2 + frame.length(scene.seam)
    step_first = away.scaled(half, half)
    _draw_apart(scene, block, first, second, seam, frame, step_first)
    if dots := _match_points(scene, block, operation):
        for move in (step_first, step_first.scaled(-1, -1)):
            for place in dots:
                scene.pen.area(dot(frame.point(place) + move), Tone.DOT)
        below = frame.length(bottom - top) + abs(step_first.y) + 16
        scene.pen.label(at(frame.length(right - left) / 2, below), MATCH, size=SMALL_SIZE, ink=Ink.QUIET)
    makes = Workpiece(step.makes, first.patches + second.patches, whole, scene.seam)
    wide = frame.length(right - left)
    high = frame.length(bottom - top)
    reach = abs(step_first.x)
    joined = frame.moved_by(wide + BETWEEN + 2 * reach, 0)
    middle = high / 2
    scene.pen.arrow(at(wide + reach + 10, middle), at(wide + BETWEEN + reach - 10, middle))
    draw_work(scene.pen, makes, joined, has_letters=True)
    scene.pen.line((joined.point(seam[0]), joined.point(seam[1])), Stroke.SEWN)
    if step.measures is not None:
        start = wide + BETWEEN + 2 * reach
        scene.pen.measure(at(start, high + 14), at(start + wide, high + 14), step.measures[0].text)
        scene.pen.measure(at(start + wide + 10, 0), at(start + wide + 10, high), step.measures[1].text)


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
