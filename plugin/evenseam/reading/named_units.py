"""Blocks written as rows of named units: from "half-square sea/fog turned 90" to polygons on the grid.

A unit says what it is, then its fabrics with / between them, then how it is turned, clockwise. It is one square of
the grid unless its size stands before it (`2 x 2 half-square sea/fog`); geese and rectangles are 2 x 1. A row lists,
from left to right, the units that begin in it; a unit that is higher than one square reaches into the rows below, and
the next row begins where there is room again.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from evenseam.geometry import Point
from evenseam.problems import Label, Place, Report
from evenseam.reading import codes
from evenseam.reading.leaves import did_you_mean, either, scalar_of, shown
from evenseam.reading.partition import DrawnPiece
from evenseam.reading.tree import Listing, Node, Scalar

LARGEST_UNIT = 60
MOST_SQUARES = 3600
LONGEST = 200


@dataclass(frozen=True, slots=True)
class UnitKind:
    """A kind of unit, as it lies when it is not turned."""

    name: str
    meaning: str
    width: int
    height: int
    fabrics: tuple[int, ...]
    """How many fabrics may be written."""
    pieces: tuple[tuple[int, str], ...]
    """The number of a fabric and the corners of a piece, in parts of the unit's width and height."""

    @property
    def example(self) -> str:
        """How it is written."""
        return f"{self.name} " + "/".join("abcd"[: self.fabrics[-1]])


