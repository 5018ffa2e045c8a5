"""Every problem the reader of drawings can report."""

from __future__ import annotations

from evenseam.problems import Code, Severity

# 34x: the file.
NOT_READABLE = Code(340, "drawing-not-readable")
DOCTYPE = Code(341, "drawing-with-doctype")
OUTSIDE_REFERENCE = Code(342, "outside-reference")
SCRIPT = Code(343, "drawing-with-script", Severity.WARNING)
TOO_LARGE = Code(344, "drawing-too-large")
NOT_A_DRAWING = Code(345, "not-a-drawing")
NOT_A_NUMBER = Code(346, "not-a-number-in-drawing")
NOT_A_TRANSFORM = Code(347, "not-a-transform")
NOT_A_PATH = Code(348, "not-a-path")
STYLE_LEFT_OUT = Code(349, "style-left-out", Severity.WARNING)

# 35x: its shapes.
CURVED = Code(350, "curved-edge")
NOT_A_SHAPE = Code(351, "no-shape-of-a-block", Severity.WARNING)
NOTHING_TO_USE = Code(352, "nothing-to-use")
FILL_NOT_A_COLOUR = Code(353, "fill-is-no-colour")
COLOUR_WITHOUT_FABRIC = Code(354, "colour-without-fabric")
NOTHING_DRAWN = Code(355, "nothing-drawn")
HOLE = Code(356, "shape-with-a-hole")
UNDER_OTHERS = Code(357, "shape-under-others")
SEVERAL_OUTLINES = Code(358, "several-outlines")

# 36x: its shapes on the grid.
PROPORTIONS = Code(360, "drawing-proportions-differ")
OFF_GRID = Code(361, "corner-off-grid")
SLIVER = Code(362, "sliver")
LOOSE_END = Code(363, "loose-end-of-line")
WITHOUT_FABRIC = Code(364, "area-without-fabric")
TWO_FABRICS = Code(365, "area-with-two-fabrics")
TOO_MANY_PIECES = Code(366, "too-many-pieces-in-drawing")
