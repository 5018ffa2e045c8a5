"""Every mistake a drawing can have: «» stand round the place that must be named, and are taken out before reading."""

from __future__ import annotations

import re

import pytest
from evenseam.problems import Code, Place, SourceText, show_problems
from evenseam.reading import look_at_drawing
from evenseam.reading.drawing import codes
from evenseam.reading.drawing.elements import DEEPEST, LONGEST_DRAWING, MOST_ELEMENTS
from support.svg_texts import NAME, read

SEA, FOG = 'fill="#23465f"', 'fill="#d9dcd6"'
START = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40">\n'
ABOVE = f'<polygon points="0,0 40,0 40,40" {SEA}/>\n'
BELOW = f'<polygon points="0,0 40,40 0,40" {FOG}/>\n'
NET = '<g stroke="black" fill="none"><rect width="40" height="40"/>\n'
DOTS = f'</g><circle cx="30" cy="9" r="2" {SEA}/><circle cx="9" cy="30" r="2" {FOG}/>'


def drawing(body: str, *, start: str = START) -> str:
    return start + body + "</svg>"


CASES = {
    "closed in the wrong order": ("drawing-not-readable", drawing(f"<g>{ABOVE}{BELOW}</«s»vg>\n")),
    "cut off": ("drawing-not-readable", START + ABOVE + "«<»"),
    "a name for nothing": ("drawing-not-readable", drawing(f"{ABOVE}{BELOW}<title>«&»nbsp;</title>")),
    "a document type": (
        "drawing-with-doctype",
        '«<!DOCTYPE» svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">\n'
        + drawing(ABOVE + BELOW),
    ),
    "entities": (
        "drawing-with-doctype",
        '«<!DOCTYPE» svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>' + drawing("<title>&b;</title>"),
    ),
    "a file of the machine": (
        "drawing-with-doctype", '«<!DOCTYPE» svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>' + drawing("<text>&a;</text>"),
    ),
    "a style sheet elsewhere": ("outside-reference", '«<?»xml-stylesheet href="a.css"?>' + drawing(ABOVE + BELOW)),
    "rules elsewhere": ("outside-reference", drawing("«<style>»@import url(a.css);</style>" + ABOVE + BELOW)),
    "a copy from elsewhere": ("outside-reference", drawing(f'{ABOVE}{BELOW}«<use href="other.svg#a"/>»')),
    "a script": ("drawing-with-script", drawing(f"{ABOVE}{BELOW}«<script>»alert(1)</script>")),
    "a script in an attribute": ("drawing-with-script", drawing(f'{ABOVE}{BELOW}«<g onload="alert(1)">»</g>')),
    "too deep": ("drawing-too-large", drawing("<g>" * (DEEPEST - 1) + "«<g>»" + "</g>" * DEEPEST)),
    "no drawing": ("not-a-drawing", "«<html>»</html>"),
    "corner without its other half": ("not-a-number-in-drawing", drawing(f'{ABOVE}<polygon points="«0,0 40,40 0»" {FOG}/>')),
    "a viewBox of words": ("not-a-number-in-drawing", '<svg viewBox="«all of it»">' + ABOVE + BELOW + "</svg>"),
    "a length of words": ("not-a-number-in-drawing", drawing(f'{ABOVE}{BELOW}<rect x="«left»" {SEA}/>')),
    "a number beyond counting": ("not-a-number-in-drawing", drawing(f'{ABOVE}{BELOW}<rect x="«1e999999999»" {SEA}/>')),
    "an unknown turn": ("not-a-transform", drawing(f'{ABOVE}<g transform="«roll(9)»">{BELOW}</g>')),
    "a path that stumbles": ("not-a-path", drawing(f'{ABOVE}{BELOW}<path d="M0 0L20 «x»" {SEA}/>')),
    "a path from nowhere": ("not-a-path", drawing(f'{ABOVE}{BELOW}<path d="«L»0 0 20 20" {SEA}/>')),
    "a rule for children": ("style-left-out", drawing(f"«<style>»g > path {{fill: red}}</style>{ABOVE}{BELOW}")),
    "a curve": ("curved-edge", drawing(f'<path d="«M0 0H40V40C30 40 0 10 0 0z»" {SEA}/>{BELOW}')),
    "an arc": ("curved-edge", drawing(f'<path d="«M0 0H40V40A60 60 0 0 1 0 0z»" {SEA}/>{BELOW}')),
    "a circle": ("curved-edge", drawing(f'{ABOVE}{BELOW}«<circle cx="9" cy="30" r="3" {FOG}/>»')),
    "rounded corners": ("curved-edge", drawing(f'<rect width="40" height="20" rx="«3»" {SEA}/><rect y="20" width="40" height="20" {FOG}/>')),
    "a picture": ("no-shape-of-a-block", drawing(f'{ABOVE}{BELOW}«<image href="file:///etc/passwd" width="9" height="9"/>»')),
    "a clipped shape": ("no-shape-of-a-block", drawing(f'«<polygon clip-path="url(#a)" points="0,0 40,0 40,40" {SEA}/>»{BELOW}')),
    "words among shapes": ("no-shape-of-a-block", drawing(f'{ABOVE}{BELOW}«<text x="9" y="9">»fog</text>')),
    "a copy of nothing": ("nothing-to-use", drawing(f'{ABOVE}{BELOW}«<use href="#gull"/>»')),
    "a copy of itself": ("nothing-to-use", drawing(f'{ABOVE}{BELOW}<g id="a">«<use href="#a"/>»</g>')),
    "filled with a pattern": ("fill-is-no-colour", drawing(f'<polygon points="«0,0 40,0 40,40»" fill="url(#tartan)"/>{BELOW}')),
    "an unknown colour": ("colour-without-fabric", drawing(f'<polygon points="«0,0 40,0 40,40»" fill="#24475f"/>{BELOW}')),
    "an unknown word": ("colour-without-fabric", drawing(f'{NET}<path d="M0 0 40 40"/>{DOTS.split("<circle cx=")[0]}<circle cx="9" cy="30" r="2" {FOG}/>«<text x="30" y="9">»kelp</text>')),
    "nothing": ("nothing-drawn", "«" + START.strip() + "»" + "\n</svg>"),
    "nothing but words": ("nothing-drawn", drawing('«<text x="3">»sea</text>')),
    "a shape under all others": ("shape-under-others", drawing(f'«<rect width="40" height="40" {FOG}/>»{ABOVE}{BELOW}')),
    "two outlines": ("several-outlines", drawing(f'<rect class="outline" width="40" height="40"/>«<rect id="outline" width="40" height="40"/>»{ABOVE}{BELOW}')),
    "other proportions": ("drawing-proportions-differ", drawing(f'«<rect width="40" height="30" {SEA}/>»', start=START.replace("0 0 40 40", "0 0 40 30"))),
    "a corner off the grid": ("corner-off-grid", drawing(f'<polygon points="«0,0 40,0 40,20.7 0,20»" {SEA}/><polygon points="0,20 40,20 40,40 0,40" {FOG}/>')),
    "a sliver": ("sliver", drawing(f'{ABOVE}{BELOW}<polygon points="«0,0 40,40 20,20.1»" {FOG}/>')),
    "a loose end": ("loose-end-of-line", drawing(f'{NET}<path d="M0 0 40 40"/><path d="«M40 0 30 10»"/>{DOTS}')),
    "lines in the air": ("shape-with-a-hole", drawing(f'{NET}<path d="M0 0 40 40"/>«<rect x="25" y="5" width="10" height="10"/>»{DOTS}<circle cx="30" cy="3" r="1" {SEA}/>')),
    "an area nobody speaks of": ("area-without-fabric", drawing(f'{NET}<path d="M0 0 40 40"/><path d="«M40 0 20 20»"/>{DOTS}')),
    "an area of two fabrics": ("area-with-two-fabrics", drawing(f'{NET}<path d="M0 0 40 40"/>{DOTS}«<circle cx="5" cy="30" r="2" {SEA}/>»')),
}  # fmt: skip

