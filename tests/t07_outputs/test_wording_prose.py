"""The author's own words: figures by name, everything else refused at its place, and nothing ever run."""

from __future__ import annotations

import time
from dataclasses import replace

import pytest
from evenseam.pattern import Pattern, Project, Prose
from evenseam.problems import Place, Problem
from evenseam.sheet import PatternSheet, compute_sheet
from evenseam.wording import CODES, check_prose, write_document
from evenseam.wording.author_prose import LONGEST_PROSE
from evenseam.wording.document import (
    Document,
    Emphasis,
    Link,
    ListBlock,
    Measured,
    Paragraph,
    Picture,
    StepBlock,
    Strong,
    Text,
)
from hypothesis import given, settings
from hypothesis import strategies as st
from support.document_words import every_block, every_run, figures_of, words_of
from support.pattern_texts import SMALL, pattern_from
from support.samples import FOG, LAMP, MUG_RUG, PATTERN, REED, SEA, WALL_HANGING

PLACE = Place("patterns/sample/pattern.yaml", 40, 7, 60, 1)
_COMPUTED = compute_sheet(replace(PATTERN, projects=(MUG_RUG,)), MUG_RUG)
assert _COMPUTED.value is not None
SHEET: PatternSheet = _COMPUTED.value


def with_project(project: Project, pattern: Pattern = PATTERN) -> PatternSheet:
    """Return the sample sheet with other words in it; words change no figure."""
    return replace(SHEET, pattern=pattern, sized=replace(SHEET.sized, project=project))


def introduced(text: str) -> PatternSheet:
    return with_project(replace(MUG_RUG, introduction=Prose(text, PLACE)))


def document_of(sheet: PatternSheet) -> Document:
    outcome = write_document(sheet)
    assert outcome.value is not None
    return outcome.value


def problems(text: str) -> tuple[Problem, ...]:
    found = check_prose(introduced(text))
    assert write_document(introduced(text)).problems == found
    return found


def codes(text: str) -> list[str]:
    return [problem.code.name for problem in problems(text)]


def introduction(text: str) -> tuple[object, ...]:
    """Return the blocks between the summary and the first heading."""
    blocks = document_of(introduced(text)).blocks
    first = next(place for place, block in enumerate(blocks) if hasattr(block, "level"))
    return blocks[2:first]


class TestFigures:
    """A figure is named between two braces, and printed as the sheet has it."""

    def test_figure_is_put_in_and_can_be_asked_why(self) -> None:
        assert introduction("It is {{ finished_width }} wide.") == (
            Paragraph((Text("It is "), Measured("8 in", "finished_width"), Text(" wide."))),
        )

    def test_spaces_inside_the_braces_do_not_matter(self) -> None:
        assert problems("{{finished_width}} {{  finished_height  }} {{\nfinished_width\n}}") == ()

    def test_figure_inside_emphasis_list_and_table(self) -> None:
        text = "**{{ finished_width }}**\n\n- {{ finished_height }}\n\n| a | b |\n|---|---|\n| {{ opening_length }} | c |\n"
        assert problems(text) == ()
        found = [m.figure for _, run in every_run(document_of(introduced(text))) for m in figures_of(run)]
        assert {"finished_width", "finished_height", "opening_length"} <= set(found)

    def test_unknown_figure_is_reported_where_it_stands_with_the_nearest_names(self) -> None:
        (problem,) = problems("First line.\n\nIt is {{ finnished_width }} wide.")
        assert problem.code.name == "unknown-figure"
        assert problem.place == Place(PLACE.file, 42, 13, 42, 34)
        assert "finished_width" in problem.hint

    def test_a_bare_width_is_most_often_that_of_the_finished_piece(self) -> None:
        (problem,) = problems("It is {{ width }} wide.")
        assert problem.hint.startswith("did you mean finished_width")

    def test_every_mistake_is_reported_at_once(self) -> None:
        found = problems("{{ nothing_here }}\n2 in\n{{ 1 + 1 }}\n")
        assert [(problem.place.line, problem.code.name) for problem in found if problem.place] == [
            (40, "unknown-figure"), (41, "typed-measurement"), (42, "not-a-figure-name"),
        ]  # fmt: skip


