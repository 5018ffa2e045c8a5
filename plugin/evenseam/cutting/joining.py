"""How many strip lengths are joined into what is longer than the cloth, and what the joins cost."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number, Unit, ceiling
from evenseam.pattern import Assumed, Cut, CutShape, Quantity, StripJoin

_TO_SPARE = {Unit.INCH: Fraction(1, 2), Unit.CENTIMETRE: Fraction(1)}


def to_spare(cut: Cut) -> Quantity | None:
    """Return what a joined strip is longer than each piece to be cut from it; None where the piece has its own spare.

    Binding is longer than the edges it goes round anyway.
    """
    if cut.shape in (CutShape.BINDING, CutShape.BIAS_BINDING):
        return None
    unit = cut.width.unit
    reason = "joins seldom come out quite straight; each piece is cut to its length from a strip that is longer"
    return Quantity("to spare on a joined strip", _TO_SPARE[unit], unit, Assumed(reason, "common practice"))


def join_cost(join: StripJoin, strip_width: Number, seam_allowance: Number) -> Number:
    """Return the length one join takes away from the two lengths it joins.

    ::

        straight                     diagonal
        +--------:|:-------+         +---------+-----+
        | first  :|: second|         | first  /|.....|   the lengths are laid at right angles, corner on corner:
        +--------:|:-------+         +-------/-+     |   they share a square of the strip width, are sewn across
                                             | second    it, and the two corners are trimmed away.

    Straight: an allowance of each length goes into the seam. Diagonal: the shared square counts twice in the lengths
    and once in the joined strip, so one strip width goes; the allowance is taken from the corners that are trimmed
    away and costs nothing more. (A forum answer of 2010 on quiltingboard, "amount of yardage", gives the same: usable
    width less strip width for each strip.)
    """
    return strip_width if join is StripJoin.DIAGONAL else 2 * seam_allowance


def joined_lengths(total: Number, longest: Number, cost: Number) -> tuple[Number, ...]:
    """Return the fewest lengths that join to `total`: all as long as the cloth allows, the last what is missing.

    Raises ValueError when a join costs as much as a length has.
    """
    if cost >= longest:
        raise ValueError("a join costs more than the cloth is wide")
    if total <= longest:
        return (total,)
    count = ceiling((total - cost) / (longest - cost))
    return (*((longest,) * (count - 1)), total - (count - 1) * (longest - cost))
