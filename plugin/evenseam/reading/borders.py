"""Borders of a project: plain strips and blocks repeated."""

from __future__ import annotations

from evenseam.pattern import (
    Block,
    Border,
    BorderCorners,
    BorderOrder,
    PiecedBorder,
    Quantity,
    StripDirection,
    StripJoin,
)
from evenseam.problems import Label
from evenseam.reading import codes
from evenseam.reading.border_keys import BORDER, PIECED_BORDER
from evenseam.reading.entries import Entries, Reader, distinct, slug
from evenseam.reading.tree import Entry, Mapping, Scalar

_OF_STRIPS = ("width", "fabric", "order", "corners", "ease")
"""Keys that say something about plain strips only."""


def read_borders(reader: Reader, entry: Entry | None, blocks: tuple[Block, ...]) -> tuple[Border, ...] | None:
    """Return the borders, innermost first; None when one of them cannot be used."""
    if entry is None or not isinstance(entry.value, Mapping):
        return ()
    kept = distinct(entry.value.entries, "border", reader.report)
    borders = [_read_border(reader, inner, blocks) for inner in kept]
    return tuple(border for border in borders if border is not None) if None not in borders else None


def _read_border(reader: Reader, entry: Entry, blocks: tuple[Block, ...]) -> Border | None:
    if not isinstance(entry.value, Mapping):
        return None
    entries = Entries(reader, entry.value, BORDER, entry.key.place)
    pieced = entries.get("pieced")
    if pieced is not None:
        return _read_pieced(entries, pieced, entry, blocks)
    name = " ".join(entry.key.text.split())
    width = entries.length("width", f"{name} width")
    fabric = entries.fabric("fabric")
    order = entries.choice("order", BorderOrder.LONG_SIDES_FIRST.value)
    corners = entries.choice("corners", BorderCorners.BUTTED.value)
    corner_fabric = entries.fabric("corner fabric")
    ease, is_ease_wrong = _length(entries, "ease", f"ease of the {name}")
    join = entries.choice("join", StripJoin.DIAGONAL.value)
    strips = entries.choice("strips", StripDirection.EITHER.value)
    if (
        width is None or fabric is None or order is None or corners is None or join is None or strips is None
        or is_ease_wrong
    ):  # fmt: skip
        return None
    return Border(
        slug(name), name, width, fabric, BorderOrder(order), BorderCorners(corners), corner_fabric, StripJoin(join),
        StripDirection(strips), entry.key.place, ease=ease,
    )  # fmt: skip


def _read_pieced(outer: Entries, pieced: Entry, entry: Entry, blocks: tuple[Block, ...]) -> Border | None:
    """Return a border of blocks; its width is the height of its block."""
    name = " ".join(entry.key.text.split())
    is_clear = _is_clear(outer, pieced)
    inner = outer.inner("pieced", PIECED_BORDER)
    corner_fabric = outer.fabric("corner fabric")
    join = outer.choice("join", StripJoin.DIAGONAL.value)
    strips = outer.choice("strips", StripDirection.EITHER.value)
    if inner is None:
        return None
    id, corner = _block(inner, "block"), _block(inner, "corner block")
    spacer = inner.fabric("spacer")
    least, is_least_wrong = _length(inner, "least spacer", f"least spacer of the {name}")
    are_missing = _is_missing(inner, "corner block", corner) or _is_missing(inner, "spacer", spacer)
    has_corners = inner.get("corner block") is not None or outer.get("corner fabric") is not None
    if not has_corners:
        outer.reader.report.add(
            codes.MISSING_KEY, pieced.key.place, f"nothing is said about the corners of the {name}",
            "add 'corner block' here, or 'corner fabric' beside 'pieced' for plain squares",
        )  # fmt: skip
    block = next((block for block in blocks if block.id == id), None)
    if (
        block is None or join is None or strips is None or are_missing or is_least_wrong or not is_clear
        or not has_corners or (corner is None and corner_fabric is None)
    ):  # fmt: skip
        return None
    fabric = corner_fabric or spacer or block.pieces[0].fabric
    return Border(
        slug(name), name, block.height, fabric, BorderOrder.SIDES_FIRST, BorderCorners.BUTTED, corner_fabric,
        StripJoin(join), StripDirection(strips), entry.key.place,
        pieced=PiecedBorder(block.id, corner, spacer, least, pieced.key.place),
    )  # fmt: skip


def _is_clear(entries: Entries, pieced: Entry) -> bool:
    """Report keys of plain strips beside the key of blocks."""
    told = False
    for key in _OF_STRIPS:
        entry = entries.mapping.entry(key)
        if entry is not None:
            told = True
            entries.reader.report.add(
                codes.SAID_TWO_WAYS, entry.key.place, f"{key!r} is said of a border of blocks, which has none",
                f"take {key!r} out: the border is as wide as its blocks are high; or take 'pieced' out",
                (Label(pieced.key.place, "the blocks"),),
            )  # fmt: skip
    return not told


def _block(entries: Entries, key: str) -> str | None:
    node = entries.node(key)
    return entries.reader.block(node.text.strip(), node.place) if isinstance(node, Scalar) else None


def _is_missing(entries: Entries, key: str, value: str | None) -> bool:
    """Tell whether a key is there and its value could not be used."""
    return value is None and entries.mapping.entry(key) is not None and entries.get(key) is not None


def _length(entries: Entries, key: str, name: str) -> tuple[Quantity | None, bool]:
    """Return a length that may be left out, and whether it is there but could not be read."""
    value = entries.length(key, name)
    return value, value is None and entries.get(key) is not None