class TestTypedMeasurements:
    """A measurement typed by hand is an error, and the figures of that value are offered."""

    def test_it_is_reported_where_it_stands_and_the_figure_is_offered(self) -> None:
        (problem,) = problems("Some words.\nThe piece is 11 in high.")
        assert problem.code.name == "typed-measurement"
        assert problem.place == Place(PLACE.file, 41, 20, 41, 25)
        assert "{{ finished_height }}" in problem.hint

    @pytest.mark.parametrize(
        "text", ["**2** in", "2 *in*", "`2` in", "2 1/2\nin strips", "2\\ in", "[2 in](https://example.org)", "- 2 in"]
    )
    def test_markdown_does_not_hide_it(self, text: str) -> None:
        assert "typed-measurement" in codes(text)

    @pytest.mark.parametrize("text", ["2&nbsp;in", "2&#32;in", "&#50; in", "2&#x2033;"])
    def test_entities_do_not_hide_it(self, text: str) -> None:
        assert "typed-measurement" in codes(text)

    def test_figure_and_number_do_not_run_together(self) -> None:
        assert problems("Cut 2 {{ finished_width }} strips in 3 steps.") == ()

    def test_summary_is_checked_too(self) -> None:
        found = check_prose(with_project(MUG_RUG, replace(PATTERN, summary="A rug of 8 x 11 in.")))
        assert [problem.code.name for problem in found] == ["typed-measurement"]


class TestAdditions:
    """Words for a step stand in that step, before its checkpoint."""

    def test_they_stand_in_their_step(self) -> None:
        project = replace(MUG_RUG, additions=(("turn", Prose("Use a chopstick, *gently*.", PLACE)),))
        document = document_of(with_project(project))
        step = next(block for block in document.blocks if isinstance(block, StepBlock) and block.id == "turn")
        assert Paragraph((Text("Use a chopstick, "), Emphasis((Text("gently"),)), Text("."))) == step.blocks[-2]

    def test_unknown_step_is_reported_with_the_nearest(self) -> None:
        project = replace(MUG_RUG, additions=(("turn-out", Prose("Words.", PLACE)),))
        (problem,) = check_prose(with_project(project))
        assert (problem.code.name, problem.place) == ("unknown-step", PLACE)
        assert "turn" in problem.hint

    def test_words_for_a_step_that_only_another_size_has_are_left_out_quietly(self) -> None:
        project = replace(MUG_RUG, additions=(("attach-sleeve", Prose("Words.", PLACE)),))
        pattern = replace(PATTERN, projects=(project, WALL_HANGING))
        assert check_prose(with_project(project, pattern)) == ()
        (problem,) = check_prose(with_project(project, replace(PATTERN, projects=(project,))))
        assert problem.code.name == "unknown-step"


class TestMarkdown:
    """Plain Markdown is kept; what has no place in a pattern is reported and left out."""

    def test_strong_links_and_lists(self) -> None:
        text = "**Strong** [site](https://example.org/a?b=c) [page](../other/)\n\n1. one\n2. two\n"
        paragraph, listing = introduction(text)
        assert isinstance(paragraph, Paragraph) and isinstance(listing, ListBlock)
        assert paragraph.inlines[0] == Strong((Text("Strong"),))
        assert [inline.address for inline in paragraph.inlines if isinstance(inline, Link)] == [
            "https://example.org/a?b=c",
            "../other/",
        ]
        assert listing.is_numbered and len(listing.items) == 2

    def test_heading_becomes_a_strong_line(self) -> None:
        assert introduction("# Loud\n\nWords.") == (Paragraph((Strong((Text("Loud"),)),)), Paragraph((Text("Words."),)))

    @pytest.mark.parametrize(
        ("text", "code"),
        [
            ("![x](https://example.org/x.png)", "not-in-text"),
            ("```\ncode\n```", "not-in-text"),
            ("one\n\n---\n\ntwo", "not-in-text"),
            ("[x](javascript:alert(1))", "link-address"),
            ("[x](JAVASCRIPT:alert(1))", "link-address"),
            ("[x](java&#115;cript:alert(1))", "link-address"),
            ("[x](data:text/html,x)", "link-address"),
            ("[x](file:///etc/passwd)", "link-address"),
            ("[x](vbscript:x)", "link-address"),
            ("[x](//example.org)", "link-address"),
            ("<javascript:alert(1)>", "link-address"),
            ("[x]: javascript:alert(1)\n\n[x]", "link-address"),
            ("<script>alert(1)</script>", "html-in-text"),
            ("<b onclick=x>bold</b>", "html-in-text"),
            ("<!-- hidden -->", "html-in-text"),
            ("a\x00b", "control-character"),
            ("a\ue0002 in\ue001finished_width\ue002", "control-character"),
            ("a\u202eb", "control-character"),
        ],
    )
    def test_refused(self, text: str, code: str) -> None:
        assert code in codes(text)
        check_harmless(document_of(introduced(text)))


