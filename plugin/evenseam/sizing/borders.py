"""Borders round the centre, innermost first: which strips go on first, and how long all of them are."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.pattern import Border, BorderCorners, BorderOrder, Quantity
from evenseam.sizing.ledger import Ledger, named_after

_SHORT_RULE = "as long as the raw edge they are sewn to"
_LONG_RULE = "the raw edge and across the strips of this border at either end; raw edges, so no seam allowance is added"
_SOURCE = "Another Lesson on Measuring Borders, Carole, From My Carolina Home, 2017"


@dataclass(frozen=True, slots=True)
class SizedBorder:
    """One border with its figures."""

    border: Border
    sides_first: bool
    """True when the left and right strips go on before the top and bottom ones."""
    inside_width: Quantity
    """Raw edge to raw edge, before this border."""
    inside_height: Quantity
    strip_width: Quantity
    """Cut width."""
    side_length: Quantity
    """Cut length of the left and right strips, without their cornerstones."""
    top_length: Quantity
    """Cut length of the top and bottom strips, without their cornerstones."""
    width: Quantity
    """Raw edge to raw edge, with this border."""
    height: Quantity


def size_borders(
    borders: tuple[Border, ...], width: Quantity, height: Quantity, seam: Quantity, ledger: Ledger
) -> tuple[SizedBorder, ...]:
    """Work out the borders round a centre of this raw size, innermost first; enter every figure."""
    sized: list[SizedBorder] = []
    for border in borders:
        sized.append(_size_border(border, width, height, seam, ledger))
        width, height = sized[-1].width, sized[-1].height
    return tuple(sized)


def sides_go_first(order: BorderOrder, width: Quantity, height: Quantity) -> bool:
    """Tell which strips are sewn on first; a square centre counts its left and right edges as the long ones."""
    match order:
        case BorderOrder.SIDES_FIRST:
            return True
        case BorderOrder.TOP_AND_BOTTOM_FIRST:
            return False
        case BorderOrder.LONG_SIDES_FIRST:
            return height.value >= width.value
        case BorderOrder.SHORT_SIDES_FIRST:
            return height.value < width.value


def _size_border(border: Border, width: Quantity, height: Quantity, seam: Quantity, ledger: Ledger) -> SizedBorder:
    name, words = named_after(border.id, "border"), border.name
    sides_first = sides_go_first(border.order, width, height)
    finished = ledger.enter(f"{name}_width", border.width)
    strip = ledger.work_out(f"{name}_strip_width", finished + 2 * seam, label=f"cut width of the {words}")
    butted = border.corners is BorderCorners.BUTTED
    new_width, new_height = width + 2 * finished, height + 2 * finished
    side_length = ledger.work_out(
        f"{name}_side_strip_length", new_height if butted and not sides_first else height,
        label=f"side strips of the {words}", rule=_LONG_RULE if butted and not sides_first else _SHORT_RULE,
        source=_SOURCE,
    )  # fmt: skip
    top_length = ledger.work_out(
        f"{name}_top_strip_length", new_width if butted and sides_first else width,
        label=f"top and bottom strips of the {words}", rule=_LONG_RULE if butted and sides_first else _SHORT_RULE,
        source=_SOURCE,
    )  # fmt: skip
    return SizedBorder(
        border, sides_first, width, height, strip, side_length, top_length,
        ledger.work_out(f"width_with_{name}", new_width, label=f"unfinished width with the {words}"),
        ledger.work_out(f"height_with_{name}", new_height, label=f"unfinished height with the {words}"),
    )  # fmt: skip
