"""Sizes to a common scale beside a hand or a chair, so that 11 in and 60 in are felt before they are read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit, to_float
from evenseam.pattern import Quantity

HAND_UP_TO = 30
"""Inches: beside a larger piece a hand would be too small to see, and a chair is shown."""
HAND_WIDTH, HAND_HEIGHT = 4.6, 7.5
"""A grown-up's hand, in inches (common practice)."""
CHAIR_WIDTH, CHAIR_HEIGHT = 18.5, 34.0
"""A kitchen chair, with its seat at 18 inches (common practice)."""
_GAP = 0.06
_CENTIMETRES_TO_AN_INCH = Fraction(254, 100)


@dataclass(frozen=True, slots=True)
class Extent:
    """Width and height of a finished piece in inches, for a picture of it: no figure to sew by."""

    width: float
    height: float


def extent_in_inches(width: Quantity, height: Quantity) -> Extent:
    """Return the extent of a piece from its two finished sides, in whatever unit they are."""
    wide, high = (
        to_float(side.value) / (1 if side.unit is Unit.INCH else to_float(_CENTIMETRES_TO_AN_INCH))
        for side in (width, height)
    )
    return Extent(wide, high)


def silhouettes(extents: Sequence[Extent]) -> tuple[str, ...]:
    """Return one picture for each piece, all to one scale, each beside the same hand or chair.

    They are for the eye only: the sizes stand beside them in words.
    """
    largest = max((max(extent.width, extent.height) for extent in extents), default=0.0)
    is_hand = largest <= HAND_UP_TO
    beside, mark = (HAND_WIDTH, _hand()) if is_hand else (CHAIR_WIDTH, _chair())
    tall = HAND_HEIGHT if is_hand else CHAIR_HEIGHT
    gap = largest * _GAP
    width = max((extent.width for extent in extents), default=0.0) + beside + 3 * gap
    height = max([tall, *(extent.height for extent in extents)]) + 2 * gap
    return tuple(
        f'<svg class="silhouette" viewBox="0 0 {width:.2f} {height:.2f}" aria-hidden="true">'
        f'<rect class="piece" x="{gap:.2f}" y="{height - gap - extent.height:.2f}" width="{extent.width:.2f}" '
        f'height="{extent.height:.2f}"/>'
        f'<g transform="translate({extent.width + 2 * gap:.2f} {height - gap:.2f})">{mark}</g></svg>'
        for extent in extents
    )


def beside_what(extents: Sequence[Extent]) -> str:
    """Return where the language has the words for what the pieces are shown beside."""
    is_hand = max((max(extent.width, extent.height) for extent in extents), default=0.0) <= HAND_UP_TO
    return "a_hand" if is_hand else "a_chair"


def _hand() -> str:
    """Return a hand that stands on its wrist: four fingers, a thumb, a palm."""
    fingers = ((1.55, -3.6, 1.35, -6.4), (2.4, -3.7, 2.4, -7.1), (3.25, -3.6, 3.4, -6.6), (4.0, -3.3, 4.3, -5.4))
    lines = "".join(f"M{x1} {y1}L{x2} {y2}" for x1, y1, x2, y2 in fingers)
    return (
        '<path class="body" d="M1.2 0L1.1 -3.4Q1.1 -4 1.7 -4L3.9 -3.9Q4.4 -3.8 4.3 -3L3.9 0Z"/>'
        f'<path class="limb" stroke-width="0.72" d="{lines}M1.6 -1.5L0.4 -3.4"/>'
    )


def _chair() -> str:
    """Return a chair from the side: its back, its seat, its legs."""
    return '<path class="limb" stroke-width="1.5" d="M1 0L2.4 -18L1 -33.2M2.4 -17.4H16.6L17.6 0M2.1 -8H17"/>'
