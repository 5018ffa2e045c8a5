"""Two cut lists become changed cuts, matched by what they are and never by their place in the list."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator
from typing import TypeAlias

from evenseam.pattern import BATTING, BATTINGS, INSULATION, Cut, Project
from evenseam.review.causes import Causes
from evenseam.review.change_words import UNJOINED, UPRIGHT
from evenseam.review.changes import Added, Cause, Change, Kind, Removed, Renamed, Where, remeasured, restated
from evenseam.review.matching import match_parts
from evenseam.review.renames import Renames
from evenseam.sheet import PatternSheet


def compare_cuts(
    old: PatternSheet, new: PatternSheet, where: Where, renames: Renames, causes: Causes
) -> Iterator[Change]:
    """Yield every cut that was added, removed, renamed, cut in another size or number, or from another fabric."""
    alike: list[tuple[_Key, _Key]] = [
        (lambda cut: (renames.within(cut.id), _material(cut, renames)), lambda cut: (cut.id, cut.material)),
        (lambda cut: (_same(cut, renames), cut.count.value), lambda cut: (_same(cut, Renames()), cut.count.value)),
        (lambda cut: _same(cut, renames), lambda cut: _same(cut, Renames())),
        (lambda cut: _place_of(cut, renames), lambda cut: _place_of(cut, Renames())),
    ]
    matching = match_parts(old.cuts.cuts, new.cuts.cuts, lambda cut: (cut.id, cut.material), alike)
    for before, after in matching.pairs:
        yield from _compare(before, after, old.project, new.project, where, renames, causes)
    for cut in matching.removed:
        figures = (cut.width, cut.height, cut.count)
        yield Removed(where, Kind.CUT, cut.id, cut.label, figures, causes.of_part(renames.part(cut.part)))
    for cut in matching.added:
        yield Added(
            where, Kind.CUT, cut.id, cut.label, (cut.width, cut.height, cut.count), causes.of_part(cut.part)
        )  # fmt: skip


def material_name(project: Project, material: str) -> str:
    """Return what a maker reads for the material of a cut."""
    if material == INSULATION:
        return "Heat-resistant batting"
    return project.batting_name if material == BATTING else project.fabric(material).name


def _compare(
    before: Cut, after: Cut, old: Project, new: Project, where: Where, renames: Renames, causes: Causes
) -> Iterator[Change]:
    if before.id != after.id:
        yield Renamed(
            where, Kind.CUT, before.id, after.id, before.label, after.label, _naming(causes, after.part)
        )  # fmt: skip
    ids, labels = (before.id, after.id), (before.label, after.label)
    figures = ((before.width, before.height, before.count), (after.width, after.height, after.count))
    if [figure.value for figure in figures[0]] != [figure.value for figure in figures[1]]:
        because = causes.of(*figures, after.part)
        shape = after.shape.value if after.shape is before.shape else ""
        yield remeasured(where, Kind.CUT, ids, labels, figures, because, shape)
    for aspect, was, now in (
        ("fabric", material_name(old, before.material), material_name(new, after.material)),
        ("shape", before.shape.value, after.shape.value),
        ("print", _way(before), _way(after)),
        ("join", _join(before), _join(after)),
        ("strips", before.direction.value, after.direction.value),
    ):
        is_only_name = aspect == "fabric" and renames.fabric(before.material) == after.material
        if was != now and not is_only_name:
            yield restated(where, Kind.CUT, ids, labels, aspect, (was, now), causes.of_part(after.part))


def _naming(causes: Causes, part: str) -> tuple[Cause, ...]:
    """Return why a cut has another name: its part has, or the pieces of its block are numbered otherwise."""
    named = tuple(cause for cause in causes.parts if cause.part == part and cause.about == "name")
    return named or causes.of_part(part)


_Key: TypeAlias = Callable[[Cut], Hashable]


def _material(cut: Cut, renames: Renames) -> str:
    return cut.material if cut.material in BATTINGS else renames.fabric(cut.material)


def _same(cut: Cut, renames: Renames) -> Hashable:
    """Return what two cuts share when they are one under two names: fabric, size and part."""
    return _material(cut, renames), cut.shape, cut.width.value, cut.height.value, renames.part(cut.part)


def _place_of(cut: Cut, renames: Renames) -> Hashable:
    """Return where in the project a cut goes; patches of a drawing are renumbered, so their size says it as well."""
    size = (cut.width.value, cut.height.value) if cut.part.startswith("block:") else ()
    return renames.within(cut.id), size


def _way(cut: Cut) -> str:
    return UPRIGHT if cut.is_upright else "either way"


def _join(cut: Cut) -> str:
    return cut.join.value if cut.join else UNJOINED
