"""A review as one line a pattern."""

from __future__ import annotations

from evenseam.review.account import SizeLine, editions, size_lines, standing_alone
from evenseam.review.cause_words import because_words
from evenseam.review.change_words import edition_words, size_words
from evenseam.review.grouping import Group, group_changes
from evenseam.review.report import Failure, PatternReview, Review

MOST_CUTS = 3


def write_one_line(review: Review) -> str:
    """Return one line for each pattern that changes, or one that says that none does."""
    told = [_pattern(pattern) for pattern in review.patterns if not pattern.is_same]
    return "\n".join(told) if told else "no computed change"


def _pattern(review: PatternReview) -> str:
    parts = [_failure(failure) for failure in review.failures]
    groups, rest = group_changes(review.changes)
    for group in groups:
        parts.append(_group(group, review))
    parts += standing_alone(rest, review)
    parts += [problem.message for problem in review.problems]
    return " ".join(f"{review.title}: {'; '.join(parts)}".split())


def _group(group: Group, review: PatternReview) -> str:
    """Return a cause and what follows: the reason last for one size, first for several."""
    first = editions(review)[:1]
    lines = size_lines(group, review, first, MOST_CUTS) or size_lines(group, review, editions(review), MOST_CUTS)
    reason = because_words(group.causes)
    told = [_line(line) for line in lines]
    if len(lines) == 1:
        size, words = told[0]
        return f"{size}{words}, {reason}" + (f"; {lines[0].kept}" if lines[0].kept else "")
    plain = reason.removeprefix("because ")
    return f"{plain}, so " + "; ".join(size + words for size, words in told) if told else plain


def _line(line: SizeLine) -> tuple[str, str]:
    words = ", ".join(part for part in (*line.told, f"{line.left_out}" if line.left_out else "") if part)
    return f"{size_words(line.where)}: " if line.where.size else "", words


def _failure(failure: Failure) -> str:
    where = failure.where
    name = f"the {size_words(where)} in {edition_words(where.unit)}" if where.size else "it"
    state = "published" if failure.is_computed else "computed"
    return f"{name} CANNOT BE {state.upper()} as it is now" if failure.is_new else f"{name} could not be {state} before"
