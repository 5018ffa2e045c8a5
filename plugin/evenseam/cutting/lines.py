"""From planned strips to cutting instructions: equal strips in one line, pieces counted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from evenseam.cutting.plan import CuttingLine, PlannedPiece, PlannedStrip, SubcutLine
from evenseam.exact import Number
from evenseam.pattern import Cut, CutShape, StripDirection


def alike_cuts(strips: Sequence[PlannedStrip], cuts: Mapping[str, Cut]) -> tuple[tuple[str, ...], ...]:
    """Return the cuts that are the same on the cloth: of one size whichever way it is written, and free to turn."""
    groups: dict[tuple[object, ...], dict[str, None]] = {}
    for strip in strips:
        for piece in strip.pieces:
            cut = cuts[piece.cut]
            if not (piece.is_length_of_joined or cut.is_upright or cut.shape in _OF_ITS_OWN):
                sides = tuple(sorted((cut.width.value, cut.height.value)))
                groups.setdefault((cut.shape, cut.direction, sides), {}).setdefault(cut.id)
    return tuple(tuple(group) for group in groups.values() if len(group) > 1)


_OF_ITS_OWN = (CutShape.TEMPLATE, CutShape.BINDING, CutShape.BIAS_BINDING)


def cutting_lines(
    strips: Sequence[PlannedStrip],
    cuts: Mapping[str, Cut],
    width: Number,
    alike: Sequence[tuple[str, ...]] = (),
) -> tuple[CuttingLine, ...]:
    """Return one line for each kind of strip, in the order of the strips; cuts that are `alike` are counted as one."""
    first = {cut: group[0] for group in alike for cut in group}
    named = {id: cuts[first.get(id, id)] for id in cuts}
    also = {group[0]: group[1:] for group in alike}
    groups: dict[tuple[object, ...], list[PlannedStrip]] = {}
    for strip in strips:
        kinds = tuple(dict.fromkeys(_kind_of(piece, named[piece.cut]) for piece in strip.pieces))
        key = (strip.section, strip.direction, _set_to(strip), _long(strip), kinds)
        groups.setdefault(key, []).append(strip)
    return tuple(_line(group, named, also, width) for group in groups.values())


def _kind_of(piece: PlannedPiece, cut: Cut) -> tuple[object, ...]:
    return cut.id, piece.width > piece.height, _length_of(piece)


def _length_of(piece: PlannedPiece) -> Number | None:
    return piece.width if piece.is_length_of_joined else None


def _set_to(strip: PlannedStrip) -> Number:
    return strip.height if strip.direction is StripDirection.ACROSS else strip.width


def _long(strip: PlannedStrip) -> Number:
    return strip.width if strip.direction is StripDirection.ACROSS else strip.height


def _line(
    group: Sequence[PlannedStrip], cuts: Mapping[str, Cut], also: Mapping[str, tuple[str, ...]], width: Number
) -> CuttingLine:
    first = group[0]
    is_across = first.direction is StripDirection.ACROSS
    counts: dict[tuple[str, Number, Number, bool, bool], int] = {}
    for strip in group:
        for piece in strip.pieces:
            if piece.is_length_of_joined and (piece.width, piece.height) == (strip.width, strip.height):
                continue  # The strip as it is, nothing to subcut.
            counts_key = _subcut_key(piece, strip, cuts)
            counts[counts_key] = counts.get(counts_key, 0) + 1
    subcuts = tuple(
        SubcutLine(cut, across, along, count, is_trimmed, is_left_over, also.get(cut, ()))
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


def _subcut_key(
    piece: PlannedPiece, strip: PlannedStrip, cuts: Mapping[str, Cut]
) -> tuple[str, Number, Number, bool, bool]:
    cut = cuts[piece.cut]
    is_across = strip.direction is StripDirection.ACROSS
    is_trimmed = piece.height < strip.height if is_across else piece.width < strip.width
    is_left_over = cut.id != cuts[strip.pieces[0].cut].id
    if piece.is_length_of_joined:
        width, height = (piece.height, piece.width) if piece.is_turned else (piece.width, piece.height)
        return cut.id, width, height, is_trimmed, is_left_over
    return cut.id, cut.width.value, cut.height.value, is_trimmed, is_left_over
