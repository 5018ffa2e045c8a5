"""Two finished tops become their visible differences: pieces that are new, gone, of another fabric, or elsewhere."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass
from fractions import Fraction

from evenseam.geometry import Point, Polygon
from evenseam.review.renames import Renames
from evenseam.sheet import PatternSheet
from evenseam.sizing import Placed


@dataclass(frozen=True, slots=True)
class PlacedChanges:
    """Visible pieces of two tops, matched."""

    kept: int
    """Number of pieces that look as they did and lie where they lay."""
    recoloured: tuple[tuple[Placed, Placed], ...]
    """The same shape in the same place from another fabric."""
    reshaped: tuple[tuple[Placed, Placed], ...]
    """The same piece in another size or shape."""
    moved: tuple[tuple[Placed, Placed], ...]
    """The same shape and fabric elsewhere."""
    removed: tuple[Placed, ...]
    added: tuple[Placed, ...]

    @property
    def is_same(self) -> bool:
        """True when nothing is to be seen."""
        return not (self.recoloured or self.reshaped or self.moved or self.removed or self.added)


def compare_placed(old: PatternSheet, new: PatternSheet, renames: Renames | None = None) -> PlacedChanges:
    """Match the visible pieces of two tops by what they are and where they lie.

    The tops are laid on each other by their centres or by their top left corners, whichever keeps more pieces in place:
    a wider border moves nothing that is inside it.
    """
    known = renames or Renames()
    if old.project.unit is not new.project.unit:
        raise ValueError("tops of two editions are not to be laid on each other")
    tops = (old.sized.placed, new.sized.placed)
    return max((_match(*tops, step, known) for step in _steps(old, new)), key=lambda found: found.kept)


def _steps(old: PatternSheet, new: PatternSheet) -> Iterable[Point]:
    wide = new.sized.finished_width.value - old.sized.finished_width.value
    high = new.sized.finished_height.value - old.sized.finished_height.value
    return Point(wide / 2, high / 2), Point(Fraction(0), Fraction(0))


def _match(before: Iterable[Placed], after: Iterable[Placed], step: Point, renames: Renames) -> PlacedChanges:
    def shape(polygon: Polygon) -> frozenset[Point]:
        return frozenset(polygon.corners)

    def form(polygon: Polygon) -> frozenset[Point]:
        left, top, _, _ = polygon.bounds
        return frozenset(corner - Point(left, top) for corner in polygon.corners)

    def lain(placed: Placed) -> frozenset[Point]:
        return shape(placed.outline.moved(step))

    rounds: list[tuple[Callable[[Placed], Hashable], Callable[[Placed], Hashable]]] = [
        (lambda p: (renames.fabric(p.fabric), lain(p)), lambda p: (p.fabric, shape(p.outline))),
        (lain, lambda p: shape(p.outline)),
        (
            lambda p: (renames.fabric(p.fabric), renames.part(p.part), form(p.outline)),
            lambda p: (p.fabric, p.part, form(p.outline)),
        ),
        (
            lambda p: (renames.fabric(p.fabric), renames.part(p.part), p.row, p.column),
            lambda p: (p.fabric, p.part, p.row, p.column),
        ),
    ]
    left_old, left_new = list(before), list(after)
    found: list[tuple[tuple[Placed, Placed], ...]] = []
    for old_key, new_key in rounds:
        pairs, left_old, left_new = _pair(left_old, left_new, old_key, new_key)
        found.append(pairs)
    kept, recoloured, moved, reshaped = found
    return PlacedChanges(len(kept), recoloured, reshaped, moved, tuple(left_old), tuple(left_new))


def _pair(
    old: list[Placed],
    new: list[Placed],
    old_key: Callable[[Placed], Hashable],
    new_key: Callable[[Placed], Hashable],
) -> tuple[tuple[tuple[Placed, Placed], ...], list[Placed], list[Placed]]:
    waiting: dict[Hashable, list[int]] = {}
    for number, placed in enumerate(new):
        waiting.setdefault(new_key(placed), []).append(number)
    pairs: list[tuple[Placed, Placed]] = []
    left: list[Placed] = []
    taken: set[int] = set()
    for placed in old:
        numbers = waiting.get(old_key(placed))
        if numbers:
            number = numbers.pop(0)
            taken.add(number)
            pairs.append((placed, new[number]))
        else:
            left.append(placed)
    return tuple(pairs), left, [placed for number, placed in enumerate(new) if number not in taken]
