"""From a cut list to cutting plans and what to buy."""

from evenseam.cutting.bundle import BundleAnswer, CutPiece, PiecesPlan, plan_pieces, sizes_from_bundle
from evenseam.cutting.bundle_needs import AlsoNeeded, BundleNeeds, needs_of_bundle
from evenseam.cutting.cloth_piece import ClothPiece, cloth_piece, cloth_piece_names
from evenseam.cutting.plan import (
    Alternative,
    AlternativeKind,
    BiasSquares,
    CuttingLine,
    CuttingPlan,
    JoinedPieces,
    Material,
    Packaged,
    PlannedPiece,
    PlannedStrip,
    SubcutLine,
)
from evenseam.cutting.planning import plan_cutting, plan_usual_widths, usual_widths
from evenseam.cutting.requesting import rectangles
from evenseam.cutting.ways_to_buy import OtherWidth, WaysToBuy, ways_to_buy
from evenseam.cutting.yardage import SHRINKAGE, shop_step, spare

__all__ = [
    "SHRINKAGE",
    "AlsoNeeded",
    "Alternative",
    "AlternativeKind",
    "BiasSquares",
    "BundleAnswer",
    "BundleNeeds",
    "ClothPiece",
    "CutPiece",
    "CuttingLine",
    "CuttingPlan",
    "JoinedPieces",
    "Material",
    "OtherWidth",
    "Packaged",
    "PiecesPlan",
    "PlannedPiece",
    "PlannedStrip",
    "SubcutLine",
    "WaysToBuy",
    "cloth_piece",
    "cloth_piece_names",
    "needs_of_bundle",
    "plan_cutting",
    "plan_pieces",
    "plan_usual_widths",
    "rectangles",
    "shop_step",
    "sizes_from_bundle",
    "spare",
    "usual_widths",
    "ways_to_buy",
]
