"""How a foundation patch is laid: most with the longer edge along the seam, and which of them otherwise."""

from __future__ import annotations

from typing import Any

from evenseam.pattern import Cut, PatchUse, PieceSection, fabric_letters
from evenseam.piecing import SectionPiece
from evenseam.sheet import PatternSheet
from evenseam.sizing.patches import extent_along


def section_patches(sheet: PatternSheet, piecing: PieceSection) -> list[dict[str, Any]]:
    """Return what the words for every patch of a section are filled with, in sewing order.

    `lies` is "upright" for a print that has an up, "short" for a patch whose shorter edge goes along the seam, and
    empty for the others. The first patch has no seam yet: it is held over its area and looked through.
    """
    letters = fabric_letters(sheet.project.fabrics)
    pieced = next(pieced for pieced in sheet.blocks if pieced.block == piecing.block)
    members = {member.label: member for member in pieced.section(piecing.section).pieces}
    patches = []
    for patch in piecing.patches:
        cut = sheet.cuts.cut(patch.cut)
        patches.append(
            {
                "label": patch.label,
                "fabric": sheet.project.fabric(cut.material).name,
                "letter": letters[cut.material],
                "width": cut.width,
                "height": cut.height,
                "lies": _lies(sheet, piecing.block, patch, members[patch.label], cut),
            }
        )
    return patches


def _lies(sheet: PatternSheet, block: str, patch: PatchUse, member: SectionPiece, cut: Cut) -> str:
    if sheet.project.fabric(cut.material).is_directional:
        return "upright"
    if member.seam is None or cut.width.value == cut.height.value:
        return ""
    drawn = sheet.project.block(block)
    across, down = drawn.scale
    piece = next(piece for piece in drawn.pieces if piece.id == patch.piece)
    extent = extent_along(
        piece.outline.scaled(across, down), (member.seam.end - member.seam.start).scaled(across, down)
    )
    # The cut list gives the longer side of a patch as its width.
    return "short" if extent.along < extent.across else ""
