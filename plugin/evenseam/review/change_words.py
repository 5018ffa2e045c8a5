"""A change as words one teacher would say to another."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.exact import Unit
from evenseam.pattern import CutShape, Quantity
from evenseam.review.changes import Added, Change, Kind, Remeasured, Removed, Renamed, Restated, Where
from evenseam.review.speech import EDITIONS, ENGLISH, Speech

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
    return EDITIONS.get(unit, "") if unit else ""


def change_words(change: Change, speech: Speech = ENGLISH) -> str:
    """Return a change in words, old → new, without its reason.

    What concerns figures is said by `speech`; names and words are told in reviews only, which are English.
    """
    match change:
        case Added():
            return _added(change, speech)
        case Removed():
            return _removed(change, speech)
        case Renamed():
            return _renamed(change)
        case Remeasured():
            return _remeasured(change, speech)
        case Restated():
            return _restated(change, speech)


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


def _added(change: Added, speech: Speech) -> str:
    label = speech.name(change.label)
    match change.kind:
        case Kind.PATTERN:
            return f"the pattern {change.label} is new"
        case Kind.SIZE:
            size, finished = size_words(change.where), speech.figure(size_of(change.figures))
            edition = speech.edition(change.where.unit) if change.where.unit else ""
            if edition and finished:
                return speech.said(
                    "the {size} in {edition} is new, {finished} finished",
                    size=size, edition=edition, finished=finished,
                )  # fmt: skip
            if edition:
                return speech.said("the {size} in {edition} is new", size=size, edition=edition)
            return f"the {size} is new, {finished} finished" if finished else f"the {size} is new"
        case Kind.CUT:
            size = cut_size(change.figures, speech)
            if _is_plural(change.label):
                return speech.said("{label} are new ({size})", label=label, size=size)
            return speech.said("{label} is new ({size})", label=label, size=size)
        case Kind.YARDAGE:
            return speech.said(
                "{label} is needed now, {length}", label=label, length=speech.figure(change.figures[0].text)
            )
        case Kind.TEMPLATE:
            return speech.said("{label} is new, {size}", label=label, size=speech.figure(size_of(change.figures)))
        case Kind.STEP:
            return speech.said("new step “{step}”", step=speech.step(change.label))
        case Kind.FABRIC:
            return f"the fabric {change.label} is new"
        case _:
            return speech.said("{label} is new", label=label)


def _removed(change: Removed, speech: Speech) -> str:
    label = speech.name(change.label)
    match change.kind:
        case Kind.PATTERN:
            return f"the pattern {change.label} is gone"
        case Kind.SIZE:
            size = size_words(change.where)
            if change.where.unit:
                edition = speech.edition(change.where.unit)
                return speech.said("the {size} in {edition} is gone", size=size, edition=edition)
            return f"the {size} is gone"
        case Kind.CUT:
            size = cut_size(change.figures, speech)
            if _is_plural(change.label):
                return speech.said("{label} are no longer cut (before: {size})", label=label, size=size)
            return speech.said("{label} is no longer cut (before: {size})", label=label, size=size)
        case Kind.YARDAGE:
            length = speech.figure(change.figures[0].text)
            return speech.said("{label} is no longer needed (it was {length})", label=label, length=length)
        case Kind.TEMPLATE:
            return speech.said("{label} is gone", label=label)
        case Kind.STEP:
            return speech.said("the step “{step}” is gone", step=speech.step(change.label))
        case Kind.FABRIC:
            return f"the fabric {change.label} is gone"
        case _:
            return speech.said("{label} is gone", label=label)


def _renamed(change: Renamed) -> str:
    if change.kind is Kind.STEP:
        return f"the step “{change.old_label}” is now called “{change.new_label}”"
    if change.kind is Kind.PATTERN:
        return f"its folder is now called {change.new_id} (it was {change.old_id}), and so is its address"
    if change.kind is Kind.SIZE:
        return f"the {change.old_label} is now called {change.new_label}, every cut as it was"
    if change.old_label == change.new_label:
        verb = "have" if _is_plural(change.new_label) else "has"
        return f"{change.new_label} now {verb} the id {change.new_id} (it was {change.old_id})"
    verb = "are" if _is_plural(change.old_label) else "is"
    return f"{change.old_label} {verb} now called {change.new_label}"


def _remeasured(change: Remeasured, speech: Speech) -> str:
    old, new = change.old, change.new
    label = speech.name(change.label)
    match change.kind:
        case Kind.CUT:
            return f"{before_figures(label)} {cut_figures(old, new, change.aspect, speech)}"
        case Kind.FINISHED:
            return speech.said("finished size {change}", change=_sizes(old, new, speech))
        case Kind.YARDAGE:
            change_of = _from_to(old[0], new[0], speech)
            return speech.said("yardage of {label} {change}", label=before_figures(label), change=change_of)
        case Kind.BATTING:
            return speech.said("batting to buy {change}", change=_from_to(old[0], new[0], speech))
        case Kind.CHECKPOINT:
            change_of = _sizes(old, new, speech)
            return speech.said("after “{step}” it measures {change}", step=speech.step(change.label), change=change_of)
        case Kind.TEMPLATE:
            if [figure.value for figure in old] == [figure.value for figure in new]:
                size = speech.figure(size_of(new))
                return speech.said("{label} has another outline, {size} as before", label=label, size=size)
            return f"{label} {_sizes(old, new, speech)}"
        case _:
            return f"{label} {_from_to(old[0], new[0], speech)}"


def _sizes(old: Iterable[Quantity], new: Iterable[Quantity], speech: Speech) -> str:
    return speech.figure(f"{size_of(old)} → {size_of(new)}")


def cut_figures(old: tuple[Quantity, ...], new: tuple[Quantity, ...], shape: str, speech: Speech = ENGLISH) -> str:
    """Return what differs of a cut: 16 1/2 in → 17 in long; 2 → 3 of them."""
    (width, height, count), (new_width, new_height, new_count) = old, new
    told = []
    changed = [width.value != new_width.value, height.value != new_height.value]
    is_strip = shape in (CutShape.STRIP.value, CutShape.BINDING.value, CutShape.BIAS_BINDING.value)
    is_lying = width.value > height.value and new_width.value > new_height.value
    is_standing = height.value > width.value and new_height.value > new_width.value
    if all(changed) and width.value == height.value and new_width.value == new_height.value:
        told.append(speech.said("{change} square", change=speech.figure(f"{width.text} → {new_width.text}")))
    elif is_strip and sum(changed) == 1 and (is_lying or is_standing):
        before, after = (width, new_width) if changed[0] else (height, new_height)
        change = speech.figure(f"{before.text} → {after.text}")
        is_long = changed[0] == is_lying
        told.append(speech.said("{change} long" if is_long else "{change} wide", change=change))
    elif any(changed):
        sizes = ((width, height), (new_width, new_height))
        if is_strip and is_lying:
            # Strips are told with the narrow side first, however they lie.
            sizes = ((height, width), (new_height, new_width))
        told.append(_sizes(*sizes, speech))
    if count.value != new_count.value:
        change = f"{count.number} → {new_count.number}"
        noun = "{change} of them" if told else "{change} piece" if new_count.value == 1 else "{change} pieces"
        told.append(speech.said(noun, change=change))
    return ", ".join(told)


def _restated(change: Restated, speech: Speech) -> str:
    old, new = change.old, change.new
    label = speech.name(change.label)
    match change.kind:
        case Kind.CUT:
            return f"{label} {cut_otherwise(change, speech)}"
        case Kind.SECTIONS if old == new:
            return speech.said(
                "the pieces of {label} are sewn in another order or shape, in the same sections ({sections})",
                label=speech.name(f"the {change.label}"), sections=_sections(new, speech),
            )  # fmt: skip
        case Kind.SECTIONS:
            return speech.said(
                "{label} is pieced in sections {new}, instead of {old}",
                label=speech.name(f"the {change.label}"), new=_sections(new, speech), old=_sections(old, speech),
            )  # fmt: skip
        case Kind.STEP:
            return speech.said(
                "“{step}” is done {new} instead of {old}",
                step=speech.step(change.label), new=_times(new, speech), old=_times(old, speech),
            )  # fmt: skip
        case Kind.STEP_ORDER:
            return _moved(old.split(", "), new.split(", "), speech)
        case Kind.FABRIC if change.aspect == "name":
            return f"the fabric {old} is now called {new}"
        case Kind.FABRIC if change.aspect == "colour":
            return f"{change.label} is shown in another colour, {old} → {new}"
        case Kind.FABRIC:
            return f"the words about what {change.label} is for: “{shortened(old)}” → “{shortened(new)}”"
        case _:
            return _words(change)


def _sections(text: str, speech: Speech) -> str:
    """Return sections with the number of their pieces: A of 3, B of 4."""
    return ", ".join(
        speech.said("{section} of {pieces}", section=name, pieces=pieces)
        for name, _, pieces in (one.partition(" of ") for one in text.split(", "))
    )


def cut_otherwise(change: Restated, speech: Speech = ENGLISH) -> str:
    """Return what is otherwise with a cut but its figures, to stand after its name."""
    old, new = change.old, change.new
    match change.aspect:
        case "fabric":
            return speech.said("cut from {new} instead of {old}", new=new, old=old)
        case "shape":
            return speech.said("cut as {new} instead of {old}", new=speech.name(new), old=speech.name(old))
        case "print":
            if new == UPRIGHT:
                return speech.said("cut with the print upright")
            return speech.said("cut without regard to the print")
        case "join" if new == UNJOINED:
            return speech.said("cut in one piece, no longer joined with {old} seams", old=speech.name(old))
        case "join" if old == UNJOINED:
            return speech.said("may be joined with {new} seams, no longer in one piece", new=speech.name(new))
        case "join":
            return speech.said(
                "joined with {new} seams instead of {old} ones", new=speech.name(new), old=speech.name(old)
            )
        case _:
            ways = [speech.name(STRIPS.get(way, way)) for way in (new, old)]
            return speech.said("cut {new} instead of {old}", new=ways[0], old=ways[1])


def _moved(old: list[str], new: list[str], speech: Speech) -> str:
    """Return which steps come elsewhere: those outside the longest run that keeps its order."""
    kept = set(_longest_common(old, new))
    moved = [step for step in new if step not in kept]
    if len(moved) > 2:
        return speech.said("{number} steps come elsewhere in the order", number=str(len(moved)))
    told = []
    for step in moved:
        place = new.index(step)
        if place:
            before = speech.step(new[place - 1])
            told.append(speech.said("“{step}” now comes after “{before}”", step=speech.step(step), before=before))
        else:
            told.append(speech.said("“{step}” now comes first", step=speech.step(step)))
    return speech.listed(told)


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


def _times(text: str, speech: Speech) -> str:
    known = {"1": "once", "2": "twice"}.get(text)
    return speech.said(known) if known else speech.said("{number} times", number=text)


def _from_to(old: Quantity, new: Quantity, speech: Speech) -> str:
    if old.unit is new.unit and new.unit.symbol:
        return speech.figure(f"{old.number} → {new.text}")
    return speech.figure(f"{old.text} → {new.text}")


def cut_size(figures: tuple[Quantity, ...], speech: Speech = ENGLISH) -> str:
    """Return number and size of a cut: 2 of 1 1/2 × 13 in."""
    width, height, count = figures
    if width.value == height.value:
        return speech.said("{number} of {side} square", number=count.number, side=speech.figure(width.text))
    return speech.said("{number} of {size}", number=count.number, size=speech.figure(size_of((width, height))))


_PLURALS = {"patches", "pieces", "strips", "squares", "cornerstones", "pockets"}


def _is_plural(label: str) -> bool:
    """Tell whether a label asks for "are", as the noun before its first "of" or "for" does."""
    head = label.partition(" of ")[0].partition(" for ")[0]
    return bool(_PLURALS & set(head.split()))
