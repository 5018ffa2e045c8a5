"""The ruler of an edition: the marks its lengths are set to, and its usual seam allowance and cloth."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, Direction, Rounding, Unit, format_length
from evenseam.pattern import Assumed, Expression, Quantity, derived

FINISHED_MARK = {Unit.CENTIMETRE: Fraction(1, 2), Unit.INCH: Fraction(1, 8)}
"""The marks finished sizes are set to: half centimetres and eighths of an inch (common practice)."""
FINE_MARK = {Unit.CENTIMETRE: Fraction(1, 10), Unit.INCH: Fraction(1, 8)}
"""The marks of distances smaller than a seam allowance or two."""

_ONE = {
    Unit.INCH: Quantity("one inch", Fraction(1), Unit.INCH, Assumed("the unit of the ruler", "the ruler")),
    Unit.CENTIMETRE: Quantity(
        "one inch in centimetres", CENTIMETRES_PER_INCH, Unit.CENTIMETRE,
        Assumed("1 in = 2.54 cm exactly", "NBS Circular 572, addendum of 1960, section 2"),
    ),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Ruler:
    """The ruler of one edition."""

    unit: Unit

    def finished(self, length: Quantity) -> Quantity:
        """Return a finished size or an overage in this unit."""
        return self._on(FINISHED_MARK[self.unit], length)

    def fine(self, length: Quantity) -> Quantity:
        """Return a small distance in this unit."""
        return self._on(FINE_MARK[self.unit], length)

    def seam_allowance(self, length: Quantity) -> Quantity:
        """Return the seam allowance, replaced by the usual one if it was stated for the other ruler."""
        if length.unit is self.unit:
            return length
        if self.unit is Unit.CENTIMETRE:
            return Quantity(
                length.name, Fraction(3, 4), self.unit,
                Assumed(
                    "the usual seam allowance of a pattern drafted in centimetres",
                    "Metric Flying Geese, weednstitch, 2012",
                ),
            )  # fmt: skip
        return Quantity(
            length.name, Fraction(1, 4), self.unit,
            Assumed(
                "the usual seam allowance of a pattern drafted in inches",
                "Testing your scant quarter inch seam, Janelle Cahoon, Quiltcentric, 2012",
            ),
        )  # fmt: skip

    def usable_width(self, length: Quantity) -> Quantity:
        """Return the usable width of the cloth, replaced by the usual one if it was stated for the other ruler."""
        if length.unit is self.unit:
            return length
        value = {Unit.CENTIMETRE: Fraction(107), Unit.INCH: Fraction(42)}[self.unit]
        return Quantity(
            length.name, value, self.unit,
            Assumed(
                "cloth of ordinary width is usable over 42 in, which is 107 cm in round figures",
                "Quilt-as-you-go place mat, American Patchwork & Quilting, 2017",
            ),
        )  # fmt: skip

    def converted(self, length: Quantity) -> Expression:
        """Return the formula for the true length in this unit, on no mark as yet."""
        other = Unit.INCH if self.unit is Unit.CENTIMETRE else Unit.CENTIMETRE
        return length / _ONE[other] * _ONE[self.unit]

    def set(self, length: Quantity, mark: Fraction, rule: str) -> Quantity:
        """Return the length in this unit on the nearest multiple of a mark."""
        if length.unit is self.unit:
            return length
        rounding = Rounding(f"{_EDITION[self.unit]} ruler", mark, Direction.NEAREST)
        return derived(length.name, self.converted(length), rule=rule, rounding=rounding)

    def _on(self, mark: Fraction, length: Quantity) -> Quantity:
        if length.unit is self.unit:
            return length
        true = self.converted(length).value
        if -2 * mark < true < 2 * mark:  # A narrow strip would change too much, or vanish.
            mark = FINE_MARK[self.unit]
        if 0 < true < mark / 2:
            rounding = Rounding("finest mark of the ruler", mark, Direction.UP)
            return derived(length.name, self.converted(length), rule="re-drafted", rounding=rounding)
        return self.set(length, mark, f"re-drafted: set to the nearest {format_length(mark, self.unit)}, not converted")


_EDITION = {Unit.CENTIMETRE: "centimetre", Unit.INCH: "inch"}
