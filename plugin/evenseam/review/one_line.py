"""A review as one line a pattern."""

from __future__ import annotations

from evenseam.review.account import (
    SizeLine,
    editions,
    failures_together,
    line_name,
    size_lines,
    standing_alone,
    state_words,
)
from evenseam.review.cause_words import because_words, reason_words
from evenseam.review.grouping import Group, group_changes, is_told
from evenseam.review.report import Failure, PatternReview, Review

MOST_CUTS = 3


def write_one_line(review: Review) -> str:
    """Return one line for each pattern that changes, or one that says that none does."""
    told = [_pattern(pattern) for pattern in review.patterns if not pattern.is_same]
    if review.engine is not None and not review.engine.is_same:
        engine = review.engine
        told += [
            f"publisher: {one.title}, {one.name} in {one.edition}: {'; '.join(one.words)}" for one in engine.changes
        ]
        told += [f"publisher: {failure}" for failure in engine.failures]
    return "\n".join(told) if told else review.same_words


def _pattern(review: PatternReview) -> str:
    parts = [_failure(name, failure) for name, failure in failures_together(review)]
    groups, rest = group_changes(review.changes)
    for group in (each for each in groups if is_told(each, groups)):
        parts.append(_group(group, review))
    parts += standing_alone(rest, review)
    parts += [problem.message for problem in review.problems]
    return " ".join(f"{review.title}: {'; '.join(part for part in parts if part)}".split())


def _group(group: Group, review: PatternReview) -> str:
    """Return a cause and what follows: the reason last for one size, first for several."""
    first = editions(review)[:1]
    lines = size_lines(group, review, first, MOST_CUTS) or size_lines(group, review, editions(review), MOST_CUTS)
    reason = because_words(group.causes)
    told = [_line(line) for line in lines]
    if len(lines) == 1:
        size, words = told[0]
        return f"{size}{words}, {reason}" + (f"; {lines[0].kept}" if lines[0].kept else "")
    plain = reason_words(group.causes)
    if told:
        return f"{plain}, so " + "; ".join(size + words for size, words in told)
    return plain


def _line(line: SizeLine) -> tuple[str, str]:
    words = ", ".join(part for part in (*line.told, f"{line.left_out}" if line.left_out else "") if part)
    return f"{line_name(line)}: " if line_name(line) else "", words


def _failure(name: str, failure: Failure) -> str:
    words = state_words(failure)
    # Never to be read past in a line that may say much else.
    return (
        f"{name} {words.replace('cannot be computed', 'CANNOT BE COMPUTED')}" if failure.is_new else f"{name} {words}"
    )
