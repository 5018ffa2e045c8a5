"""Shapes that are no rectangles: what lies inside them, round them, and along their edges."""

from __future__ import annotations

from evenseam.figures.allowance import raw_outline
from evenseam.figures.plane import NEAR, Point, Polygon


def is_rectangle(outline: Polygon) -> bool:
    """Tell whether a shape fills its own bounds."""
    left, top, right, bottom = outline.bounds
    whole = (right - left) * (bottom - top)
    return abs(outline.area - whole) <= NEAR * whole


def inset(outline: Polygon, distance: float) -> Polygon:
    """Return a convex clockwise shape with every edge moved inward."""
    return raw_outline(outline, -distance)


def inside(outline: Polygon, start: Point, end: Point) -> tuple[Point, Point] | None:
    """Return the stretch of a line within a convex clockwise shape; None when there is none to see."""
    low, high = 0.0, 1.0
    step = end - start
    for one, other in outline.edges:
        way = other - one
        # Clockwise on the page, the inside lies where this is above zero.
        here, gain = way.cross(start - one), way.cross(step)
        if abs(gain) <= NEAR:
            if here < 0:
                return None
        elif gain > 0:
            low = max(low, -here / gain)
        else:
            high = min(high, -here / gain)
    if high - low <= NEAR:
        return None
    return start + step.scaled(low, low), start + step.scaled(high, high)


def open_way(outline: Polygon, opening: float, edge: str) -> tuple[tuple[Point, ...], tuple[Point, Point]]:
    """Return the way of a seam round a shape, open in the middle of one edge, and the ends of the opening.

    The edge is the level one at the bottom, or the longest.
    """
    edges = outline.edges
    _, _, _, bottom = outline.bounds
    level = [n for n, (one, other) in enumerate(edges) if max(bottom - one.y, bottom - other.y) <= NEAR]
    longest = max(range(len(edges)), key=lambda number: (edges[number][1] - edges[number][0]).length)
    number = level[0] if edge == "bottom" and level else longest
    start, end = edges[number]
    long = (end - start).length
    half = (opening / 2 if opening < long else long / 3) / long
    middle = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
    step = (end - start).scaled(half, half)
    corners = outline.corners[number + 1 :] + outline.corners[: number + 1]
    return (middle + step, *corners, middle - step), (middle - step, middle + step)
