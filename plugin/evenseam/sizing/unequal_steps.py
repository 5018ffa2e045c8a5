"""The steps that sew rows of unequal blocks with their spacers, and join the rows."""

from __future__ import annotations

from evenseam.pattern import BlockPosition, JoinRun, Press, Run, Step, derived
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.top_steps import is_bulky
from evenseam.sizing.unequal_rows import SizedRow, sized_rows, spacer_id


def unequal_steps(sized: SizedProject, blocks: dict[str, str]) -> tuple[list[Step], str]:
    """Return the steps that sew the rows and join them, and the workpiece of the centre."""
    rows = sized_rows(sized)
    press = Press.OPEN if is_bulky(sized) else Press.FIRST
    seam, wide = sized.project.seam_allowance, sized.figure("centre_width")
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
        turns = tuple(turned for _, turned in kind)
        run = JoinRun(tuple(part for part, _ in kind), Run.ACROSS, press, "blocks", turns if any(turns) else ())
        high = derived("unfinished height of a row", row.height + 2 * seam)
        steps.append(Step(f"join-{name}", run, name, kinds.count(kind), (wide, high)))
        made[kind] = (name, 0)
    if len(rows) == 1:
        return steps, made[kinds[0]][0]
    turns = tuple(made[kind][1] for kind in kinds)
    run = JoinRun(tuple(made[kind][0] for kind in kinds), Run.DOWN, press, "rows", turns if any(turns) else ())
    steps.append(Step("join-rows", run, "centre", 1, (wide, sized.figure("centre_height"))))
    return steps, "centre"


def _kind(rows: tuple[SizedRow, ...], row: SizedRow, blocks: dict[str, str]) -> tuple[tuple[str, int], ...]:
    """Return the workpieces of a row and how far each is turned clockwise."""
    return tuple(
        (blocks[part.block], part.quarter_turns % 4)
        if isinstance(part, BlockPosition)
        else (spacer_id(rows, part, row.height), 0)
        for part in row.parts
    )
