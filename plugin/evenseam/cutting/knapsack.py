"""The fullest filling of one strip: which pieces side by side are worth most."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import gcd
from typing import NamedTuple


class Choice(NamedTuple):
    """Pieces that may go into a strip: whose they are, which way they lie, how long, what each is worth, how many.

    All choices of one owner share its number.
    """

    owner: int
    way: int
    length: int
    worth: int
    number: int


@dataclass(frozen=True, slots=True)
class _Stage:
    """A table before a choice was allowed, and how many of it are taken at once: 0 stands for any number."""

    before: list[int]
    choice: Choice
    length: int
    portion: int


_MOST_TRIED = 300
"""So many partial fillings are tried one by one; where there are more, a table of all lengths is quicker."""


def best_filling(choices: Iterable[Choice], room: int) -> tuple[tuple[Choice, int], ...]:
    """Return choices that fit into the room and are worth most together, with how many of each.

    The most is certain unless one owner has several choices and too few pieces for the best mixture of them: then what
    is too many of it may be left out again.
    """
    # No more than fit, so that fillings which differ only in pieces to spare are the same question.
    return _best_filling(
        tuple(
            Choice(choice.owner, choice.way, choice.length, choice.worth, min(choice.number, room // choice.length))
            for choice in choices
            if choice.length <= room and choice.number > 0
        ),
        room,
    )


# Plans of one fabric differ in few strips, so that the same filling is asked for again and again.
@lru_cache(maxsize=4096)
def _best_filling(choices: tuple[Choice, ...], room: int) -> tuple[tuple[Choice, int], ...]:
    if not choices:
        return ()
    if len(choices) == 1:
        return ((choices[0], choices[0].number),)
    tried = _Trying(choices, room).best()
    return _by_table(choices, room) if tried is None else tried


class _Trying:
    """Tries fillings one by one, those with most of the choices worth most for their length first."""

    def __init__(self, choices: Sequence[Choice], room: int) -> None:
        self.choices = sorted(choices, key=lambda choice: -(choice.worth << 32) // choice.length)
        self.room = room
        self.left = _MOST_TRIED
        self.counts = [0] * len(choices)
        self.taken = {choice.owner: 0 for choice in choices}
        self.is_shared = len(self.taken) < len(choices)
        self.numbers = {choice.owner: choice.number for choice in sorted(choices, key=lambda choice: choice.number)}
        self.found: list[int] = []
        self.most = 0
        self.shortest = [min(choice.length for choice in self.choices[place:]) for place in range(len(choices))]

    def best(self) -> tuple[tuple[Choice, int], ...] | None:
        """Return the filling worth most; None when there are too many to try."""
        self._try(0, self.room, 0)
        if self.left <= 0:
            return None
        return tuple((choice, count) for choice, count in zip(self.choices, self.found, strict=False) if count)

    def _try(self, place: int, room: int, worth: int) -> None:
        self.left -= 1
        choice = self.choices[place]
        most = min(choice.number, room // choice.length)
        if self.is_shared:
            most = min(most, self.numbers[choice.owner] - self.taken[choice.owner])
        after = place + 1
        if after == len(self.choices):
            self.counts[place] = most
            if worth + most * choice.worth > self.most:
                self.most = worth + most * choice.worth
                self.found = list(self.counts)
            return
        following = self.choices[after]
        for count in range(most, -1, -1):
            self.counts[place] = count
            rest, so_far = room - count * choice.length, worth + count * choice.worth
            if rest < self.shortest[after]:
                if so_far > self.most:
                    self.most = so_far
                    self.found = self.counts[:after]
                continue
            # Those that follow are worth less for their length: fewer of this one can only be worth less.
            if (so_far - self.most) * following.length + rest * following.worth <= 0 or self.left <= 0:
                break
            if self.is_shared:
                self.taken[choice.owner] += count
            self._try(after, rest, so_far)
            if self.is_shared:
                self.taken[choice.owner] -= count


def _by_table(choices: tuple[Choice, ...], room: int) -> tuple[tuple[Choice, int], ...]:
    step = gcd(*(choice.length for choice in choices))
    table = [0] * (room // step + 1)
    stages: list[_Stage] = []
    for choice in choices:
        length = choice.length // step
        for portion in _portions(choice.number, (len(table) - 1) // length):
            stages.append(_Stage(table, choice, length * max(portion, 1), portion))
            table = _any_number(table, length, choice.worth) if portion == 0 else _once(table, stages[-1])
    return _shared(_traced(table, stages))


def _portions(count: int, fitting: int) -> Iterator[int]:
    if count >= fitting:
        yield 0
        return
    portion = 1
    while count > 0:
        yield min(portion, count)
        count -= portion
        portion *= 2


def _any_number(table: list[int], length: int, worth: int) -> list[int]:
    after = table[:length]
    # One length at a time: where it ends only depends on what the length before it holds.
    for start in range(length, len(table), length):
        rest = zip(table[start : start + length], after[start - length : start], strict=False)
        after += [old if old > (new := less + worth) else new for old, less in rest]
    return after


def _once(table: list[int], stage: _Stage) -> list[int]:
    worth = stage.portion * stage.choice.worth
    rest = zip(table[stage.length :], table, strict=False)
    return table[: stage.length] + [old if old > (new := less + worth) else new for old, less in rest]


def _traced(table: list[int], stages: Sequence[_Stage]) -> dict[Choice, int]:
    # The shortest of the most valuable fillings.
    place = table.index(table[-1])
    found: dict[Choice, int] = {}
    for stage in reversed(stages):
        while place >= stage.length and table[place] != stage.before[place]:
            found[stage.choice] = found.get(stage.choice, 0) + max(stage.portion, 1)
            place -= stage.length
            if stage.portion:
                break
        table = stage.before
    return found


def _shared(found: dict[Choice, int]) -> tuple[tuple[Choice, int], ...]:
    left: dict[int, int] = {}
    kept: list[tuple[Choice, int]] = []
    for choice, count in found.items():
        taken = min(count, left.get(choice.owner, choice.number))
        left[choice.owner] = left.get(choice.owner, choice.number) - taken
        if taken:
            kept.append((choice, taken))
    return tuple(kept)
