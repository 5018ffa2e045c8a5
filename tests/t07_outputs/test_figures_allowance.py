"""Seam allowances in pictures, against an independent geometry library."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.figures.allowance import raw_outline, with_allowance
from evenseam.geometry import Polygon
from hypothesis import given
from shapely.ops import unary_union
from support.pictured import as_shapely
from support.samples import polygon
from support.strategies import guillotine_pieces

SEAM = Fraction(1, 4)
OUTLINES = ("0,0 6,0 6,4 0,4", "2,0 6,0 8,3 6,6 2,6 0,3", "0,0 5,1 3,7", "0,0 4,0 6,5 1,3")


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
    grown = [as_shapely(with_allowance(piece, outline, SEAM)) for piece in cut_by_diagonal(text)]
    raw = as_shapely(raw_outline(outline, SEAM))
    assert sum(piece.area for piece in grown) == pytest.approx(raw.area)
    assert unary_union(grown).symmetric_difference(raw).area < 1e-6


@given(guillotine_pieces(6, 4))
def test_pieces_of_a_rectangle_with_allowance_fill_its_raw_size(pieces: tuple[Polygon, ...]) -> None:
    outline = Polygon.rectangle(Fraction(0), Fraction(0), Fraction(6), Fraction(4))
    grown = [as_shapely(with_allowance(piece, outline, SEAM)) for piece in pieces]
    assert sum(piece.area for piece in grown) == pytest.approx(6.5 * 4.5)
    assert unary_union(grown).area == pytest.approx(6.5 * 4.5)


def test_a_piece_inside_stays_as_it_is() -> None:
    inner = polygon("2,1 3,1 3,2 2,2")
    assert with_allowance(inner, polygon(OUTLINES[0]), SEAM) == inner
