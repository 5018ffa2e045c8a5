"""Paper is true: template pages read back from the PDF by an independent reader."""

from __future__ import annotations

import io
import json
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import Any

import pdfplumber
import pytest
import typst
from evenseam.exact import Unit
from evenseam.figures.paper import Paper, PaperPage, template_pages
from evenseam.figures.paper.tiling import OVERLAP
from evenseam.pattern import Block, BlockPiece, Method, Project
from evenseam.publish.paper_pdf import templates_pdf
from evenseam.wording import words_of
from shapely.geometry import LineString, Point
from shapely.ops import unary_union
from support.pictured import sheet_of
from support.samples import MUG_RUG, WALL_HANGING, length, polygon

SLANTED = Block(
    "slant", "Slant", length("slant width", "6"), length("slant height", "4"), Fraction(12), Fraction(8),
    polygon("0,0 12,0 12,8 0,8"),
    (
        BlockPiece("p1", "sea", polygon("0,0 7,0 3,8 0,8")),
        BlockPiece("p2", "fog", polygon("7,0 12,0 12,3 5.5,3")),
        BlockPiece("p3", "lamp", polygon("5.5,3 12,3 12,8 3,8")),
    ),
    Method.FOUNDATION,
)  # fmt: skip
"""A block of one section that is not its own mirror image."""
TRUE = 0.01
"""Points: how far a measure may be off; a seven-thousandth of an inch."""


def with_block(block: Block, unit: Unit = Unit.INCH) -> Project:
    """Return a mug rug of one block."""
    positions = tuple(tuple(replace(place, block=block.id) for place in row) for row in MUG_RUG.arrangement.positions)
    return replace(MUG_RUG, unit=unit, blocks=(block,), arrangement=replace(MUG_RUG.arrangement, positions=positions))


def enlarged(block: Block, width: str, height: str) -> Block:
    return replace(block, width=length("slant width", width), height=length("slant height", height))


PROJECTS = {
    "slant": with_block(SLANTED),
    "wall-hanging": WALL_HANGING,
    "centimetres": replace(WALL_HANGING, unit=Unit.CENTIMETRE),
    "narrow": with_block(enlarged(SLANTED, "9", "2")),
    "large": with_block(enlarged(SLANTED, "18", "12")),
}
CASES = [(name, paper) for name in PROJECTS for paper in Paper]


@cache
def pages_of(name: str, paper: Paper) -> tuple[PaperPage, ...]:
    return template_pages(sheet_of(PROJECTS[name]), paper, words_of())


@cache
def pdf_of(name: str, paper: Paper) -> bytes:
    return templates_pdf(pages_of(name, paper), "Templates")


def read(content: bytes) -> list[Any]:
    return pdfplumber.open(io.BytesIO(content)).pages


def letters(page: Any) -> str:
    """Return all words of a page without spaces: cairo sets letter by letter and leaves spaces out."""
    return "".join(char["text"] for char in page.chars).replace(" ", "")


def plain(text: str) -> str:
    return text.replace(" ", "")


def stretches(page: Any) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """Return every straight line drawn on a page, in points from its top left corner."""
    found = []
    for line in page.lines:
        found.append(((line["x0"], line["top"]), (line["x1"], line["bottom"])))
    for shape in [*page.curves, *page.rects, *page.lines]:
        points = [(float(x), float(y)) for x, y in shape["pts"]]
        if shape["object_type"] != "line" and points[0] != points[-1]:
            points.append(points[0])
        found += list(pairwise(points))
    return [
        ((float(x1), float(y1)), (float(x2), float(y2)))
        for (x1, y1), (x2, y2) in found
        if abs(x1 - x2) + abs(y1 - y2) > 0
    ]


@pytest.mark.parametrize(("name", "paper"), CASES)
def test_every_page_is_as_large_as_its_paper(name: str, paper: Paper) -> None:
    sizes = {Paper.LETTER: (612, 792), Paper.A4: (595.2756, 841.8898)}  # 8 1/2 × 11 in; 210 × 297 mm, ISO 216
    for page in read(pdf_of(name, paper)):
        left, bottom, right, top = (float(side) for side in page.mediabox)
        assert (left, bottom) == (0, 0)
        assert (right, top) == pytest.approx(sizes[paper], abs=0.001)


