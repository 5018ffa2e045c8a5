"""The keys of a finish and of what a project hangs by."""

from __future__ import annotations

from evenseam.reading.kinds import Choice, Count, FabricName, Field, Length, Record, Variants

MOST_LOOPS = 60

BACKING = Record(
    "backing",
    (
        Field("fabric", FabricName(), "Which fabric.", "", "sea", is_required=True),
        Field(
            "overage", Length(may_be_zero=True),
            "How much larger it is cut than the top, on each side.",
            "turned: 1 in (2.5 cm); quilted: 2 in (5 cm), from 36 in (90 cm) up 4 in (10 cm)", "2",
        ),
        Field(
            "seam allowance", Length(),
            "For joining widths of a backing that is wider than the cloth.",
            "1/2 in (1.5 cm)", "1/2",
        ),
    ),
)  # fmt: skip
TURNED_BACKING = Record("backing of a turned finish", BACKING.fields[:2])
BATTING_OVERAGE = Field(
    "batting overage", Length(may_be_zero=True), "How much larger the batting is cut than the top, on each side.",
    "turned: 1 in (2.5 cm); quilted: 1 in (2.5 cm), from 36 in (90 cm) up 3 in (7.5 cm)", "2",
)  # fmt: skip
_QUILTED = (
    Field("backing", BACKING, "The back.", "", "{fabric: sea, overage: 2}", is_required=True),
    BATTING_OVERAGE,
)

BINDING = Record(
    "binding",
    (
        Field("fabric", FabricName(), "Which fabric.", "", "sea", is_required=True),
        Field("strip width", Length(), "How wide the strips are cut, before folding.", "2 1/4 in (6 cm)", "2 1/2"),
        Field(
            "shows", Length(),
            "In place of `strip width`: how much of the binding shows on the front. It is sewn on with a seam "
            "allowance of the same width, and the width of the strips is worked out.",
            "as much as the seam allowance", "3/8",
        ),
        Field(
            "extra length", Length(may_be_zero=True),
            "Length beyond the way round, for the corners and the last join.",
            "10 in (25 cm)", "12",
        ),
        Field(
            "grain", Choice(("straight", "bias")),
            "How the strips lie on the cloth. Rounded corners need bias strips.",
            "straight", "bias",
        ),
        Field("join", Choice(("diagonal", "straight")), "How the strips are joined.", "diagonal", "straight"),
    ),
    supersedes=(("shows", ("strip width",)), ("strip width", ("shows",))),
)  # fmt: skip

TURNED = Record(
    "turned finish",
    (
        Field("backing", TURNED_BACKING, "The back.", "", "{fabric: sea}", is_required=True),
        BATTING_OVERAGE,
        Field(
            "opening",
            Length(),
            "The gap left in the seam for turning.",
            "4 in (10 cm), from 36 in (90 cm) up 15 in (38 cm)",
            "5",
        ),
        Field("topstitch", Length(), "How far from the edge the topstitching runs.", "1/8 in (0.3 cm)", "1/8"),
    ),
)
BOUND = Record(
    "bound finish",
    (
        *_QUILTED,
        Field("binding", BINDING, "The double-fold strip round the edge.", "", "{fabric: sea}", is_required=True),
        Field("corners", Choice(("square", "rounded")), "The corners of the project.", "square", "rounded"),
        Field("radius", Length(), "Of rounded corners.", "2 in (5 cm)", "3"),
    ),
)
FACING = Record(
    "facing",
    (
        Field("fabric", FabricName(), "Which fabric.", "", "sea", is_required=True),
        Field("strip width", Length(), "How wide the strips are cut.", "2 1/2 in (6 cm)", "2"),
        Field("fold", Length(), "Turned under along the inner edge of the strips.", "1/4 in (0.5 cm)", "1/4"),
    ),
)
FACED = Record(
    "faced finish",
    (
        *_QUILTED,
        Field(
            "facing", FACING, "The strips sewn to the edges and turned to the back.", "", "{fabric: sea}",
            is_required=True,
        ),
    ),
)  # fmt: skip
KNIFE_EDGE = Record(
    "knife-edge finish",
    (
        *_QUILTED,
        Field(
            "quilting stop", Length(),
            "How far inside the raw edge the quilting stops, so that the edges can be folded in.",
            "1/2 in (1.5 cm)", "3/4",
        ),
        Field("stitch", Length(), "How far from the folded edge it is stitched.", "1/8 in (0.3 cm)", "1/8"),
    ),
)  # fmt: skip
PANELS = Record(
    "back panels of a cushion",
    (
        Field("fabric", FabricName(), "Which fabric.", "", "sea", is_required=True),
        Field("overlap", Length(), "How far the two panels overlap across the middle.", "4 in (10 cm)", "5"),
        Field("hem", Length(), "Folded under twice along the opening: each fold takes so much.", "1/2 in (1 cm)", "1"),
    ),
)
ENVELOPE_BACK = Record(
    "envelope back",
    (
        *_QUILTED,
        Field("panels", PANELS, "The two panels behind, which overlap.", "", "{fabric: sea}", is_required=True),
    ),
)
FINISH = Variants(
    "finish", "kind",
    "turned: layers sewn right sides together and turned through an opening. bound: quilted, trimmed and bound. "
    "faced: quilted, trimmed, and strips sewn to the edges and turned to the back. knife edge: quilted, and the edges "
    "of top and backing folded in. envelope back: a cushion cover, quilted, with two overlapping panels behind.",
    (
        ("turned", TURNED), ("bound", BOUND), ("faced", FACED), ("knife edge", KNIFE_EDGE),
        ("envelope back", ENVELOPE_BACK),
    ),
)  # fmt: skip

