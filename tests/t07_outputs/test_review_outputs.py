"""What a review is written as: a comment that fits and is safe, marks for continuous integration, data, a page."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from functools import cache
from html.parser import HTMLParser

import pytest
from evenseam.publish.review_page import write_review_page
from evenseam.review import (
    PatternReview,
    Review,
    Version,
    check_since,
    review_all,
    review_as_json,
    review_pattern,
    write_annotations,
    write_markdown,
    write_one_line,
)
from markdown_it import MarkdownIt
from support.kings import king
from support.reviewed import GULLS, edited, review, version

COMMENT = 65_536
"""GitHub documentation, 2024: the most signs the body of a comment may have. From memory."""
HOSTILE = "<script>alert(1)</script> [x](javascript:alert(2)) @all #1 | ` $x$ ::error::a%0A"


@cache
def kings() -> tuple[Version, Version]:
    return version(king(0), "marsh"), version(king(1), "marsh")


@cache
def king_review() -> Review:
    return review_all("main", "working tree", {"marsh": kings()})


def three_kings() -> Review:
    """Return three such patterns in one review, so that there is more than any comment holds."""
    (one,) = king_review().patterns
    return Review("main", "working tree", (one, replace(one, slug="marsh-2"), replace(one, slug="marsh-3")))


@pytest.mark.parametrize("kings_in_it", [1, 3])
def test_a_king_quilt_with_everything_changed_fits_into_a_comment(kings_in_it: int) -> None:
    text = write_markdown(king_review() if kings_in_it == 1 else three_kings())
    assert ("Left out" in text) == (kings_in_it == 3)
    assert len(text) < 65_000 < COMMENT
    assert "97 1/2 × 97 1/2 in" in text and "128 1/2 × 128 1/2 in" in text
    assert text.count("<details>") == text.count("</details>")


@pytest.mark.parametrize("longest", [3_000, 8_000, 16_000, 24_000])
def test_what_is_left_out_is_counted(longest: int) -> None:
    whole, part = write_markdown(king_review(), 10_000_000), write_markdown(king_review(), longest)
    assert len(part) <= longest
    assert "Left out" not in whole and "Left out, to stay within the length of a comment" in part
    assert part.count("<details>") == part.count("</details>")
    every, kept = _rows(whole), _rows(part)
    counted = re.search(r"(\d+) rows?\.\*\*|(\d+) rows?", part.split("Left out")[1])
    if counted and kept:
        assert every - kept == int(counted[1] or counted[2])
    assert part.startswith("<!-- evenseam review -->\n### 1 pattern changes")


def _rows(text: str) -> int:
    return sum(line.startswith("| ") for line in text.splitlines()) - text.count("| what |")


def test_the_short_part_comes_before_every_table() -> None:
    text = write_markdown(review(GULLS, edited(("inner border: {width: 1,", "inner border: {width: 1 1/4,"))))
    assert text.index("The inner border is 1/4 in wider") < text.index("| what |")
    assert "Unchanged in every figure: mug rug." in text
    assert text.index("Unchanged") < text.index("<details>")


def test_one_cause_is_told_once_for_both_editions() -> None:
    both = ("units: inches", "units: inches\neditions: [inches, centimetres]")
    old, new = edited(both), edited(both, ("outer border: {width: 1}", "outer border: {width: 1 1/2}"))
    text = write_markdown(review(old, new))
    assert text.count("**The outer border is 1/2 in wider (1 in → 1 1/2 in, `pattern.yaml:34`)**") == 1
    assert "likewise in centimetres" in text and "mug rug in centimetres: " in text


def hostile_review() -> tuple[Review, dict[str, tuple[Version | None, Version | None]]]:
    quoted = json.dumps(HOSTILE)
    text = GULLS.replace("title: Two Gulls", f"title: {quoted}").replace(
        "name: Deep Sea", f"name: {json.dumps(HOSTILE[:58])}"
    )
    text = text.replace("introduction: Two gulls look out to sea.", f"introduction: {json.dumps(HOSTILE * 3)}")
    text = text.replace("name: Gull\n", f"name: {json.dumps(HOSTILE[:40])}\n").replace("{width: 2,", "{width: 3,")
    versions: dict[str, tuple[Version | None, Version | None]] = {"two-gulls": (version(GULLS), version(text))}
    assert versions["two-gulls"][1] is not None and versions["two-gulls"][1].pattern is not None
    return review_all("main `x`", "<b>head</b>", versions), versions


class Tags(HTMLParser):
    """Collects what elements and attributes a text really has."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: set[str] = set()
        self.attributes: set[str] = set()
        self.links: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.add(tag)
        self.attributes |= {name for name, _ in attrs}
        self.links += [value or "" for name, value in attrs if name in ("href", "src")]


