"""The two themes of a picture as SVG text."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree
from fractions import Fraction

import pytest
from evenseam.figures import Pen, Theme, to_svg, web_styles
from evenseam.figures.cloth_look import looks_of
from evenseam.figures.drawing import Side, Stroke, Tone
from evenseam.figures.frame import at, rectangle
from evenseam.figures.palette import SHADES
from evenseam.figures.plane import decimal
from evenseam.figures.svg_ink import SvgInk
from hypothesis import given
from hypothesis import strategies as st
from support.samples import FOG, LAMP, REED, SEA

SVG = "{http://www.w3.org/2000/svg}"
FABRICS = (SEA, FOG, LAMP, REED)


def everything() -> Pen:
    """Return a pen that has drawn one of each."""
    pen = Pen(looks_of(FABRICS))
    for number, fabric in enumerate(FABRICS):
        pen.cloth((rectangle(40 * number, 0, 40, 40),), fabric.id)
        pen.cloth((rectangle(40 * number, 40, 40, 40),), fabric.id, Side.WRONG)
        pen.label(at(40 * number + 20, 20), "A1", on_fabric=fabric.id)
    for number, tone in enumerate(Tone):
        pen.area(rectangle(40 * number, 80, 40, 40), tone)
    for number, stroke in enumerate(Stroke):
        pen.line((at(0, 130 + 5 * number), at(160, 130 + 5 * number)), stroke)
    pen.curve(at(0, 200), at(40, 220), at(80, 200), Stroke.FOLD)
    pen.arrow(at(0, 240), at(80, 240), at(40, 220))
    pen.measure(at(0, 260), at(160, 260), "12 1/2 in")
    pen.measure(at(200, 0), at(200, 80), "6 in")
    pen.label(at(80, 280), "Fog & <Sea>", has_ground=True, is_bold=True)
    pen.label(at(190, 200), "selvage", is_upward=True)
    return pen


def test_a_picture_says_what_it_is() -> None:
    svg = to_svg(everything().drawing(), Theme.WEB, "Row & row", "Two <rows>", "p1")
    root = ElementTree.fromstring(svg)
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "p1-title p1-desc"
    assert root.find(f"{SVG}title").text == "Row & row"  # type: ignore[union-attr]
    assert root.find(f"{SVG}title").get("id") == "p1-title"  # type: ignore[union-attr]
    assert root.find(f"{SVG}desc").text == "Two <rows>"  # type: ignore[union-attr]


def test_print_has_nothing_but_plain_shapes_in_literal_colours() -> None:
    svg = to_svg(everything().drawing(), Theme.PRINT, "t", "d", "p")
    names = {element.tag.removeprefix(SVG) for element in ElementTree.fromstring(svg).iter()}
    assert names <= {"svg", "title", "desc", "path", "rect", "text"}
    assert not re.search(r"var\(|class=|style=|url\(|hsl|rgb", svg)
    colours = re.findall(r'(?:fill|stroke)="([^"]+)"', svg)
    assert all(colour == "none" or re.fullmatch(r"#[0-9a-f]{6}", colour) for colour in colours)


def test_the_web_puts_every_fabric_behind_a_property_with_its_colour_in_reserve() -> None:
    svg = to_svg(everything().drawing(), Theme.WEB, "t", "d", "p")
    for fabric in FABRICS:
        assert f"var(--fabric-{fabric.id},{fabric.colour})" in svg
        assert f"var(--fabric-{fabric.id}-wrong," in svg
        assert f"var(--fabric-{fabric.id}-ink," in svg


def test_every_property_of_the_page_is_set_by_the_stylesheet_for_day_and_night() -> None:
    svg = to_svg(everything().drawing(), Theme.WEB, "t", "d", "p")
    used = set(re.findall(r"var\(--figure-([a-z]+),", svg))
    assert used == {"ink", "quiet", "board"}
    for shade in SHADES:
        assert f"--figure-{shade.name}:{shade.light}" in web_styles()
        assert f"--figure-{shade.name}:{shade.dark}" in web_styles()


@pytest.mark.parametrize("theme", Theme)
def test_ids_are_unique_and_begin_with_the_prefix(theme: Theme) -> None:
    svg = to_svg(everything().drawing(), theme, "t", "d", "mug-rug-7")
    ids = re.findall(r'\bid="([^"]+)"', svg)
    assert len(ids) == len(set(ids))
    assert all(id.startswith("mug-rug-7-") for id in ids)
    referred = re.findall(r'href="#([^"]+)"', svg) + re.findall(r"url\(#([^)]+)\)", svg)
    assert set(referred) <= set(ids)


@pytest.mark.parametrize("theme", Theme)
def test_the_same_drawing_gives_the_same_text(theme: Theme) -> None:
    assert len({to_svg(everything().drawing(), theme, "t", "d", "p") for _ in range(3)}) == 1


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.0, "0"), (-0.001, "0"), (2.0, "2"), (2.50, "2.5"), (1 / 3, "0.33"), (-7.126, "-7.13"), (100.0, "100")],
)
def test_decimals_are_short_and_always_written_the_same_way(value: float, text: str) -> None:
    assert SvgInk(Theme.PRINT, {}, "p").number(value) == text


def test_each_label_is_one_text_in_one_piece() -> None:
    drawing = everything().drawing()
    root = ElementTree.fromstring(to_svg(drawing, Theme.PRINT, "t", "d", "p"))
    texts = [element.text for element in root.iter(f"{SVG}text")]
    assert texts.count("A1") == 4
    assert "Fog & <Sea>" in texts and "12 1/2 in" in texts
    assert all(len(element) == 0 for element in root.iter(f"{SVG}text"))


def test_a_frame_decides_what_is_seen() -> None:
    pen = everything()
    root = ElementTree.fromstring(to_svg(pen.drawing(rectangle(10, 20, 30, 40)), Theme.PRINT, "t", "d", "p"))
    assert root.get("viewBox") == "10 20 30 40"


@pytest.mark.parametrize(
    ("value", "written"),
    [(0.125, "0.13"), (0.125 - 1e-10, "0.13"), (0.1249, "0.12"), (-0.125, "-0.12"), (-0.004, "0"), (7.0, "7"), (-3.10, "-3.1")],
)  # fmt: skip
def test_half_way_goes_up_whatever_the_last_decimal(value: float, written: str) -> None:
    assert SvgInk(Theme.PRINT, {}, "p").number(value) == written


@given(st.lists(st.integers(1, 999), min_size=2, max_size=12), st.integers(1, 30))
def test_places_taken_onto_a_picture_meet_however_they_were_added(parts: list[int], divisor: int) -> None:
    widths = [decimal(Fraction(part, divisor)) for part in parts]
    forwards = backwards = 0.0
    for width in widths:
        forwards += width
    for width in reversed(widths):
        backwards += width
    assert forwards == backwards
    assert abs(forwards - float(Fraction(sum(parts), divisor))) < 1e-8
