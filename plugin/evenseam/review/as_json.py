"""A review as open data."""

from __future__ import annotations

from typing import Any

from evenseam.pattern import Quantity
from evenseam.problems import Place, Problem
from evenseam.review.cause_words import because_words, cause_place, cause_words
from evenseam.review.change_words import change_words
from evenseam.review.changes import (
    Added,
    Cause,
    Change,
    InputCause,
    Kind,
    PartCause,
    Remeasured,
    Removed,
    Renamed,
    Restated,
    Where,
)
from evenseam.review.engines import EngineReview
from evenseam.review.report import PatternReview, Review
from evenseam.review.weight import weight_of_pattern, weight_of_review, weights

FORMAT = 1


def review_as_json(review: Review) -> dict[str, Any]:
    """Return the review as data for `json.dumps`."""
    return {
        "format": FORMAT,
        "base": review.base,
        "head": review.head,
        "is_same": review.is_same,
        "weight": weight_of_review(review).word,
        "untouched": list(review.untouched),
        "publisher": _engine(review.engine) if review.engine else None,
        "patterns": [_pattern(pattern) for pattern in review.patterns],
    }


def _engine(engine: EngineReview) -> dict[str, Any]:
    return {
        "words": engine.words,
        "compared": engine.compared,
        "changes": [
            {"pattern": one.pattern, "size": one.name, "edition": one.edition, "words": list(one.words)}
            for one in engine.changes
        ],
        "cannot_be_computed": list(engine.failures),
    }


def _pattern(review: PatternReview) -> dict[str, Any]:
    return {
        "slug": review.slug,
        "title": review.title,
        "weight": weight_of_pattern(review).word,
        "changes": [
            change_as_json(change) | {"weight": weight.word}
            for change, weight in zip(review.changes, weights(review.changes), strict=True)
        ],
        "unchanged": [_where(size.where) for size in review.sizes if size.is_same],
        "cannot_be_computed": [
            {
                **_where(failure.where),
                "side": "head" if failure.is_new else "base",
                "problems": [_problem(problem) for problem in failure.problems],
            }
            for failure in review.failures
        ],
        "problems": [_problem(problem) for problem in review.problems],
    }


def change_as_json(change: Change) -> dict[str, Any]:
    """Return one change as data; lengths are texts with their unit."""
    data: dict[str, Any] = {
        "change": type(change).__name__.lower(),
        "kind": change.kind.name.lower(),
        **_where(change.where),
    }
    match change:
        case Added() | Removed():
            data |= {"id": change.id, "label": change.label, "figures": [_figure(figure) for figure in change.figures]}
        case Renamed():
            data |= {
                "id": change.new_id, "label": change.new_label, "old_id": change.old_id, "old_label": change.old_label,
            }  # fmt: skip
        case Remeasured():
            data |= {
                "id": change.id, "label": change.label,
                "old": [_figure(figure) for figure in change.old], "new": [_figure(figure) for figure in change.new],
            }  # fmt: skip
        case Restated():
            data |= {"id": change.id, "label": change.label, "of": change.aspect, "old": change.old, "new": change.new}
    data["because"] = [_cause(cause) for cause in change.because]
    if change.kind is Kind.PART:
        data["words"] = "; ".join(cause_words(cause) for cause in change.because)
    else:
        data["words"] = ", ".join(part for part in (change_words(change), because_words(change.because)) if part)
    return data


def _where(where: Where) -> dict[str, Any]:
    return {"size": where.size, "unit": where.unit.symbol if where.unit else ""}


def _figure(figure: Quantity) -> dict[str, str]:
    return {"name": figure.name, "value": figure.number, "unit": figure.unit.symbol}


def _cause(cause: Cause) -> dict[str, Any]:
    data: dict[str, Any] = {"words": cause_words(cause), "place": _place(cause_place(cause))}
    if isinstance(cause, InputCause):
        data["figures"] = [{"old": _figure(old), "new": _figure(new)} for old, new in cause.figures]
    elif isinstance(cause, PartCause):
        data |= {"part": cause.part, "of": cause.about, "old": cause.old, "new": cause.new}
    return data


def _place(place: Place | None) -> dict[str, Any] | None:
    return {"file": place.file, "line": place.line, "column": place.column} if place else None


def _problem(problem: Problem) -> dict[str, Any]:
    return {
        "code": problem.code.name, "severity": problem.severity.value, "message": problem.message,
        "hint": problem.hint, "place": _place(problem.place),
    }  # fmt: skip
