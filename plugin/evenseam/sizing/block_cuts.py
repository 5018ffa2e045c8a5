"""The cuts of a block: equal pieces of one fabric together, and which cut each piece is sewn from."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.geometry import Polygon
from evenseam.pattern import Assumed, Block, Cut, CutShape, Method, Quantity, derived
from evenseam.piecing import PiecedBlock, SectionPiece
from evenseam.sizing.ledger import named_after
from evenseam.sizing.patches import patch_name
from evenseam.sizing.rotary import rotary_name, rotary_piece
from evenseam.sizing.rotary_units import canonical
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.unit_squares import chosen_ways, whole_square_cuts


@dataclass(frozen=True, slots=True)
class CutGroup:
    """Pieces of one block that are cut alike."""

    id: str
    labels: tuple[str, ...]
    """A1, A4, …; for a block cut to size the names of its pieces: A, B, …"""
    pieces: tuple[str, ...]
    """Piece ids, in the same order."""
    fabric: str
    shape: CutShape
    width: Quantity
    height: Quantity
    outline: Polygon | None
    """Of a piece with a cutting template: finished, as the first of them stands in the block."""


def cut_groups(block: Block, pieced: PiecedBlock, sized: SizedProject) -> tuple[CutGroup, ...]:
    """Group the pieces of a block that have one fabric, shape and size, in sewing order of the first of each.

    Pieces cut to size are alike whichever way they are turned, unless the print has an up.
    """
    found: dict[tuple[object, ...], list[tuple[str, str, CutGroup]]] = {}
    for section in pieced.sections:
        for member in section.pieces:
            group = _alone(block, section.name, member, sized)
            width, height = group.width.value, group.height.value
            sides: tuple[object, ...] = (width, height)
            may_turn = not sized.project.fabric(group.fabric).is_directional
            if block.method is Method.ROTARY and may_turn and height < width:
                sides = (height, width)
            if group.outline is not None:
                sides = canonical(group.outline, may_turn=may_turn)
            key = (group.fabric, group.shape, sides)
            found.setdefault(key, []).append((group.labels[0], member.piece, group))
    return tuple(
        replace(
            members[0][2],
            labels=tuple(label for label, _, _ in members),
            pieces=tuple(piece for _, piece, _ in members),
        )
        for members in found.values()
    )


def _alone(block: Block, section: str, member: SectionPiece, sized: SizedProject) -> CutGroup:
    piece = next(piece for piece in block.pieces if piece.id == member.piece)
    outline = None
    if block.method is Method.FOUNDATION:
        label, stem, shape = member.label, patch_name(block.id, member.label), CutShape.PATCH
    else:
        label, stem = section, rotary_name(block.id, section)
        found = rotary_piece(block, piece, sized.project)
        shape = found.shape
        outline = found.finished if shape is CutShape.TEMPLATE else None
    width, height = sized.figure(f"{stem}_width"), sized.figure(f"{stem}_height")
    id = f"{block.id}-{label.lower()}"
    return CutGroup(id, (label,), (piece.id,), piece.fabric, shape, width, height, outline)


def cuts_by_piece(groups: tuple[CutGroup, ...]) -> dict[str, str]:
    """Return the cut id of every piece of a block."""
    return {piece: group.id for group in groups for piece in group.pieces}


def block_cuts(sized: SizedProject) -> tuple[Cut, ...]:
    """Return the cuts of all blocks, block by block."""
    cuts: list[Cut] = []
    for pieced in sized.blocks:
        block = sized.project.block(pieced.block)
        uses = sized.figure(f"{named_after(block.id, 'block')}_count")
        whole = chosen_ways(block, pieced, sized)
        from_squares = {piece for way in whole for piece in way.everywhere}
        for group in cut_groups(block, pieced, sized):
            left = [place for place, piece in enumerate(group.pieces) if piece not in from_squares]
            if left:
                single = replace(
                    group,
                    labels=tuple(group.labels[place] for place in left),
                    pieces=tuple(group.pieces[place] for place in left),
                )
                cuts.append(_cut(block, single, uses, sized))
        for way in whole:
            cuts += whole_square_cuts(block, way, sized)
    return tuple(cuts)


def _cut(block: Block, group: CutGroup, uses: Quantity, sized: SizedProject) -> Cut:
    in_block = Quantity(
        f"such pieces in one {block.name} block", Fraction(len(group.pieces)), Unit.COUNT,
        Assumed("pieces " + ", ".join(group.labels), "counted in the drawing"),
    )  # fmt: skip
    is_plain = block.plain_beside is not None
    label = (
        "plain squares between the blocks"
        if is_plain
        else f"{_listed(_NOUNS[group.shape], group.labels)} of the {block.name} block"
    )
    return Cut(
        group.id,
        label,
        group.fabric,
        group.shape,
        group.width,
        group.height,
        derived(f"number of {label}", in_block * uses),
        f"block:{block.id}",
        is_upright=sized.project.fabric(group.fabric).is_directional,
        labels=group.labels,
        outline=group.outline,
    )


_NOUNS = {
    CutShape.PATCH: ("patch", "patches"),
    CutShape.RECTANGLE: ("piece", "pieces"),
    CutShape.SQUARE: ("piece", "pieces"),
    CutShape.HALF_SQUARE_TRIANGLE: ("half-square triangle", "half-square triangles"),
    CutShape.QUARTER_SQUARE_TRIANGLE: ("quarter-square triangle", "quarter-square triangles"),
    CutShape.TEMPLATE: ("template piece", "template pieces"),
}


def _listed(nouns: tuple[str, str], labels: tuple[str, ...]) -> str:
    if len(labels) == 1:
        return f"{nouns[0]} {labels[0]}"
    return f"{nouns[1]} {', '.join(labels[:-1])} and {labels[-1]}"
