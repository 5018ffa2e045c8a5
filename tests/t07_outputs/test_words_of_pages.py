"""The words round the author's: of one spelling on every page, none of them English on a Dutch one, none unused."""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from evenseam.figures.drawing import Label
from evenseam.figures.paper import Paper, PaperPage, colouring_page, ruler_page, template_pages
from evenseam.figures.paper.page_furniture import HEAD_HEIGHT, ink_box
from evenseam.figures.paper.paper_size import MARGIN
from evenseam.publish.checked import check_pattern
from evenseam.publish.sheet_handout import make_handout
from evenseam.reading import starter
from evenseam.sheet import PatternSheet
from evenseam.wording import languages, words_of
from evenseam.wording.words import TEMPLATES, folders_of
from support.nameless import WORDS, nameless_site, said_in, said_on
from support.paper_reader import read_pdf

PACKAGE = TEMPLATES.parents[1]
AMERICAN = (
    r"colors?\b", r"colored", r"coloring", r"centers?\b", r"centered", r"centimeters?\b", r"meters?\b", r"grays?\b",
    r"batting", r"selvages?\b", r"mitered", r"neighbor(?!u)", r"licenses?\b", r"toward\b", r"counterclockwise",
    r"backward\b", r"bast(?:e|ed|ing)\b",
)  # fmt: skip
BRITISH = (
    r"colour", r"centres?\b", r"centred", r"centimetre", r"metres?\b", r"greys?\b", r"wadding", r"selvedge", r"mitred",
    r"neighbour", r"licence", r"towards\b", r"anticlockwise", r"backwards\b", r"tack(?:s|ed|ing)?\b",
)  # fmt: skip
"""Words that one of the two spells so and the other does not (common practice)."""
CHOSEN_BY_VALUE = {"skill": r"\w+", "layered": r"\w+", "unit_methods": r"\w+", "called": r"\w+_spacer"}
"""Keys that no code names in full: they are made from a value of the pattern."""


@pytest.fixture(scope="module")
def said(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[tuple[str, str]]]:
    """Every run of words of the same small site in each language, with where it stands."""
    return {code: _said(tmp_path_factory.mktemp(code), code) for code in ("en", "en-GB", "nl")}


def _said(folder: Path, code: str) -> list[tuple[str, str]]:
    site, (source,) = nameless_site(folder, code)
    runs = list(said_on(site))
    for sheet in check_pattern(source).sheets[:1]:
        runs += [("paper", words) for page in pages_of(sheet, code) for words in words_on(page)]
        runs += [("handout", line) for line in handout_of(sheet, code)]
    assert len(runs) > 2000
    return runs


def pages_of(sheet: PatternSheet, code: str) -> tuple[PaperPage, ...]:
    """Return every kind of printed page."""
    words = words_of(code)
    return (
        *template_pages(sheet, Paper.A4, words),
        colouring_page(sheet, Paper.A4, words),
        ruler_page(Paper.A4, words),
    )


def words_on(page: PaperPage) -> list[str]:
    return [
        *(shape.text for shape in page.drawing.shapes if isinstance(shape, Label)),
        *(page.title, page.description),
        *said_in(page.svg),
    ]


def handout_of(sheet: PatternSheet, code: str) -> list[str]:
    pdf = make_handout(sheet, "a4", code).value
    assert pdf is not None
    # What it says is what its page says; its own words are those at the foot of each page.
    return [line for page in read_pdf(pdf).pages[:2] for line in page.extract_text().splitlines()]


@pytest.mark.parametrize(("code", "strange"), [("en", BRITISH), ("en-GB", AMERICAN)])
def test_no_word_is_spelled_as_on_the_other_side_of_the_sea(
    said: dict[str, list[tuple[str, str]]], code: str, strange: tuple[str, ...]
) -> None:
    """Reasons apart, which are the same in both and are marked as English."""
    found = [(where, run) for where, run in said[code] if re.search(rf"\b(?:{'|'.join(strange)})", run, re.IGNORECASE)]
    assert found == []


