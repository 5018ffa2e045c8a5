"""Two lists of unequal rows become what was decided otherwise about their spacers."""

from __future__ import annotations

from collections.abc import Iterator

from evenseam.pattern import BlockPosition, Project, Spacer, UnequalRow
from evenseam.review.changes import PartCause


def spacer_causes(old: Project, new: Project, fabrics: dict[str, str]) -> Iterator[PartCause]:
    """Yield one cause for every row whose spacers differ, other than in a stated width, which is a figure.

    Both have rows of unequal blocks, and as many of them; `fabrics` gives new ids by old ones.
    """
    rows = zip(old.arrangement.unequal_rows, new.arrangement.unequal_rows, strict=True)
    for number, (before, after) in enumerate(rows, start=1):
        places = (before.place or old.arrangement.place, after.place or new.arrangement.place)
        cloth = ([fabrics.get(spacer.fabric, spacer.fabric) for spacer in _spacers(before)],
                 [spacer.fabric for spacer in _spacers(after)])  # fmt: skip
        if _laid(before) == _laid(after):
            if cloth[0] != cloth[1]:
                texts = (_cloth(old, before), _cloth(new, after))
                yield PartCause("layout", f"spacers of row {number}", "fabric", *texts, *places)
            continue
        told = (_told(before), _told(after))
        if told[0] != told[1]:
            yield PartCause("layout", f"row {number}", "spacers", *told, *places)
        elif _blocks(before) == _blocks(after):
            yield PartCause("layout", f"spacers of row {number}", "spacer places", "there", "elsewhere", *places)


def _spacers(row: UnequalRow) -> tuple[Spacer, ...]:
    return tuple(part for part in row.parts if isinstance(part, Spacer))


def _blocks(row: UnequalRow) -> tuple[BlockPosition, ...]:
    return tuple(part for part in row.parts if isinstance(part, BlockPosition))


def _laid(row: UnequalRow) -> tuple[str, ...]:
    """Return where blocks and spacers stand in a row, and which spacers have a width of their own."""
    kinds = {True: "spacer of a width", False: "spacer"}
    return tuple("block" if isinstance(part, BlockPosition) else kinds[part.width is not None] for part in row.parts)


def _told(row: UnequalRow) -> str:
    spacers = _spacers(row)
    stated = sum(spacer.width is not None for spacer in spacers)
    if not spacers:
        return "no spacers"
    if len(spacers) == 1:
        return "1 spacer of a stated width" if stated else "1 spacer"
    return f"{len(spacers)} spacers" + (f", {stated} of them of a stated width" if stated else "")


def _cloth(project: Project, row: UnequalRow) -> str:
    names = dict.fromkeys(project.fabric(spacer.fabric).name for spacer in _spacers(row))
    return " and ".join(names)
