"""`evenseam sheet` and `evenseam why`: the figures of one size, and the reasons for them."""

from __future__ import annotations

import argparse
import json
from difflib import get_close_matches

from evenseam.cli.loading import CannotRunError, load_sheet
from evenseam.exact import format_number
from evenseam.pattern import Quantity, equation, explain
from evenseam.sheet import PatternSheet, sheet_as_json


def run_sheet(options: argparse.Namespace) -> int:
    """Print one sheet as text or as JSON."""
    _, sheet = load_sheet(options)
    if sheet is None:
        return 1
    print(json.dumps(sheet_as_json(sheet), indent=2, ensure_ascii=False) if options.json else _as_text(sheet))
    return 0


def run_why(options: argparse.Namespace) -> int:
    """Print one figure's derivation."""
    _, sheet = load_sheet(options)
    if sheet is None:
        return 1
    print(explain(_find(sheet, " ".join(options.figure))))
    return 0


def _find(sheet: PatternSheet, words: str) -> Quantity:
    known = dict(sheet.figures)
    for cut in sheet.cuts.cuts:
        known |= {f"{cut.id}_width": cut.width, f"{cut.id}_height": cut.height, f"{cut.id}_count": cut.count}
    plain = {_plain(name): quantity for name, quantity in known.items()}
    name = _plain(words)
    if name not in plain:
        near = get_close_matches(name, plain, n=4, cutoff=0.4)
        advice = f"; did you mean {' or '.join(near)}?" if near else "; evenseam sheet lists every figure"
        raise CannotRunError(f"there is no figure {words!r}{advice}")
    return plain[name]


def _plain(name: str) -> str:
    return "_".join(name.lower().replace("-", " ").replace("_", " ").split())


def _as_text(sheet: PatternSheet) -> str:
    unit = sheet.project.unit
    lines = [
        f"{sheet.pattern.title}: {sheet.project.name}, version {sheet.pattern.version}, in {unit.symbol}, "
        f"seam allowance {sheet.project.seam_allowance.text}",
        f"finished size {sheet.sized.finished_width.number} × {sheet.sized.finished_height.text}",
        "",
        "Cuts",
    ]
    for cut in sheet.cuts.cuts:
        lines.append(
            f"  {cut.count.whole:>4}  {cut.width.number} × {cut.height.text}  {cut.label}  [{cut.material}]  {cut.id}"
        )
    lines += ["", "Materials"]
    for material in sheet.materials:
        proof = ""
        if material.plan:
            proof = (
                ", no plan of strips across needs less"
                if material.plan.is_shortest
                else f", at least {format_number(material.plan.lower_bound, unit)}"
            )
        lines.append(f"  {material.name}: uses {material.needed.text}{proof}; buy {material.buy.text}")
    lines += ["", "Checkpoints"]
    for reading in sheet.log.measurements:
        size = f"{format_number(reading.width, unit)} × {format_number(reading.height, unit)} {unit.symbol}"
        lines.append(f"  {reading.step}: {size}")
    lines += ["", "Figures"]
    lines += [f"  {name}: {equation(quantity)} {quantity.unit.symbol}".rstrip() for name, quantity in sheet.figures]
    return "\n".join(lines)
