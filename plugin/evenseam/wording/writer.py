"""A sheet as a document: the whole text of one size in one edition."""

from __future__ import annotations

from dataclasses import replace

from evenseam.cutting import SHRINKAGE, shop_step, spare
from evenseam.exact import Unit
from evenseam.pattern import (
    BATTING,
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    AddSettingTriangles,
    Assumed,
    AttachCornerPockets,
    AttachLoops,
    AttachRings,
    AttachSleeve,
    Bind,
    Bound,
    CloseEnvelope,
    CloseKnifeEdge,
    CutShape,
    Face,
    HemPanel,
    JoinDiagonalRows,
    JoinPieces,
    JoinRun,
    MakeBinding,
    MakeLoop,
    MakeSleeve,
    MakeUnits,
    Method,
    PieceSection,
    Quantity,
    RoundCorners,
    Setting,
    Spacer,
    Step,
    TrimForKnifeEdge,
    TrimPart,
    TrimTop,
    Turned,
    fabric_letters,
)
from evenseam.problems import Outcome, Problem, Report
from evenseam.sheet import PatternSheet
from evenseam.sizing import block_count
from evenseam.wording.author_prose import Addressed, read_prose
from evenseam.wording.border_words import border_facts
from evenseam.wording.catalogue import BASE_LANGUAGE, language
from evenseam.wording.cautions import cautions, needs_insulation
from evenseam.wording.checkpoints import checkpoint
from evenseam.wording.document import Block, Document, Heading, Paragraph, Picture, Pictures, StepBlock, Text
from evenseam.wording.edge_words import finish_key, fit_words, hanging_key, pad_values, rod_values
from evenseam.wording.figure_names import FigureNames
from evenseam.wording.marked import without_marks
from evenseam.wording.materials_words import fabric_cutting, folding, swatches
from evenseam.wording.other_ways import other_ways
from evenseam.wording.scribe import Scribe
from evenseam.wording.step_words import StepWords
from evenseam.wording.tree import parse_ours, plain_text
from evenseam.wording.unit_method_words import method_values
from evenseam.wording.working_figures import print_marks, seam_test
from evenseam.wording.workpieces import STRIP_KINDS, TRIANGLES, Workpieces


def write_document(
    sheet: PatternSheet, language_code: str = BASE_LANGUAGE, known: Document | None = None
) -> Outcome[Document]:
    """Return the whole text of one size in one edition, and what is the matter with the author's part of it.

    The document is there even when the author's words have problems; words that cannot be printed are left out.
    `known` is the text, in the same language, of the same work on cloth of another width: steps are taken from it.
    Raises KeyError for a language without a folder of wording.
    """
    report = Report()
    scribe = Scribe(sheet, language(language_code), FigureNames(sheet.figures))
    prose = read_prose(sheet, report, scribe.language.figure)
    project = sheet.project
    blocks = (
        Picture("finished", f"{sheet.pattern.title}, {project.name}", _finished_description(scribe)),
        *_paragraphs(sheet.pattern.summary, project.summary),
        *prose.introduction,
        *_section(scribe, "glance", (*_glance(scribe), *fit_words(scribe))),
        *_section(scribe, "before", (*scribe.blocks("sections/before", _seam_values(scribe)), *cautions(scribe))),
        *_section(scribe, "materials", (swatches(scribe), *_materials(scribe), *other_ways(scribe))),
        *_section(scribe, "cutting", _cutting(scribe)),
        *_templates(scribe),
        *_steps(scribe, prose, known),
        *_usual(scribe),
        *_section(scribe, "changes", _changes(scribe)),
    )
    title, subtitle = (" ".join(without_marks(text).split()) for text in (sheet.pattern.title, project.name))
    return Outcome(Document(title, subtitle, blocks), report.as_tuple())


def check_prose(sheet: PatternSheet) -> tuple[Problem, ...]:
    """Return what is the matter with the author's words of one size, without writing the document."""
    report = Report()
    read_prose(sheet, report)
    return report.as_tuple()


