"""A review as Markdown for a comment: short first, the figures folded away, never longer than a comment may be."""

from __future__ import annotations

import re
from collections.abc import Iterable

from evenseam.problems import Problem
from evenseam.review.account import SizeLine, editions, headline, size_lines, standing_alone, unchanged_words
from evenseam.review.cause_words import because_words, cause_figures, cause_place, cause_words, listed, short_place
from evenseam.review.change_words import edition_words, size_words
from evenseam.review.changes import Cause, Change, Where
from evenseam.review.grouping import Group, group_changes, is_root
from evenseam.review.report import Failure, PatternReview, Review
from evenseam.review.rows import row_of

LONGEST = 60_000
"""Signs; a comment may have 65,536, and whoever posts it may want to add a line."""
MARK = "<!-- evenseam review -->"
"""By which a later comment finds the one it takes the place of."""

_SPECIAL = re.compile(r"([\\`*_\[\]<>|~])")


def write_markdown(review: Review, longest: int = LONGEST) -> str:
    """Return the review. What does not fit is left out from the end, and counted."""
    top = [MARK, f"### {_title(review)}", "", f"Compared {_code(review.base)} with {_code(review.head)}.", ""]
    shorts = [_short(pattern) for pattern in review.patterns]
    folds = [fold for pattern in review.patterns for fold in _folds(pattern)]
    foot = _foot(review)
    return _fitted("\n".join(top), shorts, folds, foot, longest)


def escape(text: str) -> str:
    r"""Return a text that is itself and nothing else in Markdown, on one line, and that calls nobody.

    >>> escape("<b> *all*")
    '\\<b\\> \\*all\\*'
    """
    line = " ".join(text.split())
    line = "".join(sign for sign in line if sign.isprintable())
    line = _SPECIAL.sub(r"\\\1", line.replace("&", "&amp;"))
    # A word joiner keeps names, numbers and addresses from becoming calls and links; a dollar alone would begin a
    # formula.
    for pattern in _CALLS:
        line = pattern.sub("\\1\u2060", line)
    return line.replace("$", "<span>$</span>")


_CALLS = tuple(
    re.compile(text, re.IGNORECASE)
    for text in (r"(@)(?=\w)", r"(#)(?=\w)", r"(:)(?=//)", r"\b(www)(?=\.)", r"\b(gh)(?=-\d)")
)


def _title(review: Review) -> str:
    if review.is_same:
        return "No computed change"
    changed = [pattern for pattern in review.patterns if pattern.changes]
    failed = [pattern for pattern in review.patterns if any(not failure.is_computed for failure in pattern.failures)]
    stopped = [pattern for pattern in review.patterns if pattern.failures and pattern not in failed]
    told = []
    if changed:
        told.append(f"{_counted(len(changed), 'pattern')} {'changes' if len(changed) == 1 else 'change'}")
    if failed:
        told.append(f"{_counted(len(failed), 'pattern')} cannot be computed")
    if stopped:
        told.append(f"{_counted(len(stopped), 'pattern')} cannot be published")
    wrong = sum(len(pattern.problems) for pattern in review.patterns)
    if wrong:
        told.append(_counted(wrong, "problem"))
    text = "; ".join(told)
    return text[:1].upper() + text[1:]


def _short(review: PatternReview) -> str:
    lines = [f"**{escape(review.title)}**: {escape(headline(review))}.", ""]
    lines += [_failure(failure) for failure in review.failures]
    lines += [_problem(problem) for problem in review.problems]
    groups, rest = group_changes(review.changes)
    units = editions(review)
    for group in groups:
        lines += _group(group, review, units)
    if rest:
        lines += _rest(rest, review)
    same = unchanged_words(review)
    if same:
        lines += [escape(same), ""]
    return "\n".join(lines)


def _group(group: Group, review: PatternReview, units: tuple[object, ...]) -> list[str]:
    first = editions(review)[:1]
    told = size_lines(group, review, first) or size_lines(group, review, editions(review))
    heading = f"- {_heading(group.causes)}"
    sizes = listed(list(dict.fromkeys(size_words(where) for where in group.wheres if where.size)))
    if not told:
        where = f" (in the {escape(sizes)})" if sizes else ""
        return [f"{heading}{where}. No cut and no amount follows from it.", ""]
    lines = [f"{heading}:"]
    lines += [f"  - {_size_line(line)}" for line in told]
    others = [unit for unit in editions(review)[1:] if size_lines(group, review, (unit,))]
    if others and told[0].where.unit in first:
        lines.append(f"  - likewise in {listed([edition_words(unit) for unit in others])}")
    return [*lines, ""]


