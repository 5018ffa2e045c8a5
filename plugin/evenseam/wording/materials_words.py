"""The materials list and the cutting instructions in words."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from evenseam.cutting import CuttingLine, CuttingPlan, JoinedPieces, Material, PlannedStrip, SubcutLine, rectangles
from evenseam.pattern import BATTINGS, Cut, CutShape, EnvelopeBack, Fabric, StripDirection, StripJoin, fabric_letters
from evenseam.sizing import block_count
from evenseam.wording.document import Beside, Block, Inline, Paragraph, Picture, Swatches
from evenseam.wording.edge_words import hanging_key
from evenseam.wording.marked import Markdown, escape
from evenseam.wording.scribe import Scribe

_BINDINGS = (CutShape.BINDING, CutShape.BIAS_BINDING)
_TRIANGLES = {CutShape.HALF_SQUARE_TRIANGLE: 2, CutShape.QUARTER_SQUARE_TRIANGLE: 4}
"""How many triangles a square gives."""


def swatches(scribe: Scribe) -> Swatches:
    """Return the fabrics to buy, each with its letter, its colour and what it is needed for."""
    sheet = scribe.sheet
    letters = fabric_letters(sheet.project.fabrics)
    rows: list[tuple[str, str, str, str, tuple[Inline, ...]]] = []
    for material in sheet.materials:
        if material.material in BATTINGS:
            continue
        fabric = sheet.project.fabric(material.material)
        line = scribe.blocks("sections/swatch", {"buy": material.buy, "uses": _uses(scribe, fabric), "fabric": fabric})
        rows.append((fabric.id, letters[fabric.id], fabric.name, fabric.colour, _inlines(line)))
    return Swatches(tuple(rows))


def fabric_cutting(scribe: Scribe, material: Material) -> tuple[Block, ...]:
    """Return the picture of one fabric's plan with its sentences beside it. `material` must have a plan."""
    sheet, plan = scribe.sheet, material.plan
    if plan is None:
        raise ValueError(f"{material.name} has no cutting plan")
    fabric = sheet.project.fabric(material.material)
    values = {
        "fabric": fabric.name,
        "is_directional": fabric.is_directional,
        "length": plan.length,
        "usable_width": plan.usable_width,
        "is_shortest": plan.is_shortest,
        "lower_bound": scribe.length(plan.lower_bound, plan.length),
        "sections": [scribe.length(section) for section in plan.sections],
        "lines": [_line(scribe, plan, line) for line in plan.lines],
        "joined": _joined(scribe, plan),
        "bindings": [_binding(scribe, plan, cut) for cut in sheet.cuts.of(material.material) if cut.shape in _BINDINGS],
    }
    picture, *words = scribe.blocks("sections/cutting", values)
    if not isinstance(picture, Picture):
        raise ValueError("the template of a cutting plan must begin with its picture")
    return (Beside(replace(picture, name=f"cutting-{material.material}"), tuple(words)),)


def folding(scribe: Scribe) -> tuple[Block, ...]:
    """Return how cloth is folded for strips across its whole width; nothing when there are none."""
    plans = [material.plan for material in scribe.sheet.materials if material.plan]
    if not any(line.is_full_width for plan in plans for line in plan.lines):
        return ()
    picture, *words = scribe.blocks("sections/folding", {})
    if not isinstance(picture, Picture):
        raise ValueError("the template of folded cloth must begin with its picture")
    return (Beside(replace(picture, name="folded-cloth"), tuple(words)),)


def _uses(scribe: Scribe, fabric: Fabric) -> Markdown:
    """Return what a fabric is needed for, each use once, in the order of the cut list."""
    uses: dict[str, None] = {}
    for cut in scribe.sheet.cuts.of(fabric.id):
        uses.setdefault(_use(scribe, cut))
    return scribe.language.listed([Markdown(use) for use in uses])


