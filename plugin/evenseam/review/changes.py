"""What a review finds, as values: each difference once, with its kind, old, new, and what it comes from."""

from __future__ import annotations

from collections.abc import Iterable
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
    old_size: str = field(default="", compare=False)
    """As the size was called, when that differs."""
    old_name: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class InputCause:
    """Figures at the end of a derivation that differ: given by the author, or assumed."""

    subject: str
    """What the figures belong to: inner border, lantern block, arrangement."""
    figures: tuple[tuple[Quantity, Quantity], ...]
    """Old and new."""
    old_subject: str = field(default="", compare=False)
    """As it was called, when that differs."""

    @property
    def is_block(self) -> bool:
        """True for the finished size of a block."""
        return all(new.name.endswith((" block width", " block height")) for _, new in self.figures)


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
    old_part: str = field(default="", compare=False)
    """As it was called, when that differs."""
    old_name: str = field(default="", compare=False)


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
    old: tuple[Quantity, ...]
    new: tuple[Quantity, ...]
    because: tuple[Cause, ...] = ()
    aspect: str = ""
    """For a cut its shape."""
    old_id: str = ""
    """As it was called, when that differs."""
    old_label: str = ""


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
    old_id: str = ""
    """As it was called, when that differs."""
    old_label: str = ""


Change: TypeAlias = Union[Added, Removed, Renamed, Remeasured, Restated]


def remeasured(
    where: Where,
    kind: Kind,
    ids: tuple[str, str],
    labels: tuple[str, str],
    figures: tuple[tuple[Quantity, ...], tuple[Quantity, ...]],
    because: tuple[Cause, ...] = (),
    aspect: str = "",
) -> Remeasured:
    """Return other figures of one thing; everything but the reasons is given as it was and as it is."""
    (old_id, id), (old_label, label) = _names(ids), _names(labels)
    return Remeasured(where, kind, id, label, *figures, because, aspect, old_id, old_label)


def restated(
    where: Where,
    kind: Kind,
    ids: tuple[str, str],
    labels: tuple[str, str],
    aspect: str,
    texts: tuple[str, str],
    because: tuple[Cause, ...] = (),
    places: tuple[Place | None, Place | None] = (None, None),
) -> Restated:
    """Return other words about one thing; everything but the reasons is given as it was and as it is."""
    (old_id, id), (old_label, label) = _names(ids), _names(labels)
    return Restated(where, kind, id, label, aspect, *texts, because, *places, old_id, old_label)


WITHOUT_FIGURES = frozenset((Kind.WORDS, Kind.FABRIC))
"""Kinds of changes after which a maker with the older print still cuts, buys and sews right."""


def is_of_figures(change: Change) -> bool:
    """Tell whether a change is one of what is cut, bought or sewn, and not of words and names only."""
    is_name = isinstance(change, Renamed) or (isinstance(change, Restated) and change.aspect == "name")
    return change.kind not in WITHOUT_FIGURES and not is_name


def swapped(change: Change) -> Change:
    """Return the change that leads back."""
    because = tuple(_swapped_cause(cause) for cause in change.because)
    where = _swapped_where(change.where)
    match change:
        case Added(_, kind, id, label, figures):
            return Removed(where, kind, id, label, figures, because)
        case Removed(_, kind, id, label, figures):
            return Added(where, kind, id, label, figures, because)
        case Renamed(_, kind, old_id, new_id, old_label, new_label):
            return Renamed(where, kind, new_id, old_id, new_label, old_label, because)
        case Remeasured():
            id, old_id = _names_swapped(change.id, change.old_id)
            label, old_label = _names_swapped(change.label, change.old_label)
            return replace(
                change, where=where, id=id, label=label, old=change.new, new=change.old, because=because,
                old_id=old_id, old_label=old_label,
            )  # fmt: skip
        case Restated():
            id, old_id = _names_swapped(change.id, change.old_id)
            label, old_label = _names_swapped(change.label, change.old_label)
            return replace(
                change, where=where, id=id, label=label, old=change.new, new=change.old, because=because,
                old_place=change.new_place, new_place=change.old_place, old_id=old_id, old_label=old_label,
            )  # fmt: skip


def in_order(causes: Iterable[Cause]) -> tuple[Cause, ...]:
    """Return causes once each, in an order that is the same whichever revision is called old."""
    return tuple(sorted(dict.fromkeys(causes), key=_order))


def _order(cause: Cause) -> tuple[object, ...]:
    match cause:
        case InputCause(subject, _, old_subject):
            return (0, *sorted((subject, old_subject or subject)), "")
        case PartCause():
            return (1, *sorted((cause.part, cause.old_part or cause.part)), cause.about)
        case OwnCause():
            return (2, "", "", "")


def _swapped_where(where: Where) -> Where:
    size, old_size = _names_swapped(where.size, where.old_size)
    name, old_name = _names_swapped(where.name, where.old_name)
    return replace(where, size=size, old_size=old_size, name=name, old_name=old_name)


def _swapped_cause(cause: Cause) -> Cause:
    match cause:
        case InputCause(subject, figures, old_subject):
            names = _names_swapped(subject, old_subject)
            return InputCause(names[0], tuple((new, old) for old, new in figures), names[1])
        case PartCause():
            part, old_part = _names_swapped(cause.part, cause.old_part)
            name, old_name = _names_swapped(cause.name, cause.old_name)
            return replace(
                cause, part=part, name=name, old=cause.new, new=cause.old, old_place=cause.new_place,
                new_place=cause.old_place, old_part=old_part, old_name=old_name,
            )  # fmt: skip
        case OwnCause():
            return cause


def _names(pair: tuple[str, str]) -> tuple[str, str]:
    """Return the old name, empty when it is the new one, and the new name."""
    old, new = pair
    return ("" if old == new else old), new


def _names_swapped(name: str, old_name: str) -> tuple[str, str]:
    return (old_name, name) if old_name else (name, "")
