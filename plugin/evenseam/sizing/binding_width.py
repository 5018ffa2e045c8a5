"""How wide a double-fold binding strip is cut so that so much of it shows.

::

    half of the strip:  seam allowance | front | thickness | back        the front is as wide as the seam allowance
                        <-- shows -->  <shows>              <shows>      it is sewn on with, for the edge fills it
"""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Direction, Rounding, Unit
from evenseam.pattern import Assumed, Binding, Quantity, derived

_SOURCE = (
    "plain geometry; agrees with 2 1/2 in for 3/8 in, Along Came Quilting, What size binding would you like, which "
    "prints 2 in for 1/4 in and 3 in for 1/2 in, a little wider and a little narrower"
)
_THICKNESS = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(6, 10)}
_MARK = {Unit.INCH: Fraction(1, 8), Unit.CENTIMETRE: Fraction(1, 2)}


def strip_showing(shows: Quantity) -> Quantity:
    """Return the cut width of a strip that finishes so wide on the front, and reaches its seam line on the back."""
    thickness = Quantity(
        "extra for the thickness of the layers", _THICKNESS[shows.unit], shows.unit,
        Assumed("the folded strip goes round the edge and just over its seam line on the back", "common practice"),
    )  # fmt: skip
    return derived(
        "binding strip width", 6 * shows + thickness,
        rule="folded in half: a seam allowance, the front and the back, each as wide as what shows, and the edge",
        source=_SOURCE, rounding=Rounding("ruler", _MARK[shows.unit], Direction.UP),
    )  # fmt: skip


def binding_seam(binding: Binding, seam: Quantity) -> Quantity:
    """Return the seam allowance a binding is sewn on with: as much as it shows, or the pattern's own."""
    return seam if binding.shows is None else binding.shows
