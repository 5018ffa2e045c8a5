"""Where every block and strip of a sewn centre lies, and where the arrangement wants every block.

Places are counted in whole marks of a tape whose marks are fine enough for every length that occurs, because a
quilt has hundreds of pieces and whole numbers add up quickly.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from math import lcm
from typing import Any, TypeAlias

from evenseam.exact import Number
from evenseam.pattern import Project, Run
from evenseam.sizing.simulator.workpiece import Flat

Marks: TypeAlias = Any
"""Whole marks; where a square root occurs there is no fine enough mark, and it is the exact length itself."""


@dataclass(slots=True)
class Tape:
    """A measuring tape with marks fine enough for every length of a project and its centre."""

    marks_per_unit: int | None
    """None where a square root occurs."""
    _known: dict[Number, Marks] = field(default_factory=dict)

    @staticmethod
    def fitting(lengths: Iterator[Number]) -> Tape:
        """Return the tape for these lengths."""
        denominators: set[int] = set()
        for length in lengths:
            if not isinstance(length, Fraction):
                return Tape(None)
            denominators.add(length.denominator)
        return Tape(lcm(*denominators))

    def marks(self, length: Number) -> Marks:
        """Return a length in marks."""
        if self.marks_per_unit is None:
            return length
        if length not in self._known:
            self._known[length] = int(length * self.marks_per_unit)  # type: ignore[arg-type]
        return self._known[length]

    def length(self, marks: Marks) -> Number:
        """Return the length of so many marks."""
        return marks if self.marks_per_unit is None else Fraction(marks, self.marks_per_unit)


@dataclass(frozen=True, slots=True)
class Arranged:
    """The centre as the author decided it, finished, in marks from its top left corner."""

    width: Marks
    height: Marks
    blocks: dict[tuple[Marks, Marks], tuple[int, int, str, int]]
    """Row, column, block id and quarter turns, by the block's top left corner."""
    crossings: set[tuple[Marks, Marks]]
    """Top left corners of the squares where sashing crosses sashing."""


@dataclass(frozen=True, slots=True)
class Leaf:
    """One block or strip of a sewn centre, finished, in marks."""

    x: Marks
    y: Marks
    width: Marks
    height: Marks
    piece: Flat


def tape_for(project: Project, centre: Flat) -> Tape:
    """Return a tape that measures everything in a centre and everything it is compared with."""

    def lengths() -> Iterator[Number]:
        yield project.seam_allowance.value
        for block in project.blocks:
            yield from (block.width.value, block.height.value)
        if project.arrangement.sashing:
            yield project.arrangement.sashing.width.value
        for piece in distinct(centre):
            yield from (piece.width, piece.height)

    return Tape.fitting(lengths())


def arranged(project: Project, tape: Tape) -> Arranged:
    """Work out where every block belongs: blocks side by side, sashing between them, row under row."""
    sashing = project.arrangement.sashing
    zero = tape.marks(Fraction(0))
    gap = tape.marks(sashing.width.value) if sashing else zero
    outer = gap if sashing and sashing.is_around else zero
    sizes = {block.id: (tape.marks(block.width.value), tape.marks(block.height.value)) for block in project.blocks}
    blocks: dict[tuple[Marks, Marks], tuple[int, int, str, int]] = {}
    across: list[Marks] = []
    down: list[Marks] = []
    y, widest = outer, zero
    rows = project.arrangement.positions
    for row_number, row in enumerate(rows):
        x, tallest = outer, zero
        for column_number, position in enumerate(row):
            wide, high = sizes.get(position.block, (zero, zero))
            if position.quarter_turns % 2 == 1:
                wide, high = high, wide
            blocks[x, y] = (row_number, column_number, position.block, position.quarter_turns % 4)
            tallest = high if high > tallest else tallest
            x = x + wide
            if column_number < len(row) - 1:
                if row_number == 0:
                    across.append(x)
                x = x + gap
        widest = x if x > widest else widest
        y = y + tallest
        if row_number < len(rows) - 1:
            down.append(y)
            y = y + gap
    if sashing and sashing.is_around:
        across = [zero, *across, widest]
        down = [zero, *down, y]
    crossings = {(x, y) for x in across for y in down} if sashing else set()
    return Arranged(widest + outer, y + outer, blocks, crossings)


def leaves(centre: Flat, tape: Tape, seam: Number) -> Iterator[Leaf]:
    """Yield every block and strip of a centre with its place."""
    zero, lost = tape.marks(Fraction(0)), 2 * tape.marks(seam)
    sizes = {id(piece): (tape.marks(piece.width) - lost, tape.marks(piece.height) - lost) for piece in distinct(centre)}
    waiting: list[tuple[Marks, Marks, Flat]] = [(zero, zero, centre)]
    while waiting:
        x, y, piece = waiting.pop()
        if not piece.parts:
            yield Leaf(x, y, *sizes[id(piece)], piece)
        for part in piece.parts:
            waiting.append((x, y, part))
            wide, high = sizes[id(part)]
            if piece.run is Run.ACROSS:
                x = x + wide
            else:
                y = y + high


def distinct(centre: Flat) -> list[Flat]:
    """Return every different piece of a centre once, however often it is sewn in."""
    found: dict[int, Flat] = {}
    waiting = [centre]
    while waiting:
        piece = waiting.pop()
        if id(piece) not in found:
            found[id(piece)] = piece
            waiting.extend(piece.parts)
    return list(found.values())
