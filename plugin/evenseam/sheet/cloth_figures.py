"""The figures of the cloth by name, so that it can be asked why so much of it is bought."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from evenseam.cutting import AlternativeKind, Material, WaysToBuy
from evenseam.pattern import Quantity

_KINDS = {
    AlternativeKind.UNPIECED_BORDERS: "with_unpieced_borders",
    AlternativeKind.JOINED_BORDERS: "with_joined_borders",
    AlternativeKind.WIDE_BACKING: "wide_backing",
}


def cloth_figures(materials: Iterable[Material], others: Iterable[WaysToBuy]) -> Iterator[tuple[str, Quantity]]:
    """Yield what each material takes and what to buy, as planned and in each other way: sea_buy, sea_buy_at_44."""
    for material in materials:
        name = _plain(material.material)
        yield f"{name}_needed", material.needed
        yield f"{name}_buy", material.buy
        for other in material.alternatives:
            yield f"{name}_needed_{_KINDS[other.kind]}", other.needed
            yield f"{name}_buy_{_KINDS[other.kind]}", other.buy
    for ways in others:
        name = _plain(ways.material)
        for at in ways.widths:
            yield f"{name}_needed_at_{at.usable_width.number}", at.needed
            yield f"{name}_buy_at_{at.usable_width.number}", at.buy
        if ways.fat_quarters is not None:
            yield f"{name}_fat_quarters", ways.fat_quarters


def _plain(id: str) -> str:
    return id.replace("-", "_")
