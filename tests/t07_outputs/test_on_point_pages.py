"""Blocks on point and rows of unequal blocks on the page: what the steps say, and what their pictures show."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from evenseam.exact import Unit, to_float
from evenseam.figures import Theme, draw, picture_names, to_svg
from evenseam.figures.drawing import Cloth, Label, Line, Stroke
from evenseam.figures.workbench import walk
from evenseam.pattern import AddSettingTriangles, JoinDiagonalRows, TrimTop
from evenseam.review import write_markdown
from evenseam.sheet import PatternSheet
from evenseam.wording import write_document
from shapely.geometry import Polygon as ShapelyPolygon
from shapely.ops import unary_union
from support.document_words import as_text
from support.on_point import on_point
from support.pictured import as_shapely, sheet_of
from support.reviewed import review
from support.samples import REED

FRAMED = on_point("6", sash="1", around=True, cornerstones="lamp")
PLAIN = on_point("6")
SINGLE = on_point("6", rows=1, columns=1)
FLOATED = on_point("6", floated="1")
METRIC = on_point("15", unit=Unit.CENTIMETRE, seam="0.75")
SAMPLES = {
    "framed": FRAMED, "plain": PLAIN, "single": SINGLE, "floated": FLOATED, "centimetres": METRIC,
    "between": on_point("6", sash="1", cornerstones="lamp"), "long strips": on_point("6", sash="1", around=True),
    "runner": on_point("6", rows=1, columns=4),
}  # fmt: skip


@cache
def sheet(name: str) -> PatternSheet:
    """Return the sheet of a sample."""
    return sheet_of(SAMPLES[name])


def words(name: str, language: str = "en") -> str:
    outcome = write_document(sheet(name), language)
    assert outcome.value is not None, outcome.problems
    return as_text(outcome.value)


@pytest.mark.parametrize("name", SAMPLES)
def test_every_picture_is_drawn(name: str) -> None:
    for picture in picture_names(sheet(name)):
        drawing = draw(sheet(name), picture)
        assert drawing.shapes, picture
        assert to_svg(drawing, Theme.PRINT, picture, "A picture.", "p") == to_svg(
            draw(sheet(name), picture), Theme.PRINT, picture, "A picture.", "p"
        )


@pytest.mark.parametrize("name", SAMPLES)
def test_workbench_leaves_the_trimmed_top(name: str) -> None:
    (trim,) = [bench for bench in walk(sheet(name)).values() if isinstance(bench.step.operation, TrimTop)]
    assert trim.step.measures is not None
    width, height = (to_float(measure.value) for measure in trim.step.measures)
    assert trim.makes.raw_width == pytest.approx(width)
    assert trim.makes.raw_height == pytest.approx(height)


@pytest.mark.parametrize("name", ["framed", "plain", "floated", "between", "centimetres"])
def test_rows_sewn_together_cover_the_trimmed_top(name: str) -> None:
    """Drawn without gaps, the ragged top reaches past the line it is trimmed on everywhere, and has no hole in it."""
    (step,) = [step for step in sheet(name).program.steps if isinstance(step.operation, TrimTop)]
    drawing = draw(sheet(name), f"step-{step.id}")
    (line,) = [
        shape for shape in drawing.shapes if isinstance(shape, Line) and shape.is_closed and shape.stroke is Stroke.CUT
    ]
    cut = ShapelyPolygon([(float(point.x), float(point.y)) for point in line.points])
    cloth = unary_union(
        [
            as_shapely(polygon).buffer(0.01)
            for shape in drawing.shapes
            if isinstance(shape, Cloth)
            for polygon in shape.polygons
        ]
    )
    assert cut.difference(cloth).area < 1e-3 * cut.area


def test_every_diagonal_row_has_its_number() -> None:
    (step,) = [step for step in sheet("plain").program.steps if isinstance(step.operation, JoinDiagonalRows)]
    labels = [shape.text for shape in draw(sheet("plain"), f"step-{step.id}").shapes if isinstance(shape, Label)]
    assert labels == ["1", "2", "3", "4"]


class TestWords:
    def test_a_beginner_is_told_which_side_goes_where(self) -> None:
        text = words("plain")
        assert "Its square corner lies level with the lower or the upper edge of the row, as the table says" in text
        assert "A corner triangle goes on with its long side along the end of the row" in text
        assert "dog ears" in text
        assert "bias" in text and "straight grain" in text
        # It is told once, for all rows.
        assert text.count("dog ears") == 1
        assert text.count("Add the triangles to the diagonal rows") == 1

    def test_which_edge_follows_the_arrangement(self) -> None:
        # Three rows of two: row 1 grows at both ends, row 2 ends at the top right corner, row 3 starts at the bottom
        # left one, row 4 shrinks at both ends. Read off a drawing of the eight blocks.
        lower, upper = (f"setting triangle, square corner at the {edge} edge" for edge in ("lower", "upper"))
        table = words("plain").split("| Diagonal rows | At the left end | At the right end\n")[1].split("\nSew with")[0]
        assert table.splitlines() == [
            f"| 1 | {lower} | {lower}",
            f"| 2 | {lower} | corner triangle",
            f"| 3 | corner triangle | {upper}",
            f"| 4 | {upper} | {upper}",
        ]

    def test_trimming_says_the_distance_and_the_size(self) -> None:
        text = words("floated")
        assert "reaches 1 1/4 in beyond the outermost corners of the blocks" in text
        text = words("plain")
        assert "just enough to bring the top to a size that a ruler shows" in text
        assert "The top should measure 17 1/2 × 26 in" in text
        assert "Your piece now measures 17 1/2 × 26 in, raw edge to raw edge." in text

    def test_triangles_left_over_are_told(self) -> None:
        # Three rows of two on point: (3 - 1) + (2 - 1) triangles, twice; two squares cut twice give eight.
        assert "each cut twice on the diagonal (8 triangles; you need 6): setting triangles" in words("framed")

    def test_end_cornerstones_are_said_to_be_cut_through(self) -> None:
        text = words("framed")
        assert "through the middle of the cornerstones at the ends" in text
        assert "longer cornerstones, one at each end of the row" in text
        assert "cornerstone" not in words("plain")

    def test_rows_of_plain_squares_are_rows_of_blocks(self) -> None:
        text = words("plain")
        assert "Sew the blocks of diagonal row 2" in text
        assert "sashing" not in text.lower()

    def test_one_block_has_no_rows_to_join(self) -> None:
        text = words("single")
        assert "There is only one row" in text
        assert "setting triangle" not in text

    def test_british_and_american(self) -> None:
        american, british = words("plain"), words("plain", "en-GB")
        assert "toward the triangles" in american
        assert "towards the triangles" in british
        assert "towards" not in american

    def test_centimetres_are_told_in_centimetres(self) -> None:
        step = words("centimetres").split(". Trim the top\n")[1].split("##")[0]
        assert "cm beyond the outermost corners" in step
        # 30 × √2 = 42.43 and 45 × √2 = 63.64: brought up to 42.5 and 64, and twice 0.75 for the seams.
        assert "The top should measure 44 × 65.5 cm" in step
        assert " in beyond" not in step


def test_triangles_of_a_one_way_print_are_chosen_by_the_print() -> None:
    triangles = PLAIN.arrangement.setting_triangles
    assert triangles is not None
    arrangement = replace(PLAIN.arrangement, setting_triangles=replace(triangles, fabric="reed"))
    fabrics = (*(fabric for fabric in PLAIN.fabrics if fabric.id != "reed"), REED)
    upright = sheet_of(replace(PLAIN, arrangement=arrangement, fabrics=fabrics))
    outcome = write_document(upright, "en")
    assert outcome.value is not None
    assert "Reed Print is a one-way print. Choose the triangles" in as_text(outcome.value)
    assert sum(isinstance(step.operation, AddSettingTriangles) for step in upright.program.steps) == 4
    assert as_text(outcome.value).count("is a one-way print. Choose the triangles") == 1


FILE = """\
format: 1
title: Sample
version: "1.0"
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
blocks:
  buoy: {finished size: 6, grid: 2 x 2, pieces: [sea: "0,0 2,0 2,2", fog: "0,0 2,2 0,2"]}
arrangement:
  {setting: on point, rows: 2, columns: 2, block: buoy, setting triangles: {fabric: fog}}
finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: sea}}
sizes: {mat: {}}
"""


def test_a_review_names_triangles_and_float_as_the_cause() -> None:
    changed = FILE.replace("setting triangles: {fabric: fog}", "setting triangles: {fabric: sea, float: 0}")
    text = write_markdown(review(FILE, changed))
    assert "the setting triangles are cut from Sea instead of Fog" in text
    assert "the float of the blocks is 0 in instead of the least that brings the top to the ruler" in text
    assert "Nothing in the pattern" not in text
