"""How much room words take, near enough to keep them apart: widths by letter, on the generous side."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import SupportsFloat

from evenseam.figures.drawing import Anchor, Label
from evenseam.figures.plane import Point, Polygon

_UNBROKEN = re.compile(r"(?:\d[^\s,;]*\s+)*\S+")
"""A word with the figures before it: no line ends between a figure and its unit, or after the number of a stage."""
_NARROW = frozenset("iljtfrI.,:;'|!()[]-· /")
_WIDE = frozenset("mwMW@%—")
LINE_HEIGHT = 1.2
"""From line to line, in sizes of the letters."""
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


def label_lines(label: Label) -> tuple[str, ...]:
    """Return the lines a label is broken into, of much the same length; a word longer than the room stands alone."""
    if label.wide is None:
        return (label.text,)
    return _broken(label.text, label.wide / float(label.size), is_bold=label.is_bold)


@lru_cache(maxsize=1_000)
def _broken(text: str, room: float, *, is_bold: bool) -> tuple[str, ...]:
    """Return words in as few lines as fit into some sizes of the letters, none longer than it must be for that."""
    found = _lines(text, room, is_bold=is_bold)
    while len(closer := _lines(text, room - 0.25, is_bold=is_bold)) == len(found) > 1 and room > 1:
        found, room = closer, room - 0.25
    return found


def _lines(text: str, room: float, *, is_bold: bool) -> tuple[str, ...]:
    lines: list[str] = []
    for word in _UNBROKEN.findall(text):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, 1, is_bold=is_bold) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines) or ("",)


def label_box(label: Label) -> Polygon:
    """Return the upright rectangle that a label's letters stay inside."""
    lines = label_lines(label)
    long = max(text_width(line, label.size, is_bold=label.is_bold) for line in lines)
    high = float(label.size) * LINE_HEIGHT
    before = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}[label.anchor]
    x, y = float(label.at.x), float(label.at.y)
    if label.is_upward:
        return Polygon.rectangle(x - high / 2, y - long * (1 - before), high, long)
    return Polygon.rectangle(x - long * before, y - high / 2, long, high * len(lines))


def plate_box(label: Label) -> Polygon:
    """Return the plate behind a label that has one."""
    left, top, right, bottom = label_box(label).bounds
    room = float(label.size) / 5
    return Polygon((
        Point(left - room, top - room / 3), Point(right + room, top - room / 3),
        Point(right + room, bottom + room / 3), Point(left - room, bottom + room / 3),
    ))  # fmt: skip
