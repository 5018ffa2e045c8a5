"""What was found in every size by itself, as one list: a mistake in what sizes share is told once, with their names."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace

from evenseam.exact import Unit
from evenseam.pattern import Project
from evenseam.problems import Problem

EDITIONS = {Unit.INCH: "inches", Unit.CENTIMETRE: "centimetres"}
MOST_NAMED = 6


def told_once(found: Iterable[tuple[Project, Problem]], projects: Sequence[Project]) -> tuple[Problem, ...]:
    """Return every mistake once. Where a pattern has several sizes or editions, each says in which it was found."""
    alike: dict[tuple[object, ...], list[tuple[Project, Problem]]] = {}
    for project, problem in found:
        alike.setdefault((problem.code, problem.place, problem.message), []).append((project, problem))
    return tuple(_one(pairs, projects) for pairs in alike.values())


def _one(pairs: Sequence[tuple[Project, Problem]], projects: Sequence[Project]) -> Problem:
    problem = pairs[0][1]
    if len(projects) == 1:
        return problem
    hints = Counter(one.hint for _, one in pairs)
    (hint, _), *others = hints.most_common()
    if others:
        # A way out that holds in some sizes only must say so, or it leads from one mistake to the next.
        hint += f" (so in {', '.join(_named([project for project, one in pairs if one.hint == hint], projects))})"
    return replace(problem, hint=hint, sizes=_named([project for project, _ in pairs], projects))


def _named(found: Sequence[Project], projects: Sequence[Project]) -> tuple[str, ...]:
    """Return the names of sizes, with their edition where a size has a sound one too."""
    if {(one.size, one.unit) for one in found} == {(one.size, one.unit) for one in projects}:
        return ("every size",)
    for unit in Unit:
        edition = [one.size for one in projects if one.unit is unit]
        if len(edition) > 1 and {one.unit for one in found} == {unit} and {one.size for one in found} == set(edition):
            return (f"every size in {EDITIONS[unit]}",)
    names: list[str] = []
    for size in dict.fromkeys(one.size for one in found):
        units = {one.unit for one in found if one.size == size}
        name = size.replace("-", " ")
        if units != {one.unit for one in projects if one.size == size}:
            name += f" ({' and '.join(EDITIONS[unit] for unit in Unit if unit in units)})"
        names.append(name)
    if len(names) > MOST_NAMED:
        return (*names[:MOST_NAMED], f"{len(names) - MOST_NAMED} more")
    return tuple(names)
