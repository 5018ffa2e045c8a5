"""Short paths read back, and shapes gathered into runs without a change of what lies over what."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest
from evenseam.figures import Theme, draw, to_svg
from evenseam.figures.cloth_look import looks_of
from evenseam.figures.drawing import Area, Cloth, Drawing, Label, Line, Pen, Shape, Stroke, Tone
from evenseam.figures.frame import at, rectangle
from evenseam.figures.gathering import gathered
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.svg_ways import short_ways
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon as Outline
from shapely import unary_union
from support.pictured import ALL_PICTURES, path_points, sample_sheet
from support.samples import FOG, SEA

NET = 0.01
"""Corners are written to a hundredth of a drawing unit, from a first corner that is itself written so."""

places = st.floats(-900, 900, allow_nan=False, allow_infinity=False)
rings = st.lists(st.builds(Point, places, places), min_size=2, max_size=9)


class TestShortWays:
    """A path written by steps leads through the same corners."""

    @settings(max_examples=300, deadline=None)
    @given(st.lists(rings, min_size=1, max_size=5), st.booleans())
    def test_read_back_every_corner_is_where_it_was(self, ways, is_closed):
        read = iter(path_points(short_ways(ways, is_closed=is_closed)))
        for ring in ways:
            begin = None
            corners = [*ring, ring[0]] if is_closed else ring
            for corner in corners:
                # A step of no length is still one.
                x, y = next(read)
                begin = begin or (x, y)
                assert abs(x - corner.x) <= NET + 1e-6 and abs(y - corner.y) <= NET + 1e-6
            assert not is_closed or (x, y) == begin
        assert next(read, None) is None

    @settings(max_examples=100, deadline=None)
    @given(st.lists(st.builds(Point, st.integers(0, 90), st.integers(0, 90)), min_size=2, max_size=6), places, places)
    def test_one_shape_has_one_text_wherever_it_lies(self, ring, across, down):
        first = short_ways([ring], is_closed=True)
        other = short_ways([[Point(x + across, y + down) for x, y in ring]], is_closed=True)
        assert first.lstrip("M-.0123456789 ") == other.lstrip("M-.0123456789 ")

    def test_texts_are_short(self):
        square = rectangle(10, 20.5, 4, 4).corners
        assert short_ways([square], is_closed=True) == "M10 20.5h4v4h-4z"
        beside = rectangle(14.25, 20.5, 4, 4).corners
        assert short_ways([square, beside], is_closed=True) == "M10 20.5h4v4h-4zm4.25 0h4v4h-4z"
        assert short_ways([[at(0, 0), at(-0.5, 0.25), at(1, 1)]], is_closed=False) == "M0 0l-.5 .25 1.5 .75"


def outline(shape: Shape) -> Outline | None:
    """Return the ground a shape covers, less the hair by which neighbours may reach into each other."""
    if isinstance(shape, (Cloth, Area)):
        return unary_union([Outline(polygon.corners) for polygon in shape.polygons]).buffer(-0.7)
    return None


def order_of(shapes: list[Shape]) -> dict[int, int]:
    return {id(shape): number for number, shape in enumerate(shapes)}


class TestGathered:
    """Shapes that look alike come together, none is lost, and none slips under or over another."""

    @pytest.mark.parametrize(("size", "name"), ALL_PICTURES)
    def test_pictures_show_what_they_showed(self, size, name):
        shapes = list(draw(sample_sheet(size), name).shapes)
        runs = gathered(shapes)
        drawn = [shape for run in runs for shape in run]
        assert sorted(map(id, drawn)) == sorted(map(id, shapes)) and len(runs) <= len(shapes)
        after = order_of(drawn)
        grounds = [(shape, outline(shape)) for shape in shapes]
        for number, (lower, below) in enumerate(grounds):
            for upper, above in grounds[number + 1 :]:
                if below is not None and above is not None and after[id(upper)] < after[id(lower)]:
                    assert not below.intersects(above)

    def test_what_lies_over_something_else_stays_over_it(self):
        low, over, high = (
            Cloth((rectangle(x, 0, 40, 40),), fabric.id) for x, fabric in ((0, SEA), (20, FOG), (30, SEA))
        )
        assert gathered([low, over, high]) == [[low], [over], [high]]
        apart = Cloth((rectangle(90, 0, 40, 40),), SEA.id)
        assert gathered([low, over, apart]) == [[low, apart], [over]]

    def test_pieces_side_by_side_come_together_also_where_their_bounds_cross(self):
        one = Cloth((Polygon((at(0, 0), at(40, 0), at(0, 40))),), SEA.id)
        line = Line((at(200, 0), at(200, 40)), Stroke.CUT)
        other = Cloth((Polygon((at(42, 0), at(42, 40), at(2, 40))),), SEA.id)
        under = Cloth((Polygon((at(32, 0), at(32, 40), at(2, 40))),), SEA.id)
        assert gathered([one, line, other]) == [[one, other], [line]]
        assert gathered([one, line, under]) == [[one], [line], [under]]

    def test_words_on_a_piece_stay_on_it(self):
        under = Label(at(20, 20), "A")
        cloth, over = Area((rectangle(0, 0, 40, 40),), Tone.PAPER), Label(at(20, 20), "B")
        assert gathered([under, cloth, over]) == [[under], [cloth], [over]]


def test_single_signs_are_one_text_with_a_place_for_each():
    pen = Pen(looks_of((SEA,)))
    spots = [(10, 20, "1"), (30, 20, "&"), (50, 28.5, "2"), (80, 20, "10")]
    for x, y, text in spots:
        pen.label(at(x, y), text, size=10)
    svg = ElementTree.fromstring(to_svg(Drawing(pen.drawing().shapes, pen.looks), Theme.WEB, "t", "d", "p"))
    single, longer = svg.iter("{http://www.w3.org/2000/svg}text")
    assert (single.text, longer.text) == ("1&2", "10")
    assert single.get("x") == "10 30 50" and single.get("y") == "23.5 23.5 32"