# Corner squares of a snowball are a third of the block (common practice); a lone corner takes half of it.
KINDS = (
    UnitKind("square in a square", "b in the four corners around a", 1, 1, (2,), (
        (1, "0,0 1/2,0 0,1/2"), (1, "1/2,0 1,0 1,1/2"), (0, "1/2,0 1,1/2 1/2,1 0,1/2"), (1, "0,1/2 1/2,1 0,1"),
        (1, "1,1/2 1,1 1/2,1"),
    )),
    UnitKind("square", "one fabric", 1, 1, (1,), ((0, "0,0 1,0 1,1 0,1"),)),
    UnitKind("rectangle", "one fabric", 2, 1, (1,), ((0, "0,0 1,0 1,1 0,1"),)),
    UnitKind("half-square", "a at the top left, b at the bottom right", 1, 1, (2,), (
        (0, "0,0 1,0 0,1"), (1, "1,0 1,1 0,1"),
    )),
    UnitKind("quarter-square", "a at the top, b right, c bottom, d left; a/b: a top and bottom, b right and left",
             1, 1, (2, 4), (
        (0, "0,0 1,0 1/2,1/2"), (1, "1,0 1,1 1/2,1/2"), (2, "1,1 0,1 1/2,1/2"), (3, "0,1 0,0 1/2,1/2"),
    )),
    UnitKind("geese", "a the goose, flying up, b the sky on both sides", 2, 1, (2,), (
        (1, "0,0 1/2,0 0,1"), (0, "1/2,0 1,1 0,1"), (1, "1/2,0 1,0 1,1"),
    )),
    UnitKind("snowball corner", "a with one corner of b at the top left, half as long as the side", 1, 1, (2,), (
        (1, "0,0 1/2,0 0,1/2"), (0, "1/2,0 1,0 1,1 0,1 0,1/2"),
    )),
    UnitKind("snowball", "a with four corners of b, a third as long as the side", 1, 1, (2,), (
        (1, "0,0 1/3,0 0,1/3"), (1, "2/3,0 1,0 1,1/3"), (0, "1/3,0 2/3,0 1,1/3 1,2/3 2/3,1 1/3,1 0,2/3 0,1/3"),
        (1, "0,2/3 1/3,1 0,1"), (1, "1,2/3 1,1 2/3,1"),
    )),
)  # fmt: skip
_NAMES = tuple(kind.name for kind in KINDS)
_UNIT = re.compile(
    r"(?:(?P<across>\d{1,2}) ?[x×] ?(?P<down>\d{1,2}) )?(?P<name>"
    + "|".join(sorted((re.escape(name) for name in _NAMES), key=len, reverse=True))
    + r") (?P<fabrics>.+?)(?: turned (?P<turn>\S+))?"
)


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit of a block."""

    kind: UnitKind
    width: int
    height: int
    fabrics: tuple[str, ...]
    quarter_turns: int
    node: Scalar


def read_unit(node: Node, report: Report) -> Unit | None:
    """Return the unit a text says, or report what is wrong with it."""
    scalar = scalar_of(node, "a unit such as square sea", report, codes.NOT_A_UNIT)
    if scalar is None:
        return None
    text = " ".join(scalar.text.split())
    found = _UNIT.fullmatch(text) if len(text) <= LONGEST else None
    if found is None:
        first = re.sub(r"^\d+ ?[x×] ?\d+ ", "", text).partition(" ")[0]
        hint = did_you_mean(first, _NAMES) or "write " + either([kind.example for kind in KINDS])
        report.add(codes.NOT_A_UNIT, scalar.place, f"{shown(text)} is no unit", hint)
        return None
    kind = next(kind for kind in KINDS if kind.name == found["name"])
    fabrics = tuple(part.strip() for part in found["fabrics"].split("/"))
    if len(fabrics) not in kind.fabrics or not all(fabrics):
        wanted = either([str(number) for number in kind.fabrics])
        message = f"a {kind.name} has {wanted} fabric{'' if wanted == '1' else 's'}; here are {len(fabrics)}"
        report.add(codes.NOT_A_UNIT, scalar.place, message, f"write {kind.example}: {kind.meaning}")
        return None
    turn = found["turn"] or "0"
    if turn not in ("0", "90", "180", "270"):
        message = f"a unit cannot be turned by {shown(turn)}"
        report.add(codes.UNKNOWN_CHOICE, scalar.place, message, "write turned 90, turned 180 or turned 270 (clockwise)")
        return None
    turns = int(turn) // 90
    width, height = (kind.width, kind.height) if turns % 2 == 0 else (kind.height, kind.width)
    if found["across"]:
        width, height = int(found["across"]), int(found["down"])
    if not (0 < width <= LARGEST_UNIT and 0 < height <= LARGEST_UNIT):
        message = f"a unit of {width} x {height} squares cannot be"
        report.add(
            codes.NOT_A_UNIT, scalar.place, message, f"write a size from 1 x 1 to {LARGEST_UNIT} x {LARGEST_UNIT}"
        )
        return None
    return Unit(kind, width, height, fabrics, turns, scalar)


@dataclass(frozen=True, slots=True)
class UnitGrid:
    """Pieces from units, and the grid they fill."""

    grid: tuple[Fraction, Fraction]
    pieces: tuple[tuple[DrawnPiece, Scalar], ...]
    """Each with the word for its fabric."""


def read_unit_rows(node: Node, report: Report) -> UnitGrid | None:
    """Return the pieces of rows of units; None, with the reason in the report, when they do not fill a rectangle."""
    if not isinstance(node, Listing) or not all(isinstance(row, Listing) and row.items for row in node.items):
        return None
    read = [[read_unit(item, report) for item in row.items] for row in node.items if isinstance(row, Listing)]
    rows = [[unit for unit in row if unit is not None] for row in read]
    if not rows or any(None in row for row in read):
        return None
    width = sum(unit.width for unit in rows[0])
    if width * max(len(rows), *(unit.height for row in rows for unit in row)) > MOST_SQUARES:
        message = "the block has too many squares"
        report.add(codes.TOO_MANY, node.place, message, f"at most {MOST_SQUARES:,}; make it of several blocks")
        return None
    taken: dict[tuple[int, int], Unit] = {}
    pieces: list[tuple[DrawnPiece, Scalar]] = []
    down = -1
    for number, row in enumerate(rows, start=1):
        down += 1
        while all((x, down) in taken for x in range(width)):
            # Filled from above: high units reach down to here, and the row is the next one with room.
            down += 1
        across = 0
        for unit in row:
            while (across, down) in taken:
                across += 1
            squares = [(x, y) for x in range(across, across + unit.width) for y in range(down, down + unit.height)]
            other = next((taken[square] for square in squares if square in taken), None)
            if other is not None or across + unit.width > width:
                message = f"row {number} is wider than row 1, which has {width} squares"
                labels = (Label(other.node.place, "this unit lies there already"),) if other else ()
                _report_misfit(unit.node.place, message, report, labels)
                return None
            taken |= dict.fromkeys(squares, unit)
            pieces += _pieces_of(unit, across, down, len(pieces))
            across += unit.width
    height = max(y for _, y in taken) + 1
    empty = next(((x, y) for y in range(height) for x in range(width) if (x, y) not in taken), None)
    if empty is not None:
        row_node = node.items[min(empty[1], len(node.items) - 1)]
        message = f"nothing fills square {empty[0] + 1} of {width} in row {empty[1] + 1} of the grid"
        _report_misfit(row_node.place, message, report, ())
        return None
    return UnitGrid((Fraction(width), Fraction(height)), tuple(pieces))


def _report_misfit(place: Place, message: str, report: Report, labels: tuple[Label, ...]) -> None:
    hint = "geese and rectangles are 2 squares wide (2 high when turned 90); others 1, unless a size stands before them"
    report.add(codes.UNITS_DO_NOT_FIT, place, message, hint, labels)


def _pieces_of(unit: Unit, across: int, down: int, before: int) -> list[tuple[DrawnPiece, Scalar]]:
    made: list[tuple[DrawnPiece, Scalar]] = []
    fabrics = unit.fabrics * 2 if len(unit.kind.fabrics) > 1 and len(unit.fabrics) == 2 else unit.fabrics
    for number, (fabric, corners) in enumerate(unit.kind.pieces, start=before + 1):
        points: list[Point] = []
        for corner in corners.split():
            x, y = (Fraction(part) for part in corner.split(","))
            for _ in range(unit.quarter_turns):
                x, y = 1 - y, x
            points.append(Point(across + x * unit.width, down + y * unit.height))
        word = Scalar(fabrics[fabric], unit.node.place, is_plain=False)
        made.append((DrawnPiece(f"p{number}", tuple(points), unit.node.place), word))
    return made
