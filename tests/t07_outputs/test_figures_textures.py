"""Textures stay inside the cloth, and cover it."""

from __future__ import annotations

import pytest
from evenseam.figures.cloth_look import Texture
from evenseam.figures.texture_marks import SPACING, texture_marks
from evenseam.geometry import Polygon
from hypothesis import given
from shapely.geometry import LineString
from shapely.ops import unary_union
from support.pictured import as_shapely
from support.strategies import guillotine_pieces

WHOLE = Polygon.rectangle(0, 0, 200, 120)  # type: ignore[arg-type]


def rings(polygons: tuple[Polygon, ...]) -> list[list[tuple[float, float]]]:
    return [[(float(corner.x) * 25, float(corner.y) * 25) for corner in polygon.corners] for polygon in polygons]


@pytest.mark.parametrize("texture", [texture for texture in Texture if texture is not Texture.CROSSES])
@given(polygons=guillotine_pieces(8, 5))
def test_marks_stay_inside(texture: Texture, polygons: tuple[Polygon, ...]) -> None:
    chosen = polygons[::2]
    cloth = unary_union([as_shapely(polygon.scaled(25, 25)) for polygon in chosen]).buffer(1e-4)  # type: ignore[arg-type]
    for x1, y1, x2, y2 in texture_marks(texture, rings(chosen)):
        assert cloth.covers(LineString([(x1, y1), (x2, y2)]))


@pytest.mark.parametrize("texture", [Texture.RISING, Texture.FALLING, Texture.LEVEL, Texture.UPRIGHT])
@given(polygons=guillotine_pieces(8, 5))
def test_lines_are_as_long_as_the_cloth_asks_for(texture: Texture, polygons: tuple[Polygon, ...]) -> None:
    """Parallel lines a spacing apart have a length of area divided by spacing, whatever pieces the cloth is in."""
    whole = texture_marks(texture, rings((WHOLE.scaled(1 / 25, 1 / 25),)))  # type: ignore[arg-type]
    parts = texture_marks(texture, rings(polygons))
    total, sum_of_parts = (sum(LineString([mark[:2], mark[2:]]).length for mark in marks) for marks in (whole, parts))
    # Lines that run along a seam belong to neither or both of the pieces: allow for one such line across.
    assert abs(total - sum_of_parts) <= 2 * 200
    assert total == pytest.approx(200 * 120 / SPACING, rel=0.06)


def test_pieces_side_by_side_share_their_lines() -> None:
    halves = (Polygon.rectangle(0, 0, 4, 5), Polygon.rectangle(4, 0, 4, 5))  # type: ignore[arg-type]
    together = texture_marks(Texture.RISING, rings(halves))
    whole = texture_marks(Texture.RISING, rings((Polygon.rectangle(0, 0, 8, 5),)))  # type: ignore[arg-type]
    assert [[round(number, 6) for number in mark] for mark in together] == [
        [round(number, 6) for number in mark] for mark in whole
    ]
