"""A finished size to come near to: one of the trade's names or figures, with or without a drop."""

from __future__ import annotations

from evenseam.pattern import Choosing, Fit, Quantity
from evenseam.pattern.project_sizes import known_names, over_a_mattress, sides_of, usual_drop, usual_size
from evenseam.problems import Label, Place
from evenseam.reading import codes
from evenseam.reading.entries import Entries, Reader, given
from evenseam.reading.fit_keys import FIT
from evenseam.reading.leaves import did_you_mean, listed, shown
from evenseam.reading.lengths import read_finished_size
from evenseam.reading.tree import Entry, Mapping, Node, Scalar

_CHOOSING = {
    "rows, columns and borders": (Choosing.ROWS_AND_COLUMNS, Choosing.BORDER_WIDTHS),
    "rows and columns": (Choosing.ROWS_AND_COLUMNS,),
    "borders": (Choosing.BORDER_WIDTHS,),
}


def read_fit(reader: Reader, entry: Entry | None) -> Fit | None:
    """Return the size to come near to; None when there is none, or when it cannot be read, which is reported."""
    if entry is None:
        return None
    if isinstance(entry.value, Scalar):
        return _fit(reader, entry.value, None, entry.key.place)
    if not isinstance(entry.value, Mapping):
        return None
    entries = Entries(reader, entry.value, FIT, entry.key.place)
    node = entries.node("size")
    return None if node is None else _fit(reader, node, entries, entry.key.place)


def _fit(reader: Reader, node: Node, entries: Entries | None, at: Place) -> Fit | None:
    drop = entries.length("drop", "drop") if entries else None
    tuck = entries.length("pillow tuck", "pillow tuck") if entries else None
    choose = entries.choice("choose", "rows, columns and borders") if entries else "rows, columns and borders"
    widest = entries.length("widest border", "widest border") if entries else None
    if choose is None or not isinstance(node, Scalar):
        return None
    text = " ".join(node.text.split())
    unit = reader.unit_at(node.place)
    known = usual_size(text, unit)
    if known is not None and known.is_pad:
        known = usual_size(text, reader.edition)  # Pads are sold in round figures of their own in either unit.
    if known is None:
        sides = _stated(reader, node)
        if sides is None:
            return None
        name, (width, height) = "", sides
    else:
        name, (width, height) = known.name, sides_of(known)
    if known is not None and known.is_mattress:
        drop = drop or usual_drop(known)
        if drop.unit is not known.unit or (tuck is not None and tuck.unit is not known.unit):
            reader.report.add(
                codes.SAID_TWO_WAYS, at, f"a {known.name} bed is known in {known.unit.symbol}, the drop is in "
                f"{drop.unit.symbol}",
                "write the size in figures, or leave the drop out",
            )  # fmt: skip
            return None
        name = f"{name} bed"
        width, height = over_a_mattress(width, height, drop, tuck)
    elif entries is not None and _needs_a_bed(reader, entries, text):
        return None
    if known is not None and known.is_pad:
        name = f"{name} pad"
    if entries is not None and entries.yes("turned"):
        width, height = height, width
    is_bed = known is not None and known.is_mattress
    note = f"{known.choice} ({known.source})" if known is not None and known.choice else ""
    return Fit(name, width, height, _CHOOSING[choose], at, widest, drop if is_bed else None, note)


def _stated(reader: Reader, node: Scalar) -> tuple[Quantity, Quantity] | None:
    """Return a size written in figures; a word that is none of the trade's is reported."""
    text = node.text.strip()
    if text and not any(sign.isdigit() for sign in text):
        hint = did_you_mean(text, known_names()) or f"write a size such as 60 x 80, or one of: {listed(known_names())}"
        reader.report.add(codes.UNKNOWN_CHOICE, node.place, f"{shown(text)} is no project size known here", hint)
        return None
    unit = reader.unit_at(node.place)
    sides = read_finished_size(node, unit, reader.report)
    if sides is None:
        return None
    (width, across), (height, down) = sides
    return given("width asked for", width, unit, node, across), given("height asked for", height, unit, node, down)


def _needs_a_bed(reader: Reader, entries: Entries, text: str) -> bool:
    """Report a drop over something that is no bed."""
    for key in ("drop", "pillow tuck"):
        entry = entries.get(key)
        if entry is not None:
            size = entries.get("size")
            label = (Label(size.key.place, "the size"),) if size else ()
            reader.report.add(
                codes.SAID_TWO_WAYS, entry.key.place, f"{shown(text)} is no bed, and has no {key}",
                "name a bed such as twin or queen, or take the line out", label,
            )  # fmt: skip
            return True
    return False
