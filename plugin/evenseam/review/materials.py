"""Two materials lists become changes of what to buy, of the finished size and of the fabrics."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from evenseam.cutting import Material
from evenseam.pattern import BATTINGS
from evenseam.review.causes import Causes
from evenseam.review.changes import (
    Added,
    Cause,
    Change,
    Kind,
    Remeasured,
    Removed,
    Renamed,
    Restated,
    Where,
    in_order,
    remeasured,
    restated,
)
from evenseam.review.matching import match_parts
from evenseam.review.parts import PartsCompared
from evenseam.review.renames import Renames
from evenseam.sheet import PatternSheet


def compare_finished(old: PatternSheet, new: PatternSheet, where: Where, causes: Causes) -> Iterator[Change]:
    """Yield the finished size, if it differs."""
    before = (old.sized.finished_width, old.sized.finished_height)
    after = (new.sized.finished_width, new.sized.finished_height)
    if [figure.value for figure in before] != [figure.value for figure in after]:
        because = causes.of(before, after, "")
        names = ("finished size", "finished size")
        yield remeasured(where, Kind.FINISHED, ("finished", "finished"), names, (before, after), because)


def compare_materials(
    old: PatternSheet, new: PatternSheet, where: Where, renames: Renames, causes: Causes, cuts: Iterable[Change]
) -> Iterator[Change]:
    """Yield what more or less is bought; `cuts` are the changed cuts, which is why."""
    moved = tuple(cuts)
    matching = match_parts(
        old.materials, new.materials, lambda material: material.material,
        [(lambda material: renames.fabric(material.material), lambda material: material.material)],
    )  # fmt: skip
    for before, after in matching.pairs:
        because = _because(before, after, old, new, causes, moved)
        kind = Kind.BATTING if after.material in BATTINGS else Kind.YARDAGE
        if before.buy.value != after.buy.value or before.buy.unit is not after.buy.unit:
            ids, labels = (before.material, after.material), (before.name, after.name)
            yield remeasured(where, kind, ids, labels, ((before.buy,), (after.buy,)), because)
    for material in matching.removed:
        yield Removed(
            where, Kind.YARDAGE, material.material, material.name, (material.buy,),
            _of_cuts(moved, {cut.id for cut in old.cuts.of(material.material)}) or causes.of_part("fabric"),
        )  # fmt: skip
    for material in matching.added:
        yield Added(
            where, Kind.YARDAGE, material.material, material.name, (material.buy,),
            _of_cuts(moved, {cut.id for cut in new.cuts.of(material.material)}) or causes.of_part("fabric"),
        )  # fmt: skip


def compare_fabrics(where: Where, parts: PartsCompared) -> Iterator[Change]:
    """Yield fabrics that are new, gone, renamed, recoloured or described otherwise."""
    for fabric in parts.fabrics.removed:
        yield Removed(where, Kind.FABRIC, fabric.id, fabric.name)
    for fabric in parts.fabrics.added:
        yield Added(where, Kind.FABRIC, fabric.id, fabric.name)
    for before, after in parts.fabrics.pairs:
        for aspect, was, now in (
            ("name", before.name, after.name),
            ("colour", before.colour, after.colour),
            ("role", before.role, after.role),
        ):
            if was != now:
                ids, places = (before.id, after.id), (before.place, after.place)
                labels = ids if aspect == "name" else (before.name, after.name)
                yield restated(where, Kind.FABRIC, ids, labels, aspect, (was, now), (), places)


def _because(
    before: Material, after: Material, old: PatternSheet, new: PatternSheet, causes: Causes, moved: tuple[Change, ...]
) -> tuple[Cause, ...]:
    ids = {cut.id for cut in (*old.cuts.of(before.material), *new.cuts.of(after.material))}
    found = _of_cuts(moved, ids)
    return found or causes.of((before.buy,), (after.buy,), "materials")


def _of_cuts(moved: tuple[Change, ...], ids: set[str]) -> tuple[Cause, ...]:
    return in_order(cause for change in moved if _ids(change) & ids for cause in change.because)


def _ids(change: Change) -> set[str]:
    match change:
        case Renamed():
            return {change.old_id, change.new_id}
        case Remeasured() | Restated():
            return {change.id, change.old_id or change.id}
        case _:
            return {change.id}
