"""What is printed of a block cut to size: cutting lines, steps, other ways, pictures, and templates true to scale."""

from __future__ import annotations

import io
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import Any

import pdfplumber
import pytest
from evenseam.exact import Unit
from evenseam.figures import draw, picture_names
from evenseam.figures.drawing import Label, Line, Stroke
from evenseam.figures.paper import Paper, template_pages
from evenseam.pattern import Block, BlockPiece, JoinPieces, Method, Press, Project
from evenseam.publish.paper_pdf import templates_pdf
from evenseam.sheet import PatternSheet, sheet_as_json
from evenseam.wording import words_of, write_document
from evenseam.wording.seam_ends import SeamEnds, seam_ends
from shapely.affinity import rotate, translate
from shapely.geometry import Polygon as Shape
from support.document_words import as_text
from support.pictured import sheet_of
from support.samples import BOUND, MUG_RUG, grid, length, polygon

HOURGLASS = ("fog 0,0 2,0 1,1", "sea 2,0 2,2 1,1", "lamp 2,2 0,2 1,1", "sea 0,2 0,0 1,1")
SKEWED = ("lamp 0,0 3,0 1,4 0,4", "sea 3,0 4,0 4,4 1,4")
"""Two pieces of no simple shape; neither is its own mirror image, each is the other turned upside down."""

TWO_ALIKE = (
    "lamp 0,0 2,0 0,2", "sea 2,0 2,2 0,2", "fog 2,0 4,0 4,2 2,2", "fog 0,2 2,2 2,4 0,4", "lamp 2,2 4,2 2,4",
    "sea 4,2 4,4 2,4",
)  # fmt: skip
"""Half-square triangles of one sort in two corners, squares in the others."""


def project(pieces: tuple[str, ...], size: str, cells: int, unit: Unit = Unit.INCH) -> Project:
    drawn = tuple(
        BlockPiece(f"p{number}", text.split(" ", 1)[0], polygon(text.split(" ", 1)[1]))
        for number, text in enumerate(pieces, start=1)
    )
    block = Block(
        "tern", "Tern", length("tern width", size), length("tern height", size), Fraction(cells), Fraction(cells),
        polygon(f"0,0 {cells},0 {cells},{cells} 0,{cells}"), drawn, Method.ROTARY,
    )  # fmt: skip
    return replace(MUG_RUG, unit=unit, blocks=(block,), borders=(), arrangement=grid(2, 2, "tern"), finish=BOUND)


@cache
def hourglasses() -> PatternSheet:
    return sheet_of(project(HOURGLASS, "3", 2))


@cache
def skewed(unit: Unit) -> PatternSheet:
    return sheet_of(project(SKEWED, "4", 4, unit))


def words(sheet: PatternSheet) -> str:
    outcome = write_document(sheet)
    assert outcome.value is not None and not outcome.problems
    return as_text(outcome.value)


class TestTriangles:
    """Triangles are told as the squares they are cut from, and the units of them are trimmed."""

    def test_cutting_lines_tell_squares_and_cuts(self) -> None:
        text = words(hourglasses())
        assert "2 squares 4 1/4 × 4 1/4 in, each cut twice on the diagonal" in text
        assert "The edges you cut on the diagonal stretch." in text

    def test_steps_mind_the_bias_and_trim(self) -> None:
        text = words(hourglasses())
        assert "1. Sew triangle A to triangle B" in text or "1. Sew triangle B to triangle A" in text
        assert "edges on the slant stretch" in text
        assert "Trim to 3 1/2 × 3 1/2 in." in text
        assert "This makes a whole Tern block." in text
        # Told once: after the trim, not after the seam before it.
        assert text.count("This makes a whole Tern block.") == 1
        assert text.index("Trim to 3 1/2") < text.index("This makes a whole Tern block.")

    def test_a_unit_in_another_place_is_told_by_both_names(self) -> None:
        # It is sewn under the letters of its first place, and the unit it goes into has those of the second.
        text = words(sheet_of(project(TWO_ALIKE, "4", 4)))
        assert "4. Sew piece D to unit A+B" in text and "to unit D+E+F" in text
        assert text.count("Unit A+B lies in the place of unit E+F here.") == 1

    def test_other_way_is_offered_with_its_figures(self) -> None:
        text = words(hourglasses())
        assert "four at a time (instead of steps 1, 2 and 3; you need 4)" in text
        assert "2 squares of Deep Sea (D), 4 1/4 × 4 1/4 in" in text
        data = sheet_as_json(hourglasses())["unit_methods"]
        assert [method["units"] for method in data] == [4]
        assert {"fabric": "sea", "side": "4 1/4", "count": 2} in data[0]["squares"]

    def test_plan_shows_both_diagonals_of_every_square(self) -> None:
        plan = next(material.plan for material in hourglasses().materials if material.material == "fog")
        assert plan is not None
        squares = [piece for strip in plan.strips for piece in strip.pieces if piece.cut.startswith("tern-")]
        lines = [shape for shape in draw(hourglasses(), "cutting-fog").shapes if isinstance(shape, Line)]
        slanted = [
            line
            for line in lines
            if line.stroke is Stroke.CUT
            and len(line.points) == 2
            and line.points[0].x != line.points[1].x
            and line.points[0].y != line.points[1].y
        ]
        assert len(squares) == 1
        assert len(slanted) == 2 * len(squares)

    def test_every_step_has_its_picture_with_the_size_to_trim_to(self) -> None:
        sheet = hourglasses()
        trims = [name for name in picture_names(sheet) if name.startswith("step-trim")]
        assert len(trims) == 1
        figures = [getattr(shape, "text", "") for shape in draw(sheet, trims[0]).shapes]
        assert figures.count("3 1/2 in") == 2

    def test_pieces_bear_the_letters_of_the_steps(self) -> None:
        labels = [shape.text for shape in draw(hourglasses(), "pieces-tern").shapes if isinstance(shape, Label)]
        assert {label.split()[0] for label in labels if label} >= {"A", "B", "C", "D"}
        assert not any("A1" in label for label in labels)

    def test_nothing_needs_a_template(self) -> None:
        assert template_pages(hourglasses(), Paper.A4, words_of()) == ()
        assert "Templates to print" not in words(hourglasses())


