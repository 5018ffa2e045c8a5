"""Blocks on point: a diagonal row with its triangles, all rows in their order, and the top being trimmed."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_cloth, draw_work
from evenseam.figures.diagonal_rows import (
    Band,
    bands,
    cut_off,
    end_shape,
    endings,
    mirrored,
    on_page,
    point_on_page,
)
from evenseam.figures.drawing import SMALL_SIZE, Anchor, Ink, Stroke, Tone
from evenseam.figures.frame import WIDE, Frame, at, rectangle
from evenseam.figures.measure_line import AWAY, room_beside
from evenseam.figures.plane import Point, Polygon, decimal
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.runs import MANY_PATCHES
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import AddSettingTriangles, JoinDiagonalRows, Step, TrimTop

GAP = 26.0
THIN = 40.0
"""A row drawn thinner than this is drawn without its middle."""
ENDS = 4.0
"""So much of it is left then, in heights of the row."""
BREAK = 14.0
SMALL_TOP = 92.0
"""The little picture of the whole top that shows where a row lies."""
HIGHEST = 380.0
DETAIL = 130.0
"""The side of the closer look at an edge."""


def draw_diagonal_row(scene: Scene, step: Step, operation: AddSettingTriangles) -> None:
    """Draw a row with its triangles pulled off a little, and beside it where the row lies in the top."""
    bench, pen = scene.bench(step), scene.pen
    row = bench.uses[operation.row].turned(operation.quarter_turns)
    cuts = [scene.sheet.cuts.cut(id) for id in (operation.start, operation.end)]
    start, end = (
        end_shape(cut, ending, row.height, scene.seam)
        for cut, ending in zip(cuts, endings(scene.sheet.project.arrangement, operation.number), strict=True)
    )
    left, right = _piece(start.finished, cuts[0].material, scene.seam), _piece(
        mirrored(end.finished, 0.0), cuts[1].material, scene.seam
    )  # fmt: skip
    seams = 2 * scene.seam
    small = _in_top(scene, operation.number)
    # The points of the triangles reach out beyond their seam lines by more than an allowance.
    ends = left.width + right.width + 4 * seams
    frame = Frame.fitting(row.raw_width + ends, row.raw_height, WIDE - 2 * GAP, 210.0)
    shown = row.width
    if frame.length(row.height) < THIN:
        # Too thin to see how the triangles lie: the two ends of the row, and a break between them.
        shown = ENDS * row.height
        frame = Frame.fitting(shown + seams + ends, row.raw_height, WIDE - 2 * GAP - BREAK, 210.0)
    edge, thick = frame.length(scene.seam), frame.length(row.height)
    along = frame.length(left.width) + 2 * edge
    draw_work(pen, _from_left(left), frame.moved_to(at(edge, edge)), has_letters=True)
    spot = along + GAP + edge
    has_letters = len(row.patches) <= MANY_PATCHES
    if shown == row.width:
        draw_work(pen, row, frame.moved_to(at(spot, edge)), has_letters=has_letters)
    else:
        _draw_ends(scene, row, frame.moved_to(at(spot, edge)), shown / 2)
    after = spot + frame.length(shown) + (BREAK if shown < row.width else 0.0) + edge + GAP
    draw_work(pen, right, frame.moved_to(at(after + edge, edge)), has_letters=True)
    middle = edge + thick / 2
    for place in (along, after - GAP):
        toward = 1 if place == along else -1
        tail, head = (place + 4, place + GAP - 5) if toward > 0 else (place + GAP - 4, place + 5)
        pen.arrow(at(tail, middle), at(head, middle))
    _draw_small(scene, small, at(0, thick + 2 * edge + 26))


def _draw_ends(scene: Scene, row: Workpiece, frame: Frame, long: float) -> None:
    """Draw so much of both ends of a row, raw, and between them a line that says: something is left out here."""
    pen, seam = scene.pen, row.seam
    gone = row.width - 2 * long
    second = frame.moved_by(BREAK - frame.length(gone), 0)
    for place, left in ((frame, -seam), (second, row.width - long)):
        window = rectangle(left, -seam, long + seam, row.raw_height)
        shown = ((patch.fabric, cut_off(raw, window)) for patch, raw in zip(row.patches, row.raw_outlines, strict=True))
        draw_cloth(pen, ((fabric, place.polygon(outline)) for fabric, outline in shown if outline is not None))
    for place, edge, end in ((frame, 0.0, long), (second, row.width, row.width - long)):
        way = ((end, 0.0), (edge, 0.0), (edge, row.height), (end, row.height))
        pen.line((place.spot(*spot) for spot in way), Stroke.SEAM)
    start = frame.spot(long, -seam)
    high = frame.length(row.raw_height)
    pen.line(
        (start + at(BREAK * (0.75 if turn % 2 else 0.25), high * turn / 6) for turn in range(7)), Stroke.EDGE
    )  # fmt: skip


def _piece(shape: Polygon, fabric: str, seam: float) -> Workpiece:
    return Workpiece("", (Patch(shape, fabric, part="setting"),), shape, seam)


def _from_left(work: Workpiece) -> Workpiece:
    left, _, _, _ = work.outline.bounds
    return work.moved(Point(-left, 0.0))


def _in_top(scene: Scene, number: int) -> list[tuple[str, Polygon]]:
    """Return the pieces of a row as they lie in the trimmed top."""
    window = _window(scene)
    pieces = (piece for band in _bands(scene) if band.row == number for piece in band.pieces)
    found = ((fabric, cut_off(on_page(outline), window)) for fabric, outline in pieces)
    return [(fabric, outline) for fabric, outline in found if outline is not None]


def _draw_small(scene: Scene, pieces: list[tuple[str, Polygon]], corner: Point) -> None:
    pen, window = scene.pen, _window(scene)
    left, top, right, bottom = window.bounds
    frame = Frame.fitting(right - left, bottom - top, 2 * SMALL_TOP, SMALL_TOP)
    frame = frame.moved_to(corner + at(-left * frame.scale, -top * frame.scale))
    pen.area(frame.polygon(window), Tone.BOARD)
    by_fabric: dict[str, list[Polygon]] = {}
    for fabric, outline in pieces:
        by_fabric.setdefault(fabric, []).append(frame.polygon(outline))
    for fabric, outlines in by_fabric.items():
        pen.cloth(outlines, fabric, is_outlined=False, has_texture=False)
    pen.outline(frame.polygon(window), Stroke.EDGE)
    beside = frame.spot(right, (top + bottom) / 2) + at(12, 0)
    pen.label(
        beside, "here it lies in the top", size=SMALL_SIZE, ink=Ink.QUIET, anchor=Anchor.START, wide=WIDE - beside.x
    )


def _bands(scene: Scene) -> tuple[Band, ...]:
    step = next(step for step in scene.sheet.program.steps if isinstance(step.operation, JoinDiagonalRows))
    assert isinstance(step.operation, JoinDiagonalRows)
    table = {name: work for bench in scene.benches.values() for name, work in bench.uses.items()}
    return bands(scene.sheet, step.operation, table)


def _window(scene: Scene, beyond: float = 0.0) -> Polygon:
    """Return the finished edge of the blocks on the page, or a line so far outside it."""
    sized, arrangement = scene.sheet.sized, scene.sheet.project.arrangement
    block = decimal(scene.sheet.project.block(arrangement.positions[0][0].block).width.value)
    known = dict(sized.figures)
    is_framed = arrangement.sashing is not None and arrangement.sashing.is_around and "sashing_width" in known
    frame = decimal(known["sashing_width"].value) if is_framed else 0.0
    # The leftmost corner of the first block (of its frame), and the topmost one.
    left = point_on_page(Point(-frame, 0.0)).x - decimal(known["float_width"].value) - beyond
    top = point_on_page(Point(block + frame, 0.0)).y - decimal(known["float_height"].value) - beyond
    seams = 2 * scene.seam
    wide, high = (decimal(known[name].value) - seams + 2 * beyond for name in ("centre_width", "centre_height"))
    return rectangle(left, top, wide, high)


def draw_diagonal_rows(scene: Scene, step: Step, operation: JoinDiagonalRows) -> None:
    """Draw all rows as they lie in the top, a little apart, with their numbers."""
    pen = scene.pen
    found = _bands(scene)
    _, _, right, bottom = _window(scene).bounds
    apart = 0.09 * (right + bottom) / len(found) + scene.seam
    placed = [
        (band, [(fabric, on_page(outline.moved(Point(0.0, number * apart)))) for fabric, outline in band.pieces])
        for number, band in enumerate(found)
    ]
    corners = [corner for _, pieces in placed for _, outline in pieces for corner in outline.corners]
    left, top, right, bottom = Polygon(tuple(corners)).bounds
    frame = Frame.fitting(right - left, bottom - top, WIDE, HIGHEST)
    frame = frame.moved_to(at(-left * frame.scale, -top * frame.scale))
    draw_cloth(pen, ((fabric, frame.polygon(outline)) for _, pieces in placed for fabric, outline in pieces))
    for band, pieces in placed:
        if band.row is not None:
            _number(scene, frame, [outline for _, outline in pieces], band.row + 1)


def _number(scene: Scene, frame: Frame, outlines: list[Polygon], number: int) -> None:
    """Write the number of a row on its first triangle, at the lower left."""
    triangle = outlines[-2]
    count = len(triangle.corners)
    middle = Point(sum(c.x for c in triangle.corners) / count, sum(c.y for c in triangle.corners) / count)
    scene.pen.label(frame.point(middle), str(number), size=SMALL_SIZE, is_bold=True, has_ground=True)


def draw_trim_top(scene: Scene, step: Step, operation: TrimTop) -> None:
    """Draw the ragged top with the line it is cut on, its size, and a closer look at one edge."""
    pen = scene.pen
    pieces = [(fabric, on_page(outline)) for band in _bands(scene) for fabric, outline in band.pieces]
    left, top, right, bottom = Polygon(tuple(corner for _, outline in pieces for corner in outline.corners)).bounds
    beside = 0.0 if step.measures is None else room_beside(step.measures[1].text)
    frame = Frame.fitting(right - left, bottom - top, WIDE - DETAIL - GAP - beside, 300.0)
    frame = frame.moved_to(at(-left * frame.scale, -top * frame.scale))
    draw_cloth(pen, ((fabric, frame.polygon(outline)) for fabric, outline in pieces))
    cut = _window(scene, scene.seam)
    pen.outline(frame.polygon(cut), Stroke.CUT)
    low = frame.length(bottom - top)
    west, north, east, south = cut.bounds
    if step.measures is not None:
        width, height = step.measures
        pen.measure(at(frame.spot(west, 0).x, low + 14), at(frame.spot(east, 0).x, low + 14), width.text)
        along = frame.length(right - left) + AWAY
        pen.measure(at(along, frame.spot(0, north).y), at(along, frame.spot(0, south).y), height.text)
    _closer(scene, operation, pieces, cut, at(frame.length(right - left) + beside + GAP, 0))


def _closer(scene: Scene, operation: TrimTop, pieces: list[tuple[str, Polygon]], cut: Polygon, corner: Point) -> None:
    """Draw the corner of a block at the left edge, the line that is cut, and how far it is from the corner."""
    pen = scene.pen
    beyond = decimal(operation.beyond.value)
    west = cut.bounds[0]
    tip = _leftmost_tip(scene)
    side = max(5 * beyond, 8 * scene.seam)
    window = rectangle(west - side / 4, tip.y - side / 2, side, side)
    frame = Frame.fitting(side, side, DETAIL, DETAIL)
    frame = frame.moved_to(corner + at(-(west - side / 4) * frame.scale, -(tip.y - side / 2) * frame.scale))
    shown = [(fabric, cut_off(outline, window)) for fabric, outline in pieces]
    draw_cloth(pen, ((fabric, frame.polygon(outline)) for fabric, outline in shown if outline is not None))
    pen.area(frame.polygon(rectangle(west, tip.y - side / 2, beyond, side)), Tone.RULER)
    pen.outline(frame.polygon(window), Stroke.HELP)
    pen.line((frame.spot(west, tip.y - side / 2), frame.spot(west, tip.y + side / 2)), Stroke.CUT)
    below = frame.spot(0, tip.y + side / 2).y + 16
    pen.measure(at(frame.spot(west, 0).x, below), at(frame.spot(tip.x, 0).x, below), operation.beyond.text)


def _leftmost_tip(scene: Scene) -> Point:
    """Return the leftmost corner of the first block on the page, or of the strips that frame it."""
    figures = dict(scene.sheet.sized.figures)
    sashing = scene.sheet.project.arrangement.sashing
    framed = sashing is not None and sashing.is_around and "sashing_width" in figures
    return point_on_page(Point(-decimal(figures["sashing_width"].value) if framed else 0.0, 0.0))
