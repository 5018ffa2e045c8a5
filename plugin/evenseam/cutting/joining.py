"""How many strip lengths are joined into what is longer than the cloth, and what the joins cost."""

from __future__ import annotations

from evenseam.exact import Number, ceiling
from evenseam.pattern import StripJoin


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
