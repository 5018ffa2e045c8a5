"""Colours as red, green and blue: how light they are, how well two of them stand apart, and mixtures.

Lightness and contrast as in the Web Content Accessibility Guidelines 2.2, "relative luminance" and "contrast ratio"
(W3C, 2023).
"""

from __future__ import annotations

from functools import lru_cache
from typing import TypeAlias

Colour: TypeAlias = str
"""#rrggbb, lower case."""

LEAST_FOR_TEXT = 4.5
"""Contrast of letters against what is behind them (WCAG 2.2, 1.4.3)."""
LEAST_FOR_LINES = 3.0
"""Contrast of the lines a picture cannot be understood without (WCAG 2.2, 1.4.11)."""


def luminance(colour: Colour) -> float:
    """Return the relative luminance, 0 for black to 1 for white."""
    red, green, blue = (_linear(int(colour[start : start + 2], 16) / 255) for start in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Colour, other: Colour) -> float:
    """Return the contrast ratio of two colours, 1 to 21.

    >>> round(contrast("#000000", "#ffffff"))
    21
    """
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


@lru_cache(maxsize=1000)
def mixed(one: Colour, other: Colour, share: float) -> Colour:
    """Return one colour with a share (0 to 1) of another in it.

    >>> mixed("#000000", "#ffffff", 0.5)
    '#808080'
    """
    parts = (
        round(int(one[start : start + 2], 16) * (1 - share) + int(other[start : start + 2], 16) * share + 1e-9)
        for start in (1, 3, 5)
    )
    return "#" + "".join(f"{part:02x}" for part in parts)


@lru_cache(maxsize=1000)
def readable_on(background: Colour, candidates: tuple[Colour, ...], least: float) -> Colour:
    """Return the first candidate with enough contrast, else whichever of black and white has more."""
    for candidate in (*candidates, "#000000", "#ffffff"):
        if contrast(candidate, background) >= least:
            return candidate
    return "#000000" if luminance(background) > 0.18 else "#ffffff"


def _linear(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
