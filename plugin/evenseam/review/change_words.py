"""A change as words one teacher would say to another."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.exact import Unit
from evenseam.pattern import CutShape, Quantity
from evenseam.review.changes import Added, Change, Kind, Remeasured, Removed, Renamed, Restated, Where

_EDITIONS = {Unit.INCH: "inches", Unit.CENTIMETRE: "centimetres"}
SHORTEN = 140
UPRIGHT = "print upright"
UNJOINED = "one piece"
STRIPS = {"across": "across the cloth", "along": "along the cloth", "either": "whichever way takes less cloth"}


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


def before_figures(label: str) -> str:
    """Return a name to stand before figures; one that ends in a figure itself needs something between.

    >>> before_figures("side strips of edge 3"), before_figures("binding")
    ('side strips of edge 3:', 'binding')
    """
    return f"{label}:" if label[-1:].isdigit() else label


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
            return f"{change.label} {_verb(change.label)} new ({cut_size(change.figures)})"
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
            return f"{change.label} {_verb(change.label)} no longer cut (before: {cut_size(change.figures)})"
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
    if change.kind is Kind.SIZE:
        return f"the {change.old_label} is now called {change.new_label}, every cut as it was"
    if change.old_label == change.new_label:
        return f"{change.new_label} now {_has(change.new_label)} the id {change.new_id} (it was {change.old_id})"
    return f"{change.old_label} {_verb(change.old_label)} now called {change.new_label}"


def _remeasured(change: Remeasured) -> str:
    old, new = change.old, change.new
    match change.kind:
        case Kind.CUT:
            return f"{before_figures(change.label)} {cut_figures(old, new, change.aspect)}"
        case Kind.FINISHED:
            return f"finished size {size_of(old)} → {size_of(new)}"
        case Kind.YARDAGE:
            return f"yardage of {before_figures(change.label)} {_from_to(old[0], new[0])}"
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
        noun = "of them" if told else "piece" if new_count.value == 1 else "pieces"
        told.append(f"{count.number} → {new_count.number} {noun}")
    return ", ".join(told)


def _restated(change: Restated) -> str:
    old, new = change.old, change.new
    match change.kind:
        case Kind.CUT:
            return f"{change.label} {_cut_otherwise(change.aspect, old, new)}"
        case Kind.SECTIONS if old == new:
            return f"the pieces of the {change.label} are sewn in another order or shape, in the same sections ({new})"
        case Kind.SECTIONS:
            return f"the {change.label} is pieced in sections {new}, instead of {old}"
        case Kind.STEP:
            return f"“{change.label}” is done {_times(new)} instead of {_times(old)}"
        case Kind.STEP_ORDER:
            return _moved(old.split(", "), new.split(", "))
        case Kind.FABRIC if change.aspect == "name":
            return f"the fabric {old} is now called {new}"
        case Kind.FABRIC if change.aspect == "colour":
            return f"{change.label} is shown in another colour, {old} → {new}"
        case Kind.FABRIC:
            return f"the words about what {change.label} is for: “{shortened(old)}” → “{shortened(new)}”"
        case _:
            return _words(change)


def _cut_otherwise(aspect: str, old: str, new: str) -> str:
    match aspect:
        case "fabric":
            return f"cut from {new} instead of {old}"
        case "shape":
            return f"cut as {new} instead of {old}"
        case "print":
            return "cut with the print upright" if new == UPRIGHT else "cut without regard to the print"
        case "join" if new == UNJOINED:
            return f"cut in one piece, no longer joined with {old} seams"
        case "join" if old == UNJOINED:
            return f"may be joined with {new} seams, no longer in one piece"
        case "join":
            return f"joined with {new} seams instead of {old} ones"
        case _:
            return f"cut {STRIPS.get(new, new)} instead of {STRIPS.get(old, old)}"


def _moved(old: list[str], new: list[str]) -> str:
    """Return which steps come elsewhere: those outside the longest run that keeps its order."""
    kept = set(_longest_common(old, new))
    moved = [step for step in new if step not in kept]
    if len(moved) > 2:
        return f"{len(moved)} steps come elsewhere in the order"
    told = []
    for step in moved:
        place = new.index(step)
        told.append(f"“{step}” now comes " + (f"after “{new[place - 1]}”" if place else "first"))
    return " and ".join(told)


def _longest_common(old: list[str], new: list[str]) -> list[str]:
    best: list[list[list[str]]] = [[[] for _ in range(len(new) + 1)] for _ in range(len(old) + 1)]
    for i, one in enumerate(old):
        for j, two in enumerate(new):
            longer = max(best[i][j + 1], best[i + 1][j], key=len)
            best[i + 1][j + 1] = [*best[i][j], one] if one == two else longer
    return best[-1][-1]


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


def cut_size(figures: tuple[Quantity, ...]) -> str:
    """Return number and size of a cut: 2 of 1 1/2 × 13 in."""
    width, height, count = figures
    size = f"{width.text} square" if width.value == height.value else size_of((width, height))
    return f"{count.number} of {size}"


_PLURALS = {"patches", "pieces", "strips", "squares", "cornerstones", "pockets"}


def _has(label: str) -> str:
    return "have" if _verb(label) == "are" else "has"


def _verb(label: str) -> str:
    """Return is or are, as the noun before the first "of" or "for" asks."""
    head = label.partition(" of ")[0].partition(" for ")[0]
    return "are" if _PLURALS & set(head.split()) else "is"
