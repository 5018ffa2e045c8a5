"""What a project is, at a glance: its size, its blocks, its borders and its edge."""

from __future__ import annotations

from evenseam.pattern import (
    Bound,
    Method,
    Quantity,
    Setting,
    Spacer,
    Turned,
)
from evenseam.sheet import PatternSheet
from evenseam.wording.border_words import border_facts
from evenseam.wording.document import Block, Paragraph
from evenseam.wording.edge_words import finish_key, hanging_key, rod_values
from evenseam.wording.scribe import Scribe
from evenseam.wording.tree import plain_text


def finished_description(scribe: Scribe) -> str:
    """Return what the picture of the finished piece shows, for those who do not see it."""
    return plain_text(_one_paragraph(scribe.blocks("sections/finished_description", _glance_values(scribe))).inlines)


def _one_paragraph(blocks: tuple[Block, ...]) -> Paragraph:
    match blocks:
        case (Paragraph() as paragraph,):
            return paragraph
    raise ValueError("this template must be one paragraph")


def glance(scribe: Scribe) -> tuple[Block, ...]:
    """Return the list of facts with which the page begins."""
    return scribe.blocks("sections/glance", _glance_values(scribe))


def _spacers(scribe: Scribe) -> list[dict[str, object]] | None:
    """Return the widths that were worked out for the spacers of unequal rows, each with the rows it holds for; None
    where rows are equal anyway.
    """
    arrangement = scribe.sheet.project.arrangement
    if arrangement.setting is not Setting.UNEQUAL_ROWS:
        return None
    figures = dict(scribe.sheet.figures)
    found: dict[object, tuple[Quantity, list[str]]] = {}
    for row in range(1, arrangement.rows.whole + 1):
        width = figures.get(f"row_{row}_spacer_width")
        if width is not None:
            found.setdefault(width.value, (width, []))[1].append(str(row))
    named = scribe.language.named
    return [{"rows": named(rows), "count": len(rows), "width": width} for width, rows in found.values()]


def _glance_values(scribe: Scribe) -> dict[str, object]:
    sheet, project = scribe.sheet, scribe.sheet.project
    methods = {Method.FOUNDATION: "foundation", Method.ROTARY: "rotary"}
    used = [project.block(pieced.block) for pieced in sheet.blocks]
    words = scribe.language.words["methods"]
    return {
        "finished_width": sheet.sized.finished_width,
        "finished_height": sheet.sized.finished_height,
        "blocks": [
            {"name": block.name, "width": block.width, "height": block.height, "count": scribe.uses(block.id)}
            for block in used
        ],
        "is_single": _is_single(sheet),
        "rows": project.arrangement.rows.whole,
        "columns": project.arrangement.columns.whole,
        "spacers": _spacers(scribe),
        "has_spacers": any(cut.part == "spacer" for cut in sheet.cuts.cuts),
        "has_stated": any(
            isinstance(part, Spacer) and part.width is not None
            for row in project.arrangement.unequal_rows
            for part in row.parts
        ),
        "is_framed": project.arrangement.sashing is not None and project.arrangement.sashing.is_around,
        "rows_width": dict(sheet.figures).get("rows_width"),
        "on_point": project.arrangement.setting is Setting.ON_POINT,
        "between": (project.arrangement.rows.whole - 1) * (project.arrangement.columns.whole - 1),
        "sashing": dict(sheet.figures).get("sashing_width"),
        "borders": border_facts(scribe),
        "is_turned": isinstance(project.finish, Turned),
        "finish": finish_key(project.finish),
        "is_rounded": isinstance(project.finish, Bound) and project.finish.corner_radius is not None,
        "hanging": hanging_key(project),
        **rod_values(sheet),
        "methods": [words[methods[method]] for method in dict.fromkeys(block.method for block in used)],
        "skill": scribe.language.skill(sheet.pattern.skill_level),
        "usable_width": project.usable_width,
    }


def _is_single(sheet: PatternSheet) -> bool:
    """Tell whether one block stands in the middle, with nothing beside it but borders."""
    positions = sheet.project.arrangement.positions
    return sum(len(row) for row in positions) == 1 and "sashing_width" not in dict(sheet.figures)
