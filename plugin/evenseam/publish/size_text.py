"""A sheet to the text of its page, with everything that changes when the reader's fabric is wider or narrower."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.figures import Theme
from evenseam.pattern import Quantity
from evenseam.publish.html import HtmlText, TextAtWidth, write_widths
from evenseam.publish.pictures import SheetPictures
from evenseam.publish.reader.cloth import MOST_WIDTHS, cloth_asides
from evenseam.publish.sheet_handout import titled_document
from evenseam.publish.variants import Merged, merged
from evenseam.publish.widths import SheetAtWidth, at_widths
from evenseam.wording.document import Document


@dataclass(frozen=True, slots=True)
class SizeText:
    """The text of a page, and the figures of other widths that it names."""

    text: HtmlText
    more_figures: tuple[tuple[str, Quantity], ...]


@dataclass(frozen=True, slots=True)
class WidthTexts:
    """What the page says for every width of cloth that is offered."""

    widths: tuple[SheetAtWidth, ...]
    blocks: tuple[Merged, ...]
    """What all widths share stands there once."""
    texts: tuple[TextAtWidth, ...]
    """In the order of the widths."""


def write_size_text(pictures: SheetPictures, document: Document, name: str) -> SizeText:
    """Return the text of one sheet's page; `document` is what the sheet says as it is planned."""
    found = write_width_texts(pictures, document, name)
    widths = found.widths
    planned = next(at.width for at in widths if at.is_planned)
    text = write_widths(
        found.blocks,
        found.texts,
        cloth_asides([at.width for at in widths], planned, pictures.language),
        pictures.language,
    )
    more = ((at.renamed[known], figure) for at in widths for known, figure in at.sheet.figures if known in at.renamed)
    return SizeText(text, tuple(more))


def write_width_texts(pictures: SheetPictures, document: Document, name: str) -> WidthTexts:
    """Return what one sheet's page says for every width, before it is any kind of markup."""
    widths = _widths(pictures)
    main = next(place for place, at in enumerate(widths) if at.is_planned)
    drawn = [pictures if at.is_planned else SheetPictures(at.sheet, pictures.language.code) for at in widths]
    documents = [document if at.is_planned else _document_at(at, pictures.language.code, document) for at in widths]

    def is_same(picture: str, one: int, other: int) -> bool:
        return drawn[one].drawing(picture) == drawn[other].drawing(picture)

    texts = (
        TextAtWidth(
            drawing.painter(Theme.WEB, name if at.is_planned else f"{name}-wide-{at.width.number.replace(' ', '-')}"),
            "" if at.is_planned else at.width.number.replace(" ", "-").replace("/", "-"),
            at.renamed,
        )
        for at, drawing in zip(widths, drawn, strict=True)
    )
    return WidthTexts(widths, merged(documents, main, is_same), tuple(texts))


def _widths(pictures: SheetPictures) -> tuple[SheetAtWidth, ...]:
    """Return the widths that are offered: few enough for the style, the planned one always among them."""
    found = at_widths(pictures.sheet)
    if len(found) <= MOST_WIDTHS:
        return found
    return tuple(at for at in found if at.is_planned)


def _document_at(at: SheetAtWidth, code: str, known: Document) -> Document:
    written = titled_document(at.sheet, code, known).value
    if written is None:
        raise ValueError("the same words can be written for every width")
    return written
