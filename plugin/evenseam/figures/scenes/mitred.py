"""Mitred borders: the strips round the centre, and one corner stopped before, folded, sewn and pressed."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_work
from evenseam.figures.dots import dot
from evenseam.figures.drawing import Pen, Side, Stroke, Tone
from evenseam.figures.folding import between
from evenseam.figures.frame import WIDE, Frame, at, rectangle
from evenseam.figures.measure_line import AWAY, room_beside
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.scene import Scene
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import AddMitredBorder, Step

OVERVIEW_WIDE = 310.0
OVERVIEW_HIGH = 200.0
PANEL = 116.0
BAND = 56.0
"""All mitred strips together, in a close-up."""
_LETTERED = 20.0
"""Strips drawn narrower than this get no letter: the marks of their middles would hide it."""
SEAM = 12.0
"""A seam allowance in a close-up."""


def draw_mitred(scene: Scene, step: Step, operation: AddMitredBorder) -> None:
    """Draw the strips sewn on with their ends free, and below them a corner in three stages.

    ::

             +--+-------+--+          1 sew up to the dot   2 fold, sew, trim   3 press
          +--|  |       |  |--+       +----------+--        +------/-/..        +-------/|
          +--+--+-------+--+--+       |----------.          |     / /           |      / |
             |  |       |  |          |          |          |----/--            |-----+  |
    """
    uses = scene.bench(step).uses
    centre, sides, top = uses[operation.centre], uses[operation.sides], uses[operation.top_bottom]
    below = _draw_overview(scene, operation, centre, sides, top) + 46
    gap = (WIDE - 8 - 3 * PANEL) / 2
    bands = _bands(scene, operation)
    corner = _corner_fabric(centre)
    words = ("1 sew up to the dot", "2 fold, sew, trim", "3 press the corner")
    for number, (draw_stage, text) in enumerate(zip((_draw_stop, _draw_fold, _draw_open), words, strict=True)):
        left = (PANEL + gap) * number
        draw_stage(scene, at(left, below), corner, bands)
        scene.pen.caption(at(left + PANEL / 2, below + PANEL + 18), text, PANEL + 8)


def _draw_overview(
    scene: Scene, operation: AddMitredBorder, centre: Workpiece, sides: Workpiece, top: Workpiece
) -> float:
    """Draw all four strips in place, their ends crossing at the corners; return how far down the drawing reaches."""
    beside = room_beside(scene.measured(operation.sides)[1])
    frame = Frame.fitting(top.width, sides.height, min(OVERVIEW_WIDE, WIDE - beside - 10), OVERVIEW_HIGH)
    across = (WIDE - 8 - frame.length(top.width) - beside) / 2
    over, down = (top.width - centre.width) / 2, (sides.height - centre.height) / 2
    thick, pen = sides.width, scene.pen
    place = frame.moved_by(across, 0)

    def letter(patch: Patch) -> str:
        left, high, right, low = patch.outline.bounds
        is_wide = frame.length(min(right - left, low - high)) >= _LETTERED
        return pen.looks[patch.fabric].letter if is_wide else ""

    for strip, x in ((sides, over - thick), (sides.turned(2), over + centre.width)):
        draw_work(pen, strip, place.moved_to(place.spot(x, 0.0)), has_allowance=False, label=letter)
    inside = place.moved_to(place.spot(over, down))
    draw_work(pen, centre, inside, has_allowance=False)
    for strip, y in ((top, down - thick), (top.turned(2), down + centre.height)):
        draw_work(pen, strip, place.moved_to(place.spot(0.0, y)), has_allowance=False, label=letter)
    outline = inside.polygon(centre.outline)
    pen.outline(outline, Stroke.SEWN)
    for start, end in outline.edges:
        pen.area(dot(start), Tone.DOT)
        pen.area(dot(between(start, end, 0.5)), Tone.DOT)
    _, last = place.spot(0.0, sides.height)
    right, _ = place.spot(top.width, 0.0)
    pen.measure(at(across, last + 14), at(right, last + 14), scene.measured(operation.top_bottom)[0])
    pen.measure(at(right + AWAY, 0), at(right + AWAY, last), scene.measured(operation.sides)[1])
    return last + 14


def _bands(scene: Scene, operation: AddMitredBorder) -> tuple[tuple[str, float], ...]:
    """Return the fabrics of the strips, innermost first, each with its share of the close-up."""
    known = {border.id: border for border in scene.sheet.project.borders}
    widths = [(known[id].fabric, float(known[id].width.value)) for id in operation.borders]
    whole = sum(width for _, width in widths)
    return tuple((fabric, width / whole * BAND) for fabric, width in widths)


def _corner_fabric(centre: Workpiece) -> str:
    """Return what lies at the top right corner of the centre."""
    right, top = centre.width, 0.0

    def away(number: int) -> float:
        _, high, wide, _ = centre.patches[number].outline.bounds
        return (right - wide) + (high - top)

    return centre.patches[min(range(len(centre.patches)), key=away)].fabric


def _draw_stop(scene: Scene, corner: Point, centre: str, bands: tuple[tuple[str, float], ...]) -> None:
    """Draw a strip face down on the top edge of the centre, sewn up to a dot that lies on both seam lines."""
    pen, right = scene.pen, PANEL - 34
    pen.cloth((rectangle(corner.x, corner.y, right, PANEL),), centre)
    reach = corner.y
    for fabric, width in bands:
        pen.cloth((rectangle(corner.x, reach, PANEL, width),), fabric, Side.WRONG)
        reach = reach + width
    stop = at(corner.x + right - SEAM, corner.y + SEAM)
    pen.line((at(stop.x, corner.y + BAND), at(stop.x, corner.y + PANEL)), Stroke.SEAM)
    pen.line((at(corner.x, stop.y), stop), Stroke.SEWN)
    pen.line((at(corner.x + right, corner.y), at(corner.x + right, corner.y + BAND)), Stroke.HELP)
    pen.area(dot(stop), Tone.DOT)
    seam = scene.sheet.project.seam_allowance.text
    pen.measure(at(stop.x, corner.y - 22), at(corner.x + right, corner.y - 22), seam)


def _draw_fold(scene: Scene, corner: Point, centre: str, bands: tuple[tuple[str, float], ...]) -> None:
    """Draw the centre folded on its diagonal, both strips on top of each other, and the seam that goes on with it."""
    pen = scene.pen
    turn = at(corner.x + 80, corner.y + BAND - SEAM)
    folded = Polygon((at(corner.x, corner.y + BAND - SEAM), turn, at(corner.x, turn.y + 80)))
    pen.cloth((folded,), centre, Side.WRONG)
    reach = corner.y
    for fabric, width in reversed(bands):
        pen.cloth((rectangle(corner.x, reach, PANEL, width),), fabric, Side.WRONG)
        reach = reach + width
    rise = BAND - SEAM
    beyond = SEAM * 1.4
    low, high = at(turn.x - SEAM + beyond, corner.y + BAND), at(turn.x + rise + beyond, corner.y)
    end = corner.x + PANEL
    pen.area(Polygon((low, high, at(end, corner.y), at(end, corner.y + BAND))), Tone.LEFTOVER)
    _draw_ruler(pen, at(turn.x - 50, turn.y + 50), at(turn.x + rise + 8, corner.y - 8))
    pen.line((turn, at(corner.x, turn.y + 80)), Stroke.FOLD)
    pen.line((turn, at(turn.x + rise, corner.y)), Stroke.SEWN)
    pen.line((low, high), Stroke.CUT)
    pen.area(dot(turn), Tone.DOT)


def _draw_ruler(pen: Pen, start: Point, end: Point) -> None:
    """Draw a see-through ruler whose right edge lies on a line that rises at 45 degrees."""
    wide = 14.0
    pen.area(
        Polygon((start, at(start.x - wide, start.y - wide), at(end.x - wide, end.y - wide), end)),
        Tone.RULER,
    )


def _draw_open(scene: Scene, corner: Point, centre: str, bands: tuple[tuple[str, float], ...]) -> None:
    """Draw the corner from the right side: the seam runs from corner to corner."""
    pen, right, inner = scene.pen, corner.x + PANEL, corner.y + BAND
    pen.cloth((rectangle(corner.x, inner, PANEL - BAND, PANEL - BAND),), centre)
    reach = 0.0
    for fabric, width in bands:
        near, far = reach, reach + width
        meet, out = at(right - BAND + near, inner - near), at(right - BAND + far, inner - far)
        top = Polygon((at(corner.x, out.y), out, meet, at(corner.x, meet.y)))
        side = Polygon((meet, out, at(out.x, corner.y + PANEL), at(meet.x, corner.y + PANEL)))
        pen.cloth((top, side), fabric)
        reach = far
    pen.line((at(right - BAND, inner), at(right, corner.y)), Stroke.SEWN)
