"""Fabrics of a pattern, and the other materials that are cut."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import chain

from evenseam.problems import Place

BATTING = "batting"
"""The material name of the batting layer in a cut list; no fabric may have this name."""
INSULATION = "insulation"
"""The material name of a layer of heat-resistant batting; no fabric may have this name."""
BATTINGS = (BATTING, INSULATION)
"""Layers between top and backing, bought as one piece each."""


@dataclass(frozen=True, slots=True)
class Fabric:
    """A fabric as the author names it."""

    id: str
    """The key in the pattern file: short, unique."""
    name: str
    """What a maker reads: Deep Sea."""
    colour: str
    """#rrggbb, for pictures."""
    is_directional: bool = False
    """True when the print has an up: its pieces are cut so that the print runs one way."""
    role: str = ""
    """What it is used for, in the author's words; may be empty."""
    place: Place | None = field(default=None, compare=False)


def fabric_letters(fabrics: Iterable[Fabric]) -> dict[str, str]:
    """Return for each fabric id the letter that stands for it in every picture, list and template.

    The first letter of its name that no earlier fabric has, so that a maker can guess it; then any letter left; then
    pairs of letters.

    >>> fabric_letters((Fabric("sea", "Deep Sea", "#23465f"), Fabric("dune", "Dune", "#d8c7a0")))
    {'sea': 'D', 'dune': 'U'}
    """
    letters: dict[str, str] = {}
    for fabric in fabrics:
        own = [sign for sign in fabric.name.upper() if sign in _LETTERS]
        pairs = (first + second for first in _LETTERS for second in _LETTERS)
        letters[fabric.id] = next(letter for letter in chain(own, _LETTERS, pairs) if letter not in letters.values())
    return letters


_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
