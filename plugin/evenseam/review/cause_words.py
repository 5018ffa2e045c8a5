"""A cause as a sentence one teacher would say to another."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import PurePosixPath

from evenseam.exact import Unit, format_length, sign
from evenseam.pattern import Assumed, Quantity
from evenseam.problems import Place
from evenseam.review.change_words import STRIPS
from evenseam.review.changes import Cause, InputCause, OwnCause, PartCause
from evenseam.review.grouping import MANY

_COMPARED = {
    "seam allowance": ("the seam allowance is {} wider", "the seam allowance is {} narrower"),
    "backing seam allowance": (
        "the seam allowance of the backing is {} wider", "the seam allowance of the backing is {} narrower",
    ),
    "usable width": ("the cloth is {} wider", "the cloth is {} narrower"),
    "backing overage": (
        "the backing reaches {} further beyond the top on every side",
        "the backing reaches {} less beyond the top on every side",
    ),
    "batting overage": (
        "the batting reaches {} further beyond the top on every side",
        "the batting reaches {} less beyond the top on every side",
    ),
    "patch margin": ("patches have {} more margin on every side", "patches have {} less margin on every side"),
    "opening": ("the opening is {} longer", "the opening is {} shorter"),
    "topstitch distance": (
        "the topstitching is {} further from the edge", "the topstitching is {} nearer to the edge",
    ),
    "binding strip width": ("the binding strips are {} wider", "the binding strips are {} narrower"),
    "binding extra length": (
        "{} more binding is allowed for corners and the last join",
        "{} less binding is allowed for corners and the last join",
    ),
    "corner pocket square": ("the corner pockets are cut {} larger", "the corner pockets are cut {} smaller"),
    "sleeve cut depth": ("the sleeve is cut {} deeper", "the sleeve is cut {} less deep"),
    "sleeve extra": ("the sleeve is cut {} longer", "the sleeve is cut {} shorter"),
    "sleeve hem": ("the hem of the sleeve is {} deeper", "the hem of the sleeve is {} less deep"),
    "sleeve drop": ("the sleeve sits {} lower", "the sleeve sits {} higher"),
}  # fmt: skip


def cause_words(cause: Cause) -> str:
    """Return what was changed, without figures' old and new values: the inner border is 1/4 in wider."""
    match cause:
        case InputCause():
            return _input_words(cause)
        case PartCause():
            return _part_words(cause)
        case OwnCause():
            return "nothing in the pattern's files explains it: it is worked out in another way"


def cause_figures(cause: Cause) -> str:
    """Return old and new figures: 1 in → 1 1/4 in; empty when the words say it all."""
    if isinstance(cause, InputCause) and cause.subject != "arrangement":
        if cause.is_block and len(cause.figures) == 2:
            old, new = (" × ".join(pair[side].number for pair in cause.figures) for side in (0, 1))
            return f"{old} {cause.figures[0][0].unit.symbol} → {new} {cause.figures[0][1].unit.symbol}"
        return ", ".join(f"{old.text} → {new.text}" for old, new in cause.figures)
    return ""


def cause_place(cause: Cause) -> Place | None:
    """Return where the cause stands in the new files, or in the old ones when it is gone from the new."""
    match cause:
        case InputCause(_, figures, _):
            places = [side.place for pair in figures for side in reversed(pair) if side.place is not None]
            return places[0] if places else None
        case PartCause():
            return cause.new_place or cause.old_place
        case OwnCause():
            return None


def short_place(place: Place) -> str:
    """Return a place as short as it can be told apart: pattern.yaml:31."""
    return f"{PurePosixPath(place.file).name}:{place.line}"


def because_words(causes: Iterable[Cause]) -> str:
    """Return the reason after a figure: because the inner border is 1/4 in wider (pattern.yaml:31)."""
    causes = tuple(causes)
    reason = reason_words(causes)
    return f"because of {reason}" if len(causes) > MANY else f"because {reason}" if reason else ""


def reason_words(causes: Iterable[Cause]) -> str:
    """Return the reason by itself: the inner border is 1/4 in wider (pattern.yaml:31)."""
    causes = tuple(causes)
    if len(causes) > MANY:
        return f"{len(causes)} changes together"
    return listed([f"{cause_words(cause)}{_in_brackets(cause)}" for cause in causes])


def listed(parts: list[str]) -> str:
    """Return parts as a spoken list."""
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}" if parts else ""


def difference(old: Quantity, new: Quantity) -> str:
    """Return how much larger or smaller a figure is: +1/2 in; empty when units differ."""
    if old.unit is not new.unit:
        return ""
    gap = new.value - old.value
    if sign(gap) == 0:
        return "the same"
    return f"{'+' if sign(gap) > 0 else '−'}{format_length(gap if sign(gap) > 0 else -gap, new.unit)}"


def _in_brackets(cause: Cause) -> str:
    place = cause_place(cause)
    return f" ({short_place(place)})" if place else ""


def _input_words(cause: InputCause) -> str:
    if cause.subject == "arrangement":
        return _arrangement_words(cause)
    if cause.is_block:
        told = []
        for old, new in cause.figures:
            more, less = ("wider", "narrower") if new.name.endswith("width") else ("taller", "less tall")
            told.append(f"{_amount(old, new)} {more if new.value > old.value else less}")
        return f"the {cause.subject} is {listed(told)}"
    ((old, new),) = cause.figures
    return f"{_figure_words(old, new)}{_given_words(old, new)}"