HOSTILE = [
    "{{ ''.__class__.__mro__[1].__subclasses__() }}",
    "{{ finished_width.__class__ }}",
    "{{ finished_width|attr('because') }}",
    "{{ self }}", "{{ self._TemplateReference__context }}", "{{ cycler.__init__.__globals__ }}",
    "{{ config }}", "{{ lipsum.__globals__['os'].popen('id').read() }}", "{{ namespace() }}", "{{ range(10**9)|list }}",
    "{{ 'x' * 10**9 }}", "{{ 2 ** 99999999 }}", "{{ finished_width + seam_allowance }}", "{{ finished_width * 2 }}",
    "{{ -finished_width }}", "{{ (finished_width) }}", "{{ finished_width, finished_height }}", "{{ finished_width if 1 else 2 }}",
    "{{ finished_width ~ 'x' }}", "{{ [finished_width] }}", "{{ {} }}", "{{ 1 }}", "{{ 'text' }}", "{{ }}", "{{}}", "{{ true }}",
    "{% for x in range(10**9) %}x{% endfor %}", "{% set a = 1 %}", "{% include '/etc/passwd' %}", "{% import 'os' as os %}",
    "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "{% raw %}{{ 2 in }}{% endraw %}", "{% autoescape false %}x{% endautoescape %}",
    "{# a comment #}", "{# {{ finished_width }} #}", "{# unfinished", "{% unfinished", "{{ unfinished", "unopened }}", "{{{{ a }}}}",
    "{{ finished_width }", "{ { finished_width } }}", "{{ '}}' }}", "{{ \"\n\n}}", "{{ finished_width }}{{", "{{- finished_width -}}",
    "{{ finished_width\x00 }}", "{{ ｆinished_width }}", "{{ finished\u200b_width }}",
]  # fmt: skip


@pytest.mark.parametrize("text", HOSTILE)
def test_nothing_but_a_name_goes_between_braces(text: str) -> None:
    """Programs, arithmetic, attributes, calls and half-finished braces are problems, never run and never printed."""
    assert problems(text)
    document = document_of(introduced(text))
    check_harmless(document)
    words = " ".join(words_of(run) for _, run in every_run(document))
    assert "class" not in words and "root:" not in words


