"""A review as one line a pattern."""

from __future__ import annotations

from evenseam.review.account import editions, size_lines
from evenseam.review.cause_words import because_words
from evenseam.review.change_words import change_words, edition_words, size_words
from evenseam.review.grouping import group_changes
from evenseam.review.report import Failure, PatternReview, Review


def write_one_line(review: Review) -> str:
    """Return one line for each pattern that changes, or one that says that none does."""
    told = [_pattern(pattern) for pattern in review.patterns if not pattern.is_same]
    return "\n".join(told) if told else "no computed change"


def _pattern(review: PatternReview) -> str:
    parts = [_failure(failure) for failure in review.failures]
    groups, rest = group_changes(review.changes)
    for group in groups:
        lines = size_lines(group, review, editions(review)[:1]) or size_lines(group, review, editions(review))
        reason = because_words(group.causes)
        if not lines:
            parts.append(reason.removeprefix("because "))
        for line in lines:
            told = ", ".join(line.told) or line.left_out
            kept = f"; {line.kept}" if line.kept else ""
            name = f"{size_words(line.where)}: " if line.where.size else ""
            parts.append(f"{name}{told}, {reason}{kept}")
    parts += dict.fromkeys(change_words(change) for change in rest)
    parts += [problem.message for problem in review.problems]
    return " ".join(f"{review.title}: {'; '.join(parts)}".split())


def _failure(failure: Failure) -> str:
    where = failure.where
    name = f"the {size_words(where)} in {edition_words(where.unit)}" if where.size else "it"
    state = "published" if failure.is_computed else "computed"
    return f"{name} CANNOT BE {state.upper()} as it is now" if failure.is_new else f"{name} could not be {state} before"
