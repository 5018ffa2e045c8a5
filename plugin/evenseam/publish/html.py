"""A document to the HTML of a page's body: one run of escaped markup without blank lines, and its contents list."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from evenseam.publish.contents import ContentsEntry
from evenseam.publish.html_text import address, colour, escape, inline_svg, plain, without_blank_lines
from evenseam.publish.reader.ticking import cut_tick, step_tick
from evenseam.publish.variants import ListOfAll, Merged, Option, StepOfAll, Variants
from evenseam.wording import Words, words_of
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

CUTTING = "cutting-"
"""How the ids of the headings begin under which the cuts of a fabric are listed."""

_NARROW = 3
"""Tables of no more columns stay tables on the narrowest screen."""

Painter = Callable[[Picture], str]
"""Gives the SVG text of a picture of the document."""


@dataclass(frozen=True, slots=True)
class HtmlText:
    """The body of a page and what leads into it."""

    body: str
    contents: tuple[ContentsEntry, ...]
    ids: frozenset[str]
    """Every id in the body that a link may point at."""


def write_html(document: Document, painter: Painter, words: Words | None = None) -> HtmlText:
    """Return a document as the HTML that follows a page's title; `words` are those of its language.

    Author's words are escaped; the markup has no blank line and one root element, so that a Markdown processor hands
    it on untouched. Pictures are inline SVG and left out of search indexes.
    """
    writer = _Writer(painter, words or words_of())
    parts = "\n".join(writer.block(block) for block in document.blocks)
    body = without_blank_lines(f'<div class="pattern-text">\n{parts}\n</div>')
    return HtmlText(body, tuple(writer.contents), frozenset(writer.ids))


@dataclass(frozen=True, slots=True)
class TextAtWidth:
    """What tells the text for one width of cloth from the others on its page."""

    painter: Painter
    mark: str
    """Short name of the width: 44. Empty for the text that counts where nobody has chosen."""
    renamed: Mapping[str, str]
    """Names under which its figures can be asked for, by their names in the sheet."""


def write_widths(
    blocks: Iterable[Merged], texts: Sequence[TextAtWidth], asides: Mapping[str, str], words: Words | None = None
) -> HtmlText:
    """Return the texts for several widths of cloth as one page; `asides` is HTML to stand below headings, by id.

    What differs stands in elements that name the places of their widths, from 1, in `data-cloth`.
    """
    main = next(text for text in texts if not text.mark)
    writer = _Writer(main.painter, words or words_of(), texts=texts, asides=asides)
    body = without_blank_lines(f'<div class="pattern-text">\n{writer.blocks(blocks)}\n</div>')
    return HtmlText(body, tuple(writer.contents), frozenset(writer.ids))


_FIGURE = re.compile(r'(?<= data-figure=")[^"]*')


def plain_words(inlines: Iterable[Inline]) -> str:
    """Return the words of a run of inlines, without any markup and not escaped."""
    words: list[str] = []
    for inline in inlines:
        match inline:
            case Text(text=text) | Code(text=text) | Measured(text=text):
                words.append(text)
            case Strong(inlines=inner) | Emphasis(inlines=inner) | Link(inlines=inner):
                words.append(plain_words(inner))
            case LineBreak():
                words.append(" ")
    return plain("".join(words))


def _words_of(blocks: Iterable[Block]) -> str:
    return " ".join(plain_words(block.inlines) for block in blocks if isinstance(block, Paragraph))


def write_inlines(inlines: Iterable[Inline]) -> str:
    """Return a run of inlines as HTML."""
    return "".join(_inline(inline) for inline in inlines)


def _inline(inline: Inline) -> str:
    match inline:
        case Text(text=text):
            return escape(text)
        case Strong(inlines=inner):
            return f"<strong>{write_inlines(inner)}</strong>"
        case Emphasis(inlines=inner):
            return f"<em>{write_inlines(inner)}</em>"
        case Code(text=text):
            return f"<code>{escape(text)}</code>"
        case Link(address=target, inlines=inner):
            return f'<a href="{address(target)}">{write_inlines(inner)}</a>'
        case Measured(text=text, figure=figure):
            name = f' data-figure="{escape(figure)}"' if figure else ""
            return f'<span class="measured"{name}>{escape(text)}</span>'
        case LineBreak():
            return "<br>"


def _is_paragraph(blocks: tuple[Block, ...]) -> bool:
    return len(blocks) == 1 and isinstance(blocks[0], Paragraph)


@dataclass(slots=True)
class _Writer:
    painter: Painter
    words: Words
    contents: list[ContentsEntry] = field(default_factory=list)
    ids: set[str] = field(default_factory=set)
    level: int = 1
    """Level of the last heading."""
    step_title: str = ""
    """Title of the step that is being written; empty between steps."""
    cutting: str = ""
    """Id of the heading under which cuts are listed; empty elsewhere."""
    item_numbers: list[int] = field(default_factory=list)
    """Number of the item that is being written, in each list that is open."""
    texts: Sequence[TextAtWidth] = ()
    asides: Mapping[str, str] = field(default_factory=dict)

    def block(self, block: Merged) -> str:
        match block:
            case Variants():
                return self.variants(block)
            case StepOfAll(step=step, blocks=inner):
                return self.step(step, inner)
            case ListOfAll():
                return self.list_of_all(block)
            case Heading():
                return self.heading(block)
            case Paragraph(inlines=inlines):
                return f"<p>{write_inlines(inlines)}</p>"
            case ListBlock():
                return self.list_block(block)
            case Table():
                return self.table(block)
            case Picture():
                return self.picture(block)
            case Pictures(pictures=pictures):
                return '<div class="pictures">\n' + "\n".join(map(self.picture, pictures)) + "\n</div>"
            case Beside(picture=picture, blocks=inner):
                return f'<div class="beside">\n{self.picture(picture)}\n<div>\n{self.blocks(inner)}\n</div>\n</div>'
            case Swatches():
                return self.swatches(block)
            case Checkpoint(inlines=inlines):
                return f'<p class="checkpoint">{write_inlines(inlines)}</p>'
            case Caution():
                return self.caution(block)
            case StepBlock():
                return self.step(block, block.blocks)

    def blocks(self, blocks: Iterable[Merged]) -> str:
        return "\n".join(self.block(block) for block in blocks)

    def variants(self, variants: Variants) -> str:
        return "\n".join(self.option(option, "div", "section", self.blocks) for option in variants.options)

    def option(self, option: Option, tag: str, other_tag: str, write: Callable[[tuple[Block, ...]], str]) -> str:
        """Return what stands there for some of the widths. Elements of other widths are not used for anything else."""
        kept = self.painter, self.cutting
        text = min((self.texts[place] for place in option.texts), key=lambda one: one.mark)
        self.painter = text.painter
        self.cutting = f"{kept[1]}@{text.mark}" if kept[1] and text.mark else kept[1]
        places = " ".join(str(place + 1) for place in sorted(option.texts))
        inner = write(option.blocks)
        self.painter, self.cutting = kept
        if not text.mark:
            return f'<{tag} class="at-width" data-cloth="{places}">{inner}</{tag}>'
        renamed = _FIGURE.sub(lambda found: text.renamed.get(found[0], found[0]), inner)
        return f'<{other_tag} class="at-width other-width" data-cloth="{places}">{renamed}</{other_tag}>'

    def list_of_all(self, block: ListOfAll) -> str:
        tag = "ol" if block.is_numbered else "ul"
        lines = "\n".join(f"<li>{self.item_of_all(item)}</li>" for item in block.items)
        return f"<{tag}>\n{lines}\n</{tag}>"

    def item_of_all(self, blocks: tuple[Block | Variants, ...]) -> str:
        match blocks:
            case (Variants(options=options),) if all(_is_paragraph(option.blocks) for option in options):
                return "".join(self.option(option, "span", "bdi", self.item) for option in options)
            case _:
                return self.item(blocks)

    def heading(self, heading: Heading) -> str:
        # A level that leaps (2 to 4) is a gap in the outline for those who listen to a page.
        self.level = min(max(heading.level, 2), self.level + 1, 6)
        id = self.fresh_id(heading.id)
        self.cutting = id if heading.id.startswith(CUTTING) else ""
        self.contents.append(ContentsEntry(self.level, id, plain_words(heading.inlines)))
        aside = f"\n{self.asides[heading.id]}" if heading.id in self.asides else ""
        return f'<h{self.level} id="{id}">{write_inlines(heading.inlines)}</h{self.level}>{aside}'

    def list_block(self, block: ListBlock) -> str:
        tag = "ol" if block.is_numbered else "ul"
        self.item_numbers.append(0)
        lines = [self.list_item(item) for item in block.items]
        self.item_numbers.pop()
        return f"<{tag}>\n" + "\n".join(lines) + f"\n</{tag}>"

    def list_item(self, blocks: tuple[Block, ...]) -> str:
        self.item_numbers[-1] += 1
        if self.cutting and not any(isinstance(block, ListBlock) for block in blocks):
            # A cut, and no heading above other cuts: it can be ticked off.
            id = f"{self.cutting}:{'.'.join(map(str, self.item_numbers))}"
            box = cut_tick(id, _words_of(blocks), self.words)
            return f'<li class="tick-item">{box}<div>{self.item(blocks)}</div></li>'
        return f"<li>{self.item(blocks)}</li>"

    def item(self, blocks: tuple[Block | Variants, ...]) -> str:
        match blocks:
            case (Paragraph(inlines=inlines),):
                return write_inlines(inlines)
            case _:
                return self.blocks(blocks)

    def table(self, table: Table) -> str:
        id = self.fresh_id("table")
        head = "".join(f'<th scope="col">{write_inlines(cell)}</th>' for cell in table.header)
        # On a narrow screen each row of many columns becomes a card, where every figure needs its heading again.
        is_wide = len(table.header) > _NARROW
        heads = [plain_words(cell) for cell in table.header] if is_wide else []
        rows = "\n".join(f"<tr>{self.row(row, table.has_row_headings, heads)}</tr>" for row in table.rows)
        return (
            f'<div class="table-scroll" role="region" aria-labelledby="{id}" tabindex="0">\n'
            f'<table class="figures{" stacks" if is_wide else ""}">\n'
            f'<caption id="{id}">{escape(table.caption)}</caption>\n<thead><tr>{head}</tr></thead>\n'
            f"<tbody>\n{rows}\n</tbody>\n</table>\n</div>"
        )

    def row(self, cells: tuple[tuple[Inline, ...], ...], has_heading: bool, heads: Sequence[str]) -> str:
        written = [write_inlines(cell) for cell in cells]
        first = f'<th scope="row">{written[0]}</th>' if has_heading and written else ""
        marks = [f' data-head="{escape(head)}"' for head in heads] or [""] * len(written)
        begin = 1 if first else 0
        return first + "".join(
            f"<td{mark}>{cell}</td>" for cell, mark in zip(written[begin:], marks[begin:], strict=True)
        )

    def picture(self, picture: Picture) -> str:
        svg = inline_svg(self.painter(picture))
        # In a step that is called what its picture is called, the words stand right above it already.
        says_more = picture.title != self.step_title
        caption = f"<figcaption>{escape(picture.title)}</figcaption>\n" if says_more else ""
        return (
            f'<figure class="picture" data-picture="{escape(picture.name)}" data-search-exclude>\n{svg}\n'
            f"{caption}</figure>"
        )

    def swatches(self, block: Swatches) -> str:
        return '<ul class="swatches">\n' + "\n".join(self.swatch(*row) for row in block.rows) + "\n</ul>"

    def swatch(self, id: str, letter: str, name: str, fabric_colour: str, line: tuple[Inline, ...]) -> str:
        # A picture instead of a style attribute: a page may forbid inline styles altogether.
        square = (
            f'<svg class="swatch" viewBox="0 0 24 24" aria-hidden="true" data-fabric="{escape(id)}">'
            f'<rect x="0.5" y="0.5" width="23" height="23" rx="3" fill="var(--fabric-{escape(id)},'
            f'{colour(fabric_colour)})"/></svg>'
        )
        mark = f'<span class="fabric-letter">{escape(letter)}</span> ' if letter else ""
        return f"<li>{square}<span>{mark}<strong>{escape(name)}</strong> {write_inlines(line)}</span></li>"

    def caution(self, caution: Caution) -> str:
        id = self.fresh_id("caution")
        return (
            f'<aside class="caution" aria-labelledby="{id}">\n<p class="caution-title" id="{id}">'
            f"{escape(caution.title)}</p>\n{self.blocks(caution.blocks)}\n</aside>"
        )

    def step(self, step: StepBlock, blocks: Iterable[Merged]) -> str:
        id = self.fresh_id(f"step-{step.id}")
        level = min(self.level + 1, 6)
        title = f"{step.number}. {plain(step.title)}"
        self.contents.append(ContentsEntry(level, id, title))
        outer, self.level, self.step_title = self.level, level, step.title
        inner = self.blocks(blocks) + f"\n{step_tick(id, step.number, self.words)}"
        self.level, self.step_title = outer, ""
        return (
            f'<section class="step" aria-labelledby="{id}">\n<h{level} id="{id}"><span class="step-number">'
            f"{step.number}.</span> "
            # Beside the heading, not round it: what looks for headings lays out nothing else.
            f'{escape(step.title)}</h{level}>\n<div class="step-body">\n{inner}\n</div>\n</section>'
        )

    def fresh_id(self, wanted: str) -> str:
        base = (
            "".join(sign if sign.isascii() and (sign.isalnum() or sign in "-_") else "-" for sign in wanted) or "part"
        )
        id, number = base, 1
        while id in self.ids:
            number += 1
            id = f"{base}-{number}"
        self.ids.add(id)
        return id
