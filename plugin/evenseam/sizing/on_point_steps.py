"""The steps that join blocks on point to diagonal rows, rows to a top, and trim it to an upright rectangle."""

from __future__ import annotations

from dataclasses import dataclass, field

from evenseam.pattern import (
    AddSettingTriangles,
    JoinDiagonalRows,
    JoinRun,
    Press,
    Quantity,
    Run,
    Sashing,
    Step,
    TrimTop,
    derived,
)
from evenseam.sizing.on_point import (
    DiagonalRow,
    SashingRow,
    diagonal_rows,
    sashing_on_point,
    sashing_rows,
)
from evenseam.sizing.on_point_cuts import (
    CORNER_TRIANGLE,
    END_CORNERSTONE,
    END_SASH,
    INNER_CORNERSTONE,
    ROW_SASH,
    SASHING_ROW_SASH,
    sashing_strip_id,
    triangle_id,
)
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.top_steps import is_bulky


def on_point_steps(sized: SizedProject, blocks: dict[str, str]) -> tuple[list[Step], str]:
    """Return the steps from blocks to the trimmed top, and its workpiece.

    `blocks` gives the workpiece of every block. Equal rows that are pressed alike are one step, done as often as there
    are such rows; the triangles of every row are a step of their own, for they belong to one place of the top.
    """
    return _Maker(sized, blocks).made()


