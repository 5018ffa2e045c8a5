"""What a size or an edition says against what stands above it: something there to override, and something different."""

from __future__ import annotations

from collections.abc import Sequence

from evenseam.problems import Label, Report
from evenseam.reading import codes
from evenseam.reading.kinds import Kind, Record, ShortOrLong, Table, Variants
from evenseam.reading.leaves import did_you_mean, listed, shown
from evenseam.reading.tree import Entry, Mapping, Node, is_none


def check_overrides(base: Mapping, over: Mapping, record: Record, report: Report) -> None:
    """Report a part taken away that is not there, and (as a warning) a part that says what holds anyway.

    A part may repeat some of what stands above, so that it reads well; a part that repeats all of it is a slip.
    """
    for entry in over.entries:
        field = record.field(entry.key.text)
        if field is None or field.of_a_size or entry.key.text == "editions":
            continue
        below = base.entry(entry.key.text)
        if below is not None and says_the_same(below.value, entry.value):
            _report_same(below, entry, report)
        elif isinstance(field.kind, Table) and isinstance(entry.value, Mapping):
            _check_table(below.value if below else None, entry.value, field.kind, report)
        elif below is None and is_none(entry.value):
            _report_nothing(entry, field.key, (), report)


def check_edition(trees: Sequence[Mapping], over: Mapping, kind: Kind, report: Report) -> None:
    """Report what an edition says about a part that is in none of the trees it is laid over."""
    for entry in over.entries:
        key, inner = entry.key.text, inner_kind(kind, entry.key.text)
        found = [below.value for tree in trees if (below := tree.entry(key)) is not None and not is_none(below.value)]
        if inner is None:
            continue
        if not found and (is_part(inner) or is_none(entry.value)):
            known = (
                tuple(dict.fromkeys(known for tree in trees for known in tree.keys)) if isinstance(kind, Table) else ()
            )
            noun = kind.noun if isinstance(kind, Table) else key
            _report_nothing(entry, noun, known, report)
        elif isinstance(entry.value, Mapping):
            check_edition([tree for tree in found if isinstance(tree, Mapping)], entry.value, inner, report)


def is_absent(entry: Entry | None) -> bool:
    """Tell whether a part is not there, or was taken away."""
    return entry is None or is_none(entry.value)


def is_part(kind: Kind | None) -> bool:
    """Tell whether a kind of value is a part of a project that is there or not, such as a border."""
    return isinstance(kind, Variants) or (isinstance(kind, Record) and any(field.is_required for field in kind.fields))


def says_the_same(base: Node, over: Node) -> bool:
    """Tell whether a value laid over another changes nothing."""
    if isinstance(base, Mapping) and isinstance(over, Mapping):
        values = ((base.value(entry.key.text), entry.value) for entry in over.entries)
        return all(below is not None and says_the_same(below, value) for below, value in values)
    return base == over


def inner_kind(kind: Kind | None, key: str) -> Kind | None:
    """Return the kind of value under a key of a mapping of some kind."""
    match kind:
        case Table():
            return kind.item
        case Record():
            field = kind.field(key)
            return field.kind if field else None
        case ShortOrLong():
            return inner_kind(kind.long, key)
        case Variants():
            fields = (record.field(key) for _, record in kind.records)
            return next((field.kind for field in fields if field), None)
    return None


def _check_table(base: Node | None, over: Mapping, kind: Table, report: Report) -> None:
    known = base if isinstance(base, Mapping) else None
    for entry in over.entries:
        below = known.entry(entry.key.text) if known else None
        if below is None and is_none(entry.value):
            _report_nothing(entry, kind.noun, known.keys if known else (), report)
        elif below is not None and says_the_same(below.value, entry.value):
            _report_same(below, entry, report)


def _report_nothing(entry: Entry, noun: str, known: tuple[str, ...], report: Report) -> None:
    name = shown(entry.key.text)
    is_removal = is_none(entry.value)
    message = f"there is no {noun}" + ("" if noun == entry.key.text else f" {name}")
    message += " to take away" if is_removal else " that this could be about"
    hint = did_you_mean(entry.key.text, known) or ("known here: " + listed(known) if known else "take the line out")
    report.add(codes.OVERRIDES_NOTHING, entry.key.place, message, hint)


def _report_same(below: Entry, entry: Entry, report: Report) -> None:
    label = (Label(below.key.place, "it says so already here"),)
    message = f"{shown(entry.key.text)} says what holds anyway"
    report.add(
        codes.SAYS_NOTHING_DIFFERENT, entry.key.place, message, "take it out: a size says only what differs", label
    )
