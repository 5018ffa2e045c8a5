"""Strips in steps as planned strips with their places on the cloth."""

from __future__ import annotations

from collections.abc import Iterator

from evenseam.cutting.merging import Strip
from evenseam.cutting.plan import PlannedPiece, PlannedStrip
from evenseam.cutting.request import FabricRequest, Request
from evenseam.cutting.scale import Scale
from evenseam.cutting.sections import Section
from evenseam.pattern import StripDirection


def place_across(strip: Strip, asked: FabricRequest, x: int, y: int, end: int) -> PlannedStrip:
    """Return a strip across from x to the end; y and x in steps."""
    scale = asked.scale
    pieces: list[PlannedPiece] = []
    only = strip.slots[0] if len(strip.slots) == 1 and strip.slots[0].count == 1 else None
    left = x
    for slot in strip.slots:
        request = asked.requests[slot.request]
        # A length that has its strip to itself is left as long as the cloth is wide: one cut less.
        is_whole = request.is_length and slot is only and request.side is None and request.cut.part != "backing"
        across = end - x if is_whole else slot.lie.across
        for _ in range(slot.count):
            pieces.append(_piece(request, scale, left, y, across, slot.lie.along, slot.lie.is_turned))
            left += across
    return PlannedStrip(
        StripDirection.ACROSS,
        scale.length(x),
        scale.length(y),
        scale.length(end - x),
        scale.length(strip.height),
        tuple(pieces),
    )


def _piece(request: Request, scale: Scale, x: int, y: int, across: int, along: int, is_turned: bool) -> PlannedPiece:
    return PlannedPiece(
        request.cut.id,
        scale.length(x),
        scale.length(y),
        scale.length(across),
        scale.length(along),
        is_turned,
        request.is_length,
    )


def place_section(section: Section, asked: FabricRequest, y: int) -> Iterator[PlannedStrip]:
    """Return the lengthwise strips of a section, then the short strips beside them."""
    scale, x = asked.scale, 0
    for column in section.columns:
        pieces: list[PlannedPiece] = []
        top = y
        for slot in column.pieces:
            lie = slot.lie
            pieces.append(_piece(asked.requests[slot.request], scale, x, top, lie.across, lie.along, lie.is_turned))
            top += lie.along
        yield PlannedStrip(
            StripDirection.ALONG,
            scale.length(x),
            scale.length(y),
            scale.length(column.width),
            scale.length(section.height),
            tuple(pieces),
        )
        x += column.width
    top = y
    for strip in section.beside:
        yield place_across(strip, asked, x, top, asked.width)
        top += strip.height


def place_along(strip: Strip, asked: FabricRequest, x: int, end: int) -> PlannedStrip:
    """Return a strip along a piece of cloth, from its squared-up end to the other; x and end in steps."""
    scale = asked.scale
    pieces: list[PlannedPiece] = []
    top = 0
    for slot in strip.slots:
        lie = slot.lie
        for _ in range(slot.count):
            pieces.append(_piece(asked.requests[slot.request], scale, x, top, lie.across, lie.along, lie.is_turned))
            top += lie.along
    return PlannedStrip(
        StripDirection.ALONG,
        scale.length(x),
        scale.length(0),
        scale.length(strip.height),
        scale.length(end),
        tuple(pieces),
    )