@pytest.mark.parametrize(("name", "paper"), CASES)
def test_an_inch_is_72_points_and_two_centimetres_are_56_693_on_every_page(name: str, paper: Paper) -> None:
    for page in read(pdf_of(name, paper)):
        sides = [(float(rect["width"]), float(rect["height"])) for rect in page.rects]
        for true in (72, 2 * 72 / 2.54):
            assert sum(side == pytest.approx((true, true), abs=TRUE) for side in sides) == 1
        level = [abs(x1 - x2) for (x1, y1), (x2, y2) in stretches(page) if y1 == y2]
        for true in (2 * 72, 5 * 72 / 2.54):
            assert any(long == pytest.approx(true, abs=TRUE) for long in level)


@pytest.mark.parametrize(("name", "paper"), CASES)
def test_no_ink_lies_within_half_an_inch_of_the_edge(name: str, paper: Paper) -> None:
    half_line = 1.2
    for page in read(pdf_of(name, paper)):
        for thing in [*page.chars, *page.lines, *page.rects, *page.curves]:
            assert float(thing["x0"]) >= 36 - half_line and float(thing["x1"]) <= float(page.width) - 36 + half_line
            assert (
                float(thing["top"]) >= 36 - half_line and float(thing["bottom"]) <= float(page.height) - 36 + half_line
            )


@pytest.mark.parametrize(("name", "paper"), CASES)
def test_every_page_says_what_it_is_and_how_to_print_it(name: str, paper: Paper) -> None:
    project = sheet_of(PROJECTS[name]).project
    pages = read(pdf_of(name, paper))
    edition = "centimeter" if project.unit is Unit.CENTIMETRE else "inch"
    for number, page in enumerate(pages, start=1):
        text = letters(page)
        for words in (
            "Harbour Lanterns", f"{project.name}, {edition} edition", f"page {number} of {len(pages)}",
            "Print at 100 %", f"Seam allowance of {project.seam_allowance.text} is included", "Mirror image",
            "sew with this printed side up", "solid line: sew", "dashed line: cut",
        ):  # fmt: skip
            assert plain(words) in text, words


def test_sections_are_named_with_the_copies_they_need() -> None:
    for paper in Paper:
        text = "".join(letters(page) for page in read(pdf_of("wall-hanging", paper)))
        assert text.count(plain("Lantern: section A")) == 1
        assert text.count(plain("Lantern: section B")) == 1
        assert text.count(plain("print 3 copies")) == 2
        for label in ("A1 (L)", "A2 (F)", "A3 (F)", "A4 (D)", "B1 (D)", "B2 (F)", "B3 (F)"):
            assert plain(label) in text


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("name", ["slant", "wall-hanging", "centimetres"])
def test_the_first_page_shows_the_block_as_sewn_and_says_so(name: str, paper: Paper) -> None:
    first, *others = [letters(page) for page in read(pdf_of(name, paper))]
    assert plain("as sewn") in first and plain("its templates are mirrored; not to scale") in first
    assert not any(plain("as sewn") in text for text in others)


def test_the_block_as_sewn_is_not_mirrored() -> None:
    (page,) = read(pdf_of("slant", Paper.LETTER))
    # 1 3/5 in wide for 12 grid units: 9.6 points each. The title stands just under it, at its left edge.
    frame = next(rect for rect in page.rects if float(rect["width"]) == pytest.approx(115.2, abs=0.05))
    left, top = float(frame["x0"]), float(frame["top"])
    ink = unary_union([LineString(line) for line in stretches(page)]).buffer(0.2)
    for start, end in (edge for piece in SLANTED.pieces for edge in piece.outline.edges):
        line = [(left + float(c.x) * 9.6, top + float(c.y) * 9.6) for c in (start, end)]
        assert ink.covers(LineString(line))
    mirrored = LineString([(left + (12 - x) * 9.6, top + y * 9.6) for x, y in ((7, 0), (3, 8))])
    assert not ink.covers(mirrored)


