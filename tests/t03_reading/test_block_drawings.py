"""The pieces of a block fill it exactly; whatever is wrong is told with its place, its size and a way out."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from evenseam.problems import Problem
from evenseam.reading import plane
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import Polygon as Reference
from shapely import unary_union
from support.pattern_texts import SMALL, changed, pattern_from, read

PIECES = "      - sea: 0,0 4,0 4,4\n      - fog: 0,0 4,4 0,4"
Drawing = list[plane.Shape]


def problems_of(drawing: Drawing, grid: str, outline: str = "") -> tuple[Problem, ...]:
    """Read a block with these pieces."""
    lines = "\n".join(f"      - {'fog' if n % 2 else 'sea'}: {written(piece)}" for n, piece in enumerate(drawing))
    text = changed(SMALL, PIECES, lines).replace(
        "grid: 4 x 4", f"grid: {grid}" + (f"\n    outline: {outline}" if outline else "")
    )
    across, _, down = grid.partition(" x ")
    text = text.replace("finished size: 4 x 4", f"finished size: {across} x {down}")
    return tuple(problem for problem in read(text).problems if problem.code.name != "unused-fabric")


def written(shape: plane.Shape) -> str:
    """Return corners as they are written in a file."""
    return " ".join(f"{Fraction(x)},{Fraction(y)}" for x, y in shape)


def reference(shape: plane.Shape) -> Reference:
    """Return the shape for the reference library, which reckons with floating point."""
    return Reference([(x / 1, y / 1) for x, y in shape])


@st.composite
def drawings(draw: st.DrawFn) -> Drawing:
    """A 12 x 12 block cut into convex pieces by straight cuts that end on quarter squares where they can."""
    pieces: Drawing = [((0, 0), (12, 0), (12, 12), (0, 12))]
    quarter = st.integers(0, 48).map(lambda n: Fraction(n, 4))
    for _ in range(draw(st.integers(1, 7))):
        index = draw(st.integers(0, len(pieces) - 1))
        start, end = draw(st.tuples(quarter, quarter)), draw(st.tuples(quarter, quarter))
        if start == end:
            continue
        parts = [part for part in plane.split(pieces[index], start, end) if part]
        if all(is_writable(part) for part in parts):
            pieces[index : index + 1] = parts
    return pieces


def is_writable(shape: plane.Shape) -> bool:
    """Tell whether a file can say the corners: at most 64 below the line."""
    return all(Fraction(number).denominator <= 64 for corner in shape for number in corner)


@settings(max_examples=80)
@given(drawings())
def test_every_block_cut_by_straight_lines_is_good(drawing: Drawing) -> None:
    assert problems_of(drawing, "12 x 12") == ()


def told_area(problems: tuple[Problem, ...], code: str) -> Fraction:
    """Return the sum of the areas told by problems of one kind."""
    total = Fraction(0)
    for problem in problems:
        if problem.code.name == code:
            words = problem.message.replace(" grid squares", "").replace(" grid square", "")
            found = re.search(r"(?:overlap by|covers) ([\d /]+) around", words)
            assert found, problem.message
            total += sum(Fraction(part) for part in found[1].split())
    return total


@settings(max_examples=120)
@given(drawings(), st.data())
def test_overlaps_and_gaps_have_the_area_the_reference_finds(drawing: Drawing, data: st.DataObject) -> None:
    """Shapely is the reference for areas; corners on quarters keep its floating point exact enough to compare."""
    index = data.draw(st.integers(0, len(drawing) - 1))
    corner = data.draw(st.integers(0, len(drawing[index]) - 1))
    to = data.draw(st.tuples(st.integers(0, 24), st.integers(0, 24)))
    moved = list(drawing[index])
    moved[corner] = (Fraction(to[0], 2), Fraction(to[1], 2))
    piece = tuple(moved)
    assume(len(set(piece)) == len(piece) and plane.crossing(piece) is None and plane.doubled_area(piece) != 0)
    broken = [*drawing[:index], piece, *drawing[index + 1 :]]
    shapes = [reference(shape) for shape in broken]
    overlap = sum(a.intersection(b).area for n, a in enumerate(shapes) for b in shapes[:n])
    gap = 144 - unary_union(shapes).area
    problems = problems_of(broken, "12 x 12")
    names = {problem.code.name for problem in problems}
    assert ("pieces-overlap" in names) == (overlap > 1e-6)
    assert ("gap-between-pieces" in names) == (gap > 1e-6)
    if not any("about" in problem.message for problem in problems):
        assert told_area(problems, "pieces-overlap") == pytest.approx(overlap, abs=1e-6)
        assert told_area(problems, "gap-between-pieces") == pytest.approx(gap, abs=1e-6)


ROUND = (
    (1, 0),
    (2, 1),
    (1, 1),
    (1, 2),
    (0, 1),
    (-1, 2),
    (-1, 1),
    (-2, 1),
    (-1, 0),
    (-1, -1),
    (0, -1),
    (1, -2),
    (1, -1),
)
"""Directions, clockwise on the page."""


@st.composite
def bent(draw: st.DrawFn) -> plane.Shape:
    """A simple shape around a point, with at least one corner that bends inward."""
    reach = [draw(st.integers(1, 6)) for _ in ROUND]
    used = [draw(st.booleans()) or index % 4 == 0 for index in range(len(ROUND))]
    corners = [(12 + x * r, 12 + y * r) for (x, y), r, is_used in zip(ROUND, reach, used, strict=True) if is_used]
    shape = plane.without_straight_corners(tuple(corners))
    if not plane.inward_corners(shape):
        shape = ((0, 0), (6, 4), (12, 0), (12, 12), (0, 12))
    return shape


@settings(max_examples=150)
@given(bent())
def test_the_proposed_pieces_fill_the_bent_one(shape: plane.Shape) -> None:
    whole = reference(shape)
    parts = plane.convex_parts(shape)
    assert sum(plane.doubled_area(part) for part in parts) == plane.doubled_area(shape)
    assert all(not plane.inward_corners(part) for part in parts)
    assert unary_union([reference(part) for part in parts]).symmetric_difference(whole).area == pytest.approx(
        0, abs=1e-9
    )
    pieces = plane.convex_pieces(shape)
    assert sum(plane.doubled_area(piece) for piece in pieces) == plane.doubled_area(shape)
    for piece in pieces:
        assert not plane.inward_corners(piece) and plane.crossing(piece) is None
        assert reference(piece).difference(whole).area == pytest.approx(0, abs=1e-9)
    assert 2 <= len(pieces) <= 1 + len(plane.inward_corners(shape))


def test_the_pieces_can_be_pasted_into_the_file() -> None:
    """An L of three squares becomes two rectangles."""
    bent_text = "      - sea: 0,0 4,0 4,4 2,4 2,2 0,2\n      - fog: 0,2 2,2 2,4 0,4"
    (problem,) = read(changed(SMALL, PIECES, bent_text)).problems
    assert problem.message == "piece p1 bends inward at 2,2; straight seams cannot sew it in one piece"
    assert problem.hint == 'cut it into 2 pieces: "4,0 4,4 2,4 2,2" and "2,2 0,2 0,0 4,0"'
    one, other = re.findall('"([^"]+)"', problem.hint)
    mended = f"      - sea: {one}\n      - sea: {other}\n      - fog: 0,2 2,2 2,4 0,4"
    assert read(changed(SMALL, PIECES, mended)).problems == ()


def test_a_gap_can_be_filled_with_the_piece_it_proposes() -> None:
    (problem,) = read(changed(SMALL, "0,0 4,4 0,4", "0,0 3,3 0,4")).problems
    assert problem.message == "no piece covers 2 grid squares around 2.25,3.75"
    (corners,) = re.findall('"([^"]+)"', problem.hint)
    filled = changed(SMALL, "      - fog: 0,0 4,4 0,4", f"      - fog: 0,0 3,3 0,4\n      - sea: {corners}")
    assert read(filled).problems == ()


@pytest.mark.parametrize(
    ("corners", "count"),
    [
        ("0,0 4,0 4,4", 3),
        ("4,4 4,0 0,0", 3),  # against the clock
        ("0,0 4,0 4,4 0,0", 3),  # closed by hand
        ("0,0 2,0 4,0 4,2 4,4", 3),  # with corners that are none
        ("0,0  4,0   4,4", 3),
        ("0,0 4.0,0 8/2,4", 3),
        ("0,0 3-2/2,0 4,4", 3),
    ],
)
def test_ways_to_write_one_triangle(corners: str, count: int) -> None:
    piece = pattern_from(changed(SMALL, "0,0 4,0 4,4", corners)).projects[0].blocks[0].pieces[0]
    assert len(piece.outline.corners) == count
    assert piece.outline.signed_area == 8


HEXAGON = "3,0 9,0 12,5 9,10 3,10 0,5"


def test_a_hexagon() -> None:
    halves = [((3, 0), (9, 0), (12, 5), (0, 5)), ((0, 5), (12, 5), (9, 10), (3, 10))]
    assert problems_of(halves, "12 x 10", HEXAGON) == ()
    (problem,) = problems_of([((0, 0), (9, 0), (12, 5), (0, 5)), halves[1]], "12 x 10", HEXAGON)
    assert (problem.code.name, problem.message) == ("outside-outline", "piece p1 reaches outside the block at 0,0")


def test_a_star_drawn_in_one_go_crosses_itself() -> None:
    """Its corners all bend one way, so looking at the bends alone would take it for convex."""
    star = ((6, 0), (10, 12), (0, 4), (12, 4), (2, 12))
    assert {problem.code.name for problem in problems_of([star], "12 x 12")} == {"crosses-itself"}


def test_one_part_in_a_thousand_is_no_gap_and_no_overlap_too_small_to_see() -> None:
    for code, corner in (("gap-between-pieces", "3.999,4"), ("outside-outline", "4.001,4")):
        problems = read(changed(SMALL, "0,0 4,4 0,4", f"0,0 {corner} 0,4")).problems
        assert code in {problem.code.name for problem in problems}
