"""From drawing to paper: every edge of every piece is on the printed template, as long as it was drawn."""

from __future__ import annotations

import io
import re
from itertools import combinations, pairwise
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
from evenseam.wording import words_of

FOLDER = Path(__file__).parent.parent.parent / "patterns" / "urchins-on-the-slip"
TRUE = 0.01
"""Inches."""
SHORTEST = 0.15
"""No edge of the drawing is shorter; ticks and dashes are."""

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
    return printed_lines(templates_pdf(template_pages(sheet, request.param, words_of()), "Templates"))


def test_every_drawn_edge_is_on_the_paper(lines: list[tuple[Spot, Spot]]) -> None:
    """Each edge is a stretch between two printed ends on one printed line, in its mirrored direction."""
    stretches = printed_stretches(lines)
    for piece in drawn_pieces():
        for a, b in zip(piece, [*piece[1:], piece[0]], strict=True):
            across, down = b[0] - a[0], b[1] - a[1]
            long = hypot(across, down)
            # Mirrored left to right, and perhaps turned sideways to fit the page.
            ways = ((-across / long, down / long), (down / long, across / long))
            assert any(
                abs(printed - long) < TRUE and any(abs(x * v - y * u) < 2 * TRUE / long for u, v in ways)
                for printed, (x, y) in stretches
            ), (a, b, long)


def printed_stretches(lines: list[tuple[Spot, Spot]]) -> list[tuple[float, Spot]]:
    """Return length and direction of every stretch of a printed line between two places where printed lines end."""
    ends = sorted({(round(x, 3), round(y, 3)) for line in lines for x, y in line})
    found: dict[tuple[float, float, float], tuple[float, Spot]] = {}
    for a, b in lines:
        long = hypot(b[0] - a[0], b[1] - a[1])
        if long < SHORTEST:
            continue
        way = ((b[0] - a[0]) / long, (b[1] - a[1]) / long)
        on_line = []
        for x, y in ends:
            along = (x - a[0]) * way[0] + (y - a[1]) * way[1]
            aside = (x - a[0]) * way[1] - (y - a[1]) * way[0]
            if abs(aside) < TRUE / 2 and -TRUE < along < long + TRUE:
                on_line.append(along)
        for one, other in combinations(sorted(on_line), 2):
            if other - one >= SHORTEST:
                key = (round(other - one, 3), round(way[0], 3), round(way[1], 3))
                found[key] = (other - one, way)
    return list(found.values())


def test_the_check_sees_an_edge_a_hundredth_too_long() -> None:
    square = [((0.0, 0.0), (2.0, 0.0)), ((1.0, 0.0), (1.0, 1.0)), ((2.0, 0.0), (2.0, 1.0))]
    lengths = {round(long, 2) for long, _ in printed_stretches(square)}
    assert lengths == {1.0, 2.0}
    assert not any(abs(long - 1.02) < TRUE for long, _ in printed_stretches(square))


def test_letter_takes_no_more_pages_than_a4() -> None:
    """Six sections of 4 1/4 in at most: two to a page, whether their words stand above them or beside them."""
    source = SourceText("pattern.yaml", (FOLDER / "pattern.yaml").read_text("utf-8"))
    drawing = SourceText("urchin.svg", (FOLDER / "urchin.svg").read_text("utf-8"))
    pattern = read_pattern("urchins", source, {drawing.name: drawing}).value
    assert pattern is not None
    sheet = compute_sheet(pattern, pattern.projects[0]).value
    assert sheet is not None
    assert {paper: len(template_pages(sheet, paper, words_of())) for paper in Paper} == {Paper.LETTER: 3, Paper.A4: 3}