def test_an_authors_words_are_no_markup_in_a_comment() -> None:
    found, _ = hostile_review()
    text = write_markdown(found)
    rendered = MarkdownIt("commonmark", {"html": True}).enable("table").render(text)
    tags = Tags(rendered)
    assert tags.tags <= {
        "h3", "p", "code", "strong", "ul", "li", "blockquote", "details", "summary", "table", "thead", "tbody", "tr",
        "th", "td", "span",
    }, tags.tags  # fmt: skip
    assert not tags.links
    assert "alert(1)" in rendered  # it is shown, as words
    # Nothing that would call a person or link a number: a mark stands between the sign and the word.
    assert "@all" not in text and "#1" not in text.replace("&#1", "")


def test_an_authors_words_are_no_markup_on_the_page() -> None:
    page = write_review_page(*hostile_review())
    tags = Tags(page)
    assert not tags.tags & {"script", "img", "a", "iframe", "b", "link"}
    assert not tags.links and not {name for name in tags.attributes if name.startswith("on")}
    assert "&lt;script&gt;" in page and "&lt;b&gt;head&lt;/b&gt;" in page


def test_annotations_are_escaped_and_capped() -> None:
    found, _ = hostile_review()
    lines = write_annotations(found).splitlines()
    form = re.compile(
        r"::(error|warning|notice) ((?:file|line|endLine|col|title)=[^,:\r\n]*)(,(?:file|line|endLine|col|title)=[^,:\r\n]*)*::.*"
    )
    for line in lines:
        assert form.fullmatch(line), line
    assert all(line.count("::error") + line.count("::warning") + line.count("::notice") >= 1 for line in lines)
    # A line begins a command only by itself: an author's "::error::" stands behind the second pair of colons, and a
    # "%0A" of an author is no new line.
    assert not any("%0Aerror" in line or line.startswith("::error::") for line in lines)
    assert "%250A" in "\n".join(lines)
    marks = write_annotations(king_review()).splitlines()
    assert sum(mark.startswith("::notice") for mark in marks) == 10
    assert re.search(r"::\d+ more are in the review itself$", marks[-1])


def test_data_is_plain_and_the_same_twice() -> None:
    new = edited(("outer border: {width: 1}", "outer border: {width: 1 1/2}"))
    one, two = (json.dumps(review_as_json(review(GULLS, new))) for _ in range(2))
    assert one == two
    (cut,) = [
        change for change in json.loads(one)["patterns"][0]["changes"]
        if change["kind"] == "cut" and change["id"] == "outer-border-sides"
    ]  # fmt: skip
    assert cut["change"] == "remeasured" and cut["size"] == "mug-rug" and cut["unit"] == "in"
    assert [figure["value"] for figure in cut["old"]] == ["1 1/2", "8 1/2", "2"]
    assert [figure["value"] for figure in cut["new"]] == ["2", "9 1/2", "2"]
    assert cut["because"][0]["words"] == "the outer border is 1/2 in wider"
    assert cut["because"][0]["place"] == {"file": "patterns/two-gulls/pattern.yaml", "line": 33, "column": 29}