MADE_HERE = {
    "file too long": ("drawing-too-large", START + " " * LONGEST_DRAWING),
    "too many elements": ("drawing-too-large", START + "<g/>" * MOST_ELEMENTS + "</svg>"),
    "copies of copies of copies": (
        "drawing-too-large",
        drawing(
            '<defs><g id="a0"><rect width="4" height="4"/></g>'
            + "".join(f'<g id="a{n}">' + f'<use href="#a{n - 1}"/>' * 10 + "</g>" for n in range(1, 9))
            + '</defs><use href="#a8"/>'
        ),
    ),
    "too many pieces": (
        "too-many-pieces-in-drawing",
        drawing("".join(f'<rect x="{x * 2}" y="{y * 2}" width="2" height="2" {SEA}/>' for x in range(20) for y in range(20))),
    ),
    "too many corners": ("drawing-too-large", drawing(f'<path d="M0 0{"L40 40L0 40" * 40}" {SEA}/>')),
    "too many lines": ("drawing-too-large", drawing("".join(f'<path stroke="red" fill="none" d="M{n} 0L0 {n}"/>' for n in range(300)))),
}  # fmt: skip


@pytest.mark.parametrize("name", CASES)
def test_the_mistake_is_told_where_it_is(name: str) -> None:
    code, marked = CASES[name]
    text = marked.replace("«", "").replace("»", "")
    before, inside = marked.partition("«")[0], re.split("[«»]", marked)[1]
    line, column = before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1
    place = Place(NAME, line, column, line, column + len(inside))
    _, report = read(text)
    told = [(problem.code.name, problem.place) for problem in report.problems]
    assert (code, place) in told, show_problems(report.as_tuple(), {NAME: SourceText(NAME, text)})
    assert {name for name, _ in told} == {code}, show_problems(report.as_tuple(), {NAME: SourceText(NAME, text)})


