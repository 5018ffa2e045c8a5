"""From a drawn block to the way it is sewn."""

from __future__ import annotations

from evenseam.geometry import arrange
from evenseam.pattern import Block, Method
from evenseam.piecing.assembling import Assembler
from evenseam.piecing.locked import locked_report
from evenseam.piecing.peel import Peeler
from evenseam.piecing.pieced import PiecedBlock
from evenseam.piecing.seam_tree import Ruler
from evenseam.piecing.search import piece_tree, section_tree
from evenseam.piecing.unsewable import check_drawing, report_locked, report_not_proved
from evenseam.problems import Outcome, Report


def piece_block(block: Block) -> Outcome[PiecedBlock]:
    """Work out sections, sewing order and joins of one block.

    For the foundation method a section is a set of pieces sewn one after the other on one paper, and there are as
    few sections as can be; for the rotary method every piece is a section of its own and the joins go down to
    pieces. Without a value when the drawing cannot be sewn with straight seams; the problems say why.
    """
    report = Report()
    check_drawing(block, report)
    if report.has_errors():
        return Outcome(None, report.as_tuple())
    locked = locked_report(block)
    if locked is not None:
        report_locked(block, locked, report)
        return Outcome(None, report.as_tuple())
    arrangement = arrange([piece.outline for piece in block.pieces])
    peeler = Peeler.of(arrangement)
    ruler = Ruler(arrangement, block.scale)
    assembler = Assembler(block, arrangement, peeler, ruler)
    if block.method is Method.ROTARY:
        return Outcome(assembler.pieced(piece_tree(peeler, ruler), is_fewest=True), report.as_tuple())
    found = section_tree(peeler, ruler)
    pieced = assembler.pieced(found.tree, is_fewest=found.is_fewest)
    if not found.is_fewest:
        report_not_proved(block, len(pieced.sections), found.at_least, report)
    return Outcome(pieced, report.as_tuple())
