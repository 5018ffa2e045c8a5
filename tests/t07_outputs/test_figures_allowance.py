"""Seam allowances in pictures, against an independent geometry library."""

from __future__ import annotations

import pytest
from evenseam.figures.allowance import raw_outline, with_allowance
from evenseam.figures.plane import Polygon, shaped
from evenseam.geometry import Polygon as ExactPolygon
from hypothesis import given
from shapely.ops import unary_union
from support import samples
from support.pictured import as_shapely
from support.strategies import guillotine_pieces

SEAM = 0.25
OUTLINES = ("0,0 6,0 6,4 0,4", "2,0 6,0 8,3 6,6 2,6 0,3", "0,0 5,1 3,7", "0,0 4,0 6,5 1,3")


def polygon(text: str) -> Polygon:
    return shaped(samples.polygon(text))


@pytest.mark.parametrize("text", OUTLINES)
def test_the_raw_outline_is_the_mitred_offset(text: str) -> None:
    outline = polygon(text)
    expected = as_shapely(outline).buffer(0.25, join_style="mitre", mitre_limit=50)
    assert as_shapely(raw_outline(outline, SEAM)).symmetric_difference(expected).area < 1e-6


def cut_by_diagonal(text: str) -> tuple[Polygon, Polygon]:
    corners = polygon(text).corners
    return Polygon(corners[:3]), Polygon((corners[0], *corners[2:]))


@pytest.mark.parametrize("text", [OUTLINES[0], OUTLINES[1], OUTLINES[3]])
def test_pieces_with_allowance_fill_the_raw_outline(text: str) -> None:
    outline = polygon(text)
    grown = [as_shapely(piece) for piece in with_allowance(cut_by_diagonal(text), outline, SEAM)]
    raw = as_shapely(raw_outline(outline, SEAM))
    assert sum(piece.area for piece in grown) == pytest.approx(raw.area)
    assert unary_union(grown).symmetric_difference(raw).area < 1e-6


@given(guillotine_pieces(6, 4))
def test_pieces_of_a_rectangle_with_allowance_fill_its_raw_size(pieces: tuple[ExactPolygon, ...]) -> None:
    outline = Polygon.rectangle(0, 0, 6, 4)
    grown = [as_shapely(piece) for piece in with_allowance(map(shaped, pieces), outline, SEAM)]
    assert sum(piece.area for piece in grown) == pytest.approx(6.5 * 4.5)
    assert unary_union(grown).area == pytest.approx(6.5 * 4.5)


def test_a_piece_inside_stays_as_it_is() -> None:
    inner = polygon("2,1 3,1 3,2 2,2")
    assert with_allowance([inner], polygon(OUTLINES[0]), SEAM) == (inner,)


def test_a_seam_runs_straight_on_to_the_raw_edge() -> None:
    left, right = polygon("0,0 2,0 3,4 0,4"), polygon("2,0 6,0 6,4 3,4")
    grown = with_allowance([left, right], polygon(OUTLINES[0]), SEAM)
    # The seam falls 4 for every 1 across: 1/16 further across at a raw edge 1/4 away.
    assert {(31 / 16, -SEAM), (49 / 16, 4 + SEAM)} <= {(corner.x, corner.y) for corner in grown[0].corners}


def test_seams_that_end_in_one_point_share_a_line_straight_out() -> None:
    pieces = [polygon("0,0 3,0 0,4"), polygon("3,0 6,4 0,4"), polygon("3,0 6,0 6,4")]
    grown = with_allowance(pieces, polygon(OUTLINES[0]), SEAM)
    assert (3, -SEAM) in {(corner.x, corner.y) for corner in grown[0].corners}
    assert (3, -SEAM) in {(corner.x, corner.y) for corner in grown[2].corners}
