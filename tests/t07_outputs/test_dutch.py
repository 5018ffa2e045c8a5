"""Another language beside English: nothing of it is missing, and its figures are the very same."""

from __future__ import annotations

import io
import re
import tomllib
from functools import cache
from pathlib import Path

import pdfplumber
import pytest
from evenseam.figures.drawing import Label
from evenseam.pattern import Operation
from evenseam.publish.checked import check_pattern
from evenseam.publish.pictures import SheetPictures
from evenseam.publish.sheet_handout import make_handout, titled_document
from evenseam.publish.size_text import write_size_text
from evenseam.publish.sources import PatternSource, find_patterns
from evenseam.sheet import PatternSheet
from evenseam.wording.catalogue import TEMPLATES, language
from evenseam.wording.document import Picture
from evenseam.wording.step_words import TEMPLATES as STEP_TEMPLATES
from support.document_words import as_text

SOURCES = find_patterns(Path(__file__).parents[2] / "patterns")
SAME_IN_BOTH = {"top", "top,"}


def test_no_template_of_english_is_missing_and_none_is_more() -> None:
    english = {path.relative_to(TEMPLATES / "en") for path in (TEMPLATES / "en").rglob("*.md")}
    assert {path.relative_to(TEMPLATES / "nl") for path in (TEMPLATES / "nl").rglob("*.md")} == english
    assert {f"{name}.md" for name in STEP_TEMPLATES.values()} <= {path.as_posix() for path in english}
    assert set(STEP_TEMPLATES) == set(Operation.__args__)


def test_no_word_of_english_is_missing_and_each_is_of_the_same_form() -> None:
    english, dutch = (tomllib.loads((TEMPLATES / code / "words.toml").read_text("utf-8")) for code in ("en", "nl"))
    for table, entries in english.items():
        assert entries.keys() <= dutch[table].keys(), table
        for key, words in entries.items():
            assert isinstance(dutch[table][key], type(words)), (table, key)
            places = sorted(set(re.findall(r"\{\w*\}", str(words))))
            assert sorted(set(re.findall(r"\{\w*\}", str(dutch[table][key])))) == places, (table, key)
    for phrase, said in dutch["phrases"].items():
        assert phrase.count("{}") == said.count("{}"), phrase


def test_it_says_that_a_native_reader_must_check_it() -> None:
    assert "needs a native reader's check" in (TEMPLATES / "nl" / "words.toml").read_text("utf-8").casefold()


def sheets_of(source: PatternSource) -> tuple[PatternSheet, ...]:
    return _sheets(source.slug)


@cache
def _sheets(slug: str) -> tuple[PatternSheet, ...]:
    return check_pattern(next(source for source in SOURCES if source.slug == slug)).sheets


def pictures_in(part: object) -> set[str]:
    if isinstance(part, Picture):
        return {part.name}
    if isinstance(part, tuple | list):
        return {name for inner in part for name in pictures_in(inner)}
    fields = getattr(part, "__dataclass_fields__", ())
    return {name for field in fields for name in pictures_in(getattr(part, field))}


@pytest.mark.parametrize("source", SOURCES, ids=lambda source: source.slug)
def test_every_word_of_a_picture_and_every_name_of_a_cut_is_said(source: PatternSource) -> None:
    """Letters, figures and the author's own names stay as they are; every other word must be known."""
    dutch = language("nl")
    for sheet in sheets_of(source):
        project = sheet.project
        own = {fabric.name for fabric in project.fabrics} | {block.name for block in project.blocks}
        drawn = SheetPictures(sheet)
        document = titled_document(sheet).value
        labels = {
            shape.text
            for name in pictures_in(document)
            for shape in drawn.drawing(name).shapes
            if isinstance(shape, Label)
        } | {cut.label for cut in sheet.cuts.cuts}
        for text in labels - own - SAME_IN_BOTH:
            if re.search(r"[a-z]{3}", text):
                assert dutch.phrase(text) != text, text


@pytest.mark.parametrize("source", SOURCES, ids=lambda source: source.slug)
def test_the_text_has_the_same_figures(source: PatternSource) -> None:
    for sheet in sheets_of(source):
        english, dutch = (titled_document(sheet, code).value for code in ("en", "nl"))
        assert english is not None
        assert dutch is not None
        assert measured(english) == measured(dutch)


def measured(part: object) -> list[str]:
    """Return every figure of a document, by the name under which its reason is asked for."""
    name = getattr(part, "figure", None)
    text = getattr(part, "text", None)
    if isinstance(name, str) and isinstance(text, str):
        return [text.replace(",", ".").replace("ongeveer ", "about ")]
    if isinstance(part, tuple | list):
        return sorted(figure for inner in part for figure in measured(inner))
    fields = getattr(part, "__dataclass_fields__", ())
    return sorted(figure for field in fields for figure in measured(getattr(part, field)))


def figures_of_page(sheet: PatternSheet, code: str) -> list[str]:
    document = titled_document(sheet, code).value
    assert document is not None
    body = write_size_text(SheetPictures(sheet, code), document, "page").text.body
    found = re.findall(r'<span class="measured"[^>]*>([^<]*)</span>', body)
    return sorted(text.replace(",", ".") if code == "nl" else text for text in found)


def test_a_page_has_the_same_figures_number_for_number() -> None:
    for sheet in sheets_of(SOURCES[0])[:2]:
        figures = figures_of_page(sheet, "en")
        assert len(figures) > 50
        assert figures_of_page(sheet, "nl") == figures


def test_a_handout_is_set_in_dutch() -> None:
    sheet = next(sheet for sheet in sheets_of(SOURCES[0]) if sheet.project.unit.name == "CENTIMETRE")
    pdf = make_handout(sheet, "a4", "nl").value
    assert pdf is not None
    with pdfplumber.open(io.BytesIO(pdf)) as read:
        text = "\n".join(page.extract_text() or "" for page in read.pages[:3])
        assert str(read.doc.catalog.get("Lang")) in ("b'nl'", "nl", "b'nl-NL'", "b'nl-nl'")
    assert "Naadtoeslag: 0,75 cm" in text
    assert "Seam allowance" not in text


def test_as_text_finds_no_english_sentence() -> None:
    document = titled_document(sheets_of(SOURCES[0])[0], "nl").value
    assert document is not None
    assert not re.search(r"\b[Tt]he (?:strip|block|seam|edge|top|fabric)", as_text(document))
