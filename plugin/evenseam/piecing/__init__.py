"""From a drawn block to sections, sewing order, seams and the shapes of its templates."""

from evenseam.piecing.convex import ConvexSplit, split_into_convex
from evenseam.piecing.label_place import LabelPlace, label_place
from evenseam.piecing.locked import AddedSeam, LockedReport, LockedSet, locked_report
from evenseam.piecing.piece_block import piece_block
from evenseam.piecing.pieced import PiecedBlock, Seam, Section, SectionJoin, SectionPiece
from evenseam.piecing.recognise import PieceKind, Recognised, exact_cut, recognise
from evenseam.piecing.templates import (
    MarkKind,
    MatchMark,
    SectionTemplate,
    TemplateEdge,
    TemplatePiece,
    TemplateSeam,
    cutting_template,
    section_templates,
)

__all__ = [
    "AddedSeam",
    "ConvexSplit",
    "LabelPlace",
    "LockedReport",
    "LockedSet",
    "MarkKind",
    "MatchMark",
    "PieceKind",
    "PiecedBlock",
    "Recognised",
    "Seam",
    "Section",
    "SectionJoin",
    "SectionPiece",
    "SectionTemplate",
    "TemplateEdge",
    "TemplatePiece",
    "TemplateSeam",
    "cutting_template",
    "exact_cut",
    "label_place",
    "locked_report",
    "piece_block",
    "recognise",
    "section_templates",
    "split_into_convex",
]
