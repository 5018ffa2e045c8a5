"""Whether the sewn centre is the arrangement that the author decided: every block where it belongs, sashing between."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from math import lcm
from typing import Any

from evenseam.exact import Number
from evenseam.pattern import Cut, Project, Run
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.plane import least
from evenseam.sizing.simulator.table import Table
from evenseam.sizing.simulator.workpiece import Flat, turned

Counts = dict[tuple[str, int], int]


@dataclass(frozen=True, slots=True)
class Expected:
    """The centre as the author decided it, finished, from its top left corner."""

    width: Number
    height: Number
    blocks: dict[tuple[Number, Number], tuple[int, int, str, int]]
    """Row, column, block id and quarter turns, by the block's top left corner."""
    across: tuple[Number, ...]
    """Left edges of upright sashing."""
    down: tuple[Number, ...]
    """Top edges of level sashing."""


def arranged_counts(project: Project) -> Counts:
    """Return how many blocks the arrangement has, by id and quarter turns."""
    counts: Counts = {}
    for row in project.arrangement.positions:
        for position in row:
            key = (position.block, position.quarter_turns % 4)
            counts[key] = counts.get(key, 0) + 1
    return counts


def laid_out(project: Project, piece: Flat) -> Flat:
    """Return a piece as it lies in the finished top: a single block has no seam to its neighbours to say how it is
    turned, so it is laid as the arrangement says.
    """
    positions = project.arrangement.positions
    is_alone = len(positions) == 1 and len(positions[0]) == 1
    return turned(piece, positions[0][0].quarter_turns) if piece.block and is_alone else piece


def expected_centre(project: Project) -> Expected:
    """Work out where every block belongs: columns × block widths + sashing, in so many words."""
    sashing = project.arrangement.sashing
    gap: Number = sashing.width.value if sashing else Fraction(0)
    outer: Number = gap if sashing and sashing.is_around else Fraction(0)
    sizes = {block.id: (block.width.value, block.height.value) for block in project.blocks}
    blocks: dict[tuple[Number, Number], tuple[int, int, str, int]] = {}
    across: list[Number] = []
    down: list[Number] = []
    y = outer
    width: Number = Fraction(0)
    rows = project.arrangement.positions
    for row_number, row in enumerate(rows):
        x = outer
        tallest: Number = Fraction(0)
        for column_number, position in enumerate(row):
            wide, high = sizes.get(position.block, (Fraction(0), Fraction(0)))
            if position.quarter_turns % 2 == 1:
                wide, high = high, wide
            blocks[x, y] = (row_number, column_number, position.block, position.quarter_turns % 4)
            tallest = high if high > tallest else tallest
            x = x + wide
            if column_number < len(row) - 1:
                if row_number == 0:
                    across.append(x)
                x = x + gap
        width = x + outer if x + outer > width else width
        y = y + tallest
        if row_number < len(rows) - 1:
            down.append(y)
            y = y + gap
    height = y + outer
    if sashing and sashing.is_around:
        across = [Fraction(0), *across, width - outer]
        down = [Fraction(0), *down, height - outer]
    return Expected(width, height, blocks, tuple(across), tuple(down))


def check_centre(table: Table, centre: Flat) -> None:
    """Note everything in which the sewn centre differs from the arrangement."""
    project = table.project
    arrangement = project.arrangement
    told = table.told
    counts = arranged_counts(project)
    for key in sorted({*counts, *centre.blocks}):
        wanted, found = counts.get(key, 0), centre.blocks.get(key, 0)
        if wanted != found:
            table.tell(
                codes.BLOCKS_NOT_AS_ARRANGED,
                f"the top has {found} {key[0]} blocks{_turned(key[1])}, the arrangement has {wanted}",
                place=arrangement.place,
            )
    _check_prints(table, centre)
    cells = sum(counts.values())
    # A run of strips repeated and repeated again could have more leaves than anyone can walk through.
    if table.told > told or centre.leaves > 8 * (cells + 4):
        if table.told == told:
            table.tell(
                codes.SASHING_NOT_AS_DECIDED,
                f"the top has {centre.leaves} blocks and strips, far more than {cells} blocks and their sashing",
                place=arrangement.place,
            )
        return
    _check_places(table, centre, expected_centre(project))


def _check_prints(table: Table, centre: Flat) -> None:
    """Note blocks whose print, upright when the block was sewn, is turned over with the block."""
    directional = {fabric.id for fabric in table.project.fabrics if fabric.is_directional}
    for block in table.project.blocks:
        held = sorted({piece.fabric for piece in block.pieces} & directional)
        turned_over = [turns for turns in (1, 2, 3) if (block.id, turns) in centre.blocks]
        if held and turned_over:
            table.tell(
                codes.PRINT_LIES_SIDEWAYS,
                f"a {block.name} block lies{_turned(turned_over[0])}, and the print of {table.fabric_name(held[0])} in "
                f"it with it",
                place=table.project.arrangement.place,
            )


