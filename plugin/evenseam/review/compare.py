"""Two versions of a pattern become the changes between them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from evenseam.exact import Unit
from evenseam.pattern import Pattern, Project, Quantity
from evenseam.problems import Problem
from evenseam.review.causes import Causes
from evenseam.review.changes import Added, Change, Kind, Remeasured, Removed, Restated, Where
from evenseam.review.cuts import compare_cuts
from evenseam.review.making import compare_blocks, compare_steps
from evenseam.review.materials import compare_fabrics, compare_finished, compare_materials
from evenseam.review.parts import compare_parts
from evenseam.review.words import compare_pattern_words, compare_project_words
from evenseam.sheet import PatternSheet


@dataclass(frozen=True, slots=True)
class Version:
    """One version of a pattern, read and computed as far as that could be done."""

    slug: str
    pattern: Pattern | None
    """None when it could not be read."""
    sheets: tuple[PatternSheet, ...]
    """Of the sizes and editions that could be computed."""
    problems: tuple[Problem, ...] = ()

    def sheet(self, size: str, unit: Unit) -> PatternSheet | None:
        """Return one sheet, or None when there is none."""
        for sheet in self.sheets:
            if sheet.project.size == size and sheet.project.unit is unit:
                return sheet
        return None


def compare_patterns(old: Version | None, new: Version | None) -> tuple[Change, ...]:
    """Return every difference between two versions, each once; None stands for a pattern that is not there.

    Sizes that one of the versions could not compute are left out: what is not known is never called the same. See
    `review_pattern`, which names them.
    """
    if old is None or new is None:
        return _whole(old, new)
    if old.pattern is None or new.pattern is None:
        return ()
    where = Where(new.slug, name=new.pattern.title)
    changes = list(compare_pattern_words(old.pattern, new.pattern, where))
    before, after = _projects(old.pattern), _projects(new.pattern)
    for key in dict.fromkeys((*after, *before)):
        place = _where(new.slug, after.get(key) or before[key])
        if key not in before:
            changes.append(Added(place, Kind.SIZE, key[0], after[key].name, _finished(new.sheet(*key))))
        elif key not in after:
            changes.append(Removed(place, Kind.SIZE, key[0], before[key].name, _finished(old.sheet(*key))))
        else:
            one, two = old.sheet(*key), new.sheet(*key)
            if one is not None and two is not None:
                changes += _compare_sheets(one, two, place)
    return tuple(dict.fromkeys(changes))


def _compare_sheets(old: PatternSheet, new: PatternSheet, where: Where) -> Iterator[Change]:
    parts = compare_parts(old.project, new.project)
    causes = Causes(old, new, parts)
    for cause in causes.inputs:
        for before, after in cause.figures:
            yield Remeasured(where, Kind.INPUT, after.name, after.name, (before,), (after,), (cause,))
    for part in parts.causes:
        yield Restated(
            where, Kind.PART, part.part, part.name, part.about, part.old, part.new, (part,),
            part.old_place, part.new_place,
        )  # fmt: skip
    yield from compare_fabrics(where, parts)
    yield from compare_finished(old, new, where, causes)
    cuts = tuple(compare_cuts(old, new, where, parts.renames, causes))
    yield from cuts
    yield from compare_materials(old, new, where, parts.renames, causes, cuts)
    yield from compare_blocks(old, new, where, parts, causes)
    yield from compare_steps(old, new, where, parts.renames, causes)
    yield from compare_project_words(old.project, new.project, (old.pattern, new.pattern), where)


def _whole(old: Version | None, new: Version | None) -> tuple[Change, ...]:
    if new is not None and old is None:
        return (Added(Where(new.slug), Kind.PATTERN, new.slug, _title(new)),)
    if old is not None and new is None:
        return (Removed(Where(old.slug), Kind.PATTERN, old.slug, _title(old)),)
    return ()


def _title(version: Version) -> str:
    return version.pattern.title if version.pattern else version.slug


def _projects(pattern: Pattern) -> dict[tuple[str, Unit], Project]:
    return {(project.size, project.unit): project for project in pattern.projects}


def _where(slug: str, project: Project) -> Where:
    return Where(slug, project.size, project.unit, project.name)


def _finished(sheet: PatternSheet | None) -> tuple[Quantity, ...]:
    return (sheet.sized.finished_width, sheet.sized.finished_height) if sheet else ()
