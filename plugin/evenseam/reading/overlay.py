"""A size (or an edition) laid over what stands above it: it says only what differs."""

from __future__ import annotations

from evenseam.reading.kinds import Kind, Record, Variants
from evenseam.reading.overrides import inner_kind, is_absent, is_part
from evenseam.reading.tree import Entry, Mapping, Node, is_none


def overlay(base: Node, over: Node, kind: Kind | None, *, may_add: bool = True) -> Node:
    """Return the base with the values of `over` put in; every node keeps its own place.

    Mappings are laid over key by key, in the order of the base, new keys last. Anything else replaces. The word none
    stays in the tree as a value, and is read as "not there". Without `may_add`, a part that is not there (or was taken
    away) stays so: an edition says how a border measures, not that every size has it.
    """
    if not isinstance(base, Mapping) or not isinstance(over, Mapping):
        return over
    dropped = _superseded(base, over, kind)
    entries = {entry.key.text: entry for entry in base.entries if entry.key.text not in dropped}
    for entry in over.entries:
        key = entry.key.text
        below, inner = entries.get(key), inner_kind(kind, key)
        if not may_add and is_absent(below) and is_part(inner) and isinstance(entry.value, Mapping):
            continue
        if below is None or is_none(below.value):
            nothing = Mapping((), entry.value.place)
            is_bare = may_add or not isinstance(entry.value, Mapping)
            value = entry.value if is_bare else overlay(nothing, entry.value, inner, may_add=False)
            entries[key] = Entry(entry.key, value)
        else:
            value = overlay(below.value, entry.value, inner, may_add=may_add)
            # Mappings are talked about by the key that opens them first; a replaced value by its new key.
            entries[key] = Entry(below.key if isinstance(value, Mapping) else entry.key, value)
    return Mapping(tuple(entries.values()), base.place, base.is_in_braces)


def _superseded(base: Mapping, over: Mapping, kind: Kind | None) -> set[str]:
    """Return the keys of the base that what is laid over makes meaningless."""
    dropped: set[str] = set()
    if isinstance(kind, Record):
        for key, others in kind.supersedes:
            if over.entry(key) and not is_none(over.value(key)):
                dropped |= {other for other in others if over.entry(other) is None}
    if isinstance(kind, Variants):
        chosen = kind.chosen(over)
        if chosen is not None and chosen != kind.chosen(base):
            allowed = {field.key for field in kind.record(chosen).fields}
            dropped |= {key for key in base.keys if key not in allowed}
    return dropped
