"""The simulator's own flat shapes against shapely, a general library of plane geometry."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from evenseam.exact import Number, square_root, to_float
from evenseam.pattern import CutShape, Fabric
from evenseam.sizing.simulator.patches import check_patch
from evenseam.sizing.simulator.plane import (
    Outline,
    common_side,
    outline,
    same_shape,
    sewn,
    sides,
    spread,
    touching_sides,
    upright_size,
)
from evenseam.sizing.simulator.table import Table
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import MultiPoint, Polygon, affinity
from support.mat import MAT, cut

coordinate = st.integers(0, 6)
spots = st.lists(st.tuples(coordinate, coordinate), min_size=3, max_size=7)


def exact(corners: list[tuple[int, int]]) -> list[tuple[Number, Number]]:
    return [(Fraction(x), Fraction(y)) for x, y in corners]


def floating(shape: Outline) -> Polygon:
    return Polygon([(to_float(x), to_float(y)) for x, y in shape])


@st.composite
def convex(draw: st.DrawFn) -> Outline:
    """Return the hull of some points of a small grid."""
    hull = Polygon(draw(spots)).convex_hull
    assume(hull.geom_type == "Polygon")
    shape = outline(exact([(int(x), int(y)) for x, y in hull.exterior.coords[:-1]]))
    assert shape is not None
    return shape


class TestOutlines:
    """A piece that straight seams can sew has no inward corner, does not cross itself, and has an area."""

    @settings(max_examples=400, deadline=None)
    @given(spots)
    def test_outline_is_there_exactly_for_convex_shapes(self, corners: list[tuple[int, int]]) -> None:
        drawn = Polygon(corners)
        is_convex = drawn.is_valid and drawn.area > 0 and math.isclose(drawn.convex_hull.area, drawn.area)
        assert (outline(exact(corners)) is not None) == is_convex

    def test_a_star_whose_corners_all_turn_one_way_is_no_outline(self) -> None:
        assert outline(exact([(3, 0), (5, 6), (0, 2), (6, 2), (1, 6)])) is None

    @given(convex())
    def test_either_way_round_is_the_same_shape(self, shape: Outline) -> None:
        again = outline(reversed(shape))
        assert again is not None
        assert same_shape(again, shape)


class TestSeams:
    """Two pieces are sewn along one whole side of both, and what is left must have no inward corner."""

    @settings(max_examples=300, deadline=None)
    @given(convex(), st.data())
    def test_a_shape_cut_straight_across_is_sewn_together_again(self, shape: Outline, data: st.DataObject) -> None:
        one, other = halves(shape, data)
        side = common_side(one, other)
        assert side is not None
        union = sewn(one, other, side)
        assert union is not None
        assert same_shape(union, shape)

    @settings(max_examples=300, deadline=None)
    @given(convex(), st.data())
    def test_what_is_sewn_has_the_area_of_both_and_no_inward_corner(self, first: Outline, data: st.DataObject) -> None:
        second = beyond(first, data)
        side = common_side(first, second)
        assert side is not None
        one, other = floating(first), floating(second)
        assert one.intersection(other).area < 1e-9
        together = one.union(other)
        union = sewn(first, second, side)
        assert (union is not None) == math.isclose(together.convex_hull.area, together.area)
        if union is not None:
            assert math.isclose(floating(union).area, one.area + other.area)

    @settings(max_examples=200, deadline=None)
    @given(convex(), convex())
    def test_pieces_that_only_touch_in_part_are_not_sewn(self, first: Outline, second: Outline) -> None:
        touching = touching_sides(first, second)
        shared = floating(first).boundary.intersection(floating(second).boundary).length
        if touching is None:
            assert common_side(first, second) is None
        else:
            assert shared > 0

    def test_a_long_side_is_not_sewn_to_a_short_one(self) -> None:
        short = outline(exact([(0, 0), (2, 0), (2, 2), (0, 2)]))
        long = outline(exact([(2, 0), (4, 0), (4, 3), (2, 3)]))
        assert short is not None
        assert long is not None
        assert common_side(short, long) is None
        assert touching_sides(short, long) is not None


def beyond(shape: Outline, data: st.DataObject) -> Outline:
    """Return a convex shape that has one whole side in common with another and lies beyond it."""
    start, end = data.draw(st.sampled_from(sides(shape)))
    across, down = end[0] - start[0], end[1] - start[1]
    shares = st.fractions(-1, 2, max_denominator=4)
    distances = st.fractions(Fraction(1, 4), 2, max_denominator=4)
    points = [(to_float(x), to_float(y)) for x, y in (start, end)]
    for _ in range(data.draw(st.integers(1, 3))):
        along, out = data.draw(shares), data.draw(distances)
        points.append(
            (to_float(start[0] + across * along + down * out), to_float(start[1] + down * along - across * out))
        )
    hull = convex_hull(points)
    made = outline([(Fraction(x), Fraction(y)) for x, y in hull.exterior.coords[:-1]])
    assert made is not None
    assume(common_side(shape, made) is not None)
    return made


def convex_hull(points: list[tuple[float, float]]) -> Polygon:
    hull = MultiPoint(points).convex_hull
    assert isinstance(hull, Polygon)
    return hull


def halves(shape: Outline, data: st.DataObject) -> tuple[Outline, Outline]:
    """Cut a convex shape from a point of one side to a point of another."""
    first, second = sorted(data.draw(st.lists(st.integers(0, len(shape) - 1), min_size=2, max_size=2, unique=True)))
    shares = st.fractions(Fraction(1, 8), Fraction(7, 8), max_denominator=8)
    ends = []
    for (ax, ay), (bx, by) in (sides(shape)[first], sides(shape)[second]):
        share = data.draw(shares)
        ends.append((ax + (bx - ax) * share, ay + (by - ay) * share))
    one = outline((ends[0], *shape[first + 1 : second + 1], ends[1]))
    other = outline((ends[1], *shape[second + 1 :], *shape[: first + 1], ends[0]))
    assert one is not None
    assert other is not None
    return one, other


class TestPatches:
    """A patch covers its piece with seam allowance and margin all round, laid along its seam line."""

    @settings(max_examples=200, deadline=None)
    @given(convex(), st.integers(0, 6), st.booleans())
    def test_the_patch_is_the_next_quarter_inch_round_the_allowances(
        self, shape: Outline, chosen: int, is_directional: bool
    ) -> None:
        (ax, ay), (bx, by) = sides(shape)[chosen % len(shape)]
        dx, dy = bx - ax, by - ay
        # Seam allowance and margin, 1/4 in each, are a rounded rim of 1/2 in; laid along the seam it has these bounds.
        rim = floating(shape).buffer(0.5, quad_segs=64)
        angle = 0.0 if is_directional else -math.degrees(math.atan2(dy, dx))
        left, top, right, bottom = affinity.rotate(rim, angle, origin=(0, 0)).bounds
        need = [quarter(right - left), quarter(bottom - top)]
        table = Table(MAT, MAT.seam_allowance.value)
        if is_directional:
            table.project = directional()
        assert fits(table, need, shape, (dx, dy))
        for side in (0, 1):
            for more in (Fraction(1, 8), Fraction(-1, 8), Fraction(1, 4), Fraction(-1, 4)):
                wrong = list(need)
                wrong[side] += more
                turned_fits = not is_directional and sorted(wrong) == sorted(need)
                assert fits(table, wrong, shape, (dx, dy)) == turned_fits

    @given(convex())
    def test_spread_is_measured_without_a_root(self, shape: Outline) -> None:
        along, square, length_squared = spread(shape, (Fraction(3), Fraction(1)))
        turned = affinity.rotate(floating(shape), -math.degrees(math.atan2(1, 3)), origin=(0, 0))
        left, top, right, bottom = turned.bounds
        root = to_float(square_root(Fraction(10)))
        assert length_squared == 10
        assert math.isclose(to_float(along) / root, right - left)
        assert math.isclose(to_float(square) / root, bottom - top)


def quarter(length: float) -> Fraction:
    """Round up to 1/4; what is less than a millionth above a mark is on it, for shapely counts in floats."""
    return Fraction(math.ceil(length * 4 - 1e-6), 4)


def fits(table: Table, size: list[Fraction], shape: Outline, seam: tuple[Number, Number]) -> bool:
    patch = cut("patch", "sea", f"{size[0]} x {size[1]}", 1, shape=CutShape.PATCH)
    return check_patch(table, patch, "p1", shape, seam)


def directional():  # type: ignore[no-untyped-def]
    from dataclasses import replace

    fabrics = tuple(Fabric(fabric.id, fabric.name, fabric.colour, is_directional=True) for fabric in MAT.fabrics)
    return replace(MAT, fabrics=fabrics)


@pytest.mark.parametrize(
    ("corners", "size"),
    [("0,0 3,0 3,2 0,2", (3, 2)), ("3,2 0,2 0,0 3,0", (3, 2)), ("0,0 3,1 2,4 -1,3", None), ("0,0 3,0 3,3", None)],
)
def test_only_an_upright_rectangle_has_a_width_and_a_height(corners: str, size: tuple[int, int] | None) -> None:
    shape = outline(tuple(Fraction(part) for part in pair.split(",")) for pair in corners.split())  # type: ignore[misc]
    assert shape is not None
    assert upright_size(shape) == size
