"""Changes become causes with their consequences: one edited width is one cause, however much follows from it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from evenseam.review.changes import Cause, Change, InputCause, Kind, OwnCause, PartCause, Where

MANY = 3
"""More causes than this are counted, not listed."""
MOST_TOGETHER = 4
"""More groups of several causes than this are told as one."""


@dataclass(frozen=True, slots=True)
class Group:
    """One cause, or several that work together, and what follows."""

    causes: tuple[Cause, ...]
    wheres: tuple[Where, ...]
    """Where the causes stand: sizes and editions."""
    changes: tuple[Change, ...]
    """What follows from them."""


def group_changes(changes: Iterable[Change]) -> tuple[tuple[Group, ...], tuple[Change, ...]]:
    """Return the groups, and the changes that have no cause but stand for themselves: words, colours, whole sizes.

    Many causes together come first; then single causes in the order of the file; then two or three that work
    together; last what has no cause in the author's files.
    """
    rest: list[Change] = []
    roots: dict[tuple[Cause, ...], list[Change]] = {}
    followed: dict[tuple[Cause, ...], list[Change]] = {}
    for change in changes:
        if is_root(change):
            roots.setdefault(change.because, []).append(change)
        elif change.because:
            followed.setdefault(_in_order(change.because), []).append(change)
        else:
            rest.append(change)
    together = [causes for causes in followed if len(causes) > 1]
    if len(together) > MOST_TOGETHER:
        merged: list[Change] = []
        for causes in together:
            merged += followed.pop(causes)
        names = _in_order(tuple(dict.fromkeys(cause for causes in together for cause in causes)))
        followed[names] = [*followed.get(names, []), *merged]
    keys = sorted(dict.fromkeys((*roots, *followed)), key=_rank)
    groups = tuple(
        Group(causes, _wheres((*roots.get(causes, ()), *followed.get(causes, ()))), tuple(followed.get(causes, ())))
        for causes in keys
    )
    return groups, tuple(rest)


def is_root(change: Change) -> bool:
    """Tell whether a change is a cause itself; a usual figure that goes with another decision is not."""
    return change.kind is Kind.PART or (change.kind is Kind.INPUT and isinstance(change.because[0], InputCause))


def _wheres(changes: Iterable[Change]) -> tuple[Where, ...]:
    return tuple(dict.fromkeys(change.where for change in changes))


def _in_order(causes: tuple[Cause, ...]) -> tuple[Cause, ...]:
    return tuple(sorted(causes, key=_key))


def _rank(causes: tuple[Cause, ...]) -> tuple[object, ...]:
    own = any(isinstance(cause, OwnCause) for cause in causes)
    # What many causes do together is most of what there is to say, and is said first.
    return (own, len(causes) <= MANY, len(causes) > 1, len(causes), tuple(_key(cause) for cause in causes))


def is_told(group: Group, groups: Iterable[Group]) -> bool:
    """Tell whether a group has something of its own to say; if not, its cause is told with others it works with."""
    with_others = (other for other in groups if other is not group and other.changes)
    return bool(group.changes) or not any(set(group.causes) <= set(other.causes) for other in with_others)


def told_only_here(group: Group, groups: Iterable[Group]) -> tuple[Cause, ...]:
    """Return those of many causes that have no group of their own to be told in."""
    alone = {other.causes[0] for other in groups if len(other.causes) == 1 and other.changes}
    return tuple(cause for cause in group.causes if cause not in alone)


def _key(cause: Cause) -> tuple[int, int, str]:
    match cause:
        case InputCause(subject, figures, _):
            lines = [side.place.line for pair in figures for side in reversed(pair) if side.place]
            return (0, lines[0] if lines else 0, subject)
        case PartCause():
            place = cause.new_place or cause.old_place
            return (1, place.line if place else 0, f"{cause.part} {cause.about}")
        case OwnCause():
            return (2, 0, "")
