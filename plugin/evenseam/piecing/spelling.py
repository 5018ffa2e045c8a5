"""Points and outlines written the way an author writes them in a pattern file."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number, Surd
from evenseam.geometry import Point, Polygon


def spell_number(number: Number) -> str:
    """Return a coordinate: 4, 3.5, 7/3; one with a root in it as its formula.

    >>> spell_number(Fraction(4)), spell_number(Fraction(7, 2)), spell_number(Fraction(7, 3))
    ('4', '3.5', '7/3')
    """
    if isinstance(number, Surd):
        return str(number).replace(" ", "")
    value = Fraction(number)
    thousandths = value * 1000
    if value.denominator == 1 or thousandths.denominator != 1:
        return str(value)
    whole, rest = divmod(abs(int(thousandths)), 1000)
    return f"{'-' if value < 0 else ''}{whole}.{rest:03d}".rstrip("0")


def spell_point(point: Point) -> str:
    """Return a corner: 4,3.5."""
    return f"{spell_number(point.x)},{spell_number(point.y)}"


def spell_outline(outline: Polygon) -> str:
    """Return the corners of an outline: 0,0 4,0 4,3.5."""
    return " ".join(spell_point(corner) for corner in outline.corners)


def spell_list(words: tuple[str, ...], joint: str = "and") -> str:
    """Return words as a list in a sentence.

    >>> spell_list(("p1", "p2", "p3"))
    'p1, p2 and p3'
    """
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {joint} {words[-1]}"
