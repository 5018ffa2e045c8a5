"""The problems the sizing of a project can have."""

from __future__ import annotations

from evenseam.problems import Code, Severity

NOT_YET = Code(401, "not-yet")
PROJECT_TOO_LARGE = Code(402, "project-too-large")
TOO_MANY_BLOCKS = Code(403, "too-many-blocks")
BLOCKS_DO_NOT_FIT = Code(404, "blocks-do-not-fit")
LENGTH_NOT_POSITIVE = Code(405, "length-not-positive")
OPENING_TOO_LONG = Code(406, "opening-longer-than-edge")
HANGING_TOO_LARGE = Code(407, "hanging-too-large")
FIGURE_NAME_TAKEN = Code(408, "figure-name-taken")
OFF_THE_RULER = Code(420, "off-the-ruler", Severity.WARNING)
PROPORTIONS_CHANGED = Code(421, "proportions-changed", Severity.WARNING)
SASHING_UNUSED = Code(422, "sashing-unused", Severity.WARNING)
THIN_PIECE = Code(428, "thin-piece", Severity.WARNING)
UNIT_METHOD_UNUSED = Code(429, "unit-method-unused", Severity.WARNING)
NOT_SQUARE_ON_POINT = Code(423, "not-square-on-point")
PRINT_LIES_ASKEW = Code(424, "print-lies-askew", Severity.WARNING)
ROWS_DO_NOT_MEET = Code(425, "rows-do-not-meet")
PIECED_BORDER_UNEVEN = Code(430, "pieced-border-uneven")
CORNER_DOES_NOT_FIT = Code(431, "corner-block-does-not-fit")
ROUNDED_CORNERS_NEED_BIAS = Code(440, "rounded-corners-need-bias")
CORNERS_TOO_ROUND = Code(441, "corners-too-round")
BINDING_SHOWS_TOO_LITTLE = Code(442, "binding-shows-too-little")
BINDING_COVERS_BLOCKS = Code(443, "binding-covers-blocks", Severity.WARNING)
FINISH_DOES_NOT_FIT = Code(444, "finish-does-not-fit")
HANGING_NOT_CAUGHT = Code(445, "hanging-not-caught")
NOTHING_FITS = Code(446, "nothing-fits")
FIT_FAR_OFF = Code(447, "fit-far-off", Severity.WARNING)
FIT_KEEPS_LAYOUT = Code(448, "fit-keeps-layout", Severity.WARNING)

CODES = (
    NOT_YET, PROJECT_TOO_LARGE, TOO_MANY_BLOCKS, BLOCKS_DO_NOT_FIT, LENGTH_NOT_POSITIVE, OPENING_TOO_LONG,
    HANGING_TOO_LARGE, FIGURE_NAME_TAKEN, OFF_THE_RULER, PROPORTIONS_CHANGED,
    SASHING_UNUSED, NOT_SQUARE_ON_POINT, PRINT_LIES_ASKEW, ROWS_DO_NOT_MEET, UNIT_METHOD_UNUSED,
    THIN_PIECE, PIECED_BORDER_UNEVEN, CORNER_DOES_NOT_FIT,
    ROUNDED_CORNERS_NEED_BIAS, CORNERS_TOO_ROUND, BINDING_SHOWS_TOO_LITTLE, BINDING_COVERS_BLOCKS,
    FINISH_DOES_NOT_FIT, HANGING_NOT_CAUGHT, NOTHING_FITS, FIT_FAR_OFF, FIT_KEEPS_LAYOUT,
)  # fmt: skip
