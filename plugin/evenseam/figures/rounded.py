"""Rectangles with round corners, in straight pieces so short that they look round."""

from __future__ import annotations

from evenseam.figures.plane import Point, Polygon

_STEPS = 8


def quarter_circle() -> tuple[Point, ...]:
    """Return points from (1, 0) to (0, 1) on the circle round the origin, by the tangent of half their angle.

    Nothing but the four operations is used, so that they are the same on every machine.
    """
    shares = [step / _STEPS for step in range(_STEPS + 1)]
    return tuple(Point((1 - t * t) / (1 + t * t), 2 * t / (1 + t * t)) for t in shares)


def rounded(width: float, height: float, radius: float, inset: float = 0.0) -> Polygon:
    """Return a rectangle with round corners, from the origin, so far inside its edge."""
    if radius <= inset:
        return Polygon.rectangle(inset, inset, width - 2 * inset, height - 2 * inset)
    reach = radius - inset
    corners: list[Point] = []
    for x, y, turns in (
        (radius, radius, 0), (width - radius, radius, 1), (width - radius, height - radius, 2),
        (radius, height - radius, 3),
    ):  # fmt: skip
        for spot in quarter_circle():
            step = Point(-spot.x * reach, -spot.y * reach)
            for _ in range(turns):
                step = Point(-step.y, step.x)
            corners.append(Point(x, y) + step)
    return Polygon(tuple(corners))
