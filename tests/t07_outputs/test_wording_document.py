"""The text of a page: whole, true to the sheet, and readable aloud."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from evenseam.cutting import CuttingPlan, cloth_piece, rectangles, shop_step, spare
from evenseam.exact import format_length, format_number
from evenseam.pattern import Cut, CutList, CutShape, JoinRun, Pattern, Project
from evenseam.sheet import PatternSheet, compute_sheet
from evenseam.wording import check_prose, write_document
from evenseam.wording.document import (
    Beside,
    Caution,
    Checkpoint,
    Document,
    ListBlock,
    Paragraph,
    Picture,
    StepBlock,
    Swatches,
    Table,
)
from evenseam.wording.typed_measurement import typed_measurements
from evenseam.wording.working_figures import binding_ends, print_marks, seam_test
from hypothesis import given, settings
from support.document_words import as_text, every_block, every_run, figures_of, words_of
from support.edges import ENVELOPE, FACED, KNIFE_EDGE, LOOPS, RINGS, ROUNDED, showing
from support.samples import (
    LAP_QUILT,
    MUG_RUG,
    PATTERN,
    POCKETS,
    PROJECTS,
    WALL_HANGING,
    count,
)
from support.strategies import projects

GOLDEN = Path(__file__).parent / "golden" / "wording"
VARIANTS = (
    *PROJECTS,
    replace(MUG_RUG, size="pocketed", name="Pocketed", hanging=POCKETS),
    replace(WALL_HANGING, size="pocketed-bound", name="Pocketed and bound", hanging=POCKETS),
)

EDGED = (
    replace(WALL_HANGING, size="faced-with-loops", finish=FACED, hanging=LOOPS),
    replace(WALL_HANGING, size="faced-with-pockets", finish=FACED, hanging=POCKETS),
    replace(WALL_HANGING, size="folded-with-rings", finish=KNIFE_EDGE, hanging=RINGS),
    replace(WALL_HANGING, size="folded-with-loops", finish=KNIFE_EDGE, hanging=LOOPS),
    replace(
        MUG_RUG, size="pot-holder", use="pot holder", finish=ROUNDED, hanging=replace(LOOPS, number=count("loop", 1))
    ),
    replace(MUG_RUG, size="turned-pot-holder", use="pot holder", hanging=replace(LOOPS, number=count("loop", 1))),
    replace(MUG_RUG, size="cushion", finish=ENVELOPE),
    replace(LAP_QUILT, size="wide-binding", finish=showing("1/2")),
    replace(WALL_HANGING, size="caught-loops", hanging=LOOPS),
)
"""Every finish, and everything a project hangs by."""


def sheet_of(project: Project, pattern: Pattern = PATTERN) -> PatternSheet:
    outcome = compute_sheet(replace(pattern, projects=(project,)), project)
    assert outcome.value is not None, outcome.problems
    return outcome.value


def document_of(sheet: PatternSheet, language: str = "en") -> Document:
    outcome = write_document(sheet, language)
    assert outcome.value is not None
    assert outcome.problems == check_prose(sheet)
    return outcome.value


@pytest.fixture(scope="module", params=VARIANTS, ids=lambda project: project.size)
def sheet(request: pytest.FixtureRequest) -> PatternSheet:
    return sheet_of(request.param)


class TestEveryDocument:
    """What holds for every pattern, the invented ones and those drawn at random."""

    def test_holds_for_samples(self, sheet: PatternSheet) -> None:
        check_document(sheet, document_of(sheet))

    @pytest.mark.parametrize("project", EDGED, ids=lambda project: project.size)
    def test_holds_for_every_edge(self, project: Project) -> None:
        sheet = sheet_of(project)
        check_document(sheet, document_of(sheet))

    @settings(max_examples=15)
    @given(projects())
    def test_holds_for_random_projects(self, project: Project) -> None:
        outcome = compute_sheet(replace(PATTERN, projects=(project,)), project)
        if outcome.value is not None:
            check_document(outcome.value, document_of(outcome.value))


def check_document(sheet: PatternSheet, document: Document) -> None:
    """Check one document against its sheet."""
    check_steps(sheet, document)
    check_figures(sheet, document)
    check_pictures(sheet, document)
    check_language(document)
    check_materials(sheet, document)


def check_steps(sheet: PatternSheet, document: Document) -> None:
    steps = [block for block in document.blocks if isinstance(block, StepBlock)]
    told = [id for step in steps for id in (step.id, *step.also)]
    assert told == [step.id for step in sheet.program.steps]
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
    measured = {read.step: read for read in sheet.log.measurements}
    for step in steps:
        inner = list(every_block(step.blocks))
        pictures = [block for block in inner if isinstance(block, Picture)]
        own = [f"step-{id}" for id in (step.id, *step.also)]
        assert pictures[0].name == own[0]
        assert [picture.name for picture in pictures] == [name for name in own if name in {p.name for p in pictures}]
        assert all(len(picture.description.split()) >= 5 for picture in pictures)
        assert any(isinstance(block, (Paragraph, ListBlock)) for block in inner), step.title
        checkpoints = [block for block in inner if isinstance(block, Checkpoint)]
        if step.also:
            assert not checkpoints
            check_shared(sheet, step)
            continue
        assert len(pictures) == 1
        assert pictures[0].title == step.title
        assert len(checkpoints) <= 1
        if checkpoints:
            read = measured[step.id]
            width, height = figures_of(checkpoints[0].inlines)
            assert width.text == format_number(read.width, sheet.project.unit)
            assert height.text == format_length(read.height, sheet.project.unit)
            assert step.blocks[-1] is checkpoints[0]


def check_shared(sheet: PatternSheet, step: StepBlock) -> None:
    """Steps told as one: each row that can be measured has its line, with its size as the simulator measured it."""
    (table,) = (block for block in step.blocks if isinstance(block, Table))
    unit = sheet.project.unit
    steps = [sheet.program.step(id) for id in (step.id, *step.also)]
    read = {read.step: read for read in sheet.log.measurements}
    if isinstance(steps[0].operation, JoinRun):
        found = [(words_of(row[1]), words_of(row[-1])) for row in table.rows]
        sizes = [(read[one.id].width, read[one.id].height) for one in steps]
        wanted = [f"{format_number(width, unit)} × {format_length(height, unit)}" for width, height in sizes]
        assert found == [(str(one.times), size) for one, size in zip(steps, wanted, strict=True)]


def check_figures(sheet: PatternSheet, document: Document) -> None:
    """Every figure in the text is a figure, a cut or a measure of the sheet, and no other measurement is in it."""
    known = known_texts(sheet)
    figures = dict(sheet.figures)
    for _, run in every_run(document):
        for measured in figures_of(run):
            assert measured.text in known, (measured, words_of(run))
            if measured.figure:
                quantity = figures[measured.figure]
                assert measured.text in (quantity.text, quantity.number)
        words = words_of(run, figure="…")
        assert not typed_measurements(words), (typed_measurements(words), words)


def known_texts(sheet: PatternSheet) -> set[str]:
    project, unit = sheet.project, sheet.project.unit
    test = seam_test(project.seam_allowance)
    quantities = [quantity for _, quantity in sheet.figures]
    quantities += [side for cut in sheet.cuts.cuts for side in (cut.width, cut.height)]
    quantities += [side for step in sheet.program.steps for side in step.measures or ()]
    quantities += [border.width for border in project.borders]
    quantities += [side for block in project.blocks for side in (block.width, block.height)]
    quantities += [
        project.seam_allowance,
        project.usable_width,
        project.finish.backing_overage,
        project.finish.batting_overage,
    ]
    quantities += [material.buy for material in sheet.materials]
    ways = (*sheet.methods, *sheet.chosen_methods)
    quantities += [square.larger for way in ways for square in way.squares if square.larger]
    quantities += [test.strip_width, test.strip_length, test.middle, test.whole, *print_marks(unit)]
    numbers = [(quantity.value, quantity.unit) for quantity in quantities]
    for read in sheet.log.measurements:
        numbers += [(read.width, unit), (read.height, unit)]
    for material in sheet.materials:
        if material.plan:
            numbers += [(section, unit) for section in material.plan.sections]
            numbers += [(bias.side.value, unit) for bias in material.plan.bias]
            numbers += [(joined.spare.value, unit) for joined in material.plan.joined if joined.spare]
            numbers += [(material.plan.length.value, unit), (material.plan.lower_bound, unit)]
            for line in material.plan.lines:
                numbers += [(line.strip_width, unit), (line.strip_length, unit)]
                numbers += [(side, unit) for subcut in line.subcuts for side in (subcut.width, subcut.height)]
        if material.packaged:
            numbers += [(side, unit) for side in (material.packaged.width, material.packaged.length)]
        numbers += [(other.usable_width.value, unit) for other in material.alternatives]
    numbers += [(at.usable_width.value, unit) for ways in sheet.ways_to_buy for at in ways.widths]
    quarter = cloth_piece("fat quarter", unit)
    numbers += [(quarter.width.value, unit), (quarter.height.value, unit)]
    numbers += [(allowed.value, allowed.unit) for allowed in (spare(unit), shop_step(project))]
    if hasattr(project.finish, "binding"):
        ends = binding_ends(sheet.sized.top_width, sheet.sized.top_height, project.finish.binding.strip_width)
        numbers += [(ends.tail.value, unit), (ends.gap.value, unit), (project.finish.binding.strip_width.value, unit)]
    return {text for value, known in numbers for text in (format_length(value, known), format_number(value, known))}


def check_pictures(sheet: PatternSheet, document: Document) -> None:
    names = [block.name for block in every_block(document.blocks) if isinstance(block, Picture)]
    assert names[0] == "finished"
    assert len(names) == len(set(names))
    wanted = {"finished", *(f"step-{block.id}" for block in document.blocks if isinstance(block, StepBlock))}
    # Of steps that are told as one, some more are shown.
    names = [name for name in names if name in wanted or not name.startswith("step-")]
    plans = [material.plan for material in sheet.materials if material.plan]
    wanted |= {"folded-cloth" for plan in plans for line in plan.lines if line.is_full_width}
    wanted |= {f"cutting-{material.material}" for material in sheet.materials if material.plan}
    sewn = {getattr(step.operation, "block", "") for step in sheet.program.steps} - {""}
    wanted |= {f"{kind}-{block}" for block in sewn for kind in ("block", "pieces")}
    assert set(names) == wanted
    for block in every_block(document.blocks):
        if isinstance(block, Picture):
            assert block.title and block.description.endswith("."), block
            check_words(block.title)
            check_words(block.description)


def check_materials(sheet: PatternSheet, document: Document) -> None:
    (swatches,) = (block for block in document.blocks if isinstance(block, Swatches))
    for (id, _, name, _, line), material in zip(swatches.rows, (m for m in sheet.materials if m.plan), strict=True):
        assert (id, name) == (material.material, material.name)
        assert next(figures_of(line)).text == material.buy.text
    check_other_ways(sheet, document)
    beside = {block.picture.name: block for block in document.blocks if isinstance(block, Beside)}
    for material in sheet.materials:
        if material.plan is not None:
            said = as_text(Document("", "", (beside[f"cutting-{material.material}"],)))
            for cut in sheet.cuts.of(material.material):
                check_cut(cut, sheet.cuts, material.plan, said)


def check_cut(cut: Cut, cuts: CutList, plan: CuttingPlan, said: str) -> None:
    """Its label stands with its cut size and, over all strips it comes from, with the right number of pieces."""
    if cut.shape in (CutShape.BINDING, CutShape.BIAS_BINDING):
        short, long = sorted((cut.width, cut.height), key=lambda side: side.value)
        assert f"for the {cut.label} is {short.text} wide, and {long.text} long in all" in said
        return
    size = f"{cut.width.number} × {cut.height.text}"
    is_joined = any(joined.cut == cut.id for joined in plan.joined)
    if any(joined.cut == cut.id and joined.panels for joined in plan.joined):
        assert f"cut the {cut.label} to {size}." in said
        return
    mark = "" if is_joined else rf" \({plan.numbers[cut.id]}\)"
    alike = [cuts.cut(id) for group in plan.alike if cut.id in group and not is_joined for id in group] or [cut]
    sizes = "|".join(re.escape(f"{each.width.number} × {each.height.text}") for each in alike)
    item = rf"(\d+) (?:pieces?|squares?) (?:{sizes})[^:\n]*: (.+){mark}\.?$"
    found = [
        int(count)
        for count, label in re.findall(item, said, re.M)
        if (cut.label in label if len(alike) > 1 else cut.label == label)
    ]
    assert sum(found) == sum(map(rectangles, alike)), (cut.label, size, said)


def check_other_ways(sheet: PatternSheet, document: Document) -> None:
    tables = [block for block in document.blocks if isinstance(block, Table)]
    (table,) = (table for table in tables if "fabric of other widths" in table.caption)
    for row, ways in zip(table.rows, sheet.ways_to_buy, strict=True):
        name, *told = (words_of(cell) for cell in row)
        assert name == sheet.project.fabric(ways.material).name
        assert [text for text in told if text.endswith((" yd", " m"))] == [at.buy.text for at in ways.widths]
        if ways.fat_quarters is not None:
            assert told[-1].split(",")[0] == str(ways.fat_quarters.whole)
            assert ("without the backing" in told[-1]) == ways.is_without_backing


def check_language(document: Document) -> None:
    for block, run in every_run(document):
        words = words_of(run)
        check_words(words)
        if isinstance(block, Checkpoint):
            assert words.endswith("."), words
        if isinstance(block, Paragraph) and words.rstrip("0123456789").count(" ") and re.search(r"[.!?] ", words):
            assert words[-1] in ".:!?)", words
    for block in document.blocks:
        if isinstance(block, Paragraph):
            assert words_of(block.inlines)[-1] in ".:!?", words_of(block.inlines)
        if isinstance(block, StepBlock):
            check_words(block.title)
            assert not block.title.endswith((".", ":"))
            for inner in block.blocks:
                if isinstance(inner, Paragraph):
                    assert words_of(inner.inlines)[-1] in ".:!?"
                if isinstance(inner, ListBlock):
                    # Either every item is a sentence, or none is.
                    ends = {words_of(item[0].inlines)[-1] in ".:!?" for item in inner.items}  # type: ignore[union-attr]
                    assert len(ends) == 1
        if isinstance(block, Caution):
            for inner in every_block(block.blocks):
                if isinstance(inner, Paragraph):
                    assert words_of(inner.inlines)[-1] == "."


MANY = "strips|pieces|blocks|rows|columns|sections|patches|lengths|panels|squares|seams|times|cornerstones"


def check_words(words: str) -> None:
    """Check a stretch of words for what a program gets wrong and a person would not."""
    assert words.strip() == words and words, repr(words)
    for slip in (
        "  ",
        "{{",
        "}}",
        "{%",
        "None",
        "Undefined",
        " ,",
        " .",
        " :",
        "..",
        "( ",
        " )",
        "\\",
        "\ue000",
        "\ue001",
        "\ue002",
        "in in ",
        "the the ",
    ):
        assert slip not in words, (slip, words)
    assert not re.search(rf"\b(?:1|one) (?:{MANY})\b", words), words
    assert not re.search(
        r"\b(?:[2-9]|\d\d+|two|three|four|five|six|seven|eight|nine) (?:strip|piece|block|row|section|patch|length|panel|square|time|cornerstone)\b",
        words,
    ), words
    assert not re.search(r"\ba (?!one)[aeio]", words), words
    assert not re.search(r"\ban [^aeiouh8]", words), words
    assert not re.search(r"[a-z]\.[A-Z]", words), words


@pytest.mark.parametrize("project", PROJECTS, ids=lambda project: project.size)
def test_wording_is_as_it_was_approved(project: Project, update_golden: bool) -> None:
    """The text of the samples, to be read when it changes; accept it with --update-golden.

    What the cutting plans decide is left out: a better plan is no change of wording.
    """
    text = as_text(document_of(sheet_of(project)), without=("materials", "cutting"))
    path = GOLDEN / f"{project.size}.txt"
    if update_golden:
        path.write_text(text, "utf-8")
    assert text == path.read_text("utf-8")


def test_document_is_the_same_twice() -> None:
    assert document_of(sheet_of(LAP_QUILT)) == document_of(sheet_of(LAP_QUILT))
