"""How far two colours stand apart: Web Content Accessibility Guidelines 2.2, W3C 2023, contrast ratio."""

from __future__ import annotations

from functools import lru_cache

WORDS, LINES = 4.5, 3.0
"""The least ratios: 1.4.3 for text, 1.4.11 for what is needed to understand."""


@lru_cache(maxsize=10_000)
def luminance(colour: str) -> float:
    """Return the relative luminance of a colour written #rrggbb."""
    parts = (int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def ratio(one: str, other: str) -> float:
    """Return the contrast of two colours, 1 to 21."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)
