"""From a pattern and a size to the sheet that every page, picture, paper and review reads."""

from evenseam.sheet.as_json import figure_as_json, sheet_as_json
from evenseam.sheet.claims import ClaimResult, audit_claims
from evenseam.sheet.compute import compute_sheet, compute_sheets
from evenseam.sheet.pattern_sheet import PatternSheet

__all__ = [
    "ClaimResult",
    "PatternSheet",
    "audit_claims",
    "compute_sheet",
    "compute_sheets",
    "figure_as_json",
    "sheet_as_json",
]
