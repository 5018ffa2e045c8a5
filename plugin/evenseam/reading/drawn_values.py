"""What a drawing is written with: the size of its grid, corners on it, and blocks put into a layout."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from evenseam.geometry import Point
from evenseam.problems import Place, Report
from evenseam.reading import codes
from evenseam.reading.leaves import scalar_of, shown
from evenseam.reading.lengths import halves
from evenseam.reading.tree import Node

LARGEST_GRID = 1000
MOST_CORNERS = 24
FINEST_GRID = 64
"""The largest number below the line in a grid coordinate."""
LONGEST_PLACEMENT = 120
"""Characters of a block's name with its turn."""

_NUMBER = re.compile(r"-?(?:\d{1,4}-)?\d{1,4}/\d{1,3}|-?\d{1,4}(?:\.\d{1,3})?", re.ASCII)
_PLACEMENT = re.compile(r"(?P<block>.+?)(?: +turned +(?P<turn>\S+))?(?P<mirrored> +mirrored)?", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Placement:
    """A block's name and how it is turned."""

    block: str
    quarter_turns: int
    is_mirrored: bool
    place: Place


def read_grid_size(node: Node, report: Report) -> tuple[Fraction, Fraction] | None:
    """Return the numbers of grid squares across and down."""
    scalar = scalar_of(node, "a grid such as 12 x 18", report, codes.NOT_A_PAIR)
    sides_written = halves(scalar, report) if scalar else None
    if scalar is None or sides_written is None:
        return None
    sides: list[Fraction] = []
    for text, place in sides_written:
        value = _grid_number(text.strip())
        if value is None:
            report.add(
                codes.NOT_A_PAIR,
                place,
                f"{shown(text)} is not a number of grid squares",
                "write the grid as 12 x 18, without a unit",
            )
        elif value <= 0:
            report.add(codes.SIZE_NOT_POSITIVE, place, f"the grid has {text} squares", "write a number above 0")
        elif value > LARGEST_GRID:
            report.add(
                codes.SIZE_TOO_LARGE,
                place,
                f"the grid has {text} squares; at most {LARGEST_GRID}",
                "use larger squares: corners may lie between them, as 3 1/2",
            )
        else:
            sides.append(value)
    return (sides[0], sides[1]) if len(sides) == 2 else None


def read_corners(node: Node, report: Report) -> tuple[Point, ...] | None:
    """Return the points of "0,0 4,0 4,6"."""
    scalar = scalar_of(node, 'corners such as "0,0 4,0 4,6"', report, codes.NOT_A_POINT)
    if scalar is None:
        return None
    words = list(re.finditer(r"\S+", scalar.text))
    points: list[Point] = []
    if len(words) > MOST_CORNERS:
        report.add(
            codes.TOO_MANY,
            scalar.place,
            f"the shape has {len(words)} corners; at most {MOST_CORNERS}",
            "split it into several pieces",
        )
        return None
    for word in words:
        numbers = [_grid_number(part) for part in word[0].split(",")]
        if len(numbers) == 2 and numbers[0] is not None and numbers[1] is not None:
            points.append(Point(numbers[0], numbers[1]))
        else:
            place = scalar.part(word.start(), word.end())
            hint = "write across,down for each corner and a space between corners: 0,0 4,0 4,6; a half is 3.5 or 7/2"
            report.add(codes.NOT_A_POINT, place, f"{shown(word[0])} is not a corner", hint)
    return tuple(points) if len(points) == len(words) else None


def read_placement(node: Node, report: Report) -> Placement | None:
    """Return the block and its turn from "lantern turned 90 mirrored"."""
    scalar = scalar_of(node, "a block", report)
    if scalar is None:
        return None
    match = _PLACEMENT.fullmatch(scalar.text.strip()[:LONGEST_PLACEMENT])
    if match is None:
        report.add(
            codes.EMPTY, scalar.place, "no block stands here", "write the name of a block in every place of the layout"
        )
        return None
    turn = match["turn"] or "0"
    if turn not in ("0", "90", "180", "270"):
        report.add(
            codes.UNKNOWN_CHOICE,
            scalar.place,
            f"a block cannot be turned by {shown(turn)}",
            "write turned 90, turned 180 or turned 270 (clockwise)",
        )
        return None
    return Placement(match["block"], int(turn) // 90, match["mirrored"] is not None, scalar.place)


def _grid_number(text: str) -> Fraction | None:
    """Return a number of grid squares: 3, 3.5, 7/2 or 3-1/2; None for anything else."""
    if not _NUMBER.fullmatch(text):
        return None
    if text.isdigit():
        return Fraction(int(text))
    is_negative = text.startswith("-")
    whole, _, rest = text.removeprefix("-").rpartition("-")
    top, _, bottom = rest.partition("/")
    if bottom and not 0 < int(bottom) <= FINEST_GRID:
        return None
    value = int(whole or 0) + Fraction(top) / int(bottom or 1)
    return -value if is_negative else value
