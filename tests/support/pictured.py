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
_COMMANDS = re.compile(r"([MLQHVZhvm])([^MLQHVZhvm]*)")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


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
    """Return the points of an SVG path of straight and quadratic pieces in absolute coordinates."""
    points: list[tuple[float, float]] = []
    for command, text in _COMMANDS.findall(way):
        numbers = [float(number) for number in _NUMBER.findall(text)]
        if command == "H":
            points += [(x, points[-1][1]) for x in numbers]
        elif command in "MLQ":
            points += list(zip(numbers[::2], numbers[1::2], strict=True))
        elif command != "Z":
            raise ValueError(f"command {command} is not read here")
    return points
