"""What a workpiece looks like: the pieces it is sewn from, each in its place, as finished."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from evenseam.exact import Number
from evenseam.figures.allowance import with_allowance
from evenseam.figures.plane import Point, Polygon, decimal


@dataclass(frozen=True, slots=True)
class Patch:
    """One visible piece."""

    outline: Polygon
    """Finished, in the edition's unit, from the top left corner of the workpiece's seam lines."""
    fabric: str
    piece: str = ""
    """Piece id in its block; empty outside blocks."""
    part: str = ""
    """As in the cut list: block:lantern, sashing, border:outer-border."""


@dataclass(frozen=True)  # no slots: what it looks like raw is worked out once and kept
class Workpiece:
    """Something on the sewing table."""

    name: str
    patches: tuple[Patch, ...]
    outline: Polygon
    """Its seam lines: where the next seams will run. Convex, clockwise."""
    seam: float
    """Allowance beyond the outline, all round."""

    @property
    def width(self) -> float:
        """Across, between seam lines."""
        left, _, right, _ = self.outline.bounds
        return right - left

    @property
    def height(self) -> float:
        """Down, between seam lines."""
        _, top, _, bottom = self.outline.bounds
        return bottom - top

    @property
    def raw_width(self) -> float:
        """Across, raw edge to raw edge."""
        return self.width + 2 * self.seam

    @property
    def raw_height(self) -> float:
        """Down, raw edge to raw edge."""
        return self.height + 2 * self.seam

    @cached_property
    def raw_outlines(self) -> tuple[Polygon, ...]:
        """The outline of every patch, with the allowance where it reaches the edge."""
        outlines = (patch.outline for patch in self.patches)
        return with_allowance(outlines, self.outline, self.seam) if self.seam > 0 else tuple(outlines)

    def turned(self, quarters: int) -> Workpiece:
        """Return it turned clockwise by quarters, its top left corner again at the origin."""
        work = self
        for _ in range(quarters % 4):
            work = work._turned_once()
        return work

    def _turned_once(self) -> Workpiece:
        across = self.height

        def turn(polygon: Polygon) -> Polygon:
            return Polygon(tuple(Point(across - corner.y, corner.x) for corner in polygon.corners))

        patches = tuple(Patch(turn(p.outline), p.fabric, p.piece, p.part) for p in self.patches)
        return Workpiece(self.name, patches, turn(self.outline), self.seam)

    def mirrored(self) -> Workpiece:
        """Return it with left and right exchanged: how it looks from the other side."""
        across = self.width

        def flip(polygon: Polygon) -> Polygon:
            return Polygon(tuple(Point(across - corner.x, corner.y) for corner in reversed(polygon.corners)))

        patches = tuple(Patch(flip(p.outline), p.fabric, p.piece, p.part) for p in self.patches)
        return Workpiece(self.name, patches, flip(self.outline), self.seam)

    def moved(self, step: Point) -> Workpiece:
        """Return it shifted."""
        patches = tuple(Patch(p.outline.moved(step), p.fabric, p.piece, p.part) for p in self.patches)
        return Workpiece(self.name, patches, self.outline.moved(step), self.seam)


def plain(name: str, fabric: str, width: Number, height: Number, seam: Number, part: str = "") -> Workpiece:
    """Return one rectangle of cloth by its exact raw size."""
    across, down = _inside(width, seam), _inside(height, seam)
    outline = Polygon.rectangle(0.0, 0.0, decimal(across), decimal(down))
    return Workpiece(name, (Patch(outline, fabric, part=part),), outline, decimal(seam))


def in_a_row(name: str, parts: Iterable[Workpiece], *, is_across: bool) -> Workpiece:
    """Return parts sewn edge to edge, left to right or top to bottom."""
    patches: list[Patch] = []
    along = over = seam = 0.0
    for part in parts:
        step = Point(along, 0.0) if is_across else Point(0.0, along)
        patches += part.moved(step).patches
        along = along + (part.width if is_across else part.height)
        reach = part.height if is_across else part.width
        over = reach if reach > over else over
        seam = part.seam
    size = (along, over) if is_across else (over, along)
    return Workpiece(name, tuple(patches), Polygon.rectangle(0.0, 0.0, *size), seam)


def _inside(raw: Number, seam: Number) -> Number:
    inside = raw - 2 * seam
    return inside if inside > 0 else raw
