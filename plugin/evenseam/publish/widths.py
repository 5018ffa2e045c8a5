"""A sheet on cloth of other widths: the same project with the plans and amounts that were worked out for them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from evenseam.pattern import Quantity
from evenseam.sheet import PatternSheet


@dataclass(frozen=True, slots=True)
class SheetAtWidth:
    """A sheet as it reads for cloth of one usable width."""

    width: Quantity
    sheet: PatternSheet
    is_planned: bool
    """True for the width that the sheet itself is planned on."""
    renamed: Mapping[str, str] = field(default_factory=dict)
    """The names under which figures of this width are told from those of the sheet: sea_buy@44 for sea_buy."""


def at_widths(sheet: PatternSheet) -> tuple[SheetAtWidth, ...]:
    """Return the sheet for every width that all its fabrics can be cut from, narrowest first, its own among them."""
    own = sheet.project.usable_width
    widths = {own.value: own}
    for ways in sheet.ways_to_buy:
        for at in ways.widths:
            widths.setdefault(at.usable_width.value, at.usable_width)
    found = [SheetAtWidth(own, sheet, is_planned=True)]
    for value, width in widths.items():
        changed = _at(sheet, width) if value != own.value else None
        if changed is not None:
            found.append(SheetAtWidth(width, changed, is_planned=False, renamed=_renamed(sheet, changed, width)))
    return tuple(sorted(found, key=lambda one: one.width.value))


def _renamed(sheet: PatternSheet, changed: PatternSheet, width: Quantity) -> dict[str, str]:
    known = dict(sheet.figures)
    return {name: f"{name}@{width.number}" for name, figure in changed.figures if known.get(name) != figure}


def _at(sheet: PatternSheet, width: Quantity) -> PatternSheet | None:
    """Return the sheet with the plans for one width; None when some fabric has none."""
    known = {
        ways.material: at
        for ways in sheet.ways_to_buy
        for at in ways.widths
        if at.usable_width.value == width.value and at.plan is not None
    }
    materials = []
    for material in sheet.materials:
        if material.plan is None:
            materials.append(material)
            continue
        at = known.get(material.material)
        if at is None:
            return None
        materials.append(replace(material, needed=at.needed, buy=at.buy, plan=at.plan))
    sized = replace(sheet.sized, project=replace(sheet.project, usable_width=width))
    return replace(sheet, sized=sized, materials=tuple(materials))
