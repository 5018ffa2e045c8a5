"""What two versions of the publisher itself make of the same text: open data of two sheets become words.

The two are never in one process, so that only what a sheet says to everybody is compared.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, TypeAlias

Sheet: TypeAlias = Mapping[str, Any]
"""A sheet as `sheet_as_json` gives it."""


@dataclass(frozen=True, slots=True)
class EngineChange:
    """One size of one pattern that the publisher computes otherwise, from the very same text."""

    pattern: str
    """Slug."""
    title: str
    name: str
    """Of the size."""
    edition: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class EngineReview:
    """Whether the publisher differs between two revisions, and what that does to the patterns of the older one."""

    words: str
    """That it differs, and with which one everything else was computed."""
    changes: tuple[EngineChange, ...] = ()
    failures: tuple[str, ...] = ()
    """What one of the two cannot compute, in words: nothing is known about what changes there."""
    compared: int = 0
    """Number of sheets that both computed; 0 when the older publisher was not asked."""

    @property
    def is_same(self) -> bool:
        """True when nothing was found to differ in what is computed."""
        return not self.changes and not self.failures


def compare_sheet_data(old: Sheet, new: Sheet) -> tuple[str, ...]:
    """Return in words every figure that differs between two sheets of one text.

    Raises ValueError when one of them is written in a form of its own, so that its fields cannot be compared.
    """
    if old.get("format") != new.get("format"):
        raise ValueError(f"the forms of the two sheets differ ({old.get('format')} and {new.get('format')})")
    return tuple(_differences(old, new))


def _differences(old: Sheet, new: Sheet) -> Iterator[str]:
    unit = new["unit"]
    was, now = (_size(sheet["finished"], unit) for sheet in (old, new))
    if was != now:
        yield f"finished size {was} → {now}"
    for before, after in _matched(old["cuts"], new["cuts"]):
        yield from _told(before, after, lambda cut: str(cut["label"]), lambda cut: _cut(cut, unit))
    for before, after in _matched(old["fabrics"], new["fabrics"]):
        yield from _told(before, after, lambda fabric: f"buy {fabric['name']}", lambda fabric: str(fabric["buy"]))
    sections = [{block["id"]: block.get("sections") for block in sheet["blocks"]} for sheet in (old, new)]
    for block in sections[1]:
        if block in sections[0] and sections[0][block] != sections[1][block]:
            yield f"the pieces of the block {block} are sewn in another order"
    steps = [[(step["id"], step["times"]) for step in sheet["steps"]] for sheet in (old, new)]
    if steps[0] != steps[1]:
        yield f"the steps are others: {len(steps[0])} → {len(steps[1])}"
    measured = [{one["step"]: _size(one, unit) for one in sheet["checkpoints"]} for sheet in (old, new)]
    moved = [step for step, size in measured[1].items() if measured[0].get(step, size) != size]
    if moved:
        yield f"what it measures after {len(moved)} step{'s' if len(moved) > 1 else ''}"


def _matched(
    old: list[dict[str, Any]], new: list[dict[str, Any]]
) -> Iterator[tuple[dict[str, Any] | None, dict[str, Any] | None]]:
    # A cut may come from two fabrics under one id.
    stood, stand = ({(one["id"], one.get("fabric")): one for one in side} for side in (old, new))
    for key in dict.fromkeys((*stood, *stand)):
        yield stood.get(key), stand.get(key)


def _told(before: dict[str, Any] | None, after: dict[str, Any] | None, name: Any, figures: Any) -> Iterator[str]:
    if before is None and after is not None:
        yield f"{name(after)} is new: {figures(after)}"
    elif after is None and before is not None:
        yield f"{name(before)} is gone (it was {figures(before)})"
    elif before is not None and after is not None and figures(before) != figures(after):
        yield f"{name(after)} {figures(before)} → {figures(after)}"


def _cut(cut: Mapping[str, Any], unit: str) -> str:
    return f"{cut['count']} of {_size(cut, unit)}"


def _size(sides: Mapping[str, Any], unit: str) -> str:
    return f"{sides['width']} × {sides['height']} {unit}"
