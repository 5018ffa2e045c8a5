"""The language in which changes are told: English as it stands in the code, or another that knows its sentences."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from evenseam.exact import Unit

EDITIONS = {Unit.INCH: "inches", Unit.CENTIMETRE: "centimetres"}


class Speech(Protocol):
    """Says what is written in English here in the language of whoever reads it."""

    def said(self, sentence: str, **parts: str) -> str:
        """Return a sentence with its {places} filled; what is put in is said already."""

    def name(self, label: str) -> str:
        """Return the name of a cut, a fabric or a block."""

    def step(self, label: str) -> str:
        """Return the name of a step."""

    def figure(self, text: str) -> str:
        """Return a printed figure."""

    def edition(self, unit: Unit) -> str:
        """Return the name of an edition."""

    def listed(self, names: Sequence[str]) -> str:
        """Return names as a spoken list."""


class English:
    """Says everything as it is written here: for reviews, which are read by those who write patterns."""

    def said(self, sentence: str, **parts: str) -> str:
        """Return a sentence with its {places} filled."""
        return sentence.format(**parts)

    def name(self, label: str) -> str:
        """Return a name as it is."""
        return label

    def step(self, label: str) -> str:
        """Return the name of a step as it is."""
        return label

    def figure(self, text: str) -> str:
        """Return a figure as it is."""
        return text

    def edition(self, unit: Unit) -> str:
        """Return the name of an edition."""
        return EDITIONS.get(unit, "")

    def listed(self, names: Sequence[str]) -> str:
        """Return names as a spoken list: a, b and c."""
        return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else "".join(names)


ENGLISH = English()