def _heading(causes: tuple[Cause, ...]) -> str:
    told = []
    for cause in causes:
        figures, place = cause_figures(cause), cause_place(cause)
        inside = ", ".join(part for part in (figures, f"`{short_place(place)}`" if place else "") if part)
        words = cause_words(cause)
        told.append(f"{escape(words)}" + (f" ({inside})" if inside else ""))
    text = listed(told)
    text = text[:1].upper() + text[1:]
    return f"**{text}**" if len(causes) == 1 else f"Together: **{text[:1].lower() + text[1:]}**"


def _size_line(line: SizeLine) -> str:
    told = "; ".join(escape(part) for part in line.told)
    left = f", and {line.left_out}" if line.left_out and told else line.left_out
    kept = f"; {line.kept}" if line.kept else ""
    name = f"{escape(size_words(line.where))}: " if line.where.size else ""
    return f"{name}{told}{left}{kept}"


def _rest(changes: Iterable[Change], review: PatternReview) -> list[str]:
    return [*(f"- {escape(_upper(words))}" for words in standing_alone(changes, review)), ""]


def _failure(failure: Failure) -> str:
    where = failure.where
    name = f"The {size_words(where)} in {edition_words(where.unit)}" if where.size else "The pattern"
    if failure.is_computed:
        side = "**cannot be published** as it is now" if failure.is_new else "could not be published before"
        known = "its figures are compared below all the same"
    else:
        side = "**cannot be computed** as it is now" if failure.is_new else "could not be computed before"
        known = "so nothing is known about its changes"
    lines = [f"> [!CAUTION]\n> {escape(name)} {side}; {known}."]
    lines += [f"> - {_problem_text(problem)}" for problem in failure.problems[:5]]
    if len(failure.problems) > 5:
        lines.append(f"> - and {len(failure.problems) - 5} more")
    return "\n".join(lines) + "\n"


def _problem(problem: Problem) -> str:
    return f"> [!WARNING]\n> {_problem_text(problem)}\n"


def _problem_text(problem: Problem) -> str:
    place = f"`{short_place(problem.place)}`: " if problem.place else ""
    hint = f" {escape(_upper(problem.hint))}." if problem.hint else ""
    return f"{place}{escape(problem.message)}.{hint}"


def _folds(review: PatternReview) -> list[str]:
    by_where: dict[Where, list[Change]] = {}
    for change in review.changes:
        if change.where.size:
            by_where.setdefault(change.where, []).append(change)
    return [_fold(review, where, changes) for where, changes in by_where.items()]


def _fold(review: PatternReview, where: Where, changes: list[Change]) -> str:
    title = f"{review.title}, {size_words(where)} in {edition_words(where.unit)}: {_counted(len(changes), 'change')}"
    reasons = dict.fromkeys(because_words(change.because) for change in changes if change.because)
    # One reason for all is said once, above the table.
    shared = next(iter(reasons)) if len(reasons) == 1 else ""
    names = ("what", "before", "after", "difference", *(() if shared else ("because",)))
    lines = [f"<details><summary>{escape(title)}</summary>", ""]
    lines += [f"{escape(_upper(shared))}:", ""] if shared else []
    lines += ["| " + " | ".join(names) + " |", "|" + "---|" * len(names)]
    for change in changes:
        row = row_of(change)
        because = "" if is_root(change) else because_words(change.because).removeprefix("because ")
        cells = (row.what, row.before, row.after, row.difference, because)[: len(names)]
        lines.append("| " + " | ".join(escape(cell) for cell in cells) + " |")
    return "\n".join([*lines, "", "</details>", ""])


def _foot(review: Review) -> str:
    if not review.untouched:
        return ""
    number = len(review.untouched)
    verb = "has" if number == 1 else "have"
    return f"{_counted(number, 'other pattern')} {verb} the same files on both sides."


def _fitted(top: str, shorts: list[str], folds: list[str], foot: str, longest: int) -> str:
    reserve = len(top) + len(foot) + 400
    room = longest - reserve
    kept: list[str] = []
    left_shorts = left_folds = 0
    for text in shorts:
        if len(text) + 1 <= room:
            kept.append(text)
            room -= len(text) + 1
        else:
            left_shorts += 1
    for text in folds:
        if len(text) + 1 <= room:
            kept.append(text)
            room -= len(text) + 1
        else:
            left_folds += 1
    note = []
    if left_shorts:
        note.append(_counted(left_shorts, "pattern"))
    if left_folds:
        note.append(_counted(left_folds, "table"))
    if note:
        kept.append(
            f"**Left out here, to stay within the length of a comment: {listed(note)}.** "
            "`evenseam compare` gives all of it as data (`--json`) or as a page (`--html`).\n"
        )
    return "\n".join([top, *kept, foot]).rstrip() + "\n"


def _code(text: str) -> str:
    return "`" + "".join(sign for sign in text if sign.isprintable() and sign != "`") + "`"


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]


def _counted(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
