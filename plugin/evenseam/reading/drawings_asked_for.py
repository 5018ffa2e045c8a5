"""The drawings a pattern file asks for, each looked at by itself on the grid the file gives it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from collections.abc import Mapping as MappingOf

from evenseam.problems import SourceText
from evenseam.reading.compose import parse_tree
from evenseam.reading.drawing_look import DrawingLook, look_at_drawing
from evenseam.reading.hexagons import HEXAGON
from evenseam.reading.tree import Mapping, Node, Scalar


def look_at_drawings(
    pattern: SourceText, drawings: MappingOf[str, SourceText], wanted: Iterable[str]
) -> dict[str, DrawingLook]:
    """Return what is seen of the wanted drawings, by the name their text is known by.

    `drawings` are the texts by file name, beside the pattern file. A drawing that no block asks for, or of which
    nothing can be seen, is left out. Nothing is reported: that was done when the pattern was read.
    """
    names = set(wanted)
    found: dict[str, DrawingLook] = {}
    for block in _blocks(parse_tree(pattern).value):
        said = {key: _text(block, key) for key in ("drawing", "grid", "shape")}
        text = drawings.get(said["drawing"])
        if text is None or text.name not in names or text.name in found:
            continue
        look = look_at_drawing(text, said["grid"], is_hexagon=said["shape"] == HEXAGON).value
        if look is not None:
            found[text.name] = look
    return found


def _blocks(tree: Node | None) -> Iterator[Mapping]:
    """Yield every block with a drawing: those of the pattern, then those that sizes draw anew."""
    if not isinstance(tree, Mapping):
        return
    sizes = tree.entry("sizes")
    tables = [tree, *(_mappings(sizes.value) if sizes else ())]
    for table in tables:
        blocks = table.entry("blocks")
        if blocks is not None:
            yield from (block for block in _mappings(blocks.value) if _text(block, "drawing"))


def _mappings(node: Node) -> list[Mapping]:
    if not isinstance(node, Mapping):
        return []
    return [entry.value for entry in node.entries if isinstance(entry.value, Mapping)]


def _text(block: Mapping, key: str) -> str:
    entry = block.entry(key)
    return entry.value.text.strip() if entry is not None and isinstance(entry.value, Scalar) else ""
