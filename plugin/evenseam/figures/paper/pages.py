"""All templates of a sheet on as few pages as possible."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from evenseam.figures.cloth_look import ClothLook, looks_of
from evenseam.figures.drawing import Anchor, Drawing, Ink, Label, Shape
from evenseam.figures.frame import rectangle
from evenseam.figures.paper.exact_places import at, moved
from evenseam.figures.paper.key_shapes import key_shapes
from evenseam.figures.paper.page import PaperPage
from evenseam.figures.paper.page_furniture import Layout, LiveArea, furniture, live_area
from evenseam.figures.paper.paper_size import Paper
from evenseam.figures.paper.placing import Item, Laid, lay_out
from evenseam.figures.paper.template_shapes import (
    CAPTION_HEIGHT,
    TemplateShapes,
    caption,
    caption_width,
    template_shapes,
)
from evenseam.figures.paper.tiling import Part, part_count, parts_of
from evenseam.figures.paper.words import TABLE, PaperWords
from evenseam.geometry import Point
from evenseam.pattern import Block, Method, PieceSection
from evenseam.piecing.templates import cutting_template, section_templates
from evenseam.sheet import PatternSheet

GAP = Fraction(3, 20)
"""Between templates, in inches: room for scissors."""
_KEY = "key/"


@dataclass(frozen=True, slots=True)
class _Sheet:
    """What lies on one page before it has its number: shapes from the corner of the live area, and their names."""

    layout: Layout
    shapes: tuple[Shape, ...]
    sections: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Both:
    """A template upright and sideways."""

    upright: TemplateShapes
    sideways: TemplateShapes


def template_pages(sheet: PatternSheet, paper: Paper, words: PaperWords) -> tuple[PaperPage, ...]:
    """Return the pages with every template of a sheet, each template once, true to scale; none where every piece
    is cut by size.

    Templates that fit on a page share pages. A page has its instructions across the head or, for long narrow
    templates, in a column at the right. What is larger than either is cut into parts on pages of their own.
    """
    templates = _templates(sheet, words)
    sheets = _with_keys(sheet, templates, _sheets(templates, paper, words), paper, words)
    looks = looks_of(sheet.project.fabrics)
    whole = rectangle(0, 0, paper.width, paper.height)
    pages = []
    for number, one in enumerate(sheets, start=1):
        area = live_area(paper, one.layout)
        shapes = [*furniture(sheet, paper, one.layout, number, len(sheets), words)]
        shapes += [moved(shape, Point(area.left, area.top)) for shape in one.shapes]
        drawing = Drawing(tuple(shapes), looks, whole)
        about = words.fill(TABLE, "about", title=sheet.pattern.title, templates=", ".join(one.sections))
        title = words.fill(TABLE, "title", number=number, count=len(sheets))
        pages.append(PaperPage(paper, number, len(sheets), drawing, one.sections, about, title, words.code))
    return tuple(pages)


def _with_keys(
    sheet: PatternSheet, templates: dict[str, _Both], sheets: list[_Sheet], paper: Paper, words: PaperWords
) -> list[_Sheet]:
    """Put a small picture of each foundation block first, where that takes no more paper."""
    keys: dict[str, _Both] = {}
    for pieced in sheet.blocks:
        block = sheet.project.block(pieced.block)
        if block.method is Method.FOUNDATION:
            shapes = key_shapes(block, pieced, words)
            keys[f"{_KEY}{block.id}"] = _Both(shapes, shapes)
    told = _sheets({**keys, **templates}, paper, words) if keys else sheets
    return told if len(told) == len(sheets) else sheets


def _sheets(templates: dict[str, _Both], paper: Paper, words: PaperWords) -> list[_Sheet]:
    """Return the pages in the order of sewing, as far as pages that are shared let them be."""
    head, aside = live_area(paper, Layout.HEAD), live_area(paper, Layout.ASIDE)
    under_head = {name: both for name, both in templates.items() if _fits(both, head)}
    narrow = {name: both for name, both in templates.items() if name not in under_head and _fits(both, aside)}
    large = {name: both for name, both in templates.items() if name not in under_head and name not in narrow}
    if narrow:
        under_head, narrow = _filled(under_head, narrow, head, aside)
    under_head, narrow = _beside(under_head, narrow, head, aside)
    order = list(templates)
    made = [
        *_shared(under_head, head, Layout.HEAD, order),
        *_shared(narrow, aside, Layout.ASIDE, order),
        *((order.index(name), sheet) for name, both in large.items() for sheet in _tiled(both, head, words)),
    ]
    # Sorting is stable: the parts of one template stay in their order.
    return [sheet for _, sheet in sorted(made, key=lambda one: one[0])]


def _filled(
    under_head: dict[str, _Both], narrow: dict[str, _Both], head: LiveArea, aside: LiveArea
) -> tuple[dict[str, _Both], dict[str, _Both]]:
    """Move smaller templates beside the narrow ones where there is room, if that saves a page."""
    room, filled = dict(under_head), dict(narrow)
    count = _page_count(narrow, aside)
    for name, both in sorted(under_head.items(), key=lambda one: -one[1].upright.width * one[1].upright.height):
        if _fits(both, aside) and _page_count({**filled, name: both}, aside) == count:
            filled[name] = room.pop(name)
    if _page_count(room, head) < _page_count(under_head, head):
        return room, filled
    return under_head, narrow


def _beside(
    under_head: dict[str, _Both], narrow: dict[str, _Both], head: LiveArea, aside: LiveArea
) -> tuple[dict[str, _Both], dict[str, _Both]]:
    """Use the height of pages with their words at the side, if that takes fewer pages in all.

    On short paper two templates, one above the other, may just not fit under the head of a page.
    """
    movable = {name: both for name, both in under_head.items() if _fits(both, aside)}
    staying = {name: both for name, both in under_head.items() if name not in movable}
    moved_over = {**narrow, **movable}
    before = _page_count(under_head, head) + _page_count(narrow, aside)
    if movable and _page_count(staying, head) + _page_count(moved_over, aside) < before:
        return staying, moved_over
    return under_head, narrow


def _page_count(templates: Mapping[str, _Both], area: LiveArea) -> int:
    return max((one.sheet for one in _laid(templates, area)), default=-1) + 1


def _templates(sheet: PatternSheet, words: PaperWords) -> dict[str, _Both]:
    """Return every template by a name that is unique in the sheet, in sewing order."""
    looks = dict(looks_of(sheet.project.fabrics))
    copies = _copies(sheet)
    found: dict[str, _Both] = {}
    for pieced in sheet.blocks:
        block = sheet.project.block(pieced.block)
        if block.method is not Method.FOUNDATION:
            found |= _cutting_templates(sheet, block, looks, words)
            continue
        for template in section_templates(block, pieced, sheet.project.seam_allowance):
            key = "section" if len(pieced.sections) > 1 else "whole_block"
            title = words.fill(TABLE, key, block=block.name, section=template.section)
            told = words.counted(TABLE, "copies", copies[(block.id, template.section)])
            upright, sideways = (
                template_shapes(template, looks, title, told, words, is_sideways=turn) for turn in (False, True)
            )
            found[f"{block.id}/{template.section}"] = _Both(upright, sideways)
    return found


def _cutting_templates(
    sheet: PatternSheet, block: Block, looks: dict[str, ClothLook], words: PaperWords
) -> dict[str, _Both]:
    """Return the templates that odd pieces of a block cut to size are cut with."""
    found: dict[str, _Both] = {}
    for cut in sheet.cuts.cuts:
        if cut.part != f"block:{block.id}" or cut.outline is None:
            continue
        template = cutting_template(block.id, cut.labels, cut.material, cut.outline, sheet.project.seam_allowance)
        title = words.counted(TABLE, "piece", len(cut.labels), block=block.name, pieces=", ".join(cut.labels))
        fabric = sheet.project.fabric(cut.material).name
        told = words.counted(TABLE, "cut_with", cut.count.whole, fabric=fabric)
        upright, sideways = (
            template_shapes(template, looks, title, told, words, is_sideways=turn) for turn in (False, True)
        )
        found[f"{block.id}/{cut.id}"] = _Both(upright, sideways)
    return found


def _copies(sheet: PatternSheet) -> Mapping[tuple[str, str], int]:
    """Return how often each section is sewn: every one needs a paper of its own."""
    copies: dict[tuple[str, str], int] = {}
    for step in sheet.program.steps:
        if isinstance(step.operation, PieceSection):
            key = (step.operation.block, step.operation.section)
            copies[key] = copies.get(key, 0) + step.times
    return copies


def _room(shapes: TemplateShapes) -> tuple[Fraction, Fraction]:
    """Return width and height of a template with its caption and the gap to its neighbours."""
    return max(shapes.width, caption_width(shapes)) + GAP, shapes.height + CAPTION_HEIGHT + GAP


def _fits(both: _Both, area: LiveArea) -> bool:
    sizes = (_room(both.upright), _room(both.sideways))
    return any(width <= area.width + GAP and height <= area.height + GAP for width, height in sizes)


def _laid(templates: Mapping[str, _Both], area: LiveArea) -> tuple[Laid, ...]:
    items = [Item(name, *_room(both.upright), *_room(both.sideways)) for name, both in templates.items()]
    return lay_out(items, area.width + GAP, area.height + GAP)


def _shared(
    templates: Mapping[str, _Both], area: LiveArea, layout: Layout, order: list[str]
) -> list[tuple[int, _Sheet]]:
    """Return pages with templates side by side, each with the place of its first template in the sewing order."""
    pages: dict[int, list[Laid]] = {}
    for one in _laid(templates, area):
        pages.setdefault(one.sheet, []).append(one)
    sheets = []
    for laid in pages.values():
        shapes: list[Shape] = []
        names: list[str] = []
        laid.sort(key=lambda one: order.index(one.name))
        for one in laid:
            both = templates[one.name]
            chosen = both.sideways if one.is_turned else both.upright
            step = at(one.x, one.y)
            shapes += [moved(shape, step) for shape in _shapes_of(chosen)]
            if not one.name.startswith(_KEY):
                names.append(chosen.title)
        sheets.append((order.index(laid[0].name), _Sheet(layout, tuple(shapes), tuple(names))))
    return sheets


def _shapes_of(template: TemplateShapes) -> tuple[Shape, ...]:
    return (*template.lines, *template.labels, *caption(template))


def _tiled(both: _Both, area: LiveArea, words: PaperWords) -> list[_Sheet]:
    high = area.height - CAPTION_HEIGHT
    chosen = min((both.upright, both.sideways), key=lambda one: part_count(one.width, one.height, area.width, high))
    return [_part_sheet(chosen, part, words) for part in parts_of(chosen, area.width, high, words)]


def _part_sheet(shapes: TemplateShapes, part: Part, words: PaperWords) -> _Sheet:
    title = words.fill(TABLE, "part", template=shapes.title, number=part.number, count=part.count)
    lines = (
        Label(at(0, part.height + Fraction(11, 100)), title, Fraction(8), anchor=Anchor.START, is_bold=True),
        Label(at(0, part.height + Fraction(23, 100)), shapes.copies, Fraction(8), Ink.QUIET, anchor=Anchor.START),
    )
    return _Sheet(Layout.HEAD, (*part.shapes, *lines), (title,))
