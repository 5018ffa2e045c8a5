"""A small document tree: what a page or a handout says, before it is HTML or typst."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias, Union


@dataclass(frozen=True, slots=True)
class Text:
    """Plain words."""

    text: str


@dataclass(frozen=True, slots=True)
class Strong:
    """Words that carry weight."""

    inlines: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Emphasis:
    """Words with a lean."""

    inlines: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Code:
    """Words to be typed as they stand."""

    text: str


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead somewhere; the address was checked to be http, https, mailto or a relative path."""

    address: str
    inlines: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Measured:
    """A figure of the sheet as it is printed, with the name under which it can be asked why."""

    text: str
    figure: str
    """Name in the sheet's figures; empty when it has none of its own."""


@dataclass(frozen=True, slots=True)
class LineBreak:
    """A break inside a paragraph."""


Inline: TypeAlias = Union[Text, Strong, Emphasis, Code, Link, Measured, LineBreak]


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; levels start at 2, the page's title is 1."""

    level: int
    id: str
    inlines: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph."""

    inlines: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class ListBlock:
    """A list; each item is a run of blocks."""

    is_numbered: bool
    items: tuple[tuple[Block, ...], ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table; the first cell of a row is its row heading when `has_row_headings`."""

    caption: str
    header: tuple[tuple[Inline, ...], ...]
    rows: tuple[tuple[tuple[Inline, ...], ...], ...]
    has_row_headings: bool = True


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture of the sheet by its name, with its title and its description in words."""

    name: str
    """finished, block-lantern, step-outer-border-sides, cutting-fog, …"""
    title: str
    description: str


@dataclass(frozen=True, slots=True)
class Pictures:
    """Small pictures of one kind, beside each other where there is room."""

    pictures: tuple[Picture, ...]


@dataclass(frozen=True, slots=True)
class Beside:
    """A picture and the blocks that belong to it: side by side where there is room, else the picture first."""

    picture: Picture
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Swatches:
    """The materials list: fabric id, letter, name, colour and the line of text beside it."""

    rows: tuple[tuple[str, str, str, str, tuple[Inline, ...]], ...]


@dataclass(frozen=True, slots=True)
class Checkpoint:
    """What the piece measures now."""

    inlines: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning where the work can hurt."""

    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class StepBlock:
    """One numbered step: its heading, its picture, its text and its checkpoint."""

    id: str
    number: int
    title: str
    blocks: tuple[Block, ...]
    also: tuple[str, ...] = ()
    """Ids of further steps of the program that are told in this one."""


Block: TypeAlias = Union[
    Heading, Paragraph, ListBlock, Table, Picture, Pictures, Beside, Swatches, Checkpoint, Caution, StepBlock
]


@dataclass(frozen=True, slots=True)
class Document:
    """A whole page or handout."""

    title: str
    subtitle: str
    blocks: tuple[Block, ...]
