"""What must hold of anything made from a stranger's words: problems with places, and no markup but our own."""

from __future__ import annotations

import re
from html.parser import HTMLParser

from evenseam.exact import Unit
from evenseam.pattern import Pattern, Prose
from evenseam.problems import Outcome, Place, Report, SourceText, show_problems
from evenseam.publish.html import write_html
from evenseam.publish.problem_page import write_problems
from evenseam.reading import read_pattern
from evenseam.wording.author_prose import prose_blocks
from evenseam.wording.document import Block, Document

FILE = "pattern.yaml"
OUR_ATTRIBUTES = {
    "p": {"class"}, "ul": set(), "ol": set(), "li": set(), "strong": {"class"}, "em": set(), "code": set(), "br": set(), "a": {"href"},
    "span": {"class", "data-figure"}, "div": {"class", "role", "aria-labelledby", "tabindex", "data-search-exclude", "lang"}, "table": {"class"},
    "caption": {"id"}, "thead": set(), "tbody": set(), "tr": set(), "th": {"scope"}, "td": set(), "h1": set(), "pre": {"tabindex"},
}  # fmt: skip
"""Everything that a text without pictures can become."""
_ADDRESS = re.compile(r"(?:https?://|mailto:)\S+|#|[A-Za-z0-9_.~/#%-]+")
_EMPTY = {"br"}


class OurMarkup(HTMLParser):
    """Fails on an element, attribute or address that the publisher does not write by itself."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.open: list[str] = []
        self.elements: list[tuple[str, tuple[tuple[str, str | None], ...]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag in OUR_ATTRIBUTES, f"<{tag}> came through"
        assert {name for name, _ in attrs} <= OUR_ATTRIBUTES[tag], f"{attrs} came through in <{tag}>"
        for name, value in attrs:
            if name == "href":
                assert _ADDRESS.fullmatch(value or ""), f"a link leads to {value!r}"
            elif name in ("class", "id", "role", "scope", "tabindex", "data-figure", "lang"):
                assert re.fullmatch(r"[\w -]+", value or ""), f"{name}={value!r} came through"
        self.elements.append((tag, tuple(attrs)))
        if tag not in _EMPTY:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        raise AssertionError(f"<{tag}/> came through")

    def handle_endtag(self, tag: str) -> None:
        assert self.open and self.open.pop() == tag, f"</{tag}> came through"

    def handle_comment(self, data: str) -> None:
        raise AssertionError("a comment came through")

    def handle_decl(self, decl: str) -> None:
        raise AssertionError("a declaration came through")

    def unknown_decl(self, data: str) -> None:
        raise AssertionError("a declaration came through")

    def handle_pi(self, data: str) -> None:
        raise AssertionError("a processing instruction came through")

    def handle_data(self, data: str) -> None:
        assert "<" not in data and ">" not in data, f"a bare sign came through: {data!r}"
        assert "{{" not in data and "{%" not in data, f"a template mark came through: {data!r}"


def check_markup(html: str) -> OurMarkup:
    """Read a page's body; fail unless every element and attribute in it is the publisher's own."""
    reader = OurMarkup()
    reader.feed(html)
    reader.close()
    assert reader.open == [], reader.open
    return reader


def check_reading(text: str) -> Outcome[Pattern]:
    """Read a text as a pattern file; every problem must be shown, stand inside it, and make a harmless page."""
    source = SourceText(FILE, text)
    outcome = read_pattern("sample", source)
    assert (outcome.value is None) == bool(outcome.errors)
    check_problems(outcome, source)
    return outcome


def check_problems(outcome: Outcome[Pattern], source: SourceText) -> None:
    """Check that each problem has a place inside the text, words, a way out, and can be shown."""
    lines = re.split("\r\n|\r|\n", source.text)
    for problem in outcome.problems:
        place = problem.place
        assert place is not None, problem
        assert 1 <= place.line <= len(lines) and 1 <= place.column <= len(lines[place.line - 1]) + 1, problem
        assert (place.line, place.column) <= (place.end_line, place.end_column), problem
        assert problem.message and problem.hint and "\n" not in problem.message, problem
    sources = {source.name: source}
    show_problems(outcome.problems, sources)
    check_markup(write_problems("A title", outcome.problems[:30], sources))


def prose_of(text: str) -> tuple[tuple[Block, ...], Report]:
    """Return an author's text as blocks, and what was reported about it."""
    report = Report()
    return prose_blocks(Prose(text, Place(FILE, 1, 1, 1, 2)), {}, Unit.INCH, report), report


def check_prose_text(text: str) -> tuple[Block, ...]:
    """Set an author's text as HTML; fail when anything in it acts as markup. Return its blocks."""
    blocks, report = prose_of(text)
    for problem in report.problems:
        assert problem.place is not None and problem.message and problem.hint, problem
    check_markup(write_html(Document("A title", "", blocks), _no_picture).body)
    return blocks


def _no_picture(picture: object) -> str:
    raise AssertionError("an author's text has no pictures")
