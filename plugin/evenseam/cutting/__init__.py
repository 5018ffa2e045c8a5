"""From a cut list to cutting plans and what to buy."""

from evenseam.cutting.plan import (
    CuttingLine,
    CuttingPlan,
    JoinedPieces,
    Material,
    PlannedPiece,
    PlannedStrip,
    SubcutLine,
)

__all__ = ["CuttingLine", "CuttingPlan", "JoinedPieces", "Material", "PlannedPiece", "PlannedStrip", "SubcutLine"]
