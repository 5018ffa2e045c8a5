"""Continuous bias binding: the square it is cut from, with what seams, whole strips and slanted ends take away.

::

    +---------+          +---------+             The square is cut corner to corner, the two halves are sewn along
    |       / |         /|        /              two straight edges into a slanted piece, lines are drawn parallel to
    |     /   |   ->   / |       /     ->  tube  its bias edges, and the other two straight edges are sewn with the
    |   /     |       /  |      /                lines shifted by one strip: cutting along the line gives one long
    | /       |      /   |     /                 strip.
    +---------+     +----+----+

With a seam of s on every sewn edge, both sides of the slanted piece lose 2s: n whole strips of width w fit where
(side − 2s) ÷ √2 ≥ n × w, each round gives (side − 2s) × √2 of length, and squaring the slanted ends takes w.
"""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Direction, Rounding, Unit, square_root
from evenseam.pattern import Cut, Expression, Quantity, derived, largest

_SQUARE_SIDE = {
    Unit.INCH: Rounding("side of a square", Fraction(1, 2), Direction.UP),
    Unit.CENTIMETRE: Rounding("side of a square", Fraction(1), Direction.UP),
}
_MOST_STRIPS = 60
_MOST_SQUARES = 12


def bias_square(cut: Cut, seam: Quantity, usable_width: Quantity) -> tuple[Quantity, int] | None:
    """Return the side of the square and how many are needed: one if it fits the cloth, else the fewest equal ones.

    None when a dozen squares as wide as the cloth are not enough.
    """
    for squares in range(1, _MOST_SQUARES + 1):
        side = _side(cut, seam, squares)
        if not side.value > usable_width.value:
            return side, squares
    return None


def _side(cut: Cut, seam: Quantity, squares: int) -> Quantity:
    strip, length = cut.width, cut.height
    # Each square's strip is squared at its ends; joining several takes one strip width more for each join.
    share: Expression = (length + (2 * squares - 1) * strip) / squares if squares > 1 else length + strip
    root = square_root(2)

    def side(strips: int) -> Expression:
        return largest(strip * (strips * root), share / (strips * root)) + 2 * seam

    strips = min(range(1, _MOST_STRIPS + 1), key=lambda number: (_rank(side(number)), number))
    return derived(
        f"side of the square for {cut.label}",
        side(strips),
        rule=f"the larger of what {strips} whole strips and what their length needs, and two seams",
        source="plain geometry of the sewn tube; the square root of length × strip width alone is too small",
        rounding=_SQUARE_SIDE[cut.width.unit],
    )


def _rank(side: Expression) -> Fraction:
    """Return the side to a thousandth, for comparing."""
    return Rounding("comparison", Fraction(1, 1000), Direction.UP).apply(side.value)
