"""The problems of this floor."""

from __future__ import annotations

from evenseam.problems import Code, Severity

BLOCK_LOCKED = Code(801, "block-locked")
PIECE_NOT_CONVEX = Code(802, "piece-needs-splitting")
PIECES_DO_NOT_FILL = Code(803, "pieces-do-not-fill-block")
TOO_MANY_PIECES = Code(804, "too-many-pieces-in-block")
OUTLINE_NOT_CONVEX = Code(805, "block-outline-bends-inward")
FEWEST_NOT_PROVED = Code(806, "fewest-sections-not-proved", Severity.WARNING)

CODES = (
    BLOCK_LOCKED,
    PIECE_NOT_CONVEX,
    PIECES_DO_NOT_FILL,
    TOO_MANY_PIECES,
    OUTLINE_NOT_CONVEX,
    FEWEST_NOT_PROVED,
)
