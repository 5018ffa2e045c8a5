"""A review as Markdown for a comment: short first, the figures folded away, never longer than a comment may be."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from evenseam.problems import Problem
from evenseam.review.account import (
    SizeLine,
    editions,
    failures_together,
    headline,
    line_name,
    size_lines,
    standing_alone,
    state_words,
    unchanged_words,
    without_consequences,
)
from evenseam.review.cause_words import (
    because_words,
    cause_figures,
    cause_place,
    cause_words,
    listed,
    reason_words,
    short_place,
)
from evenseam.review.change_words import edition_words, size_words
from evenseam.review.changes import Cause, Change, Where
from evenseam.review.engines import EngineReview
from evenseam.review.grouping import MANY, Group, group_changes, is_root, is_told, told_only_here
from evenseam.review.markdown_text import code, escape, in_html
from evenseam.review.report import Failure, PatternReview, Review
from evenseam.review.rows import row_of
from evenseam.review.weight import weight_of_review

LONGEST = 60_000
"""Signs; a comment may have 65,536, and whoever posts it may want to add a line."""
MOST_CAUSES = 5
"""More causes than this are folded away."""
MOST_IN_A_LINE = 2
"""More consequences than this in one size stand one below the other."""
MARK = "<!-- evenseam review -->"
"""By which a later comment finds the one it takes the place of."""


def write_markdown(review: Review, longest: int = LONGEST) -> str:
    """Return the review. What does not fit is left out from the end, and counted."""
    top = [MARK, f"### {_title(review)}", "", f"Compared {code(review.base)} with {code(review.head)}.", ""]
    shorts = [*_engine(review.engine), *(_short(pattern) for pattern in review.patterns)]
    folds = [fold for pattern in review.patterns for fold in _folds(pattern)]
    foot = _foot(review)
    return _fitted("\n".join(top), shorts, folds, foot, longest)


def _engine(engine: EngineReview | None) -> list[str]:
    """Return what is said of the publisher: always that it differs, and folded what that does."""
    if engine is None:
        return []
    lines = [f"> [!NOTE]\n> {escape(engine.words)}"]
    if engine.compared and engine.is_same:
        sheets = _counted(engine.compared, "sheet")
        lines.append(f">\n> From the same texts both compute the same figures ({sheets} compared).")
    lines += [f">\n> **{escape(_upper(failure))}.**" for failure in engine.failures[:5]]
    if len(engine.failures) > 5:
        lines.append(f">\n> **And {len(engine.failures) - 5} more.**")
    told = ["\n".join(lines) + "\n"]
    if engine.changes:
        sizes = _counted(len(engine.changes), "size")
        lines = [f"<details><summary>The publisher computes {sizes} otherwise, from the same texts</summary>", ""]
        for one in engine.changes:
            lines.append(f"- {escape(one.title)}, {escape(one.name)} in {one.edition}:")
            lines += [f"  - {escape(_upper(words))}" for words in one.words]
        told.append("\n".join([*lines, "", "</details>", ""]))
    return told


def _title(review: Review) -> str:
    if review.is_same:
        return _upper(review.same_words)
    changed = [pattern for pattern in review.patterns if pattern.changes]
    failed = [pattern for pattern in review.patterns if any(not failure.is_computed for failure in pattern.failures)]
    stopped = [pattern for pattern in review.patterns if pattern.failures and pattern not in failed]
    told = []
    if changed:
        verb = "changes" if len(changed) == 1 else "change"
        told.append(f"{_counted(len(changed), 'pattern')} {verb} ({weight_of_review(review).words})")
    if failed:
        told.append(f"{_counted(len(failed), 'pattern')} cannot be computed")
    if stopped:
        told.append(f"{_counted(len(stopped), 'pattern')} cannot be published")
    if review.engine is not None and not review.engine.is_same:
        told.append("the publisher computes otherwise")
    wrong = sum(len(pattern.problems) for pattern in review.patterns)
    if wrong:
        told.append(_counted(wrong, "problem"))
    text = "; ".join(told)
    return text[:1].upper() + text[1:]


def _short(review: PatternReview) -> str:
    lines = [f"**{escape(review.title)}**: {escape(headline(review))}.", ""]
    lines += [_failure(name, failure) for name, failure in failures_together(review)]
    lines += [_problem(problem) for problem in review.problems]
    groups, rest = group_changes(review.changes)
    told = [_group(group, groups, review) for group in groups if is_told(group, groups)]
    for entry in told[:MOST_CAUSES]:
        lines += entry
    if len(told) > MOST_CAUSES:
        left = len(told) - MOST_CAUSES
        lines += [f"<details><summary>{_counted(left, 'more cause')} and what follows</summary>", ""]
        lines += [line for entry in told[MOST_CAUSES:] for line in entry]
        lines += ["</details>", ""]
    if rest:
        lines += _rest(rest, review)
    same = unchanged_words(review)
    if same:
        lines += [escape(same), ""]
    return "\n".join(lines)


def _group(group: Group, groups: tuple[Group, ...], review: PatternReview) -> list[str]:
    first = editions(review)[:1]
    told = size_lines(group, review, first) or size_lines(group, review, editions(review))
    heading = f"- {_heading(group.causes)}"
    if not told:
        return [f"{heading}{escape(without_consequences(group, review))}.", ""]
    lines = [f"{heading}:"]
    if len(group.causes) > MANY:
        only_here = told_only_here(group, groups)
        lines += [f"  - {_cause(cause)}" for cause in only_here]
        others_below = len(group.causes) - len(only_here)
        lines += [f"  - {'and' if only_here else 'all'} {others_below} that are told below"] if others_below else []
    lines += [part for line in told for part in _size_lines(line)]
    others = [unit for unit in editions(review)[1:] if size_lines(group, review, (unit,))]
    if others and told[0].wheres[0].unit in first:
        lines.append(f"  - likewise in {listed([edition_words(unit) for unit in others])}")
    return [*lines, ""]


def _heading(causes: tuple[Cause, ...]) -> str:
    if len(causes) > MANY:
        return f"**{len(causes)} changes together**"
    text = listed([_cause(cause) for cause in causes])
    return f"**{_upper(text)}**" if len(causes) == 1 else f"Together: **{text}**"


def _cause(cause: Cause) -> str:
    figures, place = cause_figures(cause), cause_place(cause)
    inside = ", ".join(part for part in (figures, f"`{short_place(place)}`" if place else "") if part)
    return escape(cause_words(cause)) + (f" ({inside})" if inside else "")


def _size_lines(line: SizeLine) -> list[str]:
    """Return a size with what follows in it: in one line if that is short, else one below the other."""
    told = [escape(part) for part in line.told]
    left = [f"and {line.left_out}" if told else line.left_out] if line.left_out else []
    kept = [line.kept] if line.kept else []
    name = escape(line_name(line))
    if len(told) <= MOST_IN_A_LINE:
        words = ", ".join(part for part in ("; ".join(told), *left) if part)
        return [f"  - {name}: {'; '.join((words, *kept))}" if name else f"  - {'; '.join((words, *kept))}"]
    parts = [*told, *left, *kept]
    return [f"  - {name}:", *(f"    - {part}" for part in parts)] if name else [f"  - {part}" for part in parts]


def _rest(changes: Iterable[Change], review: PatternReview) -> list[str]:
    return [*(f"- {escape(_upper(words))}" for words in standing_alone(changes, review)), ""]


def _failure(name: str, failure: Failure) -> str:
    known = (
        "its figures are compared below all the same"
        if failure.is_computed
        else "so nothing is known about what changes in it"
    )
    lines = [f"> [!CAUTION]\n> {escape(_upper(name))} **{state_words(failure)}**; {known}."]
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


@dataclass(frozen=True, slots=True)
class _Fold:
    """A table folded away: what stands before its rows, the rows, and what stands after."""

    head: str
    rows: tuple[str, ...]
    foot: str = "\n</details>\n"


def _folds(review: PatternReview) -> list[_Fold]:
    by_where: dict[Where, list[Change]] = {}
    for change in review.changes:
        if change.where.size:
            by_where.setdefault(change.where, []).append(change)
    return [_fold(review, where, changes) for where, changes in by_where.items()]


def _fold(review: PatternReview, where: Where, changes: list[Change]) -> _Fold:
    title = f"{review.title}, {size_words(where)} in {edition_words(where.unit)}: {_counted(len(changes), 'change')}"
    reasons = dict.fromkeys(because_words(change.because) for change in changes)
    # One reason for all is said once, above the table.
    shared = next(iter(reasons)) if len(reasons) == 1 else ""
    names = ("what", "before", "after", "difference", *(() if shared else ("because",)))
    lines = [f"<details><summary>{in_html(title)}</summary>", ""]
    lines += [f"{escape(_upper(shared))}:", ""] if shared else []
    lines += ["| " + " | ".join(names) + " |", "|" + "---|" * len(names), ""]
    rows = []
    for change in changes:
        row = row_of(change)
        because = "" if is_root(change) else reason_words(change.because)
        cells = (row.what, row.before, row.after, row.difference, because)[: len(names)]
        rows.append("| " + " | ".join(escape(cell) for cell in cells) + " |\n")
    return _Fold("\n".join(lines), tuple(rows))


def _foot(review: Review) -> str:
    if not review.untouched:
        return ""
    number = len(review.untouched)
    verb = "has" if number == 1 else "have"
    return f"{_counted(number, 'other pattern')} {verb} the same files on both sides."


def _fitted(top: str, shorts: list[str], folds: list[_Fold], foot: str, longest: int) -> str:
    """Put together what fits: all that is short before any table, and of a table the rows that have room."""
    room = longest - len(top) - len(foot) - 400
    kept: list[str] = []
    left_patterns = left_tables = left_rows = 0
    for text in shorts:
        if len(text) + 1 <= room:
            kept.append(text)
            room -= len(text) + 1
        else:
            left_patterns += 1
    for fold in folds:
        room -= len(fold.head) + len(fold.foot) + 80
        rows: list[str] = []
        while len(rows) < len(fold.rows) and len(fold.rows[len(rows)]) <= room:
            room -= len(fold.rows[len(rows)])
            rows.append(fold.rows[len(rows)])
        if not rows:
            left_tables += 1
            room = 0
            continue
        missing = len(fold.rows) - len(rows)
        left_rows += missing
        note = f"\nHere {_counted(missing, 'row')} had no room.\n" if missing else ""
        kept.append(f"{fold.head}{''.join(rows)}{note}{fold.foot}")
    left = [
        _counted(number, noun)
        for number, noun in ((left_patterns, "pattern"), (left_tables, "table"), (left_rows, "row"))
        if number
    ]
    if left:
        kept.append(
            f"**Left out, to stay within the length of a comment: {listed(left)}.** "
            "`evenseam compare` gives all of it as data (`--json`) or as a page (`--html`).\n"
        )
    return "\n".join([top, *kept, foot]).rstrip() + "\n"


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]


def _counted(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