def test_the_check_would_see_them(said: dict[str, list[tuple[str, str]]]) -> None:
    """Each spelling is found on the pages of its own side, or nowhere at all."""
    for code, own in (("en", AMERICAN), ("en-GB", BRITISH)):
        seen = [word for word in own if any(re.search(rf"\b{word}", run, re.IGNORECASE) for _, run in said[code])]
        assert len(seen) >= 9, seen


def english_phrases() -> Iterator[tuple[str, str, str]]:
    """Yield every phrase of the tables that is said otherwise in Dutch, word for word, without its places."""
    english, dutch = words_of("en").words, words_of("nl").words
    for table in ("page", "gallery", "tools", "fabrics", "width", "corrections", "paper", "headings", "skill"):
        for key, entry in english[table].items():
            pairs = zip(as_list(entry), as_list(dutch[table][key]), strict=True)
            for phrase, other in pairs:
                for part in re.split(r"\{\w+\}", phrase):
                    words = part.strip(" ,.:;·“”")
                    if re.search(r"[A-Za-z]{3}", words) and words.casefold() not in other.casefold():
                        yield table, key, words


def as_list(entry: Any) -> list[str]:
    return entry if isinstance(entry, list) else [entry]


def test_a_dutch_page_says_nothing_of_the_english_tables(said: dict[str, list[tuple[str, str]]]) -> None:
    runs = {run for _, run in said["nl"]}
    # Of both languages, each in a sense of its own.
    shared = {"open", "hand", "beginner", "plan", "print", "quilt"}
    for table, key, words in english_phrases():
        if words.casefold() not in shared:
            found = [run for run in runs if re.search(rf"(?<!\w){re.escape(words)}(?!\w)", run)]
            assert not found, (table, key, words, found[:2])


def test_a_dutch_page_has_hardly_a_word_of_the_english_one(said: dict[str, list[tuple[str, str]]]) -> None:
    """Whatever is written in the program and not in the tables stands out here."""
    english, dutch = (
        {word for _, run in said[code] for word in re.findall(r"[^\W\d_]{3,}", re.sub(r"\{\w+\}", "", run).casefold())}
        for code in ("en", "nl")
    )
    letters = {word for word in dutch if len(set(word)) == 1}
    known = {
        word
        for folder in folders_of("nl")[:1]
        for path in (*folder.rglob("*.md"), folder / "words.toml")
        for word in re.findall(r"[^\W\d_]{3,}", _shown(path.read_text("utf-8")).casefold())
    }
    # Names on packages, kinds of files, keys of the keyboard, a feed's own marks.
    left = (english & dutch) - known - letters - WORDS - {"crib", "alt", "urn", "uuid", "pdf", "svg", "json"}
    assert {word for word in left if not re.fullmatch(r"[a-f]+", word)} == set()


def _shown(text: str) -> str:
    """Return what of a file of wording can come to be read: no left sides, no programs but what they quote."""
    text = re.sub(r'(?m)^(?:"[^"]*"|\w+) = ', "", text)
    quoted = " ".join(re.findall(r'"([^"]*)"', " ".join(re.findall(r"\{[{%].*?[%}]\}", text, re.DOTALL))))
    return re.sub(r"\{[{%].*?[%}]\}", " ", text, flags=re.DOTALL) + " " + quoted


@pytest.mark.parametrize("code", languages())
def test_the_head_of_a_page_of_templates_has_room_for_its_words(code: str, tmp_path: Path) -> None:
    _, (source,) = nameless_site(tmp_path, "en")
    for sheet in check_pattern(source).sheets[:2]:
        for page in template_pages(sheet, Paper.A4, words_of(code)):
            head = [
                shape
                for shape in page.drawing.shapes
                if isinstance(shape, Label) and shape.at.y < MARGIN + HEAD_HEIGHT and not shape.is_upward
            ]
            texts = [label for label in head if label.size == 7]
            assert len(texts) >= 5
            assert max(ink_box(label)[3] for label in texts) <= MARGIN + HEAD_HEIGHT


