"""Units sewn from pieces cut to size: where else in the block one fits, and where it is still too large to be sewn on.

A triangle is cut from a square that is brought up to a mark of the ruler, so its allowance is a little deep. A maker
lays the edges of a seam even, and what is too much moves to the sides that are still free. It does harm where none is
left, or where the edge to be sewn has a step; there the unit has to be trimmed first.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from evenseam.exact import Number
from evenseam.sizing.simulator.plane import Outline, Spot, box, same_shape, sides

Side: TypeAlias = tuple[Spot, Spot]


def laid_as(first: list[Outline], second: list[Outline], whole: Outline) -> tuple[int, Outline] | None:
    """Turn pieces by quarters until they lie as others do, piece for piece, and lay them there.

    Returns how often they were turned, and where the outline of them all comes to lie; None when they never do.
    """
    if len(first) != len(second):
        return None
    for turns in range(4):
        (ax, ay), (bx, by) = _corner(first), _corner(second)
        dx, dy = bx - ax, by - ay
        moved = [tuple((x + dx, y + dy) for x, y in shape) for shape in first]
        if all(map(same_shape, moved, second)):
            return turns, tuple((x + dx, y + dy) for x, y in whole)
        first, whole = [_turned_once(shape) for shape in first], _turned_once(whole)
    return None


def free_sides(shape: Outline, whole: Outline) -> list[Side]:
    """Return the sides of a piece that lie along the edge of what it is sewn into."""
    return [side for side in sides(shape) if any(_is_along(side, edge) for edge in sides(whole))]


def uneven(
    shapes: Mapping[str, Outline], part: Outline, loose: Mapping[str, tuple[str, Number]], seam: Side
) -> str | None:
    """Return a piece that makes the edge of a part uneven where it is to be sewn; None when there is none.

    Where several pieces lie along the seam and one is a little large, all must be: cut alike, and sewn alike before.
    """
    along: dict[str, tuple[object, ...]] = {}
    for name, shape in shapes.items():
        free = free_sides(shape, part)
        here = [side for side in free if _is_along(side, seam)]
        if here:
            along[name] = (loose.get(name), len(free), *(_square(side) for side in here))
    culprits = [name for name in along if name in loose]
    if len(along) < 2 or not culprits or (len(culprits) == len(along) and len(set(along.values())) == 1):
        return None
    return culprits[0]


def _turned_once(shape: Outline) -> Outline:
    return tuple((-y, x) for x, y in shape)


def _corner(shapes: list[Outline]) -> Spot:
    left, top, _, _ = box(tuple(spot for shape in shapes for spot in shape))
    return left, top


def _is_along(side: Side, edge: Side) -> bool:
    (ax, ay), (bx, by) = edge
    return all((bx - ax) * (y - ay) == (by - ay) * (x - ax) for x, y in side)


def _square(side: Side) -> Number:
    (ax, ay), (bx, by) = side
    return (bx - ax) * (bx - ax) + (by - ay) * (by - ay)
