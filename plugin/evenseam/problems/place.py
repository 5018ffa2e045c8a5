"""Where something stands: a text and the lines and columns in it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SourceText:
    """A text and the name its author knows it by, such as patterns/lantern/pattern.yaml."""

    name: str
    text: str

    def line(self, number: int) -> str:
        """Return a line, counted from 1, without its end; an empty text for a line that is not there."""
        lines = self.text.splitlines()
        return lines[number - 1] if 0 < number <= len(lines) else ""


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A stretch of a text: file name, lines and columns counted from 1; the end column is the first one outside."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"
