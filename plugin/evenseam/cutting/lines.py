"""From planned strips to cutting instructions: equal strips in one line, pieces counted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from evenseam.cutting.plan import CuttingLine, PlannedPiece, PlannedStrip, SubcutLine
from evenseam.exact import Number
from evenseam.pattern import Cut, StripDirection


def cutting_lines(strips: Sequence[PlannedStrip], cuts: Mapping[str, Cut], width: Number) -> tuple[CuttingLine, ...]:
    """Return one line for each kind of strip, in the order of the strips."""
    groups: dict[tuple[object, ...], list[PlannedStrip]] = {}
    for strip in strips:
        kinds = tuple(dict.fromkeys((piece.cut, piece.is_turned, _length_of(piece)) for piece in strip.pieces))
        key = (strip.section, strip.direction, _set_to(strip), _long(strip), kinds)
        groups.setdefault(key, []).append(strip)
    return tuple(_line(group, cuts, width) for group in groups.values())


def _length_of(piece: PlannedPiece) -> Number | None:
    return piece.width if piece.is_length_of_joined else None


def _set_to(strip: PlannedStrip) -> Number:
    return strip.height if strip.direction is StripDirection.ACROSS else strip.width


def _long(strip: PlannedStrip) -> Number:
    return strip.width if strip.direction is StripDirection.ACROSS else strip.height


def _line(group: Sequence[PlannedStrip], cuts: Mapping[str, Cut], width: Number) -> CuttingLine:
    first = group[0]
    is_across = first.direction is StripDirection.ACROSS
    counts: dict[tuple[str, Number, Number, bool, bool], int] = {}
    for strip in group:
        for piece in strip.pieces:
            if piece.is_length_of_joined and (piece.width, piece.height) == (strip.width, strip.height):
                continue  # The strip as it is, nothing to subcut.
            counts_key = _subcut_key(piece, strip, cuts[piece.cut])
            counts[counts_key] = counts.get(counts_key, 0) + 1
    subcuts = tuple(
        SubcutLine(cut, across, along, count, is_trimmed, is_left_over)
        for (cut, across, along, is_trimmed, is_left_over), count in counts.items()
    )
    return CuttingLine(
        first.direction,
        _set_to(first),
        _long(first),
        is_across and first.width == width,
        len(group),
        subcuts,
        first.section,
    )


def _subcut_key(piece: PlannedPiece, strip: PlannedStrip, cut: Cut) -> tuple[str, Number, Number, bool, bool]:
    is_across = strip.direction is StripDirection.ACROSS
    is_trimmed = piece.height < strip.height if is_across else piece.width < strip.width
    is_left_over = piece.cut != strip.pieces[0].cut
    if piece.is_length_of_joined:
        width, height = (piece.height, piece.width) if piece.is_turned else (piece.width, piece.height)
        return piece.cut, width, height, is_trimmed, is_left_over
    return piece.cut, cut.width.value, cut.height.value, is_trimmed, is_left_over
