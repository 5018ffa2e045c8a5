"""Where something stands: a text and the lines and columns in it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True, slots=True)
class SourceText:
    """A text and the name its author knows it by, such as patterns/lantern/pattern.yaml."""

    name: str
    text: str

    def line(self, number: int) -> str:
        """Return a line, counted from 1, without its end; an empty text for a line that is not there."""
        lines = _lines(self.text)
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


@lru_cache(maxsize=8)
def _lines(text: str) -> tuple[str, ...]:
    """Return the lines of a text as an editor counts them: other separators do not begin one."""
    return tuple(re.split("\r\n|\r|\n", text))
