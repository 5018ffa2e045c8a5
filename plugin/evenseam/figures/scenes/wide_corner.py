"""Corners that are no right angles: clipped before turning, and bound with a mitre."""

from __future__ import annotations

from evenseam.figures.drawing import Pen, Side, Stroke, Tone
from evenseam.figures.folding import mirrored
from evenseam.figures.frame import at
from evenseam.figures.outlines import inset
from evenseam.figures.plane import Point, Polygon, shaped
from evenseam.figures.scene import Scene
from evenseam.pattern import Bound

PANEL = 112.0
GAP = 24.0
BAND = 36.0
LINE = 18.0
CORNER = Point(74.0, 0.0)
LONG = 84.0


def next_edge(scene: Scene) -> Point:
    """Return the way of the edge after the first corner of the outline, as if the edge before it lay level."""
    outline = scene.sheet.sized.outline
    assert outline is not None  # only asked where the project is no rectangle
    corners = shaped(outline).corners
    before, after = corners[1] - corners[0], corners[2] - corners[1]
    size = before.length * after.length
    return Point(before.dot(after) / size, before.cross(after) / size)


def draw_clipped_wide_corner(scene: Scene, backing: str) -> None:
    """Draw a corner of the layers sewn round, and the cut straight across it."""
    pen, quilt = scene.pen, _quilt(next_edge(scene)).moved(at(10, 12))
    corner = CORNER + at(10, 12)
    pen.area(inset(quilt, -4.0), Tone.BATTING)
    pen.cloth((quilt,), backing, Side.WRONG)
    seam = inset(quilt, LINE)
    pen.line((seam.corners[0], seam.corners[1], seam.corners[2]), Stroke.SEWN)
    # Straight across, between the corner and the stitches.
    inward = seam.corners[1] - corner
    middle = corner + inward.scaled(0.55, 0.55)
    across = Point(inward.y, -inward.x)
    pen.line((middle + across.scaled(1.9, 1.9), middle + across.scaled(-1.9, -1.9)), Stroke.CUT)


def draw_bind_wide(scene: Scene, quilt: str) -> None:
    """Draw a corner of the front three times: stop where the seam lines meet, fold away, fold back and go on."""
    finish = scene.sheet.project.finish
    assert isinstance(finish, Bound)  # only a bound project has this step
    way, strip = next_edge(scene), finish.binding.fabric
    words = ("1 stop where the seams meet", "2 fold away", "3 fold back, go on")
    for number, (draw_stage, text) in enumerate(zip((_stop, _fold_away, _fold_back), words, strict=True)):
        away = at((PANEL + GAP) * number, 0)
        scene.pen.cloth((_quilt(way).moved(away),), quilt)
        draw_stage(scene.pen, way, strip, away)
        scene.pen.caption(away + at(PANEL / 2, LONG + 26), text, PANEL + 14)


def _quilt(way: Point) -> Polygon:
    low = CORNER + way.scaled(LONG, LONG)
    return Polygon((Point(0.0, 0.0), CORNER, low, Point(0.0, low.y)))


def _meeting(way: Point, deep: float) -> Point:
    """Return where the lines so far inside both edges meet."""
    return inset(_quilt(way), deep).corners[1]


def _stop(pen: Pen, way: Point, strip: str, away: Point) -> None:
    band = Polygon.rectangle(0.0, 0.0, CORNER.x + 20, BAND)
    pen.cloth((band.moved(away),), strip)
    meeting = _meeting(way, LINE)
    pen.line((away + at(0, LINE), away + meeting), Stroke.SEWN)
    pen.line((away + CORNER, away + meeting + (meeting - CORNER).scaled(0.9, 0.9)), Stroke.SEAM)


def _fold_away(pen: Pen, way: Point, strip: str, away: Point) -> None:
    inner = _meeting(way, BAND)
    before = Polygon((Point(0.0, 0.0), CORNER, inner, Point(0.0, BAND)))
    beyond = Polygon((CORNER, CORNER + at(62, 0), inner + at(62, 0), inner))
    pen.cloth((before.moved(away),), strip)
    pen.cloth((mirrored(beyond, CORNER, inner).moved(away),), strip)
    pen.line((away + CORNER, away + inner), Stroke.FOLD)
    pen.line((away + at(0, LINE), away + _meeting(way, LINE)), Stroke.SEWN)


def _fold_back(pen: Pen, way: Point, strip: str, away: Point) -> None:
    inner = _meeting(way, BAND)
    pen.cloth((Polygon((Point(0.0, 0.0), CORNER, inner, Point(0.0, BAND))).moved(away),), strip)
    low = CORNER + way.scaled(LONG, LONG)
    aside = Point(-way.y * BAND, way.x * BAND)
    # The fold lies even with the first edge; the strip runs along the second.
    start = inner - way.scaled(inner.y / way.y, inner.y / way.y)
    pen.cloth((Polygon((CORNER, low, low + aside, start)).moved(away),), strip)
    pen.line((away + start, away + CORNER), Stroke.FOLD)
    pen.line((away + CORNER, away + inner), Stroke.HELP)
    half = aside.scaled(LINE / BAND, LINE / BAND)
    pen.line((away + _meeting(way, LINE), away + low + half), Stroke.SEWN)
    pen.line((away + at(0, LINE), away + _meeting(way, LINE)), Stroke.SEWN)
