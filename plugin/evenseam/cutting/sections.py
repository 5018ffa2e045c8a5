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

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from evenseam.cutting.demand import Demand, Pattern
from evenseam.cutting.knapsack import Choice, best_filling
from evenseam.cutting.merging import Merged, Slot, Strip
from evenseam.cutting.request import Request
from evenseam.cutting.search import MOST_NODES, MOST_STEPS, Solved, StripSearch, simple_bound
from evenseam.cutting.strips import fill_strips

STEPS_OF_A_TRIAL = 1_000_000
"""Effort for a plan that is only compared with another."""
_MOST_OPENED = 4
"""So many high strips are tried as sections at most."""


@dataclass(slots=True)
class Column:
    """One lengthwise strip and the pieces cut from it, from the squared-up end on."""

    width: int
    pieces: list[Slot] = field(default_factory=list)
    own: int = 0
    """How many of them it was cut for; the others come from what is left of it."""

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

    def emptied(self) -> Section:
        """Return the section with its highest lengthwise pieces only."""
        return Section(
            self.height, [Column(column.width, column.pieces[: column.own], column.own) for column in self.columns]
        )

    @property
    def slots(self) -> list[Slot]:
        """All pieces in the lengthwise strips."""
        return [slot for column in self.columns for slot in column.pieces]

    @property
    def used(self) -> int:
        """Width of all lengthwise strips."""
        return sum(column.width for column in self.columns)


@dataclass(frozen=True, slots=True)
class Layout:
    """A whole plan in steps: sections first, then strips across."""

    sections: tuple[Section, ...]
    strips: tuple[Strip, ...]
    bound: int
    """No two-stage plan can be shorter."""

    @property
    def height(self) -> int:
        """Cloth used, along the selvage, without squaring up."""
        return sum(section.height for section in self.sections) + sum(strip.height for strip in self.strips)


def lay_out(
    requests: Sequence[Request],
    width: int,
    as_dear_from: Callable[[int], int],
    steps: int = MOST_STEPS,
    as_good_from: Callable[[int], int] = int,
) -> Layout:
    """Return a plan for all requests on cloth of this width.

    `as_dear_from` names the least length, in steps, for which the shop sells as much as for another; `as_good_from`
    the least one that is no better.

    High strips are opened as sections whenever that saves cloth. Low ones are not worth a third direction of cutting
    unless less has to be bought.
    """
    sections = _sections(requests, width)
    left = [0 if request.is_lengthwise else request.count for request in requests]
    merged = _put_beside(sections, requests, left, width)
    used = sum(section.height for section in sections)
    search = StripSearch(merged.demands, width, steps, lambda height: as_good_from(used + height) - used)
    layout = _laid(sections, merged, search.solved())
    best = layout
    # Where opened strips save more cloth than any strips across could, the best of those is not searched for.
    for nodes in (0, 1, MOST_NODES):
        search.go_on(nodes)
        if not nodes or used + search.height < layout.height:
            layout = _laid(sections, merged, search.solved())
            opened = _opened(layout, requests, left, width, as_dear_from, as_good_from, min(steps, STEPS_OF_A_TRIAL))
            best = opened if not nodes else min(best, opened, key=lambda one: one.height)
            search.beat(best.height - used)
        if search.is_over:
            break
    bound = used + search.solved().bound
    if sections:
        everything = Merged.of(requests, [request.count for request in requests], width)
        bound = simple_bound(everything.demands, width)
    return Layout(best.sections, best.strips, min(bound, best.height))


def _opened(
    layout: Layout,
    requests: Sequence[Request],
    left: Sequence[int],
    width: int,
    as_dear_from: Callable[[int], int],
    as_good_from: Callable[[int], int],
    steps: int,
) -> Layout:
    """Return the layout with high strips opened as sections where that saves enough.

    A high strip that is not full, such as the last panel of a backing, may hold short strips beside its pieces.
    """
    for strip in [strip for strip in layout.strips if _has_room(strip, requests, width)][:_MOST_OPENED]:
        opened = _open_strip(strip)
        rest = list(left)
        for slot in opened.slots:
            rest[slot.request] -= slot.count
        tried = [*(section.emptied() for section in layout.sections), opened]
        merged = _put_beside(tried, requests, rest, width)
        least = sum(section.height for section in tried)
        least += simple_bound(merged.demands, width) if merged.demands else 0
        is_high = 4 * strip.height >= width
        limit = as_good_from(layout.height) if is_high else as_dear_from(layout.height)
        if least < limit:
            other = _layout(tried, merged, width, steps, below(limit, as_good_from))
            if other.height < limit:
                left, layout = rest, other
    return layout


