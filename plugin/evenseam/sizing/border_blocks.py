"""Blocks that stand in borders: where each stands, how it is turned, and how many of it a project takes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, BlockPosition, Expression, Operator, PiecedBorder, Project, Quantity
from evenseam.sizing.ledger import Ledger, named_after
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.sized_border import AnyBorder, SizedPiecedBorder


def standing_along(pieced: PiecedBorder) -> tuple[BlockPosition, ...]:
    """Return how the blocks stand along the top, right, bottom and left."""
    return pieced.standing or tuple(BlockPosition(pieced.block, turns) for turns in range(4))


def standing_corners(pieced: PiecedBorder) -> tuple[BlockPosition, ...]:
    """Return the blocks at the top left, top right, bottom right and bottom left corner; none for plain squares."""
    if pieced.corner_block is None:
        return ()
    return pieced.corners_standing or tuple(BlockPosition(pieced.corner_block, turns) for turns in range(4))


def border_blocks(project: Project) -> tuple[str, ...]:
    """Return the ids of the blocks that stand in borders, in order of first use, once each."""
    pieced = [border.pieced for border in project.borders if border.pieced is not None]
    standing = (position for each in pieced for position in (*standing_along(each), *standing_corners(each)))
    return tuple(dict.fromkeys(position.block for position in standing))


def block_count(sized: SizedProject, block: str) -> Quantity:
    """Return how many of a block the project takes, in the arrangement and in borders. Raises KeyError."""
    return sized.figure(f"{named_after(block, 'block')}_count")


def count_border_blocks(
    project: Project, in_arrangement: dict[str, int], borders: Iterable[AnyBorder], ledger: Ledger
) -> None:
    """Enter size and number of every block that stands in a border, those in the arrangement counted with them."""
    seam, sized = project.seam_allowance, tuple(borders)
    for id in border_blocks(project):
        block = project.block(id)
        name = named_after(id, "block")
        ledger.enter(f"{name}_width", block.width)
        ledger.enter(f"{name}_height", block.height)
        ledger.work_out(f"{name}_raw_width", block.width + 2 * seam, label=f"unfinished width of {block.name}")
        ledger.work_out(f"{name}_raw_height", block.height + 2 * seam, label=f"unfinished height of {block.name}")
        terms = [term for ring in sized for term in _in_border(ring, id)]
        if id in in_arrangement:
            what, reason = f"{block.name} blocks in the arrangement", "they stand in the arrangement"
            number = ledger.count(f"{name}_count_in_arrangement", in_arrangement[id], what, reason)
            terms.insert(0, Expression.of(Operator.SAME, number))
        total = terms[0]
        for term in terms[1:]:
            total = total + term
        ledger.work_out(f"{name}_count", total, label=f"number of {block.name} blocks")


def _in_border(ring: AnyBorder, block: str) -> Iterator[Expression]:
    """Yield how many of one block each pair of sides of a border takes, and its corners."""
    if not isinstance(ring, SizedPiecedBorder) or ring.border.pieced is None:
        return
    top, right, bottom, left = standing_along(ring.border.pieced)
    pairs: tuple[tuple[Quantity, tuple[BlockPosition, BlockPosition]], ...] = (
        (ring.blocks_across, (top, bottom)),
        (ring.blocks_down, (left, right)),
    )
    for number, pair in pairs:
        sides = sum(position.block == block for position in pair)
        if sides:
            yield sides * number
    corners = sum(position.block == block for position in standing_corners(ring.border.pieced))
    if corners:
        what = f"corners of the {ring.border.name}"
        yield Expression.of(
            Operator.SAME,
            Quantity(what, Fraction(corners), Unit.COUNT, Assumed("the block stands in so many of them", "counted")),
        )
