"""Sheets of paper, exactly, and the part of each that printers can be trusted with."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, Unit

MARGIN = Fraction(1, 2)
"""No ink nearer to the edge than this, in inches: home printers leave up to half an inch blank (common practice)."""
MILLIMETRES_PER_INCH = CENTIMETRES_PER_INCH * 10


class Paper(Enum):
    """A sheet of paper, upright."""

    LETTER = "letter"
    """8 1/2 × 11 in (ANSI/ASME Y14.1, size A)."""
    A4 = "a4"
    """210 × 297 mm (ISO 216)."""

    @property
    def title(self) -> str:
        """What it says on the packet."""
        return {Paper.LETTER: "Letter", Paper.A4: "A4"}[self]

    @property
    def width(self) -> Fraction:
        """In inches."""
        return {Paper.LETTER: Fraction(17, 2), Paper.A4: 210 / MILLIMETRES_PER_INCH}[self]

    @property
    def height(self) -> Fraction:
        """In inches."""
        return {Paper.LETTER: Fraction(11), Paper.A4: 297 / MILLIMETRES_PER_INCH}[self]

    @property
    def live_width(self) -> Fraction:
        """Between the margins, in inches."""
        return self.width - 2 * MARGIN

    @property
    def live_height(self) -> Fraction:
        """Between the margins, in inches."""
        return self.height - 2 * MARGIN

    @property
    def svg_unit(self) -> tuple[str, Fraction]:
        """The unit of its pictures, and how many of them make an inch."""
        return {Paper.LETTER: ("in", Fraction(1)), Paper.A4: ("mm", MILLIMETRES_PER_INCH)}[self]


def in_inches(unit: Unit) -> Fraction:
    """Return how many inches one inch or centimetre is. Raises KeyError for units no template is drawn in."""
    return {Unit.INCH: Fraction(1), Unit.CENTIMETRE: 1 / CENTIMETRES_PER_INCH}[unit]
