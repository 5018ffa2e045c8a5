"""The parts of a project in a pattern file: the keys of fabrics, blocks, borders, finish and hanging."""

from __future__ import annotations

from evenseam.reading.kinds import (
    BlockName,
    BlockOrSpacer,
    BlockPlacement,
    Choice,
    Colour,
    Corners,
    Count,
    FabricName,
    Field,
    FinishedSize,
    GridSize,
    Items,
    Length,
    NamedUnit,
    Piece,
    Record,
    Table,
    Words,
    YesNo,
)

UNITS = ("inches", "centimetres")
MOST_ROWS = 60
MOST_SIZES = 40
MOST_BLOCKS_PLACED = 2000

FABRIC = Record(
    "fabric",
    (
        Field(
            "name", Words(60),
            "What a maker reads in the materials list.",
            "its key, with a capital letter", "Deep Sea",
        ),
        Field("colour", Colour(), "The colour it is drawn in, in quotes.", "", '"#23465f"', is_required=True),
        Field(
            "directional", YesNo(),
            "Whether the print has an up and a down; its pieces are then cut so that it runs one way.",
            "no", "yes",
        ),
        Field("role", Words(120), "What it is used for, in your words.", "", "sky and binding"),
    ),
)  # fmt: skip

BATTING = Record(
    "batting",
    (
        Field(
            "name",
            Words(60),
            "What the middle layer is called in the materials list.",
            "Cotton batting",
            "Cotton batting",
        ),
    ),
)

PIECE = Record(
    "piece",
    (
        Field("fabric", FabricName(), "Which fabric it is made from.", "", "sea", is_required=True),
        Field(
            "corners", Corners(),
            "Its corners, in order around the shape: across,down on the grid, counted from the top left.",
            "", '"3,6 6,0 9,6"', is_required=True,
        ),
        Field("name", Words(40), "A name for it, unique in the block.", "p1, p2, … in the order of the list", "roof"),
    ),
)  # fmt: skip

BLOCK = Record(
    "block",
    (
        Field("name", Words(60), "What a maker reads.", "its key, with a capital letter", "Lantern"),
        Field(
            "finished size", FinishedSize(),
            "Width x height once it is sewn into the quilt, without seam allowances. One length alone is a square.",
            "", "6 x 9", is_required=True,
        ),
        Field(
            "method", Choice(("foundation", "rotary")),
            "How it is sewn: on printed foundations, or from pieces cut with ruler and rotary cutter: squares, "
            "rectangles and triangles by size, any other shape with a printed template.",
            "foundation", "foundation",
        ),
        Field(
            "unit method", Choice(("one at a time", "two at a time", "four at a time", "eight at a time")),
            "For a block cut to size: sew its units of triangles from whole squares, so many at once at most. "
            "one at a time: squares on the corners of a whole piece, for geese and snowballs. two: half-square and "
            "quarter-square triangles. four: geese from five squares, quarter-square triangles of three fabrics, and "
            "half-square triangles sewn all round, with edges on the bias. eight: half-square triangles from two large "
            "squares. Each unit is sewn the way that makes the most at once of those that are not above it.",
            "from single pieces", "two at a time",
        ),
        Field(
            "shape", Choice(("rectangle", "hexagon")),
            "A hexagon lies on a point, its finished size is its width from corner to corner, and its grid is one of "
            "triangles: rows are so high that the triangles have equal sides.",
            "rectangle", "hexagon",
        ),
        Field(
            "grid", GridSize(),
            "The squares of the drawing, across x down. Needed with `pieces` and `drawing`.", "", "12 x 18",
        ),
        Field(
            "outline", Corners(),
            "The corners of a block that is no rectangle, such as a kite. No corner may bend inward.",
            "the whole grid", '"3,0 9,0 12,5 9,10 3,10 0,5"',
        ),
        Field(
            "pieces", Items(Piece(PIECE), "piece", 300),
            "The pieces that fill the block, each as `fabric: corners`.",
            "", "- lamp: 3,6 9,6 9,14 3,14",
        ),
        Field(
            "drawing", Words(80),
            "In place of `pieces`: the name of an SVG drawing in the pattern's folder. Each piece is a closed shape, "
            "or the seams are a net of lines; the fill says the fabric.",
            "", "lantern.svg",
        ),
        Field(
            "colours", Table(FabricName(), "colour", 60),
            "For a drawing: which colour in it is which fabric, where the colour is not the fabric's own.",
            "the colours of the fabrics", '{"#dfe3e0": fog}',
        ),
        Field(
            "units", Items(Items(NamedUnit(), "unit", MOST_ROWS), "row", MOST_ROWS),
            "In place of `pieces`: rows of named units, from the top; each is a square of the grid unless its size "
            "stands before it. square a; rectangle a; half-square a/b; quarter-square a/b/c/d; geese a/b; square in a "
            "square a/b; snowball a/b; snowball corner a/b; each may be turned 90, 180 or 270.",
            "", "[[half-square sea/fog, square fog], [geese sea/fog]]",
        ),
    ),
    supersedes=(
        ("pieces", ("drawing", "colours", "units")),
        ("drawing", ("pieces", "units")),
        ("units", ("pieces", "drawing", "colours", "grid")),
    ),
)  # fmt: skip

