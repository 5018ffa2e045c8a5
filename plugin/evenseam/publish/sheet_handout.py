"""A sheet to its handout: the text of the page, print pictures, and the templates at true size."""

from __future__ import annotations

from dataclasses import replace

from evenseam.exact import Unit
from evenseam.figures import Theme
from evenseam.figures.paper import Paper, template_pages
from evenseam.problems import Outcome
from evenseam.publish.handout import HandoutFrame, write_handout
from evenseam.publish.options import edition_of
from evenseam.publish.pictures import SheetPictures
from evenseam.sheet import PatternSheet
from evenseam.wording import write_document
from evenseam.wording.document import Document

_EDITION_NAMES = {Unit.INCH: "inch", Unit.CENTIMETRE: "centimetre"}


def titled_document(sheet: PatternSheet) -> Outcome[Document]:
    """Return the text of one size, with size and edition under its title."""
    outcome = write_document(sheet)
    if outcome.value is None:
        return outcome
    subtitle = f"{outcome.value.subtitle}, {_EDITION_NAMES[sheet.project.unit]} edition"
    return Outcome(replace(outcome.value, subtitle=subtitle), outcome.problems)


def sheet_frame(sheet: PatternSheet, paper: str) -> HandoutFrame:
    """Return what stands round every page of a handout."""
    pattern = sheet.pattern
    footer = f"{pattern.designer or pattern.title} · version {pattern.version} · "
    footer += f"seam allowance {sheet.project.seam_allowance.text}"
    return HandoutFrame(pattern.designer, footer, paper, pattern.place)


def make_handout(sheet: PatternSheet, paper: str) -> Outcome[bytes]:
    """Return the handout of one sheet as PDF, on "letter" or "a4"."""
    written = titled_document(sheet)
    if written.value is None:
        return Outcome(None, written.problems)
    templates = template_pages(sheet, Paper(paper))
    painter = SheetPictures(sheet).painter(Theme.PRINT, f"{sheet.project.size}-{edition_of(sheet.project.unit)}")
    outcome = write_handout(written.value, sheet_frame(sheet, paper), painter, templates)
    return Outcome(outcome.value, (*written.problems, *outcome.problems))
