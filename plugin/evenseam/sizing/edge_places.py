"""How a binding lies round the finished project, square or rounded at the corners, and what it leaves in sight."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Number
from evenseam.geometry import Point, Polygon, split_convex
from evenseam.pattern import Bound, Quantity
from evenseam.sizing.binding_width import binding_seam
from evenseam.sizing.sized import Placed

_STEPS = 8
"""Into how many straight pieces a rounded corner is drawn; its points lie on the circle exactly."""


def place_binding(finish: Bound, seam: Quantity, placed: list[Placed], width: Number, height: Number) -> list[Placed]:
    """Return what is seen of the pieces of a bound project, and the binding round them.

    `placed` lie as if nothing covered them, from the top left corner of the project of raw size `width` × `height`.
    The outer line of the binding has its corners at the same angles as the inner one, so that four-cornered pieces
    lie between them.
    """
    front = binding_seam(finish.binding, seam).value
    radius = Fraction(0) if finish.corner_radius is None else finish.corner_radius.value
    outer = _outline(Fraction(0), width, height, radius)
    inner = _outline(front, width, height, radius)
    if front > seam.value or radius > 0:
        placed = _inside(placed, Polygon(inner), radius if radius > front else front, width, height)
    binding = [
        Placed(Polygon((start, end, inner[(i + 1) % len(inner)], inner[i])), finish.binding.fabric, "binding")
        for i, (start, end) in enumerate(Polygon(outer).edges)
    ]
    return placed + binding


def _outline(inset: Number, width: Number, height: Number, radius: Number) -> tuple[Point, ...]:
    """Return the corners of the project so far inside its edge, clockwise from the top left."""
    if radius == 0:
        return Polygon.rectangle(inset, inset, width - 2 * inset, height - 2 * inset).corners
    reach = radius - inset
    quarter = [_on_circle(Fraction(step, _STEPS)) for step in range(_STEPS + 1)]
    corners: list[Point] = []
    # From the left edge over the top left corner, then clockwise; each arc is the one before, turned by a quarter.
    for x, y, turns in (
        (radius, radius, 0), (width - radius, radius, 1), (width - radius, height - radius, 2),
        (radius, height - radius, 3),
    ):  # fmt: skip
        for along, up in quarter:
            step = Point(-along * reach, -up * reach)
            for _ in range(turns):
                step = Point(-step.y, step.x)
            corners.append(Point(x, y) + step)
    return tuple(corners)


def _on_circle(share: Fraction) -> tuple[Fraction, Fraction]:
    """Return a point of the unit circle by the tangent of half its angle: rational, and exactly on the circle."""
    below = 1 + share * share
    return (1 - share * share) / below, 2 * share / below


def _inside(placed: list[Placed], edge: Polygon, reach: Number, width: Number, height: Number) -> list[Placed]:
    seen: list[Placed] = []
    for piece in placed:
        left, top, right, bottom = piece.outline.bounds
        if left >= reach and top >= reach and right <= width - reach and bottom <= height - reach:
            seen.append(piece)  # Far from the edge: most pieces of a quilt.
            continue
        outline = _clipped(piece.outline, edge)
        if outline is not None:
            seen.append(replace(piece, outline=outline))
    return seen


def _clipped(outline: Polygon, edge: Polygon) -> Polygon | None:
    for start, end in edge.edges:
        direction = end - start
        if all(direction.cross(corner - start) >= 0 for corner in outline.corners):
            continue
        parts = split_convex(outline, start, end)
        if parts is None:
            return None
        outline = parts[1]
    return outline
