"""The cuts of rows of unequal blocks: their spacers, and the sashing within and between the rows."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from evenseam.exact import Number, Unit
from evenseam.pattern import Assumed, Cut, CutShape, Quantity, StripJoin, derived
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.unequal_rows import Sash, SizedRow, SizedSpacer, sized_rows

SASH_UPRIGHT = "sashing-vertical"
SASH_BETWEEN_ROWS = "sashing-horizontal"


def unequal_cuts(sized: SizedProject) -> list[Cut]:
    """Return the cuts of what stands in the rows beside the blocks, and lies between the rows; equal ones together."""
    return [*_strips(sized, SizedSpacer), *_strips(sized, Sash), *_between_rows(sized)]


def strip_id(rows: tuple[SizedRow, ...], strip: SizedSpacer | Sash, height: Quantity) -> str:
    """Return the cut id of a spacer or of an upright strip of sashing: equal ones are one cut."""
    kinds = list(dict.fromkeys(_key(part, row.height) for row, part in _all(rows, type(strip))))
    stem = SASH_UPRIGHT if isinstance(strip, Sash) else "spacers"
    return stem if len(kinds) == 1 else f"{stem}-{kinds.index(_key(strip, height)) + 1}"


def _all(rows: tuple[SizedRow, ...], kind: type[SizedSpacer | Sash]) -> Iterator[tuple[SizedRow, SizedSpacer | Sash]]:
    for row in rows:
        for part in row.parts:
            if isinstance(part, (SizedSpacer, Sash)) and isinstance(part, kind):
                yield row, part


def _key(strip: SizedSpacer | Sash, height: Quantity) -> tuple[str, object, object]:
    return strip.fabric, strip.width.value, height.value


def _strips(sized: SizedProject, kind: type[SizedSpacer | Sash]) -> Iterator[Cut]:
    seam, rows = sized.project.seam_allowance, sized_rows(sized)
    found: dict[str, tuple[SizedSpacer | Sash, Quantity, list[int]]] = {}
    for row, part in _all(rows, kind):
        number = next(place for place, other in enumerate(rows, start=1) if other is row)
        found.setdefault(strip_id(rows, part, row.height), (part, row.height, []))[2].append(number)
    for id, (strip, height, numbers) in found.items():
        alike = {other.width.value for other, _, rows_of in found.values() if other.fabric == strip.fabric
                 and {*rows_of} & {*numbers}}  # fmt: skip
        label = f"{_named(strip, sorted(alike))} of {_listed(numbers)}"
        width = derived(f"cut width of the {label}", strip.width + 2 * seam)
        length = derived(f"cut length of the {label}", height + 2 * seam, rule="as long as the unfinished row is high")
        yield Cut(
            id, label, strip.fabric, CutShape.STRIP, width, length, _number(label, len(numbers)),
            "sashing" if isinstance(strip, Sash) else "spacer", sized.project.fabric(strip.fabric).is_directional,
        )  # fmt: skip


def _named(strip: SizedSpacer | Sash, widths: list[Number]) -> str:
    """Return what a maker calls a strip; `widths` are those of all strips of the same rows and fabric."""
    if isinstance(strip, Sash):
        return "vertical sashing strips"
    place, number = widths.index(strip.width.value), len(widths)
    if number > 3:
        return f"spacers no. {place + 1}"
    told = {(0, 2): "narrow ", (1, 2): "wide ", (0, 3): "narrow ", (1, 3): "middle ", (2, 3): "wide "}
    return f"{told.get((place, number), '')}spacers"


def _listed(numbers: list[int]) -> str:
    distinct = [str(number) for number in dict.fromkeys(numbers)]
    return f"row {distinct[0]}" if len(distinct) == 1 else f"rows {', '.join(distinct[:-1])} and {distinct[-1]}"


def _between_rows(sized: SizedProject) -> Iterator[Cut]:
    known, sashing = dict(sized.figures), sized.project.arrangement.sashing
    if sashing is None or "sashing_strip_count" not in known:
        return
    is_upright = sized.project.fabric(sashing.fabric).is_directional
    # A diagonal join shows less, but it would set a directional print askew.
    join = StripJoin.STRAIGHT if is_upright else StripJoin.DIAGONAL
    yield Cut(
        SASH_BETWEEN_ROWS, "long horizontal sashing strips", sashing.fabric, CutShape.STRIP,
        known["sashing_strip_length"], known["sashing_strip_width"], known["sashing_strip_count"], "sashing",
        is_upright, join,
    )  # fmt: skip


def _number(what: str, number: int) -> Quantity:
    return Quantity(f"number of {what}", Fraction(number), Unit.COUNT, Assumed("they lie in the rows", "counted"))
