"""A review told size by size under its causes: what every form of output says, before any markup."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from evenseam.exact import Unit
from evenseam.problems import Problem
from evenseam.review.cause_words import listed
from evenseam.review.change_words import (
    before_figures,
    change_words,
    cut_figures,
    cut_otherwise,
    edition_words,
    size_of,
    size_words,
)
from evenseam.review.changes import Added, Change, Kind, Remeasured, Removed, Renamed, Restated, Where, is_of_figures
from evenseam.review.grouping import Group
from evenseam.review.report import Failure, PatternReview, SizeReview
from evenseam.review.speech import ENGLISH, Speech

MOST_CUTS = 4
MOST_OTHERS = 8
MOST_NAMES = 3
_CUTTING = (Kind.CUT,)
_BUYING = (Kind.YARDAGE, Kind.BATTING)
_SEWING = (Kind.CHECKPOINT, Kind.TEMPLATE, Kind.STEP, Kind.STEP_ORDER, Kind.SECTIONS)


@dataclass(frozen=True, slots=True)
class SizeLine:
    """What follows from a cause in one size."""

    wheres: tuple[Where, ...]
    """The size; several in which the same follows."""
    told: tuple[str, ...]
    """In words, the most important first."""
    left_out: str
    """What is counted only: 9 more cuts, 3 checkpoints."""
    kept: str
    """What stays as it was, in words."""


def size_lines(
    group: Group, review: PatternReview, units: Iterable[Unit], most_cuts: int = MOST_CUTS
) -> tuple[SizeLine, ...]:
    """Return a line for each size a group of changes is about, in the given editions, in the order of the file."""
    wanted = tuple(units)
    by_where: dict[Where, list[Change]] = {}
    for change in group.changes:
        if change.where.unit is None or change.where.unit in wanted:
            by_where.setdefault(change.where, []).append(change)
    order = {size.where: number for number, size in enumerate(review.sizes)}
    sizes = {size.where: size for size in review.sizes}
    lines = [
        _line(where, by_where[where], sizes.get(where), most_cuts)
        for where in sorted(by_where, key=lambda where: order.get(where, -1))
    ]
    alike: dict[tuple[tuple[str, ...], str], list[SizeLine]] = {}
    for line in lines:
        alike.setdefault((line.told, line.left_out), []).append(line)
    return tuple(_together(same) for same in alike.values())


def _together(lines: list[SizeLine]) -> SizeLine:
    """Return one line for sizes in which the same follows; what else stays is left unsaid where they differ in it."""
    wheres = tuple(where for line in lines for where in line.wheres)
    kept = lines[0].kept if len({line.kept for line in lines}) == 1 else ""
    return SizeLine(wheres, lines[0].told, lines[0].left_out, kept)


def line_name(line: SizeLine) -> str:
    """Return the sizes of a line: wall hanging and lap quilt."""
    return listed(list(dict.fromkeys(size_words(where) for where in line.wheres if where.size)))


def editions(review: PatternReview) -> tuple[Unit, ...]:
    """Return the editions of a review, the drafted one first."""
    units = [size.where.unit for size in review.sizes] + [change.where.unit for change in review.changes]
    return tuple(dict.fromkeys(unit for unit in units if unit is not None))


def without_consequences(group: Group, review: PatternReview) -> str:
    """Return what is said of a cause from which nothing follows."""
    sizes = list(dict.fromkeys(size_words(where) for where in group.wheres if where.size))
    is_all = len(sizes) == len({size.where.size for size in review.sizes})
    where = "" if is_all or not sizes else f" (in the {listed(sizes)})"
    return f"{where}; no cut and no amount follows from it"


def standing_alone(changes: Iterable[Change], review: PatternReview) -> tuple[str, ...]:
    """Return changes without a cause in words, each once, with the sizes it is about where those are not all."""
    all_sizes = {size.where.size for size in review.sizes}
    told: dict[str, dict[str, str]] = {}
    for change in changes:
        told.setdefault(change_words(change), {})[change.where.size] = size_words(change.where)
    lines = []
    for words, sizes in told.items():
        names = [name for size, name in sizes.items() if size and name.casefold() not in words.casefold()]
        is_all = all_sizes <= set(sizes)
        lines.append(words if is_all or not names else f"{words} ({listed(names)})")
    return tuple(lines)


def failures_together(review: PatternReview) -> tuple[tuple[str, Failure], ...]:
    """Return what could not be computed, with the names of the sizes; those with the same problems together."""
    found: dict[tuple[bool, bool, tuple[Problem, ...]], list[Failure]] = {}
    for failure in review.failures:
        found.setdefault((failure.is_new, failure.is_computed, failure.problems), []).append(failure)
    together = []
    for failures in found.values():
        names = [f"{size_words(f.where)} in {edition_words(f.where.unit)}" for f in failures if f.where.size]
        together.append((f"the {listed(names)}" if names else "the pattern", failures[0]))
    return tuple(together)


def state_words(failure: Failure) -> str:
    """Return what a failure means: cannot be computed as it is now, or could not be published before."""
    state = "published" if failure.is_computed else "computed"
    return f"cannot be {state} as it is now" if failure.is_new else f"could not be {state} before"


def unchanged_words(review: PatternReview) -> str:
    """Return one line for all sizes that are as they were."""
    same: dict[str, list[Unit | None]] = {}
    all_units: dict[str, int] = {}
    names: dict[str, str] = {}
    for size in review.sizes:
        key = size.where.size
        names[key] = size_words(size.where)
        all_units[key] = all_units.get(key, 0) + 1
        if size.is_same:
            same.setdefault(key, []).append(size.where.unit)
    told = [
        names[key] if len(units) == all_units[key] else f"{names[key]} in {edition_words(units[0])}"
        for key, units in same.items()
    ]
    return f"Unchanged in every figure: {listed(told)}." if told else ""


def headline(review: PatternReview) -> str:
    """Return what changes, in one sentence: the wall hanging changes (1 of 4 sizes): finished size, 6 cuts."""
    if review.is_same:
        return "no computed change"
    kinds = [change.kind for change in review.changes]
    if Kind.PATTERN in kinds:
        return "; ".join(change_words(change) for change in review.changes)
    told = []
    if kinds and not any(is_of_figures(change) for change in review.changes):
        told.append("only words, names and colours change, no figure")
    elif kinds:
        told += _changed_sizes(review)
    failed = sum(not failure.is_computed for failure in review.failures)
    told += [f"{_counted(failed, 'size or edition', 'sizes or editions')} cannot be computed"] if failed else []
    told += ["it cannot be published as it is now"] if any(f.is_computed and f.is_new for f in review.failures) else []
    told += ["it needs a new version or a note"] if review.problems else []
    return "; ".join(told)


def _changed_sizes(review: PatternReview) -> list[str]:
    names = {size.where.size: size_words(size.where) for size in review.sizes}
    figures = [change for change in review.changes if is_of_figures(change) and change.kind is not Kind.SIZE]
    changed = list(dict.fromkeys(change.where.size for change in figures if change.where.size in names))
    told = []
    if changed:
        verb = "changes" if len(changed) == 1 else "change"
        which = f"the {listed([names[size] for size in changed])} {verb}"
        of_all = f" ({len(changed)} of {len(names)} sizes)" if len(names) > len(changed) else ""
        number = f"{len(changed)} of {len(names)}" if len(names) > len(changed) else f"all {len(names)}"
        which = f"{which}{of_all}" if len(changed) <= MOST_NAMES else f"{number} sizes {verb}"
        what = listed(_what_changes(figures))
        told.append(f"{which}: {what}" if what else which)
    for is_new, state in ((True, "new"), (False, "gone")):
        whole = [change for change in review.changes if change.kind is Kind.SIZE and _is_new(change) is is_new]
        editions_of = list(dict.fromkeys((size_words(change.where), change.where.unit) for change in whole))
        known = [
            name if name not in names.values() else f"{name} in {edition_words(unit)}" for name, unit in editions_of
        ]
        unique = list(dict.fromkeys(known))
        told += [f"the {listed(unique)} {'is' if len(unique) == 1 else 'are'} {state}"] if unique else []
    return told


def _what_changes(figures: list[Change]) -> list[str]:
    # A cut in two editions is one cut to a reader.
    def number(*kinds: Kind) -> int:
        return len({(change.where.size, change.kind, _id(change)) for change in figures if change.kind in kinds})

    told = ["finished size"] if number(Kind.FINISHED) else []
    for kinds, one, many in (
        ((Kind.CUT,), "cut", "cuts"), (_BUYING, "amount to buy", "amounts to buy"),
        ((Kind.TEMPLATE,), "template", "templates"), ((Kind.STEP,), "step", "steps"),
    ):  # fmt: skip
        counted = number(*kinds)
        told += [_counted(counted, one, many)] if counted else []
    return told or ["how it is sewn"]


def _line(where: Where, changes: list[Change], size: SizeReview | None, most_cuts: int) -> SizeLine:
    finished = [change for change in changes if change.kind is Kind.FINISHED]
    cuts = [change for change in changes if change.kind in _CUTTING]
    bought = [change for change in changes if change.kind in _BUYING]
    others = [change for change in changes if change not in finished and change not in cuts and change not in bought]
    told = [_finishes(change) for change in finished]
    renamed = [change for change in changes if isinstance(change, Renamed)]
    cuts = [change for change in cuts if change not in renamed]
    cut_words = _cut_words(cuts)
    told += cut_words[:most_cuts]
    if len(renamed) > 2:
        counted = ((Kind.CUT, "cut"), (Kind.STEP, "step"))
        numbers = [_counted(sum(change.kind is kind for change in renamed), noun) for kind, noun in counted]
        told.append(f"{listed(numbers)} have another name and are what they were")
    else:
        told += [change_words(change) for change in renamed]
    others = [change for change in others if change not in renamed]
    told += [change_words(change) for change in bought[:MOST_OTHERS]]
    left = []
    if len(cut_words) > most_cuts:
        left.append(f"{_counted(len(cut_words) - most_cuts, 'more change')} of cuts")
    if len(bought) > MOST_OTHERS:
        left.append(f"{len(bought) - MOST_OTHERS} more to buy")
    for kind, one, many in (
        (Kind.CHECKPOINT, "checkpoint", "checkpoints"), (Kind.TEMPLATE, "template", "templates"),
        (Kind.STEP, "step", "steps"),
    ):  # fmt: skip
        number = sum(change.kind is kind for change in others)
        if number and (told or number > 2):
            left.append(_counted(number, one, many))
            others = [change for change in others if change.kind is not kind]
    told += [change_words(change) for change in others]
    kept = f"{listed(list(size.kept))} unchanged" if size and size.kept and (cuts or finished) else ""
    return SizeLine((where,), tuple(told), listed(left), kept)


def figures_told(changes: Iterable[Change], speech: Speech = ENGLISH) -> tuple[str, ...]:
    """Return in words every changed figure that is cut, bought or sewn; what merely follows while sewing is counted.

    Names, words and colours are no figures, and causes are told by whoever tells why.
    """
    figures = [change for change in changes if is_of_figures(change) and change.kind not in (Kind.INPUT, Kind.PART)]
    kinds: dict[bool, list[Change]] = {True: [], False: []}
    for change in figures:
        kinds[change.kind in _CUTTING].append(change)
    others = [change for change in kinds[False] if change.kind is not Kind.CHECKPOINT]
    measured = len(kinds[False]) - len(others)
    first = [change for change in others if change.kind in (Kind.FINISHED, Kind.SIZE)]
    bought = [change for change in others if change.kind in _BUYING]
    rest = [change for change in others if change not in first and change not in bought]
    told = [change_words(change, speech) for change in first]
    told += _cut_words(kinds[True], speech)
    told += [change_words(change, speech) for change in (*bought, *rest)]
    if measured:
        sentence = "what it measures after {number} step" if measured == 1 else "what it measures after {number} steps"
        told.append(speech.said(sentence, number=str(measured)))
    return tuple(told)


def _finishes(change: Change) -> str:
    if isinstance(change, Remeasured):
        return f"finishes {size_of(change.new)} instead of {size_of(change.old)}"
    return change_words(change)


def _cut_words(cuts: list[Change], speech: Speech = ENGLISH) -> list[str]:
    """Return cuts in words; those that change alike are told together."""
    told: dict[tuple[str, object], list[str]] = {}
    for change in cuts:
        match change:
            case Remeasured():
                words = cut_figures(change.old, change.new, change.aspect, speech)
                told.setdefault((words, change.kind), []).append(change.label)
            case Restated():
                told.setdefault((cut_otherwise(change, speech), None), []).append(change.label)
            case _:
                told[change_words(change, speech), change] = []
    # Figures follow a name as a sentence does, but for a name that ends in a figure.
    return [
        f"{before_figures(_labels(labels, speech)) if kind is Kind.CUT else _labels(labels, speech)} {words}"
        if labels
        else words
        for (words, kind), labels in told.items()
    ]


def _labels(labels: list[str], speech: Speech) -> str:
    """Return labels together: patches A1 and A2 of the Gull block."""
    found = [_OF_BLOCK.fullmatch(label) for label in labels]
    known = [match for match in found if match]
    if len(known) == len(labels) > 1 and len({match["rest"] for match in known}) == 1:
        names = [name for match in known for name in re.split(", | and ", match["names"])]
        noun = {"patch": "patches", "piece": "pieces"}.get(known[0]["noun"], known[0]["noun"])
        return speech.name(f"{noun} {listed(names)} {known[0]['rest']}")
    return speech.listed([speech.name(label) for label in labels])


_NAMES = r"[A-Z]+[0-9]*(?:(?:, | and )[A-Z]+[0-9]*)*"
_OF_BLOCK = re.compile(rf"(?P<noun>patch|patches|piece|pieces) (?P<names>{_NAMES}) (?P<rest>of the .* block)")


def _id(change: Change) -> str:
    return str(getattr(change, "id", "") or getattr(change, "new_id", ""))


def _is_new(change: Change) -> bool | None:
    """Tell whether a change is that something is new or gone; None for any other."""
    return True if isinstance(change, Added) else False if isinstance(change, Removed) else None


def _counted(number: int, one: str, many: str = "") -> str:
    return f"{number} {one}" if number == 1 else f"{number} {many or one + 's'}"
