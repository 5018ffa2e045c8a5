"""The fabrics of a picture by letter and name, in a row below it."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.figures.drawing import LABEL_SIZE, Anchor, Label, Pen
from evenseam.figures.frame import WIDE, at, rectangle
from evenseam.figures.lettering import LINE_HEIGHT, label_lines, text_width
from evenseam.figures.plane import Point

_SWATCH = 22.0
_LINE = 30.0


def draw_legend(pen: Pen, fabrics: Iterable[str], corner: Point, wide: float) -> None:
    """Draw a swatch, a letter and a name for each fabric, from a top left corner, in as many lines as it takes."""
    x, y, line = corner.x, corner.y, _LINE
    for fabric in dict.fromkeys(fabrics):
        look = pen.looks[fabric]
        long = _SWATCH + 8 + text_width(look.name, LABEL_SIZE)
        if x > corner.x and x + long > corner.x + wide:
            x, y, line = corner.x, y + line, _LINE
        pen.cloth((rectangle(x, y, _SWATCH, _SWATCH),), fabric)
        pen.label(at(x + _SWATCH / 2, y + _SWATCH / 2), look.letter, on_fabric=fabric, is_bold=True)
        name = Label(
            at(x + _SWATCH + 7, y + _SWATCH / 2), look.name, anchor=Anchor.START, wide=max(wide, WIDE) - _SWATCH - 8
        )
        pen.draw((name,))
        line = max(line, _LINE + (len(label_lines(name)) - 1) * LABEL_SIZE * LINE_HEIGHT)
        x = x + long + 16
