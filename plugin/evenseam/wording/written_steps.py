"""The steps of a program as blocks of the text, each group of them under its heading."""

from __future__ import annotations

from dataclasses import replace

from evenseam.pattern import (
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    AddSettingTriangles,
    AttachCornerPockets,
    AttachLoops,
    AttachRings,
    AttachSleeve,
    Bind,
    CloseEnvelope,
    CloseKnifeEdge,
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
    RoundCorners,
    Step,
    TrimForKnifeEdge,
    TrimPart,
    TrimTop,
    Turned,
)
from evenseam.wording.author_prose import Addressed
from evenseam.wording.checkpoints import checkpoint
from evenseam.wording.document import Block, Document, Heading, Picture, Pictures, StepBlock, Text
from evenseam.wording.edge_words import finish_key
from evenseam.wording.scribe import Scribe
from evenseam.wording.step_words import StepWords
from evenseam.wording.tree import parse_ours, plain_text
from evenseam.wording.unit_method_words import method_values
from evenseam.wording.workpieces import STRIP_KINDS, Workpieces


def written_steps(scribe: Scribe, prose: Addressed, known: Document | None) -> tuple[Block, ...]:
    """Return every step under its headings; `known` is the text for cloth of another width, whose steps are used."""
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
        return (section_heading(f"make-{key}", scribe.language.word("headings", key)),)
    block = scribe.sheet.project.block(id)
    count = scribe.uses(id)
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
        section_heading(f"make-{id}", title),
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


def section_heading(id: str, text: str) -> Heading:
    """Return the heading of a part of the page."""
    return Heading(2, id, (Text(text),))
