"""From a cut list to a line of the materials list for each fabric, each with its cutting plan."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.cutting.alternatives import alternatives
from evenseam.cutting.batting import batting_material, insulation_material
from evenseam.cutting.fabric_plan import plan_fabric
from evenseam.cutting.plan import Material
from evenseam.exact import Unit
from evenseam.pattern import BATTING, INSULATION, Assumed, CutList, Project, Quantity
from evenseam.problems import Outcome, Report

_USUAL_WIDTHS = {
    Unit.INCH: (40, 42, 44),
    Unit.CENTIMETRE: (107, 112),
}
"""Patchwork Times plans on 40, American Patchwork & Quilting on 42, older charts on 44 in; cloth is sold as 42 to 44 in
wide, which is 107 to 112 cm."""


def plan_cutting(cuts: CutList, project: Project) -> Outcome[tuple[Material, ...]]:
    """Return one material for each fabric that is cut, in the project's order, then batting.

    Lengths are in the project's unit. A fabric with a piece that cannot be cut is reported and left out; the others
    are still planned.
    """
    report = Report()
    materials: list[Material] = []
    for fabric in project.fabrics:
        asked = cuts.of(fabric.id)
        material = plan_fabric(fabric, asked, project, report) if asked else None
        if material is not None:
            materials.append(replace(material, alternatives=alternatives(material, fabric, asked, project)))
    if cuts.of(BATTING):
        materials.append(batting_material(cuts.of(BATTING), project))
    if cuts.of(INSULATION):
        materials.append(insulation_material(cuts.of(INSULATION), project))
    return Outcome(tuple(materials), report.as_tuple())


def plan_usual_widths(cuts: CutList, project: Project) -> tuple[tuple[Quantity, Outcome[tuple[Material, ...]]], ...]:
    """Return the plans of a project on cloth of each width that is usually sold, narrowest first."""
    return tuple(
        (width, plan_cutting(cuts, replace(project, usable_width=width))) for width in usual_widths(project.unit)
    )


def usual_widths(unit: Unit) -> tuple[Quantity, ...]:
    """Return the usable widths cloth is usually sold in, narrowest first."""
    because = Assumed("a width cloth is usually sold in")
    return tuple(Quantity("usable width", Fraction(width), unit, because) for width in _USUAL_WIDTHS[unit])
