"""Figures that guide the hands and size no piece of cloth: the seam test, binding tails, the test square.

They follow from the sheet and a published habit of the trade, and each says which.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Direction, Rounding, Unit, parse_length
from evenseam.pattern import Assumed, Quantity, derived, largest

SEAM_TEST_SOURCE = "Testing your scant quarter inch seam, Quiltcentric, 2012"
BINDING_SOURCE = "Finishing, Quiltmaker; joining binding ends, lizquiltz, 2008"


@dataclass(frozen=True, slots=True)
class SeamTest:
    """Three equal strips sewn side by side, and what they must measure."""

    strips: int
    strip_width: Quantity
    strip_length: Quantity
    middle: Quantity
    whole: Quantity


@dataclass(frozen=True, slots=True)
class BindingEnds:
    """How much binding is left loose at each end, and the gap between the ends of the seam."""

    tail: Quantity
    gap: Quantity


def seam_test(seam: Quantity) -> SeamTest:
    """Return a test of the seam allowance: the middle strip loses both its seams, the outer ones keep one raw edge."""
    reason = "the usual size of a seam test"
    strip_width = _assumed("seam test strip width", "1 1/2", "4", seam.unit, reason, SEAM_TEST_SOURCE)
    strip_length = _assumed("seam test strip length", "3 1/2", "9", seam.unit, reason, SEAM_TEST_SOURCE)
    middle = derived("seam test middle strip", strip_width - 2 * seam, source=SEAM_TEST_SOURCE)
    whole = derived("seam test width", 3 * (strip_width - 2 * seam) + 2 * seam, source=SEAM_TEST_SOURCE)
    return SeamTest(3, strip_width, strip_length, middle, whole)


def binding_ends(width: Quantity, height: Quantity, strip_width: Quantity) -> BindingEnds:
    """Return tails and gap suited to the longer side of a piece.

    Published gaps run from 6 to 15 in. A small piece has no room for a long one, so the gap is half of the longer
    side and at most 12 in; each tail is long enough to reach past the middle of the gap and to overlap by the strip's
    width.
    """
    unit = width.unit
    most = _assumed("widest gap", "12", "30", unit, "as much as is easy to join", BINDING_SOURCE)
    half = derived("half the longer side", largest(width, height) / _number(2), rounding=_down(unit))
    gap = derived(
        "binding gap",
        half if half.value < most.value else most,
        rule="half the longer side, at most 12 in",
        source=BINDING_SOURCE,
    )
    tail = derived(
        "binding tail", (gap + strip_width) / _number(2) + _assumed("spare", "1", "3", unit, "room for the hands"),
        rule="half the gap and half the overlap, with spare", rounding=_up(unit), source=BINDING_SOURCE,
    )  # fmt: skip
    return BindingEnds(tail, gap)


def print_marks(unit: Unit) -> tuple[Quantity, Quantity]:
    """Return the side of the test square and the length of the test bar on every template page.

    A square of one inch alone can hide an error of 3 percent, so a longer bar stands beside it.
    """
    source = "Fix for a block that printed too small, shrinkingquilters, 2010, and other makers' tests of printing"
    return (
        _assumed("side of the test square", "1", "2", unit, "printed on every template page", source),
        _assumed("length of the test bar", "2", "5", unit, "printed on every template page", source),
    )


def _assumed(
    name: str, inches: str, centimetres: str, unit: Unit, reason: str, source: str = "common practice"
) -> Quantity:
    text = inches if unit is Unit.INCH else centimetres
    return Quantity(name, parse_length(text).value, unit, Assumed(reason, source))


def _number(value: int) -> Quantity:
    return Quantity(str(value), Fraction(value), Unit.COUNT, Assumed("a plain number"))


def _down(unit: Unit) -> Rounding:
    return Rounding("an easy mark of the ruler", Fraction(1), Direction.DOWN)


def _up(unit: Unit) -> Rounding:
    return Rounding("an easy mark of the ruler", Fraction(1), Direction.UP)
