"""The units of a figure, and the ruler that goes with each."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

CENTIMETRES_PER_INCH = Fraction(127, 50)
"""1 in = 2.54 cm exactly (NBS Circular 572, addendum of 1960, section 2)."""


class Unit(Enum):
    """What a figure counts or weighs."""

    INCH = "in"
    CENTIMETRE = "cm"
    YARD = "yd"
    METRE = "m"
    COUNT = ""
    DEGREE = "°"
    POUND = "lb"
    KILOGRAM = "kg"

    @property
    def symbol(self) -> str:
        """The sign printed after the figure."""
        return self.value

    @property
    def is_length(self) -> bool:
        """True for the units a ruler or a shop counter measures."""
        return self not in (Unit.COUNT, Unit.DEGREE, Unit.POUND, Unit.KILOGRAM)

    @property
    def ruler_mark(self) -> Fraction:
        """The finest mark of a usual quilting ruler in this unit: 1/8 in, 1 mm (common practice)."""
        marks = {
            Unit.INCH: Fraction(1, 8),
            Unit.CENTIMETRE: Fraction(1, 10),
            Unit.YARD: Fraction(1, 8),
            Unit.METRE: Fraction(1, 10),
            Unit.POUND: Fraction(1, 4),
            Unit.KILOGRAM: Fraction(1, 10),
        }
        return marks.get(self, Fraction(1))
