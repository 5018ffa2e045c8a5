"""A sheet to its handout: the text of the page, print pictures, and the templates at true size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from evenseam.exact import Unit
from evenseam.figures import Theme
from evenseam.figures.paper import Paper, template_pages
from evenseam.problems import Outcome
from evenseam.publish.handout import HandoutFrame, write_handout
from evenseam.publish.handout_corrections import with_corrections
from evenseam.publish.options import edition_of
from evenseam.publish.pictures import SheetPictures
from evenseam.review import Correction
from evenseam.sheet import PatternSheet
from evenseam.wording import BASE_LANGUAGE, language, write_document
from evenseam.wording.document import Document

_EDITION_KEYS = {Unit.INCH: "inch_edition", Unit.CENTIMETRE: "centimeter_edition"}


def titled_document(sheet: PatternSheet, code: str = BASE_LANGUAGE, known: Document | None = None) -> Outcome[Document]:
    """Return the text of one size, with size and edition under its title; `known` is that for other cloth."""
    outcome = write_document(sheet, code, known)
    if outcome.value is None:
        return outcome
    subtitle = f"{outcome.value.subtitle}, {language(code).word('page', _EDITION_KEYS[sheet.project.unit])}"
    return Outcome(replace(outcome.value, subtitle=subtitle), outcome.problems)


def sheet_frame(sheet: PatternSheet, paper: str, code: str = BASE_LANGUAGE) -> HandoutFrame:
    """Return what stands round every page of a handout."""
    pattern = sheet.pattern
    words = language(code)
    foot = words.word("page", "handout_foot")
    seam = words.figure(sheet.project.seam_allowance.text)
    for name, said in (("by", pattern.designer or pattern.title), ("version", pattern.version), ("seam", seam)):
        foot = foot.replace(f"{{{name}}}", said)
    spoken, _, region = code.partition("-")
    region = region.lower() or ("us" if spoken == BASE_LANGUAGE else "")
    page = words.word("page", "handout_page")
    return HandoutFrame(pattern.designer, foot, paper, pattern.place, spoken, region, page)


def make_handout(
    sheet: PatternSheet, paper: str, code: str = BASE_LANGUAGE, corrections: Sequence[Correction] = ()
) -> Outcome[bytes]:
    """Return the handout of one sheet as PDF, on "letter" or "a4", with its corrections if they are given."""
    written = titled_document(sheet, code)
    if written.value is None:
        return Outcome(None, written.problems)
    document = with_corrections(written.value, corrections, sheet, language(code))
    templates = template_pages(sheet, Paper(paper), language(code))
    name = f"{sheet.project.size}-{edition_of(sheet.project.unit)}"
    painter = SheetPictures(sheet, code).painter(Theme.PRINT, name)
    outcome = write_handout(document, sheet_frame(sheet, paper, code), painter, templates)
    return Outcome(outcome.value, (*written.problems, *outcome.problems))
