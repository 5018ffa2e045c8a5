"""From a drawn block to sections, sewing order, seams and the shapes of its templates."""

from evenseam.piecing.pieced import PiecedBlock, Seam, Section, SectionJoin, SectionPiece

__all__ = ["PiecedBlock", "Seam", "Section", "SectionJoin", "SectionPiece"]
