"""A review as the lines by which a continuous integration marks the lines of a file."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.problems import Place, Severity
from evenseam.review.account import editions, line_name, size_lines
from evenseam.review.cause_words import cause_figures, cause_place, cause_words, listed
from evenseam.review.change_words import size_words
from evenseam.review.grouping import MANY, Group, group_changes, is_told
from evenseam.review.report import PatternReview, Review

MOST = 10
"""Of each level, in one step of a job; more are dropped there without a word."""


@dataclass(frozen=True, slots=True)
class Annotation:
    """One mark: error, warning or notice, where, and what."""

    level: str
    place: Place | None
    title: str
    text: str


def write_annotations(review: Review, most: int = MOST) -> str:
    """Return workflow commands, at most `most` of each level; the last one counts those left out."""
    found: dict[str, list[Annotation]] = {}
    for pattern in review.patterns:
        for annotation in _of(pattern):
            found.setdefault(annotation.level, []).append(annotation)
    lines: list[str] = []
    for level in ("error", "warning", "notice"):
        marks = found.get(level, [])
        kept = marks if len(marks) <= most else marks[: most - 1]
        lines += [_command(mark) for mark in kept]
        if len(marks) > len(kept):
            rest = Annotation(level, None, "Evenseam", f"{len(marks) - len(kept)} more are in the review itself")
            lines.append(_command(rest))
    return "\n".join(lines)


def _of(review: PatternReview) -> list[Annotation]:
    marks = []
    for failure in review.failures:
        level = "error" if failure.is_new else "warning"
        name = f"{review.title}, {size_words(failure.where)}" if failure.where.size else review.title
        state = "published" if failure.is_computed else "computed"
        title = f"{name} cannot be {state}" if failure.is_new else f"{name} could not be {state} before"
        for problem in failure.problems:
            marks.append(Annotation(level, problem.place, title, _sentence(problem.message, problem.hint)))
        if not failure.problems:
            marks.append(Annotation(level, None, title, "nothing is known about its changes"))
    for problem in review.problems:
        level = "error" if problem.severity is Severity.ERROR else "warning"
        marks.append(Annotation(level, problem.place, review.title, _sentence(problem.message, problem.hint)))
    groups, _ = group_changes(review.changes)
    marks += [_mark(group, review) for group in groups if is_told(group, groups)]
    return list(dict.fromkeys(marks))


def _mark(group: Group, review: PatternReview) -> Annotation:
    lines = size_lines(group, review, editions(review)[:1])
    told = []
    for line in lines:
        words = "; ".join(part for part in (*line.told, line.left_out) if part)
        told.append(f"{line_name(line)}: {words}" if line_name(line) else words)
    many = len(group.causes) > MANY
    figures = "" if many else ", ".join(filter(None, (cause_figures(cause) for cause in group.causes)))
    text = "\n".join(([figures] if figures else []) + (told or ["no cut and no amount follows from it"]))
    places = [place for cause in group.causes if (place := cause_place(cause))]
    reason = f"{len(group.causes)} changes together" if many else listed([cause_words(c) for c in group.causes])
    title = f"{review.title}: {reason}"
    return Annotation("notice", places[0] if places else None, title, text)


def _sentence(message: str, hint: str) -> str:
    return f"{message}; {hint}" if hint else message


def _command(mark: Annotation) -> str:
    properties = [("title", mark.title)]
    if mark.place:
        properties = [
            ("file", mark.place.file), ("line", str(mark.place.line)), ("endLine", str(mark.place.end_line)),
            ("col", str(mark.place.column)), *properties,
        ]  # fmt: skip
    written = ",".join(f"{name}={_property(value)}" for name, value in properties)
    return f"::{mark.level} {written}::{_data(mark.text)}"


def _data(text: str) -> str:
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _data(text).replace(":", "%3A").replace(",", "%2C")
