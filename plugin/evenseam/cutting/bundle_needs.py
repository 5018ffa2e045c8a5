"""What one size takes from a bundle, and what is bought by the length besides."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from evenseam.cutting.bundle import LEFT_OUT, PiecesPlan, plan_pieces
from evenseam.cutting.cloth_piece import ClothPiece
from evenseam.cutting.fabric_plan import plan_fabric
from evenseam.cutting.plan import Material
from evenseam.pattern import BATTING, BATTINGS, CutList, Project, Quantity
from evenseam.problems import Report


@dataclass(frozen=True, slots=True)
class AlsoNeeded:
    """Something bought beside a bundle."""

    material: str
    name: str
    buy: Quantity
    why: str


@dataclass(frozen=True, slots=True)
class BundleNeeds:
    """What one size takes from a bundle."""

    plans: tuple[PiecesPlan, ...]
    also: tuple[AlsoNeeded, ...]
    """Backing, batting, and every fabric some piece of which is larger than a piece of the bundle."""
    pieces: int
    """Pieces of cloth for all fabrics of the bundle together."""
    missing: int
    """How many pieces the bundle has too few."""

    @property
    def is_enough(self) -> bool:
        """True when the bundle serves every fabric that comes from it, and some fabric does."""
        return bool(self.plans) and not self.missing


def needs_of_bundle(
    cuts: CutList, project: Project, materials: Sequence[Material], cloth: ClothPiece, number: int
) -> BundleNeeds:
    """Return what one size takes from so many pieces of cloth; `materials` are its fabrics planned by the length."""
    plans = plan_pieces(cuts, project, cloth).value or ()
    pieces = sum(plan.number.whole for plan in plans)
    from_bundle = {plan.material for plan in plans}
    also: list[AlsoNeeded] = []
    for material in materials:
        if material.material in BATTINGS:
            why = "the middle layer" if material.material == BATTING else "the layer against heat"
            also.append(AlsoNeeded(material.material, material.name, material.buy, why))
        elif material.material not in from_bundle:
            is_backing = all(cut.part in LEFT_OUT for cut in cuts.of(material.material))
            why = "for the backing" if is_backing else f"a piece of it is larger than a {cloth.name}"
            also.append(AlsoNeeded(material.material, material.name, material.buy, why))
        else:
            backing = _backing(material, cuts, project)
            also += [AlsoNeeded(material.material, material.name, backing, "for the backing")] if backing else []
    return BundleNeeds(plans, tuple(also), pieces, max(0, pieces - number))


def _backing(material: Material, cuts: CutList, project: Project) -> Quantity | None:
    left = tuple(cut for cut in cuts.of(material.material) if cut.part in LEFT_OUT)
    planned = plan_fabric(project.fabric(material.material), left, project, Report()) if left else None
    return planned.buy if planned else None
