"""Two versions of a pattern become the changes between them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterator
from dataclasses import dataclass

from evenseam.exact import Unit
from evenseam.pattern import Pattern, Project, Quantity
from evenseam.problems import Problem
from evenseam.review.causes import Causes
from evenseam.review.changes import Added, Change, Kind, Removed, Renamed, Where, remeasured, restated
from evenseam.review.cuts import compare_cuts
from evenseam.review.making import compare_blocks, compare_steps
from evenseam.review.matching import match_parts
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
    if old.slug != new.slug:
        titles = (old.pattern.title, new.pattern.title)
        changes.insert(0, Renamed(where, Kind.PATTERN, old.slug, new.slug, *titles))
    matching = match_parts(
        old.pattern.projects, new.pattern.projects, lambda project: (project.size, project.unit),
        [
            (lambda project: _made(old, project), lambda project: _made(new, project)),
            (lambda project: _shown(old, project), lambda project: _shown(new, project)),
        ],
    )  # fmt: skip
    for before, after in matching.pairs:
        place = _where(new.slug, after, before)
        if before.size != after.size:
            changes.append(Renamed(place, Kind.SIZE, before.size, after.size, before.name, after.name))
        one, two = old.sheet(before.size, before.unit), new.sheet(after.size, after.unit)
        if one is not None and two is not None:
            changes += _compare_sheets(one, two, place)
    for project in matching.added:
        figures = _finished(new.sheet(project.size, project.unit))
        changes.append(Added(_where(new.slug, project), Kind.SIZE, project.size, project.name, figures))
    for project in matching.removed:
        figures = _finished(old.sheet(project.size, project.unit))
        changes.append(Removed(_where(old.slug, project), Kind.SIZE, project.size, project.name, figures))
    return tuple(dict.fromkeys(changes))


def _compare_sheets(old: PatternSheet, new: PatternSheet, where: Where) -> Iterator[Change]:
    # What the author wrote, not what re-drafting and turning of blocks made of it.
    decided = [sheet.pattern.project(sheet.project.size, sheet.project.unit) for sheet in (old, new)]
    parts = compare_parts(*decided)
    causes = Causes(old, new, parts)
    for cause in causes.inputs:
        for before, after in cause.figures:
            names = (before.name, after.name)
            yield remeasured(where, Kind.INPUT, names, names, ((before,), (after,)), causes.of_input(cause))
    for part in parts.causes:
        yield restated(
            where, Kind.PART, (part.old_part or part.part, part.part), (part.old_name or part.name, part.name),
            part.about, (part.old, part.new), (part,), (part.old_place, part.new_place),
        )  # fmt: skip
    yield from compare_fabrics(where, parts)
    yield from compare_finished(old, new, where, causes)
    cuts = tuple(compare_cuts(old, new, where, parts.renames, causes))
    yield from cuts
    yield from compare_materials(old, new, where, parts.renames, causes, cuts)
    yield from compare_blocks(old, new, where, parts, causes)
    yield from compare_steps(old, new, where, parts.renames, causes)
    yield from compare_project_words(old.project, new.project, where, parts.renames)


def _whole(old: Version | None, new: Version | None) -> tuple[Change, ...]:
    if new is not None and old is None:
        return (Added(Where(new.slug), Kind.PATTERN, new.slug, _title(new)),)
    if old is not None and new is None:
        return (Removed(Where(old.slug), Kind.PATTERN, old.slug, _title(old)),)
    return ()


def _title(version: Version) -> str:
    return version.pattern.title if version.pattern else version.slug


def _made(version: Version, project: Project) -> Hashable:
    """Return what a size is whatever it is called: its edition and its cuts."""
    sheet = version.sheet(project.size, project.unit)
    if sheet is None:
        return id(version), project.size
    cuts = sheet.cuts.cuts
    numbers = Counter((cut.material, cut.width.value, cut.height.value, cut.count.value) for cut in cuts)
    return project.unit, frozenset(numbers.items())


def _shown(version: Version, project: Project) -> Hashable:
    """Return what a size is whatever it and its fabrics are called: its edition, and its cuts by colour."""
    sheet = version.sheet(project.size, project.unit)
    if sheet is None:
        return id(version), project.size, "shown"
    looks = {fabric.id: (fabric.colour.lower(), fabric.is_directional) for fabric in sheet.project.fabrics}
    cuts = sheet.cuts.cuts
    numbers = Counter(
        (looks.get(cut.material, cut.material), cut.width.value, cut.height.value, cut.count.value) for cut in cuts
    )
    return project.unit, frozenset(numbers.items())


def _where(slug: str, project: Project, before: Project | None = None) -> Where:
    if before is None or before.size == project.size:
        return Where(slug, project.size, project.unit, project.name)
    return Where(slug, project.size, project.unit, project.name, before.size, before.name)


def _finished(sheet: PatternSheet | None) -> tuple[Quantity, ...]:
    return (sheet.sized.finished_width, sheet.sized.finished_height) if sheet else ()
