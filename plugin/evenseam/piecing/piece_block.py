"""From a drawn block to the way it is sewn."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Number, sign
from evenseam.geometry import arrange
from evenseam.pattern import Block, Method
from evenseam.piecing.assembling import Assembler
from evenseam.piecing.codes import (
    BLOCK_LOCKED,
    OUTLINE_NOT_CONVEX,
    PIECE_NOT_CONVEX,
    PIECES_DO_NOT_FILL,
    TOO_MANY_PIECES,
)
from evenseam.piecing.peel import Peeler
from evenseam.piecing.pieced import PiecedBlock
from evenseam.piecing.seam_tree import Ruler
from evenseam.piecing.search import locked_sets, piece_tree, section_tree
from evenseam.problems import Outcome, Report

MOST_PIECES = 400
"""More pieces in one block than this are refused; a drawing from a stranger must not keep a machine busy."""


def piece_block(block: Block) -> Outcome[PiecedBlock]:
    """Work out sections, sewing order and joins of one block.

    For the foundation method a section is a set of pieces sewn one after the other on one paper, and there are as
    few sections as can be; for the rotary method every piece is a section of its own and the joins go down to
    pieces. Without a value when the drawing cannot be sewn with straight seams; the problems say why.
    """
    report = Report()
    _check(block, report)
    if report.has_errors():
        return Outcome(None, report.as_tuple())
    arrangement = arrange([piece.outline for piece in block.pieces])
    peeler = Peeler.of(arrangement)
    ruler = Ruler(arrangement, block.scale)
    locked = locked_sets(peeler)
    if locked:
        for pieces in locked:
            report.add(BLOCK_LOCKED, block.place, f"block {block.name!r}: no straight seam parts {pieces}")
        return Outcome(None, report.as_tuple())
    assembler = Assembler(block, arrangement, peeler, ruler)
    if block.method is Method.ROTARY:
        return Outcome(assembler.pieced(piece_tree(peeler, ruler)), report.as_tuple())
    found = section_tree(peeler, ruler)
    return Outcome(replace(assembler.pieced(found.tree), is_fewest=found.is_fewest), report.as_tuple())


def _check(block: Block, report: Report) -> None:
    name = f"block {block.name!r}"
    if len(block.pieces) > MOST_PIECES:
        report.add(
            TOO_MANY_PIECES,
            block.place,
            f"{name} has {len(block.pieces)} pieces; {MOST_PIECES} is the most",
            "draw it as several blocks and set them side by side",
        )
        return
    if not block.outline.is_convex:
        report.add(
            OUTLINE_NOT_CONVEX, block.place, f"{name} has an outline that bends inward", "draw it as several blocks"
        )
    for piece in block.pieces:
        if not piece.outline.is_convex:
            report.add(PIECE_NOT_CONVEX, piece.place or block.place, f"{name}: piece {piece.id} bends inward")
    total: Number = Fraction(0)
    for piece in block.pieces:
        total = total + piece.outline.area
    if not block.pieces or sign(total - block.outline.area) != 0:
        report.add(
            PIECES_DO_NOT_FILL,
            block.place,
            f"{name}: its pieces cover {total} square grid units, its outline holds {block.outline.area}",
            "close the gaps and part the overlaps",
        )
