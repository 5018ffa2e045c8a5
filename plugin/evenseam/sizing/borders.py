"""Borders round the centre, innermost first: which strips go on first, and how long all of them are."""

from __future__ import annotations

from evenseam.pattern import Border, BorderCorners, BorderOrder, Operand, Project, Quantity
from evenseam.problems import Report
from evenseam.sizing.ledger import Ledger, named_after
from evenseam.sizing.mitred import border_groups, is_mitred, size_mitred
from evenseam.sizing.pieced_border import size_pieced_border
from evenseam.sizing.sized_border import AnyBorder, SizedBorder

_SHORT_RULE = "as long as the raw edge they are sewn to"
_LONG_RULE = "the raw edge and across the strips of this border at either end; raw edges, so no seam allowance is added"
_PASSING_RULE = "the raw edge and across one strip: every strip passes one corner"
_SOURCE = "Another Lesson on Measuring Borders, Carole, From My Carolina Home, 2017"


def size_borders(
    project: Project, width: Quantity, height: Quantity, ledger: Ledger, report: Report
) -> tuple[AnyBorder, ...]:
    """Work out the borders round a centre of this raw size, innermost first; enter every figure."""
    seam = project.seam_allowance
    sized: list[AnyBorder] = []
    for group in border_groups(project):
        if is_mitred(group[0]):
            sized += size_mitred(group, width, height, seam, ledger)
        elif group[0].pieced is not None:
            sized.append(size_pieced_border(project, group[0], group[0].pieced, width, height, ledger, report))
        else:
            sized.append(_size_border(group[0], width, height, seam, ledger))
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
    new_width, new_height = width + 2 * finished, height + 2 * finished
    lengths: dict[str, tuple[Operand, str]] = {"side": (height, _SHORT_RULE), "top": (width, _SHORT_RULE)}
    if border.corners is BorderCorners.BUTTED:
        long = "top" if sides_first else "side"
        lengths[long] = (new_width if sides_first else new_height, _LONG_RULE)
    if border.corners is BorderCorners.PARTIAL_SEAM:
        lengths = {
            "side": (height + finished, _PASSING_RULE),
            "top": (width + finished, _PASSING_RULE),
        }
    source = "common practice" if border.corners is BorderCorners.PARTIAL_SEAM else _SOURCE
    side_length, top_length = (
        ledger.work_out(
            f"{name}_{which}_strip_length", lengths[which][0], label=f"{called} strips of the {words}",
            rule=lengths[which][1], source=source,
        )
        for which, called in (("side", "side"), ("top", "top and bottom"))
    )  # fmt: skip
    return SizedBorder(
        border, sides_first, width, height, strip, side_length, top_length,
        ledger.work_out(f"width_with_{name}", new_width, label=f"unfinished width with the {words}"),
        ledger.work_out(f"height_with_{name}", new_height, label=f"unfinished height with the {words}"),
    )  # fmt: skip