@pytest.mark.parametrize("name", MADE_HERE)
def test_what_is_too_much(name: str) -> None:
    code, text = MADE_HERE[name]
    _, report = read(text)
    assert [problem.code.name for problem in report.problems] == [code]


@pytest.mark.parametrize("name", {**CASES, **MADE_HERE})
def test_every_problem_says_what_to_do(name: str) -> None:
    _, report = read({**CASES, **MADE_HERE}[name][1].replace("«", "").replace("»", ""))
    for problem in report.problems:
        assert problem.hint and problem.place, problem
        assert problem.message[:1] not in "ABCDEFGHIJKLMNOPQRSTUVWXYZ", problem
        assert not problem.message.endswith("."), problem


def test_every_code_has_a_case() -> None:
    known = {value.name for value in vars(codes).values() if isinstance(value, Code)}
    assert known == {code for code, _ in (*CASES.values(), *MADE_HERE.values())}


def test_an_unknown_colour_names_the_nearest_fabric() -> None:
    _, report = read(CASES["an unknown colour"][1].replace("«", "").replace("»", ""))
    assert 'colours: {"#24475f": sea}' in report.problems[0].hint


def test_a_corner_off_the_grid_says_how_far() -> None:
    _, report = read(CASES["a corner off the grid"][1].replace("«", "").replace("»", ""))
    assert (
        report.problems[0].message
        == "a corner lies at 4,2.07 on the grid, 0.06 of a square from the nearest point, 4,2.125"
    )


def test_a_gap_is_marked_at_the_shape_that_borders_on_it_longest() -> None:
    above, left = (
        '<rect width="40" height="10" fill="#23465f"/>',
        '<rect y="20" width="40" height="20" fill="#d9dcd6"/>',
    )
    beside = f'<rect y="10" width="10" height="10" {FOG}/>'
    look = look_at_drawing(SourceText(NAME, drawing(f"{left}\n{above}\n{beside}\n")), "4x4", is_hexagon=False)
    (gap,) = (problem for problem in look.problems if problem.code.name == "gap-between-pieces")
    assert gap.place is not None and gap.place.line == 2, "the first of two that border on it alike"
    assert [(label.place.line, label.text) for label in gap.labels] == [
        (3, "piece p2 borders on it too"), (4, "piece p3 borders on it too"),
    ]  # fmt: skip


def test_a_gap_round_several_shapes_is_told_once_at_one_of_them() -> None:
    text = drawing(f'<rect width="10" height="10" {FOG}/>\n<rect x="10" width="10" height="10" {SEA}/>\n')
    look = look_at_drawing(SourceText(NAME, text), "4x4", is_hexagon=False)
    gaps = [
        problem.place.line for problem in look.problems if problem.code.name == "gap-between-pieces" and problem.place
    ]
    assert gaps == [3], "one gap, and the second shape has two sides on it"
