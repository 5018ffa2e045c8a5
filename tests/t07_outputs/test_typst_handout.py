"""A document as a handout: tagged, bookmarked, the same every time, and no code in it but ours."""

from __future__ import annotations

import json
import time
from dataclasses import dataclass, replace

import pytest
from evenseam.publish.handout import HandoutFrame, handout_data, program, set_handout, write_handout
from evenseam.publish.html import write_html
from evenseam.publish.html_text import plain
from evenseam.publish.options import PAPERS
from evenseam.wording.document import Document, Heading, Paragraph, StepBlock, Text
from support.documents import paint, sample_document, words
from support.page_reader import figures_in, read_page
from support.paper_reader import alternatives, body_text, bookmarks, read_pdf, structure

FRAME = HandoutFrame("Saltmarsh Workshop", "Version 1.0", "letter", page="page {number} of {count}")


@dataclass(frozen=True)
class Sheet:
    """A sheet of paper with one square inch on it."""

    width_points: float
    height_points: float
    description: str = "A template page with a test square."

    @property
    def svg(self) -> str:
        width, height = self.width_points, self.height_points
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}pt" height="{height}pt" viewBox="0 0 {width} {height}">'
            '<rect x="100" y="200" width="72" height="72" fill="none" stroke="#000000" stroke-width="0.5"/></svg>'
        )


def handout(document: Document, frame: HandoutFrame = FRAME, sheets=()) -> bytes:
    outcome = write_handout(document, frame, paint, sheets)
    assert outcome.problems == ()
    assert outcome.value is not None
    return outcome.value


class TestTags:
    """A handout can be listened to: title, language, headings, tables, pictures with words (ISO 14289-1)."""

    def test_it_says_that_it_is_accessible(self):
        root = read_pdf(handout(sample_document())).trailer["/Root"]
        assert root["/MarkInfo"]["/Marked"] is True or root["/MarkInfo"]["/Marked"].value is True
        assert str(root["/Lang"]).lower() == "en-us"
        assert root["/ViewerPreferences"]["/DisplayDocTitle"].value is True
        assert b"pdfuaid:part" in root["/Metadata"].get_object().get_data()

    def test_title_and_author_stand_in_its_properties(self):
        reader = read_pdf(handout(sample_document("Quiet & Quay")))
        assert reader.metadata.title == "Quiet & Quay"
        assert reader.metadata.author == "Saltmarsh Workshop"
        assert "/CreationDate" not in reader.metadata and "/ModDate" not in reader.metadata

    def test_every_part_has_its_tag(self):
        found = structure(handout(sample_document()))
        assert found["H1"] == 1 and found["H2"] == 3 and found["H3"] == 2
        assert found["Table"] == 1 and found["TH"] == 3 and found["TD"] == 6
        assert found["Figure"] == 2
        assert found["L"] >= 2 and found["LI"] >= 3

    def test_pictures_have_their_words(self):
        assert alternatives(handout(sample_document())) == [
            "Finished Harbour Lanterns. Three lanterns side by side.",
            "Side borders. Two strips beside the centre.",
        ]

    def test_headings_and_steps_are_bookmarks(self):
        assert bookmarks(handout(sample_document())) == [
            "Harbour Lanterns", "Materials", "Cutting", "Sewing", "1. Sew the side borders", "2. Bind",
        ]  # fmt: skip


class TestPaper:
    """A handout fits its paper, and a template page is the paper itself."""

    @pytest.mark.parametrize(("paper", "width", "height"), [("letter", 612, 792), ("a4", 595.276, 841.89)])
    def test_pages_have_the_size_of_the_paper(self, paper, width, height):
        """Letter: 8 1/2 × 11 in (ANSI/ASME Y14.1); A4: 210 × 297 mm (ISO 216)."""
        reader = read_pdf(handout(sample_document(), replace(FRAME, paper=paper), (Sheet(width, height),)))
        for page in reader.pages:
            assert float(page.mediabox.width) == pytest.approx(width, abs=0.01)
            assert float(page.mediabox.height) == pytest.approx(height, abs=0.01)

    @pytest.mark.parametrize(
        ("paper", "width", "height"), [("letter", 612.0, 792.0), ("a4", 595.2755905511812, 841.8897637795276)]
    )
    def test_an_inch_is_72_points_where_it_was_drawn(self, paper, width, height):
        import io

        import pdfplumber

        content = handout(sample_document(), replace(FRAME, paper=paper), (Sheet(width, height),))
        with pdfplumber.open(io.BytesIO(content)) as pdf:
            page = pdf.pages[-1]
            (square,) = [rect for rect in page.rects if not rect["fill"]]
        assert square["width"] == pytest.approx(72, abs=0.01)
        assert square["height"] == pytest.approx(72, abs=0.01)
        assert square["x0"] == pytest.approx(100, abs=0.01)
        assert square["top"] == pytest.approx(200, abs=0.01)

    def test_head_and_foot_name_the_handout_on_every_text_page(self):
        pages = read_pdf(handout(sample_document(), sheets=(Sheet(612, 792),))).pages
        for page in pages[:-1]:
            text = page.extract_text()
            assert "Harbour Lanterns" in text and "Wall hanging, inch edition" in text and "Version 1.0" in text
            assert f"of {len(pages)}" in text
        assert pages[-1].extract_text().strip() == ""


