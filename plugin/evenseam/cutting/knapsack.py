"""The fullest filling of one strip: which pieces side by side are worth most."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import gcd


@dataclass(frozen=True, slots=True)
class Choice:
    """Pieces that may go into a strip: whose they are, which way they lie, how long, what each is worth, how many.

    All choices of one owner share its number.
    """

    owner: int
    way: int
    length: int
    worth: int
    count: int


Bundle = tuple[tuple[int, ...], int, int]
"""Counts by choice of one owner, length together in steps, worth together."""


def best_filling(choices: Sequence[Choice], room: int) -> list[tuple[Choice, int]]:
    """Return the choices worth most together that fit into the room, with how many of each."""
    choices = [choice for choice in choices if choice.length <= room]
    if not choices:
        return []
    step = gcd(*(choice.length for choice in choices))
    owned: dict[int, list[Choice]] = {}
    for choice in choices:
        owned.setdefault(choice.owner, []).append(choice)
    best = [0] * (room // step + 1)
    layers: list[list[Bundle | None]] = []
    groups = list(owned.values())
    for group in groups:
        best, layer = _with_group(best, group, step)
        layers.append(layer)
    # The shortest of the most valuable fillings.
    place = best.index(best[-1])
    found: list[tuple[Choice, int]] = []
    for group, layer in zip(reversed(groups), reversed(layers), strict=True):
        bundle = layer[place]
        if bundle is not None:
            found += [(choice, count) for choice, count in zip(group, bundle[0], strict=True) if count]
            place -= bundle[1]
    return found


def _with_group(best: list[int], group: list[Choice], step: int) -> tuple[list[int], list[Bundle | None]]:
    """Return the table with one more owner, and for each room what was taken of it."""
    after = list(best)
    layer: list[Bundle | None] = [None] * len(best)
    for bundle in _bundles(group, step, len(best) - 1):
        _, length, worth = bundle
        for place in range(length, len(best)):
            total = best[place - length] + worth
            if total > after[place]:
                after[place] = total
                layer[place] = bundle
    return after, layer


def _bundles(group: list[Choice], step: int, places: int) -> list[Bundle]:
    """Return every number of pieces of one owner that fits the room, in every mixture of the two ways to lie."""
    count = group[0].count
    lengths = [choice.length // step for choice in group]
    bundles: list[Bundle] = []
    for first in range(min(count, places // lengths[0]) + 1):
        length, worth = first * lengths[0], first * group[0].worth
        if len(group) == 1:
            bundles.append(((first,), length, worth))
            continue
        for second in range(min(count - first, (places - length) // lengths[1]) + 1):
            bundles.append(((first, second), length + second * lengths[1], worth + second * group[1].worth))
    return bundles[1:]
