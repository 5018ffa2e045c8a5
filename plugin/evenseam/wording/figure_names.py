"""Finds under which name of the sheet a figure can be asked why."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.pattern import Quantity


class FigureNames:
    """The names of a sheet's figures, looked up by the figure itself."""

    def __init__(self, figures: Iterable[tuple[str, Quantity]]) -> None:
        self._by_identity: dict[int, str] = {}
        self._by_value: dict[Quantity, str] = {}
        self._kept = tuple(figures)  # so that no identity is used twice
        for name, quantity in self._kept:
            self._by_identity.setdefault(id(quantity), name)
            self._by_value.setdefault(quantity, name)

    def __call__(self, quantity: Quantity) -> str:
        """Return the name of a figure: of the very same one, else of one equal in name and value; else empty."""
        return self._by_identity.get(id(quantity)) or self._by_value.get(quantity, "")
