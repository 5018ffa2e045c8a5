"""Whatever an author writes, the page has no markup but the publisher's, and the handout is set or a problem says why not."""

from __future__ import annotations

import re

import pytest
from evenseam.publish.handout import HandoutFrame, write_handout
from evenseam.publish.html_text import escape, plain
from evenseam.wording.document import Document
from hypothesis import example, given, settings
from hypothesis import strategies as st
from support.harmless import check_markup, check_prose_text, check_reading

PIECES = st.sampled_from((
    "<script>", "</p>", "<!--", "]]>", "&lt;", "&#60;", "{{", "}}", "{%", "{{ finished_width }}", "[a](", "![", "](javascript:x)", "](https://e.example/a)", "<https://e.example>",
    "**", "__", "`", "```\n", "> ", "* ", "1. ", "| a | b |\n| - | - |\n| c | d |\n", "\n", "\n\n", "    ", "\\", "#", "#panic(1)", "$", "@a", "//", "/*", "~", "\t", "\u202e", "\u200b", "\x00",
    "\ue000", "\ue001", "\ue002", "word", "\u00e9", "\u65e5", "\U0001f600", "&nbsp;", "---\n", "[b]: x\n", "<b onclick=x>", "\"'",
))  # fmt: skip
PROSE = st.lists(PIECES | st.text(max_size=6), max_size=30).map("".join)


@settings(max_examples=300)
@given(PROSE)
@example("[a](data:text/html,x) [b](&#106;avascript:x) [c](JAVASCRIPT:x)")
@example("<a\nhref=x>")
@example("| <b> |\n| - |\n| {{ x }} |")
def test_no_markup_of_the_author_survives(text: str) -> None:
    check_prose_text(text)


@settings(max_examples=60)
@given(PROSE)
@example('#panic("x") #read("/etc/passwd") \\ $x$ @label <label> // /* */ ]}) "')
def test_the_handout_is_set_or_a_problem_says_why(text: str) -> None:
    outcome = write_handout(
        Document(plain(text)[:80], "", check_prose_text(text)),
        HandoutFrame(text[:40], text[:40], "a4"),
        lambda picture: "",
    )
    if outcome.value is None:
        (problem,) = outcome.problems
        assert problem.code.name == "handout-not-set" and problem.message and problem.hint
    else:
        assert outcome.value.startswith(b"%PDF") and not outcome.problems


@settings(max_examples=150)
@given(st.text())
def test_escaped_words_are_words(text: str) -> None:
    assert not set("<>\"'{}\n\r") & set(escape(text))
    check_markup(f"<p>{escape(text)}</p>")


@settings(max_examples=100)
@given(st.lists(st.sampled_from((" ", "\n", "\u2028", "\r\n", "a", "\t", "\x85", "\x0b")), max_size=12).map("".join))
def test_a_line_end_with_the_blanks_round_it_is_one_blank(text: str) -> None:
    # The same said by one expression, which takes too long on long texts.
    slow = re.sub(r"\s*[\r\n\v\f\x1c-\x1e\x85\u2028\u2029]\s*", " ", text)
    assert plain(text) == plain(slow) == slow


@pytest.mark.parametrize("sign", [" ", "\n", "\t", "<", "&", "{", "\u202e", "\u2028"])
def test_long_runs_take_no_time(sign: str) -> None:
    """Half a million of one sign: a fraction of a second, not minutes."""
    escape("a" + sign * 500_000 + "b")


@settings(max_examples=100)
@given(PROSE)
def test_a_file_of_such_words_has_problems_in_their_places(text: str) -> None:
    check_reading(text)


@pytest.mark.parametrize(
    "html",
    [
        "<script>x</script>",
        "<p onclick='x'>",
        "<!-- a -->",
        "<p>{{ x }}</p>",
        "<a href='javascript:x'>a</a>",
        "<p>a",
        "<p>a > b</p>",
        "<br/>",
    ],
)
def test_the_check_sees_markup(html: str) -> None:
    with pytest.raises(AssertionError):
        check_markup(html)