def _section(scribe: Scribe, key: str, blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    return (_heading(key, scribe.language.word("headings", key)), *blocks)


def _heading(id: str, text: str) -> Heading:
    return Heading(2, id, (Text(text),))


def _paragraphs(*texts: str) -> tuple[Block, ...]:
    return tuple(
        Paragraph((Text(" ".join(without_marks(text).split())),)) for text in dict.fromkeys(texts) if text.strip()
    )


def _finished_description(scribe: Scribe) -> str:
    return plain_text(_one_paragraph(scribe.blocks("sections/finished_description", _glance_values(scribe))).inlines)


def _one_paragraph(blocks: tuple[Block, ...]) -> Paragraph:
    match blocks:
        case (Paragraph() as paragraph,):
            return paragraph
    raise ValueError("this template must be one paragraph")


def _glance(scribe: Scribe) -> tuple[Block, ...]:
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
            {"name": block.name, "width": block.width, "height": block.height, "count": _uses(sheet, block.id)}
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


def _uses(sheet: PatternSheet, block: str) -> int:
    return block_count(sheet.sized, block).whole


def _seam_values(scribe: Scribe) -> dict[str, object]:
    test = seam_test(scribe.sheet.project.seam_allowance)
    return {
        "strips": test.strips, "strip_width": test.strip_width, "strip_length": test.strip_length,
        "middle": test.middle, "whole": test.whole, "has_editions": len(scribe.sheet.pattern.units) > 1,
        "is_inch": scribe.sheet.project.unit is Unit.INCH,
    }  # fmt: skip


def _materials(scribe: Scribe) -> tuple[Block, ...]:
    sheet, project = scribe.sheet, scribe.sheet.project
    batting = sheet.cuts.of(BATTING)
    return scribe.blocks(
        "sections/materials",
        {
            "batting": [(cut.width, cut.height) for cut in batting],
            "batting_name": scribe.language.phrase(project.batting_name),
            **_bought_batting(scribe),
            "shrinkage": SHRINKAGE.whole,
            "spare": spare(project.unit),
            "step": shop_step(project),
            "hangs": project.hanging is not None,
            **rod_values(sheet),
            "pad": pad_values(sheet),
            "is_insulated": needs_insulation(project),
            "is_turned": isinstance(project.finish, Turned),
            "usable_width": project.usable_width,
        },
    )


def _bought_batting(scribe: Scribe) -> dict[str, object]:
    """Return how batting is bought: off the roll, and the smallest package, which is named in inches."""
    bought = next((material for material in scribe.sheet.materials if material.material == BATTING), None)
    is_inch = scribe.sheet.project.unit is Unit.INCH
    packaged = bought.packaged if bought and is_inch else None
    return {
        "roll": bought.buy if bought else None,
        "packaged": packaged,
        "packaged_size": scribe.sizes(packaged.width, packaged.length) if packaged else "",
    }


def _cutting(scribe: Scribe) -> tuple[Block, ...]:
    letters = fabric_letters(scribe.sheet.project.fabrics)
    usable_width = scribe.sheet.project.usable_width
    has_triangles = any(cut.shape in TRIANGLES for cut in scribe.sheet.cuts.cuts)
    filled = [material.name for material in scribe.sheet.materials if material.plan and material.plan.fills_width]
    values = {
        "has_triangles": has_triangles,
        "usable_width": usable_width,
        "filled": filled,
        "has_alike": any(material.plan.alike for material in scribe.sheet.materials if material.plan),
    }
    blocks: list[Block] = [*scribe.blocks("sections/cutting_intro", values), *folding(scribe)]
    for material in scribe.sheet.materials:
        if material.plan is None:
            continue
        name = scribe.sheet.project.fabric(material.material).name
        blocks.append(Heading(3, f"cutting-{material.material}", (Text(f"{name} ({letters[material.material]})"),)))
        blocks += fabric_cutting(scribe, material)
    return tuple(blocks)


def _templates(scribe: Scribe) -> tuple[Block, ...]:
    sheet = scribe.sheet
    shaped = [cut for cut in sheet.cuts.cuts if cut.shape is CutShape.TEMPLATE]
    if not scribe.on_paper and not shaped:
        return ()
    blocks = [sheet.project.block(pieced.block) for pieced in sheet.blocks]
    test_square, test_bar = print_marks(sheet.project.unit)
    values = {
        "test_square": test_square,
        "test_bar": test_bar,
        "blocks": [
            {"name": block.name, "count": _uses(sheet, block.id)}
            for block in blocks
            if block.method is Method.FOUNDATION
        ],
        "shaped": [
            {
                "label": scribe.language.phrase(cut.label),
                "count": cut.count.whole,
                "fabric": sheet.project.fabric(cut.material).name,
            }
            for cut in shaped
        ],
    }
    return _section(scribe, "templates", scribe.blocks("sections/templates", values))


def _steps(scribe: Scribe, prose: Addressed, known: Document | None) -> tuple[Block, ...]:
    words = StepWords(scribe, Workpieces(scribe))
    # The author's words may name figures of the cloth; then every step is written anew.
    same = {block.id: block for block in known.blocks if isinstance(block, StepBlock)} if known else {}
    if prose.steps:
        same = {}
    blocks: list[Block] = []
    part = ""
    for number, group in enumerate(words.pieces.groups, start=1):
        step = group[0]
        if (key := _group(scribe, words.pieces, step)) != part:
            part = key
            blocks += _group_opening(scribe, key)
        if len(group) > 1:
            blocks.append(_shared_step(words, group, number))
            continue
        is_of_cloth = isinstance(step.operation, MakeBinding) or step.id not in same
        blocks.append(_step(words, step, number, prose) if is_of_cloth else same[step.id])
    return tuple(blocks)


def _step(words: StepWords, step: Step, number: int, prose: Addressed) -> StepBlock:
    heading, *rest = parse_ours(words.markdown(step, number))
    if not isinstance(heading, Heading):
        raise ValueError(f"the template of step {step.id} must begin with its title")
    title = plain_text(heading.inlines)
    body = [Picture(f"step-{step.id}", title, part.description) if isinstance(part, Picture) else part for part in rest]
    return StepBlock(
        step.id, number, title, (*body, *prose.steps.get(step.id, ()), *checkpoint(words.scribe, words.pieces, step))
    )


def _shared_step(words: StepWords, group: tuple[Step, ...], number: int) -> StepBlock:
    """Return steps that are told as one; their pictures are named by the steps they are of."""
    heading, *rest = parse_ours(words.shared_markdown(group, number))
    if not isinstance(heading, Heading):
        raise ValueError(f"the template of step {group[0].id} must begin with its title")

    def named(picture: Picture) -> Picture:
        return replace(picture, name=f"step-{group[int(picture.name)].id}")

    body = [
        named(part)
        if isinstance(part, Picture)
        else Pictures(tuple(map(named, part.pictures)))
        if isinstance(part, Pictures)
        else part
        for part in rest
    ]
    also = tuple(step.id for step in group[1:])
    return StepBlock(group[0].id, number, plain_text(heading.inlines), tuple(body), also)


_GROUPS: tuple[tuple[tuple[type, ...], str], ...] = (
    ((JoinRun, AddSettingTriangles, JoinDiagonalRows, TrimTop), "join"),
    ((AddBorderStrips, AddMitredBorder, AddPartialSeamBorder), "borders"),
    ((MakeBinding, Bind), "binding"),
    ((RoundCorners,), "binding"),
    ((Face,), "facing"),
    ((TrimForKnifeEdge, CloseKnifeEdge), "closing"),
    ((HemPanel, CloseEnvelope), "back"),
    ((MakeSleeve, AttachSleeve, AttachRings), "hanging"),
)
_EDGE_GROUPS = {
    "turned": "turned", "bound": "binding", "faced": "facing", "knife_edge": "hanging", "envelope_back": "back",
}  # fmt: skip
"""Under which heading stands what is laid on before the edge is closed, or sewn on when it is."""


def _group(scribe: Scribe, pieces: Workpieces, step: Step) -> str:
    """Return under which heading a step stands."""
    if isinstance(step.operation, (PieceSection, JoinPieces, TrimPart, MakeUnits)):
        return f"blocks:{step.operation.block}"
    is_turned = isinstance(scribe.sheet.project.finish, Turned)
    if isinstance(step.operation, JoinRun) and pieces.run_kind(step) in STRIP_KINDS:
        return "borders"
    if isinstance(step.operation, (AttachCornerPockets, MakeLoop, AttachLoops)):
        return _EDGE_GROUPS[finish_key(scribe.sheet.project.finish)]
    for kinds, key in _GROUPS:
        if isinstance(step.operation, kinds):
            return key
    return "turned" if is_turned else "quilting"


def _group_opening(scribe: Scribe, group: str) -> tuple[Block, ...]:
    key, _, id = group.partition(":")
    if not id:
        return (_heading(f"make-{key}", scribe.language.word("headings", key)),)
    block = scribe.sheet.project.block(id)
    count = _uses(scribe.sheet, id)
    title = scribe.language.word("headings", "one_block" if count == 1 else "blocks").replace("{name}", block.name)
    values = {
        "block": block,
        "count": count,
        "section_count": len(scribe.sheet.sized.pieced(id).sections),
        "on_paper": block.method is Method.FOUNDATION,
    }
    opening = scribe.blocks("sections/block", values)
    names = {"block": f"block-{id}", "pieces": f"pieces-{id}"}
    return (
        _heading(f"make-{id}", title),
        *(
            Picture(names[part.name], part.title, part.description) if isinstance(part, Picture) else part
            for part in opening
        ),
        *_other_ways(scribe, id),
    )


def _other_ways(scribe: Scribe, block: str) -> tuple[Block, ...]:
    """Return the ways to sew several equal units of a block at once; nothing where there are none."""
    methods = method_values(scribe, block)
    return scribe.blocks("sections/unit_methods", {"methods": methods}) if methods else ()


def _usual(scribe: Scribe) -> tuple[Block, ...]:
    """Return the lengths nobody gave: defaults that a maker should be able to see."""
    # A size to come near to is told at a glance, with where it is from.
    said = (each for each in scribe.sheet.figures if not each[0].startswith("fit_"))
    figures = [quantity for _, quantity in said if _is_usual(quantity)]
    return _section(scribe, "usual", scribe.blocks("sections/usual", {"figures": figures})) if figures else ()


def _is_usual(quantity: Quantity) -> bool:
    return isinstance(quantity.because, Assumed) and quantity.unit.is_length


def _changes(scribe: Scribe) -> tuple[Block, ...]:
    pattern = scribe.sheet.pattern
    values = {
        "version": pattern.version, "title": pattern.title, "designer": pattern.designer, "licence": pattern.licence,
        "changes": pattern.changes,
    }  # fmt: skip
    return scribe.blocks("sections/changes", values)
