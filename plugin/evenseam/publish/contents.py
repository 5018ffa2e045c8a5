"""The contents list of a page."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from evenseam.publish.html_text import escape


@dataclass(frozen=True, slots=True)
class ContentsEntry:
    """One line of a page's contents list."""

    level: int
    id: str
    title: str
    """Plain words, not escaped."""


def contents_as_data(contents: Iterable[ContentsEntry]) -> list[dict[str, Any]]:
    """Return a contents list as the nested entries that Markdown processors hand to a theme, titles as HTML."""
    roots: list[dict[str, Any]] = []
    open_entries: list[dict[str, Any]] = []
    for entry in contents:
        data = {"level": entry.level, "id": entry.id, "name": escape(entry.title), "children": []}
        while open_entries and open_entries[-1]["level"] >= entry.level:
            open_entries.pop()
        (open_entries[-1]["children"] if open_entries else roots).append(data)
        open_entries.append(data)
    return roots
