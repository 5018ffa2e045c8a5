"""Two sheets become changed steps, checkpoints, sections and template outlines."""

from __future__ import annotations

from collections.abc import Hashable, Iterator

from evenseam.geometry import Polygon
from evenseam.pattern import Block, Method, Quantity, Step, derived
from evenseam.piecing import PiecedBlock, Section
from evenseam.review.causes import Causes
from evenseam.review.changes import Added, Change, Kind, Removed, Renamed, Where, remeasured, restated
from evenseam.review.matching import Matching, match_parts
from evenseam.review.part_words import block_words
from evenseam.review.parts import PartsCompared
from evenseam.review.renames import Renames
from evenseam.sheet import PatternSheet


def compare_steps(
    old: PatternSheet, new: PatternSheet, where: Where, renames: Renames, causes: Causes
) -> Iterator[Change]:
    """Yield steps added, removed, renamed, done another number of times or in another order, and checkpoints."""
    matching = match_parts(
        old.program.steps, new.program.steps, lambda step: step.id,
        [(lambda step: renames.step(step.id), lambda step: step.id), (_alike, _alike)],
    )  # fmt: skip
    for before, after in matching.pairs:
        if before.id != after.id:
            because = tuple(cause for cause in causes.parts if cause.part == _part(after) and cause.about == "name")
            yield Renamed(where, Kind.STEP, before.id, after.id, in_words(before.id), in_words(after.id), because)
        ids, labels = (before.id, after.id), (in_words(before.id), in_words(after.id))
        if before.times != after.times:
            times = (str(before.times), str(after.times))
            yield restated(where, Kind.STEP, ids, labels, "times", times, causes.of_part("layout"))
        if before.measures and after.measures and _values(before.measures) != _values(after.measures):
            figures = (before.measures, after.measures)
            yield remeasured(where, Kind.CHECKPOINT, ids, labels, figures, causes.of(*figures, ""))
    for step in matching.removed:
        yield Removed(where, Kind.STEP, step.id, in_words(step.id), step.measures or (), causes.of_part(_part(step)))
    for step in matching.added:
        yield Added(where, Kind.STEP, step.id, in_words(step.id), step.measures or (), causes.of_part(_part(step)))
    yield from _order(old, new, matching, where, causes)


def compare_blocks(
    old: PatternSheet, new: PatternSheet, where: Where, parts: PartsCompared, causes: Causes
) -> Iterator[Change]:
    """Yield sections with other pieces or another order, and templates with another outline."""
    now = dict(parts.renames.blocks)
    stood = {now.get(sewn.block, sewn.block): sewn for sewn in old.blocks}
    known = {now.get(block.id, block.id): block for block in old.project.blocks}
    for sewn in new.blocks:
        block = new.project.block(sewn.block)
        if sewn.block not in stood:
            continue
        before, drawn = stood[sewn.block], known[sewn.block]
        scope = f"block:{block.id}"
        one, two = _sewing(drawn, before), _sewing(block, sewn)
        if one != two and block.method is drawn.method is Method.FOUNDATION:
            ids, labels = (drawn.id, block.id), (block_words(drawn.name), block_words(block.name))
            texts = (_sections(before), _sections(sewn))
            yield restated(where, Kind.SECTIONS, ids, labels, "sections", texts, causes.of_part(scope))
        if block.method is drawn.method is Method.FOUNDATION:
            yield from _templates(drawn, before, block, sewn, where, causes)


def in_words(id: str) -> str:
    """Return a step's id as words."""
    return id.replace("-", " ")


def _templates(
    drawn: Block, before: PiecedBlock, block: Block, sewn: PiecedBlock, where: Where, causes: Causes
) -> Iterator[Change]:
    old = {section.name: section for section in before.sections}
    new = {section.name: section for section in sewn.sections}
    for name in dict.fromkeys((*old, *new)):
        labels = tuple(f"template {name} of the {block_words(each.name)}" for each in (drawn, block))
        ids = tuple(f"{each.id}-{name.lower()}" for each in (drawn, block))
        scope = f"block:{block.id}"
        if name not in new:
            yield Removed(where, Kind.TEMPLATE, ids[0], labels[0], _size(drawn, old[name]), causes.of_part(scope))
        elif name not in old:
            yield Added(where, Kind.TEMPLATE, ids[1], labels[1], _size(block, new[name]), causes.of_part(scope))
        elif _outline(drawn, old[name]) != _outline(block, new[name]):
            sizes = (_size(drawn, old[name]), _size(block, new[name]))
            because = causes.of(*sizes, scope)
            yield remeasured(where, Kind.TEMPLATE, (ids[0], ids[1]), (labels[0], labels[1]), sizes, because)


