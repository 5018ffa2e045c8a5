"""What a drawing may be written with; every row is the same block of two triangles, sea above and fog below."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.reading.drawing import Palette
from evenseam.reading.drawing.angles import cosine, sine
from evenseam.reading.drawing.numbers import read_length
from hypothesis import given, settings
from hypothesis import strategies as st
from support.svg_texts import expected, pieces, svg

TWO = expected("sea 0,0 4,0 4,4\nfog 0,0 4,4 0,4")
SEA, FOG = 'fill="#23465f"', 'fill="#d9dcd6"'
ABOVE = f'<polygon points="0,0 40,0 40,40" {SEA}/>'
BELOW = f'<polygon points="0,0 40,40 0,40" {FOG}/>'

WAYS = {
    "polygons": ABOVE + BELOW,
    "polylines, which a fill closes": f'<polyline points="0 0 40 0 40 40" {SEA}/><polyline points="0,0,40,40,0,40" {FOG}/>',
    "first corner written again": f'<polygon points="0,0 40,0 40,40 0,0" {SEA}/>{BELOW}',
    "counter-clockwise": f'<polygon points="0,0 40,40 40,0" {SEA}/>{BELOW}',
    "a corner on a straight edge": f'<polygon points="0,0 20,0 40,0 40,40" {SEA}/>{BELOW}',
    "paths, absolute": f'<path d="M0,0 L40,0 L40,40 Z" {SEA}/><path d="M 0 0 L 40 40 0 40 z" {FOG}/>',
    "paths, relative": f'<path d="m0 0 40 0 0 40z" {SEA}/><path d="m0,0l40,40h-40z" {FOG}/>',
    "paths, level and upright": f'<path d="M0 0H40V40Z" {SEA}/><path d="M0 40V0L40 40" {FOG}/>',
    "numbers run together": f'<path d="M0-0h4e1v40z" {SEA}/><path d="M.0.0L40 40 0,40.0z" {FOG}/>',
    "curves as straight as lines": f'<path d="M0 0C10 0 40 0 40 0S40 20 40 40Q20 20 0 0z" {SEA}/>{BELOW}',
    "an arc without a radius": f'<path d="M0 0A0 5 0 0140 0V40z" {SEA}/>{BELOW}',
    "two parts in one path": f'<path d="M0 0H40V40Z" {SEA}/><path d="M0 0L40 40H0Z M5 5" {FOG}/>',
    "groups": f"<g><g>{ABOVE}</g></g><a>{BELOW}</a>",
    "fill from a group": f'<g {SEA}><polygon points="0,0 40,0 40,40"/></g>{BELOW}',
    "style attribute": '<polygon points="0,0 40,0 40,40" style="stroke:none; FILL: #23465F"/>' + BELOW,
    "style over attribute": '<polygon points="0,0 40,0 40,40" fill="red" style="fill:#23465f"/>' + BELOW,
    "class rule": '<style>.s{fill:#23465f}</style><polygon class="x s" points="0,0 40,0 40,40"/>' + BELOW,
    "rule over attribute": f'<style>polygon{{fill:#23465f}}</style><polygon fill="red" points="0,0 40,0 40,40"/><path d="M0 0L40 40H0z" {FOG}/>',
    "id over class over element": '<style>#a{fill:#23465f} .a{fill:red} polygon{fill:blue}</style><polygon id="a" class="a" points="0,0 40,0 40,40"/>'
    f'<path d="M0 0L40 40H0z" {FOG}/>',
    "later over earlier": '<style>.a{fill:red}.b{fill:#23465f}</style><polygon class="b a" points="0,0 40,0 40,40"/>' + BELOW,
    "important": '<style>.a{fill:#23465f!important}</style><polygon class="a" style="fill:red" points="0,0 40,0 40,40"/>' + BELOW,
    "element and class": '<style>path.a,polygon.a{fill:#23465f}</style><polygon class="a" points="0,0 40,0 40,40"/>' + BELOW,
    "character data": "<style><![CDATA[.a{fill:#23465f}]]></style><polygon class='a' points='0,0 40,0 40,40'/>" + BELOW,
    "rgb": '<polygon points="0,0 40,0 40,40" fill="rgb(35,70,95)"/>' + BELOW,
    "current colour": '<g color="#23465f"><polygon points="0,0 40,0 40,40" fill="currentColor"/></g>' + BELOW,
    "inherit": '<g fill="#23465f"><polygon points="0,0 40,0 40,40" style="fill:inherit"/></g>' + BELOW,
    "fabric by class": '<polygon points="0,0 40,0 40,40" class="sea" fill="pink"/>' + BELOW,
    "fabric by class of a group": '<g class="sea"><polygon points="0,0 40,0 40,40"/></g>' + BELOW,
    "fabric by id": '<polygon points="0,0 40,0 40,40" id="sea"/><polygon points="0,0 40,40 0,40" id="fog-2"/>',
    "translate": f'<g transform="translate(10,20)"><polygon points="-10,-20 30,-20 30,20" {SEA}/></g>{BELOW}',
    "scale": f'<g transform="scale(10)"><polygon points="0,0 4,0 4,4" {SEA}/></g>{BELOW}',
    "scale on each axis": f'<g transform="scale(10 -1)"><polygon points="0,0 4,0 4,-40" {SEA}/></g>{BELOW}',
    "rotate": f'<polygon transform="rotate(90)" points="0,0 0,-40 40,-40" {SEA}/>{BELOW}',
    "rotate about a point": f'<polygon transform="rotate(180 20 20)" points="40,40 0,40 0,0" {SEA}/>{BELOW}',
    "turned by any angle and back": f'<g transform="rotate(17.3)"><g transform="rotate(-17.3)">{ABOVE}</g></g>{BELOW}',
    "matrix": f'<polygon transform="matrix(0 1 1 0 0 0)" points="0,0 40,40 0,40" {SEA}/>{BELOW}',
    "skew": f'<rect transform="skewX(0)" width="0" height="9"/><polygon transform="skewY(45)" points="0,0 40,-40 40,0" {SEA}/>{BELOW}',
    "several transforms": f'<polygon transform="translate(40) , scale(-1,1)rotate(0)" points="40,0 0,0 0,40" {SEA}/>{BELOW}',
    "copies": f'<defs><polygon id="a" points="0,0 40,0 40,40"/></defs><use href="#a" {SEA}/><use href="#a" x="40" y="40" transform="translate(0 0)" {FOG} style="display:none"/>{BELOW}',
    "copies in the old spelling": f'<defs><polygon id="a" points="-40,-40 0,-40 0,0"/></defs><use xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="#a" x="40" y="40" {SEA}/>{BELOW}',
    "copies of symbols": f'<symbol id="a" viewBox="0 0 4 4"><polygon points="0,0 4,0 4,4"/></symbol><use href="#a" width="40" height="40" {SEA}/>{BELOW}',
    "a page in the page": f'<svg x="0" y="0" width="40" height="40" viewBox="0 0 4 4"><polygon points="0,0 4,0 4,4" {SEA}/></svg>{BELOW}',
    "percentages": f'<svg width="100%" height="100%" viewBox="0 0 4 4"><polygon points="0,0 4,0 4,4" {SEA}/></svg>{BELOW}',
    "what is not displayed": f'<rect width="9" height="9" display="none" fill="red"/>{ABOVE}{BELOW}',
    "what is hidden": f'<g visibility="hidden"><rect width="9" height="9" fill="red"/><g visibility="visible">{ABOVE}</g></g>{BELOW}',
    "what is seen through": f'<rect width="9" height="9" opacity="0" fill="red"/><rect width="9" height="9" fill="red" fill-opacity="0%"/>{ABOVE}{BELOW}',
    "neither fill nor stroke": f'<rect width="9" height="9" fill="none"/>{ABOVE}{BELOW}',
    "definitions": f'<defs><rect width="9" height="9"/></defs><clipPath><rect width="3" height="3"/></clipPath>{ABOVE}{BELOW}',
    "a frame round it": f'<rect width="40" height="40" fill="none" stroke="black"/>{ABOVE}{BELOW}',
    "words of drawing programs": f'<x:view xmlns:x="urn:of-some-program"><x:rect width="9"/></x:view><metadata>m</metadata><title>t</title>{ABOVE}{BELOW}',
    "a hair off the grid": f'<polygon points="0,0.12 39.9,0 40,39.95" {SEA}/>{BELOW}',
    "an outline of its own": f'<g transform="translate(100 100)"><rect class="outline" width="40" height="40"/>{ABOVE}{BELOW}</g>',
    "lines and dots": f'<g stroke="black" fill="none"><rect width="40" height="40"/><line x2="40" y2="40"/></g><circle cx="30" cy="9" r="2" {SEA}/><circle cx="9" cy="30" r="2" {FOG}/>',
    "lines without a frame": f'<path stroke="black" d="M0 0 40 40" fill="none"/><rect x="30" y="9" width="1" height="1" {SEA}/><ellipse cx="9" cy="30" rx="2" {FOG}/>',
    "lines and words": '<path stroke="black" d="M0 0 40 40" fill="none"/><text x="30" y="9">sea</text><text><tspan x="9" y="30">f</tspan>og</text>'.replace("f</tspan>og", "fog</tspan>"),
    "lines over areas": f'<path {SEA} d="M0 0H40V40z"/><path {FOG} d="M0 0V40H40z"/><path stroke="black" d="M0 0 40 40" fill="none"/>',
}  # fmt: skip


@pytest.mark.parametrize("way", WAYS)
def test_the_same_block(way: str) -> None:
    assert pieces(svg(WAYS[way])) == TWO


PAGES = {
    "inches": 'width="4in" height="4in" viewBox="0 0 40 40"',
    "millimetres": 'width="101.6mm" height="10.16cm" viewBox="0 0 40 40"',
    "points and picas": 'width="288pt" height="24pc" viewBox="0 0 40 40"',
    "quarters and pixels": 'width="406.4Q" height="384px" viewBox="0 0 40 40"',
    "no viewBox": 'width="40" height="40"',
    "no size": 'viewBox="0 0 40 40"',
    "nothing at all": "",
    "a page far larger than the block": 'viewBox="-500 -500 2000 3000"',
    "width only": 'width="50%" viewBox="0 0 40 40"',
    "old numbers": 'version="1.1" width="80" viewBox="0,0,40,40"',
    "fitted with room beside it": 'width="400" height="40" viewBox="0 0 40 40" preserveAspectRatio="xMinYMax meet"',
    "cut to size": 'width="400" height="40" viewBox="0 0 40 40" preserveAspectRatio="xMidYMid slice"',
}


@pytest.mark.parametrize("page", PAGES)
def test_the_same_page(page: str) -> None:
    assert pieces(svg(ABOVE + BELOW, PAGES[page])) == TWO


def test_a_stretched_page_stretches_the_block() -> None:
    stretched = 'width="80" height="40" viewBox="0 0 40 40" preserveAspectRatio="none"'
    assert pieces(svg(ABOVE + BELOW, stretched), "8x4") == expected("sea 0,0 8,0 8,4\nfog 0,0 8,4 0,4")


def test_a_drawing_without_the_namespace_is_one_too() -> None:
    assert pieces(f"<svg>{ABOVE}{BELOW}</svg>") == TWO
    assert pieces(f'\ufeff<?xml version="1.0" encoding="ISO-8859-1"?>\n<!-- Möwe -->{svg(ABOVE + BELOW)}') == TWO


def test_colours_of_the_pattern_file_come_first() -> None:
    palette = Palette({"#23465f": "lamp", "#808000": "fog"}, {"lamp": "#e9b44c", "fog": "#d9dcd6"})
    found = pieces(svg(ABOVE + BELOW.replace("#d9dcd6", "Olive")), palette=palette)
    assert set(found.values()) == {"lamp", "fog"}


# CSS Values and Units Module Level 3, absolute lengths, W3C: 1in = 2.54cm = 96px, 1pt = 1/72in, 1pc = 1/6in, 1Q = 1/40cm.
@pytest.mark.parametrize(
    ("text", "pixels"),
    [
        ("1in", "96"),
        ("2.54cm", "96"),
        ("25.4mm", "96"),
        ("101.6Q", "96"),
        ("72pt", "96"),
        ("6pc", "96"),
        ("96px", "96"),
        ("96", "96"),
    ],
)
def test_units(text: str, pixels: str) -> None:
    assert read_length(text) == Fraction(pixels)


@settings(max_examples=100, deadline=None)
@given(st.fractions(-720, 720, max_denominator=1000))
def test_sine_and_cosine_are_those_of_one_circle(angle: Fraction) -> None:
    assert abs(sine(angle) ** 2 + cosine(angle) ** 2 - 1) < Fraction(1, 10**28)
    assert abs(sine(2 * angle) - 2 * sine(angle) * cosine(angle)) < Fraction(1, 10**28)
