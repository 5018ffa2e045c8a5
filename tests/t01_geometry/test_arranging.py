"""Hulls, offsets, cuts and arrangements, against shapely and against each other."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from random import Random

import pytest
import shapely
from evenseam.exact import Surd, square_root, to_float
from evenseam.geometry import (
    Point,
    Polygon,
    arrange,
    convex_hull,
    lattice_points,
    length_of,
    members,
    mitred_offset,
    split_convex,
    without_straight_corners,
)
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from support.drawings import random_partition, split_squares, squares, triangle_hexagon
from support.samples import polygon
from support.sewing_check import shape_of

NUMBERS = st.fractions(-20, 20, max_denominator=12)
POINTS = st.builds(Point, NUMBERS, NUMBERS)


def in_a_line(points: list[Point]) -> bool:
    """Tell whether all points lie on one line."""
    return all((other - points[0]).cross(points[-1] - points[0]) == 0 for other in points) and all(
        (other - points[0]).cross(one - points[0]) == 0 for one in points for other in points
    )


@st.composite
def hulls(draw: st.DrawFn) -> Polygon:
    """Convex outlines."""
    points = draw(st.lists(POINTS, min_size=3, max_size=9))
    assume(not in_a_line(points))
    return convex_hull(points)


class TestConvexHull:
    """The smallest convex shape round points, clockwise on the page."""

    @given(st.lists(POINTS, min_size=3, max_size=12))
    @settings(max_examples=100)
    def test_it_is_shapely_s(self, points: list[Point]) -> None:
        assume(not in_a_line(points))
        hull = convex_hull(points)
        expected = shapely.MultiPoint([(to_float(p.x), to_float(p.y)) for p in points]).convex_hull
        assert shape_of(hull).symmetric_difference(expected).area < 1e-9
        assert hull.is_convex and hull.signed_area > 0
        assert set(hull.corners) <= set(points)
        assert without_straight_corners(hull) == hull

    def test_corners_with_roots(self) -> None:
        root = square_root(3)
        corners = [Point(Fraction(0), Fraction(0)), Point(Fraction(2), Fraction(0)), Point(Fraction(1), root)]
        inside = Point(Fraction(1), root / 2)
        assert set(convex_hull([*corners, inside]).corners) == set(corners)

    def test_points_in_a_line_have_no_hull(self) -> None:
        with pytest.raises(ValueError, match="one line"):
            convex_hull([Point(Fraction(n), Fraction(n)) for n in range(4)])


class TestStraightCorners:
    """Corners in the middle of an edge are left out and nothing else is."""

    @given(hulls(), st.randoms(use_true_random=False))
    @settings(max_examples=60)
    def test_dots_on_edges_are_left_out(self, outline: Polygon, random: Random) -> None:
        dotted: list[Point] = []
        for start, end in outline.edges:
            dotted.append(start)
            shares = sorted(Fraction(random.randrange(1, 9), 9) for _ in range(random.randrange(3)))
            dotted += [start + (end - start).scaled(share, share) for share in shares]
        turned = dotted[random.randrange(len(dotted)) :]
        turned += dotted[: len(dotted) - len(turned)]
        cleaned = without_straight_corners(Polygon(tuple(turned)))
        assert set(cleaned.corners) == set(outline.corners)
        assert len(cleaned.corners) == len(outline.corners)

    def test_inward_corners_stay(self) -> None:
        shape = polygon("0,0 4,0 4,2 2,2 2,4 0,4")
        assert without_straight_corners(shape) == shape


class TestMitredOffset:
    """Every edge moves out by the same distance; corners are mitred however sharp."""

    @given(hulls(), st.fractions(Fraction(1, 8), 2, max_denominator=8))
    @settings(max_examples=100)
    def test_it_is_shapely_s_mitred_buffer(self, outline: Polygon, distance: Fraction) -> None:
        widest = max(to_float(abs(number)) for number in outline.bounds) + 1
        expected = shape_of(outline).buffer(to_float(distance), join_style="mitre", mitre_limit=1e6)
        found = shape_of(mitred_offset(outline, distance))
        # Corners reach far out where edges are nearly in line; shapely's own error grows with that reach.
        reach = max(abs(number) for number in found.bounds) + widest
        assert shapely.hausdorff_distance(found, expected) < 1e-9 * reach**2
        assert len(found.exterior.coords) == len(outline.corners) + 1

    @given(hulls(), st.fractions(Fraction(1, 8), 2, max_denominator=8))
    @settings(max_examples=60)
    def test_every_edge_is_exactly_that_far_out(self, outline: Polygon, distance: Fraction) -> None:
        moved = mitred_offset(outline, distance)
        for (start, end), (one, other) in zip(outline.edges, moved.edges, strict=True):
            step = end - start
            for corner in (one, other):
                assert step.cross(corner - start) == -distance * length_of(step)

    def test_a_hexagon_with_roots_in_its_corners(self) -> None:
        half, tall = Fraction(1, 2), square_root(3) / 2
        hexagon = Polygon(
            tuple(
                Point(x, y)
                for x, y in ((1, 0), (half, tall), (-half, tall), (-1, 0), (-half, -tall), (half, -tall))
                for x, y in ((Fraction(x), y + Fraction(0)),)
            )
        ).clockwise()
        moved = mitred_offset(hexagon, Fraction(1, 4))
        # A hexagon moved out by d has a side longer by 2d/√3.
        step = moved.corners[1] - moved.corners[0]
        side = 1 + Fraction(1, 2) / square_root(3)
        assert step.dot(step) == side * side

    def test_an_inward_corner_is_refused(self) -> None:
        with pytest.raises(ValueError, match="convex"):
            mitred_offset(polygon("0,0 4,0 4,2 2,2 2,4 0,4"), Fraction(1, 4))


class TestLengthOf:
    """Lengths of steps are exact."""

    @given(NUMBERS, NUMBERS)
    @settings(max_examples=100)
    def test_the_square_is_right(self, across: Fraction, down: Fraction) -> None:
        length = length_of(Point(across, down))
        assert length * length == across * across + down * down
        assert length >= 0

    def test_steps_on_a_triangular_grid_are_exact(self) -> None:
        assert length_of(Point(Fraction(1, 2), square_root(3) / 2)) == 1

    def test_a_root_of_a_root_is_as_near_as_makes_no_difference(self) -> None:
        step = Point(square_root(2) + 1, Fraction(1))
        length = length_of(step)
        error = abs(length * length - step.dot(step))
        assert error < Fraction(1, 1 << 80)


class TestSplitConvex:
    """A line through the inside leaves two convex parts."""

    @given(hulls(), POINTS, POINTS)
    @settings(max_examples=100)
    def test_the_parts_are_the_whole(self, outline: Polygon, start: Point, end: Point) -> None:
        assume(start != end)
        parts = split_convex(outline, start, end)
        sides = [(end - start).cross(corner - start) for corner in outline.corners]
        assert (parts is not None) == (any(side < 0 for side in sides) and any(side > 0 for side in sides))
        if parts:
            left, right = parts
            assert left.area + right.area == outline.area
            assert left.is_convex and right.is_convex
            assert all((end - start).cross(corner - start) <= 0 for corner in left.corners)
            assert all((end - start).cross(corner - start) >= 0 for corner in right.corners)


class TestLattice:
    """Whole numbers that lie as the points do."""

    @given(st.lists(POINTS, min_size=3, max_size=8))
    @settings(max_examples=60)
    def test_turns_are_kept(self, points: list[Point]) -> None:
        whole = lattice_points(points)
        assert all(isinstance(number, int) for pair in whole for number in pair)
        for (one, other, third), (a, b, c) in zip(
            zip(points, points[1:], points[2:], strict=False),
            zip(whole, whole[1:], whole[2:], strict=False),
            strict=True,
        ):
            turn = (other - one).cross(third - one)
            found = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
            assert (turn > 0) - (turn < 0) == (found > 0) - (found < 0)

    def test_an_axis_of_multiples_of_one_root_becomes_whole(self) -> None:
        tall = square_root(3) / 2
        points = [Point(Fraction(1, 2), -tall), Point(Fraction(0), tall * 3), Point(Fraction(2), Fraction(0))]
        assert lattice_points(points) == ((1, -1), (0, 3), (4, 0))

    def test_an_axis_without_common_measure_is_left(self) -> None:
        points = [Point(Fraction(1), Fraction(1)), Point(square_root(2), Fraction(2))]
        whole = lattice_points(points)
        assert isinstance(whole[1][0], Surd)
        assert (whole[0][1], whole[1][1]) == (1, 2)


OUTLINES = {
    "squares": squares(3, 3),
    "triangles": split_squares(2, 2, lambda x, y: "/\\"),
    "hexagon": triangle_hexagon(1),
    "random": random_partition(Random(7), 20),
    "octagon about a square": [
        polygon("0,0 1,0 0,1"),
        Polygon(
            tuple(
                Point(Fraction(x), Fraction(0)) + Point(square_root(2) * y, square_root(2) * z)
                for x, y, z in ((0, 0, 0), (1, 0, 0), (1, 1, 0), (1, 1, 1), (0, 0, 1))
            )
        ),
    ],
}


@pytest.mark.parametrize("outlines", OUTLINES.values(), ids=OUTLINES)
class TestArrangement:
    """Every line along an edge, and how every piece lies to it."""

    def test_every_piece_is_on_one_side_or_crossed(self, outlines: list[Polygon]) -> None:
        arrangement = arrange(outlines)
        for line in arrangement.lines:
            assert line.left | line.right | line.crossing == arrangement.everything
            assert line.left & line.right == line.left & line.crossing == line.right & line.crossing == 0

    def test_sides_are_those_of_the_corners(self, outlines: list[Polygon]) -> None:
        arrangement = arrange(outlines)
        for line in arrangement.lines:
            start, end = (arrangement.corners[number] for number in (line.corners[0], line.corners[-1]))
            for piece, outline in enumerate(outlines):
                turns = [(end - start).cross(corner - start) for corner in outline.corners]
                found = (any(t < 0 for t in turns), any(t > 0 for t in turns))
                sets = {(True, False): line.left, (False, True): line.right, (True, True): line.crossing}
                assert sets[found] >> piece & 1

    def test_every_edge_is_on_one_line_once(self, outlines: list[Polygon]) -> None:
        arrangement = arrange(outlines)
        found = sorted(
            (edge.piece, *sorted((line.corners[edge.start], line.corners[edge.end])))
            for line in arrangement.lines
            for edge in line.edges
        )
        expected = sorted(
            (piece, *sorted((start, face[(index + 1) % len(face)])))
            for piece, face in enumerate(arrangement.outlines)
            for index, start in enumerate(face)
        )
        assert found == expected

    def test_the_row_of_a_line_runs_one_way(self, outlines: list[Polygon]) -> None:
        arrangement = arrange(outlines)
        for line in arrangement.lines:
            row = [arrangement.corners[number] for number in line.corners]
            way = row[-1] - row[0]
            assert all((after - before).dot(way) > 0 for before, after in pairwise(row))
            assert all((corner - row[0]).cross(way) == 0 for corner in row)

    def test_no_two_lines_are_one(self, outlines: list[Polygon]) -> None:
        arrangement = arrange(outlines)
        for number, line in enumerate(arrangement.lines):
            for other in arrangement.lines[:number]:
                assert len(set(line.corners) & set(other.corners)) < 2

    def test_the_outline_of_all_pieces_is_their_hull(self, outlines: list[Polygon]) -> None:
        arrangement = arrange(outlines)
        corners = [corner for outline in outlines for corner in outline.corners]
        assert set(arrangement.outline(arrangement.everything).corners) == set(convex_hull(corners).corners)


@given(st.integers(0, 1 << 70))
def test_members_are_the_bits(pieces: int) -> None:
    assert sum(1 << piece for piece in members(pieces)) == pieces
