"""The same fabrics bought otherwise: cloth of another width, or fat quarters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from evenseam.cutting.bundle import plan_pieces
from evenseam.cutting.cloth_piece import cloth_piece
from evenseam.cutting.fabric_plan import plan_cheaper
from evenseam.cutting.plan import CuttingPlan, Material
from evenseam.cutting.planning import usual_widths
from evenseam.cutting.wider import on_wider_cloth
from evenseam.exact import Number
from evenseam.pattern import Cut, CutList, Fabric, Project, Quantity
from evenseam.problems import Report

STEPS_OF_AN_OTHER_WIDTH = 50_000
"""Effort for one fabric on cloth of another width: hardly ever a shop step more than the full effort finds, and never
too little, because what is bought is enough for a plan that was made."""
FAT_QUARTER = "fat quarter"


@dataclass(frozen=True, slots=True)
class OtherWidth:
    """One fabric on cloth of one width."""

    usable_width: Quantity
    needed: Quantity
    buy: Quantity
    plan: CuttingPlan | None = None
    """How it is cut from cloth of this width."""


@dataclass(frozen=True, slots=True)
class WaysToBuy:
    """The other ways to buy one fabric."""

    material: str
    widths: tuple[OtherWidth, ...]
    """Narrowest first; a width the fabric cannot be cut from is left out."""
    fat_quarters: Quantity | None
    """The fewest found; None when some piece is larger than a fat quarter."""
    is_without_backing: bool = False
    """True when a backing that is larger than a fat quarter comes on top."""


def ways_to_buy(cuts: CutList, project: Project, materials: Sequence[Material]) -> tuple[WaysToBuy, ...]:
    """Return for each planned fabric what it takes on cloth of each usual width, and in fat quarters."""
    planned = [material for material in materials if material.plan is not None]
    quarters = _fat_quarters(cuts, project)
    return tuple(
        WaysToBuy(
            material.material,
            _widths(material, cuts, project),
            *quarters.get(material.material, (None, False)),
        )
        for material in planned
    )


def _widths(material: Material, cuts: CutList, project: Project) -> tuple[OtherWidth, ...]:
    found: list[OtherWidth] = []
    fabric, asked, own = project.fabric(material.material), cuts.of(material.material), project.usable_width
    for width in usual_widths(project.unit):
        # A plan for narrower cloth can be cut from wider cloth just as it is.
        known = [replace(narrower, usable_width=width) for narrower in found[-1:]]
        if not width.value < own.value:
            known.append(OtherWidth(width, material.needed, material.buy, material.plan))
        best = min(known, key=lambda way: way.needed.value, default=None)
        if width.value != own.value:
            at_width = replace(project, usable_width=width)
            best = _searched(best, fabric, asked, at_width)
        elif best is not None and material.plan is not None:
            best = _laid_on(width, best, asked, material.plan.lower_bound)
        if best is not None:
            found.append(best)
    return tuple(found)


def _searched(best: OtherWidth | None, fabric: Fabric, cuts: tuple[Cut, ...], project: Project) -> OtherWidth | None:
    """Return the best way on the project's width, or a new one where less has to be bought for it."""
    known = best.needed if best else None
    cheaper = plan_cheaper(fabric, cuts, project, Report(), known, STEPS_OF_AN_OTHER_WIDTH)
    width = project.usable_width
    if cheaper is None:
        return replace(best, plan=None) if best else None
    if cheaper.material is None:
        return _laid_on(width, best, cuts, cheaper.lower_bound) if best else None
    return OtherWidth(width, cheaper.material.needed, cheaper.material.buy, cheaper.material.plan)


def _laid_on(width: Quantity, way: OtherWidth, cuts: tuple[Cut, ...], bound: Number) -> OtherWidth:
    if way.plan is None or way.plan.usable_width.value == width.value:
        return way
    return replace(way, plan=on_wider_cloth(way.plan, width, cuts, bound))


def _fat_quarters(cuts: CutList, project: Project) -> dict[str, tuple[Quantity, bool]]:
    """Return how many fat quarters each fabric takes, and whether its backing was left out of them."""
    cloth = cloth_piece(FAT_QUARTER, project.unit)
    has_backing = {cut.material for cut in cuts.cuts if cut.part == "backing"}
    without = {plan.material: plan.number for plan in plan_pieces(cuts, project, cloth).value or ()}
    whole = replace(project, fabrics=tuple(fabric for fabric in project.fabrics if fabric.id in has_backing))
    with_backing = {plan.material: plan.number for plan in plan_pieces(cuts, whole, cloth, ()).value or ()}
    return {
        **{id: (number, id in has_backing) for id, number in without.items()},
        **{id: (number, False) for id, number in with_backing.items()},
    }