@pytest.mark.parametrize(
    ("pieces", "ends"),
    [
        # Raw edges reach past the end of a seam by seam allowance × cot(half the corner): 1 of them at a right angle,
        # 1 + √2 at half a right angle.
        (("sea 0,0 2,0 0,2", "fog 2,0 2,2 0,2"), SeamEnds.EVEN),
        (("sea 0,0 2,0 1,1", "fog 2,0 2,2 1,1"), SeamEnds.EVEN),
        (("sea 0,0 1,0 1,2 0,2", "fog 1,0 2,0 2,2 1,2"), SeamEnds.EVEN),
        # A roof on a wall; a goose and its sky; a triangle or a slanted end and a piece that leans the other way.
        (("sea 0,1 1,0 2,1", "fog 0,1 2,1 2,2 0,2"), SeamEnds.BOTH_ENDS),
        (("lamp 0,2 2,0 4,2", "fog 0,0 2,0 0,2"), SeamEnds.ONE_END),
        (("sea 0,0 2,0 1,1", "fog 1,1 2,0 3,0 2,1"), SeamEnds.EACH_PART),
        (("sea 0,0 2,0 1,1 0,1", "fog 2,0 3,0 3,1 1,1"), SeamEnds.EACH_PART),
    ],
)
def test_tips_stick_out_where_corners_differ(pieces: tuple[str, ...], ends: SeamEnds) -> None:
    block = project(pieces, "4", 4).blocks[0]
    joining = JoinPieces("tern", "a", ("p1",), "b", ("p2",), Press.OPEN)
    assert seam_ends(block, joining) is ends
    turned_round = JoinPieces("tern", "b", ("p2",), "a", ("p1",), Press.OPEN)
    assert seam_ends(block, turned_round) is ends


@pytest.mark.parametrize("unit", [Unit.INCH, Unit.CENTIMETRE], ids=["inch", "centimetre"])
class TestTemplates:
    """A piece of no simple shape has a template: true to scale, not mirrored, its seam allowance outside."""

    def test_template_lies_as_the_piece_does(self, unit: Unit) -> None:
        sheet = skewed(unit)
        cuts = [cut for cut in sheet.cuts.cuts if cut.outline is not None]
        assert len(cuts) == 2
        (page,) = _pages(sheet)
        loops = _loops(page)
        points = 72 if unit is Unit.INCH else 72 / 2.54
        for cut in cuts:
            assert cut.outline is not None
            drawn = [(float(corner.x) * points, float(corner.y) * points) for corner in cut.outline.corners]
            seam = float(sheet.project.seam_allowance.value) * points
            sewing, cutting = Shape(drawn), Shape(drawn).buffer(seam, join_style="mitre", mitre_limit=50)
            for wanted in (sewing, cutting):
                assert any(_is_same(wanted, found) for found in loops)
            # Turned over, the shape would be on the page nowhere.
            mirrored = Shape([(-x, y) for x, y in drawn])
            assert not any(_is_same(mirrored, found) for found in loops)

    def test_text_says_what_is_cut_with_it(self, unit: Unit) -> None:
        text = words(skewed(unit))
        assert "Templates to print" in text
        assert "not mirrored" in text and "4 pieces from Lamp Glow" in text
        assert "each cut to shape with its template: template piece" in text


def _pages(sheet: PatternSheet) -> list[Any]:
    content = templates_pdf(template_pages(sheet, Paper.A4, words_of()), "Templates")
    return pdfplumber.open(io.BytesIO(content)).pages


def _loops(page: Any) -> list[Shape]:
    """Return every closed outline drawn on a page as a shape."""
    found = []
    for shape in [*page.curves, *page.rects, *page.lines]:
        spots = [(float(x), float(y)) for x, y in shape["pts"]]
        spots = [spot for spot, after in pairwise([*spots, spots[0]]) if spot != after]
        if len(spots) >= 3:
            found.append(Shape(spots))
    return found


def _is_same(wanted: Shape, found: Shape) -> bool:
    """Tell whether two shapes are one, moved or turned by quarters, within a twentieth of a point."""
    for quarter in range(4):
        turned = rotate(wanted, 90 * quarter, origin=(0, 0))
        left, top, _, _ = turned.bounds
        x, y, _, _ = found.bounds
        if translate(turned, x - left, y - top).exterior.hausdorff_distance(found.exterior) < 0.05:
            return True
    return False
