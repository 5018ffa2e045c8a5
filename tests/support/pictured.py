"""Sheets of the sample projects, computed once, and what tests ask of their pictures."""

from __future__ import annotations

import re
from functools import cache

from evenseam.figures import picture_names
from evenseam.geometry import Polygon
from evenseam.pattern import Project
from evenseam.sheet import PatternSheet, compute_sheet
from shapely.geometry import Polygon as ShapelyPolygon

from support.samples import PATTERN, PROJECTS

SIZES = tuple(project.size for project in PROJECTS)
_COMMANDS = re.compile(r"([MLQHVZhvmlz])([^MLQHVZhvmlz]*)")
_NUMBER = re.compile(r"-?(?:\d+(?:\.\d+)?|\.\d+)")


def sheet_of(project: Project) -> PatternSheet:
    """Return the sheet of a project that has no problems."""
    outcome = compute_sheet(PATTERN, project)
    assert outcome.value is not None, outcome.problems
    return outcome.value


@cache
def sample_sheet(size: str) -> PatternSheet:
    """Return the sheet of one of the sample projects."""
    return sheet_of(next(project for project in PROJECTS if project.size == size))


ALL_PICTURES = tuple((size, name) for size in SIZES for name in picture_names(sample_sheet(size)))


def as_shapely(polygon: Polygon) -> ShapelyPolygon:
    """Return a polygon for the reference library."""
    return ShapelyPolygon([(float(corner.x), float(corner.y)) for corner in polygon.corners])


def path_points(way: str) -> list[tuple[float, float]]:
    """Return the points of an SVG path of straight and quadratic pieces, each where it lies."""
    points: list[tuple[float, float]] = []
    begin = (0.0, 0.0)
    for command, text in _COMMANDS.findall(way):
        numbers = [float(number) for number in _NUMBER.findall(text)]
        x, y = points[-1] if points else (0.0, 0.0)
        match command:
            case "H":
                points += [(to, y) for to in numbers]
            case "M" | "L" | "Q":
                points += list(zip(numbers[::2], numbers[1::2], strict=True))
            case "h":
                points += [(x := x + step, y) for step in numbers]
            case "v":
                points += [(x, y := y + step) for step in numbers]
            case "m" | "l":
                pairs = zip(numbers[::2], numbers[1::2], strict=True)
                points += [(x := x + across, y := y + down) for across, down in pairs]
            case "z" | "Z":
                points.append(begin)
            case _:
                raise ValueError(f"command {command} is not read here")
        if command in "Mm":
            begin = points[-1]
    return points