class TestTwice:
    """The same document gives the same bytes."""

    @pytest.mark.parametrize("paper", PAPERS)
    def test_the_same_bytes(self, paper):
        frame = replace(FRAME, paper=paper)
        assert handout(sample_document(), frame) == handout(sample_document(), frame)

    def test_a_fresh_program_gives_the_same_bytes(self):
        import hashlib
        import subprocess
        import sys

        code = (
            "import hashlib,sys;sys.path[:0]=['plugin','tests'];from support.documents import *;"
            "from evenseam.publish.handout import *;"
            "print(hashlib.sha256(write_handout(sample_document(),HandoutFrame('Saltmarsh Workshop','Version 1.0','letter',page='page {number} of {count}'),paint).value).hexdigest())"
        )
        told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
        assert told.stdout.strip() == hashlib.sha256(handout(sample_document())).hexdigest()


HOSTILE = (
    '#"$*<script> \\ @label `raw` _x_ ~ = + - / [a](b)', '#import "@preview/x:1.0.0"', "#read(\"/etc/passwd\")", '"); #panic("no") //', "*/ /* //", "$ x $ #let a = 1",
    "\\u{1F600}", "]", "[#emoji.face]", "= Heading", "- item", "<label> @label", "https://example.org", "'\"`\\", "Quay\x00\x07\u202e", "a\nb\r\nc\u2028d", "#sys.inputs.handout",
)  # fmt: skip


class TestHostileWords:
    """Whatever an author writes is set as it is and is never code."""

    @pytest.mark.parametrize("hostile", HOSTILE)
    def test_the_words_are_printed_as_they_are(self, hostile):
        content = handout(
            Document(
                hostile,
                hostile,
                (Paragraph(words(hostile)), Heading(2, hostile, words(hostile)), StepBlock("s", 1, hostile, ())),
            ),
            replace(FRAME, designer=hostile, footer=hostile),
        )
        shown = "".join(plain(hostile).split())
        assert shown in "".join(body_text(content).split())
        assert read_pdf(content).metadata.title == plain(hostile)

    def test_the_program_never_changes(self):
        assert program() == program()
        assert b"Harbour" not in program()

    def test_all_of_it_is_data(self):
        data = json.loads(handout_data(sample_document(HOSTILE[0]), FRAME, paint))
        assert data["title"] == HOSTILE[0]

    def test_a_sign_that_cannot_be_printed_is_a_problem_and_not_a_crash(self):
        outcome = write_handout(sample_document("Quay \U0001f980 \u4e2d"), FRAME, paint)
        assert outcome.value is None
        (problem,) = outcome.problems
        assert problem.code.name == "handout-not-set"
        assert problem.message == "the handout's font has no sign for \u4e2d (U+4E2D), \U0001f980 (U+1F980)"
        assert problem.hint

    def test_a_picture_that_is_none_is_a_problem_and_not_a_crash(self):
        outcome = write_handout(sample_document(), FRAME, lambda picture: "this is no picture")
        assert [problem.code.name for problem in outcome.problems] == ["handout-not-set"]

    def test_nonsense_instead_of_data_is_a_problem_and_not_a_crash(self):
        assert [problem.code.name for problem in set_handout("{").problems] == ["handout-not-set"]


class TestSameText:
    """Page and handout say the same, figure by figure."""

    def test_the_figures_agree_in_order(self):
        document = sample_document()
        page = read_page(write_html(document, paint).body)
        assert len(figures_in(page.words)) == 7
        assert figures_in(body_text(handout(document))) == figures_in(page.words)


def test_a_long_handout_is_quick():
    """Twelve pages well under a third of a second; the time of the first one, fonts and all, is not counted."""
    sample = sample_document()
    paragraph = Paragraph((Text("A calm sentence about the seam and the iron and the light on the water. " * 8),))
    steps = tuple(StepBlock(f"s{n}", n, f"Step {n}", (sample.blocks[1], paragraph, paragraph)) for n in range(1, 40))
    document = Document("Long", "", (Heading(2, "sewing", words("Sewing")), *steps))
    handout(document)
    start = time.perf_counter()
    content = handout(replace(document, title="Longer"))
    took = time.perf_counter() - start
    assert len(read_pdf(content).pages) >= 12
    assert took < 1.0
