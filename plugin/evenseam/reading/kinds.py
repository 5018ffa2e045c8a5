"""The kinds of value a pattern file holds: enough to check one, to describe it, and to write its schema."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias, Union

from evenseam.reading.tree import Mapping, Scalar


@dataclass(frozen=True, slots=True)
class Words:
    """A line of text."""

    longest: int = 120


@dataclass(frozen=True, slots=True)
class Markdown:
    """Paragraphs of text with {{ figures }}."""

    longest: int = 20_000


@dataclass(frozen=True, slots=True)
class Length:
    """A length in the unit of the pattern."""

    may_be_zero: bool = False
    may_be_negative: bool = False


@dataclass(frozen=True, slots=True)
class Stated:
    """A figure of an older printed version: any length, perhaps zero, or a count."""


@dataclass(frozen=True, slots=True)
class Count:
    """A whole number, at least 1."""

    most: int


@dataclass(frozen=True, slots=True)
class Choice:
    """One of a few words."""

    options: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class YesNo:
    """Yes or no."""


@dataclass(frozen=True, slots=True)
class Colour:
    """A colour for the pictures, #rrggbb."""


@dataclass(frozen=True, slots=True)
class Date:
    """A day: year-month-day."""


@dataclass(frozen=True, slots=True)
class FinishedSize:
    """Two lengths: width x height."""


@dataclass(frozen=True, slots=True)
class TargetSize:
    """A project size by its name in the trade, or width x height."""


@dataclass(frozen=True, slots=True)
class GridSize:
    """Two plain numbers: squares across x squares down."""


@dataclass(frozen=True, slots=True)
class Corners:
    """The corners of a shape on the grid: "0,0 4,0 4,6"."""


@dataclass(frozen=True, slots=True)
class FabricName:
    """The name of a fabric, as under `fabrics`."""


@dataclass(frozen=True, slots=True)
class BlockName:
    """The name of a block, as under `blocks`."""


@dataclass(frozen=True, slots=True)
class BlockPlacement:
    """The name of a block, perhaps with "turned 90" or "mirrored" after it."""


@dataclass(frozen=True, slots=True)
class BlockOrSpacer:
    """A block, perhaps turned, or "spacer" with its fabric and perhaps its width."""


@dataclass(frozen=True, slots=True)
class NamedUnit:
    """A unit of a block, such as "half-square sea/fog turned 90"."""


@dataclass(frozen=True, slots=True)
class Field:
    """One key of a mapping."""

    key: str
    kind: Kind
    meaning: str
    """For a person who has never seen the file: what it is, in a sentence or two."""
    default: str = ""
    """What holds when it is left out, in words; empty for a key that may simply be missing."""
    example: str = ""
    is_required: bool = False
    of_the_whole: bool = False
    """True when it belongs to the pattern as a whole, so that a size cannot say otherwise."""
    of_a_size: bool = False
    """True when it makes sense for one size only, not for the whole pattern."""


@dataclass(frozen=True, slots=True)
class Record:
    """A mapping with known keys."""

    name: str
    fields: tuple[Field, ...]
    supersedes: tuple[tuple[str, tuple[str, ...]], ...] = ()
    """A key given in a size, and the keys above that it makes meaningless."""

    def field(self, key: str) -> Field | None:
        """Return the field of a key, or None."""
        for field in self.fields:
            if field.key == key:
                return field
        return None


@dataclass(frozen=True, slots=True)
class Variants:
    """A mapping whose first word decides which further keys it has."""

    name: str
    key: str
    meaning: str
    records: tuple[tuple[str, Record], ...]
    has_short_form: bool = False
    """True when the deciding word alone may stand in place of the mapping."""

    @property
    def options(self) -> tuple[str, ...]:
        """The words to decide between."""
        return tuple(word for word, _ in self.records)

    def chosen(self, node: Mapping) -> str | None:
        """Return the deciding word of a mapping, if it is there and known."""
        value = node.value(self.key)
        return value.text if isinstance(value, Scalar) and value.text in self.options else None

    def record(self, word: str) -> Record:
        """Return the keys that go with a word."""
        return dict(self.records)[word]


@dataclass(frozen=True, slots=True)
class ShortOrLong:
    """One value, or a mapping that says more, with that value under one of its keys."""

    long: Record
    key: str

    @property
    def short(self) -> Kind:
        """The kind of the one value."""
        field = self.long.field(self.key)
        assert field is not None, f"{self.key} is a key of the {self.long.name}"
        return field.kind


@dataclass(frozen=True, slots=True)
class Table:
    """A mapping whose keys are names the author gives."""

    item: Kind
    noun: str
    """What one entry is: fabric, block, border, size."""
    most: int
    may_remove: bool = False
    """True when a size may take an entry away with the word none."""
    keys: tuple[str, ...] = ()
    """The only keys allowed, if there is a choice."""
    longest_key: int = 60


@dataclass(frozen=True, slots=True)
class Items:
    """A list."""

    item: Kind
    noun: str
    most: int


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a block: `fabric: corners`, or a mapping with more to say."""

    long: Record


@dataclass(frozen=True, slots=True)
class Editions:
    """A list of units, or a mapping from a unit to what differs in that edition."""

    units: tuple[str, ...]
    over: Record


@dataclass(frozen=True, slots=True)
class FormatNumber:
    """The number of the format."""


Kind: TypeAlias = Union[
    Words, Markdown, Length, Stated, Count, Choice, YesNo, Colour, Date, FinishedSize, GridSize, Corners, FabricName,
    BlockName, BlockPlacement, BlockOrSpacer, NamedUnit, Record, Variants, Table, Items, Piece, Editions, FormatNumber,
    ShortOrLong, TargetSize,
]  # fmt: skip
Leaf: TypeAlias = Union[
    Words, Markdown, Length, Stated, Count, Choice, YesNo, Colour, Date, FinishedSize, GridSize, Corners, FabricName,
    BlockName, BlockPlacement, BlockOrSpacer, NamedUnit, FormatNumber, TargetSize,
]  # fmt: skip
