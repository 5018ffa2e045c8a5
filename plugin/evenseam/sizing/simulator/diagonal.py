r"""Tops set on point: diagonal rows with triangles, sewn together and squared up.

With the page turned 45 degrees clockwise the diagonal rows lie across, p to the right and q down, in seam lines:

::

      p, q: along the rows and across them       x = (p + q) ÷ √2 and y = (q − p) ÷ √2 in the finished top

Blocks begin at (m, k) × (block + sashing); row k = 0 is the one at the top left corner of the finished top. A block is
in line k − m of the finished top, counted from above, and k + m places from its left edge, counted in half steps. The
edges of the finished top are lines p + q or q − p = constant.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Number, square_root
from evenseam.pattern import BlockPosition, Project
from evenseam.sizing.simulator.plane import least, most

ROOT = square_root(2)


@dataclass(frozen=True, slots=True)
class Lattice:
    """Where everything of a top set on point belongs."""

    rows: int
    columns: int
    side: Number
    """Of a block, finished."""
    gap: Number
    """Between blocks."""
    frame: Number
    """Beyond the outermost blocks: the gap where sashing goes all round, else nothing."""
    seam: Number
    beyond_sides: Number
    """Finished, from the outermost corners to the edge, at the left and right."""
    beyond_ends: Number
    """The same at the top and bottom."""
    positions: tuple[tuple[BlockPosition, ...], ...]

    @staticmethod
    def of(project: Project) -> Lattice:
        """Return the lattice of a project whose blocks are set on point; `start` has looked it through."""
        arrangement = project.arrangement
        sashing, triangles = arrangement.sashing, arrangement.setting_triangles
        zero = Fraction(0)
        gap = sashing.width.value if sashing else zero
        sides = triangles.float_width.value if triangles else zero
        side = next(
            (block.width.value for block in project.blocks if block.id == arrangement.positions[0][0].block), zero
        )
        ends = triangles.float_height.value if triangles and triangles.float_height else sides
        return Lattice(
            (len(arrangement.positions) + 1) // 2, len(arrangement.positions[0]), side, gap,
            gap if sashing and sashing.is_around else zero, project.seam_allowance.value, sides, ends,
            arrangement.positions,
        )  # fmt: skip

    @property
    def size(self) -> tuple[Number, Number]:
        """Finished width and height of the squared-up top."""
        wide, high = (
            (ROOT * ((number - 1) * (self.side + self.gap) + self.side + self.frame))
            for number in (self.columns, self.rows)
        )
        return wide + 2 * self.beyond_sides, high + 2 * self.beyond_ends

    @property
    def last(self) -> int:
        """Number of the last diagonal row."""
        return self.rows + self.columns - 2

    def row(self, number: int) -> list[BlockPosition]:
        """Return the blocks of a diagonal row, from lower left to upper right."""
        first, last = self.reach(number)
        return [self.positions[number - place][(number + place) // 2] for place in range(first, last + 1)]

    def reach(self, number: int) -> tuple[int, int]:
        """Return the places of the first and the last block of a diagonal row."""
        return max(-number, number - 2 * (self.rows - 1)), min(number, 2 * (self.columns - 1) - number)

    def reach_between(self, number: int) -> tuple[int, int]:
        """Return the places between which the row of sashing above a diagonal row lies: those of the longer row at
        either end. There is one more of them than there are rows.
        """
        near = [self.reach(row) for row in (number - 1, number) if 0 <= row <= self.last]
        return min(first for first, _ in near), max(last for _, last in near)

    def edge_at_start(self, number: int) -> str:
        """Return which edge of the top a row ends at on the left: left, bottom, or the corner of both."""
        return "corner" if number == self.rows - 1 else "left" if number < self.rows - 1 else "bottom"

    def edge_at_end(self, number: int) -> str:
        """Return which edge of the top a row ends at on the right: top, right, or the corner of both."""
        return "corner" if number == self.columns - 1 else "top" if number < self.columns - 1 else "right"

    def square_for(self, edge: str) -> tuple[Number, Number]:
        """Return the square from which the triangle at an edge is cut: the least, and the one of the trade's rule.

        The least reaches the raw edge just so. A setting triangle reaches from its right angle to the edge: half its
        long side is its height. A corner triangle has its right angle in the corner: half the block beside it, and
        twice what lies beyond. The rule adds 5 and 3 1/2 seam allowances where 2 + 2√2 and 2 + √2 would do: 1 1/4 in
        and 7/8 in of published tables ("How to Make Setting Triangles", Marcia Hohn, Quilter's Cache, 2002).
        """
        if edge == "corner":
            finished = self.side / ROOT + 2 * self.most_beyond
            return finished + (2 + ROOT) * self.seam, finished + Fraction(7, 2) * self.seam
        beyond = self.beyond_ends if edge in ("top", "bottom") else self.beyond_sides
        finished = ROOT * self.side
        usual = finished + 2 * self.most_at_edges + 5 * self.seam
        return finished + 2 * beyond + (2 + 2 * ROOT) * self.seam, usual

    @property
    def most_at_edges(self) -> Number:
        """The larger float of the edges that have setting triangles: all of them are cut alike."""
        sides, ends = [self.beyond_sides] * (self.rows > 1), [self.beyond_ends] * (self.columns > 1)
        return most([*sides, *ends])

    @property
    def most_beyond(self) -> Number:
        """The larger of the two floats."""
        return most([self.beyond_sides, self.beyond_ends])

    @property
    def usually_longer(self) -> Number:
        """How much longer than its ordinary length a row of sashing is at either end, wherever that is."""
        return ROOT * (self.most_beyond + self.seam)

    def least_longer(self, number: int) -> tuple[Number, Number]:
        """Return how much longer than its ordinary raw length the row of sashing above a diagonal row is at the left
        and at the right at least, so that the whole of its width, seam allowances too, reaches the raw edge.
        """
        pitch = self.side + self.gap
        first, last = self.reach_between(number)
        upper, lower = number * pitch - self.gap - self.seam, number * pitch + self.seam
        sides, ends = ROOT * (self.beyond_sides + self.seam), ROOT * (self.beyond_ends + self.seam)
        # p + q at the left and right edge, q − p at the top and bottom edge, raw.
        left, top = -self.frame - sides, -(self.side + self.frame) - ends
        right = 2 * (self.columns - 1) * pitch + 2 * self.side + self.frame + sides
        bottom = 2 * (self.rows - 1) * pitch + self.side + self.frame + ends
        # The widest place: where the two edges at an end meet, or as near to that as the strip comes.
        here = most([upper, least([lower, (left + bottom) / 2])])
        there = most([upper, least([lower, (right + top) / 2])])
        start, end = most([left - here, here - bottom]), least([there - top, right - there])
        return first * pitch - self.frame - self.seam - start, end - (last * pitch + self.side + self.frame + self.seam)
