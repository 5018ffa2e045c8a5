"""What is drawn can be seen: contrast of letters and lines, computed."""

from __future__ import annotations

import pytest
from evenseam.figures.cloth_look import Texture, look_of, looks_of
from evenseam.figures.colour import contrast, luminance, mixed, readable_on
from evenseam.figures.palette import DEEP, GROUND, HALO, RUST, SHADES, STROKES, TONES, Shade
from evenseam.pattern import Fabric
from hypothesis import given
from hypothesis import strategies as st

COLOURS = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # Web Content Accessibility Guidelines 2.2, W3C, 2023: black on white is 21 to 1, a colour on itself 1 to 1.
        ("#000000", "#ffffff", 21.0),
        ("#8a8a8a", "#8a8a8a", 1.0),
        # Computed by hand from the formula there: luminance of pure red 0.2126, of pure green 0.7152, of blue 0.0722.
        ("#ff0000", "#ffffff", 1.05 / 0.2626),
        ("#00ff00", "#000000", 0.7652 / 0.05),
        ("#0000ff", "#ffffff", 1.05 / 0.1222),
    ],
)
def test_contrast_follows_the_published_formula(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.0005)
    assert contrast(other, one) == contrast(one, other)


@given(COLOURS)
def test_letters_and_outlines_can_be_read_on_any_fabric(colour: str) -> None:
    look = look_of(Fabric("sea", "Deep Sea", colour), "D", Texture.DOTS)
    assert contrast(look.ink, look.colour) >= 4.5
    assert contrast(look.line, look.colour) >= 3
    assert contrast(look.wrong_ink, look.wrong) >= 4.5
    assert contrast(look.wrong_line, look.wrong) >= 3


@given(COLOURS)
def test_texture_marks_stay_quiet_behind_letters(colour: str) -> None:
    look = look_of(Fabric("sea", "Deep Sea", colour), "D", Texture.RISING)
    assert 1.05 <= contrast(look.mark, look.colour) <= 3
    assert contrast(look.ink, look.mark) >= 2.5


@given(COLOURS)
def test_the_wrong_side_is_paler(colour: str) -> None:
    look = look_of(Fabric("sea", "Deep Sea", colour), "D", Texture.RISING)
    # Only cloth as white as the wrong side is drawn with cannot become paler.
    assert luminance(look.wrong) >= min(luminance(look.colour), luminance("#fffaf0")) - 0.01


@given(COLOURS, COLOURS, st.floats(0, 1))
def test_a_mixture_lies_between(one: str, other: str, share: float) -> None:
    made = mixed(one, other, share)
    for start in (1, 3, 5):
        low, high = sorted(int(colour[start : start + 2], 16) for colour in (one, other))
        assert low <= int(made[start : start + 2], 16) <= high


@given(COLOURS)
def test_some_ink_can_always_be_read(colour: str) -> None:
    assert contrast(readable_on(colour, (), 4.5), colour) >= 4.5


@pytest.mark.parametrize("shade", [shade for shade in SHADES if shade.name in ("ink", "quiet", "accent")])
def test_words_beside_the_work_can_be_read_by_day_and_by_night(shade: Shade) -> None:
    assert contrast(shade.light, GROUND.light) >= 4.5
    assert contrast(shade.dark, GROUND.dark) >= 4.5


@pytest.mark.parametrize("stroke", STROKES)
def test_lines_stand_out_from_what_is_under_them(stroke: object) -> None:
    look = STROKES[stroke]
    if look.halo:
        assert isinstance(look.colour, str)
        assert contrast(look.colour, HALO) >= 3
    elif isinstance(look.colour, Shade):
        assert contrast(look.colour.light, GROUND.light) >= 3
        assert contrast(look.colour.dark, GROUND.dark) >= 3
    else:
        assert contrast(look.colour, GROUND.light) >= 3


def test_words_on_plates_and_edges_of_batting_can_be_seen() -> None:
    assert contrast(DEEP, HALO) >= 4.5
    assert contrast(RUST, HALO) >= 4.5
    for look in TONES.values():
        if isinstance(look.fill, str):
            assert isinstance(look.line, str)
            assert contrast(look.line, look.fill) >= 3


def test_fabrics_differ_in_letter_and_texture_not_only_in_colour() -> None:
    fabrics = [Fabric(f"f{number}", "Fog", "#d9dcd6") for number in range(9)]
    looks = looks_of(fabrics).values()
    assert len({look.letter for look in looks}) == 9
    assert len({look.texture for look in looks}) == 9
