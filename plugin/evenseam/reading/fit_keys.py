"""The keys of a finished size to come near to."""

from __future__ import annotations

from evenseam.pattern.project_sizes import known_names
from evenseam.reading.kinds import Choice, Field, Length, Record, ShortOrLong, TargetSize, YesNo

FIT = Record(
    "size to come near to",
    (
        Field(
            "size", TargetSize(),
            "One of the trade's usual sizes by name, or a finished width and height. Names: "
            f"{', '.join(known_names())}.",
            "", "queen", is_required=True,
        ),
        Field("drop", Length(), "How far it hangs down at the sides and the foot of a bed.", "12 in (30 cm)", "14"),
        Field("pillow tuck", Length(), "Added at the head of a bed, to go round the pillows.", "none", "10"),
        Field("turned", YesNo(), "Width and height change places.", "no", "yes"),
        Field(
            "choose", Choice(("rows, columns and borders", "rows and columns", "borders")),
            "What is chosen so that the project comes as near as can be. Borders are widened, never narrowed: the "
            "outermost one only.",
            "rows, columns and borders", "rows and columns",
        ),
        Field("widest border", Length(), "How wide the outermost border may become.", "twice its own width", "8"),
    ),
)  # fmt: skip

FIT_FIELD = Field(
    "fit", ShortOrLong(FIT, "size"),
    "A finished size to come near to: queen, or 60 x 80, or more about it below. Rows, columns and the width of the "
    "outermost border are chosen; whatever the arrangement says of rows and columns is where a layout repeats.",
    "none", "queen", of_a_size=True,
)  # fmt: skip
