"""A cutting plan to scale: the cloth between its selvages, strips and pieces in cutting order, and what is left."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from evenseam.cutting import CuttingPlan
from evenseam.cutting.plan import PlannedPiece
from evenseam.exact import format_number
from evenseam.figures.callouts import PITCH
from evenseam.figures.cloth_bands import (
    AFTER,
    BREAK,
    HIGHEST,
    Band,
    Stretch,
    fitted,
    height_of,
    stretches_of,
)
from evenseam.figures.cloth_work import draw_letter
from evenseam.figures.drawing import LABEL_SIZE, SMALL_SIZE, Anchor, Ink, Label, Pen, Stroke, Tone
from evenseam.figures.frame import WIDE, Frame, at, rectangle
from evenseam.figures.lettering import label_lines, text_width
from evenseam.figures.measure_line import AWAY, room_beside
from evenseam.figures.plane import Polygon, decimal
from evenseam.figures.scene import Scene
from evenseam.figures.spot import label_spot
from evenseam.pattern import CutShape

WIDEST_CLOTH = 300.0
SELVAGE = 7.0
BEFORE = 26.0
"""For the word beside the left selvage."""
NARROW = 190.0
"""Cloth is never drawn narrower than this."""
BRACKET = 5.0
"""From the cloth to the line beside narrow strips, and from that to their numbers."""
BELOW = 19.0
"""For numbers below a strip."""
MOST_BESIDE = 44.0
"""More numbers than fit here stand in several lines."""
_TRIES = 3


@dataclass(frozen=True, slots=True)
class Beside:
    """Numbers of pieces too narrow to hold them, and the stretch down the cloth where these lie."""

    top: float
    bottom: float
    text: str


@dataclass(frozen=True, slots=True)
class Narrow:
    """The number of a piece too narrow to hold it, and from where to where the piece lies across the cloth."""

    text: str
    left: float
    right: float

    @property
    def middle(self) -> float:
        """Of the piece."""
        return (self.left + self.right) / 2


def draw_cutting(scene: Scene, plan: CuttingPlan) -> None:
    """Draw the plan with its usable width and its length; every piece bears the number it has in the words."""
    width = plan.usable_width.value
    room = min(WIDEST_CLOTH, WIDE - BEFORE - 2 * SELVAGE - room_beside(plan.length.text))
    numbers = 0.0
    for _ in range(_TRIES):
        # The cloth is drawn on another sheet until it leaves room for the numbers beside it.
        frame = Frame.fitting(width, width, room - numbers, WIDEST_CLOTH)
        _, beside = _draw_cloth(replace(scene, pen=Pen(scene.looks)), plan, frame)
        if (reach := _reach(beside)) <= numbers:
            break
        numbers = reach
    down, beside = _draw_cloth(scene, plan, frame)
    _draw_edges(scene, plan, frame.length(width), down, beside)


def _draw_cloth(scene: Scene, plan: CuttingPlan, frame: Frame) -> tuple[float, list[Beside]]:
    """Draw the strips and pieces; return how far down they reach and which numbers are to stand beside them."""
    width_of_cloth = plan.usable_width.value
    bands, tall = fitted(plan, frame)
    if (high := height_of(bands, frame, tall)) > HIGHEST:
        # Even without what is alike it is long: smaller, but not so small that numbers no longer fit.
        least = Frame.fitting(width_of_cloth, width_of_cloth, NARROW, NARROW)
        frame = max(Frame(frame.scale * HIGHEST / high), least, key=lambda one: one.scale)
    down, beside = 0.0, list[Beside]()
    has_room_below = height_of(bands, frame, tall) + BELOW * len(bands) <= HIGHEST
    for band in bands:
        high = min(frame.length(band.bottom - band.top), tall)
        narrow = _draw_band(scene, plan, stretches_of(band, frame, down, tall), band)
        texts = tuple(dict.fromkeys(one.text for one in narrow))
        if len(texts) > 1 and len(band.strips) == 1 and has_room_below:
            _draw_below(scene.pen, narrow, down + high, frame.length(width_of_cloth))
            down += BELOW
        elif texts and beside and beside[-1].text == ", ".join(texts) and beside[-1].bottom == down:
            beside[-1] = Beside(beside[-1].top, down + high, ", ".join(texts))
        elif texts:
            beside.append(Beside(down, down + high, ", ".join(texts)))
        down += high
        if band.times > 1:
            down = _draw_alike(scene.pen, band.times, frame.length(width_of_cloth), down)
    return down, beside


def _draw_below(pen: Pen, narrow: Sequence[Narrow], down: float, width: float) -> None:
    """Write numbers below the pieces of a strip, each at a line below the neighbours that bear it."""
    runs: list[Narrow] = []
    for one in narrow:
        if runs and runs[-1].text == one.text:
            runs[-1] = Narrow(one.text, runs[-1].left, one.right)
        else:
            runs.append(one)
    halves = [text_width(one.text, SMALL_SIZE) / 2 for one in runs]
    middles: list[float] = []
    free = 0.0
    for one, half in zip(runs, halves, strict=True):
        middles.append(max(one.middle, free + half))
        free = middles[-1] + half + 4
    last = width
    for number in range(len(runs) - 1, -1, -1):
        middles[number] = min(middles[number], last - halves[number])
        last = middles[number] - halves[number] - 4
    for one, middle in zip(runs, middles, strict=True):
        pen.line((at(one.left + 1, down + 3), at(one.right - 1, down + 3)), Stroke.EDGE)
        pen.label(at(middle, down + BELOW / 2 + 3), one.text, size=SMALL_SIZE)


def _draw_edges(scene: Scene, plan: CuttingPlan, width: float, down: float, beside: Sequence[Beside]) -> None:
    """Draw the selvages, the measures, and the numbers that stand beside the cloth."""
    pen = scene.pen
    for left in (-SELVAGE, width):
        pen.area(rectangle(left, 0, SELVAGE, down), Tone.BOARD)
        pen.line((at(left, 0), at(left, down)), Stroke.EDGE)
    if down > 60:
        pen.label(at(-SELVAGE - 11, down / 2), "selvage", size=SMALL_SIZE, ink=Ink.QUIET, is_upward=True)
    pen.measure(at(0, -16), at(width, -16), f"usable width {plan.usable_width.text}")
    _draw_beside(pen, beside, width + SELVAGE, down)
    edge = width + SELVAGE + _reach(beside)
    pen.measure(at(edge + AWAY, 0), at(edge + AWAY, down), plan.length.text)


def _draw_beside(pen: Pen, beside: Sequence[Beside], edge: float, down: float) -> None:
    """Write numbers to the right of the cloth, each at a line beside its strips."""
    left = edge + 3 * BRACKET
    labels = [Label(at(left, 0.0), one.text, SMALL_SIZE, anchor=Anchor.START, wide=MOST_BESIDE) for one in beside]
    lines = [len(label_lines(label)) for label in labels]
    levels: list[float] = []
    free = float("-inf")
    for one, high in zip(beside, lines, strict=True):
        # A label's place is the middle of its first line.
        levels.append(max((one.top + one.bottom) / 2 - (high - 1) * PITCH / 2, free))
        free = levels[-1] + high * PITCH
    lowest = down + PITCH / 2
    for number in range(len(levels) - 1, -1, -1):
        levels[number] = min(levels[number], lowest - lines[number] * PITCH + PITCH / 2)
        lowest = levels[number] - PITCH / 2
    for one, label, level in zip(beside, labels, levels, strict=True):
        line = edge + BRACKET
        pen.line((at(line, one.top + 1), at(line, one.bottom - 1)), Stroke.EDGE)
        pen.line((at(line, (one.top + one.bottom) / 2), at(left - 2, level)), Stroke.EDGE)
        pen.draw((replace(label, at=at(left, level)),))


def _reach(beside: Sequence[Beside]) -> float:
    """Return how far the numbers beside the cloth reach out from it."""
    return max((3 * BRACKET + min(text_width(one.text, SMALL_SIZE), MOST_BESIDE) for one in beside), default=0.0)


def _draw_band(scene: Scene, plan: CuttingPlan, stretches: Sequence[Stretch], band: Band) -> tuple[Narrow, ...]:
    """Draw one band where its stretches lie; return the numbers of the pieces too narrow for them, left to right."""
    pen = scene.pen
    width = decimal(plan.usable_width.value)
    shown: list[tuple[PlannedPiece, Polygon]] = []
    for stretch in stretches:
        whole = stretch.shown(0.0, band.top, width, band.bottom)
        if whole is not None:
            pen.area(whole, Tone.LEFTOVER)
        for piece in band.pieces:
            left, top, wide, high = (decimal(one) for one in (piece.x, piece.y, piece.width, piece.height))
            if (outline := stretch.shown(left, top, wide, top + high)) is not None:
                shown.append((piece, outline))
    pen.cloth([outline for _, outline in shown], plan.material)
    for stretch in stretches:
        for strip in band.strips:
            end = decimal(strip.y + strip.height)
            if stretch.top < end <= stretch.bottom:
                left, wide = decimal(strip.x), decimal(strip.width)
                pen.line((stretch.place.spot(left, end), stretch.place.spot(left + wide, end)), Stroke.CUT)
    if len(stretches) > 1:
        over, under = stretches[0].place.spot(width, stretches[0].bottom), stretches[1].place.spot(0, stretches[1].top)
        _draw_break(pen, over.x, over.y, under.y)
    for piece, outline in shown:
        _draw_diagonals(scene, piece, outline)
    narrow, labelled = _label_pieces(scene, plan, shown)
    # Where the middle is left out, what is seen of a piece may be too little; it is enough that another is labelled.
    return narrow if len(stretches) == 1 else tuple(one for one in narrow if one.text not in labelled)


def _draw_break(pen: Pen, width: float, top: float, bottom: float) -> None:
    """Draw the line that says: something is left out here."""
    zigzag = [at(width * step / 12, bottom if step % 2 else top + 4) for step in range(13)]
    pen.line(zigzag, Stroke.EDGE)


def _draw_alike(pen: Pen, times: int, width: float, down: float) -> float:
    """Draw how many times a band comes, below it; return where the next begins."""
    _draw_break(pen, width, down, down + BREAK)
    words = at(width / 2, down + BREAK / 2 + 2)
    pen.label(words, f"{times} alike", size=SMALL_SIZE, is_bold=True, has_ground=True)
    return down + BREAK + AFTER


def _label_pieces(
    scene: Scene, plan: CuttingPlan, shown: Sequence[tuple[PlannedPiece, Polygon]]
) -> tuple[tuple[Narrow, ...], set[str]]:
    """Write the number of each piece, and its size where there is room; return where none was, and what was written."""
    narrow: list[Narrow] = []
    numbers, written = plan.numbers, set[str]()
    held: set[tuple[object, object]] = set()
    # Of a piece that is drawn in two parts the first that has room bears the words.
    for piece, outline in shown:
        place = (piece.x, piece.y)
        if place not in held and _label_piece(scene, plan, piece, outline, str(numbers[piece.cut])):
            held.add(place)
            written.add(str(numbers[piece.cut]))
    for piece, outline in shown:
        if (piece.x, piece.y) not in held:
            left, _, right, _ = outline.bounds
            narrow.append(Narrow(str(numbers[piece.cut]), left, right))
    return tuple(sorted(narrow, key=lambda one: one.middle)), written


def _label_piece(scene: Scene, plan: CuttingPlan, piece: PlannedPiece, outline: Polygon, number: str) -> bool:
    unit = scene.sheet.project.unit
    shape = scene.sheet.cuts.cut(piece.cut).shape
    if shape in TRIANGLES:
        return draw_letter(scene.pen, _first_part(shape, outline), number, plan.material, largest=SMALL_SIZE)
    words = f"{number}: {format_number(piece.width, unit)} × {format_number(piece.height, unit)}"
    if label_spot(outline, words, LABEL_SIZE) is None:
        words = number
    return draw_letter(scene.pen, outline, words, plan.material)


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
