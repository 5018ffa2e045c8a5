"""The same pages as plain Markdown, written as a careful author would by hand: what MkDocs is measured with."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.publish.html import Painter, plain_words, write_inlines
from evenseam.publish.html_text import without_blank_lines
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
    StepBlock,
    Strong,
    Swatches,
    Table,
    Text,
)


def write_markdown(document: Document, painter: Painter) -> str:
    """Return a document as Markdown, its pictures inline, like the page that the publisher makes."""
    parts = [f"# {document.title}", document.subtitle, *(_block(block, painter) for block in document.blocks)]
    return "\n\n".join(parts) + "\n"


def _block(block: Block, painter: Painter) -> str:
    match block:
        case Heading(level=level, id=id, inlines=inlines):
            return f"{'#' * level} {_words(inlines)} {{: #{id} }}"
        case Paragraph(inlines=inlines):
            return _words(inlines)
        case ListBlock(is_numbered=is_numbered, items=items):
            mark = "1. " if is_numbered else "- "
            return "\n".join(
                mark + " ".join(_block(part, painter).replace("\n", " ") for part in item) for item in items
            )
        case Table():
            return _table(block)
        case Picture():
            return f"<figure>\n{without_blank_lines(painter(block))}\n<figcaption>{block.title}</figcaption>\n</figure>"
        case Beside(picture=picture, blocks=inner):
            return "\n\n".join(_block(part, painter) for part in (picture, *inner))
        case Swatches(rows=rows):
            return "\n".join(f"- **{letter} {name}** {_words(line)}" for _, letter, name, _, line in rows)
        case Checkpoint(inlines=inlines):
            return f'!!! note "Check"\n    {_words(inlines)}'
        case Caution(title=title, blocks=inner):
            text = "\n\n".join(_block(part, painter) for part in inner).replace("\n", "\n    ")
            return f'!!! warning "{title}"\n    {text}'
        case StepBlock(id=id, number=number, title=title, blocks=inner):
            parts = [f"### {number}. {title} {{: #step-{id} }}", *(_block(part, painter) for part in inner)]
            return "\n\n".join(parts)


def _table(table: Table) -> str:
    def row(cells: Iterable[tuple[Inline, ...]]) -> str:
        return "| " + " | ".join(_words(cell).replace("|", "\\|") or " " for cell in cells) + " |"

    rule = "|" + " --- |" * len(table.header)
    return "\n".join([f"*{table.caption}*", "", row(table.header), rule, *(row(cells) for cells in table.rows)])


def _words(inlines: Iterable[Inline]) -> str:
    words = ""
    for inline in inlines:
        match inline:
            case Text(text=text):
                words += text
            case Strong(inlines=inner):
                words += f"**{_words(inner)}**"
            case Emphasis(inlines=inner):
                words += f"*{_words(inner)}*"
            case Code(text=text):
                words += f"`{text}`"
            case Link(address=address, inlines=inner):
                words += f"[{plain_words(inner)}]({address})"
            case Measured():
                words += write_inlines((inline,))
            case LineBreak():
                words += "<br>"
    return words
