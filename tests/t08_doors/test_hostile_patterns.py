"""Whatever a stranger sends: no crash, no endless work, nothing read or asked for outside, and a clear problem or a harmless page."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
import yaml
from support.harmless import OUR_ATTRIBUTES
from support.hostile import CORPUS, HARMLESS, PUBLISHED, SECRET
from support.mkdocs_site import PLUGIN

TESTS = PLUGIN.parent / "tests"
LONGEST = 20
"""Seconds of one processor for any input; ordinary patterns take less than one."""
MOST_MEMORY = 600_000
"""Kilobytes in use."""
NEVER = {
    "iframe",
    "frame",
    "object",
    "embed",
    "link",
    "meta",
    "base",
    "foreignobject",
    "animate",
    "set",
    "image",
    "video",
    "audio",
}
"""Elements that no page's body has, whatever the pattern."""
_OWN_ADDRESS = re.compile(r"(?:site:|\.{0,2}/|#|[\w.%~-])[\w./%#~-]*|https?://\S+|mailto:\S+")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("hostile")


@pytest.fixture(scope="module")
def results(folder: Path) -> dict[str, dict[str, Any]]:
    """What came of each input; all of them are published in processes of their own."""
    path = os.pathsep.join((str(PLUGIN), str(TESTS)))
    done = subprocess.run(
        [sys.executable, "-m", "support.hostile_runner", str(folder)], env={**os.environ, "PYTHONPATH": path}, cwd=folder,
        stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False, timeout=900,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[-3000:]
    found = [json.loads(line) for line in done.stdout.splitlines()]
    return {result["name"]: result for result in found}


def test_the_corpus_is_large_and_every_name_is_its_own() -> None:
    assert len(CORPUS) >= 150 and len({hostile.name for hostile in CORPUS}) == len(CORPUS)


@pytest.mark.parametrize("hostile", CORPUS, ids=lambda hostile: hostile.name.replace(" ", "-"))
def test_what_comes_of_it(
    hostile, folder: Path, results: dict[str, dict[str, Any]], ours: frozenset[tuple[str, str]]
) -> None:
    result = results[hostile.name]
    assert "crash" not in result, result["crash"]
    assert result["opened"] == [], "something outside was opened"
    assert result["processor"] < LONGEST and result["memory"] < MOST_MEMORY
    codes = [code for code, *_ in result["problems"]]
    assert "pattern-not-made" not in codes, result["problems"]
    for code, _, place, message, hint in result["problems"]:
        assert re.fullmatch(r"patterns/.*:\d+:\d+", place, re.DOTALL) and message and hint, (code, place, message, hint)
        assert len(message) < 1000 and not re.search(r"[\n\r\x00-\x08\ud800-\udfff\u202e]", message + place), (
            place,
            message,
        )
    errors = [code for code, severity, *_ in result["problems"] if severity == "error"]
    if hostile.expected == PUBLISHED:
        assert errors == [], result["problems"]
    elif hostile.expected != HARMLESS:
        assert hostile.expected in errors, result["problems"]
    if not errors:
        assert any(path.count("/") == 2 and not path.endswith("/index.md") for path in result["pages"])
    pages = pages_of(folder, hostile.name)
    assert len(pages) == len(result["pages"]) >= 2
    for page in pages:
        check_page(page.read_text("utf-8"), ours)
    out = folder / str(CORPUS.index(hostile)) / "out"
    for path in out.rglob("*"):
        assert path.resolve().is_relative_to(out) and not path.is_symlink()
        assert not path.is_file() or SECRET.encode() not in path.read_bytes()


def pages_of(folder: Path, name: str) -> list[Path]:
    """Return the exported pages of an input."""
    number = next(number for number, hostile in enumerate(CORPUS) if hostile.name == name)
    return sorted((folder / str(number) / "out").rglob("*.md"))


@pytest.fixture(scope="module")
def ours(folder: Path, results: dict[str, dict[str, Any]]) -> frozenset[tuple[str, str]]:
    """Every element with every attribute that the publisher writes by itself, as plain patterns show it."""
    found = {(tag, name) for tag, names in OUR_ATTRIBUTES.items() for name in ("", *names)}
    for name in PLAIN_NAMES:
        assert not [problem for problem in results[name]["problems"] if problem[1] == "error"], results[name][
            "problems"
        ]
    for name in (*PLAIN_NAMES, "drawing: a gap"):
        for page in pages_of(folder, name):
            reader = Elements()
            reader.feed(page.read_text("utf-8").split("---\n", 2)[2])
            reader.close()
            found |= reader.found
    assert not {tag for tag, _ in found} & NEVER
    return frozenset(found)


def check_page(text: str, ours: frozenset[tuple[str, str]]) -> None:
    """Fail when anything on an exported page acts, or is no part of the publisher's own pages."""
    _, front, body = text.split("---\n", 2)
    told = yaml.safe_load(front)
    assert set(told) <= {"title", "description", "search"} and not set('<>"{') & set(
        told["title"] + told["description"]
    )
    assert "{{" not in body and "{%" not in body and "\n\n" not in body.strip()
    reader = Elements()
    reader.feed(body)
    reader.close()
    assert reader.open == [] and reader.found <= ours, reader.found - ours


class Elements(HTMLParser):
    """Collects elements with their attributes; fails on what acts or leads elsewhere."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.found: set[tuple[str, str]] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag not in NEVER, f"<{tag}>"
        # Data for the reader's tools stand in a template, which browsers neither run nor show.
        assert tag != "script" and (tag != "template" or dict(attrs) == {"class": "why-data"}), attrs
        self.found.add((tag, ""))
        for name, value in attrs:
            self.found.add((tag, name))
            assert not name.startswith("on") and name not in ("srcdoc", "formaction", "action"), name
            if name in ("href", "src", "xlink:href"):
                assert _OWN_ADDRESS.fullmatch(value or "") and not (value or "").startswith("//"), value
            assert name in _WORDS or name.startswith("data-") or "e.example" not in (value or ""), (name, value)
        if tag not in _EMPTY:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        assert tag in _EMPTY or (self.open and self.open.pop() == tag), tag

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] == "template":
            assert "<" not in data and "&" not in data and isinstance(json.loads(data), (dict, list))
        if self.open and self.open[-1] == "style":
            assert "e.example" not in data and "@import" not in data

    def handle_comment(self, data: str) -> None:
        raise AssertionError(f"a comment: {data}")

    def handle_decl(self, decl: str) -> None:
        raise AssertionError(decl)

    def unknown_decl(self, data: str) -> None:
        raise AssertionError(data)

    def handle_pi(self, data: str) -> None:
        raise AssertionError(data)


_EMPTY = ("br", "img", "input", "hr")
_WORDS = ("alt", "title", "aria-label", "value", "placeholder", "content")
"""Attributes that are read out or shown, and so may hold an author's words."""
PLAIN_NAMES = ("plain", "plain: a demo", "plain: the tutorial")


@pytest.mark.parametrize("bad", [
    "<script>x</script>", '<p onclick="x">a</p>', "<!-- a -->", '<a href="javascript:x">a</a>', '<a href="//e.example">a</a>', '<img src="x" onerror="y">', "<iframe></iframe>",
    '<img src="x" srcset="y">', "<p>{{ x }}</p>", "<p>a\n\nb</p>", "<p>a</div>", '<rect fill="url(//e.example)"></rect>',
])  # fmt: skip
def test_the_check_itself_sees_what_acts(bad: str, ours: frozenset[tuple[str, str]]) -> None:
    with pytest.raises(AssertionError):
        check_page(f"---\ntitle: a\ndescription: b\n---\n<div>{bad}</div>", ours)


def test_most_words_are_published_as_they_are(results: dict[str, dict[str, Any]]) -> None:
    """Signs of markup in a name are no mistake: such patterns are published, with the signs as signs."""
    marked = [result for name, result in results.items() if name.startswith(("markup in", "script in"))]
    published = [result for result in marked if not [1 for problem in result["problems"] if problem[1] == "error"]]
    assert len(published) == len(marked) >= 20


def test_nothing_of_the_corpus_ran(results: dict[str, dict[str, Any]]) -> None:
    assert len(results) == len(CORPUS) and not Path("/tmp/ran").exists()
