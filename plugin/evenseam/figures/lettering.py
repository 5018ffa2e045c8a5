"""How much room words take, near enough to keep them apart: widths by letter, on the generous side."""

from __future__ import annotations

from functools import lru_cache
from typing import SupportsFloat

from evenseam.figures.drawing import Anchor, Label
from evenseam.figures.plane import Point, Polygon

_NARROW = frozenset("iljtfrI.,:;'|!()[]-· /")
_WIDE = frozenset("mwMW@%—")
_HEIGHT = 1.2
SIZES = 10_000
"""What `letters_width` counts in: parts of the size of the letters."""


@lru_cache(maxsize=20_000)
def letters_width(text: str, *, is_bold: bool = False) -> int:
    """Return the width of a line of words in ten-thousandths of its size, a little more than any sans serif needs."""
    hundredths = sum(
        42 if sign in _NARROW else 99 if sign in _WIDE else 84 if sign == "×" else 79 if sign.isupper() else 64
        for sign in text
    )
    return hundredths * (112 if is_bold else 100)


def text_width(text: str, size: SupportsFloat, *, is_bold: bool = False) -> float:
    """Return the width of a line of words in drawing units."""
    return float(size) * letters_width(text, is_bold=is_bold) / SIZES


def label_box(label: Label) -> Polygon:
    """Return the upright rectangle that a label's letters stay inside."""
    long = text_width(label.text, label.size, is_bold=label.is_bold)
    high = float(label.size) * _HEIGHT
    before = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}[label.anchor]
    x, y = float(label.at.x), float(label.at.y)
    if label.is_upward:
        return Polygon.rectangle(x - high / 2, y - long * (1 - before), high, long)
    return Polygon.rectangle(x - long * before, y - high / 2, long, high)


def plate_box(label: Label) -> Polygon:
    """Return the plate behind a label that has one."""
    left, top, right, bottom = label_box(label).bounds
    room = float(label.size) / 5
    return Polygon((
        Point(left - room, top - room / 3), Point(right + room, top - room / 3),
        Point(right + room, bottom + room / 3), Point(left - room, bottom + room / 3),
    ))  # fmt: skip
