"""Batting is bought as one piece: by the length, or packaged."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from evenseam.cutting.plan import Material, Packaged
from evenseam.cutting.yardage import in_unit, shop_length_unwashed, shop_step
from evenseam.exact import Number
from evenseam.pattern import BATTING, INSULATION, Cut, Project, derived, largest

PACKAGED = (("crib", 45, 60), ("twin", 72, 90), ("full", 81, 96), ("queen", 90, 108), ("king", 120, 120))
"""Name, width and length in inches: Karen Daniel, Common Quilt and Batting Sizes, Honey Be Good, 2012."""


def insulation_material(cuts: Sequence[Cut], project: Project) -> Material:
    """Return the heat-resistant batting of a project, which is sold off the roll and in small pieces only."""
    name = "Heat-resistant batting"
    needed = derived("longer side of the heat-resistant batting", largest(cuts[0].width, cuts[0].height))
    buy = shop_length_unwashed(name, needed, shop_step(project))
    return Material(INSULATION, name, needed, buy, (cuts[0].width, cuts[0].height), None, None)


def batting_material(cuts: Sequence[Cut], project: Project) -> Material:
    """Return the batting of a project: its longer side, its size, and the smallest package that holds it."""
    cut = max(cuts, key=lambda one: (one.width.value * one.height.value, one.id))
    needed = derived("longer side of the batting", largest(cut.width, cut.height))
    return Material(
        BATTING,
        project.batting_name,
        needed,
        shop_length_unwashed(project.batting_name, needed, shop_step(project)),
        (cut.width, cut.height),
        None,
        _smallest_package(cut, project),
    )


def _smallest_package(cut: Cut, project: Project) -> Packaged | None:
    short, long = sorted((cut.width.value, cut.height.value))
    for name, width, length in PACKAGED:
        if _inches(width, project) >= short and _inches(length, project) >= long:
            return Packaged(name, Fraction(width), Fraction(length))
    return None


def _inches(length: int, project: Project) -> Number:
    return in_unit(Fraction(length), project.unit)
