"""Steps of tops set on point: triangles sewn to diagonal rows, rows to each other, and the whole squared up."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from typing import TypeAlias

from evenseam.exact import Number
from evenseam.pattern import (
    AddSettingTriangles,
    Cut,
    CutShape,
    JoinDiagonalRows,
    Run,
    Setting,
    Step,
    TrimTop,
)
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.diagonal import Lattice
from evenseam.sizing.simulator.patches import is_cut_for
from evenseam.sizing.simulator.plane import most
from evenseam.sizing.simulator.runs import as_flat, spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import (
    CutPiece,
    DiagonalRow,
    DiagonalTop,
    Flat,
    Workpiece,
    side_by_side,
    turned,
)

SHAPES = {False: CutShape.QUARTER_SQUARE_TRIANGLE, True: CutShape.HALF_SQUARE_TRIANGLE}
"""How a setting triangle and a corner triangle are cut, so that the edge of the top lies along the grain."""

_SETTING_EDGES = (("top", "right", "bottom", "left"),)
_OPPOSITE_CORNERS = (("top left", "bottom right"), ("top right", "bottom left"))
"""What one square gives: a square cut once, two opposite corners; cut the other way, the other two."""


Size: TypeAlias = tuple[Number, Number]


@dataclass(slots=True)
class Uses:
    """What each cut is used for in one top: it must be large enough for all of it, and no larger."""

    table: Table
    lattice: Lattice
    needs: dict[str, tuple[Cut, list[tuple[Size, Size]]]] = field(default_factory=dict)
    edges: dict[str, list[str]] = field(default_factory=dict)
    """The edges and corners that triangles of a cut are used at."""

    def note(self, cut: Cut, least: Size, usual: Size) -> None:
        """Note how large a cut has to be at least, and by the rules of the trade."""
        self.needs.setdefault(cut.id, (cut, []))[1].append((least, usual))

    def check(self) -> None:
        """Compare every cut with everything it is used for."""
        mark = self.table.unit.ruler_mark
        for cut, needs in self.needs.values():
            wide, high = most([usual[0] for _, usual in needs]), most([usual[1] for _, usual in needs])
            is_usual = is_cut_for(cut.width.value, wide, mark) and is_cut_for(cut.height.value, high, mark)
            is_enough = all(cut.width.value >= least[0] and cut.height.value >= least[1] for least, _ in needs)
            if not (is_usual and is_enough):
                size = self.table.size(cut.width.value, cut.height.value)
                what = "is cut" if is_enough else "needs"
                self.table.blame(
                    cut, codes.PIECE_SIZE_WRONG,
                    f"“{cut.label}” is {size}; with its seam allowances, to reach the edge of the top, it {what} "
                    f"{self.table.size(wide, high)}",
                )  # fmt: skip
        for id, edges in self.edges.items():
            _check_upright(self.table, self.needs[id][0], Counter(edges))


def add_setting_triangles(table: Table, maker: BlockMaker, step: Step, operation: AddSettingTriangles) -> Workpiece:
    """Sew a triangle to either end of a diagonal row; whether they are large enough is seen when all is sewn."""
    pieces = table.take(step, (operation.row, operation.start, operation.end))
    if table.project.arrangement.setting is not Setting.ON_POINT:
        return _not_on_point(table, step)
    if spoilt_among(pieces):
        return SPOILT
    row = as_flat(maker, pieces[0])
    if row is None or row.is_from_point or not row.blocks or (row.parts and operation.quarter_turns % 4):
        return table.wrong_piece(step, operation.row, pieces[0], "a diagonal row of blocks that is not turned")
    row = row if row.parts else turned(row, operation.quarter_turns)
    lattice = Lattice.of(table.project)
    number = operation.number
    if not 0 <= number <= lattice.last:
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED,
            f"step {step.id} sews diagonal row {number + 1}, the arrangement has {lattice.last + 1}",
            place=table.project.arrangement.place,
        )
        return SPOILT
    told = table.told
    start = _triangle(table, step, operation.start, pieces[1], lattice.edge_at_start(number))
    end = _triangle(table, step, operation.end, pieces[2], lattice.edge_at_end(number))
    if start is None or end is None or table.told > told:
        return SPOILT
    return DiagonalRow(row, number, start, end)


def join_diagonal_rows(table: Table, maker: BlockMaker, step: Step, operation: JoinDiagonalRows) -> Workpiece:
    """Sew the rows together as the lattice of the arrangement says, and the last two corner triangles to them."""
    pieces = table.take(step, (*operation.rows, operation.corner, operation.corner))
    if table.project.arrangement.setting is not Setting.ON_POINT:
        return _not_on_point(table, step)
    if spoilt_among(pieces):
        return SPOILT
    told = table.told
    lattice = Lattice.of(table.project)
    uses = Uses(table, lattice)
    bands = _in_order(table, maker, step, lattice, list(zip(operation.rows, pieces, strict=False)))
    if bands is None:
        return SPOILT
    for number, row in bands[0]:
        _check_row(table, lattice, number, row.row)
        for cut, edge, corner in (
            (row.start, lattice.edge_at_start(number), "bottom left"),
            (row.end, lattice.edge_at_end(number), "top right"),
        ):
            least, usual = lattice.square_for(edge)
            uses.note(cut, (least, least), (usual, usual))
            uses.edges.setdefault(cut.id, []).append(corner if edge == "corner" else edge)
    for number, strip in bands[1]:
        _check_sashing_row(table, lattice, uses, number, strip)
    corner_cut = _triangle(table, step, operation.corner, pieces[-1], "corner")
    if corner_cut is not None:
        least, usual = lattice.square_for("corner")
        uses.note(corner_cut, (least, least), (usual, usual))
        uses.edges.setdefault(corner_cut.id, []).extend(("top left", "bottom right"))
    if table.told == told:
        uses.check()
    return DiagonalTop() if table.told == told else SPOILT


def trim_top(table: Table, step: Step, operation: TrimTop) -> Workpiece:
    """Cut the ragged edges off, a float and a seam allowance beyond the outermost corners."""
    piece = table.take(step, (operation.top,))[0]
    if not isinstance(piece, DiagonalTop):
        return table.wrong_piece(step, operation.top, piece, "a top set on point whose edges are still ragged")
    lattice = Lattice.of(table.project)
    sides, ends = operation.beyond, operation.beyond_top_bottom or operation.beyond
    told = table.told
    for where, stated, decided in (
        ("the sides", sides, lattice.beyond_sides), ("top and bottom", ends, lattice.beyond_ends),
    ):  # fmt: skip
        if stated.value != decided + table.seam:
            triangles = table.project.arrangement.setting_triangles
            table.tell(
                codes.FIGURE_DIFFERS,
                f"step {step.id} trims {stated.text} beyond the corners at {where}; the decided float and the seam "
                f"allowance make {table.length(decided + table.seam)}",
                stated, place=triangles.place if triangles else None,
            )  # fmt: skip
    if table.told > told:
        return SPOILT
    width, height = lattice.size
    counts: Counter[tuple[str, int]] = Counter()
    for line in lattice.positions:
        counts.update((position.block, position.quarter_turns % 4) for position in line)
    return Flat(width + 2 * table.seam, height + 2 * table.seam, blocks=dict(counts), is_from_point=True)


def _not_on_point(table: Table, step: Step) -> Workpiece:
    table.tell(
        codes.WRONG_WORKPIECE, f"step {step.id} belongs to blocks set on point, which these are not",
        place=table.project.arrangement.place,
    )  # fmt: skip
    return SPOILT


def _triangle(table: Table, step: Step, name: str, piece: Workpiece, edge: str) -> Cut | None:
    """Return the cut of a triangle of the right kind and fabric; None, with the problem noted, for anything else."""
    is_corner = edge == "corner"
    decided = table.project.arrangement.setting_triangles
    if not isinstance(piece, CutPiece) or piece.cut.shape is not SHAPES[is_corner] or decided is None:
        table.wrong_piece(step, name, piece, f"a {'corner' if is_corner else 'setting'} triangle, cut as a "
                          f"{SHAPES[is_corner].value}")  # fmt: skip
        return None
    fabric = decided.corner_fabric if is_corner else decided.fabric
    table.check_fabric(piece.cut, fabric, "the corner triangles" if is_corner else "the setting triangles")
    table.check_print(piece.cut)
    return piece.cut


def _in_order(
    table: Table, maker: BlockMaker, step: Step, lattice: Lattice, pieces: list[tuple[str, Workpiece]]
) -> tuple[list[tuple[int, DiagonalRow]], list[tuple[int, Flat]]] | None:
    """Return diagonal rows and rows of sashing with their numbers; None, with the problem noted, if out of order."""
    sashing = table.project.arrangement.sashing
    order: list[tuple[int, bool]] = []
    for number in range(lattice.last + 1):
        if sashing and (number > 0 or sashing.is_around):
            order.append((number, True))
        order.append((number, False))
    if sashing and sashing.is_around:
        order.append((lattice.last + 1, True))
    if len(order) != len(pieces):
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED,
            f"step {step.id} joins {len(pieces)} rows; the arrangement has {len(order)}, rows of sashing included",
            place=table.project.arrangement.place,
        )
        return None
    rows: list[tuple[int, DiagonalRow]] = []
    strips: list[tuple[int, Flat]] = []
    for (number, is_sashing), (name, piece) in zip(order, pieces, strict=True):
        flat = as_flat(maker, piece)
        if is_sashing and flat is not None and not flat.blocks and not flat.is_from_point:
            strips.append((number, flat))
        elif not is_sashing and isinstance(piece, DiagonalRow) and piece.number == number:
            rows.append((number, piece))
        else:
            wanted = "a row of sashing" if is_sashing else f"diagonal row {number + 1} with its triangles"
            table.wrong_piece(step, name, piece, wanted)
            return None
    return rows, strips


def _check_row(table: Table, lattice: Lattice, number: int, row: Flat) -> None:
    """Compare a row with the arrangement: block after block, with a sash between them and at the ends if decided."""
    arrangement = table.project.arrangement
    sashing = arrangement.sashing
    positions = lattice.row(number)
    wanted: list[tuple[str, int] | None] = []
    for position in positions:
        wanted += [None] if sashing and wanted and wanted[-1] else []
        wanted.append((position.block, position.quarter_turns % 4))
    if sashing and sashing.is_around:
        wanted = [None, *wanted, None]
    parts = side_by_side(row, Run.ACROSS, len(wanted))
    found = [None if part.cut else (part.block, part.turns) for part in parts] if parts is not None else []
    if parts is None or found != wanted:
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED,
            f"diagonal row {number + 1} is sewn from {_listed(found)}; the arrangement has {_listed(wanted)}",
            place=arrangement.place,
        )
        return
    for part in parts:
        if part.cut is not None and sashing is not None:
            _check_strip(table, part, lattice.gap + 2 * table.seam, lattice.side + 2 * table.seam, sashing.fabric)


def _check_sashing_row(table: Table, lattice: Lattice, uses: Uses, number: int, row: Flat) -> None:
    """Check a row of sashing: its pieces lie on the lattice, and its ends reach the raw edge with all their width.

    A print with an up leans the same way in all of them: they are cut upright as the blocks stand in their rows.
    """
    sashing = table.project.arrangement.sashing
    if sashing is None:
        return
    first, last = lattice.reach_between(number)
    around = 2 * table.seam
    wide, narrow = lattice.side + around, lattice.gap + around
    kinds = [False, *(kind for _ in range(first, last) for kind in (True, False))]
    kinds = [True, *kinds, True] if sashing.is_around else kinds
    if sashing.cornerstone_fabric is None:
        kinds = [False]
    parts = side_by_side(row, Run.ACROSS, len(kinds))
    if parts is None or len(parts) != len(kinds) or any(part.cut is None for part in parts):
        table.tell(
            codes.SASHING_NOT_AS_DECIDED,
            f"the row of sashing above diagonal row {number + 1} should be sewn from {len(kinds)} pieces"
            if number <= lattice.last
            else f"the row of sashing below the last diagonal row should be sewn from {len(kinds)} pieces",
            place=sashing.place,
        )
        return
    usual = lattice.usually_longer
    at_start, at_end = lattice.least_longer(number)
    for place, (part, is_stone) in enumerate(zip(parts, kinds, strict=True)):
        fabric = sashing.cornerstone_fabric if is_stone and sashing.cornerstone_fabric else sashing.fabric
        length = narrow if is_stone else wide
        if place not in (0, len(kinds) - 1):
            _check_strip(table, part, length, narrow, fabric)
            continue
        shortest, whole = length + (at_end if place else at_start), length + usual
        if len(kinds) == 1:
            length = (last - first) * (lattice.side + lattice.gap) + wide + 2 * lattice.frame
            shortest, whole = length + 2 * most([at_start, at_end]), length + 2 * usual
        assert part.cut is not None
        table.check_fabric(part.cut, fabric, "the sashing" if not is_stone else "the cornerstones")
        table.check_print(part.cut)
        if part.height != narrow:
            _tell_width(table, part, part.height)
        if part.turns % 2:
            uses.note(part.cut, (narrow, shortest), (narrow, whole))
        else:
            uses.note(part.cut, (shortest, narrow), (whole, narrow))


def _check_strip(table: Table, part: Flat, width: Number, height: Number, fabric: str) -> None:
    sashing = table.project.arrangement.sashing
    if part.cut is None or sashing is None:
        return
    what = "the cornerstones" if fabric == sashing.cornerstone_fabric and width == height else "the sashing"
    table.check_fabric(part.cut, fabric, what)
    table.check_print(part.cut)
    if (part.width, part.height) != (width, height):
        table.blame(
            part.cut, codes.SASHING_NOT_AS_DECIDED,
            f"“{part.cut.label}” is sewn in {table.size(part.width, part.height)}; between these blocks it is "
            f"{table.size(width, height)}",
            sashing.width, place=sashing.place,
        )  # fmt: skip


def _tell_width(table: Table, part: Flat, raw: Number) -> None:
    sashing = table.project.arrangement.sashing
    assert part.cut is not None and sashing is not None
    table.blame(
        part.cut, codes.SASHING_NOT_AS_DECIDED,
        f"“{part.cut.label}” finishes {table.length(raw - 2 * table.seam)} wide, the sashing is decided as "
        f"{sashing.width.text}",
        sashing.width, place=sashing.place,
    )  # fmt: skip


def _check_upright(table: Table, cut: Cut, edges: Counter[str]) -> None:
    """Check that the squares give every edge its triangle with the print upright.

    Cut twice diagonally, an upright square gives one triangle for each edge of the top; cut once, one for each of two
    opposite corners. What of a square is used must be the same for all squares.
    """
    is_setting = cut.shape is CutShape.QUARTER_SQUARE_TRIANGLE
    each = 4 if is_setting else 2
    used = cut.used_of_square
    if not table.is_directional(cut.material):
        if used is not None:
            table.blame(
                cut, codes.COUNT_NOT_WHOLE,
                f"“{cut.label}” has no print with an up, and only {used} of {each} triangles of a square are used",
            )  # fmt: skip
        return
    groups = _SETTING_EDGES if is_setting else _OPPOSITE_CORNERS
    found = [[edges[edge] for edge in group if edges[edge]] for group in groups]
    sides = {len(counts) for counts in found if counts}
    is_even = all(len(set(counts)) == 1 for counts in found if counts)
    if sides != {each if used is None else used} or not is_even:
        table.blame(
            cut, codes.PRINT_LIES_SIDEWAYS,
            f"“{cut.label}” is cut from upright squares of which {used or each} triangles each are used; where it is "
            f"sewn on ({', '.join(f'{edge} {number}' for edge, number in edges.items())}), its print would not stand",
        )  # fmt: skip


def _listed(parts: list[tuple[str, int] | None]) -> str:
    quarters = ("", " turned a quarter", " turned half round", " turned three quarters")
    named = [f"{part[0]}{quarters[part[1]]}" if part else "a strip" for part in parts]
    return ", ".join(named[:8]) + (", …" if len(named) > 8 else "") or "something else"