@dataclass(slots=True)
class _Maker:
    sized: SizedProject
    blocks: dict[str, str]
    steps: list[Step] = field(default_factory=list)

    def made(self) -> tuple[list[Step], str]:
        """Work out all steps."""
        arrangement = self.sized.project.arrangement
        sashing = sashing_on_point(arrangement)
        rows = diagonal_rows(arrangement)
        runs = self._block_rows(rows, sashing)
        strips = self._sashing_rows(sashing_rows(rows, sashing), sashing) if sashing else {}
        ready = {row.number: self._with_triangles(row, *runs[row.number]) for row in rows}
        members = []
        for number in range(len(rows) + 1):
            members += [strips[number]] if number in strips else []
            members += [ready[number]] if number in ready else []
        self._add("join-diagonal-rows", JoinDiagonalRows(tuple(members), CORNER_TRIANGLE), "untrimmed-top")
        seam = self.sized.project.seam_allowance
        beyond = [
            derived(f"from the outermost corners to the edge at the {ends}", self.sized.figure(name) + seam)
            for name, ends in (("float_width", "left and right"), ("float_height", "top and bottom"))
        ]
        measures = (self.sized.figure("centre_width"), self.sized.figure("centre_height"))
        trim = TrimTop("untrimmed-top", beyond[0], None if beyond[0].value == beyond[1].value else beyond[1])
        self._add("trim-top", trim, "centre", 1, measures)
        return self.steps, "centre"

    def _add(
        self,
        id: str,
        operation: JoinRun | AddSettingTriangles | JoinDiagonalRows | TrimTop,
        makes: str,
        times: int = 1,
        measures: tuple[Quantity, Quantity] | None = None,
    ) -> None:
        self.steps.append(Step(id, operation, makes, times, measures))

    def _block_rows(self, rows: tuple[DiagonalRow, ...], sashing: Sashing | None) -> dict[int, tuple[str, int]]:
        """Add a step for every different row; return workpiece and quarter turns by number of the row."""
        bulky = is_bulky(self.sized)
        # Pressed to one side, the seams of neighbouring rows nest only when every other row is pressed the other way.
        kinds = {row.number: (row.positions, row.number % 2 if not bulky and not sashing else 0) for row in rows}
        found: dict[object, tuple[str, int]] = {}
        for kind in dict.fromkeys(kinds.values()):
            positions, is_odd = kind
            parts = [self.blocks[position.block] for position in positions]
            turns = [position.quarter_turns % 4 for position in positions]
            if sashing:
                parts, turns = _between(parts, turns, sashing.is_around)
            if len(parts) == 1:
                found[kind] = (parts[0], turns[0])
                continue
            makes = f"row-{len(found) + 1}"
            press = Press.SASHING if sashing else Press.OPEN if bulky else Press.SECOND if is_odd else Press.FIRST
            run = JoinRun(
                tuple(parts), Run.ACROSS, press, "sashed row" if sashing else "blocks",
                tuple(turns) if any(turns) else (),
            )  # fmt: skip
            times = list(kinds.values()).count(kind)
            self._add(f"join-{makes}", run, makes, times, self._row_size(len(positions), sashing))
            found[kind] = (makes, 0)
        return {number: found[kind] for number, kind in kinds.items()}

    def _row_size(self, blocks: int, sashing: Sashing | None) -> tuple[Quantity, Quantity]:
        seam, block = self.sized.project.seam_allowance, self._block()
        formula = blocks * block
        if sashing:
            sashes = blocks + 1 if sashing.is_around else blocks - 1
            formula = formula + sashes * sashing.width
        long = derived(f"unfinished length of a row of {blocks} blocks", formula + 2 * seam)
        return long, derived("unfinished height of a row", block + 2 * seam)

    def _block(self) -> Quantity:
        return self.sized.project.block(self.sized.project.arrangement.positions[0][0].block).width

    def _with_triangles(self, row: DiagonalRow, workpiece: str, quarter_turns: int) -> str:
        rows, columns = self.sized.figure("rows").whole, self.sized.figure("columns").whole
        start = end = CORNER_TRIANGLE
        if not row.start_is_corner:
            at = 2 * (row.number if row.start_grows else row.number - rows)
            start = triangle_id(self.sized, is_at_side=row.start_grows, number=at)
        if not row.end_is_corner:
            at = 2 * (row.number if row.end_grows else row.number - columns) + 1
            end = triangle_id(self.sized, is_at_side=not row.end_grows, number=at)
        makes = f"diagonal-row-{row.number + 1}"
        operation = AddSettingTriangles(workpiece, start, end, row.number, quarter_turns)
        self._add(f"{makes}-triangles", operation, makes)
        return makes

    def _sashing_rows(self, rows: tuple[SashingRow, ...], sashing: Sashing) -> dict[int, str]:
        """Add a step for every different row of sashing; return the workpiece by number of the row that follows."""
        if sashing.cornerstone_fabric is None:
            return {row.number: sashing_strip_id(row.sashes) for row in rows}
        for sashes in sorted({row.sashes for row in rows}):
            strips = [SASHING_ROW_SASH] * sashes
            if not sashing.is_around:
                strips = [END_SASH, *strips[1:-1], END_SASH]
            parts, _ = _between(strips, [0] * sashes, sashing.is_around, INNER_CORNERSTONE)
            if sashing.is_around:
                parts = [END_CORNERSTONE, *parts[1:-1], END_CORNERSTONE]
            run = JoinRun(tuple(parts), Run.ACROSS, Press.SASHING, "sashing row")
            times = sum(row.sashes == sashes for row in rows)
            makes = _sashing_row_id(sashes)
            self._add(f"join-{makes}", run, makes, times, self._sashing_row_size(sashes, sashing))
        return {row.number: _sashing_row_id(row.sashes) for row in rows}

    def _sashing_row_size(self, sashes: int, sashing: Sashing) -> tuple[Quantity, Quantity]:
        seam, block = self.sized.project.seam_allowance, self._block()
        inner = (sashes - 1) * (block + sashing.width)
        if sashing.is_around:
            end = self.sized.figure("end_cornerstone_length")
            formula = inner + block + 2 * (end - 2 * seam) + 2 * seam
        else:
            end = self.sized.figure("end_sash_length")
            formula = inner - block + 2 * (end - 2 * seam) + 2 * seam
        long = derived(f"unfinished length of a row of sashing along {sashes} blocks", formula)
        return long, self.sized.figure("sashing_strip_width")


def _between(parts: list[str], turns: list[int], is_around: bool, strip: str = ROW_SASH) -> tuple[list[str], list[int]]:
    """Put strips between parts, and outside them as well when the sashing goes all round."""
    with_strips, with_turns = [strip], [0]
    for part, turn in zip(parts, turns, strict=True):
        with_strips += [part, strip]
        with_turns += [turn, 0]
    return (with_strips, with_turns) if is_around else (with_strips[1:-1], with_turns[1:-1])


def _sashing_row_id(sashes: int) -> str:
    return f"sashing-row-{sashes}"
