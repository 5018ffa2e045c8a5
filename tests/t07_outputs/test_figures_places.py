"""Where things go in a picture: labels in pieces, openings in seams, labels beside small pieces."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from evenseam.figures import Pen
from evenseam.figures.callouts import PITCH, Callout, draw_callouts
from evenseam.figures.clipping import Window
from evenseam.figures.drawing import LABEL_SIZE, SMALL_SIZE, Label
from evenseam.figures.folding import mirrored, mirrored_point
from evenseam.figures.frame import at, rectangle
from evenseam.figures.lettering import label_box
from evenseam.figures.scenes.turning import stitching
from evenseam.figures.spot import label_spot, middle_of
from evenseam.geometry import Polygon
from hypothesis import assume, given
from hypothesis import strategies as st
from PIL import ImageFont
from shapely.geometry import LineString, MultiPoint, box
from support.pictured import as_shapely
from support.strategies import guillotine_pieces

NUMBERS = st.integers(-40, 40).map(Fraction)
POINTS = st.builds(at, NUMBERS, NUMBERS)
WORDS = st.sampled_from(["F", "A1", "A12 L", "12 1/2 × 3 in", "iii", "WMW", "opening 4 in", "26.5 cm"])


@given(guillotine_pieces(8, 6), WORDS)
def test_a_label_stays_inside_its_piece(pieces: tuple[Polygon, ...], text: str) -> None:
    for piece in pieces:
        large = piece.scaled(Fraction(30), Fraction(30))
        found = label_spot(large, text)
        if found is not None:
            spot, size = found
            assert as_shapely(large).buffer(0.02).covers(as_shapely(label_box(Label(spot, text, size))))


def test_a_label_takes_the_roomiest_place_and_shrinks_before_it_gives_up() -> None:
    assert label_spot(rectangle(0, 0, 100, 40), "A1") == (at(50, 20), LABEL_SIZE)
    small = label_spot(rectangle(0, 0, 30, 16.7), "A1")
    assert small is not None and SMALL_SIZE <= small[1] < LABEL_SIZE
    assert label_spot(rectangle(0, 0, 30, 15), "A1") is None


@given(WORDS, st.booleans())
def test_words_take_no_more_room_than_we_think(text: str, is_bold: bool) -> None:
    """Against a real font, and a wide one: its letters stay inside the box we keep free for them."""
    name = "DejaVuSans-Bold" if is_bold else "DejaVuSans"
    try:
        font = ImageFont.truetype(f"{name}.ttf", 100)
    except OSError:
        pytest.skip("DejaVu Sans is not installed")
    left, _, right, _ = as_shapely(label_box(Label(at(0, 0), text, Fraction(100), is_bold=is_bold))).bounds
    assert font.getlength(text) <= right - left


@given(guillotine_pieces(8, 6))
def test_the_middle_of_a_piece_lies_in_it(pieces: tuple[Polygon, ...]) -> None:
    for piece in pieces:
        spot = middle_of(piece)
        assert as_shapely(piece).buffer(0.01).covers(MultiPoint([(float(spot.x), float(spot.y))]))


@given(st.lists(st.tuples(st.integers(5, 95), st.integers(5, 195)), min_size=1, max_size=10))
def test_labels_beside_the_work_stand_apart_and_not_below_it(places: list[tuple[int, int]]) -> None:
    pen = Pen({})
    callouts = [Callout(rectangle(x - 1, y - 1, 2, 2), str(number)) for number, (x, y) in enumerate(places)]
    draw_callouts(pen, callouts, Fraction(0), Fraction(100), Fraction(200))
    labels = pen.drawing().labels
    assert sorted(label.text for label in labels) == sorted(callout.text for callout in callouts)
    for is_left in (True, False):
        levels = sorted(label.at.y for label in labels if (label.at.x < 50) is is_left)
        assert all(after - before >= PITCH for before, after in pairwise(levels))
        assert all(level <= 200 for level in levels)


@pytest.mark.parametrize("edge", ["top", "right", "bottom", "left"])
def test_the_seam_round_the_layers_is_open_in_the_middle_of_its_edge(edge: str) -> None:
    width, height, seam, opening = Fraction(12), Fraction(9), Fraction(1, 4), Fraction(4)
    way, (one, other) = stitching(width, height, seam, opening, edge)
    assert abs(one.x - other.x) + abs(one.y - other.y) == opening
    middle = ((one.x + other.x) / 2, (one.y + other.y) / 2)
    expected = {
        "top": (6, seam), "right": (12 - seam, Fraction(9, 2)), "bottom": (6, 9 - seam), "left": (seam, Fraction(9, 2)),
    }  # fmt: skip
    assert middle == expected[edge]
    length = sum(LineString([(float(a.x), float(a.y)), (float(b.x), float(b.y))]).length for a, b in pairwise(way))
    assert length == pytest.approx(2 * (11.5 + 8.5) - 4)


@given(POINTS, POINTS)
def test_a_line_cut_off_at_a_window_is_what_lies_inside(start: object, end: object) -> None:
    window = Window(Fraction(-10), Fraction(-5), Fraction(20), Fraction(15))
    assume(start != end)
    line = LineString([(float(p.x), float(p.y)) for p in (start, end)])  # type: ignore[attr-defined]
    inside = line.intersection(box(-10, -5, 20, 15))
    stretch = window.cut(start, end)  # type: ignore[arg-type]
    if stretch is None:
        assert inside.length == 0
    else:
        cut = LineString([(float(p.x), float(p.y)) for p in stretch])
        assert cut.hausdorff_distance(inside) < 1e-9


@given(POINTS, POINTS, POINTS)
def test_folding_twice_changes_nothing(point: object, start: object, end: object) -> None:
    assume(start != end)
    folded = mirrored_point(point, start, end)  # type: ignore[arg-type]
    assert mirrored_point(folded, start, end) == pytest.approx(point)  # type: ignore[arg-type]
    way = (end.x - start.x, end.y - start.y)  # type: ignore[attr-defined]
    assert way[0] * (folded.x - point.x) + way[1] * (folded.y - point.y) == pytest.approx(0)  # type: ignore[attr-defined]


def test_a_folded_piece_keeps_its_area_and_its_turn() -> None:
    piece = Polygon((at(0, 0), at(4, 0), at(4, 2)))
    folded = mirrored(piece, at(0, 5), at(9, 3))
    assert folded.signed_area == pytest.approx(piece.signed_area)
