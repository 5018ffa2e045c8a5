"""What every picture has at hand: the sheet, how its fabrics look, the workpieces, and a pen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from evenseam.exact import Number, format_length
from evenseam.figures.cloth_look import ClothLook
from evenseam.figures.drawing import Pen
from evenseam.figures.workbench import Bench
from evenseam.geometry import Point
from evenseam.pattern import Step
from evenseam.sheet import PatternSheet


@dataclass(frozen=True, slots=True)
class Scene:
    """The table on which one picture is drawn."""

    sheet: PatternSheet
    looks: Mapping[str, ClothLook]
    benches: Mapping[str, Bench]
    pen: Pen

    def bench(self, step: Step) -> Bench:
        """Return a step with what it uses and makes."""
        return self.benches[step.id]

    def length(self, value: Number) -> str:
        """Return a length in the edition's unit, as printed."""
        return format_length(value, self.sheet.project.unit)

    @property
    def seam(self) -> Number:
        """The pattern's seam allowance."""
        return self.sheet.project.seam_allowance.value


def halfway(one: Point, other: Point) -> Point:
    """Return the middle between two points."""
    return Point((one.x + other.x) / 2, (one.y + other.y) / 2)
