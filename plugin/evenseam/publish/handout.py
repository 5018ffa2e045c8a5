"""A document and its template pages to the handout: one tagged PDF, the same bytes every time."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from contextlib import ExitStack
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Protocol

import typst

from evenseam.problems import Outcome, Place, Problem
from evenseam.publish.codes import HANDOUT_NOT_SET
from evenseam.publish.html import Painter
from evenseam.publish.html_text import plain
from evenseam.publish.typst_data import Data, DataWriter
from evenseam.wording.document import Document

_MISSING_SIGN = re.compile(r'the text `"([^"`]+)"` could not be displayed')
NEARLY_EMPTY = 0.4
"""Share of the height of a page: a last page that is filled no further is set closer, if that saves it."""
CLOSER = ("close", "closest")
"""How such a handout is set instead, as far as it takes."""
_KEPT = ExitStack()
"""Files that are there while this runs, however the package is installed."""
_TYPST_PAPERS = {"letter": "us-letter", "a4": "a4"}


class TruePage(Protocol):
    """One sheet of paper as a picture: what a template page must tell."""

    @property
    def svg(self) -> str:
        """The picture, as large as the paper."""

    @property
    def description(self) -> str:
        """What is on the sheet, in words."""

    @property
    def width_points(self) -> float:
        """Width of the paper; 72 points are an inch."""

    @property
    def height_points(self) -> float:
        """Height of the paper."""


@dataclass(frozen=True, slots=True)
class HandoutFrame:
    """What stands round the text of a handout."""

    designer: str
    footer: str
    """Version and seam allowance, at the foot of every page."""
    paper: str
    """One of PAPERS."""
    place: Place | None = None
    """Where the pattern is written, for a problem."""
    language: str = "en"
    region: str = "us"
    """Empty for a language as such."""
    page: str = "{number} / {count}"
    """What stands at the foot of a page, with places for its number and that of the last."""


def handout_data(document: Document, frame: HandoutFrame, painter: Painter, sheets: Sequence[TruePage] = ()) -> str:
    """Return everything the typst program needs as one JSON text: the whole content of the handout."""
    pages: list[Data] = [
        {"svg": sheet.svg, "alt": plain(sheet.description), "width": sheet.width_points, "height": sheet.height_points}
        for sheet in sheets
    ]
    data: dict[str, Data] = {
        "title": plain(document.title),
        "subtitle": plain(document.subtitle),
        "designer": plain(frame.designer),
        "footer": plain(frame.footer),
        "paper": _TYPST_PAPERS[frame.paper],
        "language": frame.language,
        "region": frame.region or None,
        "page": plain(frame.page),
        "parts": DataWriter(painter).blocks(document.blocks),
        "sheets": pages,
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def set_handout(data: str, place: Place | None = None) -> Outcome[bytes]:
    """Return the PDF of a handout's data: PDF/UA-1, tagged, with bookmarks, without dates.

    Only the fonts that come with typst are used, so that every computer sets the same lines. A text that cannot be set
    is the problem `handout-not-set`.
    """
    try:
        pdf, end = _compiled(data, "plain")
        fewest = end.page
        for spacing in CLOSER:
            if end.page == 1 or end.share > NEARLY_EMPTY:
                break
            closer, end = _compiled(data, spacing)
            if end.page < fewest:
                pdf, fewest = closer, end.page
    except typst.TypstError as error:
        return Outcome(None, (_not_set(error, place),))
    except BaseException as error:
        # What typst calls a panic is no ordinary exception, and would end the whole build.
        if type(error).__name__ != "PanicException":
            raise
        _compiler.cache_clear()
        hint = "look for anything unusual in titles and texts, and leave it out to see whether it was that"
        return Outcome(None, (Problem(HANDOUT_NOT_SET, "the typesetter failed on this handout", place, hint),))
    return Outcome(pdf)


def write_handout(
    document: Document, frame: HandoutFrame, painter: Painter, sheets: Sequence[TruePage] = ()
) -> Outcome[bytes]:
    """Return a document and its true-scale sheets as one PDF."""
    return set_handout(handout_data(document, frame, painter, sheets), frame.place)


@cache
def program() -> bytes:
    """Return the typst program; it is always the same, whatever it sets."""
    return (resources.files("evenseam.publish") / "handout.typ").read_bytes()


@dataclass(frozen=True, slots=True)
class _End:
    """Where the text ends."""

    page: int
    share: float
    """How much of the height of that page is above it."""


def _compiled(data: str, spacing: str) -> tuple[bytes, _End]:
    """Return a PDF and where its text ends, before the templates."""
    compiler = _compiler()
    inputs = {"handout": data, "spacing": spacing}
    pdf = compiler.compile(format="pdf", pdf_standards=["ua-1"], sys_inputs=inputs)
    if not isinstance(pdf, bytes):
        raise TypeError("typst gave no PDF")
    # Nothing is set anew for this answer.
    told = json.loads(compiler.query("<end>", field="value", one=True))
    return pdf, _End(told["page"], float(told["y"].removesuffix("pt")) / (11 * 72))


@cache
def _compiler() -> typst.Compiler:
    # Only what was compiled from a file can be asked afterwards where it ends.
    path = _KEPT.enter_context(resources.as_file(resources.files("evenseam.publish") / "handout.typ"))
    return typst.Compiler(str(path), ignore_system_fonts=True)


def _not_set(error: typst.TypstError, place: Place | None) -> Problem:
    signs = sorted(set(_MISSING_SIGN.findall(error.diagnostic)))
    if signs:
        named = ", ".join(f"{plain(sign)} (U+{ord(sign[0]):04X})" for sign in signs)
        hint = "leave it out, or write it in words; Latin, Greek and Cyrillic letters can all be printed"
        return Problem(HANDOUT_NOT_SET, f"the handout's font has no sign for {named}", place, hint)
    hint = "look for anything unusual in titles and texts, and leave it out to see whether it was that"
    return Problem(HANDOUT_NOT_SET, f"the handout could not be set: {plain(error.message)}", place, hint)
