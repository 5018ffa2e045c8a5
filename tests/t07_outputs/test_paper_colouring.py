"""The colouring sheet: every piece once, in proportion, on one page."""

from __future__ import annotations

import io
from fractions import Fraction

import pdfplumber
import pytest
from evenseam.figures.drawing import Label, Line, Stroke
from evenseam.figures.paper import Paper, PaperPage, colouring_page
from evenseam.figures.paper.paper_size import MARGIN
from evenseam.publish.paper_pdf import templates_pdf
from evenseam.wording import words_of
from shapely.geometry import Polygon
from support.pictured import SIZES, sample_sheet

CASES = [(size, paper) for size in SIZES for paper in Paper]


def pieces_of(page: PaperPage) -> list[Polygon]:
    """Return the outlines of the pieces on a page, in inches."""
    lines = [shape for shape in page.drawing.shapes if isinstance(shape, Line) and shape.stroke is Stroke.EDGE]
    return [Polygon([(float(point.x), float(point.y)) for point in line.points]) for line in lines]


@pytest.mark.parametrize(("size", "paper"), CASES)
def test_every_piece_is_drawn_once_and_all_in_one_proportion(size: str, paper: Paper) -> None:
    sheet = sample_sheet(size)
    drawn = pieces_of(colouring_page(sheet, paper, words_of()))
    placed = [float(one.outline.area) for one in sheet.sized.placed]
    assert len(drawn) == len(placed)
    ratios = [piece.area / area for piece, area in zip(drawn, placed, strict=True)]
    assert ratios == pytest.approx([ratios[0]] * len(ratios))


@pytest.mark.parametrize(("size", "paper"), CASES)
def test_it_fills_the_page_one_way_and_stays_inside_its_margins(size: str, paper: Paper) -> None:
    page = colouring_page(sample_sheet(size), paper, words_of())
    boxes = [piece.bounds for piece in pieces_of(page)]
    left, top = min(box[0] for box in boxes), min(box[1] for box in boxes)
    right, bottom = max(box[2] for box in boxes), max(box[3] for box in boxes)
    assert left >= float(MARGIN) - 1e-6 and right <= float(paper.width - MARGIN) + 1e-6
    assert top >= float(MARGIN) and bottom <= float(paper.height - MARGIN)
    # As wide as the page, or nearly as high: its title and the boxes for the fabrics take the rest.
    assert right - left == pytest.approx(float(paper.live_width)) or bottom - top > float(paper.live_height) * 0.85


@pytest.mark.parametrize(("size", "paper"), CASES)
def test_there_is_a_box_for_every_fabric_that_is_seen(size: str, paper: Paper) -> None:
    sheet = sample_sheet(size)
    page = colouring_page(sheet, paper, words_of())
    seen = {placed.fabric for placed in sheet.sized.placed}
    names = {fabric.name for fabric in sheet.project.fabrics if fabric.id in seen}
    assert names <= {shape.text for shape in page.drawing.shapes if isinstance(shape, Label)}
    boxes = [shape for shape in page.drawing.shapes if isinstance(shape, Line) and shape.stroke is Stroke.SEWING_LINE]
    assert len(boxes) == len(names)
    assert all(Fraction(box.points[1].x) - Fraction(box.points[0].x) == Fraction(1, 4) for box in boxes)  # type: ignore[arg-type]


def test_the_page_read_back_is_one_page_that_says_it_is_not_to_scale() -> None:
    content = templates_pdf([colouring_page(sample_sheet("wall-hanging"), Paper.A4, words_of())], "Coloring sheet")
    (page,) = pdfplumber.open(io.BytesIO(content)).pages
    assert "Nottoscale" in "".join(char["text"] for char in page.chars).replace(" ", "")
    # Outlines only: nothing on the page is filled.
    assert not any(shape["fill"] for shape in [*page.rects, *page.curves])
