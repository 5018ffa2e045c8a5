"""A project with every finished size and position worked out."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.exact import Number
from evenseam.geometry import Polygon
from evenseam.pattern import Project, Quantity
from evenseam.piecing import PiecedBlock


@dataclass(frozen=True, slots=True)
class Placed:
    """One visible piece of the finished top."""

    outline: Polygon
    """In the edition's unit, finished, from the top left corner of the finished project."""
    fabric: str
    part: str
    """block:lantern, sashing, cornerstone, border:outer-border, binding."""
    row: int = -1
    """Row of the block in the arrangement; -1 outside blocks."""
    column: int = -1


@dataclass(frozen=True, slots=True)
class SizedProject:
    """A project in one unit throughout, sized."""

    project: Project
    """Re-drafted: every length is in `project.unit`."""
    blocks: tuple[PiecedBlock, ...]
    """How each block that is used is sewn, in order of first use."""
    figures: tuple[tuple[str, Quantity], ...]
    """Every figure worked out, by name (lower case, underscores), in the order of working."""
    top_width: Quantity
    """Raw edge to raw edge of the finished top."""
    top_height: Quantity
    finished_width: Quantity
    finished_height: Quantity
    placed: tuple[Placed, ...]
    outline: Polygon | None = None
    """Of a project that is no rectangle: its finished edge, clockwise, from the top left corner of its bounds."""

    def figure(self, name: str) -> Quantity:
        """Return one figure by name. Raises KeyError."""
        for known, quantity in self.figures:
            if known == name:
                return quantity
        raise KeyError(name)

    def pieced(self, block: str) -> PiecedBlock:
        """Return how one block is sewn. Raises KeyError."""
        for pieced in self.blocks:
            if pieced.block == block:
                return pieced
        raise KeyError(block)


@dataclass(frozen=True, slots=True)
class Measurement:
    """What the simulator's ruler reads after a step, raw edge to raw edge (finished, once the edge is sewn)."""

    step: str
    workpiece: str
    width: Number
    height: Number


@dataclass(frozen=True, slots=True)
class SewingLog:
    """What the simulator did: its measurement after every step that leaves an upright rectangle."""

    measurements: tuple[Measurement, ...]
    finished_width: Number
    finished_height: Number
