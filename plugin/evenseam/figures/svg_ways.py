"""Corners to the shortest text of a path: each step from the corner before, on a net of hundredths.

Pictures of many pieces that are alike are most of a page. Written by steps, pieces of one shape have one text wherever
they lie, and so have the steps between them, so that a page travels compressed at a third of what it would otherwise.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from math import floor

from evenseam.figures.plane import Spot

PLACES = 2
_STEPS = 10.0**PLACES
_HALF = 0.5 + 1e-5
"""Half a step, and a hair: what lies half way between two goes up, however it was added."""


@lru_cache(maxsize=100_000)
def written(steps: int, places: int) -> str:
    """Return a number given in steps of its last place, without empty places; pictures write few numbers often."""
    whole, rest = divmod(abs(steps), 10**places)
    text = f"{whole}.{rest:0{places}d}".rstrip("0") if rest else str(whole)
    return f"-{text}" if steps < 0 else text


def short_ways(rings: Iterable[Sequence[Spot]], *, is_closed: bool) -> str:
    """Return one path through all rings of corners (or open lines).

    Every ring keeps its shape to a hundredth, measured from its first corner, which lies on the net.
    """
    parts: list[str] = []
    at_x = at_y = 0
    for ring in rings:
        (left, top), *others = [(float(spot.x), float(spot.y)) for spot in ring]
        x, y = floor(left * _STEPS + _HALF), floor(top * _STEPS + _HALF)
        # Where the last ring was closed its beginning is where the pen is.
        parts.append(("m" if parts else "M") + _pair(x - at_x, y - at_y))
        gone_x = gone_y = 0
        last = "l" if len(others) == 0 else ""
        for across, down in others:
            to_x, to_y = floor((across - left) * _STEPS + _HALF), floor((down - top) * _STEPS + _HALF)
            step_x, step_y = to_x - gone_x, to_y - gone_y
            gone_x, gone_y = to_x, to_y
            if not step_y:
                parts.append("h" + _short(step_x))
                last = "h"
            elif not step_x:
                parts.append("v" + _short(step_y))
                last = "v"
            else:
                pair = _pair(step_x, step_y)
                parts.append(pair if last == "l" and pair[0] == "-" else (" " if last == "l" else "l") + pair)
                last = "l"
        if is_closed:
            parts.append("z")
            at_x, at_y = x, y
        else:
            at_x, at_y = x + gone_x, y + gone_y
    return "".join(parts)


def _pair(x: int, y: int) -> str:
    down = _short(y)
    return _short(x) + (down if down[0] == "-" else " " + down)


@lru_cache(maxsize=100_000)
def _short(steps: int) -> str:
    """Return a number as paths may have it: nothing stands before its point."""
    text = written(steps, PLACES)
    return text.replace("0.", ".", 1) if text.startswith(("0.", "-0.")) else text
