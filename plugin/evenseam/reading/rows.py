"""Rows of blocks that differ in width, with spacers: from the list in the pattern file to an arrangement."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Arrangement, BlockPosition, Given, Quantity, RowPart, Setting, Spacer, UnequalRow
from evenseam.problems import Label
from evenseam.reading import codes
from evenseam.reading.entries import Entries, given
from evenseam.reading.parts import Missing
from evenseam.reading.row_parts import WrittenSpacer, read_block_or_spacer
from evenseam.reading.sashings import read_sashing
from evenseam.reading.tree import Entry, Listing, Node

_NOT_BESIDE = ("block", "layout", "rows", "columns", "alternate", "setting", "setting triangles")
"""Keys that say otherwise how the blocks stand, or that need a grid of equal ones."""


_ORDINALS = (
    "", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
    "twelfth", "thirteenth",
)  # fmt: skip
"""As a maker counts the spacers of a row; beyond them figures will do."""


def read_unequal_rows(entries: Entries, entry: Entry) -> Arrangement | None:
    """Return the rows; None when something in them cannot be used."""
    report = entries.reader.report
    others = [beside for key in _NOT_BESIDE if (beside := entries.get(key)) is not None]
    for other in others:
        message = f"the arrangement has unequal rows and {other.key.text!r}"
        hint = "unequal rows say how all blocks stand"
        label = (Label(entry.key.place, "the unequal rows"),)
        report.add(codes.LAYOUT_MISMATCH, other.key.place, message, hint, label)
    if not isinstance(entry.value, Listing):
        return None
    sashing = read_sashing(entries, is_unequal=True)
    rows = [_read_row(entries, item, number) for number, item in enumerate(entry.value.items, start=1)]
    found = tuple(row for row in rows if row is not None)
    if others or not found or len(found) < len(rows) or isinstance(sashing, Missing):
        return None
    positions = tuple(tuple(part for part in row.parts if isinstance(part, BlockPosition)) for row in found)
    number = given("rows", Fraction(len(found)), Unit.COUNT, entry.value, entry.key.place)
    most = given("columns", Fraction(max(len(row) for row in positions)), Unit.COUNT, entry.value, entry.key.place)
    return Arrangement(number, most, Setting.UNEQUAL_ROWS, positions, sashing, entries.at, unequal_rows=found)


def _read_row(entries: Entries, item: Node, number: int) -> UnequalRow | None:
    if not isinstance(item, Listing) or not item.items:
        return None
    parts = [_read_part(entries, part) for part in item.items]
    found = _named(tuple(part for part in parts if part is not None), number)
    if len(found) < len(parts):
        return None
    if not any(isinstance(part, BlockPosition) for part in found):
        message, hint = "this row has no block", "a row is as high as its blocks, so it needs one"
        entries.reader.report.add(codes.LAYOUT_MISMATCH, item.place, message, hint)
        return None
    return UnequalRow(found, item.place)


def _named(parts: tuple[RowPart, ...], row: int) -> tuple[RowPart, ...]:
    """Give every stated width a name of its own, so that it can be told which one was changed."""
    found: list[RowPart] = []
    spacers = 0
    for part in parts:
        if isinstance(part, Spacer):
            spacers += 1
            if part.width is not None:
                place = _ORDINALS[spacers] if spacers < len(_ORDINALS) else f"{spacers}th"
                part = replace(part, width=replace(part.width, name=f"{place} spacer of row {row} width"))
        found.append(part)
    return tuple(found)


def _read_part(entries: Entries, node: Node) -> RowPart | None:
    reader = entries.reader
    written = read_block_or_spacer(node, reader.unit_at(node.place), reader.report)
    if written is None:
        return None
    if not isinstance(written, WrittenSpacer):
        id = reader.block(written.block, written.place)
        return None if id is None else BlockPosition(id, written.quarter_turns, written.is_mirrored)
    fabric = reader.fabric(written.fabric, written.place)
    if fabric is None:
        return None
    width = None
    if written.width is not None:
        because = Given(written.place, written.width_text)
        width = Quantity("spacer width", written.width, reader.unit_at(written.place), because)
    return Spacer(fabric, width, written.place)
