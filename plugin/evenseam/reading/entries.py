"""One mapping of a project, read key by key: values with their reasons, and a problem for each that is missing."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TypeVar

from evenseam.exact import Unit
from evenseam.pattern import Given, Prose, Quantity
from evenseam.problems import Label, Place, Report
from evenseam.reading import codes
from evenseam.reading.defaults import Default
from evenseam.reading.kinds import Choice, Colour, Count, Length, Markdown, Record, Words
from evenseam.reading.leaves import did_you_mean, listed, read_choice, read_count, read_words, read_yes_no, shown
from evenseam.reading.lengths import read_length
from evenseam.reading.tree import Entry, Mapping, Node, Scalar, is_inside, is_none

MOST_UNKNOWN = 20
"""Unknown keys of one mapping that are told one by one."""
MOST_GUESSES = 60
"""Undefined names for which a likely meaning is looked for."""

_K = TypeVar("_K")


@dataclass(slots=True)
class Reader:
    """What holds for all of one project while it is read."""

    report: Report
    drafted: Unit
    """The unit of the file."""
    edition: Unit
    """The unit of the project."""
    edition_places: tuple[Place, ...] = ()
    """Where the lengths of this edition stand; all others are in the drafted unit."""
    fabrics: dict[str, Scalar] | None = None
    """Names of the fabrics, and the keys that define them; None while they cannot be known."""
    used_fabrics: set[str] = field(default_factory=set)
    blocks: dict[str, Scalar] | None = None
    used_blocks: set[str] = field(default_factory=set)
    guesses: dict[str, str] = field(default_factory=dict)
    """Hints for names that are not defined, so that each is thought about once."""
    told_missing: frozenset[str] = frozenset()
    """Parts that no size has, which was reported once for all of them."""

    def unit_at(self, place: Place) -> Unit:
        """Return the unit a length standing here is in."""
        return self.edition if any(is_inside(place, outer) for outer in self.edition_places) else self.drafted

    def fabric(self, text: str, place: Place) -> str | None:
        """Return the id of a fabric that is defined, or report the name."""
        if self.fabrics is None or text in self.fabrics:
            self.used_fabrics.add(text)
            return slug(text)
        hint = self._guess(text, tuple(self.fabrics), "fabrics")
        self.report.add(codes.UNDEFINED_FABRIC, place, f"no fabric is called {shown(text)}", hint)
        return None

    def block(self, text: str, place: Place) -> str | None:
        """Return the id of a block that is defined, or report the name."""
        if self.blocks is None or text in self.blocks:
            self.used_blocks.add(text)
            return slug(text)
        hint = self._guess(text, tuple(self.blocks), "blocks")
        self.report.add(codes.UNDEFINED_BLOCK, place, f"no block is called {shown(text)}", hint)
        return None

    def _guess(self, text: str, known: tuple[str, ...], table: str) -> str:
        """Return what an undefined name may mean. After many of them it is no slip of the pen any more."""
        if text not in self.guesses and len(self.guesses) < MOST_GUESSES:
            self.guesses[text] = did_you_mean(text, known)
        return self.guesses.get(text) or f"define it under `{table}`, or use one of: {listed(known)}"


@dataclass(frozen=True, slots=True)
class Entries:
    """A mapping, the table of its keys, and the place to point at when a key is missing."""

    reader: Reader
    mapping: Mapping
    record: Record
    at: Place

    def get(self, key: str) -> Entry | None:
        """Return the entry of a key; None when it is not there or says none. Reports a missing key that is needed."""
        known = self.record.field(key)
        assert known is not None, f"{key} is no key of the {self.record.name}"
        entry = self.mapping.entry(key)
        # A colour after a bare # reads as nothing; that is told where the colour is read.
        if entry is not None and (isinstance(known.kind, Colour) or not is_none(entry.value)):
            return entry
        is_told = key in self.reader.told_missing or is_misspelt(key, self.mapping, self.record)
        if known.is_required and not is_told:
            place = entry.key.place if entry else self.at
            example = f", such as {key}: {known.example}" if known.example else ""
            self.reader.report.add(
                codes.MISSING_KEY, place, f"the {self.record.name} has no {key!r}", f"add {key!r}{example}"
            )
        return None

    def node(self, key: str) -> Node | None:
        """Return the value of a key, if it is there."""
        entry = self.get(key)
        return entry.value if entry else None

    def inner(self, key: str, record: Record) -> Entries | None:
        """Return the entries of a mapping under a key; None when it is not there or is no mapping."""
        entry = self.get(key)
        if entry is None or not isinstance(entry.value, Mapping):
            return None
        return Entries(self.reader, entry.value, record, entry.key.place)

    def length(self, key: str, name: str, default: Default | None = None) -> Quantity | None:
        """Return a length as a named figure."""
        node = self.node(key)
        if node is None:
            return default.quantity(name, self.reader.edition) if default else None
        unit = self.reader.unit_at(node.place)
        kind = self._kind(key, Length)
        value = read_length(node, kind, unit, self.reader.report)
        return None if value is None else given(name, value, unit, node)

    def count(self, key: str, name: str) -> Quantity | None:
        """Return a count as a named figure."""
        node = self.node(key)
        value = read_count(node, self._kind(key, Count), self.reader.report) if node is not None else None
        return None if value is None or node is None else given(name, Fraction(value), Unit.COUNT, node)

    def choice(self, key: str, default: str) -> str | None:
        """Return one of the words of a choice; None when another word stands there."""
        node = self.node(key)
        return default if node is None else read_choice(node, self._kind(key, Choice).options, self.reader.report)

    def yes(self, key: str) -> bool:
        """Return whether the key says yes."""
        node = self.node(key)
        return node is not None and bool(read_yes_no(node, self.reader.report))

    def words(self, key: str, default: str = "") -> str:
        """Return a line of text."""
        node = self.node(key)
        return default if node is None else read_words(node, self._kind(key, Words), self.reader.report) or default

    def prose(self, key: str) -> Prose | None:
        """Return paragraphs of text."""
        node = self.node(key)
        return None if node is None else prose_of(node, self._kind(key, Markdown), self.reader.report)

    def fabric(self, key: str) -> str | None:
        """Return the id of a fabric; None when it is missing or not defined."""
        node = self.node(key)
        if not isinstance(node, Scalar):
            return None
        return self.reader.fabric(node.text.strip(), node.place)

    def _kind(self, key: str, kind: type[_K]) -> _K:
        known = self.record.field(key)
        assert known is not None and isinstance(known.kind, kind), f"{key} is no {kind.__name__}"
        return known.kind


def is_misspelt(key: str, mapping: Mapping, record: Record) -> bool:
    """Tell whether an unknown key of the mapping is reported with the hint that it may mean this one."""
    known = tuple(field.key for field in record.fields)
    unknown = [other for other in mapping.keys if other not in known]
    return any(did_you_mean(other, known) == did_you_mean(key, known) for other in unknown[:MOST_UNKNOWN])


def distinct(entries: Iterable[Entry], noun: str, report: Report) -> tuple[Entry, ...]:
    """Return the entries of a table that are there, each id once; two names that make one id are reported."""
    known: dict[str, Entry] = {}
    for entry in entries:
        id = slug(entry.key.text)
        if is_none(entry.value) or not id:
            continue
        if id in known:
            first = known[id].key
            message = (
                f"the {noun}s {shown(first.text)} and {shown(entry.key.text)} would both be called {id} in addresses"
            )
            hint = "give one of them a name that differs in letters or digits"
            report.add(codes.DUPLICATE_NAME, entry.key.place, message, hint, (Label(first.place, "the first"),))
        else:
            known[id] = entry
    return tuple(known.values())


def given(name: str, value: Fraction, unit: Unit, node: Node, place: Place | None = None) -> Quantity:
    """Return a figure the author wrote."""
    text = node.text if isinstance(node, Scalar) else ""
    return Quantity(name, value, unit, Given(place or node.place, text))


def prose_of(node: Node, kind: Markdown, report: Report) -> Prose | None:
    """Return a text of the author with the place where it begins, so that a line of the text is a line of the file."""
    text = read_words(node, kind, report)
    if text is None or not isinstance(node, Scalar):
        return None
    return Prose(text, node.text_place or node.place)


def slug(text: str) -> str:
    """Return a name for addresses and ids: small letters a to z, digits and hyphens; empty when none is left."""
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")


def spoken(key: str) -> str:
    """Return a key as a maker reads it: with a capital letter."""
    text = " ".join(key.split())
    return text[:1].upper() + text[1:]
