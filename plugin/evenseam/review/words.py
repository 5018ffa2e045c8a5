"""Two patterns become changes of what the author says in words."""

from __future__ import annotations

from collections.abc import Iterator

from evenseam.pattern import Pattern, Project, Prose
from evenseam.review.changes import Added, Change, Kind, Removed, Restated, Where
from evenseam.review.renames import Renames


def compare_pattern_words(old: Pattern, new: Pattern, where: Where) -> Iterator[Change]:
    """Yield what differs in the words about the pattern as a whole."""
    for aspect, was, now in (
        ("title", old.title, new.title), ("summary", old.summary, new.summary), ("version", old.version, new.version),
        ("skill level", old.skill_level, new.skill_level), ("licence", old.licence, new.licence),
        ("designer", old.designer, new.designer),
    ):  # fmt: skip
        if was != now:
            yield Restated(where, Kind.WORDS, aspect, aspect, aspect, was, now, (), old.place, new.place)
    told, telling = ({change.version: change for change in pattern.changes} for pattern in (old, new))
    for version in dict.fromkeys((*telling, *told)):
        label = f"note on version {version}"
        if version not in told:
            yield Added(where, Kind.WORDS, f"changes:{version}", label)
        elif version not in telling:
            yield Removed(where, Kind.WORDS, f"changes:{version}", label)
        elif told[version] != telling[version]:
            before, after = told[version], telling[version]
            texts = (f"{before.date}: {before.what}", f"{after.date}: {after.what}")
            yield Restated(
                where, Kind.WORDS, f"changes:{version}", label, "note", *texts, (), before.place, after.place
            )  # fmt: skip


def compare_project_words(old: Project, new: Project, where: Where, renames: Renames) -> Iterator[Change]:
    """Yield what differs in the words about one size, also those it takes from the whole pattern."""
    for aspect, was, now in (
        ("name", old.name, new.name), ("summary", old.summary, new.summary), ("use", old.use, new.use),
        ("batting", old.batting_name, new.batting_name),
    ):  # fmt: skip
        # A size under another key has another name as a rule, and is told as renamed.
        is_told = aspect == "name" and old.size != new.size
        if was != now and not is_told:
            yield Restated(where, Kind.WORDS, aspect, aspect, aspect, was, now, (), old.place, new.place)
    yield from _prose(where, "introduction", "introduction", old.introduction, new.introduction)
    was_said = {renames.step(step): prose for step, prose in old.additions}
    is_said = dict(new.additions)
    for step in sorted({*was_said, *is_said}):
        label = f"your words for the step {step.replace('-', ' ')}"
        yield from _prose(where, f"words:{step}", label, was_said.get(step), is_said.get(step))


def _prose(where: Where, id: str, label: str, old: Prose | None, new: Prose | None) -> Iterator[Change]:
    if old == new:
        return
    places = (old.place if old else None, new.place if new else None)
    yield Restated(
        where, Kind.WORDS, id, label, id, old.text if old else "", new.text if new else "", (), *places
    )  # fmt: skip
