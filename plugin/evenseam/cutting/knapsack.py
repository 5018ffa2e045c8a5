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


def best_filling(choices: Iterable[Choice], room: int) -> tuple[tuple[Choice, int], ...]:
    """Return choices that fit into the room and are worth most together, with how many of each.

    The most is certain unless one owner has several choices and too few pieces for the best mixture of them: then what
    is too many of it is left out again.
    """
    return _best_filling(tuple(choice for choice in choices if choice.length <= room and choice.number > 0), room)


# Plans of one fabric differ in few strips, so that the same filling is asked for again and again.
@lru_cache(maxsize=4096)
def _best_filling(choices: tuple[Choice, ...], room: int) -> tuple[tuple[Choice, int], ...]:
    if not choices:
        return ()
    shortest: dict[int, Choice] = {}
    for choice in sorted(choices, key=lambda one: one.length):
        shortest.setdefault(choice.owner, choice)
    everything = sum(choice.length * choice.number for choice in shortest.values())
    if everything <= room and all(choice.worth == shortest[choice.owner].worth for choice in choices):
        return tuple((choice, choice.number) for choice in shortest.values())
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
