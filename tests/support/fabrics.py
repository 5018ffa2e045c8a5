"""Generated cut lists such as quilts have: patches, sashes, borders, binding, backing. Invented, nothing published."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from random import Random

from evenseam.cutting import CuttingPlan, plan_cutting
from evenseam.exact import Unit
from evenseam.pattern import Assumed, Cut, CutList, CutShape, Project, Quantity, StripDirection, StripJoin

from support.samples import LAP_QUILT, count

WIDTHS = (40, 42, 44)


def cut(
    id: str,
    width: Fraction | str | int,
    height: Fraction | str | int,
    pieces: int,
    shape: CutShape = CutShape.RECTANGLE,
    *,
    material: str = "sea",
    part: str = "block:lantern",
    unit: Unit = Unit.INCH,
    **more: object,
) -> Cut:
    """Return a cut from exact numbers or texts such as 7/2."""
    sizes = [
        Quantity(f"{id} {side}", Fraction(value), unit, Assumed("a sample"))
        for side, value in (("width", width), ("height", height))
    ]
    return Cut(id, id, material, shape, *sizes, count(f"{id} count", pieces), part, **more)  # type: ignore[arg-type]


def project_on(width: Fraction | int, unit: Unit = Unit.INCH, seam: str = "1/4") -> Project:
    """Return a project planned on cloth of this usable width."""
    return replace(
        LAP_QUILT,
        unit=unit,
        usable_width=Quantity("usable width", Fraction(width), unit, Assumed("a sample")),
        seam_allowance=Quantity("seam allowance", Fraction(seam), unit, Assumed("a sample")),
    )


def plan_of(project: Project, *cuts: Cut) -> CuttingPlan:
    """Return the plan of the one fabric these cuts are made from."""
    outcome = plan_cutting(CutList(cuts), project)
    assert outcome.problems == (), outcome.problems
    (material,) = outcome.value
    assert material.plan is not None
    return material.plan


def cloth_used(plan: CuttingPlan) -> Fraction:
    """Return the length of all strips, without squaring up."""
    return max(strip.y + strip.height for strip in plan.strips)


def generated_fabric(random: Random) -> tuple[CutList, Project]:
    """Return the cuts one fabric of a quilt is asked for, and the project with its usable width."""
    rows, columns = random.randint(1, 6), random.randint(1, 6)
    blocks = rows * columns
    block = Fraction(random.choice((6, 8, 9, 10, 12, 15)))
    seams = Fraction(1, 2)
    cuts: list[Cut] = []
    for number in range(random.choice((1, 1, 2, 2, 3, 4, 5))):
        across = _finished(random, block)
        along = across if random.random() < Fraction(2, 5) else _finished(random, block)
        pieces = blocks * random.choice((1, 1, 2, 4, 4, 8))
        shape = CutShape.RECTANGLE
        extra = seams
        if across == along and random.random() < Fraction(1, 3):
            shape, extra = CutShape.HALF_SQUARE_TRIANGLE, Fraction(7, 8)
        is_upright = random.random() < Fraction(1, 8)
        cuts.append(cut(f"patch-{number}", across + extra, along + extra, pieces, shape, is_upright=is_upright))
    width, height = columns * block, rows * block
    if random.random() < Fraction(1, 3):
        sash = Fraction(random.choice((2, 3, 4)), 2)
        pieces = rows * (columns + 1)
        cuts.append(cut("sash", sash + seams, block + seams, pieces, part="sashing"))
    if random.random() < Fraction(1, 2):
        border = Fraction(random.choice((2, 3, 4, 5, 6, 8, 10)), 2)
        settings = {"part": "border:outer", "join": StripJoin.DIAGONAL, "direction": StripDirection.EITHER}
        cuts.append(cut("border-sides", border + seams, height + seams, 2, CutShape.STRIP, **settings))
        cuts.append(cut("border-ends", width + 2 * border + seams, border + seams, 2, CutShape.STRIP, **settings))
    if random.random() < Fraction(1, 3):
        way_round = 2 * (width + height) + 20
        strip = random.choice((Fraction(9, 4), Fraction(5, 2)))
        cuts.append(cut("binding", strip, way_round, 1, CutShape.BINDING, part="binding", join=StripJoin.DIAGONAL))
    if random.random() < Fraction(1, 10):
        cuts.append(cut("backing", width + 8, height + 8, 1, part="backing", join=StripJoin.STRAIGHT))
    return CutList(tuple(cuts)), project_on(random.choice(WIDTHS))


def _finished(random: Random, block: Fraction) -> Fraction:
    """Return a finished side of a patch: parts of a block such as thirds and quarters, on quarters of an inch."""
    part = random.choice((2, 3, 4, 5, 6))
    times = random.choice((1, 1, 1, 2, 3))
    side = min(block * times / part, block)
    return max(Fraction(round(side * 4), 4), Fraction(3, 4))
