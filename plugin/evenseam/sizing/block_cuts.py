"""The cuts of a block: equal pieces of one fabric together, and which cut each piece is sewn from."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, Block, Cut, CutShape, Method, Quantity, derived
from evenseam.piecing import PiecedBlock
from evenseam.sizing.ledger import named_after
from evenseam.sizing.patches import patch_name
from evenseam.sizing.rotary import rotary_name
from evenseam.sizing.sized import SizedProject


@dataclass(frozen=True, slots=True)
class CutGroup:
    """Pieces of one block that are cut alike."""

    id: str
    labels: tuple[str, ...]
    """A1, A4, …; for a block cut to size the names of its pieces: A, B, …"""
    pieces: tuple[str, ...]
    """Piece ids, in the same order."""
    fabric: str
    width: Quantity
    height: Quantity


def cut_groups(block: Block, pieced: PiecedBlock, sized: SizedProject) -> tuple[CutGroup, ...]:
    """Group the pieces of a block that have one fabric and one size, in sewing order of the first of each."""
    fabrics = {piece.id: piece.fabric for piece in block.pieces}
    found: dict[tuple[str, object, object], list[tuple[str, str, Quantity, Quantity]]] = {}
    for section in pieced.sections:
        for member in section.pieces:
            if block.method is Method.FOUNDATION:
                label, stem = member.label, patch_name(block.id, member.label)
            else:
                label, stem = section.name, rotary_name(block.id, section.name)
            width, height = sized.figure(f"{stem}_width"), sized.figure(f"{stem}_height")
            alike = (fabrics[member.piece], width.value, height.value)
            found.setdefault(alike, []).append((label, member.piece, width, height))
    return tuple(
        CutGroup(
            f"{block.id}-{members[0][0].lower()}",
            tuple(label for label, _, _, _ in members),
            tuple(piece for _, piece, _, _ in members),
            fabric, members[0][2], members[0][3],
        )
        for (fabric, _, _), members in found.items()
    )  # fmt: skip


def cuts_by_piece(groups: tuple[CutGroup, ...]) -> dict[str, str]:
    """Return the cut id of every piece of a block."""
    return {piece: group.id for group in groups for piece in group.pieces}


def block_cuts(sized: SizedProject) -> tuple[Cut, ...]:
    """Return the cuts of all blocks, block by block."""
    cuts: list[Cut] = []
    for pieced in sized.blocks:
        block = sized.project.block(pieced.block)
        uses = sized.figure(f"{named_after(block.id, 'block')}_count")
        cuts += [_cut(block, group, uses, sized) for group in cut_groups(block, pieced, sized)]
    return tuple(cuts)


def _cut(block: Block, group: CutGroup, uses: Quantity, sized: SizedProject) -> Cut:
    in_block = Quantity(
        f"such pieces in one {block.name} block", Fraction(len(group.pieces)), Unit.COUNT,
        Assumed("pieces " + ", ".join(group.labels), "counted in the drawing"),
    )  # fmt: skip
    is_patch = block.method is Method.FOUNDATION
    square = group.width.value == group.height.value
    label = f"{_listed('patch' if is_patch else 'piece', group.labels)} of the {block.name} block"
    return Cut(
        group.id,
        label,
        group.fabric,
        CutShape.PATCH if is_patch else CutShape.SQUARE if square else CutShape.RECTANGLE,
        group.width,
        group.height,
        derived(f"number of {label}", in_block * uses),
        f"block:{block.id}",
        is_upright=sized.project.fabric(group.fabric).is_directional,
    )


def _listed(noun: str, labels: tuple[str, ...]) -> str:
    if len(labels) == 1:
        return f"{noun} {labels[0]}"
    plural = {"patch": "patches", "piece": "pieces"}[noun]
    return f"{plural} {', '.join(labels[:-1])} and {labels[-1]}"
