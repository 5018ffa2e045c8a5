"""Everything that can go wrong on the sewing table."""

from __future__ import annotations

from evenseam.problems import Code, Severity

PIECE_MISSING = Code(450, "piece-missing")
PIECE_LEFT_OVER = Code(451, "piece-left-over")
WORKPIECE_UNKNOWN = Code(452, "workpiece-unknown")
NAME_USED_TWICE = Code(453, "name-used-twice")
COUNT_NOT_WHOLE = Code(454, "count-not-whole")
EDGES_DIFFER = Code(455, "edges-differ")
MEASURE_DISAGREES = Code(456, "measure-disagrees")
WRONG_FABRIC = Code(457, "wrong-fabric")
WRONG_WORKPIECE = Code(458, "wrong-workpiece")
PATCH_TOO_SMALL = Code(459, "patch-too-small")
PATCH_TOO_LARGE = Code(460, "patch-too-large")
PATCH_OFF_GRID = Code(461, "patch-off-grid")
SEAM_NOT_WHOLE = Code(462, "seam-not-whole")
PIECES_LISTED_WRONGLY = Code(463, "pieces-listed-wrongly")
BLOCK_NOT_FILLED = Code(464, "block-not-filled")
PIECE_SIZE_WRONG = Code(465, "piece-size-wrong")
BLOCKS_NOT_AS_ARRANGED = Code(466, "blocks-not-as-arranged")
SASHING_NOT_AS_DECIDED = Code(467, "sashing-not-as-decided")
BORDER_WIDTH_DIFFERS = Code(468, "border-width-differs")
BORDER_ORDER_DIFFERS = Code(469, "border-order-differs")
TOP_SIZE_DIFFERS = Code(470, "top-size-differs")
LAYER_SIZE_DIFFERS = Code(471, "layer-size-differs")
FIGURE_DIFFERS = Code(472, "figure-differs")
OPENING_TOO_LONG = Code(473, "opening-too-long")
TOPSTITCH_TOO_FAR = Code(474, "topstitch-too-far")
BINDING_TOO_NARROW = Code(475, "binding-too-narrow")
BINDING_BARELY_REACHES = Code(476, "binding-barely-reaches", Severity.WARNING)
BINDING_LENGTH_DIFFERS = Code(477, "binding-length-differs")
SLEEVE_SIZE_DIFFERS = Code(478, "sleeve-size-differs")
SLEEVE_DOES_NOT_FIT = Code(479, "sleeve-does-not-fit")
POCKET_SIZE_DIFFERS = Code(480, "pocket-size-differs")
HANGING_DIFFERS = Code(481, "hanging-differs")
PRINT_LIES_SIDEWAYS = Code(482, "print-lies-sideways")
PROJECT_UNFINISHED = Code(483, "project-unfinished")
UNIT_DIFFERS = Code(484, "unit-differs")
NOT_SEWABLE_YET = Code(485, "not-sewable-yet")
STEP_LISTED_TWICE = Code(486, "step-listed-twice")
TOPSTITCH_CROSSES_BORDER = Code(487, "topstitch-crosses-border", Severity.WARNING)
SIZE_NOT_POSITIVE = Code(488, "cut-size-not-positive")
NOT_TRIMMED = Code(489, "unit-not-trimmed")
UNITS_DIFFER = Code(490, "units-differ")
CORNERS_NOT_SEWABLE = Code(491, "corners-not-sewable")
QUILTING_TOO_NEAR = Code(492, "quilting-too-near-edge")
FACING_SIZE_DIFFERS = Code(493, "facing-size-differs")
PANEL_SIZE_DIFFERS = Code(494, "panel-size-differs")
LOOP_SIZE_DIFFERS = Code(495, "loop-size-differs")

CODES = (
    PIECE_MISSING, PIECE_LEFT_OVER, WORKPIECE_UNKNOWN, NAME_USED_TWICE, COUNT_NOT_WHOLE, EDGES_DIFFER,
    MEASURE_DISAGREES, WRONG_FABRIC, WRONG_WORKPIECE, PATCH_TOO_SMALL, PATCH_TOO_LARGE, PATCH_OFF_GRID,
    SEAM_NOT_WHOLE, PIECES_LISTED_WRONGLY, BLOCK_NOT_FILLED, PIECE_SIZE_WRONG, BLOCKS_NOT_AS_ARRANGED,
    SASHING_NOT_AS_DECIDED, BORDER_WIDTH_DIFFERS, BORDER_ORDER_DIFFERS, TOP_SIZE_DIFFERS, LAYER_SIZE_DIFFERS,
    FIGURE_DIFFERS, OPENING_TOO_LONG, TOPSTITCH_TOO_FAR, BINDING_TOO_NARROW, BINDING_BARELY_REACHES,
    BINDING_LENGTH_DIFFERS, SLEEVE_SIZE_DIFFERS, SLEEVE_DOES_NOT_FIT, POCKET_SIZE_DIFFERS, HANGING_DIFFERS,
    PRINT_LIES_SIDEWAYS, PROJECT_UNFINISHED, UNIT_DIFFERS, NOT_SEWABLE_YET, STEP_LISTED_TWICE,
    TOPSTITCH_CROSSES_BORDER, SIZE_NOT_POSITIVE, NOT_TRIMMED, UNITS_DIFFER, CORNERS_NOT_SEWABLE, QUILTING_TOO_NEAR,
    FACING_SIZE_DIFFERS, PANEL_SIZE_DIFFERS, LOOP_SIZE_DIFFERS,
)  # fmt: skip
"""The catalogue of this package."""
