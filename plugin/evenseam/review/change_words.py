"""A change as words one teacher would say to another."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.exact import Unit
from evenseam.pattern import CutShape, Quantity
from evenseam.review.changes import Added, Change, Kind, Remeasured, Removed, Renamed, Restated, Where

_EDITIONS = {Unit.INCH: "inches", Unit.CENTIMETRE: "centimetres"}
SHORTEN = 140


def size_words(where: Where) -> str:
    """Return a size by its name: wall hanging."""
    name = where.name or where.size.replace("-", " ")
    return name[:1].lower() + name[1:] if name[1:2].islower() else name


def edition_words(unit: Unit | None) -> str:
    """Return an edition by its name."""
    return _EDITIONS.get(unit, "") if unit else ""


def change_words(change: Change) -> str:
    """Return a change in words, old → new, without its reason."""
    match change:
        case Added():
            return _added(change)
        case Removed():
            return _removed(change)
        case Renamed():
            return _renamed(change)
        case Remeasured():
            return _remeasured(change)
        case Restated():
            return _restated(change)


def size_of(figures: Iterable[Quantity]) -> str:
    """Return lengths as makers write them: 2 1/2 × 13 in."""
    figures = tuple(figures)
    numbers = " × ".join(figure.number for figure in figures)
    return f"{numbers} {figures[0].unit.symbol}".strip() if figures else ""


def shortened(text: str, longest: int = SHORTEN) -> str:
    """Return a text as one line, cut where it is too long."""
    line = " ".join(text.split())
    return line if len(line) <= longest else line[: longest - 1].rstrip() + "…"


def _added(change: Added) -> str:
    match change.kind:
        case Kind.PATTERN:
            return f"the pattern {change.label} is new"
        case Kind.SIZE:
            return f"the {size_words(change.where)}{_in_edition(change.where)} is new{_finishing(change.figures)}"
        case Kind.CUT:
            return f"{_pieces(change.figures, change.label)} new"
        case Kind.YARDAGE:
            return f"{change.label} is needed now, {change.figures[0].text}"
        case Kind.TEMPLATE:
            return f"{change.label} is new, {size_of(change.figures)}"
        case Kind.STEP:
            return f"new step “{change.label}”"
        case Kind.FABRIC:
            return f"the fabric {change.label} is new"
        case _:
            return f"{change.label} is new"


def _removed(change: Removed) -> str:
    match change.kind:
        case Kind.PATTERN:
            return f"the pattern {change.label} is gone"
        case Kind.SIZE:
            return f"the {size_words(change.where)}{_in_edition(change.where)} is gone"
        case Kind.CUT:
            return f"{_pieces(change.figures, change.label)} no longer cut"
        case Kind.YARDAGE:
            return f"{change.label} is no longer needed (it was {change.figures[0].text})"
        case Kind.TEMPLATE:
            return f"{change.label} is gone"
        case Kind.STEP:
            return f"the step “{change.label}” is gone"
        case Kind.FABRIC:
            return f"the fabric {change.label} is gone"
        case _:
            return f"{change.label} is gone"


def _renamed(change: Renamed) -> str:
    if change.kind is Kind.STEP:
        return f"the step “{change.old_label}” is now called “{change.new_label}”"
    if change.old_label == change.new_label:
        return f"{change.new_label} keep their size and have another id, {change.new_id} (was {change.old_id})"
    return f"{change.old_label} are now called {change.new_label}"


def _remeasured(change: Remeasured) -> str:
    old, new = change.old, change.new
    match change.kind:
        case Kind.CUT:
            return f"{change.label} {cut_figures(old, new, change.aspect)}"
        case Kind.FINISHED:
            return f"finished size {size_of(old)} → {size_of(new)}"
        case Kind.YARDAGE:
            return f"yardage of {change.label} {_from_to(old[0], new[0])}"
        case Kind.BATTING:
            return f"batting to buy {_from_to(old[0], new[0])}"
        case Kind.CHECKPOINT:
            return f"after “{change.label}” it measures {size_of(old)} → {size_of(new)}"
        case Kind.TEMPLATE:
            if [figure.value for figure in old] == [figure.value for figure in new]:
                return f"{change.label} has another outline, {size_of(new)} as before"
            return f"{change.label} {size_of(old)} → {size_of(new)}"
        case _:
            return f"{change.label} {_from_to(old[0], new[0])}"


def cut_figures(old: tuple[Quantity, ...], new: tuple[Quantity, ...], shape: str) -> str:
    """Return what differs of a cut: 16 1/2 in → 17 in long; 2 → 3 of them."""
    (width, height, count), (new_width, new_height, new_count) = old, new
    told = []
    changed = [width.value != new_width.value, height.value != new_height.value]
    is_strip = shape in (CutShape.STRIP.value, CutShape.BINDING.value, CutShape.BIAS_BINDING.value)
    is_lying = width.value > height.value and new_width.value > new_height.value
    is_standing = height.value > width.value and new_height.value > new_width.value
    if all(changed) and width.value == height.value and new_width.value == new_height.value:
        told.append(f"{width.text} → {new_width.text} square")
    elif is_strip and sum(changed) == 1 and (is_lying or is_standing):
        before, after = (width, new_width) if changed[0] else (height, new_height)
        told.append(f"{before.text} → {after.text} {'long' if changed[0] == is_lying else 'wide'}")
    elif any(changed):
        sizes = ((width, height), (new_width, new_height))
        if is_strip and is_lying:
            # Strips are told with the narrow side first, however they lie.
            sizes = ((height, width), (new_height, new_width))
        told.append(f"{size_of(sizes[0])} → {size_of(sizes[1])}")
    if count.value != new_count.value:
        told.append(f"{count.number} → {new_count.number}{' of them' if told else ' pieces'}")
    return ", ".join(told)


def _restated(change: Restated) -> str:
    old, new = change.old, change.new
    match change.kind:
        case Kind.CUT if change.aspect == "fabric":
            return f"{change.label} cut from {new} instead of {old}"
        case Kind.CUT:
            return f"{change.label}: {change.aspect} {new} instead of {old}"
        case Kind.SECTIONS if old == new:
            return f"the pieces of the {change.label} are sewn in another order or shape, in the same sections ({new})"
        case Kind.SECTIONS:
            return f"the {change.label} is pieced in sections {new}, instead of {old}"
        case Kind.STEP:
            return f"“{change.label}” is done {_times(new)} instead of {_times(old)}"
        case Kind.STEP_ORDER:
            return f"the steps come in another order: {new}"
        case Kind.FABRIC if change.aspect == "name":
            return f"the fabric {old} is now called {new}"
        case Kind.FABRIC if change.aspect == "colour":
            return f"{change.label} is shown in another colour, {old} → {new}"
        case Kind.FABRIC:
            return f"the words about what {change.label} is for: “{shortened(old)}” → “{shortened(new)}”"
        case _:
            return _words(change)


def _words(change: Restated) -> str:
    name = change.label if change.label.startswith("your") else f"the {change.label}"
    verb = "are" if change.label.startswith("your") else "is"
    if not change.old:
        return f"{name} {verb} new: “{shortened(change.new)}”"
    if not change.new:
        return f"{name} {verb} gone: “{shortened(change.old)}”"
    if len(change.old) + len(change.new) > SHORTEN:
        return f"{name} {verb} reworded"
    return f"{name}: “{shortened(change.old)}” → “{shortened(change.new)}”"


def _times(text: str) -> str:
    return {"1": "once", "2": "twice"}.get(text, f"{text} times")


def _from_to(old: Quantity, new: Quantity) -> str:
    if old.unit is new.unit and new.unit.symbol:
        return f"{old.number} → {new.text}"
    return f"{old.text} → {new.text}"


def _in_edition(where: Where) -> str:
    edition = edition_words(where.unit)
    return f" in {edition}" if edition else ""


def _finishing(figures: tuple[Quantity, ...]) -> str:
    return f", {size_of(figures)} finished" if figures else ""


def _pieces(figures: tuple[Quantity, ...], label: str) -> str:
    width, height, count = figures
    size = f"{width.text} square" if width.value == height.value else size_of((width, height))
    return f"{count.number} {label}, {size}, {'is' if count.value == 1 else 'are'}"
