"""From requests to sections of the cloth: lengthwise strips side by side with short strips beside them, then strips
across the whole width.

::

    +---+---+---+-----------+
    |   |   |   |-----------|   a section: lengthwise strips from the left selvage,
    |   |   |   |-----------|   short strips across what is left beside them
    +---+---+---+-----------+
    |-----------------------|   strips from selvage to selvage
    |-----------------------|
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from evenseam.cutting.knapsack import Choice, best_filling
from evenseam.cutting.request import Lie, Request
from evenseam.cutting.strips import Filled, Slot, Strip, fill_strips


@dataclass(slots=True)
class Column:
    """One lengthwise strip and the pieces cut from it, from the squared-up end on."""

    width: int
    pieces: list[Slot] = field(default_factory=list)

    @property
    def used(self) -> int:
        """How much of its length is used."""
        return sum(piece.lie.along for piece in self.pieces)


@dataclass(slots=True)
class Section:
    """A stretch of cloth with lengthwise strips on the left and short strips across the rest."""

    height: int
    columns: list[Column] = field(default_factory=list)
    beside: tuple[Strip, ...] = ()

    @property
    def used(self) -> int:
        """Width of all lengthwise strips."""
        return sum(column.width for column in self.columns)


@dataclass(frozen=True, slots=True)
class Layout:
    """A whole plan in steps: sections first, then strips across."""

    sections: tuple[Section, ...]
    strips: tuple[Strip, ...]

    @property
    def height(self) -> int:
        """Cloth used, along the selvage, without squaring up."""
        return sum(section.height for section in self.sections) + sum(strip.height for strip in self.strips)


def lay_out(requests: Sequence[Request], width: int) -> Layout:
    """Return a plan for all requests on cloth of this width."""
    sections = _sections(requests, width)
    left = [0 if request.is_lengthwise else request.count for request in requests]
    for section in sections:
        section.beside = _fill_beside(requests, left, width - section.used, section.height)
        for slot in (slot for strip in section.beside for slot in strip.slots):
            left[slot.request] -= slot.count
    return Layout(tuple(sections), _fill(requests, left, width).strips)


def _sections(requests: Sequence[Request], width: int) -> list[Section]:
    """Place the lengthwise pieces, widest strips first and longest first among equal ones, where they first fit."""
    pieces = [
        (request.lies[0].across, request.lies[0].along, -place)
        for place, request in enumerate(requests)
        if request.is_lengthwise
        for _ in range(request.count)
    ]
    sections: list[Section] = []
    height = max((along for _, along, _ in pieces), default=0)
    for across, along, place in sorted(pieces, reverse=True):
        slot = Slot(-place, requests[-place].lies[0], 1)
        column = _column_with_room(sections, across, along)
        if column is None:
            section = next((section for section in sections if section.used + across <= width), None)
            if section is None:
                section = Section(height)
                sections.append(section)
            column = Column(across)
            section.columns.append(column)
        column.pieces.append(slot)
    for section in sections:
        section.height = max(column.used for column in section.columns)
    return sections


def _column_with_room(sections: Sequence[Section], across: int, along: int) -> Column | None:
    for section in sections:
        for column in section.columns:
            if across == column.width and column.used + along <= section.height:
                return column
    return None


def _fill(requests: Sequence[Request], left: Sequence[int], width: int) -> Filled:
    places = [place for place, count in enumerate(left) if count]
    filled = fill_strips([replace(requests[place], count=left[place]) for place in places], width)
    return Filled(tuple(_renamed(strip, places) for strip in filled.strips))


def _renamed(strip: Strip, places: Sequence[int]) -> Strip:
    return Strip(strip.height, tuple(replace(slot, request=places[slot.request]) for slot in strip.slots))


def _fill_beside(requests: Sequence[Request], left: Sequence[int], width: int, height: int) -> tuple[Strip, ...]:
    """Return the strips that use most of the cloth beside lengthwise strips."""
    fitting: list[Request] = []
    places: list[int] = []
    for place, request in enumerate(requests):
        lies = tuple(lie for lie in request.lies if lie.across <= width and lie.along <= height)
        if left[place] and lies and not request.is_length:
            fitting.append(replace(request, lies=lies, count=left[place]))
            places.append(place)
    if not fitting:
        return ()
    strips = fill_strips(fitting, width).strips
    nowhere = Lie(0, 0, False)
    choices = [
        Choice(
            number, strip.height, sum(slot.count * slot.lie.across * slot.lie.along for slot in strip.slots), 1, nowhere
        )
        for number, strip in enumerate(strips)
    ]
    chosen = sorted(choice.request for choice, _ in best_filling(choices, height))
    return tuple(_renamed(strips[number], places) for number in chosen)