@pytest.mark.parametrize("paper", Paper)
def test_pictures_of_blocks_take_no_more_paper(paper: Paper) -> None:
    """A template of a whole page leaves no room for one: then there is none, and still one page."""
    assert len(read(pdf_of("narrow", paper))) == 1
    assert pages_of("narrow", paper)[0].sections == ("Slant: whole block",)
    assert len(read(pdf_of("slant", paper))) == 1


def expected_lines(*, is_mirrored: bool) -> list[LineString]:
    """Return the seam lines of the slanted block in points, from the drawing alone."""
    lines = []
    for piece in SLANTED.pieces:
        for start, end in piece.outline.edges:
            points = [(float(corner.x) * 36, float(corner.y) * 36) for corner in (start, end)]
            lines.append(LineString([(432 - x, y) for x, y in points] if is_mirrored else points))
    return lines


@pytest.mark.parametrize("paper", Paper)
def test_the_template_is_the_mirrored_drawing_at_full_size(paper: Paper) -> None:
    """Every seam line of the drawing is on paper, mirrored, within a hundredth of an inch."""
    (page,) = read(pdf_of("slant", paper))
    cutting = next(rect for rect in page.rects if float(rect["width"]) == pytest.approx(6.5 * 72, abs=TRUE))
    assert float(cutting["height"]) == pytest.approx(4.5 * 72, abs=TRUE)
    left, top = float(cutting["x0"]) + 18, float(cutting["top"]) + 18
    ink = unary_union(
        [LineString([(x1 - left, y1 - top), (x2 - left, y2 - top)]) for (x1, y1), (x2, y2) in stretches(page)]
    )
    drawn = ink.buffer(0.72)
    assert all(drawn.covers(line) for line in expected_lines(is_mirrored=True))
    assert not all(drawn.covers(line) for line in expected_lines(is_mirrored=False))


def test_a_label_stands_in_its_own_mirrored_piece() -> None:
    (page,) = read(pdf_of("slant", Paper.LETTER))
    cutting = next(rect for rect in page.rects if float(rect["width"]) == pytest.approx(6.5 * 72, abs=TRUE))
    left, top = float(cutting["x0"]) + 18, float(cutting["top"]) + 18
    section = sheet_of(PROJECTS["slant"]).sized.pieced("slant").sections[0]
    outlines = {piece.id: piece.outline for piece in SLANTED.pieces}
    for member in section.pieces:
        places = [
            (float(char["x0"]) - left, float(char["top"]) - top)
            for char, after in pairwise(page.chars)
            if char["text"] + after["text"] == member.label and float(char["top"]) > top
        ]
        shape = LineString(
            [(432 - float(p.x) * 36, float(p.y) * 36) for p in outlines[member.piece].corners]
        ).convex_hull
        assert len(places) == 1 and shape.covers(Point(places[0]))


@pytest.mark.parametrize("paper", Paper)
def test_a_long_narrow_template_stays_whole(paper: Paper) -> None:
    """A strip across a nine-inch block is 9 1/2 in long with its seam allowances: no page should cut it."""
    (page,) = pages_of("narrow", paper)
    assert page.sections == ("Slant: whole block",)
    (read_page,) = read(pdf_of("narrow", paper))
    sides = {(round(float(rect["width"]), 1), round(float(rect["height"]), 1)) for rect in read_page.rects}
    assert (2.5 * 72, 9.5 * 72) in sides


@pytest.mark.parametrize("paper", Paper)
def test_a_large_template_is_cut_into_parts_that_overlap_and_are_joined_by_marks(paper: Paper) -> None:
    """Laid on each other by their joining lines, the parts give the whole drawing again."""
    pages = read(pdf_of("large", paper))
    assert len(pages) >= 4
    names = [page.sections[0] for page in pages_of("large", paper)]
    assert names == [f"Slant: whole block, part {number} of {len(pages)}" for number in range(1, len(pages) + 1)]
    crosses = [_crosses(page) for page in pages]
    assert all(len(found) >= 4 for found in crosses)
    marked = [sum(letters(page).count(f"topart{number}") for page in pages) for number in range(1, len(pages) + 1)]
    assert all(count >= 2 for count in marked)


