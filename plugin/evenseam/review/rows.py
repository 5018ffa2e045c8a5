"""A change as a row of a table: what, before, after, and the difference."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.pattern import Quantity
from evenseam.review.cause_words import cause_words, difference
from evenseam.review.change_words import change_words, shortened, size_of
from evenseam.review.changes import Added, Change, Kind, Remeasured, Removed, Renamed, Restated

LONGEST = 300
_TOLD_WHOLE = ("fabrics", "drawing", "listing")
"""Decisions that only a sentence can tell."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row; empty texts for what does not apply."""

    what: str
    before: str
    after: str
    difference: str = ""


def row_of(change: Change) -> Row:
    """Return a change as a row."""
    match change:
        case Added():
            return Row(_what(change.kind, change.label), "", _figures(change.figures, change.kind) or "new")
        case Removed():
            return Row(_what(change.kind, change.label), _figures(change.figures, change.kind) or "there", "gone")
        case Renamed():
            noun = {Kind.CUT: "cut", Kind.STEP: "step", Kind.SIZE: "size"}.get(change.kind, "name")
            return Row(
                f"name of a {noun}", f"{change.old_label} ({change.old_id})", f"{change.new_label} ({change.new_id})"
            )
        case Remeasured():
            gaps = [difference(old, new) for old, new in zip(change.old, change.new, strict=True)]
            told = [gap or "other unit" for gap in gaps]
            gap = told[0] if len(set(told)) == 1 else "; ".join(_named(change, told))
            name = f"{change.label} (was {change.old_label})" if change.old_label else change.label
            return Row(
                _what(change.kind, name), _figures(change.old, change.kind), _figures(change.new, change.kind), gap
            )
        case Restated(kind=Kind.PART) if change.aspect in _TOLD_WHOLE or not (change.old and change.new):
            return Row(change.label, change.old, "; ".join(cause_words(cause) for cause in change.because))
        case Restated():
            label = change.label if change.label == change.aspect else f"{change.label}: {change.aspect}"
            label = change.label if change.kind is Kind.WORDS or not change.aspect else label
            label = f"fabric {label}" if change.kind is Kind.FABRIC else label
            before, after = shortened(change.old, LONGEST), shortened(change.new, LONGEST)
            if before == after:
                return Row(label, before, change_words(change))
            return Row(label, before, after)


def _what(kind: Kind, label: str) -> str:
    match kind:
        case Kind.YARDAGE:
            return f"buy {label}"
        case Kind.BATTING:
            return "buy batting"
        case Kind.STEP:
            return f"step “{label}”"
        case Kind.SIZE:
            return f"size {label}"
        case Kind.CHECKPOINT:
            return f"measured after “{label}”"
        case _:
            return label


def _figures(figures: tuple[Quantity, ...], kind: Kind) -> str:
    if kind is Kind.CUT and len(figures) == 3:
        return f"{figures[2].number} of {size_of(figures[:2])}"
    if len({figure.unit for figure in figures}) > 1:
        return ", ".join(figure.text for figure in figures)
    return size_of(figures)


def _named(change: Remeasured, gaps: list[str]) -> list[str]:
    sides = ("width", "height", "number")
    return [f"{side} {gap}" for side, gap in zip(sides, gaps, strict=False) if gap != "the same"]
