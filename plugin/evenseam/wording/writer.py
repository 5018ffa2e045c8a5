"""A sheet as a document: the whole text of one size in one edition."""

from __future__ import annotations

from evenseam.cutting import SHRINKAGE, shop_step, spare
from evenseam.exact import Unit
from evenseam.pattern import (
    BATTING,
    INSULATION,
    Assumed,
    CutShape,
    Method,
    Quantity,
    Turned,
    fabric_letters,
)
from evenseam.problems import Outcome, Problem, Report
from evenseam.sheet import PatternSheet
from evenseam.wording.author_prose import read_prose
from evenseam.wording.catalogue import BASE_LANGUAGE, language
from evenseam.wording.cautions import cautions
from evenseam.wording.document import Block, Document, Heading, Paragraph, Picture, Text
from evenseam.wording.edge_words import fit_words, pad_values, rod_values
from evenseam.wording.figure_names import FigureNames
from evenseam.wording.glance_words import finished_description, glance
from evenseam.wording.marked import without_marks
from evenseam.wording.materials_words import fabric_cutting, folding, swatches
from evenseam.wording.other_ways import other_ways
from evenseam.wording.scribe import Scribe
from evenseam.wording.working_figures import print_marks, seam_test
from evenseam.wording.workpieces import TRIANGLES
from evenseam.wording.written_steps import section_heading, written_steps


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
        Picture("finished", f"{sheet.pattern.title}, {project.name}", finished_description(scribe)),
        *_paragraphs(sheet.pattern.summary, project.summary),
        *prose.introduction,
        *_section(scribe, "glance", (*glance(scribe), *fit_words(scribe))),
        *_section(scribe, "before", (*scribe.blocks("sections/before", _seam_values(scribe)), *cautions(scribe))),
        *_section(scribe, "materials", (swatches(scribe), *_materials(scribe), *other_ways(scribe))),
        *_section(scribe, "cutting", _cutting(scribe)),
        *_templates(scribe),
        *written_steps(scribe, prose, known),
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
    return (section_heading(key, scribe.language.word("headings", key)), *blocks)


def _paragraphs(*texts: str) -> tuple[Block, ...]:
    return tuple(
        Paragraph((Text(" ".join(without_marks(text).split())),)) for text in dict.fromkeys(texts) if text.strip()
    )


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
            "insulation": _bought_insulation(scribe),
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


def _bought_insulation(scribe: Scribe) -> dict[str, object] | None:
    """Return the layer of heat-resistant batting and how much to buy; None for what comes near no heat."""
    bought = next((material for material in scribe.sheet.materials if material.material == INSULATION), None)
    if bought is None or bought.piece is None:
        return None
    return {"width": bought.piece[0], "height": bought.piece[1], "buy": bought.buy}


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
            {"name": block.name, "count": scribe.uses(block.id)}
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
