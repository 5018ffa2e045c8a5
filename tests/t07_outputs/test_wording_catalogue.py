"""The catalogue of a language: whole, tidy, and open to variants without a change of code."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from evenseam.pattern import Operation
from evenseam.sheet import compute_sheet
from evenseam.wording import languages, write_document
from evenseam.wording.catalogue import TEMPLATES, language
from evenseam.wording.step_words import TEMPLATES as STEP_TEMPLATES
from support.document_words import as_text
from support.samples import LAP_QUILT, MUG_RUG, PATTERN, Project

EVERY_TEMPLATE = sorted(TEMPLATES.rglob("*.md"))


def text_of(project: Project, code: str) -> str:
    sheet = compute_sheet(replace(PATTERN, projects=(project,)), project).value
    assert sheet is not None
    document = write_document(sheet, code).value
    assert document is not None
    return as_text(document)


def test_every_operation_has_a_template() -> None:
    assert set(STEP_TEMPLATES) == set(Operation.__args__)
    assert all((TEMPLATES / "en" / f"{name}.md").is_file() for name in STEP_TEMPLATES.values())


def test_every_template_is_used() -> None:
    """A template that no code names is a sentence that nobody will ever read."""
    publisher = TEMPLATES.parents[1] / "publish"
    written = (*TEMPLATES.parent.glob("*.py"), *publisher.rglob("*.py"), *EVERY_TEMPLATE)
    code = "\n".join(path.read_text("utf-8") for path in written)
    for path in EVERY_TEMPLATE:
        name = path.relative_to(TEMPLATES).with_suffix("").parts
        assert "/".join(name[1:]) in code or (name[1] == "cautions" and f'"{name[2]}"' in code), path


@pytest.mark.parametrize("path", EVERY_TEMPLATE, ids=lambda path: "/".join(path.parts[-3:]))
class TestTemplates:
    """What holds for every template of every language."""

    def test_it_can_be_filled(self, path: Path) -> None:
        code, *name = path.relative_to(TEMPLATES).with_suffix("").parts
        language(code).environment.get_template("/".join(name) + ".md")

    def test_no_words_between_quotes_begin_or_end_with_a_space(self, path: Path) -> None:
        """Words in an expression are trimmed when they are written, so such a space would be lost."""
        for expression in re.findall(r"\{\{.*?\}\}", path.read_text("utf-8")):
            for words in re.findall(r'"([^"]*)"', expression):
                assert words == words.strip(), expression

    def test_it_holds_no_measurement(self, path: Path) -> None:
        """Figures come from the sheet; the length of a stitch and the size of a needle belong to the machine."""
        text = (
            path.read_text("utf-8")
            .replace("about 1.5 mm long", "")
            .replace("ongeveer 1,5 mm lang", "")
            .replace("90/14", "")
        )
        prose = re.sub(r"\{[{%].*?[%}]\}", "", text)
        assert not re.search(r"\d+(?:[./]\d+)? ?(?:in|cm|mm|yd|m)\b", prose)


class TestVariants:
    """A folder with one file of words is a variant: whatever it does not say is said as in its base language."""

    def test_british_wording(self) -> None:
        american, british = (text_of(replace(LAP_QUILT, batting_name="Cotton"), code) for code in ("en", "en-GB"))
        assert {"en", "en-GB"} <= set(languages())
        for word in ("batting", "selvage", "neighboring", "mitered", "toward "):
            assert word in american and word not in british
        for word in ("wadding", "selvedge", "neighbouring", "mitred", "towards "):
            assert word in british and word not in american

    def test_figures_are_the_same_in_every_variant(self) -> None:
        texts = [text_of(MUG_RUG, code) for code in ("en", "en-GB")]
        first, second = (re.findall(r"\d[\d /]*", text) for text in texts)
        assert first == second

    def test_unknown_language_is_our_own_mistake(self) -> None:
        with pytest.raises(KeyError):
            language("xx")

    @pytest.mark.parametrize("code", languages())
    def test_words_have_the_same_keys_as_english(self, code: str) -> None:
        english, words = language("en").words, language(code).words
        assert {table: set(entries) for table, entries in words.items() if table != "phrases"} == {
            table: set(entries) for table, entries in english.items() if table != "phrases"
        }

    def test_phrases_of_pictures_are_said_as_the_variant_has_them(self) -> None:
        assert language("en-GB").phrase("both selvages together") == "both selvedges together"
        assert language("en").phrase("both selvages together") == "both selvages together"
        assert [language("en-GB").phrase(word) for word in ("selvage", "batting")] == ["selvedge", "wadding"]
        assert language("en-GB").phrase("26.5 cm") == "26.5 cm"


class TestPlurals:
    """Nouns and small numbers agree."""

    @pytest.mark.parametrize(
        ("count", "counted"),
        [
            (0, "no strips"),
            (1, "one strip"),
            (2, "two strips"),
            (9, "nine strips"),
            (10, "10 strips"),
            (21, "21 strips"),
        ],
    )
    def test_counted_in_words(self, count: int, counted: str) -> None:
        english = language("en")
        assert f"{english.in_words(count)} {english.noun('strip', count)}" == counted

    @pytest.mark.parametrize(("count", "words"), [(1, "once"), (2, "twice"), (3, "three times"), (20, "20 times")])
    def test_how_often(self, count: int, words: str) -> None:
        assert language("en").times(count) == words

    @pytest.mark.parametrize(
        ("parts", "listed"),
        [
            ((), ""),
            (("a",), "a"),
            (("a", "b"), "a and b"),
            (("a", "b", "c"), "a, b and c"),
            (("a*", "b"), "a\\* and b"),
        ],
    )
    def test_lists(self, parts: tuple[str, ...], listed: str) -> None:
        assert language("en").listed(parts) == listed
