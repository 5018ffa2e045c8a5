"""The parts of a project around its blocks: arrangement, sashing, borders, finish and hanging."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import (
    Arrangement,
    Binding,
    Block,
    BlockPosition,
    Border,
    BorderCorners,
    BorderOrder,
    Bound,
    CornerPockets,
    Finish,
    Grain,
    Hanging,
    Quantity,
    Sashing,
    Setting,
    Sleeve,
    StripDirection,
    StripJoin,
    Turned,
)
from evenseam.problems import Label, Place
from evenseam.reading import codes, defaults
from evenseam.reading.drawn_values import read_placement
from evenseam.reading.entries import Entries, Reader, distinct, given, is_misspelt, slug
from evenseam.reading.leaves import read_choice
from evenseam.reading.part_keys import ARRANGEMENT, BACKING, BINDING, BORDER, FINISH, HANGING, SASHING, TURNED_BACKING
from evenseam.reading.tree import Entry, Listing, Mapping, Node, Scalar, is_none


@dataclass(frozen=True, slots=True)
class Missing:
    """A part that should be there and could not be read; what is wrong has been reported."""


MISSING = Missing()


def read_arrangement(entries: Entries, blocks: tuple[Block, ...]) -> Arrangement | None:
    """Return rows and columns of blocks, all of one size."""
    reader = entries.reader
    layout, block = entries.get("layout"), entries.get("block")
    rows, columns = entries.count("rows", "rows"), entries.count("columns", "columns")
    if layout is not None and block is not None:
        message = "the arrangement has both a block and a layout"
        hint = "keep `block` when every place holds the same block, `layout` otherwise"
        reader.report.add(
            codes.LAYOUT_MISMATCH, layout.key.place, message, hint, (Label(block.key.place, "the block"),)
        )
        return None
    if layout is not None:
        positions = _read_layout(entries, layout, rows, columns)
        rows = rows or _counted("rows", len(positions or ()), layout)
        columns = columns or _counted("columns", len(positions[0]) if positions else 0, layout)
    else:
        positions = _read_repeated(entries, block, rows, columns)
    sashing = _read_sashing(entries)
    if positions is None or rows is None or columns is None or isinstance(sashing, Missing):
        return None
    placed = tuple(tuple(position for position, _ in row) for row in positions)
    _check_equal_sizes(entries, positions, blocks)
    return Arrangement(rows, columns, Setting.STRAIGHT, placed, sashing, entries.at)


_Rows = tuple[tuple[tuple[BlockPosition, Place], ...], ...]


def _counted(name: str, number: int, layout: Entry) -> Quantity:
    return given(name, Fraction(number), Unit.COUNT, layout.value, layout.key.place)


def _read_repeated(
    entries: Entries, block: Entry | None, rows: Quantity | None, columns: Quantity | None
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
    return tuple(tuple((BlockPosition(id), block.value.place) for _ in range(columns.whole)) for _ in range(rows.whole))


def _read_layout(entries: Entries, layout: Entry, rows: Quantity | None, columns: Quantity | None) -> _Rows | None:
    report = entries.reader.report
    if not isinstance(layout.value, Listing):
        return None
    lines = [item for item in layout.value.items if isinstance(item, Listing)]
    if len(lines) < len(layout.value.items) or not lines or not all(line.items for line in lines):
        return None
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
    read_rows = [[_read_position(entries, item) for item in line.items] for line in lines]
    if not is_even or any(position is None for row in read_rows for position in row):
        return None
    return tuple(tuple(position for position in row if position is not None) for row in read_rows)


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


def _read_sashing(entries: Entries) -> Sashing | Missing | None:
    entry = entries.get("sashing")
    inner = entries.inner("sashing", SASHING)
    if entry is None:
        return None
    if inner is None:
        return MISSING
    width = inner.length("width", "sashing width")
    fabric = inner.fabric("fabric")
    cornerstones = inner.fabric("cornerstones")
    if width is None or fabric is None:
        return MISSING
    return Sashing(width, fabric, inner.yes("around"), cornerstones, inner.at)


def read_borders(reader: Reader, entry: Entry | None) -> tuple[Border, ...] | None:
    """Return the borders, innermost first; None when one of them cannot be used."""
    if entry is None or not isinstance(entry.value, Mapping):
        return ()
    kept = distinct(entry.value.entries, "border", reader.report)
    borders = [_read_border(reader, inner) for inner in kept]
    return tuple(border for border in borders if border is not None) if None not in borders else None


def _read_border(reader: Reader, entry: Entry) -> Border | None:
    if not isinstance(entry.value, Mapping):
        return None
    entries = Entries(reader, entry.value, BORDER, entry.key.place)
    name = " ".join(entry.key.text.split())
    width = entries.length("width", f"{name} width")
    fabric = entries.fabric("fabric")
    order = entries.choice("order", BorderOrder.LONG_SIDES_FIRST.value)
    corners = entries.choice("corners", BorderCorners.BUTTED.value)
    corner_fabric = entries.fabric("corner fabric")
    join = entries.choice("join", StripJoin.DIAGONAL.value)
    strips = entries.choice("strips", StripDirection.EITHER.value)
    if width is None or fabric is None or order is None or corners is None or join is None or strips is None:
        return None
    return Border(
        slug(name), name, width, fabric, BorderOrder(order), BorderCorners(corners), corner_fabric, StripJoin(join),
        StripDirection(strips), entry.key.place,
    )  # fmt: skip


def read_finish(reader: Reader, entry: Entry | None, is_large: bool) -> Finish | None:
    """Return how the edge is closed. `is_large` chooses between the usual figures of small pieces and of quilts."""
    if entry is None or not isinstance(entry.value, Mapping):
        return None
    word = _deciding_word(reader, entry.value, FINISH.key, FINISH.options, "finish", entry.key.place)
    if word is None:
        return None
    entries = Entries(reader, entry.value, FINISH.record(word), entry.key.place)
    return _read_turned(entries, is_large) if word == "turned" else _read_bound(entries, is_large)


def _read_turned(entries: Entries, is_large: bool) -> Turned | None:
    backing = entries.inner("backing", TURNED_BACKING)
    fabric = backing.fabric("fabric") if backing else None
    overage = backing.length("overage", "backing overage", defaults.BACKING_TURNED) if backing else None
    batting = entries.length("batting overage", "batting overage", defaults.BATTING_TURNED)
    opening = entries.length("opening", "opening", defaults.OPENING_LARGE if is_large else defaults.OPENING_SMALL)
    topstitch = entries.length("topstitch", "topstitch distance", defaults.TOPSTITCH)
    if fabric is None or overage is None or batting is None or opening is None or topstitch is None:
        return None
    return Turned(fabric, overage, batting, opening, topstitch, entries.at)


def _read_bound(entries: Entries, is_large: bool) -> Bound | None:
    backing = entries.inner("backing", BACKING)
    usual_backing = defaults.BACKING_BOUND_LARGE if is_large else defaults.BACKING_BOUND_SMALL
    usual_batting = defaults.BATTING_BOUND_LARGE if is_large else defaults.BATTING_BOUND_SMALL
    fabric = backing.fabric("fabric") if backing else None
    overage = backing.length("overage", "backing overage", usual_backing) if backing else None
    seam = backing.length("seam allowance", "backing seam allowance", defaults.BACKING_SEAM) if backing else None
    batting = entries.length("batting overage", "batting overage", usual_batting)
    binding = _read_binding(entries.inner("binding", BINDING))
    if fabric is None or overage is None or seam is None or batting is None or binding is None:
        return None
    return Bound(fabric, overage, batting, seam, binding, entries.at)


def _read_binding(entries: Entries | None) -> Binding | None:
    if entries is None:
        return None
    fabric = entries.fabric("fabric")
    width = entries.length("strip width", "binding strip width", defaults.BINDING_STRIP)
    extra = entries.length("extra length", "binding extra length", defaults.BINDING_EXTRA)
    grain = entries.choice("grain", Grain.STRAIGHT.value)
    join = entries.choice("join", StripJoin.DIAGONAL.value)
    if fabric is None or width is None or extra is None or grain is None or join is None:
        return None
    return Binding(fabric, width, extra, Grain(grain), StripJoin(join))


def read_hanging(reader: Reader, entry: Entry | None) -> Hanging | Missing | None:
    """Return how the project hangs; None when it does not."""
    if entry is None:
        return None
    if not isinstance(entry.value, Mapping):
        return MISSING
    word = _deciding_word(reader, entry.value, HANGING.key, HANGING.options, "hanging", entry.key.place)
    if word is None:
        return MISSING
    entries = Entries(reader, entry.value, HANGING.record(word), entry.key.place)
    fabric = entries.fabric("fabric")
    if word == "corner pockets":
        square = entries.length("square", "corner pocket square", defaults.POCKET_SQUARE)
        return CornerPockets(fabric, square, entries.at) if fabric is not None and square is not None else MISSING
    depth = entries.length("cut depth", "sleeve cut depth", defaults.SLEEVE_DEPTH)
    extra = entries.length("cut extra", "sleeve extra", defaults.SLEEVE_EXTRA)
    hem = entries.length("hem", "sleeve hem", defaults.SLEEVE_HEM)
    drop = entries.length("drop", "sleeve drop", defaults.SLEEVE_DROP)
    if fabric is None or depth is None or extra is None or hem is None or drop is None:
        return MISSING
    return Sleeve(fabric, depth, extra, hem, drop, entries.at)


def _deciding_word(
    reader: Reader, mapping: Mapping, key: str, options: tuple[str, ...], noun: str, at: Place
) -> str | None:
    value = mapping.value(key)
    if value is None or is_none(value):
        message = f"the {noun} has no {key!r}"
        reader.report.add(codes.MISSING_KEY, at, message, f"add '{key}: {options[0]}' or '{key}: {options[1]}'")
        return None
    return read_choice(value, options, reader.report)


def _label(quantity: Quantity, key: str) -> tuple[Label, ...]:
    return (Label(quantity.place, f"`{key}` stands here"),) if quantity.place else ()


def _plural(word: str, number: int) -> str:
    return word if number == 1 else word + "s"
