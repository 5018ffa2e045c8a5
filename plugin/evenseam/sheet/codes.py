"""Problem codes of the sheet floor."""

from __future__ import annotations

from evenseam.problems import Code, Severity

CLAIM_WRONG = Code(590, "claim-wrong")
CLAIM_UNKNOWN_FIGURE = Code(591, "claim-unknown-figure")
CLAIM_OTHER_UNIT = Code(592, "claim-other-unit")
CLAIM_NOT_CHECKED = Code(593, "claim-not-checked", Severity.WARNING)

CODES = (CLAIM_WRONG, CLAIM_UNKNOWN_FIGURE, CLAIM_OTHER_UNIT, CLAIM_NOT_CHECKED)
