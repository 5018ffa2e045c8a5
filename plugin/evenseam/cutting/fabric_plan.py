"""From the cuts of one fabric to its cutting plan and what to buy."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from evenseam.cutting.codes import USABLE_WIDTH_NOT_POSITIVE
from evenseam.cutting.joining import to_spare
from evenseam.cutting.lines import alike_cuts, cutting_lines
from evenseam.cutting.merging import Merged, Slot, Strip
from evenseam.cutting.placing import place_across, place_section
from evenseam.cutting.plan import BiasSquares, CuttingPlan, JoinedPieces, Material, PlannedStrip
from evenseam.cutting.request import FabricRequest, Request
from evenseam.cutting.requesting import rectangles, request_fabric
from evenseam.cutting.scale import Scale
from evenseam.cutting.search import MOST_STEPS, simple_bound
from evenseam.cutting.sections import STEPS_OF_A_TRIAL, Column, Layout, below, lay_out
from evenseam.cutting.where import place_of
from evenseam.cutting.yardage import longest_for_less, needed_length, shop_length, shop_step, squaring_up
from evenseam.exact import Direction, Number, Rounding
from evenseam.pattern import Cut, Fabric, Project, Quantity, derived
from evenseam.problems import Report


def plan_fabric(
    fabric: Fabric, cuts: tuple[Cut, ...], project: Project, report: Report, steps: int = MOST_STEPS
) -> Material | None:
    """Return one fabric's line of the materials list; None, and problems, when something cannot be cut.

    `steps` limits the effort of the search; a plan is found with any.
    """
    asked = _asked(cuts, project, report)
    if asked is None:
        return None
    asked, layout = _laid_out(asked, cuts, project, steps)
    plan = _as_plan(fabric, asked, project.usable_width, layout, cuts, project)
    return _as_material(fabric, plan, project)


@dataclass(frozen=True, slots=True)
class Cheaper:
    """What was found by looking for a plan that costs less than what is known."""

    material: Material | None
    """None when there is no such plan."""
    lower_bound: Number
    """No two-stage plan can be shorter."""


def plan_cheaper(
    fabric: Fabric,
    cuts: tuple[Cut, ...],
    project: Project,
    report: Report,
    known: Quantity | None = None,
    steps: int = MOST_STEPS,
) -> Cheaper | None:
    """Look for a plan for which less has to be bought; None, and problems, when something cannot be cut.

    A plan is searched no further than to where a shorter one would cost as much; `known` is the length of another.
    """
    asked = _asked(cuts, project, report)
    if asked is None:
        return None
    limit = None
    if known is not None:
        squared_up = squaring_up(project.unit).value
        limit = _as_dear_from(asked.scale, project)(asked.scale.whole(known.value - squared_up))
        everything = Merged.of(asked.requests, [request.count for request in asked.requests], asked.width)
        bound = simple_bound(everything.demands, asked.width)
        if bound >= limit:
            return Cheaper(None, asked.scale.length(bound) + squared_up)
    asked, layout = _laid_out(asked, cuts, project, steps, is_for_buying=True, limit=limit)
    plan = _as_plan(fabric, asked, project.usable_width, layout, cuts, project)
    if limit is not None and layout.height >= limit:
        return Cheaper(None, plan.lower_bound)
    return Cheaper(_as_material(fabric, plan, project), plan.lower_bound)


def _as_material(fabric: Fabric, plan: CuttingPlan, project: Project) -> Material:
    buy = shop_length(fabric.name, plan.length, shop_step(project))
    return Material(fabric.id, fabric.name, plan.length, buy, None, plan)


def _asked(cuts: tuple[Cut, ...], project: Project, report: Report) -> FabricRequest | None:
    """Return what is asked of a fabric; None, and problems, when something cannot be cut."""
    own, usable_width = Report(), project.usable_width
    if usable_width.value <= 0:
        own.add(
            USABLE_WIDTH_NOT_POSITIVE,
            place_of(usable_width),
            f"usable width is {usable_width.text}",
            "write the width between the selvages, such as 42 in",
        )
        report.problems += own.problems
        return None
    asked = request_fabric(cuts, project, usable_width, own)
    report.problems += own.problems
    return None if own.has_errors() or not asked.requests else asked


def _as_dear_from(scale: Scale, project: Project) -> Callable[[int], int]:
    """Return what names the least length, in steps, for which the shop sells as much as for another."""
    step = shop_step(project)

    def as_dear_from(height: int) -> int:
        return scale.below(longest_for_less(scale.length(height), project.unit, step)) + 1

    return as_dear_from


def _laid_out(
    asked: FabricRequest,
    cuts: tuple[Cut, ...],
    project: Project,
    steps: int,
    *,
    is_for_buying: bool = False,
    limit: int | None = None,
) -> tuple[FabricRequest, Layout]:
    """Return the best plan found, and what was asked for it: joined strips may be cut in shorter lengths."""
    as_dear_from = _as_dear_from(asked.scale, project)
    useful: Callable[[int], int] = as_dear_from if is_for_buying else int
    as_good_from = useful if limit is None else below(limit, useful)
    layout = lay_out(asked.requests, asked.width, as_dear_from, steps, as_good_from)
    for shorter in _shorter_lengths(layout, asked):
        again = request_fabric(cuts, project, project.usable_width, Report(), shorter)
        # More joins are worth sewing only if less has to be bought.
        dear = as_dear_from(layout.height)
        other = lay_out(again.requests, again.width, as_dear_from, min(steps, STEPS_OF_A_TRIAL), below(dear, useful))
        if other.height < dear:
            asked, layout = again, replace(other, bound=min(layout.bound, other.height))
    return asked, layout


def _shorter_lengths(layout: Layout, asked: FabricRequest) -> Iterator[dict[str, int]]:
    """Name joined strips whose lengths could be cut beside the lengthwise strips of a section, one at a time."""
    rooms = {asked.width - section.used for section in layout.sections}
    room = max(rooms, default=0)
    # Less than half the width would mean more than twice the joins.
    if 2 * room >= asked.width > room:
        for strip in asked.joined:
            if not strip.panels and strip.lengths > 1:
                yield {strip.name: room}


def _as_plan(
    fabric: Fabric, asked: FabricRequest, usable_width: Quantity, layout: Layout, cuts: Sequence[Cut], project: Project
) -> CuttingPlan:
    strips: list[PlannedStrip] = []
    y = 0
    for number, section in enumerate(layout.sections, start=1):
        strips += (replace(strip, section=number) for strip in place_section(section, asked, y))
        y += section.height
    ordered = sorted(layout.strips, key=lambda strip: _cutting_order(strip, asked.requests))
    for strip in ordered:
        strips.append(place_across(strip, asked, 0, y, asked.width))
        y += strip.height
    by_id = {cut.id: cut for cut in cuts}
    alike = alike_cuts(strips, by_id)
    length = needed_length(fabric.name, _strip_widths(layout, ordered, asked), project.unit)
    bound = asked.scale.length(layout.bound) + squaring_up(project.unit).value
    return CuttingPlan(
        fabric.id,
        usable_width,
        tuple(strips),
        cutting_lines(strips, by_id, asked.scale.length(asked.width), alike),
        tuple(joined_pieces(asked)),
        length,
        bound,
        length.value == bound,
        tuple(asked.scale.length(section.height) for section in layout.sections),
        bias_squares(asked),
        alike,
    )


def _cutting_order(strip: Strip, requests: Sequence[Request]) -> tuple[object, ...]:
    """Joined strips first, so that a slip still leaves cloth to cut them from; then the widest strips."""
    first = strip.slots[0]
    is_joined = requests[first.request].is_length
    content = tuple((slot.request, -slot.lie.across, -slot.count) for slot in strip.slots)
    return not is_joined, -strip.height, content[0][0], -first.lie.across if is_joined else 0, content


def _strip_widths(layout: Layout, ordered: Sequence[Strip], asked: FabricRequest) -> list[tuple[Quantity, int]]:
    """Return the figures whose sum is the length: each section's longest piece, each strip's width, equal ones once."""
    found: list[Quantity] = []
    for section in layout.sections:
        column = max(section.columns, key=_own_length)
        found += [_along(slot, asked) for slot in column.pieces[: column.own]]
    for strip in ordered:
        highest = max(strip.slots, key=lambda slot: slot.lie.along)
        found.append(_along(highest, asked))
    counts: dict[object, tuple[Quantity, int]] = {}
    for quantity in found:
        known, count = counts.get(quantity.value, (quantity, 0))
        counts[quantity.value] = (known, count + 1)
    return list(counts.values())


def _along(slot: Slot, asked: FabricRequest) -> Quantity:
    """Return the figure of a piece's side along the cloth, on the marks the plan is made on."""
    quantity = asked.requests[slot.request].along(slot.lie)
    planned = asked.scale.length(slot.lie.along)
    if quantity.value == planned:
        return quantity
    marks = Rounding("what a ruler can be set to", asked.scale.length(1), Direction.UP)
    return derived(f"strip for {quantity.name}", quantity, rounding=marks)


def _own_length(column: Column) -> int:
    return sum(slot.lie.along for slot in column.pieces[: column.own])


def bias_squares(asked: FabricRequest) -> tuple[BiasSquares, ...]:
    """Return the squares for bias bindings."""
    return tuple(BiasSquares(one.cut.id, one.side, one.squares) for one in asked.bias)


def joined_pieces(asked: FabricRequest) -> Iterator[JoinedPieces]:
    """Return what is joined, cut by cut."""
    for strip in asked.joined:
        for cut in strip.cuts:
            total = (
                cut.height if (strip.is_turned if strip.panels else cut.height.value > cut.width.value) else cut.width
            )
            spare = None if strip.panels else to_spare(cut)
            yield JoinedPieces(
                cut.id, rectangles(cut), strip.lengths, strip.join, total, strip.name, strip.panels, spare
            )
