"""Pairs of old and new parts: by id first, then those that are the same under another name."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

T = TypeVar("T")


@dataclass(frozen=True)  # no slots: see Outcome
class Matching(Generic[T]):
    """Old and new parts that belong together, and those that stand alone."""

    pairs: tuple[tuple[T, T], ...]
    """Under one id, or under two when the part was renamed."""
    removed: tuple[T, ...]
    added: tuple[T, ...]


def match_parts(
    old: Sequence[T],
    new: Sequence[T],
    id_of: Callable[[T], Hashable],
    alike: Iterable[tuple[Callable[[T], Hashable], Callable[[T], Hashable]]] = (),
) -> Matching[T]:
    """Match parts by id, and what is left by each pair of keys (of old parts, of new parts) in turn.

    Several parts with one key are matched in their order, which is the same whichever revision is called old.
    """
    pairs: list[tuple[T, T]] = []
    left_old, left_new = list(old), list(new)
    for old_key, new_key in ((id_of, id_of), *alike):
        waiting: dict[Hashable, list[T]] = {}
        for part in left_new:
            waiting.setdefault(new_key(part), []).append(part)
        found: list[tuple[T, T]] = []
        unmatched: list[T] = []
        for part in left_old:
            partners = waiting.get(old_key(part))
            if partners:
                found.append((part, partners.pop(0)))
            else:
                unmatched.append(part)
        pairs += found
        left_old = unmatched
        left_new = [part for part in left_new if not any(part is partner for _, partner in found)]
    order = {id(part): number for number, part in enumerate(old)}
    pairs.sort(key=lambda pair: order[id(pair[0])])
    return Matching(tuple(pairs), tuple(left_old), tuple(left_new))
