"""Template shapes: mirrored, true to the drawing, with an exact cutting line and marks that meet."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from random import Random

import pytest
import shapely
from evenseam.exact import Unit, to_float
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block
from evenseam.piecing import MarkKind, PiecedBlock, SectionTemplate, piece_block, section_templates
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity
from support.drawings import block_of, drawn, random_partition, triangle_hexagon
from support.samples import CONVEX_LANTERN, length
from support.sewing_check import shape_of

SEAM = length("seam allowance", "1/4")


def templates_of(block: Block) -> tuple[PiecedBlock, tuple[SectionTemplate, ...]]:
    """Piece a block and shape its templates."""
    pieced = piece_block(block).value
    assert pieced is not None
    return pieced, section_templates(block, pieced, SEAM)


def sewn_place(block: Block, pieced: PiecedBlock, template: SectionTemplate, point: Point) -> tuple[float, float]:
    """Return where a point of a template lies in the sewn block, in finished lengths."""
    across, down = block.scale
    _, top, right, _ = pieced.section(template.section).outline.bounds
    return to_float(right * across - point.x), to_float(point.y + top * down)


def blocks() -> st.SearchStrategy[Block]:
    """Random blocks that can be sewn."""
    return st.builds(
        lambda random, pieces: block_of(random_partition(random, pieces)),
        st.randoms(use_true_random=False),
        st.integers(2, 24),
    )


HEXAGON = block_of(triangle_hexagon(2))
KITE = drawn("3,0 6,3 3,3\n3,0 3,3 0,3\n0,3 3,3 3,9\n3,3 6,3 3,9")
DRAWN = {"lantern": CONVEX_LANTERN, "hexagon": HEXAGON, "kite": KITE}


class TestCuttingLine:
    """The cutting line runs outside the sewing line by the seam allowance on every side, corners mitred."""

    @given(blocks())
    @settings(max_examples=30)
    def test_it_is_the_mitred_buffer(self, block: Block) -> None:
        for template in templates_of(block)[1]:
            assert_mitred(template)

    @pytest.mark.parametrize("block", DRAWN.values(), ids=DRAWN)
    def test_it_is_the_mitred_buffer_of_drawn_blocks(self, block: Block) -> None:
        for template in templates_of(block)[1]:
            assert_mitred(template)

    def test_it_is_exact(self) -> None:
        triangle = drawn("0,0 6,0 0,6\n6,0 6,6 0,6")
        (template,) = templates_of(triangle)[1]
        expected = Polygon.rectangle(Fraction(-1, 4), Fraction(-1, 4), Fraction(13, 2), Fraction(13, 2))
        assert set(template.cutting_line.corners) == set(expected.corners)


def assert_mitred(template: SectionTemplate) -> None:
    sharpest = 1000
    expected = shape_of(template.outline).buffer(0.25, join_style="mitre", mitre_limit=sharpest)
    found = shape_of(template.cutting_line)
    assert shapely.hausdorff_distance(found, expected) < 1e-9
    assert template.cutting_line.signed_area > 0


class TestMirror:
    """The template is the mirror image of the sewn section, at its finished size."""

    @given(blocks())
    @settings(max_examples=30)
    def test_every_piece_is_mirrored(self, block: Block) -> None:
        pieced, templates = templates_of(block)
        outlines = {piece.id: piece.outline for piece in block.pieces}
        across, down = (to_float(scale) for scale in block.scale)
        for template in templates:
            section = shape_of(pieced.section(template.section).outline)
            middle = (section.bounds[2], section.bounds[1])
            for piece in template.pieces:
                expected = affinity.scale(shape_of(outlines[piece.piece]), -across, down, origin=middle)
                expected = affinity.translate(expected, -middle[0], -middle[1])
                assert shape_of(piece.outline).symmetric_difference(expected).area < 1e-9
                assert piece.outline.signed_area > 0
            assert sum(piece.outline.area for piece in template.pieces) == template.outline.area

    def test_left_and_right_change_places(self) -> None:
        block = drawn("0,0 2,0 2,6 0,6\n2,0 6,0 6,6 2,6")
        (template,) = templates_of(block)[1]
        narrow = next(piece for piece in template.pieces if piece.piece == "p1")
        assert narrow.outline.bounds == (4, 0, 6, 6)

    def test_the_sewing_line_starts_at_nothing(self) -> None:
        for template in templates_of(CONVEX_LANTERN)[1]:
            left, top, right, bottom = template.outline.bounds
            assert (left, top, right, bottom) == (0, 0, template.width, template.height)


class TestSeams:
    """Inner lines are where pieces are sewn on."""

    @given(blocks())
    @settings(max_examples=20)
    def test_every_piece_but_the_first_has_its_line(self, block: Block) -> None:
        for template in templates_of(block)[1]:
            assert [seam.label for seam in template.seams] == [piece.label for piece in template.pieces[1:]]
            shapes = {piece.label: shape_of(piece.outline) for piece in template.pieces}
            for seam in template.seams:
                line = shapely.LineString(
                    [(to_float(p.x), to_float(p.y)) for p in (seam.start, seam.end)],
                )
                assert shapes[seam.label].exterior.buffer(1e-9).contains(line)


class TestLabels:
    """A label stands where its piece has the most room."""

    @given(blocks())
    @settings(max_examples=25)
    def test_the_circle_is_inside_and_as_large_as_can_be(self, block: Block) -> None:
        for template in templates_of(block)[1]:
            for piece in template.pieces:
                shape = shape_of(piece.outline)
                point = shapely.Point(to_float(piece.label_point.x), to_float(piece.label_point.y))
                depth = shape.exterior.distance(point)
                assert shape.contains(point)
                assert 0 <= to_float(piece.room) <= depth
                largest = shapely.maximum_inscribed_circle(shape, tolerance=1e-5).length
                assert to_float(piece.room) > largest - 1e-3

    def test_in_a_long_rectangle_it_stands_in_the_middle(self) -> None:
        (template,) = templates_of(drawn("0,0 6,0 6,1 0,1\n0,1 6,1 6,3 0,3"))[1]
        first = template.pieces[0]
        assert (first.label_point.x, first.room > Fraction(49, 100)) == (3, True)

    @given(blocks())
    @settings(max_examples=20)
    def test_the_grain_arrow_points_up_inside_one_piece(self, block: Block) -> None:
        for template in templates_of(block)[1]:
            tail, head = template.grain
            assert tail.x == head.x
            assert head.y < tail.y
            line = shapely.LineString([(to_float(p.x), to_float(p.y)) for p in (tail, head)])
            assert any(shape_of(piece.outline).contains(line) for piece in template.pieces)


class TestEdges:
    """Every edge is on the outside of the block or lies along a join."""

    @given(blocks())
    @settings(max_examples=30)
    def test_edges_run_round_the_outline_and_add_up_to_the_outside(self, block: Block) -> None:
        pieced, templates = templates_of(block)
        outside = 0.0
        for template in templates:
            corners = template.outline.corners
            assert [edge.start for edge in template.edges] == list(corners)
            assert [edge.end for edge in template.edges] == [*corners[1:], corners[0]]
            for edge in template.edges:
                places = [sewn_place(block, pieced, template, point) for point in (edge.start, edge.end)]
                if edge.is_outside:
                    outside += shapely.LineString(places).length
                    assert not edge.neighbours
                else:
                    assert edge.neighbours and template.section not in edge.neighbours
        across, down = (to_float(scale) for scale in block.scale)
        around = affinity.scale(shape_of(block.outline), across, down, origin=(0, 0)).length
        assert outside == pytest.approx(around, abs=1e-9)

    def test_neighbours_stand_in_the_order_of_the_edge(self) -> None:
        # Three strips of squares under one wide strip of two: the wide edge meets A, B and C.
        block = drawn(
            "0,0 2,0 2,2 0,2\n0,2 2,2 2,4 0,4\n2,0 4,0 4,1 2,1\n2,1 4,1 4,4 2,4\n4,0 6,0 6,3 4,3\n4,3 6,3 6,4 4,4\n"
            "0,4 3,4 3,6 0,6\n3,4 6,4 6,6 3,6"
        )
        pieced, templates = templates_of(block)
        below = next(t for t in templates if {p.piece for p in t.pieces} == {"p7", "p8"})
        edge = next(edge for edge in below.edges if not edge.is_outside)
        over = {t.section: min(p.piece for p in t.pieces) for t in templates}
        # Clockwise along the top of the mirrored template runs from left to right: the block's right to left.
        assert [over[name] for name in edge.neighbours] == ["p5", "p3", "p1"]
        assert pieced.joins[-1].makes == edge.join


class TestMarks:
    """A mark on one template lies on the same mark of the template it is joined to."""

    @given(blocks())
    @settings(max_examples=30)
    def test_every_mark_has_its_partner(self, block: Block) -> None:
        pieced, templates = templates_of(block)
        check_partners(block, pieced, templates)

    @pytest.mark.parametrize("block", DRAWN.values(), ids=DRAWN)
    def test_every_mark_of_drawn_blocks_has_its_partner(self, block: Block) -> None:
        check_partners(block, *templates_of(block))

    @pytest.mark.parametrize("block", DRAWN.values(), ids=DRAWN)
    def test_every_shared_stretch_has_a_mark(self, block: Block) -> None:
        for template in templates_of(block)[1]:
            for edge in template.edges:
                for neighbour in edge.neighbours:
                    assert any(neighbour in mark.sections and mark.join == edge.join for mark in template.marks)

    def test_seams_that_meet_are_marked(self) -> None:
        pieced, templates = templates_of(CONVEX_LANTERN)
        assert pieced.joins[0].match_points == (Point(Fraction(3), Fraction(6)), Point(Fraction(9), Fraction(6)))
        for template in templates:
            assert Counter(mark.kind for mark in template.marks) == {MarkKind.SEAMS_MEET: 2}
            assert {mark.point.x for mark in template.marks} == {Fraction(3, 2), Fraction(9, 2)}

    def test_a_join_without_meeting_seams_is_marked_in_its_middle(self) -> None:
        block = drawn("0,0 2,0 2,3 0,3\n2,0 6,0 6,3 2,3\n0,3 3,3 3,6 0,6\n3,3 6,3 6,6 3,6")
        for template in templates_of(block)[1]:
            assert [(mark.kind, mark.point.x) for mark in template.marks] == [(MarkKind.MIDDLE, 3)]


def check_partners(block: Block, pieced: PiecedBlock, templates: tuple[SectionTemplate, ...]) -> None:
    places = {
        template.section: [(mark.join, sewn_place(block, pieced, template, mark.point)) for mark in template.marks]
        for template in templates
    }
    rings = {
        template.section: shapely.LinearRing(
            [sewn_place(block, pieced, template, corner) for corner in template.outline.corners]
        )
        for template in templates
    }
    for template in templates:
        for mark in template.marks:
            x, y = sewn_place(block, pieced, template, mark.point)
            assert rings[template.section].distance(shapely.Point(x, y)) < 1e-9, "it lies on its own edge"
            for name in mark.sections:
                assert rings[name].distance(shapely.Point(x, y)) < 1e-9, "it lies on the neighbour's edge"
                there = [place for join, place in places[name] if join == mark.join] + list(rings[name].coords)
                assert any(abs(u - x) + abs(v - y) < 1e-9 for u, v in there), "a mark or a corner is there as well"


class TestUnits:
    """Lengths are in the unit of the edition."""

    def test_a_seam_allowance_in_another_unit_is_our_own_mistake(self) -> None:
        pieced = piece_block(CONVEX_LANTERN).value
        assert pieced is not None
        with pytest.raises(ValueError, match="CENTIMETRE"):
            section_templates(CONVEX_LANTERN, pieced, length("seam allowance", "0.75", Unit.CENTIMETRE))

    def test_a_larger_block_has_larger_templates_and_the_same_allowance(self) -> None:
        larger = replace(CONVEX_LANTERN, width=length("width", "12"), height=length("height", "18"))
        for small, large in zip(templates_of(CONVEX_LANTERN)[1], templates_of(larger)[1], strict=True):
            assert large.outline == small.outline.scaled(Fraction(2), Fraction(2))
            assert large.cutting_line.bounds[0] == small.cutting_line.bounds[0] == Fraction(-1, 4)


def test_templates_of_one_block_are_the_same_every_time() -> None:
    block = block_of(random_partition(Random(4), 20))
    first, second = (templates_of(block)[1] for _ in range(2))
    assert first == second
    assert all(one.section < other.section for one, other in pairwise(first))
