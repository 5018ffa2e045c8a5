"""Cloth that is sold in pieces: fat quarters, fat eighths, squares, strips."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, Quantity


@dataclass(frozen=True, slots=True)
class ClothPiece:
    """One piece of cloth as sold; the selvage, where there is one, runs along its height."""

    name: str
    plural: str
    width: Quantity
    """Across the cloth."""
    height: Quantity
    """Along the cloth."""


_MAGAZINE = "What Are Fat Quarters and Fat Eighths?, American Patchwork & Quilting, 2017"
_METRIC_SHOP = "Fabric measuring tips, Eternal Maker (UK)"
_PRECUTS = "Precuts to Yardage, Annie's"
_SIZES: dict[tuple[str, Unit], tuple[str, Fraction, Fraction, str]] = {
    ("fat quarter", Unit.INCH): ("fat quarters", Fraction(21), Fraction(18), _MAGAZINE),
    ("fat eighth", Unit.INCH): ("fat eighths", Fraction(21), Fraction(9), _MAGAZINE),
    ("10 in square", Unit.INCH): ("10 in squares", Fraction(10), Fraction(10), _PRECUTS),
    ("5 in square", Unit.INCH): ("5 in squares", Fraction(5), Fraction(5), _PRECUTS),
    ("2 1/2 in strip", Unit.INCH): ("2 1/2 in strips", Fraction(42), Fraction(5, 2), _PRECUTS),
    ("fat quarter", Unit.CENTIMETRE): ("fat quarters", Fraction(55), Fraction(50), _METRIC_SHOP),
    ("fat eighth", Unit.CENTIMETRE): ("fat eighths", Fraction(55), Fraction(25), "half a fat quarter"),
}


def cloth_piece(name: str, unit: Unit) -> ClothPiece:
    """Return a piece of cloth by the name it is sold under. Raises KeyError for a name not in `cloth_piece_names`."""
    plural, width, height, source = _SIZES[name, unit]
    because = Assumed("the usual size; measure yours, some are smaller", source)
    return ClothPiece(
        name,
        plural,
        Quantity(f"width of a {name}", width, unit, because),
        Quantity(f"height of a {name}", height, unit, because),
    )


def cloth_piece_names(unit: Unit) -> tuple[str, ...]:
    """Return the names of the pieces of cloth known in this unit."""
    return tuple(name for name, known in _SIZES if known is unit)
