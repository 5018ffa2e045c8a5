"""Blocks on point in words: triangles at the ends of a diagonal row, the rows sewn together, the top trimmed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, TypeAlias, Union

from evenseam.exact import is_multiple
from evenseam.pattern import (
    AddSettingTriangles,
    CutShape,
    JoinDiagonalRows,
    JoinRun,
    Press,
    Quantity,
    TrimTop,
    derived,
)
from evenseam.wording.scribe import Scribe
from evenseam.wording.workpieces import Workpieces

OnPointOperation: TypeAlias = Union[AddSettingTriangles, JoinDiagonalRows, TrimTop]

TEMPLATES = {
    AddSettingTriangles: "steps/add_setting_triangles",
    JoinDiagonalRows: "steps/join_diagonal_rows",
    TrimTop: "steps/trim_top",
}


@dataclass(frozen=True, slots=True)
class OnPointWords:
    """Says the steps of blocks on point."""

    scribe: Scribe
    pieces: Workpieces
    taught: dict[str, int]
    """Number of the step in which something was explained in full, by what it was."""

    def values(self, operation: OnPointOperation, number: int) -> dict[str, Any]:
        """Return what a step's template is filled with."""
        match operation:
            case AddSettingTriangles():
                return self._triangles(operation, number)
            case JoinDiagonalRows():
                return self._rows(operation)
            case TrimTop():
                return self._trim(operation)

    def _triangles(self, adding: AddSettingTriangles, number: int) -> dict[str, Any]:
        rows, columns = (self.scribe.sheet.figure(name).whole for name in ("rows", "columns"))
        is_first = "diagonal" not in self.taught
        first_step = self.taught.setdefault("diagonal", number)
        ends = [
            {"edge": "left", "kind": _kind(adding.number, rows), "triangle": self.pieces.called(adding.start).one},
            {"edge": "right", "kind": _kind(adding.number, columns), "triangle": self.pieces.called(adding.end).one},
        ]
        return {
            "row": adding.number + 1,
            "last_row": rows + columns - 1,
            "is_single": not self._is_sewn(adding.row),
            "quarter_turns": self.scribe.language.words["turns"]["clockwise"][adding.quarter_turns % 4],
            "ends": ends,
            "is_alike": ends[0]["kind"] == ends[1]["kind"],
            "has_setting": any(end["kind"] != "corner" for end in ends),
            "has_corner": any(end["kind"] == "corner" for end in ends),
            "is_first": is_first,
            "first_step": first_step,
            "upright": self._upright_fabric((adding.start, adding.end)),
        }

    def _rows(self, joining: JoinDiagonalRows) -> dict[str, Any]:
        sheet = self.scribe.sheet
        steps = {step.makes: step.operation for step in sheet.program.steps}
        made = [steps.get(name) for name in joining.rows]
        runs = [steps.get(each.row) for each in made if isinstance(each, AddSettingTriangles)]
        presses = {run.press for run in runs if isinstance(run, JoinRun)}
        rows = sum(isinstance(each, AddSettingTriangles) for each in made)
        return {
            "rows": rows,
            "has_sashing": len(made) > rows,
            "corner": self.pieces.called(joining.corner),
            "seams_nest": presses == {Press.FIRST, Press.SECOND},
            "is_open": presses == {Press.OPEN},
            "is_long": rows > 4,
        }

    def _trim(self, trimming: TrimTop) -> dict[str, Any]:
        sheet = self.scribe.sheet
        sides, ends = trimming.beyond, trimming.beyond_top_bottom or trimming.beyond
        mark = sheet.project.unit.ruler_mark
        sashing, triangles = sheet.project.arrangement.sashing, sheet.project.arrangement.setting_triangles
        return {
            "beyond": sides,
            "beyond_ends": ends if ends.text != sides.text else None,
            "is_on_ruler": is_multiple(sides.value, mark) and is_multiple(ends.value, mark),
            "width": sheet.figure("centre_width"),
            "height": sheet.figure("centre_height"),
            "half_width": _half("half the width of the top", sheet.figure("centre_width")),
            "half_height": _half("half the height of the top", sheet.figure("centre_height")),
            "is_chosen": triangles is not None
            and triangles.least_float is None
            and triangles.float_width.place is None,
            "float": sheet.figure("float_width").value > 0,
            "is_framed": bool(sashing and sashing.is_around),
            "has_cornerstones": bool(sashing and sashing.is_around and sashing.cornerstone_fabric),
        }

    def _is_sewn(self, row: str) -> bool:
        """Tell whether a row was sewn from several parts, so that it is not a block alone."""
        return any(
            step.makes == row and isinstance(step.operation, JoinRun) for step in self.scribe.sheet.program.steps
        )

    def _upright_fabric(self, cuts: tuple[str, ...]) -> str:
        """Return the name of a fabric with an up among triangles; empty when there is none."""
        for id in cuts:
            cut = self.scribe.sheet.cuts.cut(id)
            if cut.is_upright and cut.shape in (CutShape.QUARTER_SQUARE_TRIANGLE, CutShape.HALF_SQUARE_TRIANGLE):
                return self.scribe.sheet.project.fabric(cut.material).name
        return ""


def _kind(number: int, along: int) -> str:
    """Return what fills an end of a diagonal row: a corner triangle, or a setting triangle level with an edge."""
    if number == along - 1:
        return "corner"
    return "lower" if number < along - 1 else "upper"


def _half(name: str, whole: Quantity) -> Quantity:
    return derived(name, whole / 2)
