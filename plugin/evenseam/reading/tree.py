"""A pattern file as a tree of texts, lists and mappings, each knowing where it stands."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TypeAlias, Union

from evenseam.problems import Place


@dataclass(frozen=True, slots=True)
class Scalar:
    """A single value, always as the text the author wrote."""

    text: str
    place: Place = field(compare=False)
    is_plain: bool = field(default=True, compare=False)
    """Written without quotes."""
    text_place: Place | None = field(default=None, compare=False)
    """Where the text itself begins, inside quotes or below a |; for paragraphs, whose lines are counted from there."""

    @property
    def is_none(self) -> bool:
        """True for the word none and for a value left empty: what takes something away."""
        return self.is_plain and self.text in ("none", "")

    def part(self, start: int, end: int) -> Place:
        """Return the place of the characters from `start` to before `end`, or the whole when they cannot be told."""
        quotes = 0 if self.is_plain else 1
        is_as_written = (
            self.place.line == self.place.end_line
            and self.place.end_column - self.place.column == len(self.text) + 2 * quotes
        )
        if not is_as_written:
            return self.place
        column = self.place.column + quotes
        return Place(self.place.file, self.place.line, column + start, self.place.line, column + max(end, start + 1))


@dataclass(frozen=True, slots=True)
class Listing:
    """A list."""

    items: tuple[Node, ...]
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class Entry:
    """A key and what it says."""

    key: Scalar
    value: Node


@dataclass(frozen=True, slots=True)
class Mapping:
    """Keys with values, in the order of the file; no key twice."""

    entries: tuple[Entry, ...]
    place: Place = field(compare=False)
    is_in_braces: bool = field(default=False, compare=False)

    def entry(self, key: str) -> Entry | None:
        """Return the entry of a key, or None."""
        for entry in self.entries:
            if entry.key.text == key:
                return entry
        return None

    def value(self, key: str) -> Node | None:
        """Return the value of a key, or None."""
        entry = self.entry(key)
        return entry.value if entry else None

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys in the order of the file."""
        return tuple(entry.key.text for entry in self.entries)


Node: TypeAlias = Union[Scalar, Listing, Mapping]


def is_none(node: Node | None) -> bool:
    """Tell whether a value takes something away: the plain word none, or nothing at all."""
    return isinstance(node, Scalar) and node.is_none


def is_inside(place: Place, outer: Place) -> bool:
    """Tell whether one stretch of a text lies within another."""
    return (
        place.file == outer.file
        and (outer.line, outer.column) <= (place.line, place.column)
        and (place.end_line, place.end_column) <= (outer.end_line, outer.end_column)
    )