class TestTables:
    """What is written in the tables is used, and what a language says has the places of what it stands for."""

    def test_every_key_is_used(self) -> None:
        code = "\n".join(
            path.read_text("utf-8") for path in (*PACKAGE.rglob("*.py"), *(TEMPLATES / "en").rglob("*.md"))
        )
        for table, entries in tables("en").items():
            for key in entries if table != "phrases" else ():
                is_named = f'"{key}"' in code or f"'{key}'" in code or f"say.{key}" in code
                assert is_named or re.fullmatch(CHOSEN_BY_VALUE.get(table, "$^"), key), (table, key)

    @pytest.mark.parametrize("code", [code for code in languages() if code != "en"])
    def test_a_language_says_what_the_base_says_in_the_same_form(self, code: str) -> None:
        english = tables("en")
        for table, entries in tables(code).items():
            for key, entry in entries.items():
                if table == "phrases":
                    assert places(key) == places(entry), key
                    continue
                base = english[table][key]
                is_as_long = len(as_list(entry)) == len(as_list(base)) or table == "numbers"
                assert isinstance(entry, type(base)) and is_as_long, (table, key)
                for own, other in zip(as_list(entry), as_list(base), strict=table != "numbers"):
                    assert set(places(own)) == set(places(other)), (table, key)

    @pytest.mark.parametrize("code", languages())
    def test_every_key_of_the_base_is_said_in_every_language(self, code: str) -> None:
        words = words_of(code).words
        for table, entries in tables("en").items():
            assert entries.keys() <= words[table].keys()
        # What has a template of its own has words of its own: a variant inherits, a language translates.
        if any((TEMPLATES / code).rglob("*.md")):
            own = tables(code)
            assert all(entries.keys() <= own[table].keys() for table, entries in tables("en").items())

    def test_every_sentence_about_changes_is_said_in_dutch(self) -> None:
        sentences = {sentence for name in ("account", "change_words") for sentence in sentences_of(name)}
        assert len(sentences) > 30
        assert sentences <= tables("nl")["phrases"].keys()

    def test_no_script_has_words_of_its_own(self) -> None:
        """What a script says it reads from the page; a selector and the name of a key are no words."""
        silent = {"use strict", "no picture", "Enter"}
        scripts = sorted((PACKAGE / "publish" / "reader").glob("*.js"))
        assert len(scripts) > 10
        for path in scripts:
            code = re.sub(r"/\*.*?\*/|(?m:(?:^|\s)//.*$)", "", path.read_text("utf-8"), flags=re.DOTALL)
            for found in re.findall(r""""([^"\n]*)"|'([^'\n]*)'|`([^`]*)`""", code):
                text = "".join(found)
                is_selector = re.search(r"(?:^|[ ,])[.#]|\[[\w-]+[\]=]", text)
                is_said = re.search(r"[A-Za-z]{2,} [A-Za-z]{2,}", text) or re.fullmatch(r"[A-Z][a-z]+[.…!]?", text)
                assert not is_said or is_selector or text in silent, (path.name, text)

    def test_the_usual_skill_levels_are_known(self) -> None:
        found = re.search(r"(?m)^skill level: (.*)$", starter("A pattern"))
        assert found and words_of("nl").skill(found[1]) == "beginner met wat ervaring"
        assert words_of("nl").skill("Confident  Beginner") == "beginner met wat ervaring"
        assert words_of("nl").skill("for old hands") == "for old hands"


def tables(code: str) -> dict[str, dict[str, Any]]:
    return tomllib.loads((TEMPLATES / code / "words.toml").read_text("utf-8"))


def places(phrase: Any) -> list[str]:
    return sorted(re.findall(r"\{\w*\}", str(phrase)))


def sentences_of(module: str) -> set[str]:
    """Return every sentence that a module of the review has said by somebody."""
    tree = ast.parse((PACKAGE / "review" / f"{module}.py").read_text("utf-8"))
    calls = [
        node
        for node in ast.walk(tree)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "said"
    ]
    assert calls
    return {
        part.value
        for call in calls
        for part in ast.walk(call.args[0])
        if isinstance(part, ast.Constant) and isinstance(part.value, str)
    }
