"""The grid a drawing was made on, when nobody says it: the coarsest on whose points its corners lie."""

from __future__ import annotations

from fractions import Fraction

from evenseam.reading.drawing.placing import TOLERANCE, Frame, Grid, bounds, raw_position
from evenseam.reading.drawing.shapes import Sheet

MOST_SQUARES = 64
NEAR_WHOLE = Fraction(1, 40)
"""Rows may miss a whole number by this share of one."""


def guess_grid(sheet: Sheet, row_height: Fraction = Fraction(1)) -> Grid | None:
    """Return the coarsest grid that most corners lie on; None for a drawing without an extent."""
    solid = [shape for shape in sheet.shapes if not shape.is_dot]
    marked = [shape for shape in solid if shape.is_outline]
    if not solid:
        return None
    frame = bounds(spot for shape in marked or solid for spot in shape.corners)
    width, height = frame[2] - frame[0], frame[3] - frame[1]
    if width <= 0 or height <= 0:
        return None
    spots = list(dict.fromkeys(spot for shape in solid for spot in shape.corners))[:2000]
    best: tuple[int, Grid] | None = None
    for across in range(1, MOST_SQUARES + 1):
        rows = across * height / width / row_height
        down = max(1, round(rows))
        if not -NEAR_WHOLE <= rows - down <= NEAR_WHOLE:
            continue
        grid = Grid(Fraction(across), Fraction(down), row_height)
        on = sum(_is_on(spot, frame, grid) for spot in spots)
        if best is None or on > best[0]:
            best = (on, grid)
    if best is not None:
        return best[1]
    across = 12
    return Grid(Fraction(across), Fraction(max(1, round(across * height / width / row_height * 8)), 8), row_height)


def _is_on(spot: tuple[Fraction, Fraction], frame: Frame, grid: Grid) -> bool:
    off = (number - round(number) for number in raw_position(spot, frame, grid))
    return all(-TOLERANCE <= part <= TOLERANCE for part in off)
