"""Pieces that finish so thin that their seam allowances would lie on each other: a warning, with the thinnest way."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number, Unit, format_length
from evenseam.geometry import Polygon, length_of
from evenseam.pattern import Block
from evenseam.problems import Report
from evenseam.sizing.codes import THIN_PIECE
from evenseam.sizing.sized import SizedProject

THINNEST = {Unit.INCH: Fraction(1, 8), Unit.CENTIMETRE: Fraction(3, 10)}
"""What can be sewn without the one seam running into the other (common practice)."""


def check_thin(sized: SizedProject, report: Report) -> None:
    """Warn of every piece that finishes thinner than can be sewn well, once for each block."""
    for pieced in sized.blocks:
        block = sized.project.block(pieced.block)
        widths = [(piece, _thinnest(block, piece.outline)) for piece in block.pieces]
        found = [(piece, wide) for piece, wide in widths if wide is not None]
        if not found:
            continue
        piece, wide = found[0]
        for other, as_wide in found:
            if as_wide < wide:
                piece, wide = other, as_wide
        unit = sized.project.unit
        others = "" if len(found) == 1 else f", and {len(found) - 1} more are as thin or nearly"
        report.add(
            THIN_PIECE, piece.place or block.place,
            f"{piece.id} of the {block.name} block finishes {format_length(wide, unit)} wide{others}; under "
            f"{format_length(THINNEST[unit], unit)} one seam runs into the next",
            hint="make the block larger, draw the piece wider, or leave it out",
        )  # fmt: skip


def _thinnest(block: Block, outline: Polygon) -> Number | None:
    """Return how wide a piece finishes where it is thinnest, if that is too thin to sew well."""
    shape = outline.scaled(*block.scale).clockwise()
    limit = THINNEST[block.width.unit]
    found: Number | None = None
    for start, end in shape.edges:
        way = end - start
        # The cross product is the distance from the edge times its length; squares are compared, so no root is needed.
        reach: Number = Fraction(0)
        for corner in shape.corners:
            across = way.cross(corner - start)
            reach = across if across > reach else reach
        if reach * reach < limit * limit * way.dot(way):
            wide = reach / length_of(way)
            found = wide if found is None or wide < found else found
    return found