def _use(scribe: Scribe, cut: Cut) -> Markdown:
    kind, _, id = cut.part.partition(":")
    project, words = scribe.sheet.project, scribe.language.words["parts"]
    kind = {"sashing": "sashing", "cornerstones": "cornerstone"}.get(kind, kind)
    if kind == "block":
        is_one = block_count(scribe.sheet.sized, id).whole == 1
        return Markdown(
            str(words["one_block" if is_one else "block"]).replace("{name}", escape(project.block(id).name))
        )
    if kind == "border":
        name = next((border.name for border in project.borders if border.id == id), scribe.language.phrase(cut.label))
        return Markdown(str(words["border"]).replace("{name}", escape(name)))
    if kind == "hanging":
        kind = hanging_key(project)
    if kind == "backing" and isinstance(project.finish, EnvelopeBack):
        kind = "lining"
    return Markdown(str(words.get(kind, words["other"])).replace("{name}", escape(scribe.language.phrase(cut.label))))


def _line(scribe: Scribe, plan: CuttingPlan, line: CuttingLine) -> dict[str, Any]:
    cuts = [scribe.sheet.cuts.cut(subcut.cut) for subcut in line.subcuts]
    whole = None if line.subcuts else _cut_of_whole_strips(scribe, plan, line)
    known = [side for cut in (*cuts, *([whole] if whole else ())) for side in (cut.width, cut.height)]
    return {
        "count": line.count,
        "width": scribe.length(line.strip_width, *known),
        "length": scribe.length(line.strip_length, *known),
        "is_full_width": line.is_full_width,
        "is_across": line.direction is StripDirection.ACROSS,
        "number": plan.numbers[whole.id] if whole else 0,
        "is_as_cut": _is_as_cut(line),
        **_whole_strips(scribe, plan, whole),
        "subcuts": [_subcut(scribe, plan, subcut, cut) for subcut, cut in zip(line.subcuts, cuts, strict=True)],
    }


def _subcut(scribe: Scribe, plan: CuttingPlan, subcut: SubcutLine, cut: Cut) -> dict[str, Any]:
    together = [cut, *(scribe.sheet.cuts.cut(id) for id in subcut.also)]
    return {
        "number": plan.numbers[cut.id],
        "count": subcut.count,
        "total": _total(plan, subcut),
        "triangles": _triangles(subcut, together),
        "made": subcut.count * _TRIANGLES.get(cut.shape, 0),
        "is_left_over": subcut.is_left_over,
        "size": scribe.sizes(subcut.width, subcut.height, cut.width, cut.height),
        "label": _labels(scribe, [id for one in together for id in _sharing(plan, one.id)]),
        "is_trimmed": subcut.is_trimmed,
        "shape": cut.shape.value,
        "noun": _noun_of_subcut(plan, subcut, cut),
    }


def _labels(scribe: Scribe, cuts: list[str]) -> Markdown:
    return scribe.language.listed(
        [scribe.language.phrase(scribe.sheet.cuts.cut(id).label) for id in dict.fromkeys(cuts)]
    )


def _sharing(plan: CuttingPlan, cut: str) -> list[str]:
    """Return a cut with those that come out of the same long strip, when it is sewn from several lengths."""
    strip = next((joined.strip for joined in plan.joined if joined.cut == cut), "")
    return [joined.cut for joined in plan.joined if joined.strip == strip] if strip else [cut]


def _triangles(subcut: SubcutLine, cuts: list[Cut]) -> int:
    """Return how many triangles these squares give, when they are all of their kind; else 0."""
    is_all = subcut.count == sum(rectangles(cut) for cut in cuts)
    return sum(cut.count.whole for cut in cuts) if is_all and cuts[0].shape in _TRIANGLES else 0


def _is_as_cut(line: CuttingLine) -> bool:
    """Tell whether every strip is one piece just as it is cut."""
    if len(line.subcuts) != 1 or line.subcuts[0].count != line.count or line.subcuts[0].is_trimmed:
        return False
    only = line.subcuts[0]
    return sorted((only.width, only.height)) == sorted((line.strip_width, line.strip_length))


