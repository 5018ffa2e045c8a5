"""The audit of an older printed version: which of its figures are wrong, and by how much."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches

from evenseam.exact import Unit, format_length, sign
from evenseam.pattern import Claim, Pattern, Quantity, equation
from evenseam.problems import Outcome, Problem
from evenseam.sheet.codes import CLAIM_NOT_CHECKED, CLAIM_OTHER_UNIT, CLAIM_UNKNOWN_FIGURE, CLAIM_WRONG
from evenseam.sheet.pattern_sheet import PatternSheet


@dataclass(frozen=True, slots=True)
class ClaimResult:
    """One stated figure beside the computed one."""

    claim: Claim
    computed: Quantity
    is_right: bool


def audit_claims(pattern: Pattern, sheets: Mapping[str, PatternSheet]) -> Outcome[tuple[ClaimResult, ...]]:
    """Compare every claim with the drafted edition's sheets, by size slug.

    A size whose sheet could not be computed is warned about, so that a claim is never silently taken as right.
    """
    results: list[ClaimResult] = []
    problems: list[Problem] = []
    for claim in pattern.claims:
        sheet = sheets.get(claim.size)
        if sheet is None:
            problems.append(
                Problem(
                    CLAIM_NOT_CHECKED, f"{claim.figure} of {claim.size} was not checked: the size has errors",
                    claim.stated.place, "mend the errors of that size first",
                )
            )  # fmt: skip
            continue
        problem = _audit_one(claim, sheet, results)
        if problem:
            problems.append(problem)
    return Outcome(tuple(results), tuple(problems))


def _audit_one(claim: Claim, sheet: PatternSheet, results: list[ClaimResult]) -> Problem | None:
    name = claim.figure.strip().lower().replace(" ", "_").replace("-", "_")
    figures = dict(sheet.figures)
    if name not in figures:
        near = get_close_matches(name, figures, n=3)
        hint = f"known figures near it: {', '.join(near)}" if near else "evenseam sheet lists every figure"
        return Problem(CLAIM_UNKNOWN_FIGURE, f"there is no figure named {claim.figure!r}", claim.stated.place, hint)
    computed = figures[name]
    stated = claim.stated
    if computed.unit is not Unit.COUNT and stated.unit is not computed.unit:
        message = f"{claim.figure} is computed in {computed.unit.symbol}, the claim says {stated.text}"
        return Problem(CLAIM_OTHER_UNIT, message, stated.place, "state the claim in the unit the pattern is drafted in")
    results.append(ClaimResult(claim, computed, stated.value == computed.value))
    if stated.value == computed.value:
        return None
    gap = stated.value - computed.value
    size = gap if sign(gap) > 0 else -gap
    direction = "large" if sign(gap) > 0 else "small"
    message = (
        f"{claim.figure} of {sheet.project.name} was printed as {format_length(stated.value, computed.unit)}; "
        f"it is {computed.text} ({format_length(size, computed.unit)} too {direction})"
    )
    hint = f"{equation(computed)}; correct the printed version, or the pattern if the print is what was meant"
    return Problem(CLAIM_WRONG, message, stated.place, hint)
