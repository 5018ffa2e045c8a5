"""A figure's derivation taken apart: the figures at its ends, and its shape without them."""

from __future__ import annotations

from evenseam.pattern import Assumed, Derived, Expression, Operand, Quantity

COUNTED = "counted"
"""Begins the source of figures that were counted in what the author decided, so are no decision themselves."""


def is_counted(leaf: Quantity) -> bool:
    """Tell whether a figure was found by counting."""
    return isinstance(leaf.because, Assumed) and leaf.because.source.startswith(COUNTED)


class Derivations:
    """Reads derivations, each figure once however many others it goes into."""

    def __init__(self) -> None:
        self._leaves: dict[int, frozenset[Quantity]] = {}
        self._shapes: dict[int, int] = {}
        self._numbers: dict[tuple[object, ...], int] = {}
        # Figures are known by identity here, so that each must stay alive as long as what is known of it.
        self._kept: list[Quantity] = []

    def leaves(self, quantity: Quantity) -> frozenset[Quantity]:
        """Return the given and assumed figures a figure is worked out from; itself if it is one."""
        known = self._leaves.get(id(quantity))
        if known is None:
            because = quantity.because
            if isinstance(because, Derived):
                parts = [self.leaves(part) for part in because.expression.quantities]
                known = frozenset().union(*parts)
            else:
                known = frozenset((quantity,))
            self._leaves[id(quantity)] = known
            self._kept.append(quantity)
        return known

    def shape(self, quantity: Quantity) -> int:
        """Return a number that two figures share when they are worked out in one way from whatever figures."""
        known = self._shapes.get(id(quantity))
        if known is None:
            because = quantity.because
            known = self._number(
                ("figure", because.rounding, self._of_operand(because.expression))
                if isinstance(because, Derived)
                else ("leaf",)
            )
            self._shapes[id(quantity)] = known
            self._kept.append(quantity)
        return known

    def _of_operand(self, operand: Operand) -> int:
        if isinstance(operand, Quantity):
            return self.shape(operand)
        if isinstance(operand, Expression):
            return self._number((operand.operator, *(self._of_operand(part) for part in operand.operands)))
        return self._number(("number", operand))

    def _number(self, key: tuple[object, ...]) -> int:
        return self._numbers.setdefault(key, len(self._numbers))
