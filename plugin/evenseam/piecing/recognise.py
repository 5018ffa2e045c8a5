"""What a finished piece is for the rotary cutter: a shape cut by size, or one that needs a cutting template."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from itertools import pairwise

from evenseam.exact import Number, sign
from evenseam.geometry import Point, Polygon, length_of, mitred_offset, without_straight_corners


class PieceKind(Enum):
    """How a piece is cut."""

    RECTANGLE = "rectangle"
    """Or a square; its sides lie along the block's edges."""
    TURNED_RECTANGLE = "turned rectangle"
    """Or a square, at a slant: cut along the grain, sewn in at an angle to it."""
    HALF_SQUARE_TRIANGLE = "half-square triangle"
    """A square cut once diagonally: both short sides lie along the straight grain."""
    QUARTER_SQUARE_TRIANGLE = "quarter-square triangle"
    """A square cut twice diagonally: the long side lies along the straight grain."""
    TEMPLATE = "template"
    """Any other shape: it needs a cutting template."""


@dataclass(frozen=True, slots=True)
class Recognised:
    """A finished piece as it is cut."""

    kind: PieceKind
    width: Number
    """Finished. Of a half-square triangle a short side, of a quarter-square triangle the long side; of a rectangle
    the first of its sides as it stands (across, if upright); of anything else its width across."""
    height: Number
    outline: Polygon
    """The finished piece, clockwise, without straight corners."""

    @property
    def is_square(self) -> bool:
        """True for a rectangle with four equal sides."""
        is_rectangle = self.kind in (PieceKind.RECTANGLE, PieceKind.TURNED_RECTANGLE)
        return is_rectangle and sign(self.width - self.height) == 0


def recognise(outline: Polygon) -> Recognised:
    """Tell how a convex finished piece is cut, by its shape and by how its sides lie to the block's edges.

    The straight grain runs along the block's edges, so that no edge of the block is on the bias. A right-angled
    triangle with equal short sides is therefore a half-square triangle when these lie along the block's edges and a
    quarter-square triangle when the long side does; at any other slant it needs a template.
    """
    clean = without_straight_corners(outline.clockwise())
    sides = [end - start for start, end in clean.edges]
    if len(sides) == 4 and all(sign(one.dot(other)) == 0 for one, other in pairwise(sides)):
        return _four_sided(clean, sides)
    if len(sides) == 3:
        triangle = _right_triangle(clean, sides)
        if triangle is not None:
            return triangle
    left, top, right, bottom = clean.bounds
    return Recognised(PieceKind.TEMPLATE, right - left, bottom - top, clean)


def exact_cut(shape: Recognised, seam_allowance: Number) -> tuple[Number, Number]:
    """Return width and height to cut before any rounding: the finished shape with the seam allowance on every side.

    For triangles it is the square they are cut from; for a cutting template the width and height of its cutting line.
    Plain geometry: a half-square triangle comes to finished + (2 + √2) × seam allowance, a quarter-square triangle to
    finished + (2 + 2√2) × seam allowance.
    """
    cut = mitred_offset(shape.outline, seam_allowance)
    if shape.kind is PieceKind.TEMPLATE:
        left, top, right, bottom = cut.bounds
        return right - left, bottom - top
    if shape.kind in (PieceKind.RECTANGLE, PieceKind.TURNED_RECTANGLE):
        return shape.width + 2 * seam_allowance, shape.height + 2 * seam_allowance
    wanted = shape.kind is PieceKind.QUARTER_SQUARE_TRIANGLE
    side = next(end - start for start, end in cut.edges if _is_long_side(cut, end - start) is wanted)
    return length_of(side), length_of(side)


def _four_sided(outline: Polygon, sides: list[Point]) -> Recognised:
    first = next((side for side in sides if sign(side.y) == 0), sides[0])
    second = next(side for side in sides if sign(side.dot(first)) == 0)
    kind = PieceKind.RECTANGLE if _is_upright(first) else PieceKind.TURNED_RECTANGLE
    return Recognised(kind, length_of(first), length_of(second), outline)


def _right_triangle(outline: Polygon, sides: list[Point]) -> Recognised | None:
    long_side = next((side for side in sides if _is_long_side(outline, side)), None)
    if long_side is None:
        return None
    short = next(side for side in sides if side != long_side)
    if _is_upright(short):
        length = length_of(short)
        return Recognised(PieceKind.HALF_SQUARE_TRIANGLE, length, length, outline)
    if _is_upright(long_side):
        length = length_of(long_side)
        return Recognised(PieceKind.QUARTER_SQUARE_TRIANGLE, length, length, outline)
    return None


def _is_long_side(outline: Polygon, side: Point) -> bool:
    """Tell whether a side lies opposite the right angle of a triangle whose other two sides are equally long."""
    one, other = (step for start, end in outline.edges if (step := end - start) != side)
    return sign(one.dot(other)) == 0 and sign(one.dot(one) - other.dot(other)) == 0


def _is_upright(step: Point) -> bool:
    return sign(step.x * step.y) == 0
