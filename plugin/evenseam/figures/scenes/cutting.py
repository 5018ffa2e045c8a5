"""A cutting plan to scale: the cloth between its selvages, strips and pieces in cutting order, and what is left."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from evenseam.cutting import CuttingPlan
from evenseam.cutting.plan import PlannedPiece, PlannedStrip
from evenseam.exact import Number, format_number
from evenseam.figures.cloth_work import draw_letter
from evenseam.figures.drawing import LABEL_SIZE, SMALL_SIZE, Ink, Stroke, Tone
from evenseam.figures.frame import Frame, at, rectangle
from evenseam.figures.plane import Polygon
from evenseam.figures.scene import Scene
from evenseam.figures.spot import label_spot
from evenseam.pattern import CutShape

WIDE = 300.0
HIGHEST = 420.0
"""Cloth longer than this is drawn with strips that are alike left out."""
SELVAGE = 7.0
NARROW = 190.0
"""Cloth is never drawn narrower than this."""
BREAK = 16.0


@dataclass(frozen=True, slots=True)
class Band:
    """A stretch of the cloth: strips that lie side by side, and how many times it comes."""

    top: Number
    bottom: Number
    strips: tuple[PlannedStrip, ...]
    times: int


Words: TypeAlias = dict[tuple[str, Number, Number], str]
"""What is written on a piece, by the cut it is for and its sides as it lies; there are many alike."""


def draw_cutting(scene: Scene, plan: CuttingPlan) -> None:
    """Draw the plan with its usable width and its length; every piece bears the number it has in the words."""
    width_of_cloth = plan.usable_width.value
    frame = Frame.fitting(width_of_cloth, width_of_cloth, WIDE, WIDE)
    bands = bands_of(plan, frame)
    long = sum(float(band.bottom - band.top) for band in bands)
    if frame.length(long) > HIGHEST:
        # Even without what is alike it is long: smaller, but not so small that numbers no longer fit.
        frame = Frame.fitting(width_of_cloth, long, WIDE, HIGHEST)
        frame = max(frame, Frame.fitting(width_of_cloth, width_of_cloth, NARROW, NARROW), key=lambda one: one.scale)
    down = 0.0
    words: Words = {}
    for band in bands:
        down = _draw_band(scene, plan, band, frame, down, words)
    width = frame.length(plan.usable_width.value)
    pen = scene.pen
    for left in (-SELVAGE, width):
        pen.area(rectangle(left, 0, SELVAGE, down), Tone.BOARD)
        pen.line((at(left, 0), at(left, down)), Stroke.EDGE)
    if down > 60:
        pen.label(at(-SELVAGE - 9, down / 2), "selvage", size=SMALL_SIZE, ink=Ink.QUIET, is_upward=True)
    pen.measure(at(0, -14), at(width, -14), f"usable width {plan.usable_width.text}")
    pen.measure(at(width + SELVAGE + 10, 0), at(width + SELVAGE + 10, down), plan.length.text)


def bands_of(plan: CuttingPlan, frame: Frame) -> tuple[Band, ...]:
    """Return the strips in bands down the cloth; equal bands that follow each other are one where the cloth is long."""
    bands: list[Band] = []
    for strip in sorted(plan.strips, key=lambda one: (one.y, one.x)):
        if bands and strip.y < bands[-1].bottom:
            last = bands[-1]
            bottom = max(last.bottom, strip.y + strip.height)
            bands[-1] = Band(last.top, bottom, (*last.strips, strip), 1)
        else:
            bands.append(Band(strip.y, strip.y + strip.height, (strip,), 1))
    if frame.length(sum(float(band.bottom - band.top) for band in bands)) <= HIGHEST:
        return tuple(bands)
    merged: list[Band] = []
    for band in bands:
        if merged and _shape(merged[-1]) == _shape(band):
            last = merged[-1]
            merged[-1] = Band(last.top, last.bottom, last.strips, last.times + 1)
        else:
            merged.append(band)
    return tuple(merged)


def _shape(band: Band) -> tuple[object, ...]:
    return tuple(
        (
            strip.direction,
            strip.x,
            strip.width,
            strip.height,
            piece.cut,
            piece.x,
            piece.y - band.top,
            piece.width,
            piece.height,
        )
        for strip in band.strips
        for piece in strip.pieces
    )


def _draw_band(scene: Scene, plan: CuttingPlan, band: Band, frame: Frame, down: float, words: Words) -> float:
    """Draw one band from `down` and return where the next begins."""
    pen = scene.pen
    high = frame.length(band.bottom - band.top)
    width = frame.length(plan.usable_width.value)
    pen.area(rectangle(0, down, width, high), Tone.LEFTOVER)
    place = frame.moved_to(at(0, down - frame.length(band.top)))
    pieces = [piece for strip in band.strips for piece in strip.pieces]
    outlines = [place.polygon(rectangle(piece.x, piece.y, piece.width, piece.height)) for piece in pieces]
    pen.cloth(outlines, plan.material)
    for strip in band.strips:
        ends = (strip.x, strip.y + strip.height), (strip.x + strip.width, strip.y + strip.height)
        pen.line((place.spot(*ends[0]), place.spot(*ends[1])), Stroke.CUT)
    for piece, outline in zip(pieces, outlines, strict=True):
        _draw_diagonals(scene, piece, outline)
    for piece, outline in zip(pieces, outlines, strict=True):
        _label_piece(scene, plan, piece, outline, words)
    down = down + high
    if band.times == 1:
        return down
    zigzag = [at(width * Fraction(step, 12), down + (BREAK if step % 2 else 4)) for step in range(13)]
    pen.line(zigzag, Stroke.HELP)
    pen.label(
        at(width / 2, down + BREAK / 2 + 2), f"{band.times} alike", size=SMALL_SIZE, is_bold=True, has_ground=True
    )
    return down + BREAK + 4


def _label_piece(scene: Scene, plan: CuttingPlan, piece: PlannedPiece, outline: Polygon, words: Words) -> None:
    """Write a piece's number, and its size as it lies on the cloth where there is room."""
    shape = scene.sheet.cuts.cut(piece.cut).shape
    key = piece.cut, piece.width, piece.height
    if key not in words:
        words[key] = _words(scene, plan, piece, outline)
    if shape in TRIANGLES:
        draw_letter(scene.pen, _first_part(shape, outline), words[key], plan.material, largest=SMALL_SIZE)
    else:
        draw_letter(scene.pen, outline, words[key], plan.material)