def _size(block: Block, section: Section) -> tuple[Quantity, Quantity]:
    """Return how wide and high a section is, finished."""
    left, top, right, bottom = section.outline.bounds
    across, down = (right - left) / block.grid_width, (bottom - top) / block.grid_height
    name = f"section {section.name} of {block.name}"
    return derived(f"width of {name}", block.width * across), derived(f"height of {name}", block.height * down)


def _outline(block: Block, section: Section) -> Polygon:
    return _from_first(section.outline.scaled(*block.scale).clockwise())


def _from_first(polygon: Polygon) -> Polygon:
    """Return a polygon with its corners counted from its topmost, of those the leftmost, moved to the origin."""
    corners = polygon.corners
    first = min(range(len(corners)), key=lambda n: (corners[n].y, corners[n].x))
    turned = corners[first:] + corners[:first]
    return Polygon(tuple(corner - turned[0] for corner in turned))


def _sewing(block: Block, sewn: PiecedBlock) -> tuple[Hashable, ...]:
    """Return the shapes in their sewing order, section by section, whatever they are called."""
    shapes = {piece.id: piece.outline.scaled(1 / block.grid_width, 1 / block.grid_height) for piece in block.pieces}
    return tuple(
        (section.name, tuple(frozenset(shapes[member.piece].corners) for member in section.pieces))
        for section in sewn.sections
    )


def _sections(sewn: PiecedBlock) -> str:
    return ", ".join(f"{section.name} of {len(section.pieces)}" for section in sewn.sections)


def _alike(step: Step) -> Hashable:
    return type(step.operation), step.times, _values(step.measures) if step.measures else None


def _values(figures: tuple[Quantity, ...]) -> tuple[object, ...]:
    return tuple(figure.value for figure in figures)


def _part(step: Step) -> str:
    operation = step.operation
    borders: tuple[str, ...] = getattr(operation, "borders", ())
    border = borders[-1] if borders else getattr(operation, "border", None)
    block = getattr(operation, "block", None)
    return (
        f"border:{border}" if border else f"block:{block}" if block else _PARTS.get(type(operation).__name__, "layout")
    )


_PARTS = {
    "LayerTurned": "finish", "TurnOut": "finish", "Topstitch": "finish", "LayerForQuilting": "finish",
    "QuiltLayers": "finish", "SquareUp": "finish", "MakeBinding": "binding", "Bind": "binding",
    "MakeSleeve": "hanging", "AttachSleeve": "hanging", "MakeCornerPockets": "hanging",
    "AttachCornerPockets": "hanging", "RoundCorners": "binding", "Face": "finish", "TrimForKnifeEdge": "finish",
    "CloseKnifeEdge": "finish", "HemPanel": "finish", "CloseEnvelope": "finish", "MakeLoop": "hanging",
    "AttachLoops": "hanging", "AttachRings": "hanging",
}  # fmt: skip


def _order(
    old: PatternSheet, new: PatternSheet, matching: Matching[Step], where: Where, causes: Causes
) -> Iterator[Change]:
    """Compare the order of the steps both have, each under its new id on the new side."""
    now = {before.id: after.id for before, after in matching.pairs}
    was = {after.id: before.id for before, after in matching.pairs}
    stood = [now[step.id] for step in old.program.steps if step.id in now]
    stand = [step.id for step in new.program.steps if step.id in was]
    if stood != stand:
        old_text = ", ".join(in_words(was[id]) for id in stood)
        new_text = ", ".join(in_words(id) for id in stand)
        names, because = ("steps", "steps"), causes.of_part("order")
        yield restated(where, Kind.STEP_ORDER, names, names, "order", (old_text, new_text), because)
