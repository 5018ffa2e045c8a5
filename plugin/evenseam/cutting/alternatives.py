"""Other ways to buy and cut a fabric: borders in one piece or joined, backing without a seam."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from evenseam.cutting.fabric_plan import plan_cheaper
from evenseam.cutting.plan import Alternative, AlternativeKind, Material
from evenseam.cutting.yardage import in_unit, shop_length, shop_step
from evenseam.exact import floor
from evenseam.pattern import Assumed, Cut, Fabric, Project, Quantity, StripDirection, StripJoin, derived
from evenseam.problems import Report

_WIDE = Fraction(108)
"""Inches; wide backing is sold in 90 and 108 in: backing compilations and Beginner's Guide to Quilting (UK), 2020."""


def alternatives(material: Material, fabric: Fabric, cuts: Sequence[Cut], project: Project) -> tuple[Alternative, ...]:
    """Return the other ways that apply to one planned fabric."""
    plan = material.plan
    if plan is None:
        return ()
    joined = {joined.cut for joined in plan.joined}
    found: list[Alternative] = []
    if any(cut.id in joined and _is_border(cut) for cut in cuts):
        found += _other_borders(AlternativeKind.UNPIECED_BORDERS, _unpieced, fabric, cuts, project)
    if any(_is_border(cut) and _is_long(cut, project) and cut.id not in joined for cut in cuts):
        found += _other_borders(AlternativeKind.JOINED_BORDERS, _joined, fabric, cuts, project)
    panelled = {joined.cut for joined in plan.joined if joined.panels}
    for cut in cuts:
        if cut.id in panelled:
            found += _wide_backing(cut, project)
    return tuple(found)


def _is_border(cut: Cut) -> bool:
    return cut.part.startswith("border")


def _is_long(cut: Cut, project: Project) -> bool:
    return max(cut.width.value, cut.height.value) > project.usable_width.value


def _unpieced(cut: Cut) -> Cut:
    return replace(cut, join=None, direction=StripDirection.ALONG)


def _joined(cut: Cut) -> Cut:
    return replace(cut, join=cut.join or StripJoin.DIAGONAL, direction=StripDirection.EITHER)


def _other_borders(
    kind: AlternativeKind, change: Callable[[Cut], Cut], fabric: Fabric, cuts: Sequence[Cut], project: Project
) -> Iterator[Alternative]:
    changed = tuple(change(cut) if _is_border(cut) and _is_long(cut, project) else cut for cut in cuts)
    report = Report()
    found = plan_cheaper(fabric, changed, project, report)
    other = found.material if found else None
    # A print that must stay upright may allow one way only; then there is nothing to choose.
    if other is not None and not report.problems and changed != tuple(cuts):
        yield Alternative(kind, project.usable_width, other.needed, other.buy)


def _wide_backing(cut: Cut, project: Project) -> Iterator[Alternative]:
    width = Quantity(
        "width of wide backing",
        # In whole centimetres, rounded down: what is sold is never narrower.
        Fraction(floor(in_unit(_WIDE, project.unit))),
        project.unit,
        Assumed("wide backing is sold 108 in wide", "backing compilations; Beginner's Guide to Quilting (UK), 2020"),
    )
    ways = [(cut.width, cut.height)] if cut.is_upright else [(cut.width, cut.height), (cut.height, cut.width)]
    fitting = [along for across, along in ways if across.value <= width.value]
    if fitting and cut.count.whole == 1:
        along = fitting[0] if len(fitting) == 1 or fitting[0].value <= fitting[1].value else fitting[1]
        needed = derived(f"length of wide cloth for {cut.label}", along, rule="one length, no seam")
        yield Alternative(
            AlternativeKind.WIDE_BACKING, width, needed, shop_length(cut.label, needed, shop_step(project))
        )
