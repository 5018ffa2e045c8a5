"""What every picture has at hand: the sheet, how its fabrics look, the workpieces, and a pen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from evenseam.figures.cloth_look import ClothLook
from evenseam.figures.drawing import Pen
from evenseam.figures.plane import Point, decimal
from evenseam.figures.workbench import Bench
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

    def measured(self, name: str) -> tuple[str, str]:
        """Return width and height of a cut or of what a step made, raw edge to raw edge, as printed."""
        for step in self.sheet.program.steps:
            if step.makes == name and step.measures is not None:
                return step.measures[0].text, step.measures[1].text
        cut = self.sheet.cuts.cut(name)
        return cut.width.text, cut.height.text

    @property
    def seam(self) -> float:
        """The pattern's seam allowance."""
        return decimal(self.sheet.project.seam_allowance.value)


def halfway(one: Point, other: Point) -> Point:
    """Return the middle between two points."""
    return Point((one.x + other.x) / 2, (one.y + other.y) / 2)
