"""The page of rulers: an inch on it is 72 points and a centimetre 72 / 2.54, to the last mark."""

from __future__ import annotations

import io
from fractions import Fraction

import pdfplumber
import pytest
from evenseam.figures.paper import Paper, ruler_page
from evenseam.publish.cairo import has_cairo
from evenseam.publish.paper_pdf import templates_pdf
from evenseam.wording import words_of

INCH = 72
CENTIMETRE = 72 / 2.54


@pytest.fixture(scope="module", params=list(Paper), ids=lambda paper: paper.value)
def page(request):
    if not has_cairo():
        pytest.skip("the cairo library is not installed")
    with pdfplumber.open(io.BytesIO(templates_pdf((ruler_page(request.param, words_of()),), "Rulers"))) as book:
        yield request.param, book.pages[0]


def ends(page, is_upright):
    """Return the lengths of the straight lines of one direction, in points."""
    lines = [(line["x0"], line["x1"], line["top"], line["bottom"]) for line in page.lines]
    return [bottom - top if is_upright else right - left for left, right, top, bottom in lines
            if (abs(right - left) < 0.01) is is_upright]  # fmt: skip


def test_paper_is_its_own_size(page):
    paper, printed = page
    assert (printed.width, printed.height) == pytest.approx(
        (float(paper.width * 72), float(paper.height * 72)), abs=0.001
    )


def test_the_longest_rulers_are_true(page):
    _, printed = page
    across, down = ends(printed, False), ends(printed, True)
    for long, found in ((7 * INCH, across), (18 * CENTIMETRE, across)):
        assert any(length == pytest.approx(long, abs=0.005) for length in found), long
    inches = {round(length / INCH, 3) for length in down}
    centimetres = {round(length / CENTIMETRE, 3) for length in down}
    assert any(length >= 7 and length == int(length) for length in inches)
    assert any(length >= 18 and length == int(length) for length in centimetres)


def test_marks_stand_at_their_places(page):
    """The marks of the inch ruler across: eighths, one after the other."""
    paper, _ = page
    lines = [shape for shape in ruler_page(paper, words_of()).drawing.shapes if type(shape).__name__ == "Line"]
    upright = [line for line in lines if len(line.points) == 2 and line.points[0].x == line.points[1].x]
    tops = sorted({line.points[0].y for line in upright})
    rows = {top: sorted(line.points[0].x for line in upright if line.points[0].y == top) for top in tops}
    eighths = [row for row in rows.values() if len(row) == 7 * 8 + 1]
    tenths = [row for row in rows.values() if len(row) == 18 * 10 + 1]
    assert len(eighths) == len(tenths) == 1
    assert {b - a for a, b in zip(eighths[0], eighths[0][1:], strict=False)} == {Fraction(1, 8)}
    assert {b - a for a, b in zip(tenths[0], tenths[0][1:], strict=False)} == {Fraction(10, 254)}


def test_nothing_lies_beyond_the_margin(page):
    paper, printed = page
    for line in printed.lines:
        assert line["x0"] >= 35.9 and line["x1"] <= float(paper.width) * 72 - 35.9
        assert line["top"] >= 35.9 and line["bottom"] <= float(paper.height) * 72 - 35.9
    for sign in printed.chars:
        assert sign["x0"] >= 35 and sign["x1"] <= float(paper.width) * 72 - 35
        assert sign["top"] >= 35 and sign["bottom"] <= float(paper.height) * 72 - 35
