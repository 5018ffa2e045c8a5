"""The pattern file, format 1: every key once, with what it means. Reader, schema and reference are made from it."""

from __future__ import annotations

from evenseam.reading.border_keys import BORDER
from evenseam.reading.defaults import SHOP_STEPS
from evenseam.reading.edge_keys import FINISH, HANGING
from evenseam.reading.fit_keys import FIT_FIELD
from evenseam.reading.kinds import (
    Choice,
    Date,
    Editions,
    Field,
    FormatNumber,
    Items,
    Length,
    Markdown,
    Record,
    Stated,
    Table,
    Words,
)
from evenseam.reading.part_keys import ARRANGEMENT, BATTING, BLOCK, FABRIC, MOST_SIZES, UNITS

_PARTS = (
    Field("seam allowance", Length(), "For every seam of the top.", "1/4 in, or 0.75 cm", "1/4"),
    Field("usable width", Length(), "Width of the cloth between the selvages.", "42 in (107 cm)", "40"),
    Field(
        "shop step", Choice(tuple(SHOP_STEPS)),
        "The step cloth is sold by. It holds for the edition in its unit; the other edition has the usual one.",
        "1/8 yd, or 10 cm", "1/4 yd",
    ),
    Field(
        "patch margin", Length(may_be_zero=True),
        "For foundation piecing: how much each patch reaches beyond its seam allowance, on every side.",
        "1/4 in (0.75 cm)", "3/8",
    ),
    Field(
        "fabrics", Table(FABRIC, "fabric", 60),
        "The fabrics, each under a short word used everywhere else in the file.",
        "", "", is_required=True,
    ),
    Field("batting", BATTING, "The middle layer.", "Cotton batting", "{name: Wool batting}"),
    Field("blocks", Table(BLOCK, "block", 60), "The blocks, each under a short word.", "", "", is_required=True),
    Field(
        "arrangement", ARRANGEMENT,
        "How the blocks lie.",
        "", "{rows: 1, columns: 3, block: lantern}", is_required=True,
    ),
    Field(
        "borders", Table(BORDER, "border", 12, may_remove=True),
        "The borders, each under its name, the innermost first.",
        "none", "",
    ),
    Field(
        "finish", FINISH,
        "How the layers become a whole and the edge is closed.",
        "", "{kind: turned, backing: {fabric: sea}}", is_required=True,
    ),
    Field("hanging", HANGING, "How it hangs on a wall.", "none", "{kind: sleeve, fabric: sea}"),
    Field(
        "introduction", Markdown(),
        "Paragraphs before the instructions (Markdown). Figures are put in by name, {{ like this }}.",
        "", "",
    ),
    Field(
        "words", Table(Markdown(4000), "step", 200, may_remove=True),
        "Your own words for a step, added to the computed ones, under the step's name.", "", "",
    ),
)  # fmt: skip

EDITION = Record("edition", _PARTS)

_EDITIONS = Field(
    "editions", Editions(UNITS, EDITION),
    "The units it is published in: a list, or a mapping from a unit to what differs in that edition. The unit it is "
    "drafted in is always one of them.",
    "only the unit it is drafted in", "[inches, centimetres]",
)  # fmt: skip

SIZE = Record(
    "size",
    (
        Field(
            "name", Words(60),
            "What a maker reads.",
            "the key of the size, with a capital letter", "Wall hanging", of_a_size=True,
        ),
        Field(
            "use", Words(60),
            "What it is for, such as pot holder, baby quilt or wall hanging; cautions are printed accordingly.",
            "", "pot holder", of_a_size=True,
        ),
        FIT_FIELD,
        Field("summary", Words(300), "A sentence about this size.", "", "One lantern for one cup.", of_a_size=True),
        *_PARTS,
        _EDITIONS,
    ),
)  # fmt: skip

CHANGE = Record(
    "change",
    (
        Field("version", Words(20), "The version it came with, in quotes.", "", '"1.1"', is_required=True),
        Field("date", Date(), "The day, year-month-day.", "", "2026-05-02", is_required=True),
        Field(
            "what", Words(600),
            "What changed, in words for a maker.",
            "", "The sleeve is cut longer.", is_required=True,
        ),
    ),
)  # fmt: skip

PATTERN = Record(
    "pattern",
    (
        Field(
            "format", FormatNumber(),
            "The number of this file format.",
            "", "1", is_required=True, of_the_whole=True,
        ),
        Field(
            "title", Words(80),
            "The title of the pattern.",
            "", "Harbour Lanterns", is_required=True, of_the_whole=True,
        ),
        Field("summary", Words(300), "A sentence or two about it.", "", "Three lanterns on a quiet quay."),
        Field("designer", Words(80), "Who designed it.", "", "Saltmarsh Workshop", of_the_whole=True),
        Field(
            "version", Words(20),
            "Its version, in quotes. Raise it whenever a figure changes.",
            "1.0", '"1.1"', of_the_whole=True,
        ),
        Field("skill level", Words(60), "Whom it suits.", "", "confident beginner", of_the_whole=True),
        Field("licence", Words(80), "What others may do with it.", "", "CC BY 4.0", of_the_whole=True),
        Field(
            "changes", Items(CHANGE, "change", 200),
            "What changed for a maker, newest first.",
            "", "", of_the_whole=True,
        ),
        Field(
            "units", Choice(UNITS),
            "The unit it is drafted in; every length of the file is in it.",
            "inches", "inches", of_the_whole=True,
        ),
        _EDITIONS,
        *_PARTS,
        Field(
            "sizes", Table(SIZE, "size", MOST_SIZES),
            "What it can become: each size under its name says only what differs from everything above.",
            "", "", is_required=True, of_the_whole=True,
        ),
        Field(
            "claims", Table(Table(Stated(), "figure", 200), "size", MOST_SIZES),
            "Figures an older printed version states, by size and by the name of the figure; `evenseam check` says "
            "which are wrong.",
            "", "", of_the_whole=True,
        ),
    ),
)  # fmt: skip
