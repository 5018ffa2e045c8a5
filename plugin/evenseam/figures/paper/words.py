"""What template paper needs of a language: phrases by name, and figures as the language writes them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

TABLE = "paper"
"""The table of phrases for paper. All of them are named here or where they are printed."""
ONE_INCH = "1 in"
TWO_CENTIMETRES = "2 cm"
TWO_INCHES = "2 in"
FIVE_CENTIMETRES = "5 cm"


class PaperWords(Protocol):
    """The words of one language."""

    @property
    def code(self) -> str:
        """Code of the language: en, en-GB."""

    def word(self, table: str, key: str) -> str:
        """Return a phrase."""

    def fill(self, table: str, key: str, **parts: object) -> str:
        """Return a phrase with its {places} filled."""

    def counted(self, table: str, key: str, count: int, **parts: object) -> str:
        """Return the one of two phrases that stands with a number, filled."""

    def parts(self, table: str, key: str) -> Sequence[str]:
        """Return a phrase that is written in parts."""

    def figure(self, text: str) -> str:
        """Return a printed figure as the language writes it."""
