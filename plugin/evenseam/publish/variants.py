"""The texts of one page for several widths of cloth, laid one over the other: what they share stands there once."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TypeAlias, Union

from evenseam.wording.document import Beside, Block, Document, Heading, ListBlock, Picture, StepBlock

SamePicture: TypeAlias = Callable[[str, int, int], bool]
"""Tells whether a picture of this name is the same in two of the texts, which are named by their places."""


@dataclass(frozen=True, slots=True)
class Option:
    """Blocks that stand in some of the texts."""

    texts: tuple[int, ...]
    """The places of the texts in which they stand; the first of them is the one to draw and to name figures by."""
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Variants:
    """What differs: one option for each different run of blocks."""

    options: tuple[Option, ...]


@dataclass(frozen=True, slots=True)
class StepOfAll:
    """A step in all texts, of which some blocks may differ."""

    step: StepBlock
    blocks: tuple[Block | Variants | ListOfAll, ...]


@dataclass(frozen=True, slots=True)
class ListOfAll:
    """A list in all texts, of which some items may differ."""

    is_numbered: bool
    items: tuple[tuple[Block | Variants, ...], ...]


Merged: TypeAlias = Union[Block, Variants, StepOfAll, ListOfAll]


@dataclass(slots=True)
class _Part:
    """A heading or a step with what stands below it."""

    key: tuple[str, str]
    opener: Heading | StepBlock | None
    blocks: list[Block]


def merged(documents: Sequence[Document], main: int, is_same: SamePicture) -> tuple[Merged, ...]:
    """Return the blocks of the main document, and those of the others wherever they say something else.

    Texts are compared heading by heading and step by step.
    """
    parts = [{part.key: part for part in _parts(document.blocks)} for document in documents]
    found: list[Merged] = []
    for key, part in parts[main].items():
        texts = [tuple(others[key].blocks) if key in others else () for others in parts]
        below = tuple(_merged_blocks(texts, main, is_same))
        match part.opener:
            case StepBlock() as step:
                found.append(StepOfAll(step, below))
            case Heading() as heading:
                found += [heading, *below]
            case None:
                found += below
    return tuple(found)


def _parts(blocks: Iterable[Block]) -> Iterator[_Part]:
    part = _Part(("", ""), None, [])
    for block in blocks:
        if isinstance(block, (Heading, StepBlock)):
            yield part
            kind = "heading" if isinstance(block, Heading) else "step"
            part = _Part((kind, block.id), block, list(block.blocks) if isinstance(block, StepBlock) else [])
            if isinstance(block, StepBlock):
                yield part
                # What follows a step is no part of it.
                part = _Part(("after", block.id), None, [])
        else:
            part.blocks.append(block)
    yield part


def _merged_blocks(
    texts: Sequence[tuple[Block, ...]], main: int, is_same: SamePicture
) -> Iterator[Block | Variants | ListOfAll]:
    is_one = all(text == texts[main] for text in texts)
    if len({len(text) for text in texts}) == 1:
        for blocks in zip(*texts, strict=True):
            if is_one and not any(_is_planned(block) for block in blocks):
                yield blocks[main]
            elif (items := _items(blocks)) is not None:
                first = blocks[main]
                merged_items = (tuple(_choice(item, main, is_same)) for item in zip(*items, strict=True))
                yield ListOfAll(isinstance(first, ListBlock) and first.is_numbered, tuple(merged_items))
            else:
                yield from _choice([(block,) for block in blocks], main, is_same)
    else:
        yield from _choice(texts, main, is_same)


def _items(blocks: Sequence[Block]) -> list[tuple[tuple[Block, ...], ...]] | None:
    """Return the items of lists that are alike in form; None for anything else."""
    lists = [block for block in blocks if isinstance(block, ListBlock)]
    forms = {(one.is_numbered, len(one.items)) for one in lists}
    return [one.items for one in lists] if len(forms) == 1 and len(lists) == len(blocks) else None


def _choice(texts: Sequence[tuple[Block, ...]], main: int, is_same: SamePicture) -> Iterator[Block | Variants]:
    """Yield the blocks themselves where all texts agree, else their options, that of the main text first."""
    order = [main, *(place for place in range(len(texts)) if place != main)]
    options: list[Option] = []
    for place in order:
        for number, option in enumerate(options):
            if _agree(texts[place], option, place, is_same):
                options[number] = Option((*option.texts, place), option.blocks)
                break
        else:
            options.append(Option((place,), texts[place]))
    if len(options) == 1:
        yield from options[0].blocks
    else:
        yield Variants(tuple(option for option in options if option.blocks))


def _agree(blocks: tuple[Block, ...], option: Option, place: int, is_same: SamePicture) -> bool:
    return blocks == option.blocks and all(
        is_same(picture.name, place, option.texts[0]) for block in blocks if (picture := _picture_of(block))
    )


def _picture_of(block: Block) -> Picture | None:
    match block:
        case Picture():
            return block
        case Beside(picture=picture):
            return picture
        case _:
            return None


def _is_planned(block: Block) -> bool:
    """Tell whether a block shows cloth, whose picture may differ where the words do not."""
    picture = _picture_of(block)
    return picture is not None and picture.name.startswith(("cutting-", "folded-cloth"))
