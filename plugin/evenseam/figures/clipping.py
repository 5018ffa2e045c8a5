"""Lines cut off at an upright rectangle."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.figures.rational import rational
from evenseam.geometry import Point


@dataclass(frozen=True, slots=True)
class Window:
    """An upright rectangle by its sides."""

    left: Fraction
    top: Fraction
    right: Fraction
    bottom: Fraction

    def holds(self, point: Point) -> bool:
        """Tell whether a point lies inside or on the edge."""
        return self.left <= point.x <= self.right and self.top <= point.y <= self.bottom

    def cut(self, start: Point, end: Point) -> tuple[Point, Point] | None:
        """Return the stretch of a line inside; None when there is none longer than a point."""
        low, high = Fraction(0), Fraction(1)
        step = end - start
        across, down = rational(step.x), rational(step.y)
        left, top = rational(start.x), rational(start.y)
        for way, room in (
            (-across, left - self.left),
            (across, self.right - left),
            (-down, top - self.top),
            (down, self.bottom - top),
        ):
            if way == 0:
                if room < 0:
                    return None
            elif way > 0:
                high = min(high, room / way)
            else:
                low = max(low, room / way)
        if low >= high:
            return None
        return start + step.scaled(low, low), start + step.scaled(high, high)
