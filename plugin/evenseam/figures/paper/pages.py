"""All templates of a sheet on as few pages as possible."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from evenseam.figures.cloth_look import looks_of
from evenseam.figures.drawing import Anchor, Drawing, Ink, Label, Shape
from evenseam.figures.frame import at, rectangle
from evenseam.figures.paper import words
from evenseam.figures.paper.page import PaperPage
from evenseam.figures.paper.page_furniture import LiveArea, furniture, live_area
from evenseam.figures.paper.paper_size import Paper
from evenseam.figures.paper.placing import Item, lay_out
from evenseam.figures.paper.template_shapes import (
    CAPTION_HEIGHT,
    TemplateShapes,
    caption,
    caption_width,
    template_shapes,
)
from evenseam.figures.paper.tiling import Part, moved, part_count, parts_of
from evenseam.geometry import Point
from evenseam.pattern import Method, PieceSection
from evenseam.piecing.templates import section_templates
from evenseam.sheet import PatternSheet

GAP = Fraction(3, 20)
"""Between templates, in inches: room for scissors."""


@dataclass(frozen=True, slots=True)
class _Sheet:
    """What lies on one page before it has its number: shapes from the corner of the live area, and their names."""

    shapes: tuple[Shape, ...]
    sections: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Both:
    """A template upright and sideways."""

    upright: TemplateShapes
    sideways: TemplateShapes


def template_pages(sheet: PatternSheet, paper: Paper) -> tuple[PaperPage, ...]:
    """Return the pages with every template of a sheet, each template once, true to scale; none without foundations.

    Templates that fit on a page share pages; larger ones are cut into parts on pages of their own.
    """
    area = live_area(paper)
    templates = _templates(sheet)
    fitting = {name: both for name, both in templates.items() if _fits(both, area)}
    sheets = _shared(fitting, area)
    for name, both in templates.items():
        if name not in fitting:
            sheets += _tiled(name, both, area)
    looks = looks_of(sheet.project.fabrics)
    whole = rectangle(0, 0, paper.width, paper.height)
    pages = []
    for number, one in enumerate(sheets, start=1):
        shapes = [*furniture(sheet, paper, number, len(sheets))]
        shapes += [moved(shape, Point(area.left, area.top)) for shape in one.shapes]
        drawing = Drawing(tuple(shapes), looks, whole)
        description = f"True-scale templates for {sheet.pattern.title}: {', '.join(one.sections)}."
        pages.append(PaperPage(paper, number, len(sheets), drawing, one.sections, description))
    return tuple(pages)


def _templates(sheet: PatternSheet) -> dict[str, _Both]:
    """Return every template by a name that is unique in the sheet, in sewing order."""
    looks = dict(looks_of(sheet.project.fabrics))
    copies = _copies(sheet)
    found: dict[str, _Both] = {}
    for pieced in sheet.blocks:
        block = sheet.project.block(pieced.block)
        if block.method is not Method.FOUNDATION:
            continue
        for template in section_templates(block, pieced, sheet.project.seam_allowance):
            title = words.section_title(block.name, template.section, len(pieced.sections))
            number = copies[(block.id, template.section)]
            upright, sideways = (
                template_shapes(template, looks, title, number, is_sideways=turn) for turn in (False, True)
            )
            found[f"{block.id}/{template.section}"] = _Both(upright, sideways)
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


def _shared(templates: Mapping[str, _Both], area: LiveArea) -> list[_Sheet]:
    items = [Item(name, *_room(both.upright), *_room(both.sideways)) for name, both in templates.items()]
    laid = lay_out(items, area.width + GAP, area.height + GAP)
    count = max((one.sheet for one in laid), default=-1) + 1
    # Pages follow the sewing order as far as the packing lets them: the page with the first section comes first.
    order = list(templates)
    first = {number: min(order.index(one.name) for one in laid if one.sheet == number) for number in range(count)}
    sheets = []
    for number in sorted(range(count), key=lambda one: first[one]):
        shapes: list[Shape] = []
        names: list[str] = []
        for one in sorted((one for one in laid if one.sheet == number), key=lambda one: order.index(one.name)):
            both = templates[one.name]
            chosen = both.sideways if one.is_turned else both.upright
            step = at(one.x, one.y)
            shapes += [moved(shape, step) for shape in _shapes_of(chosen)]
            names.append(chosen.title)
        sheets.append(_Sheet(tuple(shapes), tuple(names)))
    return sheets


def _shapes_of(template: TemplateShapes) -> tuple[Shape, ...]:
    return (*template.lines, *template.labels, *caption(template))


def _tiled(name: str, both: _Both, area: LiveArea) -> list[_Sheet]:
    high = area.height - CAPTION_HEIGHT
    chosen = min((both.upright, both.sideways), key=lambda one: part_count(one.width, one.height, area.width, high))
    return [_part_sheet(chosen, part) for part in parts_of(chosen, area.width, high)]


def _part_sheet(shapes: TemplateShapes, part: Part) -> _Sheet:
    title = f"{shapes.title}, {words.part_of(part.number, part.count)}"
    lines = (
        Label(at(0, part.height + Fraction(11, 100)), title, Fraction(8), anchor=Anchor.START, is_bold=True),
        Label(at(0, part.height + Fraction(23, 100)), shapes.copies, Fraction(8), Ink.QUIET, anchor=Anchor.START),
    )
    return _Sheet((*part.shapes, *lines), (title,))
