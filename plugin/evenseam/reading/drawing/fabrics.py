"""Which fabric a shape is of: by a class or id that names it, by a word in the drawing, or by its colour."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from evenseam.problems import Report
from evenseam.reading.drawing import codes
from evenseam.reading.drawing.shapes import DrawnShape
from evenseam.reading.leaves import shown

MOST_TOLD = 20
_NUMBERED = re.compile(r"[-_. ]*\d+$", re.ASCII)


@dataclass(slots=True)
class Palette:
    """The fabrics a drawing may be of."""

    colours: Mapping[str, str] = field(default_factory=dict)
    """Fabric by colour, #rrggbb: what the pattern file's table says."""
    fabrics: Mapping[str, str] | None = field(default_factory=dict)
    """Colour by fabric. None when the fabrics cannot be known: then every colour is taken as it is."""
    is_open: bool = False
    """True for a drawing looked at by itself: each colour is a fabric of its own."""

    def fabric(self, shape: DrawnShape) -> str | None:
        """Return the fabric of a shape, or None when nothing about it says one."""
        known = self.fabrics or {}
        spoken = {_plain(name): name for name in known}
        for word in (shape.text, *shape.words):
            for form in (word, _NUMBERED.sub("", word)):
                if form and _plain(form) in spoken:
                    return spoken[_plain(form)]
        if shape.text:
            return shape.text if self.is_open else None
        if self.is_open and not shape.is_fill_said and shape.words:
            return shape.words[0]
        colour = shape.fill.colour
        if colour is None:
            return None
        if colour in self.colours:
            return self.colours[colour]
        alike = [name for name, own in known.items() if own == colour]
        if alike:
            return alike[0]
        return colour if self.is_open or self.fabrics is None else None

    def nearest(self, colour: str) -> tuple[str, str] | None:
        """Return the fabric whose colour is nearest, with that colour."""
        named = [*(self.fabrics or {}).items(), *((fabric, known) for known, fabric in self.colours.items())]
        return min(named, key=lambda item: _difference(item[1], colour), default=None)


def report_unknown(shapes: list[DrawnShape], palette: Palette, report: Report) -> None:
    """Report shapes of no fabric, each colour once for every place, with the nearest fabric."""
    for shape in shapes[:MOST_TOLD]:
        if shape.fill.word:
            message = f"the fill {shown(shape.fill.word)} is no plain colour"
            hint = "fill the piece with one colour: a piece is cut from one fabric, and a print is a fabric too"
            report.add(codes.FILL_NOT_A_COLOUR, shape.place, message, hint)
            continue
        if shape.text:
            message = f"no fabric is called {shown(shape.text)}"
            hint = "write the fabric's word from the pattern file, or define it under `fabrics`"
            report.add(codes.COLOUR_WITHOUT_FABRIC, shape.place, message, hint)
            continue
        colour = shape.fill.colour or ""
        near = palette.nearest(colour)
        message = f"no fabric has the colour {colour}"
        hint = f'say what it is in the block: colours: {{"{colour}": {near[0] if near else "sea"}}}'
        hint += f" ({near[0]}, {near[1]}, is the nearest)" if near else ""
        report.add(codes.COLOUR_WITHOUT_FABRIC, shape.place, message, hint)


def _plain(word: str) -> str:
    return re.sub(r"[-_\s]+", " ", word).strip().lower()


def _difference(one: str, other: str) -> int:
    """Return how far two colours are apart, weighed roughly as the eye does (common practice)."""
    parts = [int(one[at : at + 2], 16) - int(other[at : at + 2], 16) for at in (1, 3, 5)]
    return 3 * parts[0] ** 2 + 6 * parts[1] ** 2 + parts[2] ** 2
