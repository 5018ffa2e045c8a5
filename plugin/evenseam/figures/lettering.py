"""How much room words take, near enough to keep them apart: widths by letter, on the generous side."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number
from evenseam.figures.drawing import Anchor, Label
from evenseam.figures.rational import rational
from evenseam.geometry import Point, Polygon

_NARROW = frozenset("iljtfrI.,:;'|!()[]-· /")
_WIDE = frozenset("mwMW@%—")
_HEIGHT = Fraction(6, 5)


def text_width(text: str, size: Number | int, *, is_bold: bool = False) -> Fraction:
    """Return the width of a line of words in drawing units, a little more than any common sans serif needs."""
    hundredths = sum(
        42 if sign in _NARROW else 99 if sign in _WIDE else 84 if sign == "×" else 79 if sign.isupper() else 64
        for sign in text
    )
    return rational(size) * Fraction(hundredths * (112 if is_bold else 100), 10000)


def label_box(label: Label) -> Polygon:
    """Return the upright rectangle that a label's letters stay inside."""
    long = text_width(label.text, label.size, is_bold=label.is_bold)
    high = label.size * _HEIGHT
    before = {Anchor.START: Fraction(0), Anchor.MIDDLE: Fraction(1, 2), Anchor.END: Fraction(1)}[label.anchor]
    if label.is_upward:
        return Polygon.rectangle(label.at.x - high / 2, label.at.y - long * (1 - before), high, long)
    return Polygon.rectangle(label.at.x - long * before, label.at.y - high / 2, long, high)


def plate_box(label: Label) -> Polygon:
    """Return the plate behind a label that has one."""
    left, top, right, bottom = label_box(label).bounds
    room = label.size / 5
    return Polygon((
        Point(left - room, top - room / 3), Point(right + room, top - room / 3),
        Point(right + room, bottom + room / 3), Point(left - room, bottom + room / 3),
    ))  # fmt: skip
