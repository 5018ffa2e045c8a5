"""A document tree as plain text, and its parts as runs, for tests that read it."""

from __future__ import annotations

from collections.abc import Iterator

from evenseam.wording.document import (
    Beside,
    Block,
    Caution,
    Checkpoint,
    Code,
    Document,
    Emphasis,
    Heading,
    Inline,
    LineBreak,
    Link,
    ListBlock,
    Measured,
    Paragraph,
    Picture,
    Pictures,
    StepBlock,
    Strong,
    Swatches,
    Table,
    Text,
)


def every_block(blocks: tuple[Block, ...]) -> Iterator[Block]:
    """Yield every block of a tree, outer ones before inner ones."""
    for block in blocks:
        yield block
        match block:
            case StepBlock(blocks=inner) | Caution(blocks=inner):
                yield from every_block(inner)
            case Pictures(pictures=pictures):
                yield from pictures
            case Beside(picture=picture, blocks=inner):
                yield picture
                yield from every_block(inner)
            case ListBlock(items=items):
                for item in items:
                    yield from every_block(item)


def every_run(document: Document) -> Iterator[tuple[Block, tuple[Inline, ...]]]:
    """Yield every run of inlines with the block it belongs to."""
    for block in every_block(document.blocks):
        match block:
            case Heading(inlines=inlines) | Paragraph(inlines=inlines) | Checkpoint(inlines=inlines):
                yield block, inlines
            case Table(header=header, rows=rows):
                for row in (header, *rows):
                    for cell in row:
                        yield block, cell
            case Swatches(rows=swatches):
                for *_, line in swatches:
                    yield block, line


def figures_of(inlines: tuple[Inline, ...]) -> Iterator[Measured]:
    """Yield the figures in a run."""
    for inline in inlines:
        match inline:
            case Measured():
                yield inline
            case Strong(inlines=inner) | Emphasis(inlines=inner) | Link(inlines=inner):
                yield from figures_of(inner)


def words_of(inlines: tuple[Inline, ...], figure: str | None = None) -> str:
    """Return a run as plain words; with `figure`, that text stands for every figure."""
    words: list[str] = []
    for inline in inlines:
        match inline:
            case Measured(text=text):
                words.append(text if figure is None else figure)
            case Text(text=text) | Code(text=text):
                words.append(text)
            case Strong(inlines=inner) | Emphasis(inlines=inner) | Link(inlines=inner):
                words.append(words_of(inner, figure))
            case LineBreak():
                words.append("\n")
    return "".join(words)


def as_text(document: Document, without: tuple[str, ...] = ()) -> str:
    """Return a whole document as plain text, without the sections whose headings have these ids."""
    lines = [f"{document.title} / {document.subtitle}", ""]
    is_left_out = False
    for block in document.blocks:
        if isinstance(block, Heading) and block.level == 2:
            is_left_out = block.id in without
        if not is_left_out:
            lines += _lines(block)
    return "\n".join(lines) + "\n"


def _lines(block: Block) -> list[str]:
    match block:
        case Heading(level=level, inlines=inlines):
            return ["", f"{'#' * level} {words_of(inlines)}", ""]
        case Paragraph(inlines=inlines):
            return [words_of(inlines)]
        case Checkpoint(inlines=inlines):
            return [f"> {words_of(inlines)}"]
        case ListBlock(is_numbered=is_numbered, items=items):
            return [
                line
                for number, item in enumerate(items, start=1)
                for line in _item(f"{number}." if is_numbered else "-", item)
            ]
        case Table(caption=caption, header=header, rows=rows):
            return [f"({caption})", *("| " + " | ".join(words_of(cell) for cell in row) for row in (header, *rows))]
        case Picture(name=name, title=title, description=description):
            return [f"[{name}: {title}. {description}]"]
        case Pictures(pictures=pictures):
            return [line for picture in pictures for line in _lines(picture)]
        case Beside(picture=picture, blocks=blocks):
            return [*_lines(picture), *(line for inner in blocks for line in _lines(inner))]
        case Swatches(rows=swatches):
            return [f"- {letter} {name} {colour}: {words_of(line)}" for _, letter, name, colour, line in swatches]
        case Caution(title=title, blocks=blocks):
            return [f"! {title}", *(f"  {line}" for inner in blocks for line in _lines(inner))]
        case StepBlock(number=number, title=title, blocks=blocks):
            return ["", f"{number}. {title}", *(line for inner in blocks for line in _lines(inner))]


def _item(mark: str, item: tuple[Block, ...]) -> list[str]:
    first, *rest = [line for block in item for line in _lines(block)]
    return [f"{mark} {first}", *(f"   {line}" for line in rest)]
