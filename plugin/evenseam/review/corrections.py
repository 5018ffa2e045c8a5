"""The versions of a published pattern become its list of corrections: the author's words, and figures nobody typed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from evenseam.exact import Unit
from evenseam.pattern import Pattern
from evenseam.review.account import figures_told
from evenseam.review.changes import Change, Where
from evenseam.review.compare import Version
from evenseam.review.report import PatternReview, review_pattern
from evenseam.review.speech import ENGLISH, Speech


@dataclass(frozen=True, slots=True)
class CorrectedSize:
    """What differs in one size and edition from the version before."""

    size: str
    """Slug."""
    name: str
    unit: Unit
    figures: tuple[str, ...]
    """In words: outer border short strips 16 1/2 in → 17 in long."""


@dataclass(frozen=True, slots=True)
class Corrected:
    """What differs between two versions that could be computed."""

    sizes: tuple[CorrectedSize, ...]
    """Those in which a figure differs, in the order of the file."""
    unknown: tuple[str, ...] = ()
    """Names of sizes that one of the versions cannot compute, so that nothing is known of them."""


@dataclass(frozen=True, slots=True)
class Correction:
    """One version, as somebody who has the one before must know it."""

    version: str
    date: str
    what: str
    """The author's words."""
    before: str = ""
    """The version it is held against; empty for the first."""
    corrected: Corrected | None = None
    """None for the first, and where one of the two versions is not to be had."""


def list_corrections(
    pattern: Pattern, between: Callable[[str, str], Corrected | None]
) -> tuple[Correction, ...]:  # fmt: skip
    """Return a pattern's corrections, newest first: each version it lists, held against the one listed after it.

    `between` gives what differs from one version to another; see `compare_versions`.
    """
    found = []
    for number, change in enumerate(pattern.changes):
        below = pattern.changes[number + 1].version if number + 1 < len(pattern.changes) else ""
        corrected = between(below, change.version) if below else None
        found.append(Correction(change.version, change.date, change.what, below, corrected))
    return tuple(found)


def compare_versions(old: Version, new: Version, speech: Speech = ENGLISH) -> Corrected | None:
    """Return what differs between two versions of a pattern; None when one of them cannot be computed at all."""
    review = review_pattern(old, new)
    missing = [failure for failure in review.failures if not failure.is_computed]
    if not old.sheets or not new.sheets or any(not failure.where.size for failure in missing):
        return None
    names = dict.fromkeys(failure.where.name or failure.where.size for failure in missing)
    return Corrected(_sizes(review, speech), tuple(names))


def _sizes(review: PatternReview, speech: Speech) -> tuple[CorrectedSize, ...]:
    by_where: dict[Where, list[Change]] = {}
    for change in review.changes:
        if change.where.size and change.where.unit is not None:
            by_where.setdefault(change.where, []).append(change)
    order = {size.where: number for number, size in enumerate(review.sizes)}
    sizes = []
    for where in sorted(by_where, key=lambda where: order.get(where, len(order))):
        figures = figures_told(by_where[where], speech)
        if figures and where.unit is not None:
            sizes.append(CorrectedSize(where.size, where.name or where.size, where.unit, figures))
    return tuple(sizes)
