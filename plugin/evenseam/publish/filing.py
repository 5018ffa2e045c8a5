"""Under what a pattern is filed in the gallery."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.pattern import Method
from evenseam.sheet import PatternSheet
from evenseam.wording import Words

METHODS = {Method.FOUNDATION: "foundation", Method.ROTARY: "rotary"}
"""Where the language has the words for a method."""


def method_words(sheets: Iterable[PatternSheet], words: Words) -> tuple[str, ...]:
    """Return how the blocks that these sheets use are sewn, each method once."""
    methods = {block.method: None for sheet in sheets for block in sheet.project.blocks if _is_used(sheet, block.id)}
    return tuple(words.word("gallery", METHODS[method]) for method in methods)


def _is_used(sheet: PatternSheet, block: str) -> bool:
    return any(pieced.block == block for pieced in sheet.blocks)


def is_cut_from_fat_quarters(sheet: PatternSheet) -> bool:
    """Tell whether every planned fabric can be cut from fat quarters, a backing larger than one apart."""
    return bool(sheet.ways_to_buy) and all(ways.fat_quarters is not None for ways in sheet.ways_to_buy)
