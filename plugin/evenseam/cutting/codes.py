"""The problems this floor can find: numbers 5xx."""

from __future__ import annotations

from evenseam.problems import Code, Severity

PIECE_WIDER_THAN_CLOTH = Code(501, "piece-wider-than-cloth")
TOO_MANY_PIECES = Code(502, "too-many-pieces")
SIZE_NOT_CUTTABLE = Code(503, "size-not-cuttable")
USABLE_WIDTH_NOT_POSITIVE = Code(504, "usable-width-not-positive")
BIAS_BINDING_TOO_LONG = Code(505, "bias-binding-too-long")
STRIPS_AGAINST_THE_PRINT = Code(506, "strips-against-the-print", Severity.WARNING)
PIECE_LARGER_THAN_CLOTH_PIECE = Code(507, "piece-larger-than-cloth-piece")

CODES = (
    PIECE_WIDER_THAN_CLOTH,
    TOO_MANY_PIECES,
    SIZE_NOT_CUTTABLE,
    USABLE_WIDTH_NOT_POSITIVE,
    BIAS_BINDING_TOO_LONG,
    STRIPS_AGAINST_THE_PRINT,
    PIECE_LARGER_THAN_CLOTH_PIECE,
)
