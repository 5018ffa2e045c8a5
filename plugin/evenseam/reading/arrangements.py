"""How the blocks of a project stand: from keys of the pattern file to an arrangement."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.geometry import Polygon
from evenseam.pattern import (
    Arrangement,
    Assumed,
    Block,
    BlockPiece,
    BlockPosition,
    Method,
    Quantity,
    Setting,
    SettingTriangles,
)
from evenseam.problems import Label, Place
from evenseam.reading import codes
from evenseam.reading.drawn_values import read_placement
from evenseam.reading.entries import Entries, given, is_misspelt
from evenseam.reading.part_keys import ARRANGEMENT, SETTING_TRIANGLES
from evenseam.reading.parts import MISSING, Missing
from evenseam.reading.rows import read_unequal_rows
from evenseam.reading.sashings import read_sashing
from evenseam.reading.tree import Entry, Listing, Node, Scalar, is_none


def read_arrangement(entries: Entries, blocks: tuple[Block, ...]) -> tuple[Arrangement, tuple[Block, ...]] | None:
    """Return how the blocks stand, and the plain blocks that stand between them."""
    reader = entries.reader
    layout, block = entries.get("layout"), entries.get("block")
    unequal = entries.get("unequal rows")
    if unequal is not None:
        arrangement = read_unequal_rows(entries, unequal)
        return None if arrangement is None else (arrangement, ())
    rows, columns = entries.count("rows", "rows"), entries.count("columns", "columns")
    setting_word = entries.choice("setting", Setting.STRAIGHT.value)
    on_point = setting_word == Setting.ON_POINT.value
    alternate = entries.fabric("alternate")
    for key, entry in (("block", block), ("alternate", entries.get("alternate"))):
        if layout is not None and entry is not None:
            what = "a block" if key == "block" else "an alternate fabric"
            message = f"the arrangement has both {what} and a layout"
            hint = "keep `block` when every place holds the same block, `layout` otherwise"
            label = (Label(entry.key.place, f"the {key}"),)
            reader.report.add(codes.LAYOUT_MISMATCH, layout.key.place, message, hint, label)
            return None
    plain: tuple[Block, ...] = ()
    if layout is not None:
        positions = _read_layout(entries, layout, rows, columns, on_point)
        lines = len(positions or ())
        rows = rows or _counted("rows", _rows_of(positions) if on_point and positions else lines, layout)
        columns = columns or _counted("columns", len(positions[0]) if positions else 0, layout)
    else:
        positions = _read_repeated(entries, block, rows, columns, on_point)
        found = _plain_block(blocks, positions[0][0][0].block, alternate) if positions and alternate else None
        if positions and found:
            plain, positions = (found,), _alternating(positions, found.id, on_point)
    sashing, triangles = read_sashing(entries, is_unequal=False), _read_triangles(entries, on_point)
    if positions is None or rows is None or columns is None or setting_word is None:
        return None
    if isinstance(sashing, Missing) or isinstance(triangles, Missing):
        return None
    placed = tuple(tuple(position for position, _ in row) for row in positions)
    _check_equal_sizes(entries, positions, (*blocks, *plain))
    arrangement = Arrangement(
        rows, columns, Setting(setting_word), placed, sashing, entries.at, setting_triangles=triangles
    )
    return arrangement, plain


_Rows = tuple[tuple[tuple[BlockPosition, Place], ...], ...]


def _rows_of(lines: _Rows) -> int:
    """Return the rows of blocks on point that so many lines make: every other line lies between two rows."""
    return len(lines) // 2 + 1


def _line_lengths(rows: int, columns: int, on_point: bool) -> list[int]:
    """Return how many blocks stand in every line, from the top."""
    if not on_point:
        return [columns] * rows
    return [columns - line % 2 for line in range(2 * rows - 1)]


def _alternating(rows: _Rows, plain: str, on_point: bool) -> _Rows:
    """Put a plain block into every other place; on point, into the lines that lie between two rows."""
    return tuple(
        tuple(
            (BlockPosition(plain), place) if (line if on_point else line + column) % 2 else (position, place)
            for column, (position, place) in enumerate(row)
        )
        for line, row in enumerate(rows)
    )


def _plain_block(blocks: tuple[Block, ...], beside: str, fabric: str) -> Block | None:
    """Return one piece of cloth as large as the block beside it."""
    block = next((known for known in blocks if known.id == beside), None)
    if block is None:
        return None
    id = "plain"
    while any(known.id == id for known in blocks):
        id += "-block"
    one = Fraction(1)
    outline = Polygon.rectangle(Fraction(0), Fraction(0), one, one)
    piece = BlockPiece("p1", fabric, outline)
    return Block(
        id, "plain", block.width, block.height, one, one, outline, (piece,), Method.ROTARY, plain_beside=beside
    )


def _read_triangles(entries: Entries, on_point: bool) -> SettingTriangles | Missing | None:
    """Return the setting triangles of blocks on point."""
    report, entry = entries.reader.report, entries.get("setting triangles")
    inner = entries.inner("setting triangles", SETTING_TRIANGLES)
    if not on_point:
        if entry is not None:
            message = "there are setting triangles, but the blocks are set straight"
            hint = "add `setting: on point`, or write `setting triangles: none`"
            report.add(codes.TRIANGLES_UNUSED, entry.key.place, message, hint)
        return None
    if entry is None:
        if not is_misspelt("setting triangles", entries.mapping, ARRANGEMENT):
            message = "blocks on point need setting triangles at the edges"
            hint = "add 'setting triangles: {fabric: " + next(iter(entries.reader.fabrics or ()), "fog") + "}'"
            # A size that sets its blocks on point says so in a line of its own, which is the one to look at.
            setting = entries.get("setting")
            report.add(codes.MISSING_KEY, setting.key.place if setting else entries.at, message, hint)
        return MISSING
    if inner is None:
        return MISSING
    fabric = inner.fabric("fabric")
    corner = inner.fabric("corner fabric") if inner.get("corner fabric") else fabric
    said, least = inner.get("float"), inner.get("least float")
    if said is not None and least is not None:
        message = "the setting triangles have both a float and a least float"
        hint = "keep `float` for exactly that much, `least float` for the next mark of the ruler above it"
        report.add(codes.SAID_TWO_WAYS, least.key.place, message, hint, (Label(said.key.place, "the float"),))
        return MISSING
    floated, at_least = inner.length("float", "float"), inner.length("least float", "least float")
    if fabric is None or corner is None or (said and floated is None) or (least and at_least is None):
        return MISSING
    if floated is None:
        reason = "none was given: the least that brings the trimmed top to a mark of the ruler"
        floated = Quantity("float", Fraction(0), entries.reader.edition, Assumed(reason))
    return SettingTriangles(fabric, corner, floated, inner.at, chooses_float=said is None, least_float=at_least)


def _counted(name: str, number: int, layout: Entry) -> Quantity:
    return given(name, Fraction(number), Unit.COUNT, layout.value, layout.key.place)


def _read_repeated(
    entries: Entries, block: Entry | None, rows: Quantity | None, columns: Quantity | None, on_point: bool
) -> _Rows | None:
    report = entries.reader.report
    for key in ("rows", "columns", "block"):
        value = entries.mapping.value(key)
        if (value is None or is_none(value)) and not is_misspelt(key, entries.mapping, ARRANGEMENT):
            example = {
                "rows": "rows: 1",
                "columns": "columns: 3",
                "block": "block: " + next(iter(entries.reader.blocks or ()), "lantern"),
            }[key]
            message = f"the arrangement has no {key!r}"
            report.add(codes.MISSING_KEY, entries.at, message, f"add {example!r}, or write a layout")
    if block is None or rows is None or columns is None or not isinstance(block.value, Scalar):
        return None
    id = entries.reader.block(block.value.text.strip(), block.value.place)
    if id is None:
        return None
    place = block.value.place
    lengths = _line_lengths(rows.whole, columns.whole, on_point)
    return tuple(tuple((BlockPosition(id), place) for _ in range(length)) for length in lengths)


def _read_layout(
    entries: Entries, layout: Entry, rows: Quantity | None, columns: Quantity | None, on_point: bool
) -> _Rows | None:
    if not isinstance(layout.value, Listing):
        return None
    lines = [item for item in layout.value.items if isinstance(item, Listing)]
    if len(lines) < len(layout.value.items) or not lines or not all(line.items for line in lines):
        return None
    if on_point:
        is_even = _fits_on_point(entries, layout, lines, rows, columns)
    else:
        is_even = _fits_straight(entries, layout, lines, rows, columns)
    read_rows = [[_read_position(entries, item) for item in line.items] for line in lines]
    if not is_even or any(position is None for row in read_rows for position in row):
        return None
    found = [tuple(position for position in row if position is not None) for row in read_rows]
    if on_point and len(found[0]) == 1:  # One column has nothing between its blocks: no line is written for it.
        found = [line for row in found for line in (row, ())][:-1]
    return tuple(found)


def _fits_straight(
    entries: Entries, layout: Entry, lines: Sequence[Listing], rows: Quantity | None, columns: Quantity | None
) -> bool:
    report = entries.reader.report
    is_even = True
    if rows is not None and rows.whole != len(lines):
        is_even = False
        message = f"the layout has {len(lines)} {_plural('row', len(lines))}, but `rows` says {rows.whole}"
        hint = "write one line of the layout for each row; a size with other rows needs a layout of its own"
        report.add(codes.LAYOUT_MISMATCH, layout.key.place, message, hint, _label(rows, "rows"))
    wanted = columns.whole if columns is not None else len(lines[0].items)
    for line in lines:
        if len(line.items) != wanted:
            is_even = False
            source = "`columns` says" if columns is not None else "the first row has"
            message = f"this row has {len(line.items)} {_plural('block', len(line.items))}, but {source} {wanted}"
            label = _label(columns, "columns") if columns is not None else (Label(lines[0].place, "the first row"),)
            report.add(codes.LAYOUT_MISMATCH, line.place, message, "every row needs a block in every column", label)
    return is_even


def _fits_on_point(
    entries: Entries, layout: Entry, lines: Sequence[Listing], rows: Quantity | None, columns: Quantity | None
) -> bool:
    """Check the lines of blocks on point: rows of `columns` blocks, and one fewer in the lines between them."""
    report = entries.reader.report
    wide = columns.whole if columns is not None else len(lines[0].items)
    is_even = True
    if wide == 1:
        number = rows.whole if rows is not None else len(lines)
        lengths, told = [1] * number, f"one line for each of the {number} rows of one block"
    else:
        number = rows.whole if rows is not None else len(lines) // 2 + 1
        lengths = _line_lengths(number, wide, on_point=True)
        told = f"{2 * number - 1} lines: {number} rows and a line between each two of them"
    if len(lines) != len(lengths):
        is_even = False
        message = f"the layout has {len(lines)} {_plural('line', len(lines))}; blocks on point are written as {told}"
        hint = "write the blocks as they are seen on the finished top, line by line from above"
        report.add(codes.LAYOUT_MISMATCH, layout.key.place, message, hint, _label(rows, "rows") if rows else ())
    for line, length in zip(lines, lengths, strict=False):
        if len(line.items) != length:
            is_even = False
            message = f"this line has {len(line.items)} {_plural('block', len(line.items))}; it needs {length}"
            hint = f"on point, rows of {wide} blocks and lines of {wide - 1} between them take turns"
            report.add(codes.LAYOUT_MISMATCH, line.place, message, hint)
    return is_even


def _read_position(entries: Entries, item: Node) -> tuple[BlockPosition, Place] | None:
    placement = read_placement(item, entries.reader.report)
    if placement is None:
        return None
    id = entries.reader.block(placement.block, placement.place)
    return None if id is None else (BlockPosition(id, placement.quarter_turns, placement.is_mirrored), placement.place)


def _check_equal_sizes(entries: Entries, rows: _Rows, blocks: tuple[Block, ...]) -> None:
    sizes = {block.id: (block.width, block.height) for block in blocks}
    first: tuple[Quantity, Quantity] | None = None
    first_place: Place | None = None
    for position, place in (each for row in rows for each in row):
        if position.block not in sizes:
            continue
        width, height = sizes[position.block]
        if position.quarter_turns % 2:
            width, height = height, width
        if first is None or first_place is None:
            first, first_place = (width, height), place
        elif width.unit is not first[0].unit or height.unit is not first[1].unit:
            continue  # One of them is still to be re-drafted; sizing compares them then.
        elif (width.value, height.value) != (first[0].value, first[1].value):
            message = (
                f"this block is {width.number} x {height.text} here, the first one {first[0].number} x {first[1].text}"
            )
            hint = "all blocks of an arrangement have one size; a block turned 90 must be square"
            entries.reader.report.add(
                codes.BLOCK_SIZES_DIFFER, place, message, hint, (Label(first_place, "the first block"),)
            )
            return


def _label(quantity: Quantity, key: str) -> tuple[Label, ...]:
    return (Label(quantity.place, f"`{key}` stands here"),) if quantity.place else ()


def _plural(word: str, number: int) -> str:
    return word if number == 1 else word + "s"
