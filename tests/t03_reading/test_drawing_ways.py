"""Random blocks written as random drawings are read back as they were: shapes, nets, any scale, turn and spelling."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from random import Random

import pytest
from evenseam.geometry import Polygon, split_convex
from evenseam.piecing import piece_block
from evenseam.problems import SourceText, show_problems
from evenseam.reading import look_at_drawing
from evenseam.reading.drawing import Palette
from hypothesis import given, settings
from hypothesis import strategies as st
from support.svg_texts import Pieces, decimal, pieces, points, svg

GRID = 24
COLOURS = {"sea": "#23465f", "fog": "#d9dcd6", "lamp": "#e9b44c"}
Corners = list[tuple[Fraction, Fraction]]


def corners_of(outline: Polygon) -> Corners:
    return [(Fraction(str(p.x)), Fraction(str(p.y))) for p in outline.corners]


def block(random: Random, count: int) -> list[tuple[str, Corners]]:
    """Cut a square again and again, from corner to corner or where edges meet the lines of the grid."""
    cells = [Polygon.rectangle(Fraction(0), Fraction(0), Fraction(GRID), Fraction(GRID))]
    for _ in range(8 * count):
        cell = random.choice(cells)
        spots = list(cell.corners)
        for start, end in cell.edges:
            step = end - start
            axis = random.choice("xy")
            whole = random.randrange(GRID + 1)
            along = step.x if axis == "x" else step.y
            if along != 0:
                share = (whole - (start.x if axis == "x" else start.y)) / along
                if 0 < share < 1:
                    spots.append(start + step.scaled(share, share))
        one, other = random.sample(spots, 2)
        halves = split_convex(cell, one, other)
        if halves is not None and all(is_fit(half) for half in halves):
            cells.remove(cell)
            cells += halves
        if len(cells) == count:
            break
    random.shuffle(cells)
    return [(random.choice(list(COLOURS)), corners_of(cell)) for cell in cells]


def is_fit(cell: Polygon) -> bool:
    """No sliver, and no corner that a hand would take for a point of the grid beside it."""
    edges = [(end - start) for start, end in cell.edges]
    longest = max(step.dot(step) for step in edges)
    if cell.area * cell.area < longest / 4 or any(step.dot(step) < Fraction(1, 4) for step in edges):
        return False
    return all(Fraction(str(n)).denominator < 4000 for p in cell.corners for n in (p.x, p.y))


def as_expected(drawn: list[tuple[str, Corners]]) -> Pieces:
    return {frozenset(corners): fabric for fabric, corners in drawn}


def written(random: Random, fabric: str, corners: Corners, factor: Fraction) -> str:
    """Return one piece in one of many spellings, in units of `factor` to the grid square."""
    start = random.randrange(len(corners))
    corners = [*corners[start:], *corners[:start]]
    if random.random() < 0.5:
        corners.reverse()
    placed = [(x * factor, y * factor) for x, y in corners]
    look = random.choice(
        (
            f'fill="{COLOURS[fabric]}"',
            f'style="stroke:#000;fill:{COLOURS[fabric].upper()}"',
            f'class="{fabric}"',
            f'id="{fabric}"',
        )
    )
    kind = random.randrange(5)
    if kind == 0:
        return f'<polygon points="{points(placed, 6)}" {look}/>'
    if kind == 1:
        return f'<path d="M{points(placed, 6)}z" {look}/>'
    if kind == 2:
        steps = [(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(placed)]
        return f'<path d="m{points([placed[0]], 9)}l{points(steps, 9)}" {look}/>'
    if kind == 3:
        shift = (Fraction(random.randrange(-99, 99)), Fraction(random.randrange(-99, 99)))
        moved = [(x - shift[0], y - shift[1]) for x, y in placed]
        return f'<g transform="translate({shift[0]},{shift[1]})"><polygon points="{points(moved, 6)}" {look}/></g>'
    turned = [(y, -x) for x, y in placed]
    return f'<polygon transform="rotate(90)" points="{points(turned, 6)}" {look}/>'


@settings(max_examples=30, deadline=None)
@given(st.randoms(use_true_random=False), st.integers(2, 16), st.fractions(Fraction(1, 3), 90, max_denominator=50))
def test_shapes_are_read_back(random: Random, count: int, factor: Fraction) -> None:
    drawn = block(random, count)
    text = svg("".join(written(random, fabric, corners, factor) for fabric, corners in drawn), "")
    assert pieces(text, f"{GRID}x{GRID}", Palette({}, COLOURS)) == as_expected(drawn)


@settings(max_examples=30, deadline=None)
@given(st.randoms(use_true_random=False), st.integers(2, 16), st.fractions(1, 90, max_denominator=50))
def test_nets_of_lines_are_read_back(random: Random, count: int, factor: Fraction) -> None:
    """The edges of all pieces as loose lines, and a dot in each piece."""
    drawn = block(random, count)
    lines: list[str] = []
    dots: list[str] = []
    for fabric, corners in drawn:
        middle = (sum(x for x, _ in corners) / len(corners), sum(y for _, y in corners) / len(corners))
        x, y = (decimal(n * factor, 6) for n in middle)
        dots.append(f'<circle cx="{x}" cy="{y}" r=".1" class="{fabric}"/>')
        for (a, b), (c, d) in zip(corners, (*corners[1:], corners[0]), strict=True):
            ends = [decimal(n * factor, 6) for n in (a, b, c, d)]
            lines.append('<line x1="{}" y1="{}" x2="{}" y2="{}" stroke="#000"/>'.format(*ends))
    random.shuffle(lines)
    assert pieces(svg("".join(lines + dots), ""), f"{GRID}x{GRID}", Palette({}, COLOURS)) == as_expected(drawn)


TURNS = {
    "as it is": ("", lambda x, y: (x, y)),
    "a quarter turn": ("rotate(90)", lambda x, y: (GRID - y, x)),
    "a half turn": ("rotate(180 7 9)", lambda x, y: (GRID - x, GRID - y)),
    "mirrored": ("scale(-1,1)", lambda x, y: (GRID - x, y)),
    "turned and mirrored": ("matrix(0 1 1 0 5 5)", lambda x, y: (y, x)),
    "three times as large": ("scale(3)", lambda x, y: (x, y)),
    "turned there and back": ("rotate(31.7) scale(.7) rotate(-31.7)", lambda x, y: (x, y)),
}


@pytest.mark.parametrize("turn", TURNS)
@settings(max_examples=6, deadline=None)
@given(random=st.randoms(use_true_random=False), count=st.integers(2, 16))
def test_turning_changes_nothing_but_the_coordinates(turn: str, random: Random, count: int) -> None:
    """Also not in how many sections the block is sewn."""
    drawn = block(random, count)
    transform, move = TURNS[turn]
    body = "".join(f'<polygon points="{points(corners, 6)}" class="{fabric}"/>' for fabric, corners in drawn)
    plain, turned = svg(body, ""), svg(f'<g transform="{transform}">{body}</g>', "")
    grid = f"{GRID}x{GRID}"
    expected = {frozenset(move(x, y) for x, y in corners): fabric for fabric, corners in drawn}
    assert pieces(turned, grid, Palette({}, COLOURS)) == expected
    assert sections(plain, grid) == sections(turned, grid)


def sections(text: str, grid: str) -> tuple[int, int]:
    source = SourceText("drawing.svg", text)
    outcome = look_at_drawing(source, grid)
    assert outcome.value is not None and not outcome.errors, show_problems(outcome.problems, {source.name: source})
    pieced = piece_block(outcome.value.block)
    assert pieced.value is not None
    return len(pieced.value.sections), len(pieced.value.joins)


def test_one_block_in_five_spellings() -> None:
    """A little boat: shapes, millimetres with groups, a path for each piece, a net of lines, a class for each fabric."""
    sky = ["0,0 4,0 1,5 0,5", "4,0 8,0 8,5 7,5"]
    boat = {
        "fog": [*sky, "4,0 4,5 1,5"],
        "lamp": ["4,0 7,5 4,5", "0,5 8,5 6,7 2,7"],
        "sea": ["0,5 2,7 0,7", "8,5 8,7 6,7", "0,7 8,7 8,8 0,8"],
    }
    every = [(fabric, corners) for fabric, listed in boat.items() for corners in listed]
    plain = svg(
        "".join(f'<polygon points="{corners}" fill="{COLOURS[fabric]}"/>' for fabric, corners in every),
        'viewBox="0 0 8 8"',
    )
    groups = svg(
        '<g transform="translate(3 3)">'
        + "".join(
            f'<g fill="{COLOURS[fabric]}">' + "".join(f'<polygon points="{c}"/>' for c in listed) + "</g>"
            for fabric, listed in boat.items()
        )
        + "</g>",
        'width="200mm" height="200mm" viewBox="3 3 8 8"',
    )
    paths = svg(
        "".join(f'<path transform="scale(.125)" d="M{c}Z" style="fill:{COLOURS[fabric]}"/>' for fabric, c in every),
        'width="1in" height="96"',
    )
    classes = svg(
        "<style>"
        + "".join(f".x{fabric}{{fill:{colour}}}" for fabric, colour in COLOURS.items())
        + "</style>"
        + "".join(f'<polygon class="x{fabric}" points="{corners}"/>' for fabric, corners in every),
        'viewBox="-8 -8 24 24"',
    )
    net = svg(
        '<g fill="none" stroke="#000"><path d="M0 5H8M0 7H8M4 0V5M4 0 1 5M4 0 7 5M0 5 2 7M8 5 6 7"/><rect width="8" height="8"/></g>'
        '<g class="fog"><circle cx="1" cy="2"/><circle cx="7" cy="2"/><circle cx="3" cy="4"/></g>'
        '<g class="lamp"><circle cx="5" cy="4"/><circle cx="4" cy="6"/></g>'
        '<text x=".5" y="6.5">sea</text><text x="7.5" y="6.5">sea</text><text x="4" y="7.5">sea</text>',
        'viewBox="0 0 8 8"',
    )
    found = [pieces(text, "8x8", Palette({}, COLOURS)) for text in (plain, groups, paths, classes, net)]
    assert all(each == found[0] for each in found[1:])
    assert len(found[0]) == 8
