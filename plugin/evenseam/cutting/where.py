"""Where in the author's file a figure comes from, for problems about it."""

from __future__ import annotations

from evenseam.pattern import Derived, Quantity
from evenseam.problems import Place


def place_of(*quantities: Quantity) -> Place | None:
    """Return the first place an author wrote one of the figures these were worked out from; None for defaults only."""
    waiting = list(quantities)
    seen: set[int] = set()
    while waiting:
        quantity = waiting.pop(0)
        if id(quantity) in seen:
            continue
        seen.add(id(quantity))
        if quantity.place is not None:
            return quantity.place
        if isinstance(quantity.because, Derived):
            waiting.extend(quantity.because.expression.quantities)
    return None
