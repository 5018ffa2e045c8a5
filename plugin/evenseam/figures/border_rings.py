"""A centre with borders whose strips meet at slanting seams or pass one corner each: what it looks like when sewn."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from evenseam.figures.plane import Point, Polygon
from evenseam.figures.workpiece import Patch, Workpiece


class Ring(NamedTuple):
    """One border, finished."""

    fabric: str
    width: float
    part: str


def with_mitres(name: str, centre: Workpiece, rings: Iterable[Ring]) -> Workpiece:
    """Return a centre with borders round it, innermost first, all four corners mitred."""
    work = centre
    for ring in rings:
        inside = work.outline.moved(Point(ring.width, ring.width)).corners
        around = Polygon.rectangle(0.0, 0.0, work.width + 2 * ring.width, work.height + 2 * ring.width).corners
        strips = tuple(
            Polygon((around[i], around[(i + 1) % 4], inside[(i + 1) % 4], inside[i])) for i in range(len(around))
        )
        work = _with(name, work, ring, strips)
    return work


def with_passing_strips(name: str, centre: Workpiece, ring: Ring) -> Workpiece:
    """Return a centre with four strips round it, each past one corner: the top one past the top left corner."""
    thick, width, height = ring.width, centre.width, centre.height
    strips = (
        Polygon.rectangle(0.0, 0.0, width + thick, thick),
        Polygon.rectangle(width + thick, 0.0, thick, height + thick),
        Polygon.rectangle(thick, height + thick, width + thick, thick),
        Polygon.rectangle(0.0, thick, thick, height + thick),
    )
    return _with(name, centre, ring, strips)


def _with(name: str, centre: Workpiece, ring: Ring, strips: tuple[Polygon, ...]) -> Workpiece:
    moved = centre.moved(Point(ring.width, ring.width))
    added = tuple(Patch(strip, ring.fabric, part=ring.part) for strip in strips)
    outline = Polygon.rectangle(0.0, 0.0, centre.width + 2 * ring.width, centre.height + 2 * ring.width)
    return Workpiece(name, moved.patches + added, outline, centre.seam)
