"""From drawing to paper: every edge of every piece is on the printed template, as long as it was drawn."""

from __future__ import annotations

import io
import re
from itertools import pairwise
from math import hypot
from pathlib import Path
from xml.etree import ElementTree

import pdfplumber
import pytest
from evenseam.exact import Unit
from evenseam.figures.paper import Paper, template_pages
from evenseam.problems import SourceText
from evenseam.publish.paper_pdf import templates_pdf
from evenseam.reading import read_pattern
from evenseam.sheet import compute_sheet

FOLDER = Path(__file__).parent.parent.parent / "patterns" / "urchins-on-the-slip"
TRUE = 0.01
"""Inches."""

Spot = tuple[float, float]


def drawn_pieces() -> list[list[Spot]]:
    """Read the polygons of the drawing by another way than the reader's: it has no transforms, 160 units are 8 in."""
    root = ElementTree.fromstring((FOLDER / "urchin.svg").read_text("utf-8"))
    return [
        [(float(x) / 20, float(y) / 20) for x, y in re.findall(r"([\d.]+),([\d.]+)", element.get("points", ""))]
        for element in root.iter("{http://www.w3.org/2000/svg}polygon")
    ]


def printed_lines(content: bytes) -> list[tuple[Spot, Spot]]:
    """Return every straight line of a PDF in inches from the top left corner of its page."""
    found: list[tuple[Spot, Spot]] = []
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        for page in pdf.pages:
            for shape in [*page.curves, *page.rects, *page.lines]:
                spots = [(float(x) / 72, float(y) / 72) for x, y in shape["pts"]]
                found += list(pairwise([*spots, spots[0]]))
    return found


@pytest.fixture(scope="module", params=list(Paper))
def lines(request: pytest.FixtureRequest) -> list[tuple[Spot, Spot]]:
    source = SourceText("pattern.yaml", (FOLDER / "pattern.yaml").read_text("utf-8"))
    drawing = SourceText("urchin.svg", (FOLDER / "urchin.svg").read_text("utf-8"))
    pattern = read_pattern("urchins", source, {drawing.name: drawing}).value
    assert pattern is not None
    project = next(p for p in pattern.projects if p.size == "mug-rug" and p.unit is Unit.INCH)
    sheet = compute_sheet(pattern, project).value
    assert sheet is not None
    return printed_lines(templates_pdf(template_pages(sheet, request.param)))


def test_every_drawn_length_is_on_the_paper(lines: list[tuple[Spot, Spot]]) -> None:
    lengths = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in lines]
    for piece in drawn_pieces():
        for a, b in zip(piece, [*piece[1:], piece[0]], strict=True):
            drawn = hypot(b[0] - a[0], b[1] - a[1])
            nearest = min(abs(length - drawn) for length in lengths)
            assert nearest < TRUE or is_part(drawn, lengths), (a, b, drawn)


def is_part(drawn: float, lengths: list[float]) -> bool:
    """Tell whether an edge is printed as one of two equal parts of a longer line, or of several in a row."""
    return any(abs(length - times * drawn) < TRUE for times in (2, 3, 4) for length in lengths)
