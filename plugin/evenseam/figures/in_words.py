"""A drawing with its words in another language; what is drawn stays where it is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from evenseam.figures.drawing import Drawing, Label, Measure, Shape


def in_words(drawing: Drawing, say: Callable[[str], str]) -> Drawing:
    """Return the drawing with every label and every figure on a measure line as `say` gives it."""
    shapes: list[Shape] = []
    for shape in drawing.shapes:
        if isinstance(shape, (Label, Measure)):
            said = say(shape.text)
            shapes.append(shape if said == shape.text else replace(shape, text=said))
        else:
            shapes.append(shape)
    return replace(drawing, shapes=tuple(shapes))
