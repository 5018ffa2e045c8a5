"""Foundation patches, against shapes measured by an independent geometry library."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from evenseam.exact import square_root, to_float
from evenseam.geometry import Point
from evenseam.pattern import Derived, Method, Project
from evenseam.sizing.patches import extent_along
from hypothesis import given, settings
from shapely import Polygon as Shape
from shapely.affinity import rotate
from support.samples import CONVEX_LANTERN, MUG_RUG, polygon
from support.strategies import projects
from support.tops import sized

NEARLY = 1e-9


def _measured(outline: Shape, along: tuple[float, float]) -> tuple[float, float]:
    """Return the reach of a shape along a direction and across it."""
    laid = rotate(outline, -math.degrees(math.atan2(along[1], along[0])), origin=(0, 0))
    left, top, right, bottom = laid.bounds
    return right - left, bottom - top


@settings(max_examples=60)
@given(projects())
def test_each_patch_covers_its_piece_with_seam_and_margin_and_wastes_less_than_a_step(project: Project) -> None:
    result = sized(project)
    around = to_float(2 * (result.project.seam_allowance.value + result.project.patch_margin.value))
    step = 0.25 if result.project.unit.symbol == "in" else 0.5
    for pieced in result.blocks:
        block = result.project.block(pieced.block)
        if block.method is not Method.FOUNDATION:
            continue
        across, down = (to_float(scale) for scale in block.scale)
        pieces = {piece.id: piece for piece in block.pieces}
        for member in (member for section in pieced.sections for member in section.pieces):
            piece = pieces[member.piece]
            points = [(to_float(corner.x) * across, to_float(corner.y) * down) for corner in piece.outline.corners]
            stem = f"{block.id.replace('-', '_')}_{member.label.lower()}_patch"
            patch = [to_float(result.figure(f"{stem}_{side}").value) for side in ("width", "height")]
            if project.fabric(piece.fabric).is_directional:
                directions = [(1.0, 0.0)]
            elif member.seam is not None:
                seam = member.seam.end - member.seam.start
                directions = [(to_float(seam.x) * across, to_float(seam.y) * down)]
            else:
                edges = zip(points, points[1:] + points[:1], strict=True)
                directions = [(end[0] - start[0], end[1] - start[1]) for start, end in edges]
            needs = []
            for direction in directions:
                along, over = _measured(Shape(points), direction)
                need = [along + around, over + around]
                needs.append(need if project.fabric(piece.fabric).is_directional else sorted(need, reverse=True))
            fitting = [need for need in needs if all(n <= p + NEARLY for n, p in zip(need, patch, strict=True))]
            assert fitting, (stem, patch, needs)
            assert any(all(p < n + step + NEARLY for n, p in zip(need, patch, strict=True)) for need in fitting)


def test_extent_of_a_slanted_shape_is_exact() -> None:
    # A square of side 1 seen along its diagonal reaches √2 both ways.
    extent = extent_along(polygon("0,0 1,0 1,1 0,1"), Point(Fraction(1), Fraction(1)))
    assert extent.along == extent.across == square_root(2)


def test_lengths_of_roots_within_roots_make_a_patch_no_smaller() -> None:
    # The direction (1, 1 + √2) is √(4 + 2√2) long, which is no sum of roots; the reach is rounded outward by a hair.
    direction = Point(Fraction(1), 1 + square_root(2))
    extent = extent_along(polygon("0,0 1,0 1,1 0,1"), direction)
    true = (1 + 1 + math.sqrt(2)) / math.sqrt(4 + 2 * math.sqrt(2))
    assert 0 <= to_float(extent.along) - true < 1e-9


def test_first_piece_is_laid_on_its_best_edge() -> None:
    # The roof of the lantern, base 3 and height 3: along its base 4 × 4, along a slope 4 1/2 × 3 3/4.
    result = sized(MUG_RUG)
    assert (result.figure("lantern_b1_patch_width").text, result.figure("lantern_b1_patch_height").text) == (
        "4 in", "4 in",
    )  # fmt: skip


@pytest.mark.parametrize("side", ["width", "height"])
def test_patch_says_why(side: str) -> None:
    figure = sized(MUG_RUG).figure(f"lantern_b2_patch_{side}")
    assert isinstance(figure.because, Derived)
    assert "along its seam" in figure.because.rule and "Gail Garber" in figure.because.source
    assert figure.because.expression.value < figure.value
    assert CONVEX_LANTERN.width in _leaves(figure.because)


def _leaves(because: Derived) -> list[object]:
    found: list[object] = []
    for part in because.expression.quantities:
        found += _leaves(part.because) if isinstance(part.because, Derived) else [part]
    return found
