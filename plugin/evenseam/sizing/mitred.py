"""Mitred borders: which are sewn as one, and how long their strips are cut."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, Border, BorderCorners, Expression, Project, Quantity
from evenseam.sizing.ledger import Ledger, named_after
from evenseam.sizing.sized_border import SizedBorder

_RULE = (
    "the raw edge the strips are sewn to, the finished width of the mitred borders at either end, and some ease that "
    "is cut off with the corner"
)
_SOURCE = "Mitered borders, QuiltingHub; Calculating required border lengths, quiltingboard"
_EASE = {Unit.INCH: Fraction(4), Unit.CENTIMETRE: Fraction(10)}
_EASE_REASON = "to hold the corner by while it is sewn; published figures run from 1 in to 10 in"


def border_groups(project: Project) -> tuple[tuple[Border, ...], ...]:
    """Return the borders in the groups they are sewn on in, innermost first.

    Mitred borders that follow each other are one group: joined lengthwise and mitred as one. A border whose print has
    an up is a group by itself, because a joined strip is turned half round for the opposite edge.
    """
    groups: list[tuple[Border, ...]] = []
    for border in project.borders:
        if groups and _may_join(groups[-1][-1], project) and _may_join(border, project):
            groups[-1] = (*groups[-1], border)
        else:
            groups.append((border,))
    return tuple(groups)


def is_mitred(border: Border) -> bool:
    """Tell whether a border of plain strips has mitred corners."""
    return border.pieced is None and border.corners is BorderCorners.MITRED


def size_mitred(
    group: tuple[Border, ...], width: Quantity, height: Quantity, seam: Quantity, ledger: Ledger
) -> list[SizedBorder]:
    """Work out borders that are mitred as one round a centre of this raw size; enter every figure."""
    whole, ease = _whole_width(group, ledger), _ease(group, ledger)
    first = named_after(group[0].id, "border")
    ledger.enter(f"{first}_inside_width", width)
    ledger.enter(f"{first}_inside_height", height)
    side: Expression = height + 2 * whole + ease
    top: Expression = width + 2 * whole + ease
    sized: list[SizedBorder] = []
    for border in group:
        name, words = named_after(border.id, "border"), border.name
        finished = ledger.enter(f"{name}_width", border.width)
        strip = ledger.work_out(f"{name}_strip_width", finished + 2 * seam, label=f"cut width of the {words}")
        side_length = ledger.work_out(
            f"{name}_side_strip_length", side, label=f"side strips of the {words}", rule=_RULE, source=_SOURCE
        )
        top_length = ledger.work_out(
            f"{name}_top_strip_length", top, label=f"top and bottom strips of the {words}", rule=_RULE, source=_SOURCE
        )
        sized.append(
            SizedBorder(
                border, True, width, height, strip, side_length, top_length,
                ledger.work_out(
                    f"width_with_{name}", width + 2 * finished, label=f"unfinished width with the {words}"
                ),
                ledger.work_out(
                    f"height_with_{name}", height + 2 * finished, label=f"unfinished height with the {words}"
                ),
            )
        )  # fmt: skip
        width, height = sized[-1].width, sized[-1].height
    return sized


def _may_join(border: Border, project: Project) -> bool:
    return is_mitred(border) and not project.fabric(border.fabric).is_directional


def _whole_width(group: tuple[Border, ...], ledger: Ledger) -> Quantity:
    if len(group) == 1:
        return group[0].width
    total = group[0].width + group[1].width
    for border in group[2:]:
        total = total + border.width
    name = named_after(group[-1].id, "border")
    return ledger.work_out(f"{name}_mitred_width", total, label="finished width of the borders that are mitred as one")


def _ease(group: tuple[Border, ...], ledger: Ledger) -> Quantity:
    """Return the largest ease given for a border of the group, or the usual one."""
    given = [border.ease for border in group if border.ease is not None]
    unit = group[0].width.unit
    ease = max(given, key=lambda ease: ease.value) if given else None
    if ease is None:
        ease = Quantity("ease of the mitred strips", _EASE[unit], unit, Assumed(_EASE_REASON))
    return ledger.enter(f"{named_after(group[-1].id, 'border')}_mitre_ease", ease)
