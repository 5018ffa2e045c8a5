"""The fabrics of a picture by letter and name, in a row below it."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.figures.drawing import LABEL_SIZE, Anchor, Pen
from evenseam.figures.frame import at, rectangle
from evenseam.figures.lettering import text_width
from evenseam.figures.plane import Point

_SWATCH = 22.0
_LINE = 30.0


def draw_legend(pen: Pen, fabrics: Iterable[str], corner: Point, wide: float) -> None:
    """Draw a swatch, a letter and a name for each fabric, from a top left corner, in as many lines as it takes."""
    x, y = corner.x, corner.y
    for fabric in dict.fromkeys(fabrics):
        look = pen.looks[fabric]
        long = _SWATCH + 8 + text_width(look.name, LABEL_SIZE)
        if x > corner.x and x + long > corner.x + wide:
            x, y = corner.x, y + _LINE
        pen.cloth((rectangle(x, y, _SWATCH, _SWATCH),), fabric)
        pen.label(at(x + _SWATCH / 2, y + _SWATCH / 2), look.letter, on_fabric=fabric, is_bold=True)
        pen.label(at(x + _SWATCH + 7, y + _SWATCH / 2), look.name, anchor=Anchor.START)
        x = x + long + 16
