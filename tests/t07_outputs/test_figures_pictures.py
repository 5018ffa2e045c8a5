"""Every picture of the sample projects: drawn, valid, readable, and true to the sheet."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ElementTree
from dataclasses import replace
from fractions import Fraction
from itertools import combinations

import cairosvg
import pytest
from evenseam.exact import square_root
from evenseam.figures import Theme, draw, picture_names, to_svg
from evenseam.figures.drawing import Area, Cloth, Label, Line, Measure, Side, Stroke, Tone
from evenseam.figures.lettering import label_box
from evenseam.figures.workbench import walk
from evenseam.geometry import Point, Polygon
from evenseam.pattern import (
    AddBorderStrips,
    Finish,
    Grain,
    Hanging,
    JoinPieces,
    JoinRun,
    LayerForQuilting,
    LayerTurned,
    PieceSection,
    Program,
    Step,
    StripJoin,
    TrimPart,
)
from evenseam.sheet import compute_sheet
from hypothesis import HealthCheck, given, settings
from PIL import Image
from shapely.geometry import LineString
from shapely.ops import unary_union
from support.drawings import block_of, squares
from support.pictured import ALL_PICTURES, SIZES, as_shapely, path_points, sample_sheet, sheet_of
from support.samples import BOUND, MUG_RUG, PATTERN, POCKETS, SLEEVE, TURNED, WALL_HANGING
from support.strategies import projects

SVG = "{http://www.w3.org/2000/svg}"
HEAVIEST = 40_000
"""Bytes of one picture on the web."""


@pytest.mark.parametrize("size", SIZES)
def test_there_is_a_picture_of_everything(size: str) -> None:
    sheet = sample_sheet(size)
    names = picture_names(sheet)
    assert len(names) == len(set(names))
    assert {f"step-{step.id}" for step in sheet.program.steps} <= set(names)
    assert {f"cutting-{one.material}" for one in sheet.materials if one.plan} <= set(names)
    assert {"finished", "block-lantern", "pieces-lantern"} <= set(names)


@pytest.mark.parametrize("name", ["", "step", "step-nothing", "cutting-batting", "block-nothing", "sketch-lantern"])
def test_an_unknown_picture_is_our_own_mistake(name: str) -> None:
    with pytest.raises(KeyError):
        draw(sample_sheet("mug-rug"), name)


@pytest.mark.parametrize("theme", Theme)
@pytest.mark.parametrize(("size", "name"), ALL_PICTURES)
def test_every_picture_is_valid_and_shows_all_of_itself(size: str, name: str, theme: Theme) -> None:
    svg = to_svg(draw(sample_sheet(size), name), theme, name, "A picture.", "p")
    root = ElementTree.fromstring(svg)
    left, top, width, height = (float(number) for number in root.get("viewBox", "").split())
    assert 100 <= width <= 620 and 30 <= height <= 800
    in_patterns = {path for pattern in root.iter(f"{SVG}pattern") for path in pattern.iter(f"{SVG}path")}
    for path in root.iter(f"{SVG}path"):
        if path not in in_patterns:
            for x, y in path_points(path.get("d", "")):
                assert left <= x <= left + width and top <= y <= top + height


@pytest.mark.parametrize(("size", "name"), ALL_PICTURES)
def test_no_picture_is_heavy_on_the_web(size: str, name: str) -> None:
    assert len(to_svg(draw(sample_sheet(size), name), Theme.WEB, name, "A picture.", "p")) < HEAVIEST


@pytest.mark.parametrize("size", SIZES)
def test_ids_are_unique_among_all_pictures_of_a_page(size: str) -> None:
    sheet = sample_sheet(size)
    page = "".join(
        to_svg(draw(sheet, name), Theme.WEB, name, "A picture.", f"p{number}")
        for number, name in enumerate(picture_names(sheet))
    )
    ids = re.findall(r'\bid="([^"]+)"', page)
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("size", SIZES)
def test_pictures_drawn_again_are_the_same_to_the_byte(size: str) -> None:
    sheet = sample_sheet(size)
    for name in picture_names(sheet):
        first = to_svg(draw(sheet, name), Theme.PRINT, name, "A picture.", "p")
        # Another sheet in between, so that nothing kept from the first can help.
        draw(sample_sheet("mug-rug" if size != "mug-rug" else "lap-quilt"), "finished")
        assert to_svg(draw(sheet, name), Theme.PRINT, name, "A picture.", "p") == first


@pytest.mark.parametrize("size", SIZES)
def test_the_finished_picture_covers_the_finished_size_exactly(size: str) -> None:
    sheet = sample_sheet(size)
    drawing = draw(sheet, "finished")
    swatches = len({placed.fabric for placed in sheet.sized.placed})
    cloths = [shape for shape in drawing.shapes if isinstance(shape, Cloth)]
    polygons = [polygon for cloth in cloths[: len(cloths) - swatches] for polygon in cloth.polygons]
    assert len(polygons) == len(sheet.sized.placed)
    right = max(corner.x for polygon in polygons for corner in polygon.corners)
    bottom = max(corner.y for polygon in polygons for corner in polygon.corners)
    assert right / bottom == pytest.approx(float(sheet.sized.finished_width.value / sheet.sized.finished_height.value))
    assert sum(polygon.area for polygon in polygons) == pytest.approx(right * bottom, rel=1e-9)
    # The areas add up; together they also leave no hole.
    assert unary_union([as_shapely(polygon) for polygon in polygons]).area == pytest.approx(float(right * bottom))


@pytest.mark.parametrize(("size", "name"), ALL_PICTURES)
def test_labels_on_fabric_stay_inside_one_piece_of_it(size: str, name: str) -> None:
    drawing = draw(sample_sheet(size), name)
    pieces: dict[tuple[str, Side], list[object]] = {}
    for shape in drawing.shapes:
        if isinstance(shape, Cloth):
            pieces.setdefault((shape.fabric, shape.side), []).extend(as_shapely(polygon) for polygon in shape.polygons)
        elif isinstance(shape, Label) and shape.on_fabric is not None:
            box = as_shapely(label_box(shape))
            assert any(piece.buffer(0.1).covers(box) for piece in pieces[(shape.on_fabric, shape.side)]), shape.text


@pytest.mark.parametrize(("size", "name"), ALL_PICTURES)
def test_words_do_not_lie_over_each_other(size: str, name: str) -> None:
    boxes = [(label.text, as_shapely(label_box(label))) for label in draw(sample_sheet(size), name).labels]
    for (one, box), (other, other_box) in combinations(boxes, 2):
        assert box.intersection(other_box).area < 2, (one, other)


@pytest.mark.parametrize("size", SIZES)
def test_workpieces_measure_what_the_ruler_of_the_simulator_reads(size: str) -> None:
    """What is drawn for a step is as large as what was sewn from the cut list alone."""
    sheet = sample_sheet(size)
    benches = walk(sheet)
    compared = 0
    for measured in sheet.log.measurements:
        operation = sheet.program.step(measured.step).operation
        if isinstance(operation, (PieceSection, JoinPieces, JoinRun, AddBorderStrips)):
            made = benches[measured.step].makes
            assert (made.raw_width, made.raw_height) == (measured.width, measured.height)
            compared += 1
    assert compared >= 3


@pytest.mark.parametrize("size", SIZES)
def test_a_cutting_plan_shows_every_piece_to_one_scale(size: str) -> None:
    sheet = sample_sheet(size)
    for material in sheet.materials:
        if material.plan is None:
            continue
        drawing = draw(sheet, f"cutting-{material.material}")
        drawn = [polygon for shape in drawing.shapes if isinstance(shape, Cloth) for polygon in shape.polygons]
        planned = [piece for strip in material.plan.strips for piece in strip.pieces]
        alike = [label.text for label in drawing.labels if label.text.endswith("alike")]
        zigzags = [one for one in drawing.shapes if isinstance(one, Line) and len(one.points) == 13]
        is_broken = len(zigzags) > len(alike)
        assert is_broken or (len(drawn) == len(planned) if not alike else len(drawn) < len(planned))
        sizes = {(piece.width, piece.height) for piece in planned}
        scale = max(p.bounds[2] - p.bounds[0] for p in drawn) / float(max(width for width, _ in sizes))
        shown = {((p.bounds[2] - p.bounds[0]) / scale, (p.bounds[3] - p.bounds[1]) / scale) for p in drawn}
        known = {(round(float(w), 6), round(float(h), 6)) for w, h in sizes}
        seen = {(round(w, 6), round(h, 6)) for w, h in shown}
        if is_broken:
            # The middle of long pieces is left out: what is seen of one is shorter than it is, and never longer.
            assert {w for w, _ in seen} == {w for w, _ in known}
            assert all(any(w == wide and h < long for wide, long in known) for w, h in seen - known)
        else:
            assert seen == known
        for one, other in combinations([as_shapely(polygon) for polygon in drawn], 2):
            assert one.intersection(other).area < 1e-6


def test_folded_cloth_is_half_as_wide_and_marked_where_strips_are_cut() -> None:
    sheet = sample_sheet(SIZES[0])
    assert "folded-cloth" in picture_names(sheet)
    drawing = draw(sheet, "folded-cloth")
    assert {"fold", "both selvages together", "squared-up end"} == {label.text for label in drawing.labels}
    lines = [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.stroke is Stroke.CUT]
    wide = [
        plan
        for plan in (one.plan for one in sheet.materials)
        if plan and any(line.is_full_width for line in plan.lines)
    ]
    strips = [strip for strip in wide[0].strips if strip.width == wide[0].usable_width.value]
    assert len(lines) == min(3, len(strips))
    top = max(
        (shape for shape in drawing.shapes if isinstance(shape, Cloth)), key=lambda one: one.polygons[0].bounds[3]
    )
    left, above, _, below = top.polygons[0].bounds
    first = lines[0].points[0].x - left
    assert abs(float(strips[0].height) * 2 / float(wide[0].usable_width.value) - first / (below - above)) < 1e-6


@pytest.mark.parametrize("name", ["finished", "step-layer", "step-bind", "cutting-fog"])
def test_another_program_draws_the_printed_picture_in_all_its_colours(name: str) -> None:
    """CairoSVG knows no custom properties; what it would paint black shows as missing colours."""
    sheet = sample_sheet("wall-hanging")
    drawing = draw(sheet, name)
    svg = to_svg(drawing, Theme.PRINT, name, "A picture.", "p")
    png = cairosvg.svg2png(bytestring=svg.encode(), background_color="#ffffff")
    seen = {colour for _, colour in Image.open(io.BytesIO(png)).convert("RGB").getcolors(1 << 24)}
    for shape in drawing.shapes:
        if isinstance(shape, Cloth):
            look = drawing.looks[shape.fabric]
            colour = look.colour if shape.side is Side.RIGHT else look.wrong
            assert tuple(int(colour[start : start + 2], 16) for start in (1, 3, 5)) in seen


BIAS = replace(BOUND, binding=replace(BOUND.binding, grain=Grain.BIAS))
STRAIGHT = replace(BOUND, binding=replace(BOUND.binding, join=StripJoin.STRAIGHT))


@pytest.mark.parametrize("finish", [BIAS, STRAIGHT, BOUND, TURNED])
@pytest.mark.parametrize("hanging", [SLEEVE, POCKETS])
def test_every_finish_and_hanging_has_its_pictures(finish: Finish, hanging: Hanging) -> None:
    sheet = sheet_of(replace(WALL_HANGING, finish=finish, hanging=hanging))
    steps = [
        step for step in sheet.program.steps if not isinstance(step.operation, (PieceSection, JoinPieces, JoinRun))
    ]
    assert len(steps) >= 8
    for step in steps:
        drawing = draw(sheet, f"step-{step.id}")
        boxes = [(label.text, as_shapely(label_box(label))) for label in drawing.labels]
        for (one, box), (other, other_box) in combinations(boxes, 2):
            assert box.intersection(other_box).area < 2, (step.id, one, other)
        shown = {(shape.fabric, shape.side) for shape in drawing.shapes if isinstance(shape, Cloth)}
        if isinstance(step.operation, LayerTurned):
            assert ("reed", Side.WRONG) in shown and ("sea", Side.RIGHT) in shown
        if isinstance(step.operation, LayerForQuilting):
            assert ("reed", Side.RIGHT) in shown and ("sea", Side.WRONG) in shown


def test_a_unit_is_trimmed_to_the_size_it_must_have() -> None:
    sheet = sample_sheet("mug-rug")
    join = next(step for step in sheet.program.steps if isinstance(step.operation, JoinPieces))
    pieces = join.operation.first_pieces + join.operation.second_pieces  # type: ignore[union-attr]
    operation = TrimPart("lantern", join.makes, pieces, sheet.project.seam_allowance)
    trim = Step("trim", operation, "trimmed", 1, join.measures)
    longer = replace(sheet, program=Program((*sheet.program.steps[: sheet.program.steps.index(join) + 1], trim)))
    drawing = draw(longer, "step-trim")
    cut = next(shape for shape in drawing.shapes if isinstance(shape, Line) and shape.stroke is Stroke.CUT)
    left, top, right, bottom = Polygon(cut.points).bounds
    width, height = join.measures  # type: ignore[misc]
    assert (right - left) / (bottom - top) == pytest.approx(float(width.value / height.value))
    # There is cloth beyond the cut on every side: that is what is trimmed away.
    cloth = unary_union([as_shapely(p) for shape in drawing.shapes if isinstance(shape, Cloth) for p in shape.polygons])
    assert cloth.contains(as_shapely(Polygon(cut.points)).buffer(1))
    assert {measure.text for measure in drawing.shapes if isinstance(measure, Measure)} == {width.text, height.text}


def test_binding_of_one_strip_is_not_drawn_joined() -> None:
    short = sheet_of(replace(MUG_RUG, borders=(), finish=BOUND))
    assert short.cuts.cut("binding").height.value <= short.project.usable_width.value
    joined = draw(sample_sheet("wall-hanging"), "step-make-binding")
    assert len(joined.shapes) > len(draw(short, "step-make-binding").shapes)


def test_a_block_with_roots_in_its_corners_can_be_drawn() -> None:
    """Equilateral triangles: every corner lies on a multiple of the square root of three."""
    root = square_root(3)
    zero, one, two, three, four = (Fraction(number) for number in range(5))
    middle = Point(two, root)
    lower = [Point(one, zero), Point(three, zero), Point(four, root)]
    triangles = [Polygon((lower[0], lower[1], middle)), Polygon((lower[1], lower[2], middle))]
    ends = [Polygon((Point(zero, zero), lower[0], Point(zero, root))), Polygon((lower[1], Point(four, zero), lower[2]))]
    rest = [Polygon((lower[0], middle, Point(zero, root)))]
    block = block_of([*triangles, *ends, *rest], side="8")
    positions = ((replace(MUG_RUG.arrangement.positions[0][0], block=block.id),),)
    arrangement = replace(MUG_RUG.arrangement, positions=positions)
    sheet = sheet_of(replace(MUG_RUG, blocks=(block,), arrangement=arrangement))
    for name in picture_names(sheet):
        ElementTree.fromstring(to_svg(draw(sheet, name), Theme.PRINT, name, "A picture.", "p"))
    cloths = [shape for shape in draw(sheet, f"block-{block.id}").shapes if isinstance(shape, Cloth)]
    drawn = [polygon for cloth in cloths[:3] for polygon in cloth.polygons]
    assert len(drawn) == 5
    wide = max(polygon.bounds[2] for polygon in drawn)
    assert sum(as_shapely(polygon).area for polygon in drawn) == pytest.approx(wide * wide * 3**0.5 / 4)


def test_dots_mark_on_both_parts_where_their_seams_meet() -> None:
    block = block_of(squares(2, 2))
    positions = ((replace(MUG_RUG.arrangement.positions[0][0], block=block.id),),)
    arrangement = replace(MUG_RUG.arrangement, positions=positions)
    sheet = sheet_of(replace(MUG_RUG, blocks=(block,), arrangement=arrangement))
    (join,) = sheet.sized.pieced(block.id).joins
    (meeting,) = join.match_points
    assert (meeting.x, meeting.y) == (1, 1)
    (step,) = (step for step in sheet.program.steps if isinstance(step.operation, JoinPieces))
    drawing = draw(sheet, f"step-{step.id}")
    dots = [
        as_shapely(polygon).centroid
        for shape in drawing.shapes
        if isinstance(shape, Area) and shape.tone is Tone.DOT
        for polygon in shape.polygons
    ]
    seams = [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.stroke is Stroke.SEWN]
    middles = [LineString([(float(p.x), float(p.y)) for p in seam.points]).centroid for seam in seams[:2]]
    assert len(dots) == 2
    # The seam between the squares is 2 long and the dot lies in its middle, on each part's own edge.
    assert all(min(dot.distance(middle) for dot in dots) < 0.01 for middle in middles)
    assert "match the dots" in {label.text for label in drawing.labels}


@settings(max_examples=8, suppress_health_check=list(HealthCheck))
@given(projects())
def test_every_picture_of_any_project_can_be_drawn(project: object) -> None:
    sheet = compute_sheet(PATTERN, project).value  # type: ignore[arg-type]
    if sheet is None:
        return
    for name in picture_names(sheet):
        drawing = draw(sheet, name)
        ElementTree.fromstring(to_svg(drawing, Theme.WEB, name, "A picture.", "p"))
        assert drawing.shapes