def _put_beside(sections: Sequence[Section], requests: Sequence[Request], left: Sequence[int], width: int) -> Merged:
    """Fill the cloth beside the lengthwise strips, and return what is left to cut elsewhere."""
    rest = list(left)
    for section in sections:
        for column in section.columns:
            _fill_column(column, section.height, requests, rest)
        beside: list[Strip] = []
        room = section.height
        while strips := _fill_beside(requests, rest, width - section.used, room):
            beside += strips
            for slot in (slot for strip in strips for slot in strip.slots):
                rest[slot.request] -= slot.count
            room = section.height - sum(strip.height for strip in beside)
        section.beside = tuple(beside)
    return Merged.of(requests, rest, width)


def below(limit: int, as_good_from: Callable[[int], int]) -> Callable[[int], int]:
    """Return from where on a length is no better than another, nor good enough for the limit."""
    return lambda height: min(limit, as_good_from(height))


def _layout(
    sections: Sequence[Section], merged: Merged, width: int, steps: int, as_good_from: Callable[[int], int]
) -> Layout:
    used = sum(section.height for section in sections)
    search = StripSearch(merged.demands, width, steps, lambda height: as_good_from(used + height) - used)
    search.go_on(MOST_NODES)
    return _laid(sections, merged, search.solved())


def _laid(sections: Sequence[Section], merged: Merged, solved: Solved) -> Layout:
    # Pieces are given to the strips of this layout only: another may be made of the same ones.
    given = Merged(merged.requests, merged.demands, [list(members) for members in merged.members])
    return Layout(tuple(sections), tuple(given.strip(pattern) for pattern in solved.patterns), solved.bound)


def _has_room(strip: Strip, requests: Sequence[Request], width: int) -> bool:
    """Tell whether two strips of other pieces could lie one above the other beside the highest pieces of this one."""
    used = sum(slot.count * slot.lie.across for slot in strip.slots if 2 * slot.lie.along > strip.height)
    others = (
        lie
        for place, request in enumerate(requests)
        if not request.is_lengthwise
        and not request.is_length
        and all(slot.request != place or 2 * slot.lie.along <= strip.height for slot in strip.slots)
        for lie in request.lies
    )
    return any(lie.across <= width - used and 2 * lie.along <= strip.height for lie in others)


def _open_strip(strip: Strip) -> Section:
    """Make a section of a strip: its highest pieces are lengthwise strips of one piece each, the others are let go."""
    section = Section(strip.height)
    for slot in strip.slots:
        if 2 * slot.lie.along > strip.height:
            section.columns += [
                Column(slot.lie.across, [Slot(slot.request, slot.lie, 1)], 1) for _ in range(slot.count)
            ]
    return section


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
        column.own += 1
    for section in sections:
        section.height = max(column.used for column in section.columns)
    return sections


def _column_with_room(sections: Sequence[Section], across: int, along: int) -> Column | None:
    for section in sections:
        for column in section.columns:
            if across == column.width and column.used + along <= section.height:
                return column
    return None


def _fill_column(column: Column, height: int, requests: Sequence[Request], left: list[int]) -> None:
    """Cut shorter pieces from what is left at the end of a lengthwise strip."""
    choices = [
        Choice(place, number, lie.along, lie.across * lie.along, left[place])
        for place, request in enumerate(requests)
        if left[place] and not request.is_length
        for number, lie in enumerate(request.lies)
        if lie.across <= column.width
    ]
    for choice, count in sorted(best_filling(choices, height - column.used), key=lambda chosen: -chosen[0].length):
        lie = requests[choice.owner].lies[choice.way]
        column.pieces += [Slot(choice.owner, lie, 1)] * count
        left[choice.owner] -= count


def _fill_beside(requests: Sequence[Request], left: Sequence[int], width: int, height: int) -> tuple[Strip, ...]:
    """Return the strips that use most of the cloth beside lengthwise strips."""
    merged = Merged.of(requests, left, width, height)
    patterns = fill_strips(merged.demands, width)
    choices = [
        Choice(number, 0, pattern.height, _cloth(pattern, merged.demands), 1) for number, pattern in enumerate(patterns)
    ]
    chosen = sorted(choice.owner for choice, _ in best_filling(choices, height))
    return tuple(merged.strip(patterns[number]) for number in chosen)


def _cloth(pattern: Pattern, demands: Sequence[Demand]) -> int:
    return sum(
        demands[demand].lies[lie][0] * demands[demand].lies[lie][1] * count for demand, lie, count in pattern.pieces
    )