SASHING = Record(
    "sashing",
    (
        Field("width", Length(), "Finished width of the strips.", "", "1", is_required=True),
        Field("fabric", FabricName(), "Which fabric.", "", "fog", is_required=True),
        Field(
            "around", YesNo(),
            "Whether sashing also runs round the outside. On point, strips run from edge to edge between the rows; "
            "all round, every block is framed by them.",
            "no", "yes",
        ),
        Field(
            "cornerstones", FabricName(),
            "A fabric for squares where strips meet.",
            "none: long strips lie between the rows", "lamp",
        ),
        Field(
            "between", Choice(("blocks and rows", "rows")),
            "Of unequal rows: whether a strip also stands wherever two blocks of a row would touch, or strips lie "
            "between the rows only. Where a spacer stands between two blocks, no strip does.",
            "blocks and rows", "rows",
        ),
    ),
)  # fmt: skip

SETTING_TRIANGLES = Record(
    "setting triangles",
    (
        Field("fabric", FabricName(), "Which fabric.", "", "fog", is_required=True),
        Field("corner fabric", FabricName(), "The fabric of the four corners.", "the same fabric", "sea"),
        Field(
            "float", Length(may_be_zero=True),
            "How far the corners of the blocks stay away from the edge, so that nothing is cut off when a border is "
            "sewn on. With 0 they touch it, and the top comes out at a size that is on no ruler.",
            "the least that brings the finished top to the next 1/4 in (0.5 cm)", "1",
        ),
        Field(
            "least float", Length(),
            "In place of `float`: how far they stay away at least; what is lacking to the next 1/4 in (0.5 cm) of the "
            "finished top is added.",
            "none", "1",
        ),
    ),
    supersedes=(("float", ("least float",)), ("least float", ("float",))),
)  # fmt: skip

ARRANGEMENT = Record(
    "arrangement",
    (
        Field("rows", Count(MOST_ROWS), "How many rows of blocks.", "as many as the layout has", "1"),
        Field("columns", Count(MOST_ROWS), "How many blocks in a row.", "as many as the layout has", "3"),
        Field("block", BlockName(), "The block that stands in every place.", "", "lantern"),
        Field(
            "layout", Items(Items(BlockPlacement(), "block", MOST_ROWS), "row", MOST_ROWS),
            "In place of `block`: which block stands where, row by row from the top. A block may be turned 90, 180 "
            "or 270 degrees clockwise and mirrored left to right.",
            "", "[[lantern, gull], [gull, lantern turned 180]]",
        ),
        Field(
            "setting", Choice(("straight", "on point")),
            "Straight, or on point: turned by 45 degrees, with triangles at the edges. On point, `rows` and `columns` "
            "count the blocks that touch the left edge and the top one; one fewer lies between each two rows. A layout "
            "is written line by line as the finished top is seen, the lines between the rows too.",
            "straight", "on point",
        ),
        Field(
            "alternate", FabricName(),
            "With `block`: a fabric for plain squares in every other place; on point, in the lines between the rows.",
            "none", "fog",
        ),
        Field(
            "unequal rows", Items(Items(BlockOrSpacer(), "block or spacer", MOST_ROWS), "row", MOST_ROWS),
            "In place of `block` or `layout`: rows of blocks that differ in width, from the top, each from left to "
            "right. Between blocks may stand `spacer` with a fabric and perhaps a width. All rows come out as wide "
            "as the widest: spacers without a width share what their row lacks. Sashing may lie between them.",
            "", "[[lantern, spacer fog 1, gull], [spacer fog, boat, spacer fog]]",
        ),
        Field("sashing", SASHING, "Strips between the blocks.", "none", ""),
        Field("setting triangles", SETTING_TRIANGLES, "What fills the edges of blocks on point.", "", ""),
    ),
    supersedes=(
        ("layout", ("block", "rows", "columns", "alternate", "unequal rows")),
        ("block", ("layout", "unequal rows")),
        ("unequal rows", ("block", "layout", "rows", "columns", "alternate")),
    ),
)  # fmt: skip
