"""Every key of the format with its meaning, for the documentation page that is made from it."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.reading.format import PATTERN, SIZE
from evenseam.reading.kinds import (
    BlockName,
    BlockOrSpacer,
    BlockPlacement,
    Choice,
    Colour,
    Corners,
    Count,
    Date,
    Editions,
    FabricName,
    Field,
    FinishedSize,
    FormatNumber,
    GridSize,
    Items,
    Kind,
    Length,
    Markdown,
    NamedUnit,
    Piece,
    Record,
    ShortOrLong,
    Stated,
    Table,
    TargetSize,
    Variants,
    Words,
    YesNo,
)
from evenseam.reading.leaves import FORMAT_NUMBER, either


@dataclass(frozen=True, slots=True)
class KeyReference:
    """One key: where it stands, what it means, what may stand after it."""

    path: tuple[str, ...]
    """The keys above it and itself; a name the author gives is written <fabric>, <block>, …"""
    takes: str
    """What is written after it, in words."""
    meaning: str
    default: str
    """What holds when it is left out, in words; empty when it may simply be missing, or is required."""
    example: str
    """As it is written in a file; empty for a key that only holds others."""
    is_required: bool
    in_a_size: bool
    """Whether a size may say it, or say otherwise."""

    @property
    def key(self) -> str:
        """The key itself."""
        return self.path[-1]


def key_reference() -> tuple[KeyReference, ...]:
    """Return every key of a pattern file, in the order of the format; the keys of a size that only a size has last."""
    found: list[KeyReference] = []
    for field in PATTERN.fields:
        _add(field, (), not field.of_the_whole and SIZE.field(field.key) is not None, found)
    for field in SIZE.fields:
        if field.of_a_size:
            _add(field, ("sizes", "<size>"), True, found)
    return tuple(found)


def _add(field: Field, above: tuple[str, ...], in_a_size: bool, found: list[KeyReference]) -> None:
    path = (*above, field.key)
    found.append(
        KeyReference(
            path, _takes(field.kind), field.meaning, field.default, field.example, field.is_required, in_a_size
        )
    )
    _add_inner(field.kind, path, in_a_size, found)


def _add_inner(kind: Kind, path: tuple[str, ...], in_a_size: bool, found: list[KeyReference]) -> None:
    match kind:
        case Record():
            for field in kind.fields:
                _add(field, path, in_a_size, found)
        case Table() if kind.item is not SIZE:
            _add_inner(kind.item, (*path, f"<{kind.noun}>"), in_a_size, found)
        case Items():
            _add_inner(kind.item, path, in_a_size, found)
        case Piece() | ShortOrLong():
            _add_inner(kind.long, path, in_a_size, found)
        case Variants():
            deciding = (*path, kind.key)
            takes, example = either(kind.options), kind.options[0]
            found.append(KeyReference(deciding, takes, kind.meaning, "", example, True, in_a_size))
            for word, record in kind.records:
                for field in record.fields:
                    _add(field, (*path, f"({word})"), in_a_size, found)


def _takes(kind: Kind) -> str:
    match kind:
        case Choice():
            return either(kind.options)
        case Count():
            return f"a whole number, 1 to {kind.most}"
        case Words():
            return f"text, up to {kind.longest} characters"
        case Length() if kind.may_be_negative:
            return "a length, also 0 or below"
        case Length() if kind.may_be_zero:
            return "a length, also 0"
        case FormatNumber():
            return FORMAT_NUMBER
        case Table():
            return f"{kind.noun}s by name, up to {kind.most}"
        case Items():
            return f"a list, one {kind.noun} after the other"
        case Editions():
            return "a list of units, or units with what differs"
        case _:
            return _PLAIN[type(kind)]


_PLAIN: dict[type[Kind], str] = {
    Markdown: "paragraphs of Markdown, after |",
    Length: "a length: 2, 2.5, 5/8 or 1 1/4",
    Stated: "a figure as it was printed",
    YesNo: "yes or no",
    Colour: "a colour, #rrggbb in quotes",
    Date: "a day, year-month-day",
    FinishedSize: "width x height",
    GridSize: "squares across x squares down",
    Corners: "corners: across,down across,down …",
    FabricName: "the name of a fabric",
    BlockName: "the name of a block",
    BlockPlacement: "the name of a block, perhaps turned or mirrored",
    BlockOrSpacer: "a block, perhaps turned; or spacer, a fabric, perhaps a width",
    NamedUnit: "a unit and its fabrics, perhaps turned",
    Record: "keys of its own",
    Variants: "keys of its own, `kind` first",
    Piece: "fabric: corners",
    TargetSize: "the name of a usual size, or width x height",
    ShortOrLong: "the name of a usual size, or width x height, or keys of its own",
}