def _figure_words(old: Quantity, new: Quantity) -> str:
    name = new.name
    if old.unit is not new.unit:
        return f"the {name} is {new.text} instead of {old.text}"
    if isinstance(old.because, Assumed) and isinstance(new.because, Assumed):
        return f"the usual {name} here is {new.text} instead of {old.text}"
    if new.unit is Unit.COUNT:
        return f"the {name} is {new.number} instead of {old.number}"
    if name in _COMPARED:
        more, less = _COMPARED[name]
    elif name.endswith(" width"):
        stem = name.removesuffix(" width")
        more, less = f"the {stem} is {{}} wider", f"the {stem} is {{}} narrower"
    else:
        more, less = f"the {name} is {{}} larger", f"the {name} is {{}} smaller"
    # A name may have braces of its own, so the amount is put in by hand.
    return (more if new.value > old.value else less).replace("{}", _amount(old, new), 1)


def _given_words(old: Quantity, new: Quantity) -> str:
    match old.because, new.because:
        case Assumed(), Assumed() as now:
            return f": {now.reason}"
        case Assumed(), _:
            return ", given now where the usual figure was taken"
        case _, Assumed():
            return ", no longer given: the usual figure is taken"
    return ""


def _amount(old: Quantity, new: Quantity) -> str:
    gap = new.value - old.value
    return format_length(gap if sign(gap) > 0 else -gap, new.unit)


def _arrangement_words(cause: InputCause) -> str:
    figures = {new.name: (old, new) for old, new in cause.figures}
    if len(figures) == 2:
        old, new = (f"{_counted(figures['rows'][side], 'row')} of {figures['columns'][side].number}" for side in (0, 1))
        return f"there are {new} blocks instead of {old}"
    (old_figure, new_figure) = cause.figures[0]
    noun = new_figure.name.removesuffix("s")
    verb = "is" if new_figure.value == 1 else "are"
    return f"there {verb} {_counted(new_figure, noun)} of blocks instead of {old_figure.number}"


def _counted(figure: Quantity, noun: str) -> str:
    return f"{figure.number} {noun}" if figure.value == 1 else f"{figure.number} {noun}s"


def _part_words(cause: PartCause) -> str:
    old, new, name = cause.old, cause.new, cause.name
    match cause.about:
        case "":
            return _whole_part_words(cause)
        case "name":
            return f"the {old} is now called {new}"
        case "order":
            return f"the {name} is sewn {new} instead of {old}"
        case "fabric":
            is_plural = name.startswith(("corners", "cornerstones", "spacer"))
            is_plural = is_plural or name.endswith(("corner pockets", "triangles"))
            return f"the {name} {'are' if is_plural else 'is'} cut from {new} instead of {old}"
        case "corners":
            return f"the corners of the {name} are {_corners(new)} instead of {_corners(old)}"
        case "pieces":
            return f"the {name} is made of {new} instead of {old}"
        case "corner blocks":
            return f"at the corners of the {name} stand {new} instead of {old}"
        case "spacer strips":
            return f"plain strips may {'now' if new == 'allowed' else 'no longer'} fill what the {name} lacks"
        case "join":
            return f"lengths of the {name} are joined with {new} seams instead of {old} ones"
        case "strips":
            return f"strips of the {name} are cut {STRIPS[new]} instead of {STRIPS[old]}"
        case "float":
            return f"the float of the blocks is {new} instead of {old}"
        case "reach":
            return f"there is sashing {new} instead of {old}"
        case "cornerstones":
            return f"the sashing is made {new} instead of {old}"
        case "print":
            return f"{name} is {'a one-way print now' if new == 'one-way' else 'no longer a one-way print'}"
        case "grain":
            return f"the {name} is cut on the {_grain(new)} instead of the {_grain(old)}"
        case "drawing":
            pieces = f" ({new} instead of {old.removesuffix(' pieces')})" if old != new else ""
            return f"the {name} is drawn otherwise{pieces}"
        case "fabrics":
            if new == "1":
                return f"1 piece of the {name} is cut from another fabric"
            return f"{new} pieces of the {name} are cut from other fabrics"
        case "listing":
            return f"the pieces of the {name} are listed in another order"
        case "method":
            return f"the {name} is made by the {new} method instead of the {old} method"
        case "spacers":
            return f"{name} has {new} instead of {old}"
        case "spacer places":
            return f"the {name} stand in other places"
        case "layout":
            return "the blocks are laid out otherwise"
        case "setting":
            return f"the blocks are set {new} instead of {old}"
        case _:
            return f"the {cause.about} of the {name} is {new} instead of {old}"


def _whole_part_words(cause: PartCause) -> str:
    old, new = cause.old, cause.new
    if cause.part == "finish":
        return f"it is {new} instead of {old}"
    if cause.part == "hanging":
        if old and new:
            return f"it has {_by(new)} instead of {_by(old)}"
        return f"it has {_by(new)} now" if new else f"it no longer has {_by(old)}"
    return f"the {cause.name} is new ({new})" if new else f"the {cause.name} is gone (it was {old})"


def _by(hanging: str) -> str:
    return f"a {hanging}" if hanging.endswith("sleeve") else hanging


def _corners(text: str) -> str:
    words = {"cornerstones": "filled with cornerstones", "partial seam": "passed by one strip each"}
    return words.get(text, text)


def _grain(text: str) -> str:
    return {"straight": "straight grain"}.get(text, text)