@pytest.mark.parametrize(
    "text",
    [
        "{{ finished_width }}" * 10_000, "x" * 1_000_000, "[" * LONGEST_PROSE, "*" * LONGEST_PROSE, "_a" * (LONGEST_PROSE // 2),
        "> " * (LONGEST_PROSE // 2), "- " * (LONGEST_PROSE // 2), "`" * LONGEST_PROSE, "{{" * (LONGEST_PROSE // 2),
        "{%" * (LONGEST_PROSE // 2), "<" * LONGEST_PROSE, "![" * (LONGEST_PROSE // 2), "|" * LONGEST_PROSE, "1/" * (LONGEST_PROSE // 2),
        "1 " * (LONGEST_PROSE // 2), "one " * (LONGEST_PROSE // 4), '"' * LONGEST_PROSE, "[a](" * (LONGEST_PROSE // 4),
        "&#x" * (LONGEST_PROSE // 3), "a half " * (LONGEST_PROSE // 7), "1 stitch mm " * (LONGEST_PROSE // 12), "\n" * LONGEST_PROSE,
        "|a|b|\n|-|-|\n" + "|x" * 2000, "1" * LONGEST_PROSE, "1." * (LONGEST_PROSE // 2), "½" * LONGEST_PROSE, " x 1" * (LONGEST_PROSE // 4),
        "<a " * (LONGEST_PROSE // 3), "\\" * LONGEST_PROSE,
    ],
    ids=lambda text: f"{text[:12]!r} × {len(text)}",
)  # fmt: skip
def test_long_texts_end_soon(text: str) -> None:
    """Whatever is written, reading it ends within moments, and what it becomes is not much longer."""
    begun = time.process_time()
    outcome = write_document(introduced(text))
    assert time.process_time() - begun < 8
    assert outcome.value is not None
    check_harmless(outcome.value)
    assert sum(len(words_of(run)) for _, run in every_run(outcome.value)) < 60_000 + 10 * LONGEST_PROSE


def check_harmless(document: Document) -> None:
    """Check that a document holds only what it may: allowed links, our own pictures, no marks of ours left over."""
    steps = {f"step-{step.id}" for step in SHEET.program.steps}
    known = {
        "finished",
        "folded-cloth",
        "block-lantern",
        "pieces-lantern",
        *steps,
        *(f"cutting-{fabric.id}" for fabric in (SEA, FOG, LAMP, REED)),
    }
    for block in every_block(document.blocks):
        if isinstance(block, Picture):
            assert block.name in known
    for _, run in every_run(document):
        words = words_of(run)
        assert not any(
            "\ue000" <= sign <= "\uf8ff" or (not sign.isprintable() and sign not in "\n\t\u00a0\u200b")
            for sign in words
        ), words
        for link in links_of(run):
            assert (
                link.address.split(":")[0].lower() in ("http", "https", "mailto")
                or ":" not in link.address.split("/")[0]
            )
            assert not link.address.startswith("//")


def links_of(inlines: tuple[object, ...]) -> list[Link]:
    found: list[Link] = []
    for inline in inlines:
        if isinstance(inline, Link):
            found.append(inline)
        found += links_of(getattr(inline, "inlines", ()))
    return found


class TestPlaces:
    """In a pattern file, a problem is reported at the line and column of the word itself."""

    @pytest.mark.parametrize(
        ("written", "marked"),
        [
            ("introduction: |\n  One line.\n\n  Cut 2 1/2 in strips.\n", "2 1/2 in"),
            ("introduction: |-\n    Cut {{ no_such_figure }} strips.\n", "{{ no_such_figure }}"),
            ('introduction: "Cut 12 cm strips."\n', "12 cm"),
            ("introduction: Leave ten inches open.\n", "ten inches"),
            ("words:\n  layer: |\n    First.\n    Then {{ 2 * 2 }} more.\n", "{{ 2 * 2 }}"),
        ],
    )
    def test_marked_word(self, written: str, marked: str) -> None:
        text = SMALL.replace("sizes:", f"{written}sizes:")
        pattern = pattern_from(text)
        sheet = compute_sheet(pattern, pattern.projects[0]).value
        assert sheet is not None
        (problem,) = check_prose(sheet)
        assert problem.place is not None
        line = text.splitlines()[problem.place.line - 1]
        assert line[problem.place.column - 1 : problem.place.end_column - 1] == marked


ODD = "a*b_c`d`[e](f)<g>![h](i)|j|{{ k }}{% l %}&amp;\\#1. ~m~ \"n\" 'o' (p) + - ="


class TestNames:
    """Names an author gives are printed letter by letter, whatever signs are in them."""

    def test_odd_names_are_printed_as_they_stand(self) -> None:
        fabrics = tuple(replace(fabric, name=f"{ODD} {fabric.id}") for fabric in MUG_RUG.fabrics)
        borders = (replace(MUG_RUG.borders[0], name=ODD),)
        blocks = (replace(MUG_RUG.blocks[0], name=ODD),)
        project = replace(MUG_RUG, name=ODD, fabrics=fabrics, borders=borders, blocks=blocks, batting_name=ODD)
        pattern = replace(
            PATTERN,
            title=ODD,
            designer=ODD,
            licence=ODD,
            version=ODD,
            skill_level=ODD,
            summary=ODD,
            projects=(project,),
        )
        outcome = compute_sheet(pattern, project)
        assert outcome.value is not None
        document = document_of(outcome.value)
        check_harmless(document)
        words = "\n".join(words_of(run) for _, run in every_run(document))
        titles = "\n".join(block.title for block in document.blocks if isinstance(block, StepBlock))
        assert f"{ODD} sea" in words
        assert f"by {ODD}." in words
        assert f"strips of the {ODD}" in titles
        assert not any(links_of(run) for _, run in every_run(document))

    @settings(max_examples=30)
    @given(st.text(alphabet=st.characters(codec="utf-8", exclude_categories=("Cs",)), min_size=1, max_size=30))
    def test_any_title_is_printed_as_it_stands(self, title: str) -> None:
        document = document_of(with_project(MUG_RUG, replace(PATTERN, title=title)))
        check_harmless(document)


@settings(max_examples=120)
@given(st.text(alphabet='{}%# a_finshedwidth123/in"*[]()<>!`|\\\n-.&;:', max_size=120))
def test_any_prose_is_read_without_a_fall(text: str) -> None:
    """Whatever is written, there is a document, and at most problems."""
    outcome = write_document(introduced(text))
    assert outcome.value is not None
    check_harmless(outcome.value)


def test_codes_are_numbered_for_this_floor_and_each_has_a_case() -> None:
    assert len({code.number for code in CODES}) == len({code.name for code in CODES}) == len(CODES)
    assert all(600 <= code.number < 700 for code in CODES)
    texts = [
        "{{ nothing }}",
        "{{ 1 + 1 }}",
        "{{",
        "{% x %}",
        "2 in",
        "x" * (LONGEST_PROSE + 1),
        "<b>",
        "![a](b)",
        "[a](data:x)",
        "\x00",
    ]
    seen = {name for text in texts for name in codes(text)}
    seen |= {
        problem.code.name
        for problem in check_prose(with_project(replace(MUG_RUG, additions=(("no-such", Prose("", PLACE)),))))
    }
    assert seen == {code.name for code in CODES}
