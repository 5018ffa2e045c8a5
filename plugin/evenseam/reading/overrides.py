"""What a size or an edition says against what stands above it: something there to override, and something different."""

from __future__ import annotations

from evenseam.problems import Label, Report
from evenseam.reading import codes
from evenseam.reading.kinds import Kind, Record, Table, Variants
from evenseam.reading.leaves import did_you_mean, shown
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
    message = (
        f"there is no {noun} to take away" if noun == entry.key.text else f"there is no {noun} {name} to take away"
    )
    hint = did_you_mean(entry.key.text, known) or ("known here: " + ", ".join(known) if known else "take the line out")
    report.add(codes.OVERRIDES_NOTHING, entry.key.place, message, hint)


def _report_same(below: Entry, entry: Entry, report: Report) -> None:
    label = (Label(below.key.place, "it says so already here"),)
    message = f"{shown(entry.key.text)} says what holds anyway"
    report.add(
        codes.SAYS_NOTHING_DIFFERENT, entry.key.place, message, "take it out: a size says only what differs", label
    )
