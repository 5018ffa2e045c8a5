"""A plan for narrower cloth as it is cut from wider cloth: its strips across are longer, its pieces stay."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from evenseam.cutting.lines import cutting_lines
from evenseam.cutting.plan import CuttingPlan, PlannedPiece, PlannedStrip
from evenseam.exact import Number
from evenseam.pattern import Cut, CutShape, Quantity, StripDirection


def on_wider_cloth(plan: CuttingPlan, width: Quantity, cuts: Iterable[Cut], bound: Number) -> CuttingPlan:
    """Return the plan on cloth of this usable width, no narrower; no plan there is shorter than `bound`."""
    known = {cut.id: cut for cut in cuts}
    more = width.value - plan.usable_width.value
    strips = tuple(_longer(strip, plan, more, known) for strip in plan.strips)
    length = plan.length.value
    return replace(
        plan,
        usable_width=width,
        strips=strips,
        lines=cutting_lines(strips, known, width.value, plan.alike),
        lower_bound=min(bound, length),
        is_shortest=length == bound,
    )


def _longer(strip: PlannedStrip, plan: CuttingPlan, more: Number, cuts: dict[str, Cut]) -> PlannedStrip:
    if strip.direction is not StripDirection.ACROSS or strip.x + strip.width != plan.usable_width.value:
        return strip
    pieces = tuple(
        replace(piece, width=piece.width + more) if _is_whole_strip(piece, strip, cuts[piece.cut]) else piece
        for piece in strip.pieces
    )
    return replace(strip, width=strip.width + more, pieces=pieces)


def _is_whole_strip(piece: PlannedPiece, strip: PlannedStrip, cut: Cut) -> bool:
    """Tell whether a length to be joined is left as long as the cloth is wide: one cut less."""
    is_kept = cut.part == "backing" or cut.shape is CutShape.BIAS_BINDING
    return piece.is_length_of_joined and not is_kept and piece.width == strip.width
