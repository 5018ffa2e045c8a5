"""What a size or an edition says against what stands above it: something there to override, and something different."""

from __future__ import annotations

from evenseam.problems import Label, Report
from evenseam.reading import codes
from evenseam.reading.kinds import Kind, Record, Table, Variants
from evenseam.reading.leaves import did_you_mean, shown
from evenseam.reading.tree import Mapping, Node, is_none


def check_overrides(base: Node | None, over: Node, kind: Kind, report: Report) -> None:
    """Report a part taken away that is not there, and (as a warning) a value that says what holds anyway."""
    if not isinstance(over, Mapping):
        if base is not None and base == over:
            label = (Label(base.place, "it stands here already"),)
            report.add(
                codes.SAYS_NOTHING_DIFFERENT,
                over.place,
                "this says what holds anyway",
                "take it out: a size says only what differs",
                label,
            )
        return
    below = base if isinstance(base, Mapping) else None
    for entry in over.entries:
        key = entry.key.text
        inner = _inner_kind(kind, key)
        if inner is None or key == "editions" or (isinstance(kind, Record) and _is_own(kind, key)):
            continue
        value = below.value(key) if below else None
        if value is None and is_none(entry.value) and isinstance(kind, Table):
            known = below.keys if below else ()
            hint = did_you_mean(key, known) or ("known here: " + ", ".join(known) if known else "take it out")
            report.add(
                codes.OVERRIDES_NOTHING, entry.key.place, f"there is no {kind.noun} {shown(key)} to take away", hint
            )
        elif value is not None or isinstance(entry.value, Mapping):
            check_overrides(value, entry.value, inner, report)


def _is_own(record: Record, key: str) -> bool:
    field = record.field(key)
    return field is not None and field.of_a_size


def _inner_kind(kind: Kind, key: str) -> Kind | None:
    match kind:
        case Table():
            return kind.item
        case Record():
            field = kind.field(key)
            return field.kind if field else None
        case Variants():
            for _, record in kind.records:
                if field := record.field(key):
                    return field.kind
            return kind if key == kind.key else None
    return None