def _check_places(table: Table, centre: Flat, expected: Expected) -> None:
    project = table.project
    seam = table.seam
    arrangement = project.arrangement
    width, height = centre.width - 2 * seam, centre.height - 2 * seam
    if not _check_strips(table, centre):
        return
    if (width, height) != (expected.width, expected.height):
        table.tell(
            codes.TOP_SIZE_DIFFERS,
            f"the blocks and sashing finish at {table.size(width, height)}, the arrangement decides "
            f"{table.size(expected.width, expected.height)}",
            place=arrangement.place,
        )
        return
    sashing = arrangement.sashing
    corners = {(x, y) for x in expected.across for y in expected.down}
    cornerstones = corners if sashing and sashing.cornerstone_fabric else set()
    as_exact = _in_whole_steps(table, centre, expected)
    places = {(as_exact(x), as_exact(y)): what for (x, y), what in expected.blocks.items()}
    stones = {(as_exact(x), as_exact(y)) for x, y in cornerstones}
    gap = as_exact(sashing.width.value) if sashing else 0
    found_stones = 0
    for x, y, wide, high, leaf in _leaves(centre, as_exact, as_exact(seam)):
        if leaf.cut is None:
            what = places.get((x, y))
            if what is None or what[2:] != (leaf.block, leaf.turns):
                _tell_place(table, leaf, what)
                return
        elif (x, y) in stones and (wide, high) == (gap, gap):
            found_stones += 1
            if sashing and leaf.cut.material != sashing.cornerstone_fabric:
                table.check_fabric(leaf.cut, sashing.cornerstone_fabric or "", "the cornerstones")
                return
        elif sashing and leaf.cut.material != sashing.fabric:
            table.check_fabric(leaf.cut, sashing.fabric, "the sashing")
            return
    if found_stones != len(stones):
        table.tell(
            codes.SASHING_NOT_AS_DECIDED,
            f"{found_stones} cornerstones are sewn in where sashing crosses, there should be {len(stones)}",
            place=sashing.place if sashing else None,
        )


def _check_strips(table: Table, centre: Flat) -> bool:
    """Check every different strip once, wherever it lies in the centre."""
    told = table.told
    seen: set[int] = set()
    waiting = [centre]
    while waiting:
        flat = waiting.pop()
        if id(flat) not in seen:
            seen.add(id(flat))
            waiting.extend(flat.parts)
            if flat.cut is not None:
                check_sashing(table, flat.cut, (flat.width, flat.height))
    return table.told == told


def check_sashing(table: Table, cut: Cut, sides: tuple[Number, ...]) -> None:
    """Check a strip between blocks: there is sashing at all, and one of these raw sides is its width."""
    arrangement = table.project.arrangement
    sashing = arrangement.sashing
    if sashing is None:
        table.blame(
            cut, codes.SASHING_NOT_AS_DECIDED, f"“{cut.label}” is sewn between blocks, the arrangement has no sashing",
            place=arrangement.place,
        )  # fmt: skip
        return
    finished = [side - 2 * table.seam for side in sides]
    if sashing.width.value not in finished:
        table.blame(
            cut, codes.SASHING_NOT_AS_DECIDED,
            f"“{cut.label}” finishes {table.length(least(finished))} wide, the sashing is decided as "
            f"{sashing.width.text}",
            sashing.width, place=sashing.place,
        )  # fmt: skip
    table.check_print(cut)


def _tell_place(table: Table, leaf: Flat, what: tuple[int, int, str, int] | None) -> None:
    sewn = f"a {leaf.block} block{_turned(leaf.turns)} is sewn"
    if what is None:
        message = f"{sewn} where the arrangement has no block"
    else:
        row, column, block, turns = what
        message = (
            f"row {row + 1}, place {column + 1} of the arrangement is a {block} block{_turned(turns)}; {sewn} there"
        )
    table.tell(codes.BLOCKS_NOT_AS_ARRANGED, message, place=table.project.arrangement.place)


def _turned(turns: int) -> str:
    return ("", " turned a quarter clockwise", " turned half round", " turned a quarter anticlockwise")[turns]


def _in_whole_steps(table: Table, centre: Flat, expected: Expected) -> Callable[[Number], Any]:
    """Return how to write a length as a whole number of the finest step that occurs, which is quick to add.

    Where a square root occurs there is no such step, and lengths stay as they are.
    """
    numbers: list[Number] = [table.seam, *expected.across, *expected.down]
    numbers += [value for corner in expected.blocks for value in corner]
    seen: set[int] = set()
    waiting = [centre]
    while waiting:
        way = waiting.pop()
        if id(way) not in seen:
            seen.add(id(way))
            waiting.extend(way.parts)
            numbers += [way.width, way.height]
    if not all(isinstance(number, Fraction) for number in numbers):
        return lambda value: value
    step = lcm(*(number.denominator for number in numbers if isinstance(number, Fraction)))
    known: dict[Number, int] = {}

    def in_steps(value: Number) -> int:
        if value not in known:
            known[value] = int(value * step) if isinstance(value, Fraction) else 0
        return known[value]

    return in_steps


def _leaves(centre: Flat, exact: Callable[[Number], Any], seam: Any) -> list[tuple[Any, Any, Any, Any, Flat]]:
    """Return left, top, width and height, finished, of every block and strip."""
    sizes: dict[int, tuple[Any, Any]] = {}
    found: list[tuple[Any, Any, Any, Any, Flat]] = []
    waiting: list[tuple[Any, Any, Flat]] = [(exact(Fraction(0)), exact(Fraction(0)), centre)]
    while waiting:
        x, y, way = waiting.pop()
        if not way.parts:
            wide, high = _finished(way, exact, seam, sizes)
            found.append((x, y, wide, high, way))
            continue
        for part in way.parts:
            waiting.append((x, y, part))
            wide, high = _finished(part, exact, seam, sizes)
            if way.run is Run.ACROSS:
                x = x + wide
            else:
                y = y + high
    return found


def _finished(
    way: Flat, exact: Callable[[Number], Any], seam: Any, sizes: dict[int, tuple[Any, Any]]
) -> tuple[Any, Any]:
    size = sizes.get(id(way))
    if size is None:
        size = sizes[id(way)] = (exact(way.width) - 2 * seam, exact(way.height) - 2 * seam)
    return size
