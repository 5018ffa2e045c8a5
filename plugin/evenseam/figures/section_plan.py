"""Where the printed paper of a section and the sewn section stand side by side, and how much room their labels need."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.figures.callouts import Callout, on_the_left, room_for
from evenseam.figures.frame import WIDE, Frame
from evenseam.figures.plane import Point, Polygon
from evenseam.figures.spot import label_spot
from evenseam.figures.workpiece import Patch

BETWEEN = 50.0
TALLEST = 236.0
MOST_TWICE = 4
"""More small pieces than this are labelled on the paper only: it is drawn larger, and the sewn section smaller."""
SHARE = 0.62
"""The paper's share of the width when it alone bears labels."""
_TRIES = 5


@dataclass(frozen=True, slots=True)
class Lettered:
    """A patch of a section with its label, alone and with the letter of its fabric."""

    patch: Patch
    label: str
    longer: str


@dataclass(frozen=True, slots=True)
class SectionPlan:
    """Scales and places across the picture."""

    paper: Frame
    paper_left: float
    sewn: Frame
    sewn_left: float
    arrow: tuple[float, float]
    """From where to where the arrow between them goes."""
    has_callouts_sewn: bool


def as_printed(polygon: Polygon, raw: Polygon) -> Polygon:
    """Return a piece of a section as it is printed: mirrored, the top left corner of the paper at the origin."""
    _, top, right, _ = raw.bounds
    return Polygon(tuple(Point(right - corner.x, corner.y - top) for corner in reversed(polygon.corners)))


def plan_section(lettered: tuple[Lettered, ...], raw: Polygon) -> SectionPlan:
    """Return the largest scales that leave room for the labels beside the two pictures.

    ::

        label - [paper] - label   -->   label - [sewn] - label
    """
    left, top, right, bottom = raw.bounds
    wide, high = right - left, bottom - top
    rooms = (0.0, 0.0, 0.0, 0.0)
    has_both, share = True, 0.5
    for _ in range(_TRIES):
        room = WIDE - BETWEEN - sum(rooms)
        paper = Frame.fitting(wide, high, room * share, TALLEST)
        sewn = paper if has_both else Frame.fitting(wide, high, room * (1 - share), TALLEST)
        small = _small([(paper.polygon(as_printed(one.patch.outline, raw)), one.label) for one in lettered])
        also = [(sewn.polygon(one.patch.outline.moved(Point(-left, -top))), one.label) for one in lettered]
        if has_both and len(small) > MOST_TWICE:
            has_both, share, rooms = False, SHARE, (0.0, 0.0, 0.0, 0.0)
            continue
        needs = (
            *_beside(small, paper.length(wide)),
            *(_beside(_small(also), sewn.length(wide)) if has_both else (0.0, 0.0)),
        )
        if all(need <= given for need, given in zip(needs, rooms, strict=True)):
            break
        rooms = tuple(map(max, needs, rooms))  # type: ignore[assignment]
    before, after, before_sewn, _ = rooms
    start = before + paper.length(wide) + after
    sewn_left = start + BETWEEN + before_sewn
    return SectionPlan(paper, before, sewn, sewn_left, (start + 10, start + BETWEEN - 10), has_both)


def _small(outlines: list[tuple[Polygon, str]]) -> list[Callout]:
    """Return the pieces that do not hold their labels."""
    return [Callout(outline, label) for outline, label in outlines if label_spot(outline, label) is None]


def _beside(small: list[Callout], wide: float) -> tuple[float, float]:
    """Return how much room labels need to the left and to the right of work so wide."""
    left = [one for one in small if on_the_left(one, wide / 2)]
    return room_for(left), room_for(one for one in small if one not in left)
