"""The steps that sew rows of unequal blocks with their spacers and sashing, and join the rows."""

from __future__ import annotations

from itertools import pairwise

from evenseam.pattern import BlockPosition, JoinRun, Press, Run, Step, derived
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.top_steps import is_bulky
from evenseam.sizing.unequal_cuts import SASH_BETWEEN_ROWS, strip_id
from evenseam.sizing.unequal_rows import Sash, SizedRow, sized_rows


def unequal_steps(sized: SizedProject, blocks: dict[str, str]) -> tuple[list[Step], str]:
    """Return the steps that sew the rows and join them, and the workpiece of the centre."""
    rows = sized_rows(sized)
    press = Press.OPEN if is_bulky(sized) else Press.FIRST
    known = dict(sized.figures)
    seam, wide, high = sized.project.seam_allowance, known["centre_width"], known["centre_height"]
    kinds = [_kind(rows, row, blocks) for row in rows]
    made: dict[object, tuple[str, int]] = {}
    steps: list[Step] = []
    for row, kind in zip(rows, kinds, strict=True):
        if kind in made:
            continue
        if len(kind) == 1:
            made[kind] = kind[0]
            continue
        name = "row" if len({*kinds}) == 1 else f"row-{len(made) + 1}"
        is_sashed = _is_sashed(row)
        run = _run(
            list(kind), Run.ACROSS, Press.SASHING if is_sashed else press, "sashed row" if is_sashed else "blocks"
        )
        row_high = derived("unfinished height of a row", row.height + 2 * seam)
        steps.append(Step(f"join-{name}", run, name, kinds.count(kind), (wide, row_high)))
        made[kind] = (name, 0)
    parts = [made[kind] for kind in kinds]
    if "sashing_strip_count" in known:
        press = Press.SASHING
        parts = [each for part in parts for each in ((SASH_BETWEEN_ROWS, 0), part)]
        sashing = sized.project.arrangement.sashing
        parts = [*parts, parts[0]] if sashing is not None and sashing.is_around else parts[1:]
    if len(parts) == 1:
        return steps, parts[0][0]
    steps.append(Step("join-rows", _run(parts, Run.DOWN, press, "rows"), "centre", 1, (wide, high)))
    return steps, "centre"


def _run(parts: list[tuple[str, int]], run: Run, press: Press, kind: str) -> JoinRun:
    turns = tuple(turned for _, turned in parts)
    return JoinRun(tuple(part for part, _ in parts), run, press, kind, turns if any(turns) else ())


def _is_sashed(row: SizedRow) -> bool:
    """Tell whether every seam of a row has sashing on one side, to press it towards."""
    return all(isinstance(one, Sash) or isinstance(other, Sash) for one, other in pairwise(row.parts))


def _kind(rows: tuple[SizedRow, ...], row: SizedRow, blocks: dict[str, str]) -> tuple[tuple[str, int], ...]:
    """Return the workpieces of a row and how far each is turned clockwise."""
    return tuple(
        (blocks[part.block], part.quarter_turns % 4)
        if isinstance(part, BlockPosition)
        else (strip_id(rows, part, row.height), 0)
        for part in row.parts
    )
