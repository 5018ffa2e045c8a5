"""Small invented projects for tests, built as values so that no reader is needed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit, parse_length
from evenseam.geometry import Point, Polygon
from evenseam.pattern import (
    Arrangement,
    Assumed,
    Binding,
    Block,
    BlockPiece,
    BlockPosition,
    Border,
    BorderOrder,
    Bound,
    CornerPockets,
    Fabric,
    Method,
    Pattern,
    Project,
    Quantity,
    Sashing,
    Setting,
    Sleeve,
    Turned,
)


def length(name: str, text: str, unit: Unit = Unit.INCH) -> Quantity:
    """Return a length as if it were a default."""
    negative = text.startswith("-")
    value = parse_length(text.lstrip("-")).value
    return Quantity(name, -value if negative else value, unit, Assumed("a sample"))


def count(name: str, value: int) -> Quantity:
    """Return a count as if it were a default."""
    return Quantity(name, Fraction(value), Unit.COUNT, Assumed("a sample"))


def polygon(text: str) -> Polygon:
    """Return a polygon from "0,0 4,0 4,6"."""
    corners = (tuple(Fraction(part) for part in pair.split(",")) for pair in text.split())
    return Polygon(tuple(Point(x, y) for x, y in corners)).clockwise()


SEA = Fabric("sea", "Deep Sea", "#23465f")
FOG = Fabric("fog", "Fog", "#d9dcd6")
LAMP = Fabric("lamp", "Lamp Glow", "#e9b44c")
REED = Fabric("reed", "Reed Print", "#7a8b69", is_directional=True)

LANTERN = Block(
    "lantern", "Lantern", length("lantern width", "6"), length("lantern height", "9"), Fraction(12), Fraction(18),
    polygon("0,0 12,0 12,18 0,18"),
    tuple(
        BlockPiece(f"p{number}", fabric, polygon(text))
        for number, (fabric, text) in enumerate(
            (
                ("lamp", "3,6 9,6 9,14 3,14"),
                ("sea", "3,6 6,2 9,6"),
                ("fog", "0,0 6,0 6,2 3,6 0,6"),
                ("fog", "6,0 12,0 12,6 9,6 6,2"),
                ("fog", "0,6 3,6 3,14 0,14"),
                ("fog", "9,6 12,6 12,14 9,14"),
                ("sea", "0,14 12,14 12,18 0,18"),
            ),
            start=1,
        )
    ),
    Method.FOUNDATION,
)  # fmt: skip
"""The two upper fog pieces are not convex on purpose in some tests; see CONVEX_LANTERN for one that can be sewn."""

CONVEX_LANTERN = replace(
    LANTERN,
    pieces=tuple(
        BlockPiece(f"p{number}", fabric, polygon(text))
        for number, (fabric, text) in enumerate(
            (
                ("lamp", "3,6 9,6 9,14 3,14"),
                ("sea", "3,6 6,0 9,6"),
                ("fog", "0,0 6,0 3,6 0,6"),
                ("fog", "6,0 12,0 12,6 9,6"),
                ("fog", "0,6 3,6 3,14 0,14"),
                ("fog", "9,6 12,6 12,14 9,14"),
                ("sea", "0,14 12,14 12,18 0,18"),
            ),
            start=1,
        )
    ),
)


def grid(rows: int, columns: int, block: str = "lantern") -> Arrangement:
    """Return a straight arrangement of equal blocks."""
    return Arrangement(
        count("rows", rows), count("columns", columns), Setting.STRAIGHT,
        tuple(tuple(BlockPosition(block) for _ in range(columns)) for _ in range(rows)),
    )  # fmt: skip


def border(name: str, width: str, fabric: str, order: BorderOrder = BorderOrder.LONG_SIDES_FIRST) -> Border:
    """Return a butted border."""
    return Border(name.replace(" ", "-"), name, length(f"{name} width", width), fabric, order)


TURNED = Turned("sea", length("backing overage", "1"), length("batting overage", "1"), length("opening", "4"), length("topstitch distance", "1/8"))  # fmt: skip
BOUND = Bound(
    "sea", length("backing overage", "2"), length("batting overage", "2"), length("backing seam allowance", "1/2"),
    Binding("sea", length("binding strip width", "2 1/4"), length("binding extra length", "10")),
)  # fmt: skip
SLEEVE = Sleeve("sea", length("sleeve cut depth", "8 1/2"), length("sleeve extra", "2"), length("sleeve hem", "1 1/2"), length("sleeve drop", "1"))  # fmt: skip
POCKETS = CornerPockets("sea", length("corner pocket square", "4"))

MUG_RUG = Project(
    "mug-rug", "Mug rug", Unit.INCH, length("seam allowance", "1/4"), length("usable width", "42"), (SEA, FOG, LAMP, REED),
    (CONVEX_LANTERN,), grid(1, 1), (border("inner border", "1", "fog"),), TURNED, None, length("patch margin", "1/4"),
    "Cotton batting",
)  # fmt: skip
WALL_HANGING = replace(
    MUG_RUG, size="wall-hanging", name="Wall hanging", arrangement=replace(grid(1, 3), sashing=Sashing(length("sashing width", "1"), "fog", is_around=True)),
    borders=(border("inner border", "1", "lamp"), border("outer border", "2 1/2", "reed", BorderOrder.TOP_AND_BOTTOM_FIRST)),
    finish=BOUND, hanging=SLEEVE, use="wall",
)  # fmt: skip
LAP_QUILT = replace(
    WALL_HANGING, size="lap-quilt", name="Lap quilt", hanging=None, use="",
    arrangement=replace(grid(4, 5), sashing=Sashing(length("sashing width", "1 1/2"), "fog", is_around=True, cornerstone_fabric="lamp")),
)  # fmt: skip
PROJECTS = (MUG_RUG, WALL_HANGING, LAP_QUILT)

PATTERN = Pattern(
    "harbour-lanterns", "Harbour Lanterns", "Lanterns for a quiet quay.", "1.0", "confident beginner", "CC BY 4.0",
    "Saltmarsh Workshop", (), PROJECTS,
)  # fmt: skip
