"""A document as HTML: every block in its element, escaped, and whole for any Markdown processor."""

from __future__ import annotations

from html.parser import HTMLParser

import markdown
import pytest
from evenseam.publish.contents import ContentsEntry
from evenseam.publish.html import plain_words, write_html
from evenseam.publish.html_text import address, colour, escape, plain, without_blank_lines
from evenseam.wording.document import (
    Document,
    Heading,
    Link,
    Measured,
    Paragraph,
    Picture,
    StepBlock,
    Swatches,
    Table,
    Text,
)
from hypothesis import given, settings
from hypothesis import strategies as st
from support.documents import paint, sample_document, words
from support.page_reader import PageReader, read_page

VOID = {"br", "hr", "img", "meta", "link", "input"}


class Nesting(HTMLParser):
    """Fails on a tag that is closed out of order, and collects tags and text."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.text = ""

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        assert self.open and self.open.pop() == tag, tag

    def handle_data(self, data):
        self.text += data


def parsed(html: str) -> Nesting:
    reader = Nesting()
    reader.feed(html)
    reader.close()
    assert reader.open == []
    return reader


class TestDocument:
    """Every kind of block becomes its own element, properly nested, with stable ids."""

    def test_every_block_is_there_once(self):
        body = write_html(sample_document(), paint).body
        found = [tag for tag, _ in parsed(body).tags]
        assert {tag: found.count(tag) for tag in ("h2", "h3", "table", "caption", "figure", "figcaption", "ol", "aside", "section")} == {
            "h2": 3, "h3": 2, "table": 1, "caption": 1, "figure": 2, "figcaption": 2, "ol": 1, "aside": 1, "section": 2,
        }  # fmt: skip

    def test_a_table_names_its_columns_and_rows(self):
        body = write_html(sample_document(), paint).body
        scopes = [attributes.get("scope") for tag, attributes in parsed(body).tags if tag == "th"]
        assert scopes == ["col", "col", "col", "row", "row"]
        assert '<div class="table-scroll" role="region" aria-labelledby="table" tabindex="0">' in body

    def test_figures_keep_their_names(self):
        reader = read_page(write_html(sample_document(), paint).body)
        assert reader.measured == ["1 1/4 yd", "2 1/2 in", "7 3/8 in", "20 in", "1/4 in", "12 1/2 in", "7 3/8 in"]
        assert reader.figure_names[0] == "buy_sea"

    def test_steps_have_stable_ids_and_stand_in_the_contents(self):
        text = write_html(sample_document(), paint)
        assert text.contents == (
            ContentsEntry(2, "materials", "Materials"),
            ContentsEntry(2, "cutting", "Cutting"),
            ContentsEntry(2, "sewing", "Sewing"),
            ContentsEntry(3, "step-outer-border-sides", "1. Sew the side borders"),
            ContentsEntry(3, "step-bind", "2. Bind"),
        )
        assert {"step-outer-border-sides", "step-bind", "materials"} <= text.ids

    def test_a_picture_does_not_repeat_the_title_of_its_step(self):
        step = StepBlock(
            "s",
            1,
            "Sew the row",
            (Picture("step-s", "Sew the row", "Three blocks."), Picture("block", "The block", "One block.")),
        )
        body = write_html(Document("T", "", (step, Picture("step-s", "Sew the row", "Three blocks."))), paint).body
        assert body.count("<figcaption>Sew the row</figcaption>") == 1
        assert body.count("<figcaption>The block</figcaption>") == 1

    def test_ids_are_never_given_twice(self):
        twice = Document(
            "T",
            "",
            (
                Heading(2, "a b", words("One")),
                Heading(2, "a b", words("Two")),
                StepBlock("x", 1, "S", ()),
                StepBlock("x", 2, "S", ()),
            ),
        )
        ids = [attributes["id"] for _, attributes in parsed(write_html(twice, paint).body).tags if "id" in attributes]
        assert ids == ["a-b", "a-b-2", "step-x", "step-x-2"]

    def test_heading_levels_do_not_leap(self):
        leaping = Document(
            "T", "", (Heading(2, "a", words("A")), Heading(5, "b", words("B")), Heading(1, "c", words("C")))
        )
        assert [tag for tag, _ in parsed(write_html(leaping, paint).body).tags if tag.startswith("h")] == [
            "h2",
            "h3",
            "h2",
        ]

    def test_a_table_without_row_headings_has_none(self):
        table = Table("C", (words("A"),), ((words("b"),),), has_row_headings=False)
        assert "<tbody>\n<tr><td>b</td></tr>\n</tbody>" in write_html(Document("T", "", (table,)), paint).body


class TestEscaping:
    """Whatever an author writes is shown as it is and is never markup."""

    @pytest.mark.parametrize("hostile", [
        "<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "</div></body>", "<!--", "]]>", "&lt;b&gt;",
        "{{ config }}{% raw %}", "a\n\n<b>b</b>", "a\r\n\r\n# x", "\u2028\u2028<i>", "\x00<b>\x1b", "\u202egnp.exe", "' onmouseover='x",
    ])  # fmt: skip
    def test_hostile_words_stay_words(self, hostile):
        document = Document(hostile, hostile, (
            Paragraph(words(hostile)), Heading(2, hostile, words(hostile)), StepBlock(hostile, 1, hostile, (Paragraph((Measured(hostile, hostile),)),)),
            Swatches(((hostile, hostile, hostile, hostile, words(hostile)),)), Table(hostile, (words(hostile),), ((words(hostile),),)),
            Picture(hostile, hostile, hostile), Paragraph((Link(hostile, words(hostile)),)),
        ))  # fmt: skip
        body = write_html(document, paint).body
        reader = parsed(body)
        allowed = {
            "div",
            "p",
            "h2",
            "h3",
            "section",
            "span",
            "ul",
            "li",
            "svg",
            "rect",
            "strong",
            "table",
            "caption",
            "thead",
            "tbody",
            "tr",
            "th",
            "td",
            "figure",
            "figcaption",
            "a",
            "label",
            "input",
        }
        assert {tag for tag, _ in reader.tags} <= allowed
        assert not [
            name for _, attributes in reader.tags for name in attributes if name.startswith("on") or name == "style"
        ]
        assert plain(hostile) in reader.text
        assert "{{" not in body and "{%" not in body
        assert "\n\n" not in body and not any(not line.strip() for line in body.splitlines())

    @given(st.text(max_size=60))
    @settings(max_examples=200)
    def test_any_text_comes_back_as_itself(self, text):
        assert parsed(f"<p>{escape(text)}</p>").text == plain(text)

    @pytest.mark.parametrize(("text", "expected"), [
        ("javascript:alert(1)", "#"), ("JaVaScRiPt:alert(1)", "#"), ("data:text/html,x", "#"), ("//example.org/x", "#"), ("https://example.org/a b", "#"),
        ("https://example.org/?a=1&b=2", "https://example.org/?a=1&amp;b=2"), ("mailto:a@example.org", "mailto:a@example.org"), ("../x/#y", "../x/#y"), ("", "#"),
        ("https://x\"onclick=", "#"), ("vbscript:x", "#"),
    ])  # fmt: skip
    def test_links_lead_to_the_web_to_mail_or_nearby(self, text, expected):
        assert address(text) == expected

    @pytest.mark.parametrize(
        ("text", "expected"),
        [
            ("#23465f", "#23465f"),
            ("red", "#888888"),
            ("#23465f;x", "#888888"),
            ("#12345", "#888888"),
            ("#12345\n6", "#888888"),
        ],
    )
    def test_colours_are_six_digits_or_grey(self, text, expected):
        assert colour(text) == expected


class TestThroughMarkdown:
    """Any Markdown processor hands the body on untouched."""

    @pytest.mark.parametrize("extensions", [[], ["md_in_html", "attr_list", "tables", "toc", "smarty", "nl2br"]])
    def test_python_markdown_changes_nothing(self, extensions):
        body = write_html(
            sample_document("a *b* `c` [d](e) \\ 1. # | x |", "*Stars* _and_ http://example.org/ <b>"), paint
        ).body
        assert markdown.markdown(body, extensions=extensions).strip() == body

    def test_commonmark_changes_nothing(self):
        from markdown_it import MarkdownIt

        body = write_html(sample_document("a *b* `c`", "*Stars* _and_"), paint).body
        assert MarkdownIt("commonmark").render(body).strip() == body

    def test_blank_lines_are_taken_out(self):
        assert without_blank_lines("\n<a>\n\n  \n\t\n<b>\n\n") == "<a>\n<b>"


def test_plain_words_of_mixed_inlines():
    assert plain_words((Text("a "), Measured("1 in", ""), Link("x", words(" b")))) == "a 1 in b"


def test_page_reader_reads_words_outside_pictures():
    reader = PageReader()
    reader.feed("<p>One <svg><title>hidden</title></svg>two</p>")
    assert reader.words.strip() == "One two"
