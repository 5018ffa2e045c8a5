"""Plans on cloth sold in pieces: how many fat quarters a fabric takes, and which sizes a bundle can make."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from evenseam.cutting.cloth_piece import ClothPiece
from evenseam.cutting.codes import PIECE_LARGER_THAN_CLOTH_PIECE
from evenseam.cutting.fabric_plan import bias_squares, joined_pieces
from evenseam.cutting.merging import Merged
from evenseam.cutting.placing import place_across, place_along
from evenseam.cutting.plan import BiasSquares, JoinedPieces, PlannedStrip
from evenseam.cutting.request import FabricRequest
from evenseam.cutting.requesting import request_fabric
from evenseam.cutting.sheets import Sheet, fewest_sheets
from evenseam.cutting.where import place_of
from evenseam.exact import Unit
from evenseam.pattern import BATTING, Assumed, Cut, CutList, Fabric, Project, Quantity
from evenseam.problems import Outcome, Report

LEFT_OUT = ("backing",)
"""Parts that are not asked of small pieces of cloth: a backing is bought by the length."""


@dataclass(frozen=True, slots=True)
class CutPiece:
    """What one piece of cloth is cut into, strips in order; coordinates from its squared-up corner."""

    strips: tuple[PlannedStrip, ...]


@dataclass(frozen=True, slots=True)
class PiecesPlan:
    """How all pieces of one fabric come from equal pieces of cloth."""

    material: str
    name: str
    cloth: ClothPiece
    number: Quantity
    """How many pieces of cloth."""
    pieces: tuple[CutPiece, ...]
    joined: tuple[JoinedPieces, ...]
    lower_bound: int
    is_fewest: bool
    """True when proved: no plan can do with fewer."""
    bias: tuple[BiasSquares, ...] = ()


@dataclass(frozen=True, slots=True)
class BundleAnswer:
    """Whether a bundle is enough for one project size."""

    size: str
    name: str
    unit: Unit
    plans: tuple[PiecesPlan, ...]
    needed: int
    """Pieces of cloth for all fabrics together."""
    is_enough: bool
    """False too when some piece does not come from such cloth at all."""


def plan_pieces(
    cuts: CutList, project: Project, cloth: ClothPiece, left_out: tuple[str, ...] = LEFT_OUT
) -> Outcome[tuple[PiecesPlan, ...]]:
    """Return for each fabric how few pieces of cloth it takes; batting and the parts named are left out.

    A fabric with a piece larger than the cloth is reported and left out.
    """
    report = Report()
    plans: list[PiecesPlan] = []
    for fabric in project.fabrics:
        asked = tuple(cut for cut in cuts.of(fabric.id) if cut.part not in left_out)
        plan = _plan_fabric(fabric, asked, project, cloth, report) if asked else None
        if plan is not None:
            plans.append(plan)
    return Outcome(tuple(plans), report.as_tuple())


def sizes_from_bundle(
    sizes: Iterable[tuple[CutList, Project]], cloth: ClothPiece, number: int
) -> tuple[BundleAnswer, ...]:
    """Return for each project size whether so many pieces of cloth are enough, each fabric from pieces of its own."""
    answers: list[BundleAnswer] = []
    for cuts, project in sizes:
        outcome = plan_pieces(cuts, project, cloth)
        plans = outcome.value or ()
        needed = sum(plan.number.whole for plan in plans)
        is_enough = outcome.is_valid and needed <= number
        answers.append(BundleAnswer(project.size, project.name, project.unit, plans, needed, is_enough))
    return tuple(answers)


def _plan_fabric(
    fabric: Fabric, cuts: tuple[Cut, ...], project: Project, cloth: ClothPiece, report: Report
) -> PiecesPlan | None:
    if fabric.id == BATTING or not cuts:
        return None
    own = Report()
    asked = request_fabric(cuts, project, cloth.width, own)
    height = asked.scale.below(cloth.height.value)
    for request in asked.requests:
        if all(lie.along > height for lie in request.lies):
            own.add(
                PIECE_LARGER_THAN_CLOTH_PIECE,
                place_of(request.cut.width, request.cut.height),
                f"{request.cut.label}: {request.cut.width.text} × {request.cut.height.text} does not come from a "
                f"{cloth.name} of {cloth.width.text} × {cloth.height.text}",
                "buy this fabric by the length",
            )
    report.problems += own.problems
    if own.has_errors() or not asked.requests:
        return None
    merged = Merged.of(asked.requests, [request.count for request in asked.requests], asked.width, height)
    found = fewest_sheets(merged.demands, asked.width, height)
    pieces = tuple(CutPiece(tuple(_strips(sheet, merged, asked, height))) for sheet in found.sheets)
    number = Quantity(
        f"{cloth.plural} of {fabric.name}",
        Fraction(len(pieces)),
        Unit.COUNT,
        Assumed("the pieces the cutting plan uses", "counted in the plan"),
    )
    return PiecesPlan(
        fabric.id,
        fabric.name,
        cloth,
        number,
        pieces,
        tuple(joined_pieces(asked)),
        found.bound,
        len(pieces) == found.bound,
        bias_squares(asked),
    )


def _strips(sheet: Sheet, merged: Merged, asked: FabricRequest, height: int) -> Iterator[PlannedStrip]:
    place = 0
    for pattern in sheet.patterns:
        strip = merged.strip(pattern)
        if sheet.is_along:
            yield place_along(strip, asked, place, height)
        else:
            yield place_across(strip, asked, 0, place, asked.width)
        place += strip.height
