"""The same pages as plain Markdown, written as a careful author would by hand: what MkDocs is measured with."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from evenseam.publish.html import Painter, plain_words, write_inlines
from evenseam.publish.html_text import without_blank_lines
from evenseam.publish.variants import ListOfAll, Merged, StepOfAll, Variants
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


def write_markdown(document: Document, painter: Painter) -> str:
    """Return a document as Markdown, its pictures inline, like the page that the publisher makes for one width."""
    parts = [f"# {document.title}", document.subtitle, *(_block(block, [painter]) for block in document.blocks)]
    return "\n\n".join(parts) + "\n"


def write_markdown_at_widths(document: Document, blocks: Iterable[Merged], painters: Sequence[Painter]) -> str:
    """Return the texts for several widths of cloth as one page, each width's own words in elements of their own.

    `painters` has one for each width; what all share is painted by that of the document.
    """
    parts = [f"# {document.title}", document.subtitle, *(_block(block, painters) for block in blocks)]
    return "\n\n".join(parts) + "\n"


def _block(block: Merged, painters: Sequence[Painter]) -> str:
    match block:
        case Variants(options=options):
            return "\n\n".join(
                f'<div data-cloth="{" ".join(map(str, option.texts))}" markdown="1">\n\n'
                + "\n\n".join(_block(part, [painters[option.texts[0]]]) for part in option.blocks)
                + "\n\n</div>"
                for option in options
            )
        case StepOfAll(step=step, blocks=inner):
            parts = [_step_heading(step), *(_block(part, painters) for part in inner)]
            return "\n\n".join(parts)
        case ListOfAll(is_numbered=is_numbered, items=items):
            mark = "1. " if is_numbered else "- "
            return "\n".join(mark + " ".join(_item(part, painters) for part in item) for item in items)
        case Heading(level=level, id=id, inlines=inlines):
            return f"{'#' * level} {_words(inlines)} {{: #{id} }}"
        case Paragraph(inlines=inlines):
            return _words(inlines)
        case ListBlock(is_numbered=is_numbered, items=items):
            mark = "1. " if is_numbered else "- "
            return "\n".join(mark + " ".join(_item(part, painters) for part in item) for item in items)
        case Table():
            return _table(block)
        case Picture():
            painted = without_blank_lines(painters[0](block))
            return f"<figure>\n{painted}\n<figcaption>{block.title}</figcaption>\n</figure>"
        case Pictures(pictures=pictures):
            return "\n\n".join(_block(picture, painters) for picture in pictures)
        case Beside(picture=picture, blocks=inner):
            return "\n\n".join(_block(part, painters) for part in (picture, *inner))
        case Swatches(rows=rows):
            return "\n".join(f"- **{letter} {name}** {_words(line)}" for _, letter, name, _, line in rows)
        case Checkpoint(inlines=inlines):
            return f'!!! note "Check"\n    {_words(inlines)}'
        case Caution(title=title, blocks=inner):
            text = "\n\n".join(_block(part, painters) for part in inner).replace("\n", "\n    ")
            return f'!!! warning "{title}"\n    {text}'
        case StepBlock(blocks=inner):
            return "\n\n".join([_step_heading(block), *(_block(part, painters) for part in inner)])


def _step_heading(step: StepBlock) -> str:
    return f"### {step.number}. {step.title} {{: #step-{step.id} }}"


def _item(part: Block | Variants, painters: Sequence[Painter]) -> str:
    """Return what stands in an item of a list, in one line; words of other widths stand beside each other."""
    if isinstance(part, Variants):
        return " ".join(
            f'<span data-cloth="{" ".join(map(str, option.texts))}">'
            + " ".join(_item(inner, painters) for inner in option.blocks)
            + "</span>"
            for option in part.options
        )
    return _block(part, painters).replace("\n", " ")


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
