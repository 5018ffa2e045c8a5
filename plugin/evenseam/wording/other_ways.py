"""The same fabrics bought otherwise, in words: other widths, fat quarters, borders and backing cut another way."""

from __future__ import annotations

from evenseam.cutting import AlternativeKind, WaysToBuy, cloth_piece
from evenseam.pattern import Quantity
from evenseam.wording.document import Block, Heading, Text
from evenseam.wording.scribe import Scribe

_KINDS = {
    AlternativeKind.UNPIECED_BORDERS: "unpieced",
    AlternativeKind.JOINED_BORDERS: "joined",
    AlternativeKind.WIDE_BACKING: "wide",
}


def other_ways(scribe: Scribe) -> tuple[Block, ...]:
    """Return a table of fabric by width and in fat quarters, and what else there is to choose."""
    sheet = scribe.sheet
    if not sheet.ways_to_buy:
        return ()
    widths = _widths(sheet.ways_to_buy)
    quarter = cloth_piece("fat quarter", sheet.project.unit)
    values = {
        "widths": widths,
        "rows": [_row(scribe, ways, widths) for ways in sheet.ways_to_buy],
        "has_fat_quarters": any(ways.fat_quarters for ways in sheet.ways_to_buy),
        "quarter_width": quarter.height,
        "quarter_height": quarter.width,
        "others": [
            {
                "kind": _KINDS[other.kind],
                "fabric": material.name,
                "buy": other.buy,
                "planned": material.buy,
                "width": other.usable_width,
            }
            for material in sheet.materials
            for other in material.alternatives
        ],
    }
    title = Heading(3, "other-ways", (Text(scribe.language.word("headings", "other_ways")),))
    return (title, *scribe.blocks("sections/other_ways", values))


def _widths(ways_to_buy: tuple[WaysToBuy, ...]) -> list[Quantity]:
    known = {at.usable_width.value: at.usable_width for ways in ways_to_buy for at in ways.widths}
    return [known[value] for value in sorted(known)]


def _row(scribe: Scribe, ways: WaysToBuy, widths: list[Quantity]) -> dict[str, object]:
    buys = {at.usable_width.value: at.buy for at in ways.widths}
    return {
        "name": scribe.sheet.project.fabric(ways.material).name,
        "buys": [buys.get(width.value) for width in widths],
        "fat_quarters": ways.fat_quarters,
        "is_without_backing": ways.is_without_backing,
    }
