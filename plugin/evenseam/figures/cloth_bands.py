"""A cutting plan taken apart into bands down the cloth, so that the longest cloth fits into a picture.

Bands that are alike are drawn once; of a long one only the two ends are drawn, with a break between them.
"""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.cutting import CuttingPlan
from evenseam.cutting.plan import PlannedPiece, PlannedStrip
from evenseam.figures.frame import Frame, rectangle
from evenseam.figures.plane import Polygon, decimal

HIGHEST = 400.0
"""Cloth longer than this is drawn with strips that are alike left out."""
TALL = (180.0, 140.0, 110.0, 84.0, 64.0)
"""A band that is longer than this is drawn with its middle left out; the less, the longer the cloth."""
BREAK = 16.0
AFTER = 4.0
"""From a break to what follows it."""


@dataclass(frozen=True, slots=True)
class Band:
    """A stretch of the cloth: strips that lie side by side, and how many times it comes."""

    top: float
    bottom: float
    strips: tuple[PlannedStrip, ...]
    times: int = 1

    @property
    def pieces(self) -> tuple[PlannedPiece, ...]:
        """The pieces of all its strips."""
        return tuple(piece for strip in self.strips for piece in strip.pieces)


@dataclass(frozen=True, slots=True)
class Stretch:
    """Some of a band that is drawn in one piece: from where to where on the cloth, and where it lies in the drawing."""

    top: float
    bottom: float
    place: Frame

    def shown(self, left: float, top: float, width: float, bottom: float) -> Polygon | None:
        """Return what of a rectangle on the cloth is drawn here; None when that is nothing."""
        above, below = max(top, self.top), min(bottom, self.bottom)
        if above >= below:
            return None
        return self.place.polygon(rectangle(left, above, width, below - above))


def bands_of(plan: CuttingPlan) -> tuple[Band, ...]:
    """Return the strips in bands down the cloth."""
    bands: list[Band] = []
    for strip in sorted(plan.strips, key=lambda one: (one.y, one.x)):
        top, bottom = decimal(strip.y), decimal(strip.y + strip.height)
        if bands and top < bands[-1].bottom:
            last = bands[-1]
            bands[-1] = Band(last.top, max(last.bottom, bottom), (*last.strips, strip))
        else:
            bands.append(Band(top, bottom, (strip,)))
    return tuple(bands)


def alike_once(bands: tuple[Band, ...]) -> tuple[Band, ...]:
    """Return the bands with those that follow an equal one counted instead of listed."""
    merged: list[Band] = []
    for band in bands:
        if merged and _shape(merged[-1]) == _shape(band):
            last = merged[-1]
            merged[-1] = Band(last.top, last.bottom, last.strips, last.times + 1)
        else:
            merged.append(band)
    return tuple(merged)


def _shape(band: Band) -> tuple[object, ...]:
    return tuple(
        (
            strip.direction,
            strip.x,
            strip.width,
            strip.height,
            *((piece.cut, piece.x, piece.y - strip.y, piece.width, piece.height) for piece in strip.pieces),
        )
        for strip in band.strips
    )


def fitted(plan: CuttingPlan, frame: Frame) -> tuple[tuple[Band, ...], float]:
    """Return the bands to draw at a scale, and the height from which one loses its middle."""
    bands = bands_of(plan)
    endless = float("inf")
    if height_of(bands, frame, endless) <= HIGHEST:
        return bands, endless
    bands = alike_once(bands)
    for tall in (endless, *TALL):
        if height_of(bands, frame, tall) <= HIGHEST:
            return bands, tall
    return bands, TALL[-1]


def height_of(bands: tuple[Band, ...], frame: Frame, tall: float) -> float:
    """Return how far down the bands reach when they are drawn."""
    return sum(
        min(frame.length(band.bottom - band.top), tall) + (BREAK + AFTER if band.times > 1 else 0.0) for band in bands
    )


def stretches_of(band: Band, frame: Frame, down: float, tall: float) -> tuple[Stretch, ...]:
    """Return where a band is drawn that begins at `down`: in one piece, or its two ends with a break between them."""
    high = frame.length(band.bottom - band.top)
    place = frame.moved_by(0, down - frame.length(band.top))
    if high <= tall:
        return (Stretch(band.top, band.bottom, place),)
    kept = (tall - BREAK) / 2 / frame.scale
    return (
        Stretch(band.top, band.top + kept, place),
        Stretch(band.bottom - kept, band.bottom, place.moved_by(0, tall - high)),
    )
