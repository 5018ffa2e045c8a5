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
UNIT_METHOD_UNUSED = Code(429, "unit-method-unused", Severity.WARNING)
PIECED_BORDER_UNEVEN = Code(430, "pieced-border-uneven")
CORNER_DOES_NOT_FIT = Code(431, "corner-block-does-not-fit")

CODES = (
    NOT_YET, PROJECT_TOO_LARGE, TOO_MANY_BLOCKS, BLOCKS_DO_NOT_FIT, LENGTH_NOT_POSITIVE, OPENING_TOO_LONG,
    HANGING_TOO_LARGE, FIGURE_NAME_TAKEN, OFF_THE_RULER, PROPORTIONS_CHANGED,
    SASHING_UNUSED, UNIT_METHOD_UNUSED, PIECED_BORDER_UNEVEN, CORNER_DOES_NOT_FIT,
)  # fmt: skip
