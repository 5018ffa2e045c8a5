"""What a review finds, as values: each difference once, with its kind, old, new, and what it comes from."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import Enum
from typing import TypeAlias, Union

from evenseam.exact import Unit
from evenseam.pattern import Quantity
from evenseam.problems import Place


class Kind(Enum):
    """What a change is about."""

    PATTERN = "pattern"
    SIZE = "size"
    INPUT = "figure of the author"
    """A figure the author gave, or a usual one nobody gave."""
    PART = "decision of the author"
    """A border, a fabric, an order, a drawing."""
    FINISHED = "finished size"
    CUT = "cut"
    YARDAGE = "yardage"
    BATTING = "batting"
    CHECKPOINT = "checkpoint"
    SECTIONS = "sections"
    TEMPLATE = "template"
    STEP = "step"
    STEP_ORDER = "order of steps"
    FABRIC = "fabric"
    WORDS = "words"


@dataclass(frozen=True, slots=True)
class Where:
    """The pattern a change is in, and the size and edition if it is not in all of them."""

    pattern: str
    """Slug."""
    size: str = ""
    """Slug; empty for the whole pattern."""
    unit: Unit | None = None
    name: str = field(default="", compare=False)
    """What a maker reads: Wall hanging."""


@dataclass(frozen=True, slots=True)
class InputCause:
    """Figures at the end of a derivation that differ: given by the author, or assumed."""

    subject: str
    """What the figures belong to: inner border, lantern block, arrangement."""
    figures: tuple[tuple[Quantity, Quantity], ...]
    """Old and new."""


@dataclass(frozen=True, slots=True)
class PartCause:
    """Something the author decided that is no figure: a border more, an order, a fabric, a drawing."""

    part: str
    """border:inner-border, sashing, block:lantern, layout, finish, backing, binding, hanging."""
    name: str
    """In words: inner border."""
    about: str
    """What of it: order, fabric; empty for the part as a whole."""
    old: str
    """Empty when the part is new."""
    new: str
    """Empty when the part is gone."""
    old_place: Place | None = field(default=None, compare=False)
    new_place: Place | None = field(default=None, compare=False)
    leaves: tuple[str, ...] = field(default=(), compare=False)
    """Names of the figures that come or go with it."""


@dataclass(frozen=True, slots=True)
class OwnCause:
    """Nothing of the author's differs: the figure is worked out in another way."""


Cause: TypeAlias = Union[InputCause, PartCause, OwnCause]


@dataclass(frozen=True, slots=True)
class Added:
    """Something is there that was not."""

    where: Where
    kind: Kind
    id: str
    label: str
    figures: tuple[Quantity, ...] = ()
    because: tuple[Cause, ...] = ()


@dataclass(frozen=True, slots=True)
class Removed:
    """Something is no longer there."""

    where: Where
    kind: Kind
    id: str
    label: str
    figures: tuple[Quantity, ...] = ()
    because: tuple[Cause, ...] = ()


@dataclass(frozen=True, slots=True)
class Renamed:
    """The same thing under another id or label."""

    where: Where
    kind: Kind
    old_id: str
    new_id: str
    old_label: str
    new_label: str
    because: tuple[Cause, ...] = ()


@dataclass(frozen=True, slots=True)
class Remeasured:
    """The same thing with other figures, in the same order: width, height and count of a cut."""

    where: Where
    kind: Kind
    id: str
    label: str
    """As it is called now; see `old_label`."""
    old: tuple[Quantity, ...]
    new: tuple[Quantity, ...]
    because: tuple[Cause, ...] = ()
    old_label: str = ""
    """As it was called, when that differs."""
    aspect: str = ""


@dataclass(frozen=True, slots=True)
class Restated:
    """The same thing with other words: a fabric, an order, a text."""

    where: Where
    kind: Kind
    id: str
    label: str
    aspect: str
    old: str
    new: str
    because: tuple[Cause, ...] = ()
    old_place: Place | None = field(default=None, compare=False)
    new_place: Place | None = field(default=None, compare=False)


Change: TypeAlias = Union[Added, Removed, Renamed, Remeasured, Restated]


def swapped(change: Change) -> Change:
    """Return the change that leads back."""
    because = tuple(_swapped_cause(cause) for cause in change.because)
    match change:
        case Added(where, kind, id, label, figures):
            return Removed(where, kind, id, label, figures, because)
        case Removed(where, kind, id, label, figures):
            return Added(where, kind, id, label, figures, because)
        case Renamed(where, kind, old_id, new_id, old_label, new_label):
            return Renamed(where, kind, new_id, old_id, new_label, old_label, because)
        case Remeasured():
            label, old_label = (change.old_label, change.label) if change.old_label else (change.label, "")
            return replace(
                change, old=change.new, new=change.old, label=label, old_label=old_label, because=because
            )  # fmt: skip
        case Restated():
            return replace(
                change, old=change.new, new=change.old, because=because,
                old_place=change.new_place, new_place=change.old_place,
            )  # fmt: skip


def _swapped_cause(cause: Cause) -> Cause:
    match cause:
        case InputCause(subject, figures):
            return InputCause(subject, tuple((new, old) for old, new in figures))
        case PartCause():
            return replace(
                cause, old=cause.new, new=cause.old, old_place=cause.new_place, new_place=cause.old_place
            )  # fmt: skip
        case OwnCause():
            return cause
