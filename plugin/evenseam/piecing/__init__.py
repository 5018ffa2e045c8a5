"""From a drawn block to sections, sewing order, seams and the shapes of its templates."""

from evenseam.piecing.piece_block import piece_block
from evenseam.piecing.pieced import PiecedBlock, Seam, Section, SectionJoin, SectionPiece

__all__ = ["PiecedBlock", "Seam", "Section", "SectionJoin", "SectionPiece", "piece_block"]
