"""The fullest filling of one strip: which pieces side by side use most cloth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import gcd

from evenseam.cutting.request import Lie


@dataclass(frozen=True, slots=True)
class Choice:
    """Pieces that may go into a strip: how long each is, what it is worth, how many there are."""

    request: int
    length: int
    worth: int
    count: int
    lie: Lie


def best_filling(choices: Sequence[Choice], room: int) -> list[tuple[Choice, int]]:
    """Return the choices worth most together that fit into the room, with how many of each.

    Two choices of one request (a piece lying one way or the other) share its count.
    """
    step = gcd(*(choice.length for choice in choices)) if choices else 1
    places = room // step
    if places <= 0 or not choices:
        return []
    # best[r] is the most worth in r steps; taken[i][r] how many of choice i lie in that filling.
    best = [0] * (places + 1)
    by_request: dict[int, list[Choice]] = {}
    for choice in choices:
        by_request.setdefault(choice.request, []).append(choice)
    layers: list[list[tuple[tuple[int, ...], int] | None]] = []
    groups = list(by_request.values())
    for group in groups:
        best, layer = _with_group(best, group, step)
        layers.append(layer)
    place = max(range(places + 1), key=lambda r: (best[r], -r))
    found: list[tuple[Choice, int]] = []
    for group, layer in zip(reversed(groups), reversed(layers), strict=True):
        taken = layer[place]
        if taken is not None:
            counts, place = taken
            found += [(choice, count) for choice, count in zip(group, counts, strict=True) if count]
    return found


def _with_group(
    best: list[int], group: list[Choice], step: int
) -> tuple[list[int], list[tuple[tuple[int, ...], int] | None]]:
    """Return the table with one more request, and for each room what was taken of it and the room left for the rest."""
    after = list(best)
    layer: list[tuple[tuple[int, ...], int] | None] = [None] * len(best)
    for counts, length, worth in _bundles(group, step, len(best) - 1):
        for place in range(length, len(best)):
            total = best[place - length] + worth
            if total > after[place]:
                after[place] = total
                layer[place] = (counts, place - length)
    return after, layer


def _bundles(group: list[Choice], step: int, places: int) -> list[tuple[tuple[int, ...], int, int]]:
    """Return every number of pieces of one request that fits the room: counts by lie, length in steps, worth."""
    count = group[0].count
    lengths = [choice.length // step for choice in group]
    bundles: list[tuple[tuple[int, ...], int, int]] = []
    for first in range(min(count, places // lengths[0]) + 1):
        if len(group) == 1:
            bundles.append(((first,), first * lengths[0], first * group[0].worth))
            continue
        room = places - first * lengths[0]
        bundles += [
            (
                (first, second),
                first * lengths[0] + second * lengths[1],
                first * group[0].worth + second * group[1].worth,
            )
            for second in range(min(count - first, room // lengths[1]) + 1)
        ]
    return bundles[1:]
