"""The rules for a pattern that makers have in hand: what changes gets a new version, and is told."""

from __future__ import annotations

import re
from collections.abc import Iterable

from evenseam.pattern import Pattern
from evenseam.problems import Place, Problem
from evenseam.review.cause_words import listed
from evenseam.review.change_words import size_words
from evenseam.review.changes import Change, is_of_figures
from evenseam.review.codes import (
    CHANGE_NOT_TOLD,
    FIGURES_CHANGED_SAME_VERSION,
    OLD_NOTE_ALTERED,
    VERSION_GOES_BACK,
)


def check_published(old: Pattern, new: Pattern, changes: Iterable[Change]) -> tuple[Problem, ...]:
    """Return what is wrong with a change of a published pattern, given the changes that were found."""
    figures = [change for change in changes if is_of_figures(change)]
    problems = []
    if figures and new.version == old.version:
        sizes = listed(list(dict.fromkeys(size_words(change.where) for change in figures if change.where.size)))
        message = f"figures of {sizes or new.title} differ from those published as version {old.version}"
        hint = (
            "give it a new version, and say under changes: what a maker who has the older one must know; "
            "two prints of one version must agree"
        )
        problems.append(Problem(FIGURES_CHANGED_SAME_VERSION, message, _place(new), hint))
    elif _number(new.version) < _number(old.version):
        message = f"the version goes back from {old.version} to {new.version}"
        hint = "a maker goes by the higher number: give it one above"
        problems.append(Problem(VERSION_GOES_BACK, message, _place(new), hint))
    elif figures and all(change.version != new.version for change in new.changes):
        message = f"figures differ from version {old.version}, and nothing is said about version {new.version}"
        hint = "add an entry to changes: with the version, the date and what a maker must know"
        problems.append(Problem(CHANGE_NOT_TOLD, message, _place(new), hint))
    return (*problems, *_old_notes(old, new))


def _old_notes(old: Pattern, new: Pattern) -> list[Problem]:
    told = {change.version: change for change in new.changes}
    problems = []
    for note in old.changes:
        now = told.get(note.version)
        # The note on the newest version may still be worked on while its version is.
        if now == note or note.version == new.version:
            continue
        what = "is gone" if now is None else "was altered"
        message = f"what was said about version {note.version} {what}"
        hint = "leave old notes as makers read them, and add a new one"
        problems.append(Problem(OLD_NOTE_ALTERED, message, now.place if now else _place(new), hint))
    return problems


def _place(pattern: Pattern) -> Place | None:
    return pattern.changes[0].place if pattern.changes else pattern.place


def _number(version: str) -> tuple[int, ...]:
    """Return a version as numbers, so that 1.10 comes after 1.9."""
    return tuple(int(part) for part in re.findall(r"\d{1,9}", version))
