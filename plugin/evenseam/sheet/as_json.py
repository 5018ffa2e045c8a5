"""A sheet as open data: plain dictionaries and lists, every length a text such as "7 3/8"."""

from __future__ import annotations

from typing import Any

from evenseam.cutting import CuttingPlan, Material, WaysToBuy
from evenseam.exact import Number, Unit, format_number
from evenseam.pattern import Assumed, Cut, Derived, Given, Quantity, equation
from evenseam.piecing import PiecedBlock
from evenseam.sheet.pattern_sheet import PatternSheet
from evenseam.sizing import UnitMethod

FORMAT = 1
"""Raised when a field changes its meaning; new fields do not raise it."""


def sheet_as_json(sheet: PatternSheet) -> dict[str, Any]:
    """Return the sheet as data for `json.dumps`. Lengths are texts in the unit named at the top."""
    project, unit = sheet.project, sheet.project.unit
    others = {ways.material: ways for ways in sheet.ways_to_buy}
    return {
        "format": FORMAT,
        "pattern": {
            "slug": sheet.pattern.slug,
            "title": sheet.pattern.title,
            "version": sheet.pattern.version,
            "designer": sheet.pattern.designer,
            "licence": sheet.pattern.licence,
        },
        "size": {"slug": project.size, "name": project.name},
        "unit": unit.symbol,
        "seam_allowance": project.seam_allowance.number,
        "finished": {"width": sheet.sized.finished_width.number, "height": sheet.sized.finished_height.number},
        "top": {"width": sheet.sized.top_width.number, "height": sheet.sized.top_height.number},
        "cuts": [_cut(cut) for cut in sheet.cuts.cuts],
        "blocks": [_block(block) for block in sheet.blocks],
        "steps": [{"id": step.id, "makes": step.makes, "times": step.times} for step in sheet.program.steps],
        "checkpoints": [
            {
                "step": reading.step,
                "width": format_number(reading.width, unit),
                "height": format_number(reading.height, unit),
            }
            for reading in sheet.log.measurements
        ],
        "fabrics": [_material(material, unit, others.get(material.material)) for material in sheet.materials],
        "figures": {name: figure_as_json(quantity) for name, quantity in sheet.figures},
        "unit_methods": [_method(method) for method in sheet.methods],
        "chosen_unit_methods": [_method(method) for method in sheet.chosen_methods],
        "warnings": [f"{problem.place or ''}: {problem.message}".lstrip(": ") for problem in sheet.warnings],
    }


def figure_as_json(quantity: Quantity) -> dict[str, Any]:
    """Return one figure with its reason: value, unit, why, and the place in the author's file if it was given there."""
    return {"name": quantity.name, "value": quantity.number, "unit": quantity.unit.symbol, **_why(quantity)}


def _why(quantity: Quantity) -> dict[str, Any]:
    match quantity.because:
        case Given(place=place):
            return {"why": f"given in {place}"}
        case Assumed(reason=reason, source=source):
            return {"why": f"assumed: {reason} ({source})"}
        case Derived() as because:
            because_of = {part.name: part.text for part in because.expression.quantities}
            return {"why": equation(quantity), "rule": because.rule, "source": because.source, "from": because_of}


def _cut(cut: Cut) -> dict[str, Any]:
    return {
        "id": cut.id,
        "label": cut.label,
        "fabric": cut.material,
        "shape": cut.shape.value,
        "width": cut.width.number,
        "height": cut.height.number,
        "count": cut.count.whole,
        "part": cut.part,
        "print_upright": cut.is_upright,
        "why": {"width": equation(cut.width), "height": equation(cut.height)},
    }


def _method(method: UnitMethod) -> dict[str, Any]:
    return {
        "kind": method.kind.value,
        "block": method.block,
        "units": method.units.whole,
        "squares": [
            {
                "fabric": square.fabric,
                "side": square.side.number,
                **({"height": square.height.number} if square.height else {}),
                "count": square.count.whole,
            }
            for square in method.squares
        ],
        "trim_to": {"width": method.width.number, "height": method.height.number},
        "instead_of": list(method.steps),
    }


def _block(block: PiecedBlock) -> dict[str, Any]:
    return {
        "id": block.block,
        "sections": {section.name: [piece.label for piece in section.pieces] for section in block.sections},
        "joins": [join.makes for join in block.joins],
    }


def _material(material: Material, unit: Unit, others: WaysToBuy | None) -> dict[str, Any]:
    data: dict[str, Any] = {
        "id": material.material,
        "name": material.name,
        "length": material.needed.text,
        "buy": material.buy.text,
    }
    if material.piece:
        data["piece"] = {"width": material.piece[0].number, "height": material.piece[1].number}
    if material.plan:
        data["plan"] = _plan(material.plan, unit)
    data |= _otherwise(material)
    if others:
        data["other_widths"] = [
            {"usable_width": at.usable_width.number, "length": at.needed.text, "buy": at.buy.text}
            for at in others.widths
        ]
    if others and others.fat_quarters:
        data["fat_quarters"] = {
            "number": others.fat_quarters.whole,
            "is_without_backing": others.is_without_backing,
        }
    return data


def _otherwise(material: Material) -> dict[str, Any]:
    """Return a package and the other ways of cutting borders and backing, where there are any."""
    data: dict[str, Any] = {}
    if packaged := material.packaged:
        sides = {"width": format_number(packaged.width, Unit.INCH), "height": format_number(packaged.length, Unit.INCH)}
        data["packaged"] = {"name": packaged.name, **sides, "unit": Unit.INCH.symbol}
    if material.alternatives:
        data["alternatives"] = [
            {
                "kind": other.kind.value,
                "usable_width": other.usable_width.number,
                "length": other.needed.text,
                "buy": other.buy.text,
            }
            for other in material.alternatives
        ]
    return data


def _plan(plan: CuttingPlan, unit: Unit) -> dict[str, Any]:
    def number(value: Number) -> str:
        return format_number(value, unit)

    return {
        "usable_width": plan.usable_width.number,
        "length": plan.length.number,
        "lower_bound": number(plan.lower_bound),
        "is_shortest": plan.is_shortest,
        "strips": [
            {
                "direction": strip.direction.value,
                "x": number(strip.x),
                "y": number(strip.y),
                "width": number(strip.width),
                "height": number(strip.height),
                "pieces": [
                    {
                        "cut": piece.cut,
                        "x": number(piece.x),
                        "y": number(piece.y),
                        "width": number(piece.width),
                        "height": number(piece.height),
                    }
                    for piece in strip.pieces
                ],
            }
            for strip in plan.strips
        ],
    }
