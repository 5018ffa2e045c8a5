"""A tree of seams written out for the maker: named sections, numbered pieces, joins in sewing order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from evenseam.exact import Number
from evenseam.geometry import Arrangement, members
from evenseam.pattern import Block, Press
from evenseam.piecing.peel import Peeler
from evenseam.piecing.pieced import PiecedBlock, Seam, Section, SectionJoin, SectionPiece
from evenseam.piecing.seam_tree import Ruler, SeamTree, before, inner_ends, pieces_of, sections_of

LONGEST_JOINED_NAME = 4
"""Parts made of more sections than this are named by their first and last: A to H."""


@dataclass(frozen=True, slots=True)
class Assembler:
    """Writes one block's seam tree out."""

    block: Block
    arrangement: Arrangement
    peeler: Peeler
    ruler: Ruler

    def pieced(self, tree: SeamTree, *, is_fewest: bool) -> PiecedBlock:
        """Return the block with sections named in sewing order and its joins, the last making the whole."""
        found = list(sections_of(tree))
        names = {pieces: section_name(index) for index, pieces in enumerate(found)}
        sections = tuple(
            Section(names[pieces], self._sewing_order(pieces, names[pieces]), self.arrangement.outline(pieces))
            for pieces in found
        )
        joins: list[SectionJoin] = []
        self._collect_joins(tree, names, joins)
        return PiecedBlock(self.block.id, sections, tuple(joins), is_fewest)

    def _sewing_order(self, pieces: int, name: str) -> tuple[SectionPiece, ...]:
        """Peel the section apart, the piece with the longest seam first, and sew in the opposite order."""
        peeled: list[tuple[int, Seam | None]] = []
        while pieces & (pieces - 1):
            chosen: tuple[tuple[Number | int, ...], int, Seam] | None = None
            for piece, number in self.peeler.seams(pieces):
                start, end = self.arrangement.lines[number].chord(1 << piece)
                # Of the last two pieces either could come off; the one drawn later is sewn onto the other.
                wish = (-self.ruler.square_of_length(start, end), -piece)
                if chosen is None or before(wish, chosen[0]):
                    chosen = wish, piece, self._seam(start, end)
            if chosen is None:
                raise ValueError(f"pieces {list(members(pieces))} are not one section")
            _, piece, seam = chosen
            peeled.append((piece, seam))
            pieces ^= 1 << piece
        peeled.append((pieces.bit_length() - 1, None))
        return tuple(
            SectionPiece(self.block.pieces[piece].id, f"{name}{place}", seam)
            for place, (piece, seam) in enumerate(reversed(peeled), start=1)
        )

    def _collect_joins(self, tree: SeamTree, names: dict[int, str], joins: list[SectionJoin]) -> str:
        if isinstance(tree, int):
            return names[tree]
        first = self._collect_joins(tree.first, names, joins)
        second = self._collect_joins(tree.second, names, joins)
        makes = part_name([names[section] for section in sections_of(tree)])
        one, other = pieces_of(tree.first), pieces_of(tree.second)
        start, end = tree.line.chord(tree.pieces)
        ends_of_one, ends_of_other = (inner_ends(tree.line, side) for side in (one, other))
        joins.append(
            SectionJoin(
                makes,
                first,
                second,
                self._ids(one),
                self._ids(other),
                self._seam(start, end),
                _pressing(len(ends_of_one), len(ends_of_other)),
                tuple(
                    self.arrangement.corners[corner]
                    for corner in tree.line.corners
                    if corner in ends_of_one & ends_of_other
                ),
                (len(ends_of_one), len(ends_of_other)),
            )
        )
        return makes

    def _ids(self, pieces: int) -> tuple[str, ...]:
        return tuple(self.block.pieces[piece].id for piece in members(pieces))

    def _seam(self, start: int, end: int) -> Seam:
        return Seam(self.arrangement.corners[start], self.arrangement.corners[end])


def section_name(index: int) -> str:
    """Return A, B, …, Z, AA, AB, … for 0, 1, ….

    >>> section_name(0), section_name(25), section_name(26), section_name(702)
    ('A', 'Z', 'AA', 'AAA')
    """
    letters = ""
    index += 1
    while index:
        index, letter = divmod(index - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return letters


def part_name(sections: Sequence[str]) -> str:
    """Return the name of a part made of neighbouring sections.

    >>> part_name(["A", "B", "C"]), part_name(["B", "C", "D", "E", "F"])
    ('A+B+C', 'B to F')
    """
    return "+".join(sections) if len(sections) <= LONGEST_JOINED_NAME else f"{sections[0]} to {sections[-1]}"


def _pressing(first_seams: int, second_seams: int) -> Press:
    """Return where a join is pressed.

    Toward the part with fewer seams ending at the join, where there is less cloth to fold over; open when both have
    the same number, for such joins are bulky (common practice); toward the darker fabric when neither has any.
    """
    if first_seams == second_seams:
        return Press.OPEN if first_seams else Press.DARKER
    return Press.FIRST if first_seams < second_seams else Press.SECOND
