"""The pieces of a block that is cut to size: finished shape plus a seam allowance on every side."""

from __future__ import annotations

from evenseam.geometry import Polygon
from evenseam.pattern import Block, Project
from evenseam.piecing import PiecedBlock
from evenseam.problems import Report
from evenseam.sizing.codes import NOT_YET
from evenseam.sizing.ledger import Ledger, key

_RULE = "finished size and a seam allowance on either side"
_SOURCE = "Testing your scant quarter inch seam, Janelle Cahoon, Quiltcentric, 2012"


def size_rotary_pieces(block: Block, pieced: PiecedBlock, project: Project, ledger: Ledger, report: Report) -> None:
    """Enter width and height of every piece, lantern_a_cut_width and so on; report pieces of other shapes."""
    across, down = block.scale
    pieces = {piece.id: piece for piece in block.pieces}
    for section in pieced.sections:
        piece = pieces[section.pieces[0].piece]
        if not is_upright_rectangle(piece.outline):
            report.add(
                NOT_YET, piece.place or block.place,
                f"piece {piece.id} of the block {block.name} is no upright rectangle; only squares and rectangles can "
                "be cut by size so far",
                hint="sew the block on a foundation: method: foundation",
            )  # fmt: skip
            continue
        left, top, right, bottom = piece.outline.bounds
        for side, whole, reach in (
            ("width", block.width, (right - left) * across),
            ("height", block.height, (bottom - top) * down),
        ):
            finished = whole * (reach / whole.value)
            ledger.work_out(
                f"{rotary_name(block.id, section.name)}_{side}", finished + 2 * project.seam_allowance,
                label=f"cut {side} of piece {section.name} of {block.name}", rule=_RULE, source=_SOURCE,
            )  # fmt: skip


def rotary_name(block: str, section: str) -> str:
    """Return the stem of the figures of one rotary piece: lantern_a_cut."""
    return f"{key(block)}_{key(section)}_cut"


def is_upright_rectangle(outline: Polygon) -> bool:
    """Tell whether a shape fills its own bounds."""
    left, top, right, bottom = outline.bounds
    return outline.area == (right - left) * (bottom - top)
