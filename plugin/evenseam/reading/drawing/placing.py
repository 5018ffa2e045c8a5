"""From the page to the grid: which part of the page is the block, and which point of the grid each corner means.

A corner means a point of the grid when it lies within TOLERANCE of it; points lie on every eighth of a square. A
corner may also lie where two lines of the drawing cross, or where one meets another, wherever that is; such corners
are put exactly onto those lines, so that no sliver is left beside them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TypeAlias

from evenseam.problems import Report
from evenseam.reading.drawing import codes
from evenseam.reading.drawing.shapes import DrawnShape, Sheet
from evenseam.reading.drawing.transforms import Spot
from evenseam.reading.plane import Corner

STEP = Fraction(1, 8)
"""Of a grid square: how finely the points lie that corners are put on."""
TOLERANCE = Fraction(1, 50)
"""Of a grid square: a corner this near to a point or a line is on it."""
CLOSE = Fraction(1, 200)
EXACT = Fraction(1, 4000)
"""Of a grid square: a corner this near to a point or a line is on it before anything farther away is thought of."""
STRETCH = Fraction(1, 50)
"""A drawing may differ from the proportions of its grid by this share."""
SIMPLE = (1, 2, 3, 4, 5, 6, 8, 10, 12, 16)
"""A corner where pieces meet freely may lie on such parts of a square."""
MOST_SOUGHT = 300
"""Corners for which a crossing of lines is looked for."""
MOST_LINES = 3000
MOST_FOLLOWED = 20
MOST_COMPARED = 1_500_000
"""Corners held against lines in one drawing; what is not found by then is off the grid."""

Frame: TypeAlias = tuple[Fraction, Fraction, Fraction, Fraction]
"""Left, top, right, bottom on the page."""
_FINE = 1 << 40
_Raw: TypeAlias = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Grid:
    """The grid a drawing is put on."""

    across: Fraction
    down: Fraction
    row_height: Fraction = Fraction(1)
    """Height of a row by the width of a square: 1, or near √3/2 for rows of triangles."""


@dataclass(slots=True)
class OffGrid:
    """A corner that means no point."""

    shape: DrawnShape
    spot: Spot
    raw: Corner
    nearest: Corner
    distance: Fraction
    """In hundredths of a square, rounded."""


@dataclass(slots=True)
class Placed:
    """The drawing on its grid."""

    frame: Frame
    corners: dict[Spot, Corner]
    """Where each corner of the page lies on the grid, as far as it is known."""
    off: list[OffGrid] = field(default_factory=list)

    def of(self, shape: DrawnShape) -> list[Corner] | None:
        """Return the corners of a shape on the grid, or None when one of them is off it."""
        found = [self.corners.get(spot) for spot in shape.corners]
        return None if None in found else [corner for corner in found if corner is not None]


def bounds(spots: Iterable[Spot]) -> Frame:
    """Return left, top, right and bottom."""
    listed = list(spots)
    across, down = [x for x, _ in listed], [y for _, y in listed]
    return min(across), min(down), max(across), max(down)


def place_on_grid(sheet: Sheet, shapes: Sequence[DrawnShape], grid: Grid, report: Report) -> Placed | None:
    """Put shapes on a grid; None, with the reason in the report, when the drawing does not fit it."""
    frames = _frames(sheet, shapes, grid, report)
    if not frames:
        return None
    solid = [shape for shape in shapes if not shape.is_dot]
    tries = [(frame, _raw_corners(solid, frame, grid)) for frame in frames]
    frame, raw = min(tries, key=lambda each: sum(_near_grid(at, CLOSE) is None for at in each[1].values()))
    finder = _Finder(solid, raw)
    finder.find()
    placed = Placed(frame, finder.found_spots())
    for shape in solid:
        for spot in shape.corners:
            if spot not in placed.corners and spot not in {off.spot for off in placed.off}:
                corner = _from_raw(raw[spot])
                nearest = tuple(Fraction(round(number / STEP)) * STEP for number in corner)
                across, down = corner[0] - nearest[0], corner[1] - nearest[1]
                distance = max(abs(across), abs(down))
                placed.off.append(OffGrid(shape, spot, corner, (nearest[0], nearest[1]), Fraction(distance)))
    return placed


def raw_position(spot: Spot, frame: Frame, grid: Grid) -> Corner:
    """Return where a point of the page lies on the grid, as drawn."""
    left, top, right, bottom = frame
    return (spot[0] - left) / (right - left) * grid.across, (spot[1] - top) / (bottom - top) * grid.down


def _frames(sheet: Sheet, shapes: Sequence[DrawnShape], grid: Grid, report: Report) -> list[Frame]:
    """Return the parts of the page that may be the block: marked, else round all shapes, else the whole page."""
    marked = [shape for shape in shapes if shape.is_outline and not shape.is_dot]
    drawn = [shape for shape in shapes if not shape.is_dot]
    if not drawn:
        message = "nothing is drawn that could be a piece"
        hint = "draw each piece as a closed shape filled with the colour of its fabric, or the seams as lines"
        report.add(codes.NOTHING_DRAWN, shapes[0].place if shapes else None, message, hint)
        return []
    box = bounds(spot for shape in marked or drawn for spot in shape.corners)
    found = [box] if marked or sheet.page is None else [box, sheet.page]
    fitting = [frame for frame in found if _fits(frame, grid)]
    if not fitting:
        width, height = box[2] - box[0], box[3] - box[1]
        message = (
            f"the drawing is {_short(width)} wide and {_short(height)} high; "
            f"the grid of {_short(grid.across)} x {_short(grid.down)} has other proportions"
        )
        hint = "the shapes must reach all four sides of the block; "
        if width > 0 and height > 0:
            rows = grid.across * height / width / grid.row_height
            hint += f"with {_short(grid.across)} squares across, it is {_short(rows)} squares down"
        else:
            hint += "this drawing has no area"
        report.add(codes.PROPORTIONS, (marked or drawn)[0].place, message, hint)
    return fitting


def _fits(frame: Frame, grid: Grid) -> bool:
    width, height = frame[2] - frame[0], frame[3] - frame[1]
    if width <= 0 or height <= 0:
        return False
    ratio = (width / grid.across) / (height / (grid.down * grid.row_height))
    return -STRETCH <= ratio - 1 <= STRETCH


def _raw_corners(shapes: Sequence[DrawnShape], frame: Frame, grid: Grid) -> dict[Spot, _Raw]:
    spots = dict.fromkeys(spot for shape in shapes for spot in shape.corners)
    return {spot: _to_raw(raw_position(spot, frame, grid)) for spot in spots}


def _to_raw(corner: Corner) -> _Raw:
    return round(corner[0] * _FINE), round(corner[1] * _FINE)


def _from_raw(raw: _Raw) -> Corner:
    return Fraction(raw[0], _FINE), Fraction(raw[1], _FINE)


def _near_grid(raw: _Raw, tolerance: Fraction) -> Corner | None:
    found: list[Fraction] = []
    for number in raw:
        step = _near_step(number, tolerance)
        if step is None:
            return None
        found.append(step)
    return found[0], found[1]


def _near_step(number: int, tolerance: Fraction) -> Fraction | None:
    grain = int(_FINE * STEP)
    steps = (2 * number + grain) // (2 * grain)
    return steps * STEP if abs(number - steps * grain) <= tolerance * _FINE else None


class _Finder:
    """Finds the point that each corner means, the surest first."""

    def __init__(self, shapes: Sequence[DrawnShape], raw: dict[Spot, _Raw]) -> None:
        self.raw = raw
        self.found: dict[_Raw, Corner] = {}
        self.open = list(dict.fromkeys(raw.values()))
        self.compared = 0
        edges: dict[tuple[_Raw, _Raw], None] = {}
        self.beside: dict[_Raw, dict[_Raw, None]] = {}
        for shape in shapes:
            corners = [raw[spot] for spot in shape.corners]
            is_ring = shape.is_closed or shape.is_area
            for one, other in zip(corners, (*corners[1:], corners[0]) if is_ring else corners[1:], strict=False):
                if one != other:
                    edges[min(one, other), max(one, other)] = None
                    self.beside.setdefault(one, {})[other] = None
                    self.beside.setdefault(other, {})[one] = None
        self.edges = list(edges)

    def found_spots(self) -> dict[Spot, Corner]:
        return {spot: self.found[raw] for spot, raw in self.raw.items() if raw in self.found}

    def find(self) -> None:
        if len(self.open) > MOST_SOUGHT * 4 or len(self.edges) > MOST_LINES:
            self.settle_on_grid(TOLERANCE)
            return
        for tolerance in (EXACT, CLOSE, TOLERANCE):
            self.settle_on_grid(tolerance)
            if len(self.open) > MOST_SOUGHT:
                continue
            while self.settle_on_lines(tolerance, needed=2) or self.settle_on_lines(tolerance, needed=1):
                pass
            self.settle_freely(min(tolerance, CLOSE))

    def settle(self, raw: _Raw, corner: Corner) -> None:
        # Corners drawn a hair apart are one corner.
        for other in [other for other in self.open if _is_near(other, raw, CLOSE)]:
            self.found[other] = corner
            self.open.remove(other)

    def settle_on_grid(self, tolerance: Fraction) -> None:
        for raw in self.open:
            corner = _near_grid(raw, tolerance)
            if corner is not None:
                self.found[raw] = corner
        self.open = [raw for raw in self.open if raw not in self.found]

    def settle_on_lines(self, tolerance: Fraction, needed: int) -> bool:
        """Put corners where two lines cross, or onto one line at a simple part of a square; tell whether any was."""
        settled = False
        for raw in list(self.open):
            if raw not in self.open:
                continue
            lines = self.lines_near(raw, tolerance)
            corner = _crossing(lines, raw, tolerance) if needed == 2 else None
            if needed == 1 and lines:
                corner = _on_line(lines[0], raw, tolerance)
            if corner is not None:
                self.settle(raw, corner)
                settled = True
                if needed == 1:
                    return True
        return settled

    def settle_freely(self, tolerance: Fraction) -> None:
        for raw in list(self.open):
            simple = [_near_simple(number, tolerance) for number in raw]
            if raw in self.open and simple[0] is not None and simple[1] is not None:
                self.settle(raw, (simple[0], simple[1]))

    def lines_near(self, raw: _Raw, tolerance: Fraction) -> list[tuple[Corner, Corner]]:
        """Return lines that are known and run past a corner: edges, ways straight on through it, lines of the grid."""
        lines: list[tuple[Corner, Corner]] = []
        self.compared += len(self.edges)
        if self.compared > MOST_COMPARED:
            return lines
        for one, other in self.edges:
            if one in self.found and other in self.found and _runs_past(one, other, raw, tolerance):
                lines.append((self.found[one], self.found[other]))
        ends = (self.follow(raw, way, tolerance) for way in self.beside.get(raw, {}))
        beside = [end for end in ends if end is not None]
        for index, one in enumerate(beside):
            for other in beside[:index]:
                if _runs_past(one, other, raw, tolerance):
                    lines.append((self.found[one], self.found[other]))
        across, down = (_near_step(number, tolerance) for number in raw)
        if across is not None:
            lines.append(((across, Fraction(0)), (across, Fraction(1))))
        if down is not None:
            lines.append(((Fraction(0), down), (Fraction(1), down)))
        return lines

    def follow(self, start: _Raw, way: _Raw, tolerance: Fraction) -> _Raw | None:
        """Return the first known corner straight on from a corner along one of its edges."""
        for _ in range(MOST_FOLLOWED):
            if way in self.found:
                return way
            onward = [far for far in self.beside.get(way, {}) if _runs_past(start, far, way, tolerance)]
            if not onward:
                return None
            way = onward[0]
        return None


def _is_near(one: _Raw, other: _Raw, tolerance: Fraction) -> bool:
    return max(abs(one[0] - other[0]), abs(one[1] - other[1])) <= tolerance * _FINE


def _runs_past(one: _Raw, other: _Raw, spot: _Raw, tolerance: Fraction) -> bool:
    """Tell whether a spot lies on the stretch between two others, its ends left out."""
    across, down = other[0] - one[0], other[1] - one[1]
    x, y = spot[0] - one[0], spot[1] - one[1]
    square = across * across + down * down
    far = across * x + down * y
    off = across * y - down * x
    return 0 < far < square and off * off * tolerance.denominator**2 <= square * (tolerance.numerator * _FINE) ** 2


def _crossing(lines: list[tuple[Corner, Corner]], raw: _Raw, tolerance: Fraction) -> Corner | None:
    """Return the crossing of two of the lines that is nearest to a corner, if it is near."""
    here = _from_raw(raw)
    nearest: tuple[Fraction, Corner] | None = None
    for index, (a, b) in enumerate(lines):
        for c, d in lines[:index]:
            turn = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
            if turn == 0:
                continue
            share = Fraction((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / turn
            spot = (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))
            far = max(abs(spot[0] - here[0]), abs(spot[1] - here[1]))
            if far <= 4 * tolerance and (nearest is None or far < nearest[0]):
                nearest = (Fraction(far), spot)
    return nearest[1] if nearest else None


def _on_line(line: tuple[Corner, Corner], raw: _Raw, tolerance: Fraction) -> Corner | None:
    """Return the point of a line with a simple part of a square on one axis, if there is one here."""
    (a, b), here = line, _from_raw(raw)
    step = (Fraction(b[0] - a[0]), Fraction(b[1] - a[1]))
    axis = 0 if abs(step[0]) >= abs(step[1]) else 1
    for first in (axis, 1 - axis):
        simple = _near_simple(raw[first], min(tolerance, CLOSE))
        if simple is None or step[first] == 0:
            continue
        second = a[1 - first] + (simple - a[first]) * Fraction(step[1 - first]) / step[first]
        if abs(second - here[1 - first]) <= 4 * tolerance:
            return (simple, second) if first == 0 else (second, simple)
    return None


def _near_simple(number: int, tolerance: Fraction) -> Fraction | None:
    for parts in SIMPLE:
        count = (2 * number * parts + _FINE) // (2 * _FINE)
        if abs(Fraction(number, _FINE) - Fraction(count, parts)) <= tolerance:
            return Fraction(count, parts)
    return None


def _short(number: Fraction) -> str:
    hundredths = round(number * 100)
    text = f"{hundredths // 100}.{hundredths % 100:02d}"
    return text.rstrip("0").rstrip(".")
