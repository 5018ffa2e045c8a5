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
from support.hostile import CORPUS, HARMLESS, PUBLISHED, SECRET
from support.mkdocs_site import PLUGIN

TESTS = PLUGIN.parent / "tests"
LONGEST = 20
"""Seconds of one processor for any input; ordinary patterns take less than one."""
MOST_MEMORY = 600_000
"""Kilobytes in use."""
_ELEMENTS = {
    "div", "p", "h1", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "dl", "dt", "dd", "strong", "em", "code", "kbd", "pre", "br", "a", "span", "nav", "aside", "section", "details",
    "summary", "figure", "figcaption", "img", "table", "caption", "thead", "tbody", "tr", "th", "td", "input", "label", "button", "output", "fieldset", "legend", "select", "option",
    "svg", "g", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan", "title", "desc", "defs", "pattern", "clippath", "use", "marker", "symbol", "style", "mask",
}  # fmt: skip
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
def test_what_comes_of_it(hostile, folder: Path, results: dict[str, dict[str, Any]]) -> None:
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
        assert any(path.endswith("-inches.md") for path in result["pages"])
    out = folder / str(CORPUS.index(hostile)) / "out"
    pages = sorted(out.rglob("*.md"))
    assert len(pages) == len(result["pages"]) >= 2
    for page in pages:
        check_page(page.read_text("utf-8"))
    for path in out.rglob("*"):
        assert path.resolve().is_relative_to(out) and not path.is_symlink()
        assert not path.is_file() or SECRET.encode() not in path.read_bytes()


def check_page(text: str) -> None:
    """Fail when anything on an exported page acts, or leads somewhere the publisher does not lead."""
    _, front, body = text.split("---\n", 2)
    told = yaml.safe_load(front)
    assert set(told) <= {"title", "description", "search"} and not set('<>"{') & set(
        told["title"] + told["description"]
    )
    assert "{{" not in body and "{%" not in body and "\n\n" not in body.strip()
    reader = Harmless()
    reader.feed(body)
    reader.close()
    assert reader.open == []


class Harmless(HTMLParser):
    """Knows the elements and addresses that the publisher writes by itself."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag in _ELEMENTS, f"<{tag}>"
        for name, value in attrs:
            assert not name.startswith("on") and name not in ("srcdoc", "formaction", "action"), name
            assert re.fullmatch(r"[A-Za-z][\w:.-]*", name), name
            if name in ("href", "src", "xlink:href"):
                assert _OWN_ADDRESS.fullmatch(value or "") and not (value or "").startswith("//"), value
            if name in ("style", "fill", "stroke"):
                assert "e.example" not in (value or "") and "url(//" not in (value or ""), value
            if tag == "img":
                assert name in ("src", "alt", "width", "height", "loading"), name
        if tag not in ("br", "img", "input"):
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        if tag in ("br", "img", "input"):
            return
        assert self.open and self.open.pop() == tag, tag

    def handle_data(self, data: str) -> None:
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


@pytest.mark.parametrize("bad", [
    "<script>x</script>", '<p onclick="x">a</p>', "<!-- a -->", '<a href="javascript:x">a</a>', '<a href="//e.example">a</a>', '<img src="x" onerror="y">', "<iframe></iframe>",
    '<img src="x" srcset="y">', "<p>{{ x }}</p>", "<p>a\n\nb</p>", "<p>a</div>", '<rect fill="url(//e.example)"></rect>',
])  # fmt: skip
def test_the_check_itself_sees_what_acts(bad: str) -> None:
    with pytest.raises(AssertionError):
        check_page(f"---\ntitle: a\ndescription: b\n---\n<div>{bad}</div>")


def test_most_words_are_published_as_they_are(results: dict[str, dict[str, Any]]) -> None:
    """Signs of markup in a name are no mistake: such patterns are published, with the signs as signs."""
    marked = [result for name, result in results.items() if name.startswith(("markup in", "script in"))]
    published = [result for result in marked if not [1 for problem in result["problems"] if problem[1] == "error"]]
    assert len(published) == len(marked) >= 20


def test_nothing_of_the_corpus_ran(results: dict[str, dict[str, Any]]) -> None:
    assert len(results) == len(CORPUS) and not Path("/tmp/ran").exists()
