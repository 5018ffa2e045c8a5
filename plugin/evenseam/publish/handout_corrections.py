"""The list of corrections in a handout: under each version of the text, what that size cuts, buys or sews otherwise."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from evenseam.review import Correction
from evenseam.sheet import PatternSheet
from evenseam.wording import Words
from evenseam.wording.document import Block, Document, Heading, ListBlock, Paragraph, Strong, Text

_SECTION = "changes"
"""Id of the heading under which the versions are listed."""


def with_corrections(
    document: Document, corrections: Sequence[Correction], sheet: PatternSheet, words: Words
) -> Document:
    """Return a text with the computed corrections of its size and edition under the versions it lists.

    They are the figures that the pattern's first page lists for all sizes. The text lists the versions in the order of
    the corrections, those of the pattern's file.
    """
    if not any(correction.before for correction in corrections):
        return document
    blocks, is_here = [*document.blocks], False
    for place, block in enumerate(blocks):
        if isinstance(block, Heading):
            is_here = block.id == _SECTION
        elif is_here and isinstance(block, ListBlock):
            told = (_told(correction, sheet, words) for correction in corrections)
            items = tuple((*item, *more) for item, more in zip(block.items, told, strict=True))
            blocks[place] = replace(block, items=items)
            return replace(document, blocks=tuple(blocks))
    raise ValueError("the text lists no versions")


def _told(correction: Correction, sheet: PatternSheet, words: Words) -> tuple[Block, ...]:
    corrected, before = correction.corrected, correction.before
    if not before:
        return ()
    if corrected is None:
        return (_paragraph(words.fill("corrections", "not_on_record", before=before)),)
    project = sheet.project
    figures = [
        told for one in corrected.sizes if (one.size, one.unit) == (project.size, project.unit) for told in one.figures
    ]
    if figures:
        items = tuple((_paragraph(told[:1].upper() + told[1:]),) for told in figures)
        heading = Paragraph((Strong((Text(words.fill("corrections", "differs", before=before)),)),))
        return (heading, ListBlock(False, items))
    if {project.name, project.size} & {*corrected.unknown}:
        return (_paragraph(words.fill("corrections", "not_compared", before=before, sizes=project.name)),)
    return (_paragraph(words.fill("corrections", "same", before=before)),)


def _paragraph(text: str) -> Paragraph:
    return Paragraph((Text(text),))
