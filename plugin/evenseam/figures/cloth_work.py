"""Draws workpieces: cloth by fabric, allowances, seam lines, letters."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from evenseam.figures.drawing import LABEL_SIZE, Pen, Side, Stroke, Tone
from evenseam.figures.frame import Frame
from evenseam.figures.plane import Polygon
from evenseam.figures.spot import label_spot
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import BATTING

FINEST_SEAM = 2.5
"""A seam allowance drawn narrower than this gets no seam line: the dashes would hide it."""


FINEST_PATCH = 6.0
"""Patches smaller than a square of this side are drawn in their colour alone: outlines and marks would hide it."""


def draw_work(
    pen: Pen,
    work: Workpiece,
    frame: Frame,
    *,
    has_allowance: bool = True,
    has_letters: bool = False,
    label: Callable[[Patch], str] | None = None,
    side: Side = Side.RIGHT,
) -> None:
    """Draw a workpiece; `frame` places the top left corner of its seam lines.

    `label` gives the words for each piece; `has_letters` is short for fabric letters.
    """
    is_grown = has_allowance and work.seam > 0
    outlines = work.raw_outlines if is_grown else tuple(patch.outline for patch in work.patches)
    shown = [(patch, frame.polygon(outline)) for patch, outline in zip(work.patches, outlines, strict=True)]
    draw_cloth(pen, ((patch.fabric, polygon) for patch, polygon in shown), side)
    if is_grown and frame.length(work.seam) >= FINEST_SEAM:
        pen.outline(frame.polygon(work.outline), Stroke.SEAM)
    if has_letters and label is None:
        label = _letter_by(pen)
    if label is not None:
        for patch in work.patches:
            draw_letter(pen, frame.polygon(patch.outline), label(patch), patch.fabric, side=side)


def draw_cloth(pen: Pen, pieces: Iterable[tuple[str, Polygon]], side: Side = Side.RIGHT) -> None:
    """Draw pieces that lie side by side, each fabric in one go, so that pictures of many pieces stay small."""
    by_fabric: dict[str, list[Polygon]] = {}
    for fabric, polygon in pieces:
        by_fabric.setdefault(fabric, []).append(polygon)
    for fabric, polygons in by_fabric.items():
        if fabric == BATTING:
            for polygon in polygons:
                pen.area(polygon, Tone.BATTING)
        else:
            coarse = [polygon for polygon in polygons if polygon.area >= FINEST_PATCH * FINEST_PATCH]
            fine = [polygon for polygon in polygons if polygon.area < FINEST_PATCH * FINEST_PATCH]
            if coarse:
                pen.cloth(coarse, fabric, side)
            if fine:
                pen.cloth(fine, fabric, side, is_outlined=False, has_texture=False)


def draw_letter(
    pen: Pen, piece: Polygon, text: str, fabric: str, *, largest: float = LABEL_SIZE, side: Side = Side.RIGHT
) -> bool:
    """Write a label inside a piece where it fits; tell whether it did."""
    found = label_spot(piece, text, largest) if text and fabric != BATTING else None
    if found is None:
        return False
    spot, size = found
    pen.label(spot, text, size=size, on_fabric=fabric, side=side)
    return True


def _letter_by(pen: Pen) -> Callable[[Patch], str]:
    def letter(patch: Patch) -> str:
        return "" if patch.fabric == BATTING else pen.looks[patch.fabric].letter

    return letter
