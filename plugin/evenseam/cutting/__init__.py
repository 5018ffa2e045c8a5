"""From a cut list to cutting plans and what to buy."""

from evenseam.cutting.plan import (
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
from evenseam.cutting.planning import plan_cutting

__all__ = [
    "BiasSquares",
    "CuttingLine",
    "CuttingPlan",
    "JoinedPieces",
    "Material",
    "Packaged",
    "PlannedPiece",
    "PlannedStrip",
    "SubcutLine",
    "plan_cutting",
]
