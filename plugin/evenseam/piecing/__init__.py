"""From a drawn block to sections, sewing order, seams and the shapes of its templates."""

from evenseam.piecing.label_place import LabelPlace, label_place
from evenseam.piecing.piece_block import piece_block
from evenseam.piecing.pieced import PiecedBlock, Seam, Section, SectionJoin, SectionPiece
from evenseam.piecing.templates import (
    MarkKind,
    MatchMark,
    SectionTemplate,
    TemplateEdge,
    TemplatePiece,
    TemplateSeam,
    section_templates,
)

__all__ = [
    "LabelPlace",
    "MarkKind",
    "MatchMark",
    "PiecedBlock",
    "Seam",
    "Section",
    "SectionJoin",
    "SectionPiece",
    "SectionTemplate",
    "TemplateEdge",
    "TemplatePiece",
    "TemplateSeam",
    "label_place",
    "piece_block",
    "section_templates",
]
