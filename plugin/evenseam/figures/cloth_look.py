"""How each fabric of a project looks in pictures: letter, colour, the ink that reads on it, and a texture."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum

from evenseam.figures.colour import LEAST_FOR_LINES, LEAST_FOR_TEXT, Colour, mixed, readable_on
from evenseam.pattern import Fabric, fabric_letters

DARK_INK = "#2b2320"
PALE_INK = "#fbf4e6"
WARM_LINE = "#4b3a31"
PALE_LINE = "#f1e3cc"


class Texture(Enum):
    """Fine marks that tell fabrics apart without colour."""

    PLAIN = "plain"
    RISING = "rising lines"
    DOTS = "dots"
    LEVEL = "level lines"
    FALLING = "falling lines"
    UPRIGHT = "upright lines"
    CROSSES = "crosses"
    LATTICE = "rising and falling lines"
    DASHES = "dashes"


@dataclass(frozen=True, slots=True)
class ClothLook:
    """One fabric as it is drawn. Colours are literal; the web theme puts them behind custom properties."""

    fabric: str
    name: str
    letter: str
    colour: Colour
    """The right side."""
    ink: Colour
    """Letters on the right side, contrast 4.5 or more."""
    line: Colour
    """Outlines on the right side, contrast 3 or more."""
    mark: Colour
    """The texture: a quiet shade of the right side."""
    wrong: Colour
    """The wrong side."""
    wrong_ink: Colour
    wrong_line: Colour
    wrong_mark: Colour
    texture: Texture


def look_of(fabric: Fabric, letter: str, texture: Texture) -> ClothLook:
    """Return how one fabric is drawn."""
    colour = fabric.colour.lower()
    wrong = mixed(colour, "#fffaf0", 0.62)
    line = readable_on(colour, (WARM_LINE, PALE_LINE), LEAST_FOR_LINES)
    wrong_line = readable_on(wrong, (WARM_LINE, PALE_LINE), LEAST_FOR_LINES)
    return ClothLook(
        fabric=fabric.id,
        name=fabric.name,
        letter=letter,
        colour=colour,
        ink=readable_on(colour, (DARK_INK, PALE_INK), LEAST_FOR_TEXT),
        line=line,
        mark=mixed(colour, line, 0.3),
        wrong=wrong,
        wrong_ink=readable_on(wrong, (DARK_INK, PALE_INK), LEAST_FOR_TEXT),
        wrong_line=wrong_line,
        wrong_mark=mixed(wrong, wrong_line, 0.28),
        texture=texture,
    )


def looks_of(fabrics: Iterable[Fabric]) -> Mapping[str, ClothLook]:
    """Return how every fabric of a project is drawn, by fabric id; neighbours in the list differ in texture."""
    listed = tuple(fabrics)
    letters = fabric_letters(listed)
    textures = tuple(Texture)
    return {
        fabric.id: look_of(fabric, letters[fabric.id], textures[number % len(textures)])
        for number, fabric in enumerate(listed)
    }
