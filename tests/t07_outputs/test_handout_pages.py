"""The pages of real handouts: full, with nothing parted that belongs together, and every letter large enough."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
from evenseam.exact import Unit
from evenseam.figures.paper import Paper, template_pages
from evenseam.publish.sheet_handout import make_handout
from evenseam.publish.sources import find_patterns
from evenseam.reading import read_pattern
from evenseam.sheet import compute_sheet
from evenseam.wording import words_of
from support.paper_reader import read_pdf

PATTERNS = Path(__file__).parents[2] / "patterns"
TOP, FOOT = 50, 46
"""Points from the edges: between them stands the text."""
HALF_FULL = 0.45
SMALLEST = 6.4
"""Points: letters of 6 1/2, less what rounding takes."""
HEADING = 10.9
"""Points: letters of a heading are larger."""


@dataclass(frozen=True)
class Page:
    """What stands on one page of text, without head and foot."""

    chars: list[dict[str, Any]]
    marks: list[dict[str, Any]]
    lines: list[str]
    width: float
    height: float

    @property
    def lowest(self) -> float:
        return max(mark["bottom"] for mark in (*self.chars, *self.marks))


HANDOUTS = (
    ("scallops-by-the-stove", "wall-hanging", Unit.INCH, "a4"),
    ("dories-at-slack-water", "wall-hanging", Unit.CENTIMETRE, "letter"),
)


@cache
def handout(slug: str, size: str, unit: Unit, paper: str) -> tuple[Page, ...]:
    """Return the pages of text of one handout, those before its templates."""
    content, templates = made(slug, size, unit, paper)
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        return tuple(pages_of(pdf.pages[: len(pdf.pages) - templates]))


def made(slug: str, size: str, unit: Unit, paper: str) -> tuple[bytes, int]:
    """Return a handout, and how many of its pages are templates."""
    (source,) = find_patterns(PATTERNS / slug)
    pattern = read_pattern(slug, source.source, source.drawings).value
    assert pattern is not None
    project = next(one for one in pattern.projects if (one.size, one.unit) == (size, unit))
    sheet = compute_sheet(pattern, project).value
    assert sheet is not None
    outcome = make_handout(sheet, paper, "en-GB")
    assert outcome.value is not None, outcome.problems
    return outcome.value, len(template_pages(sheet, Paper(paper), words_of("en-GB")))


def pages_of(pages: list[pdfplumber.page.Page]) -> Iterator[Page]:
    for page in pages:
        body = page.crop((0, TOP, page.width, page.height - FOOT))
        chars = [char for char in body.chars if char["text"].strip()]
        marks = [*body.rects, *body.curves, *body.lines]
        yield Page(chars, marks, body.extract_text().splitlines(), float(page.width), float(page.height))


@pytest.mark.parametrize("wanted", HANDOUTS, ids=lambda wanted: f"{wanted[0]}-{wanted[3]}")
class TestPages:
    def test_no_page_but_the_last_is_half_empty(self, wanted: tuple[str, str, Unit, str]) -> None:
        pages = handout(*wanted)
        shares = [(page.lowest - TOP) / (page.height - TOP - FOOT) for page in pages[:-1]]
        assert min(shares) > HALF_FULL, shares
        assert sum(shares) / len(shares) > 0.8, shares

    def test_no_heading_stands_at_the_foot(self, wanted: tuple[str, str, Unit, str]) -> None:
        for number, page in enumerate(handout(*wanted), start=1):
            low = max(char["bottom"] for char in page.chars)
            last = [char for char in page.chars if char["bottom"] > low - 3]
            told = "".join(char["text"] for char in last)
            assert max(char["size"] for char in last) < HEADING, (number, told)

    def test_no_page_begins_with_what_the_step_before_measures(self, wanted: tuple[str, str, Unit, str]) -> None:
        pages = handout(*wanted)
        assert sum("now measures" in line for page in pages for line in page.lines) > 3
        assert [page.lines[0] for page in pages if "now measures" in page.lines[0]] == []

    def test_every_letter_can_be_read_and_none_is_in_the_margin(self, wanted: tuple[str, str, Unit, str]) -> None:
        for page in handout(*wanted):
            # Of words that read from bottom to top the reader takes a letter's width for its size.
            level = [char for char in page.chars if abs(char["matrix"][1]) < 0.01]
            assert min(char["size"] for char in level) > SMALLEST
            assert min(char["x0"] for char in page.chars) > 55
            assert max(char["x1"] for char in page.chars) < page.width - 55


def test_a_large_quilt_on_point_needs_few_pages() -> None:
    """Its 29 rows, sashing rows and triangles are told in three steps."""
    content, templates = made("floats-in-the-net", "queen", Unit.INCH, "letter")
    assert templates == 0
    assert len(read_pdf(content).pages) <= 14