def _words(scene: Scene, plan: CuttingPlan, piece: PlannedPiece, outline: Polygon) -> str:
    """Return what is written on every piece of this kind that lies this way."""
    unit = scene.sheet.project.unit
    number = str(plan.numbers[piece.cut])
    if scene.sheet.cuts.cut(piece.cut).shape in TRIANGLES:
        return number
    words = f"{number}: {format_number(piece.width, unit)} × {format_number(piece.height, unit)}"
    return number if label_spot(outline, words, LABEL_SIZE, 9) is None else words


TRIANGLES = (CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE)


def _draw_diagonals(scene: Scene, piece: PlannedPiece, outline: Polygon) -> None:
    """Draw how a square is cut into triangles: once from corner to corner, or twice."""
    shape = scene.sheet.cuts.cut(piece.cut).shape
    one, two, three, four = outline.corners
    if shape in TRIANGLES:
        scene.pen.line((two, four), Stroke.CUT)
    if shape is CutShape.QUARTER_SQUARE_TRIANGLE:
        scene.pen.line((one, three), Stroke.CUT)


def _first_part(shape: CutShape, outline: Polygon) -> Polygon:
    """Return the triangle that bears the number where a square is cut into triangles; all of anything else."""
    one, two, three, four = outline.corners
    half = 0.5
    match shape:
        case CutShape.HALF_SQUARE_TRIANGLE:
            return Polygon((one, two, four))
        case CutShape.QUARTER_SQUARE_TRIANGLE:
            return Polygon((one, two, (one + three).scaled(half, half)))
    return outline
