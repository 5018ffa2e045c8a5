"""Blocks on point become a sized centre: its extent, its float, its triangles and its sashing.

Turned by 45 degrees, a block is √2 times as wide as its side is long, and so is every step from block to block. Sizes
with √2 in them lie on no ruler, so that the blocks are given a little room to the edge, the float, that brings the
trimmed top to a mark, unless the author says how much float there is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from evenseam.exact import Direction, Rounding, Unit, square_root
from evenseam.pattern import (
    Arrangement,
    Block,
    BlockPosition,
    Expression,
    Operand,
    Operator,
    Project,
    Quantity,
    Sashing,
    Setting,
    SettingTriangles,
    derived,
)
from evenseam.sizing.border_blocks import border_blocks
from evenseam.sizing.centre import blocks_used, size_block
from evenseam.sizing.ledger import Ledger

FLOATED_MARK = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}
"""The marks the finished size of blocks on point is brought up to by their float (common practice)."""
ROOT = square_root(2)

_DIAGONAL = "from corner to corner a square is √2 times as wide as its side is long"
_DIAGONAL_SOURCE = "Math Charts Page, Marcia Hohn, Quilter's Cache, 2002"
_TRIANGLES_SOURCE = "How to Make Setting Triangles, Marcia Hohn, Quilter's Cache, 2002"
_COUNT_SOURCE = "Reference chart for squares on point, APQS"
_SIDE_RULE = (
    "the long side lies along the edge, and 5 × the seam allowance for the seams round the sharp corners; the square "
    "is cut twice diagonally, which leaves the straight grain along the edge of the top"
)
_CORNER_RULE = (
    "the short sides lie along the edges, and 3 1/2 × the seam allowance for the seams round the sharp corners; the "
    "square is cut once diagonally, which leaves the straight grain along the edges of the top"
)
_REACH_RULE = (
    "√2 × (float + seam allowance) longer at the end, where the edge of the trimmed top cuts through it at 45 degrees"
)


@dataclass(frozen=True, slots=True)
class DiagonalRow:
    """One row of blocks, from the lower left to the upper right of the finished top."""

    number: int
    first: int
    """Its first column of the lattice: 0 is the column of the block at the top left corner."""
    positions: tuple[BlockPosition, ...]
    places: tuple[tuple[int, int], ...]
    """Line of the layout and place in it, of every block."""
    start_is_corner: bool
    start_grows: bool
    """True when the next row reaches further at the lower left; there is a triangle of the left edge then."""
    end_is_corner: bool
    end_grows: bool
    """True when the next row reaches further at the upper right; there is a triangle of the top edge then."""

    @property
    def last(self) -> int:
        """Its last column of the lattice."""
        return self.first + len(self.positions) - 1


@dataclass(frozen=True, slots=True)
class SashingRow:
    """A row of sashing between two rows of blocks, or outside the first or last one."""

    number: int
    """The row of blocks that follows it."""
    first: int
    last: int
    """Columns of the lattice."""

    @property
    def sashes(self) -> int:
        """How many sashes it has, end pieces included."""
        return self.last - self.first + 1


@dataclass(frozen=True, slots=True)
class OnPointCentre:
    """What every stage needs to know about blocks on point."""

    block: Quantity
    """Finished side."""
    sashing: Sashing | None
    rows: tuple[DiagonalRow, ...]
    sashing_rows: tuple[SashingRow, ...]
    float_width: Quantity
    float_height: Quantity
    width: Quantity
    """Raw edge to raw edge, trimmed."""
    height: Quantity


def diagonal_rows(arrangement: Arrangement) -> tuple[DiagonalRow, ...]:
    """Return the rows that blocks on point are sewn in, from the top left corner to the bottom right one.

    The lattice has a column m and a row k for every block: block j of an upper line i stands at (j − i, i + j), block j
    of the line between i and the next at (j − i, i + j + 1).
    """
    high, wide = arrangement.rows.whole, arrangement.columns.whole
    found: dict[int, dict[int, tuple[int, int]]] = {}
    for line, positions in enumerate(arrangement.positions):
        for place in range(len(positions)):
            upper = line // 2
            found.setdefault(upper + place + line % 2, {})[place - upper] = (line, place)
    return tuple(
        DiagonalRow(
            number, min(row), tuple(arrangement.positions[line][place] for _, (line, place) in sorted(row.items())),
            tuple(at for _, at in sorted(row.items())), number == high - 1, number < high - 1, number == wide - 1,
            number < wide - 1,
        )
        for number, row in sorted(found.items())
    )  # fmt: skip


def sashing_rows(rows: tuple[DiagonalRow, ...], sashing: Sashing | None) -> tuple[SashingRow, ...]:
    """Return the rows of sashing from the top left corner: each reaches as far as the longer row beside it."""
    if sashing is None:
        return ()
    found = []
    for number in range(len(rows) + 1):
        beside = rows[max(number - 1, 0) : number + 1]
        if len(beside) == 2 or sashing.is_around:
            found.append(SashingRow(number, min(row.first for row in beside), max(row.last for row in beside)))
    return tuple(found)


def sashing_on_point(arrangement: Arrangement) -> Sashing | None:
    """Return the sashing if any strip of it is sewn: a single block has some only all round."""
    sashing = arrangement.sashing
    if sashing is None or sashing.is_around:
        return sashing
    return sashing if arrangement.rows.whole + arrangement.columns.whole > 2 else None


def settle_float(project: Project) -> Project:
    """Return the project with the float chosen where nobody gave one; other projects stay as they are."""
    triangles = project.arrangement.setting_triangles
    if project.arrangement.setting is not Setting.ON_POINT or triangles is None or not triangles.chooses_float:
        return project
    rounding = Rounding("float to the ruler", FLOATED_MARK[project.unit], Direction.UP)
    floats, least = [], triangles.least_float
    for way, ends, reach in zip(
        ("width", "height"), ("left and right", "top and bottom"), _reaches(project), strict=True
    ):
        exact = derived(f"{way} of the blocks on point, corner to corner", reach, rule=_DIAGONAL)
        brought_up = derived(
            f"finished {way} of the blocks with their float", exact if least is None else exact + 2 * least,
            rule="brought up to a mark of the ruler, so that borders can be cut to it", rounding=rounding,
        )  # fmt: skip
        floats.append(
            derived(f"float at the {ends}", (brought_up - exact) / 2, rule="half of what is lacking to the mark")
        )
    settled = replace(triangles, float_width=floats[0], float_height=floats[1], chooses_float=False)
    return replace(project, arrangement=replace(project.arrangement, setting_triangles=settled))


def size_on_point(project: Project, ledger: Ledger) -> OnPointCentre:
    """Work out blocks on point with their triangles and sashing; enter every figure."""
    arrangement, seam = project.arrangement, project.seam_allowance
    triangles = arrangement.setting_triangles
    assert triangles is not None, "reading gives every arrangement on point its triangles"
    rows, columns = ledger.enter("rows", arrangement.rows), ledger.enter("columns", arrangement.columns)
    in_borders = border_blocks(project)
    for id, uses in blocks_used(project).items():
        if id not in in_borders:  # Their size and number are entered with the borders.
            size_block(project.block(id), uses, seam, ledger)
    ledger.work_out("block_count", rows * columns + (rows - 1) * (columns - 1), source=_COUNT_SOURCE)
    sashing = sashing_on_point(arrangement)
    if sashing:
        ledger.enter("sashing_width", sashing.width)
    block = _block(project)
    float_width = ledger.enter("float_width", triangles.float_width)
    float_height = ledger.enter("float_height", triangles.float_height or triangles.float_width)
    across, down = _reaches(project)
    blocks_width = ledger.work_out(
        "blocks_width", across, label="width of the blocks on point, corner to corner", rule=_DIAGONAL,
        source=_DIAGONAL_SOURCE,
    )  # fmt: skip
    blocks_height = ledger.work_out(
        "blocks_height", down, label="height of the blocks on point, corner to corner", rule=_DIAGONAL,
        source=_DIAGONAL_SOURCE,
    )  # fmt: skip
    rule = "the blocks, the float, and a seam allowance on either side"
    width = ledger.work_out("centre_width", blocks_width + 2 * float_width + 2 * seam, rule=rule)
    height = ledger.work_out("centre_height", blocks_height + 2 * float_height + 2 * seam, rule=rule)
    larger = float_width if float_width.value >= float_height.value else float_height
    # A single row has setting triangles at the top and bottom only, a single column at the sides only.
    at_edges = float_height if rows.whole == 1 else float_width if columns.whole == 1 else larger
    _size_triangles(rows, columns, block, at_edges, larger, seam, ledger)
    found = diagonal_rows(arrangement)
    between = sashing_rows(found, sashing)
    if sashing:
        _size_sashing(sashing, block, larger, seam, between, ledger)
    return OnPointCentre(block, sashing, found, between, float_width, float_height, width, height)


def triangles_of(project: Project) -> SettingTriangles:
    """Return the setting triangles of a project on point."""
    triangles = project.arrangement.setting_triangles
    assert triangles is not None
    return triangles


def reach_beyond(floated: Quantity, seam: Quantity) -> Expression:
    """Return how far a strip reaches beyond the corner of the row beside it, up to the raw edge of the trimmed top."""
    return Expression.of(Operator.TIMES, floated + seam, ROOT)


def _block(project: Project) -> Quantity:
    position = project.arrangement.positions[0][0]
    return project.block(position.block).width


def _blocks_of(project: Project) -> Iterator[Block]:
    for id in dict.fromkeys(position.block for line in project.arrangement.positions for position in line):
        yield project.block(id)


def _reaches(project: Project) -> tuple[Operand, Operand]:
    """Return the exact width and height from the outermost corners to the opposite ones."""
    arrangement, block = project.arrangement, _block(project)
    sashing = sashing_on_point(arrangement)
    if sashing is None:
        return arrangement.columns * block * ROOT, arrangement.rows * block * ROOT
    if sashing.is_around:
        step = block + sashing.width
        return arrangement.columns * step * ROOT, arrangement.rows * step * ROOT
    return (
        (arrangement.columns * block + (arrangement.columns - 1) * sashing.width) * ROOT,
        (arrangement.rows * block + (arrangement.rows - 1) * sashing.width) * ROOT,
    )


def _size_triangles(
    rows: Quantity,
    columns: Quantity,
    block: Quantity,
    at_edges: Quantity,
    larger: Quantity,
    seam: Quantity,
    ledger: Ledger,
) -> None:
    up = Rounding("cut size", block.unit.ruler_mark, Direction.UP)
    if rows.whole + columns.whole > 2:
        ledger.work_out(
            "setting_triangle_count", 2 * (rows - 1) + 2 * (columns - 1), label="number of setting triangles"
        )
        long_side = ledger.work_out(
            "setting_triangle_long_side", block * ROOT + 2 * at_edges, label="finished long side of a setting triangle",
            rule="as long as the block is from corner to corner, and the float at either end",
        )  # fmt: skip
        ledger.work_out(
            "setting_triangle_square", long_side + 5 * seam, label="square for the setting triangles", rule=_SIDE_RULE,
            source=_TRIANGLES_SOURCE, rounding=up,
        )  # fmt: skip
    short_side = ledger.work_out(
        "corner_triangle_short_side", block / ROOT + 2 * larger, label="finished short side of a corner triangle",
        rule="half the diagonal of the block, and the float on either side",
    )  # fmt: skip
    ledger.work_out(
        "corner_triangle_square", short_side + Fraction(7, 2) * seam, label="square for the corner triangles",
        rule=_CORNER_RULE, source=_TRIANGLES_SOURCE, rounding=up,
    )  # fmt: skip
    ledger.count("corner_triangle_count", 4, "number of corner triangles", "one at each corner of the top")


def _size_sashing(
    sashing: Sashing, block: Quantity, floated: Quantity, seam: Quantity, rows: tuple[SashingRow, ...], ledger: Ledger
) -> None:
    up = Rounding("cut size", block.unit.ruler_mark, Direction.UP)
    blocks = ledger["block_count"]
    lines = ledger.work_out(
        "diagonal_row_count", ledger["rows"] + ledger["columns"] - 1, label="number of diagonal rows"
    )
    sash, reach = sashing.width, reach_beyond(floated, seam)
    ledger.work_out("sashing_strip_width", sash + 2 * seam, label="cut width of the sashing")
    ledger.work_out("sash_length", block + 2 * seam, rule="as long as the unfinished block")
    upright = blocks + lines if sashing.is_around else blocks - lines
    if upright.value > 0:
        rule = "one after each block of a row, and one before the first" if sashing.is_around else "between blocks"
        ledger.work_out("row_sash_count", upright, label="number of sashes in the rows of blocks", rule=rule)
    if sashing.cornerstone_fabric is None:
        for sashes in sorted({row.sashes for row in rows}):
            span = sashes * (block + sash)
            ledger.work_out(
                f"sashing_strip_{sashes}_length",
                (span + sash if sashing.is_around else span - sash) + 2 * seam + 2 * reach,
                label=f"sashing strip along {sashes} blocks", rule=_REACH_RULE, rounding=up,
            )  # fmt: skip
        return
    ledger.work_out("cornerstone_size", ledger["sashing_strip_width"], label="cut size of a cornerstone")
    if blocks.whole > 1:
        ledger.work_out("cornerstone_count", blocks - 1, label="number of cornerstones inside the top")
    if sashing.is_around:
        ledger.work_out("sashing_row_sash_count", blocks + lines, label="number of sashes in the rows of sashing")
        ledger.work_out(
            "end_cornerstone_length", sash + 2 * seam + reach, label="cut length of an end cornerstone",
            rule=_REACH_RULE, rounding=up,
        )  # fmt: skip
        ledger.work_out("end_cornerstone_count", 2 * (lines + 1), label="number of end cornerstones")
        return
    if upright.value > 0:
        ledger.work_out("sashing_row_sash_count", upright, label="number of sashes inside the rows of sashing")
    ledger.work_out(
        "end_sash_length", block + 2 * seam + reach, label="cut length of an end sash", rule=_REACH_RULE, rounding=up
    )
    ledger.work_out("end_sash_count", 2 * (lines - 1), label="number of end sashes")
