"""From a cut list to a line of the materials list for each fabric, each with its cutting plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from evenseam.cutting.batting import batting_material
from evenseam.cutting.codes import USABLE_WIDTH_NOT_POSITIVE
from evenseam.cutting.lines import cutting_lines
from evenseam.cutting.plan import BiasSquares, CuttingPlan, JoinedPieces, Material, PlannedPiece, PlannedStrip
from evenseam.cutting.request import FabricRequest, Request
from evenseam.cutting.requesting import rectangles, request_fabric
from evenseam.cutting.scale import Scale
from evenseam.cutting.sections import Column, Layout, Section, Strip, lay_out
from evenseam.cutting.where import place_of
from evenseam.cutting.yardage import needed_length, shop_length, squaring_up
from evenseam.pattern import BATTING, Cut, CutList, Fabric, Project, Quantity, StripDirection
from evenseam.problems import Outcome, Report


def plan_cutting(cuts: CutList, project: Project) -> Outcome[tuple[Material, ...]]:
    """Return one material for each fabric that is cut, in the project's order, then batting.

    Lengths are in the project's unit. A fabric with a piece that cannot be cut is reported and left out; the others
    are still planned.
    """
    report = Report()
    materials: list[Material] = []
    for fabric in project.fabrics:
        asked = cuts.of(fabric.id)
        material = _plan_fabric(fabric, asked, project, project.usable_width, report) if asked else None
        if material is not None:
            materials.append(material)
    if cuts.of(BATTING):
        materials.append(batting_material(cuts.of(BATTING), project))
    return Outcome(tuple(materials), report.as_tuple())


def _plan_fabric(
    fabric: Fabric, cuts: tuple[Cut, ...], project: Project, usable_width: Quantity, report: Report
) -> Material | None:
    own = Report()
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
    if own.has_errors() or not asked.requests:
        return None
    plan = _as_plan(fabric, asked, usable_width, lay_out(asked.requests, asked.width), cuts, project)
    return Material(fabric.id, fabric.name, plan.length, shop_length(fabric.name, plan.length), None, plan)


def _as_plan(
    fabric: Fabric, asked: FabricRequest, usable_width: Quantity, layout: Layout, cuts: Sequence[Cut], project: Project
) -> CuttingPlan:
    strips: list[PlannedStrip] = []
    y = 0
    for number, section in enumerate(layout.sections, start=1):
        strips += (replace(strip, section=number) for strip in _section_strips(section, asked, y))
        y += section.height
    ordered = sorted(layout.strips, key=lambda strip: _cutting_order(strip, asked.requests))
    for strip in ordered:
        strips.append(_across(strip, asked, 0, y, asked.width))
        y += strip.height
    length = needed_length(fabric.name, _strip_widths(layout, ordered, asked), project.unit)
    bound = asked.scale.length(layout.bound) + squaring_up(project.unit).value
    return CuttingPlan(
        fabric.id,
        usable_width,
        tuple(strips),
        cutting_lines(strips, {cut.id: cut for cut in cuts}, asked.scale.length(asked.width)),
        tuple(_joined(asked)),
        length,
        bound,
        length.value == bound,
        tuple(asked.scale.length(section.height) for section in layout.sections),
        tuple(BiasSquares(one.cut.id, one.side, one.squares) for one in asked.bias),
    )


def _cutting_order(strip: Strip, requests: Sequence[Request]) -> tuple[object, ...]:
    """Longest pieces first, so that a slip still leaves cloth to cut them from; then the widest strips."""
    longest = max(slot.lie.across for slot in strip.slots)
    has_lengths = any(requests[slot.request].is_length for slot in strip.slots)
    content = tuple((slot.request, -slot.lie.across, -slot.count) for slot in strip.slots)
    return not has_lengths, -strip.height, content[0][0] if has_lengths else 0, -longest if has_lengths else 0, content


def _across(strip: Strip, asked: FabricRequest, x: int, y: int, end: int) -> PlannedStrip:
    scale = asked.scale
    pieces: list[PlannedPiece] = []
    only = strip.slots[0] if len(strip.slots) == 1 and strip.slots[0].count == 1 else None
    left = x
    for slot in strip.slots:
        request = asked.requests[slot.request]
        # A length that has its strip to itself is left as long as the cloth is wide: one cut less.
        is_whole = request.is_length and slot is only and request.side is None and request.cut.part != "backing"
        across = end - x if is_whole else slot.lie.across
        for _ in range(slot.count):
            pieces.append(_piece(request, scale, left, y, across, slot.lie.along, slot.lie.is_turned))
            left += across
    return PlannedStrip(
        StripDirection.ACROSS,
        scale.length(x),
        scale.length(y),
        scale.length(end - x),
        scale.length(strip.height),
        tuple(pieces),
    )


def _piece(request: Request, scale: Scale, x: int, y: int, across: int, along: int, is_turned: bool) -> PlannedPiece:
    return PlannedPiece(
        request.cut.id,
        scale.length(x),
        scale.length(y),
        scale.length(across),
        scale.length(along),
        is_turned,
        request.is_length,
    )


def _section_strips(section: Section, asked: FabricRequest, y: int) -> Iterator[PlannedStrip]:
    scale, x = asked.scale, 0
    for column in section.columns:
        pieces: list[PlannedPiece] = []
        top = y
        for slot in column.pieces:
            lie = slot.lie
            pieces.append(_piece(asked.requests[slot.request], scale, x, top, lie.across, lie.along, lie.is_turned))
            top += lie.along
        yield PlannedStrip(
            StripDirection.ALONG,
            scale.length(x),
            scale.length(y),
            scale.length(column.width),
            scale.length(section.height),
            tuple(pieces),
        )
        x += column.width
    top = y
    for strip in section.beside:
        yield _across(strip, asked, x, top, asked.width)
        top += strip.height


def _strip_widths(layout: Layout, ordered: Sequence[Strip], asked: FabricRequest) -> list[tuple[Quantity, int]]:
    """Return the figures whose sum is the length: each section's longest piece, each strip's width, equal ones once."""
    found: list[Quantity] = []
    for section in layout.sections:
        column = max(section.columns, key=_own_length)
        found += [asked.requests[slot.request].along(slot.lie) for slot in column.pieces[: column.own]]
    for strip in ordered:
        highest = max(strip.slots, key=lambda slot: slot.lie.along)
        found.append(asked.requests[highest.request].along(highest.lie))
    counts: dict[object, tuple[Quantity, int]] = {}
    for quantity in found:
        known, count = counts.get(quantity.value, (quantity, 0))
        counts[quantity.value] = (known, count + 1)
    return list(counts.values())


def _own_length(column: Column) -> int:
    return sum(slot.lie.along for slot in column.pieces[: column.own])


def _joined(asked: FabricRequest) -> Iterator[JoinedPieces]:
    for strip in asked.joined:
        for cut in strip.cuts:
            total = (
                cut.height if (strip.is_turned if strip.panels else cut.height.value > cut.width.value) else cut.width
            )
            yield JoinedPieces(cut.id, rectangles(cut), strip.lengths, strip.join, total, strip.name, strip.panels)