def _crosses(page: Any) -> list[tuple[float, float]]:
    """Return the middles of the diamonds on a page."""
    middles = []
    for curve in page.curves:
        across, down = float(curve["width"]), float(curve["height"])
        if across == pytest.approx(14.4, abs=TRUE) and down == pytest.approx(14.4, abs=TRUE):
            middles.append((float(curve["x0"]) + across / 2, float(curve["top"]) + down / 2))
    return middles


@pytest.mark.parametrize("paper", Paper)
def test_parts_cover_a_large_template(paper: Paper) -> None:
    from evenseam.figures.cloth_look import looks_of
    from evenseam.figures.drawing import Line, Stroke
    from evenseam.figures.paper.template_shapes import template_shapes
    from evenseam.figures.paper.tiling import parts_of
    from evenseam.piecing.templates import section_templates

    sheet = sheet_of(PROJECTS["large"])
    (template,) = section_templates(sheet.project.blocks[0], sheet.blocks[0], sheet.project.seam_allowance)
    looks = dict(looks_of(sheet.project.fabrics))
    shapes = template_shapes(template, looks, "Slant", "print once", words_of(), is_sideways=False)
    live = (Fraction(15, 2), Fraction(17, 2))
    parts = parts_of(shapes, *live, words_of())
    columns, rows = 3, 2
    assert len(parts) == columns * rows
    step_x, step_y = (shapes.width - live[0]) / (columns - 1), (shapes.height - live[1]) / (rows - 1)
    assert live[0] - step_x >= OVERLAP >= Fraction(1, 2) and live[1] - step_y >= OVERLAP
    put_back = []
    for number, part in enumerate(parts):
        left, top = float(step_x * (number % columns)), float(step_y * (number // columns))
        for shape in part.shapes:
            if isinstance(shape, Line) and shape.stroke is not Stroke.HELP:
                put_back.append(LineString([(float(p.x) + left, float(p.y) + top) for p in shape.points]))
    ink = unary_union(put_back).buffer(1e-6)
    for line in shapes.lines:
        points = [(float(point.x), float(point.y)) for point in (*line.points, *line.points[: int(line.is_closed)])]
        assert ink.covers(LineString(points))


@pytest.mark.parametrize(("name", "paper"), CASES)
def test_the_same_pages_give_the_same_bytes(name: str, paper: Paper) -> None:
    pages = template_pages(sheet_of(PROJECTS[name]), paper, words_of())
    assert [page.svg for page in pages] == [page.svg for page in pages_of(name, paper)]
    assert templates_pdf(pages, "Templates") == pdf_of(name, paper)


@pytest.mark.parametrize("paper", Paper)
def test_a_second_program_sets_the_same_page_true_to_scale(paper: Paper) -> None:
    """typst, placing the page as a picture at its own size, agrees with cairo to a hundredth of a point."""
    page = pages_of("slant", paper)[0]
    source = f"""
        #set page(width: {page.width_points}pt, height: {page.height_points}pt, margin: 0pt)
        #image(bytes({json.dumps(page.svg)}), format: "svg", width: 100%, alt: "templates")
    """
    content = typst.compile(source.encode(), format="pdf")
    (set_page,) = read(content)
    expected = sorted(float(rect["width"]) for rect in read(pdf_of("slant", paper))[0].rects)
    assert sorted(float(rect["width"]) for rect in set_page.rects) == pytest.approx(expected, abs=0.02)
    assert any(float(rect["width"]) == pytest.approx(72, abs=TRUE) for rect in set_page.rects)


def test_no_pages_are_no_pdf() -> None:
    with pytest.raises(ValueError, match="no pages"):
        templates_pdf((), "Templates")


def test_a_rotary_pattern_has_no_templates() -> None:
    rotary = replace(
        SLANTED, method=Method.ROTARY,
        pieces=(BlockPiece("p1", "sea", polygon("0,0 6,0 6,8 0,8")), BlockPiece("p2", "fog", polygon("6,0 12,0 12,8 6,8"))),
    )  # fmt: skip
    assert template_pages(sheet_of(with_block(rotary)), Paper.A4, words_of()) == ()