def _total(plan: CuttingPlan, subcut: SubcutLine) -> int:
    """Return how many of these are cut in the whole plan."""
    same = (subcut.cut, subcut.width, subcut.height)
    return sum(
        other.count for line in plan.lines for other in line.subcuts if (other.cut, other.width, other.height) == same
    )


def _noun_of_subcut(plan: CuttingPlan, subcut: SubcutLine, cut: Cut) -> str:
    if (subcut.width, subcut.height) == (cut.width.value, cut.height.value):
        return "piece"
    if any(bias.cut == cut.id for bias in plan.bias):
        return "square"
    return "panel" if any(joined.cut == cut.id and joined.panels for joined in plan.joined) else "length"


def _whole_strips(scribe: Scribe, plan: CuttingPlan, cut: Cut | None) -> dict[str, Any]:
    """Return what strips that are not subcut are for, and what they are called."""
    if cut is None:
        return {"whole": "", "noun": "strip"}
    is_square = any(bias.cut == cut.id for bias in plan.bias)
    is_panel = any(joined.cut == cut.id and joined.panels for joined in plan.joined)
    return {
        "whole": _labels(scribe, _sharing(plan, cut.id)),
        "noun": "square" if is_square else "panel" if is_panel else "strip",
    }


def _cut_of_whole_strips(scribe: Scribe, plan: CuttingPlan, line: CuttingLine) -> Cut | None:
    wanted = (line.direction, line.strip_width, line.strip_length)
    for strip in plan.strips:
        is_across = line.direction is StripDirection.ACROSS
        sides = (strip.height, strip.width) if is_across else (strip.width, strip.height)
        if (strip.direction, *sides) == wanted and len(strip.pieces) == 1 and not _is_subcut(strip):
            return scribe.sheet.cuts.cut(strip.pieces[0].cut)
    return None


def _is_subcut(strip: PlannedStrip) -> bool:
    piece = strip.pieces[0]
    return (piece.width, piece.height) != (strip.width, strip.height)


def _joined(scribe: Scribe, plan: CuttingPlan) -> list[dict[str, Any]]:
    """Return what is joined from several lengths, one entry for each joined strip."""
    strips: dict[str, list[JoinedPieces]] = {}
    for joined in plan.joined:
        strips.setdefault(joined.strip or joined.cut, []).append(joined)
    return [_joined_strip(scribe, together) for together in strips.values()]


def _joined_strip(scribe: Scribe, together: list[JoinedPieces]) -> dict[str, Any]:
    cuts = [scribe.sheet.cuts.cut(joined.cut) for joined in together]
    first, cut = together[0], cuts[0]
    return {
        "lengths": first.lengths,
        "seams": first.lengths // first.pieces - 1,
        "is_upright": first.total is cut.width,
        "is_diagonal": first.join is StripJoin.DIAGONAL,
        "is_panels": first.panels,
        "spare": first.spare,
        "is_binding": cut.shape in _BINDINGS,
        "join_seam": cut.join_seam or scribe.sheet.project.seam_allowance,
        "pieces": [
            {
                "count": joined.pieces,
                "label": scribe.language.phrase(each.label),
                "size": scribe.size(each.width, each.height),
                "total": joined.total,
            }
            for joined, each in zip(together, cuts, strict=True)
        ],
    }


def _binding(scribe: Scribe, plan: CuttingPlan, cut: Cut) -> dict[str, Any]:
    width, length = sorted((cut.width, cut.height), key=lambda side: side.value)
    bias = next((bias for bias in plan.bias if bias.cut == cut.id), None)
    return {"label": scribe.language.phrase(cut.label), "width": width, "length": length, "bias": bias}


def _inlines(blocks: tuple[Block, ...]) -> tuple[Inline, ...]:
    match blocks:
        case (Paragraph(inlines=inlines),):
            return inlines
    raise ValueError("the swatch template must be one paragraph")
