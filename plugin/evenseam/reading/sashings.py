"""The sashing of an arrangement: from its keys in the pattern file to strips of a width and a fabric."""

from __future__ import annotations

from evenseam.pattern import Sashing
from evenseam.problems import Label
from evenseam.reading import codes
from evenseam.reading.entries import Entries
from evenseam.reading.part_keys import SASHING
from evenseam.reading.parts import MISSING, Missing

ONLY_ROWS = "rows"
"""What `between` says when nothing stands between the blocks of a row."""


def read_sashing(entries: Entries, *, is_unequal: bool) -> Sashing | Missing | None:
    """Return the sashing; None when there is none.

    Strips of unequal rows do not meet in line, so that cornerstones are refused there; strips between rows alone are
    known there only.
    """
    entry = entries.get("sashing")
    inner = entries.inner("sashing", SASHING)
    if entry is None:
        return None
    if inner is None:
        return MISSING
    width = inner.length("width", "sashing width")
    fabric = inner.fabric("fabric")
    cornerstones = inner.fabric("cornerstones")
    between = inner.choice("between", "blocks and rows")
    if not _goes_with_the_rows(entries, inner, is_unequal=is_unequal):
        return MISSING
    if width is None or fabric is None or between is None:
        return MISSING
    return Sashing(width, fabric, inner.yes("around"), cornerstones, inner.at, between_blocks=between != ONLY_ROWS)


def _goes_with_the_rows(entries: Entries, inner: Entries, *, is_unequal: bool) -> bool:
    report = entries.reader.report
    stones, between, rows = inner.get("cornerstones"), inner.get("between"), entries.get("unequal rows")
    if is_unequal and stones is not None and rows is not None:
        message = "sashing of unequal rows has cornerstones, but its strips do not meet in line"
        hint = "leave the cornerstones out, or write `cornerstones: none` where they are inherited"
        report.add(codes.LAYOUT_MISMATCH, stones.key.place, message, hint, (Label(rows.key.place, "the unequal rows"),))
        return False
    if not is_unequal and between is not None:
        message = "`between` is for sashing of unequal rows; here strips lie between all blocks"
        hint = "leave `between` out (`between: none` where it is inherited), or write the blocks as `unequal rows`"
        report.add(codes.LAYOUT_MISMATCH, between.key.place, message, hint)
        return False
    return True
