"""Pieces that bend inward: straight cuts that leave convex pieces, as few as can be."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.exact import Number, sign
from evenseam.geometry import Point, Polygon, without_straight_corners
from evenseam.piecing.pieced import Seam

MOST_CUTS = 5
"""Shapes that need more cuts than this are split without looking for the fewest."""


@dataclass(frozen=True, slots=True)
class ConvexSplit:
    """A piece that bends inward, and convex pieces to draw in its place."""

    cuts: tuple[Seam, ...]
    parts: tuple[Polygon, ...]
    """One more than there are cuts; clockwise."""
    is_fewest: bool
    """True when no fewer cuts do, among cuts that start at an inward corner along one of its edges or to a corner."""


def split_into_convex(piece: Polygon) -> ConvexSplit | None:
    """Return the proposed split of a simple polygon; None when the outline crosses itself or has no inside."""
    outline = without_straight_corners(piece.clockwise())
    if len(outline.corners) < 3 or sign(outline.signed_area) == 0:
        return None
    inward = len(_inward_corners(outline))
    # One cut straightens two inward corners at best.
    for cuts in range((inward + 1) // 2, min(inward, MOST_CUTS) + 1):
        found = _split(outline, cuts)
        if found is not None:
            return ConvexSplit(found[0], found[1], True)
    found = _split_in_turn(outline)
    return ConvexSplit(found[0], found[1], False) if found else None


_Parts = tuple[tuple[Seam, ...], tuple[Polygon, ...]]


def _inward_corners(outline: Polygon) -> list[int]:
    corners = outline.corners
    return [
        index
        for index, corner in enumerate(corners)
        if sign((corner - corners[index - 1]).cross(corners[(index + 1) % len(corners)] - corner)) < 0
    ]


def _split(outline: Polygon, cuts: int) -> _Parts | None:
    inward = _inward_corners(outline)
    if not inward:
        return (), (outline,)
    if cuts < (len(inward) + 1) // 2:
        return None
    for seam, one, other in _cuts_from(outline, inward[0]):
        for spent in range(cuts):
            first = _split(one, spent)
            second = _split(other, cuts - 1 - spent) if first else None
            if first and second:
                return (seam, *first[0], *second[0]), (*first[1], *second[1])
    return None


def _split_in_turn(outline: Polygon) -> _Parts | None:
    waiting, seams, parts = [outline], list[Seam](), list[Polygon]()
    while waiting:
        shape = waiting.pop()
        inward = _inward_corners(shape)
        if not inward:
            parts.append(shape)
            continue
        options = _cuts_from(shape, inward[0])
        if not options:
            return None
        seam, one, other = min(options, key=lambda option: sum(len(_inward_corners(half)) for half in option[1:]))
        seams.append(seam)
        waiting += [one, other]
    return tuple(seams), tuple(parts)


def _cuts_from(outline: Polygon, index: int) -> list[tuple[Seam, Polygon, Polygon]]:
    """Return cuts from one inward corner: on along its two edges first, then to every corner in sight."""
    corners = outline.corners
    here, before, after = corners[index], corners[index - 1], corners[(index + 1) % len(corners)]
    found: list[tuple[Seam, Polygon, Polygon]] = []
    reached: set[Point] = set()
    others = [corner for corner in corners if corner not in (here, before, after)]
    for target, is_corner in ((here - before, False), (here - after, False), *((c - here, True) for c in others)):
        if not _points_inside(here - before, after - here, target):
            continue
        hit = _first_hit(outline, index, target)
        if hit is None or hit[0] in reached or (is_corner and hit[0] != here + target):
            continue
        reached.add(hit[0])
        found.append((Seam(here, hit[0]), *_halves(outline, index, *hit)))
    return found


def _points_inside(incoming: Point, outgoing: Point, step: Point) -> bool:
    """Tell whether a step from an inward corner starts into the shape; the inside lies to the right of its edges."""
    return sign(incoming.cross(step)) >= 0 or sign(outgoing.cross(step)) >= 0


def _first_hit(outline: Polygon, index: int, step: Point) -> tuple[Point, int] | None:
    """Return where a ray from a corner first meets the outline again, and the edge it meets there."""
    count = len(outline.corners)
    here = outline.corners[index]
    nearest: tuple[Number, int] | None = None
    for number, (start, end) in enumerate(outline.edges):
        if number in (index, (index - 1) % count):
            continue
        edge = end - start
        turn = step.cross(edge)
        if sign(turn) == 0:
            continue
        along = (start - here).cross(edge) / turn
        share = (start - here).cross(step) / turn
        is_hit = sign(along) > 0 and sign(share) >= 0 and sign(share - 1) <= 0
        if is_hit and (nearest is None or sign(along - nearest[0]) < 0):
            nearest = along, number
    if nearest is None:
        return None
    return here + step.scaled(nearest[0], nearest[0]), nearest[1]


def _halves(outline: Polygon, index: int, hit: Point, edge: int) -> tuple[Polygon, Polygon]:
    corners = outline.corners
    count = len(corners)
    way = [corners[(index + step) % count] for step in range((edge - index) % count + 1)]
    back = [corners[(edge + 1 + step) % count] for step in range((index - edge - 1) % count + 1)]
    return (
        without_straight_corners(Polygon((*way, hit))),
        without_straight_corners(Polygon((hit, *back))),
    )
