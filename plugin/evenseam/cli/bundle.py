"""`evenseam bundle`: which sizes so many fat quarters can make, and what is bought besides."""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence
from typing import Any

from evenseam.cli.loading import EDITIONS, CannotRunError, load_pattern, tell
from evenseam.cutting import BundleNeeds, ClothPiece, PiecesPlan, cloth_piece, cloth_piece_names, needs_of_bundle
from evenseam.cutting.plan import PlannedPiece
from evenseam.exact import Unit, format_length, format_number
from evenseam.sheet import PatternSheet


def run(options: argparse.Namespace) -> int:
    """Print an answer for every size of one edition. Exit status 1 when no size can be made, or the pattern has errors.

    Raises CannotRunError for an edition, a number or a piece of cloth there is none of.
    """
    if options.pieces < 1:
        raise CannotRunError(f"--pieces {options.pieces}: a bundle has at least one piece")
    checked = load_pattern(options.pattern)
    if checked.pattern is None:
        tell(checked.problems, checked.sources)
        return 1
    unit = EDITIONS[options.edition] if options.edition else checked.pattern.units[0]
    if unit not in checked.pattern.units:
        raise CannotRunError(f"{checked.pattern.title} has no {options.edition} edition")
    cloth = _cloth(options.cloth, unit)
    sheets = [sheet for sheet in checked.sheets if sheet.project.unit is unit]
    if not sheets:
        tell(checked.problems, checked.sources)
        return 1
    answers = [
        (sheet, needs_of_bundle(sheet.cuts, sheet.project, sheet.materials, cloth, options.pieces)) for sheet in sheets
    ]
    if options.json:
        print(json.dumps(_as_data(checked.slug, cloth, options.pieces, answers), indent=2, ensure_ascii=False))
    else:
        print(_as_text(checked.pattern.title, cloth, options.pieces, answers))
    return 0 if any(needs.is_enough for _, needs in answers) else 1


def _cloth(name: str, unit: Unit) -> ClothPiece:
    wanted = " ".join(name.lower().split())
    for known in cloth_piece_names(unit):
        cloth = cloth_piece(known, unit)
        if wanted in (cloth.name, cloth.plural):
            return cloth
    names = ", ".join(cloth_piece_names(unit))
    raise CannotRunError(f"no piece of cloth is called {name!r}; for this edition there are: {names}")


_Answers = Sequence[tuple[PatternSheet, BundleNeeds]]


def _as_text(title: str, cloth: ClothPiece, number: int, answers: _Answers) -> str:
    name = cloth.name if number == 1 else cloth.plural
    lines = [f"{title}: {number} {name}, {cloth.height.number} × {cloth.width.text} each"]
    for sheet, needs in answers:
        lines += ["", *_size_lines(sheet, needs, cloth)]
    return "\n".join(lines)


def _size_lines(sheet: PatternSheet, needs: BundleNeeds, cloth: ClothPiece) -> list[str]:
    used = f"{needs.pieces} {cloth.name if needs.pieces == 1 else cloth.plural}"
    if needs.is_enough:
        verdict = f"can be made from {used}"
    elif not needs.plans:
        verdict = "cannot be made: nothing of it comes from such pieces"
    else:
        verdict = f"cannot be made: takes {used}, {needs.missing} more than the bundle has"
    lines = [f"{sheet.project.name}: {verdict}"]
    for plan in needs.plans:
        fewest = "" if plan.is_fewest else f" (at least {plan.lower_bound})"
        lines.append(f"  {plan.name}: {plan.number.whole}{fewest}")
        for place, piece in enumerate(plan.pieces, start=1):
            cuts = _cuts(sheet, plan, [each for strip in piece.strips for each in strip.pieces])
            lines.append(f"    {cloth.name} {place}: {'; '.join(cuts)}")
    if needs.also:
        lines.append("  also needed")
        lines += [f"    {also.name}: {also.buy.text}, {also.why}" for also in needs.also]
    return lines


def _cuts(sheet: PatternSheet, plan: PiecesPlan, pieces: Sequence[PlannedPiece]) -> list[str]:
    named = [_piece(sheet, plan, piece) for piece in pieces]
    return [f"{named.count(name)} × {name}" for name in dict.fromkeys(named)]


def _piece(sheet: PatternSheet, plan: PiecesPlan, piece: PlannedPiece) -> str:
    cut = sheet.cuts.cut(piece.cut)
    unit = plan.cloth.width.unit
    if not piece.is_length_of_joined:
        return f"{cut.label} {cut.width.number} × {cut.height.text}"
    if any(bias.cut == cut.id for bias in plan.bias):
        return f"square {format_length(piece.width, unit)} for the bias {cut.label}"
    strip = next((joined.strip for joined in plan.joined if joined.cut == cut.id), cut.id)
    served = [sheet.cuts.cut(joined.cut).label for joined in plan.joined if joined.strip == strip] or [cut.label]
    size = f"{format_number(piece.width, unit)} × {format_length(piece.height, unit)}"
    return f"length {size}, to be joined for the {' and the '.join(served)}"


def _as_data(slug: str, cloth: ClothPiece, number: int, answers: _Answers) -> dict[str, Any]:
    return {
        "format": 1,
        "pattern": slug,
        "unit": cloth.width.unit.symbol,
        "cloth": {"name": cloth.name, "width": cloth.width.number, "height": cloth.height.number},
        "pieces": number,
        "sizes": [
            {
                "size": sheet.project.size,
                "name": sheet.project.name,
                "is_enough": needs.is_enough,
                "pieces": needs.pieces,
                "missing": needs.missing,
                "fabrics": [_plan_as_data(plan) for plan in needs.plans],
                "also": [
                    {"fabric": also.material, "name": also.name, "buy": also.buy.text, "why": also.why}
                    for also in needs.also
                ],
            }
            for sheet, needs in answers
        ],
    }


def _plan_as_data(plan: PiecesPlan) -> dict[str, Any]:
    unit = plan.cloth.width.unit
    return {
        "fabric": plan.material,
        "pieces": plan.number.whole,
        "is_fewest": plan.is_fewest,
        "cut_from": [
            [
                {
                    "cut": piece.cut,
                    "x": format_number(piece.x, unit),
                    "y": format_number(piece.y, unit),
                    "width": format_number(piece.width, unit),
                    "height": format_number(piece.height, unit),
                }
                for strip in sheet.strips
                for piece in strip.pieces
            ]
            for sheet in plan.pieces
        ],
    }
