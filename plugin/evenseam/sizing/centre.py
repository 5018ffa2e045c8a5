"""The centre of the top: blocks in rows and columns, with the sashing between and around them, sized.

::

      c s c s c      with cornerstones: rows of cornerstones and sashes alternate with rows of sashes and blocks;
      s B s B s      without: sashes stand between the blocks of a row only, and one long strip lies between rows.
      c s c s c
"""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.exact import Number
from evenseam.pattern import Block, BlockPosition, Project, Quantity, Sashing
from evenseam.sizing.border_blocks import border_blocks
from evenseam.sizing.ledger import Ledger, named_after


@dataclass(frozen=True, slots=True)
class Centre:
    """What every stage needs to know about the blocks and their sashing."""

    rows: int
    columns: int
    block_width: Quantity
    """Finished, as the blocks stand."""
    block_height: Quantity
    sashing: Sashing | None
    """None too when there is only one block and nothing around it."""
    width: Quantity
    """Raw edge to raw edge."""
    height: Quantity

    @property
    def sashes_in_row(self) -> int:
        """How many upright sashes a row of blocks has."""
        return strips_between(self.columns, self.sashing)

    @property
    def sashing_rows(self) -> int:
        """How many rows of sashing, or long strips, the centre has."""
        return strips_between(self.rows, self.sashing)

    @property
    def has_cornerstones(self) -> bool:
        """True when there is a cornerstone somewhere."""
        has_fabric = self.sashing is not None and self.sashing.cornerstone_fabric is not None
        return has_fabric and self.sashes_in_row > 0 and self.sashing_rows > 0

    def left(self, column: int) -> Number:
        """Return the finished distance of a column of blocks from the left seam line of the centre."""
        return self.block_width.value * column + self._sashes_before(column)

    def top(self, row: int) -> Number:
        """Return the finished distance of a row of blocks from the top seam line of the centre."""
        return self.block_height.value * row + self._sashes_before(row)

    def _sashes_before(self, place: int) -> Number:
        if self.sashing is None:
            return self.block_width.value * 0
        return self.sashing.width.value * (place + (1 if self.sashing.is_around else 0))


def size_centre(project: Project, ledger: Ledger) -> Centre:
    """Work out the blocks, the sashing and the centre they make; enter every figure."""
    seam, arrangement = project.seam_allowance, project.arrangement
    rows, columns = ledger.enter("rows", arrangement.rows), ledger.enter("columns", arrangement.columns)
    in_borders = border_blocks(project)
    for id, uses in blocks_used(project).items():
        if id in in_borders:  # Its size and number are entered with the borders.
            continue
        size_block(project.block(id), uses, seam, ledger)
    ledger.work_out("block_count", rows * columns)
    width, height = standing_size(project, arrangement.positions[0][0])
    sashing = arrangement.sashing
    if sashing is None or not (strips_between(columns.whole, sashing) or strips_between(rows.whole, sashing)):
        return Centre(
            rows.whole, columns.whole, width, height, None,
            ledger.work_out("centre_width", columns * width + 2 * seam, rule=_RAW, source=_SEAMS),
            ledger.work_out("centre_height", rows * height + 2 * seam, rule=_RAW, source=_SEAMS),
        )  # fmt: skip
    return _size_sashed(project, sashing, width, height, ledger)


def blocks_used(project: Project) -> dict[str, int]:
    """Return the ids of the blocks that stand in the arrangement, in order of first use, with how often."""
    uses: dict[str, int] = {}
    for row in project.arrangement.positions:
        for position in row:
            uses[position.block] = uses.get(position.block, 0) + 1
    return uses


def standing_size(project: Project, position: BlockPosition) -> tuple[Quantity, Quantity]:
    """Return the finished width and height of a block as it stands: a quarter turn swaps them."""
    block = project.block(position.block)
    return (block.height, block.width) if position.quarter_turns % 2 else (block.width, block.height)


_RAW = "finished widths side by side, and a seam allowance at either end"
_SEAMS = "Testing your scant quarter inch seam, Janelle Cahoon, Quiltcentric, 2012"


def size_block(block: Block, uses: int, seam: Quantity, ledger: Ledger) -> None:
    """Enter the figures of one block: its size, with and without seam allowances, and how many there are."""
    name = named_after(block.id, "block")
    ledger.enter(f"{name}_width", block.width)
    ledger.enter(f"{name}_height", block.height)
    ledger.work_out(f"{name}_raw_width", block.width + 2 * seam, label=f"unfinished width of {block.name}")
    ledger.work_out(f"{name}_raw_height", block.height + 2 * seam, label=f"unfinished height of {block.name}")
    ledger.count(f"{name}_count", uses, f"number of {block.name} blocks", "they stand in the arrangement")


def _size_sashed(project: Project, sashing: Sashing, width: Quantity, height: Quantity, ledger: Ledger) -> Centre:
    seam, sash = project.seam_allowance, ledger.enter("sashing_width", sashing.width)
    rows, columns = project.arrangement.rows, project.arrangement.columns
    in_row, between_rows = strips_between(columns.whole, sashing), strips_between(rows.whole, sashing)
    sashes_in_row = count_strips("sashes_in_row", columns, sashing, "upright sashes in a row", ledger)
    sashing_rows = count_strips("sashing_rows", rows, sashing, "rows of sashing", ledger)
    cut = ledger.work_out("sashing_strip_width", sash + 2 * seam, label="cut width of the sashing")
    centre = Centre(
        rows.whole, columns.whole, width, height, sashing,
        ledger.work_out("centre_width", columns * width + sashes_in_row * sash + 2 * seam, rule=_RAW, source=_SEAMS),
        ledger.work_out("centre_height", rows * height + sashing_rows * sash + 2 * seam, rule=_RAW, source=_SEAMS),
    )  # fmt: skip
    upright = sashes_in_row * rows
    if in_row:
        ledger.work_out("vertical_sash_length", height + 2 * seam, rule="as long as the unfinished block is high")
        ledger.work_out("vertical_sash_count", upright)
    if between_rows and centre.has_cornerstones:
        ledger.work_out("horizontal_sash_length", width + 2 * seam, rule="as long as the unfinished block is wide")
        lying = ledger.work_out("horizontal_sash_count", sashing_rows * columns)
        ledger.work_out("sash_count", lying + upright, source=_COUNTS if sashing.is_around else "")
        ledger.work_out("cornerstone_size", cut, label="cut size of a cornerstone", rule="as wide as the sashing")
        ledger.work_out("cornerstone_count", sashes_in_row * sashing_rows, source=_COUNTS if sashing.is_around else "")
    elif between_rows:
        ledger.work_out("sashing_strip_length", centre.width, rule="as long as a row is wide")
        ledger.work_out("sashing_strip_count", sashing_rows)
    return centre


def count_strips(name: str, blocks: Quantity, sashing: Sashing, label: str, ledger: Ledger) -> Quantity:
    """Enter how many strips of sashing go with so many blocks, or rows, and return it."""
    if sashing.is_around:
        return ledger.work_out(name, blocks + 1, label=label, rule="sashing all round: one more than there are blocks")
    return ledger.work_out(name, blocks - 1, label=label, rule="sashing between blocks: one less than there are blocks")


_COUNTS = "Quilt math algorithms for cornerstones, Susan in Texas, 2009"


def strips_between(number: int, sashing: Sashing | None) -> int:
    """Return how many strips of sashing go with so many blocks, or rows, side by side."""
    if sashing is None:
        return 0
    return number + 1 if sashing.is_around else number - 1
