"""The steps that join blocks to rows, and rows to the centre."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.pattern import (
    JoinRun,
    Method,
    Press,
    Quantity,
    Run,
    Sashing,
    Step,
    derived,
)
from evenseam.sizing.centre import standing_size
from evenseam.sizing.cut_list import CORNERSTONE, SASH_LYING
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.unequal_cuts import SASH_UPRIGHT


@dataclass(frozen=True, slots=True)
class _Part:
    """A workpiece in a run, and how far it is turned clockwise."""

    workpiece: str
    quarter_turns: int = 0


def centre_steps(sized: SizedProject, blocks: dict[str, str]) -> tuple[list[Step], str]:
    """Return the steps from blocks to the centre, and the centre's workpiece.

    `blocks` gives the workpiece of every block. Equal rows that are pressed alike are one step, done as often as
    there are such rows; a row of one block alone is no step.
    """
    known = dict(sized.figures)
    in_row = known["sashes_in_row"].whole if "sashes_in_row" in known else 0
    sashing_rows = known["sashing_rows"].whole if "sashing_rows" in known else 0
    sashing = sized.project.arrangement.sashing
    steps, rows = _rows(sized, blocks, in_row)
    strip = SASH_LYING
    if sashing_rows and "cornerstone_count" in known:
        steps.append(_sashing_row(sized, in_row, sashing_rows))
        strip = steps[-1].makes
    parts = _with_strips(rows, strip, sashing_rows, sashing)
    if len(parts) == 1:
        return steps, parts[0].workpiece
    press = Press.SASHING if sashing_rows else _seams_press(sized)
    measures = (known["centre_width"], known["centre_height"])
    steps.append(Step("join-rows", _run(parts, Run.DOWN, press, "rows"), "centre", 1, measures))
    return steps, "centre"


def _with_strips(parts: list[_Part], strip: str, strips: int, sashing: Sashing | None) -> list[_Part]:
    """Put strips between the parts, and outside them as well when the sashing goes all round."""
    if not strips or sashing is None:
        return parts
    run = [_Part(strip)]
    for part in parts:
        run += [part, _Part(strip)]
    return run if sashing.is_around else run[1:-1]


def _run(parts: list[_Part], run: Run, press: Press, kind: str) -> JoinRun:
    turns = tuple(part.quarter_turns for part in parts)
    return JoinRun(tuple(part.workpiece for part in parts), run, press, kind, turns if any(turns) else ())


def _rows(sized: SizedProject, blocks: dict[str, str], in_row: int) -> tuple[list[Step], list[_Part]]:
    """Return one step for each different row, and the workpiece of every row from the top."""
    positions, sashing = sized.project.arrangement.positions, sized.project.arrangement.sashing
    alternates = not in_row and not is_bulky(sized)
    # Pressed to one side, the seams of neighbouring rows nest only when every other row is pressed the other way.
    kinds = [(row, number % 2 if alternates else 0) for number, row in enumerate(positions)]
    different = list(dict.fromkeys(kinds))
    measures = _row_size(sized)
    steps: list[Step] = []
    workpieces: dict[object, _Part] = {}
    for number, kind in enumerate(different, start=1):
        row, is_odd = kind
        standing = [_Part(blocks[position.block], position.quarter_turns % 4) for position in row]
        parts = _with_strips(standing, SASH_UPRIGHT, in_row, sashing)
        if len(parts) == 1:
            workpieces[kind] = parts[0]
            continue
        makes = "row" if len(different) == 1 else f"row-{number}"
        press = Press.SASHING if in_row else Press.SECOND if is_odd else _seams_press(sized)
        operation = _run(parts, Run.ACROSS, press, "sashed row" if in_row else "blocks")
        steps.append(Step(f"join-{makes}", operation, makes, kinds.count(kind), measures))
        workpieces[kind] = _Part(makes)
    return steps, [workpieces[kind] for kind in kinds]


def _row_size(sized: SizedProject) -> tuple[Quantity, Quantity]:
    project, seam = sized.project, sized.project.seam_allowance
    _, height = standing_size(project, project.arrangement.positions[0][0])
    return sized.figure("centre_width"), derived("unfinished height of a row", height + 2 * seam)


def _seams_press(sized: SizedProject) -> Press:
    return Press.OPEN if is_bulky(sized) else Press.FIRST


def is_bulky(sized: SizedProject) -> bool:
    """Tell whether seams between blocks are pressed open."""
    # Blocks sewn on foundations bring many layers to a seam: pressed open they lie flat.
    return any(sized.project.block(pieced.block).method is Method.FOUNDATION for pieced in sized.blocks)


def _sashing_row(sized: SizedProject, in_row: int, times: int) -> Step:
    arrangement = sized.project.arrangement
    sashes = [_Part(SASH_LYING)] * arrangement.columns.whole
    parts = _with_strips(sashes, CORNERSTONE, in_row, arrangement.sashing)
    measures = (sized.figure("centre_width"), sized.figure("sashing_strip_width"))
    operation = _run(parts, Run.ACROSS, Press.SASHING, "sashing row")
    return Step("join-sashing-row", operation, "sashing-row", times, measures)