def test_every_output_says_loudly_what_could_not_be_computed() -> None:
    broken = version(GULLS.replace("{width: 2,", "{width: two,"))
    found = review_all("main", "head", {"two-gulls": (version(GULLS), broken)})
    assert not found.is_same
    assert "cannot be computed" in write_markdown(found)
    assert "CANNOT BE COMPUTED" in write_one_line(found)
    assert write_annotations(found).startswith("::error ")
    assert review_as_json(found)["patterns"][0]["cannot_be_computed"]
    assert "cannot be computed" in write_review_page(found, {"two-gulls": (version(GULLS), broken)})
    before = review_all("main", "head", {"two-gulls": (broken, version(GULLS))})
    assert not before.is_same and "could not be computed before" in write_one_line(before)


def codes(found: PatternReview) -> list[str]:
    return [problem.code.name for problem in found.problems]


WIDER = ("outer border: {width: 1}", "outer border: {width: 1 1/2}")
NOTED = ("changes:\n", 'changes:\n  - {version: "1.1", date: 2026-04-02, what: A wider border.}\n')


@pytest.mark.parametrize(
    ("edits", "expected"),
    [
        ((), []),
        ((WIDER,), ["figures-changed-same-version"]),
        ((WIDER, ('version: "1.0"\ndesigner', 'version: "1.1"\ndesigner'), NOTED), []),
        ((WIDER, ('version: "1.0"\ndesigner', 'version: "0.9"\ndesigner'), ('- {version: "1.0"', '- {version: "0.9"')),
         ["old-note-altered", "version-goes-back"]),
        ((("what: First published.", "what: First printed."),), []),
        ((WIDER, ('version: "1.0"\ndesigner', 'version: "1.1"\ndesigner'), NOTED, ("First published.", "Not published.")),
         ["old-note-altered"]),
        # Words, colours and names may be mended without a new version: who has the older print sews the same.
        ((("Two gulls look out to sea.", "Two gulls look inland."),), []),
        ((("#dfe3e0", "#cfd3e0"), ("name: Fog, colour", "name: Sea Fog, colour")), []),
    ],
)  # fmt: skip
def test_what_was_published_is_changed_only_under_a_new_version(
    edits: tuple[tuple[str, str], ...], expected: list[str]
) -> None:
    old, new = version(GULLS), version(edited(*edits))
    assert sorted(codes(review_pattern(old, new))) == expected
    assert sorted(problem.code.name for problem in check_since(old, new)) == expected


def test_a_new_version_without_any_note_is_told() -> None:
    bare = GULLS.replace('changes:\n  - {version: "1.0", date: 2026-03-02, what: First published.}\n', "")
    new = bare.replace('version: "1.0"', 'version: "1.1"').replace(*WIDER)
    assert codes(review_pattern(version(bare), version(new))) == ["change-not-told"]


def test_what_was_published_and_cannot_be_computed_is_told() -> None:
    broken = version(GULLS.replace("{width: 2,", "{width: two,"))
    assert [problem.code.name for problem in check_since(broken, version(GULLS))] == ["published-not-computed"]
    assert check_since(None, version(GULLS)) == ()


def test_renaming_everything_at_once_is_no_change_of_figures() -> None:
    """A size, a fabric, a block and a border under other names are the same size, fabric, block and border."""
    new = (
        GULLS.replace("  gull:\n    name: Gull\n", "  herring-gull:\n    name: Herring Gull\n")
        .replace("block: gull", "block: herring-gull")
        .replace("outer border", "sea border")
        .replace("outer-border", "sea-border")
        .replace("fog", "mist")
        .replace("Fog", "Mist")
        .replace("  mug rug:", "  cup mat:")
    )
    found = review(GULLS, new)
    text = write_markdown(found)
    assert "only words, names and colours change, no figure" in text
    assert "The Mug rug is now called Cup mat, every cut as it was" in text
    assert "is gone" not in text and not found.patterns[0].problems


def test_many_consequences_stand_one_below_the_other() -> None:
    text = write_markdown(review(GULLS, edited(("inner border: {width: 1,", "inner border: {width: 1 1/4,"))))
    assert "\n  - wall hanging:\n    - finishes 18 1/2 × 12 1/2 in instead of 18 × 12 in\n    - " in text