SLEEVE = Record(
    "hanging sleeve",
    (
        Field("fabric", FabricName(), "Which fabric.", "", "sea", is_required=True),
        Field(
            "rule", Choice(("show", "home")),
            "Whose figures hold where none are given. show: as quilt shows ask for, for a pole of theirs. home: a "
            "narrower sleeve for a rod of your own.",
            "show", "home",
        ),
        Field(
            "cut depth", Length(),
            "How deep the strip is cut; folded and sewn it makes the tube.",
            "show: 8 1/2 in (22 cm); home: 6 in (15 cm), from 36 in (90 cm) up 8 in (20 cm)", "8 1/2",
        ),
        Field(
            "cut extra", Length(may_be_zero=True, may_be_negative=True),
            "How much longer than the finished width it is cut; below 0 when shorter.",
            "show: 2 in (5 cm); home: 0", "2",
        ),
        Field(
            "hem", Length(), "Turned under at each end, in all.", "show: 1 1/2 in (4 cm); home: 1 in (2.5 cm)", "1/2"
        ),
        Field("drop", Length(may_be_zero=True), "How far below the top edge it is sewn.", "1 in (2.5 cm)", "1"),
    ),
)  # fmt: skip
CORNER_POCKETS = Record(
    "corner pockets",
    (
        Field("fabric", FabricName(), "Which fabric.", "", "sea", is_required=True),
        Field("square", Length(), "How large the two squares are cut.", "4 in (10 cm)", "5"),
    ),
)
LOOPS = Record(
    "hanging loops",
    (
        Field("fabric", FabricName(), "Which fabric.", "", "sea", is_required=True),
        Field("number", Count(MOST_LOOPS), "How many.", "3, from 36 in (90 cm) up 5", "4"),
        Field("cut width", Length(), "How wide the strips are cut.", "4 in (10 cm)", "3"),
        Field("cut length", Length(), "How long the strips are cut; a loop is half as long.", "6 in (15 cm)", "7"),
    ),
)
RINGS = Record(
    "rings",
    (
        Field("number", Count(MOST_LOOPS), "How many.", "3, from 36 in (90 cm) up 5", "2"),
        Field("drop", Length(), "How far below the top edge.", "1/2 in (1.5 cm)", "1"),
    ),
)
HANGING = Variants(
    "hanging", "kind",
    "sleeve: a tube for a rod. corner pockets: two folded squares for a thin rod. loops: folded strips along the top "
    "edge, for a rod that shows. rings: small rings sewn to the back.",
    (("sleeve", SLEEVE), ("corner pockets", CORNER_POCKETS), ("loops", LOOPS), ("rings", RINGS)),
)  # fmt: skip
