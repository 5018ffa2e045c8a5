"""The list in which every figure of a project is entered under its name, in the order of working."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from evenseam.exact import Rounding, Unit
from evenseam.pattern import Assumed, Operand, Quantity, derived


@dataclass(slots=True)
class Ledger:
    """Figures by name: lower case, words joined by underscores."""

    figures: dict[str, Quantity] = field(default_factory=dict)
    taken: list[str] = field(default_factory=list)
    """Names that two different figures laid claim to."""

    def __getitem__(self, name: str) -> Quantity:
        return self.figures[name]

    def enter(self, name: str, quantity: Quantity) -> Quantity:
        """Enter a figure that is known already and return it."""
        if name in self.figures and self.figures[name] is not quantity:
            self.taken.append(name)
        self.figures.setdefault(name, quantity)
        return quantity

    def work_out(
        self,
        name: str,
        formula: Operand,
        *,
        label: str = "",
        rule: str = "",
        source: str = "",
        rounding: Rounding | None = None,
    ) -> Quantity:
        """Work out a figure, enter it under its name and return it; `label` is its name in words if it differs."""
        words = label or name.replace("_", " ")
        return self.enter(name, derived(words, formula, rule=rule, source=source, rounding=rounding))

    def count(self, name: str, number: int, label: str, reason: str) -> Quantity:
        """Enter a count that was found by counting; `label` is its name in words."""
        return self.enter(name, Quantity(label, Fraction(number), Unit.COUNT, Assumed(reason, "counted")))

    def as_tuple(self) -> tuple[tuple[str, Quantity], ...]:
        """Return the figures in order of working."""
        return tuple(self.figures.items())


def key(id: str) -> str:
    """Return an id as part of a figure's name: outer-border becomes outer_border."""
    return "".join(sign if sign.isalnum() else "_" for sign in id.lower())


def named_after(id: str, what: str) -> str:
    """Return the stem of the figures of one border or block: outer becomes outer_border, outer-border stays."""
    stem = key(id)
    return stem if what in stem.split("_") else f"{stem}_{what}"
