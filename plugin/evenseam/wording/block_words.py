"""The seams inside a block in words: what is joined, how often, and what to mind."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeAlias

from evenseam.pattern import JoinPieces, MakeUnits, Method, Press, Step, TrimPart
from evenseam.sizing import block_count
from evenseam.wording.marked import Markdown
from evenseam.wording.match_words import matches
from evenseam.wording.scribe import Scribe
from evenseam.wording.seam_ends import SeamEnds, seam_ends
from evenseam.wording.unit_method_words import chosen_values
from evenseam.wording.workpieces import Called, Workpieces

PressWords: TypeAlias = Callable[[Press, Called | None, Called | None], Markdown]
"""Says where a seam is pressed, from the names of the parts it joins."""


@dataclass(frozen=True, slots=True)
class BlockWords:
    """Says the seams and trims of blocks."""

    scribe: Scribe
    pieces: Workpieces
    taught: dict[str, int]
    """What was explained in full already."""

    def join(self, joining: JoinPieces, step: Step, press: PressWords) -> dict[str, Any]:
        """Return what the words for a seam between two parts of a block are filled with."""
        block = self.scribe.sheet.project.block(joining.block)
        first = self._part(joining.block, joining.first, joining.first_pieces)
        second = self._part(joining.block, joining.second, joining.second_pieces)
        trimmed = any(
            isinstance(other.operation, TrimPart) and other.operation.part == step.makes
            for other in self.scribe.sheet.program.steps
        )
        blocks = self._count(joining.block)
        in_each = step.times // blocks
        tells_of_letters = in_each > 1 and "letters" not in self.taught
        if in_each > 1:
            self.taught.setdefault("letters", 0)
        return {
            "block": block.name,
            "first": first.one,
            "second": second.one,
            "press": press(joining.press, first, second),
            "on_paper": block.method is Method.FOUNDATION,
            "is_one_of_blocks": len(self.scribe.sheet.blocks) > 1,
            "is_whole_block": self.pieces.makes_whole_block(step) and not trimmed,
            "in_each": in_each,
            "blocks": blocks,
            "tells_of_letters": tells_of_letters,
            "on_bias": self._runs_on_bias(joining),
            "ends": seam_ends(block, joining).value if block.method is Method.ROTARY else SeamEnds.EVEN.value,
            "is_triangle": "triangle" in (first.kind, second.kind),
            "laid_anew": self._laid_anew(joining),
            "matches": matches(block, self.scribe.sheet.sized.pieced(joining.block), joining),
        }

    def trim(self, trimming: TrimPart, step: Step) -> dict[str, Any]:
        """Return what the words for trimming a part of a block are filled with."""
        block = self.scribe.sheet.project.block(trimming.block)
        part = self.pieces.called(trimming.part)
        blocks = self._count(trimming.block)
        is_first = "trimming" not in self.taught
        self.taught.setdefault("trimming", 0)
        return {
            "block": block.name,
            "part": part.one,
            "is_whole_block": part.kind == "block",
            "measures": step.measures,
            "is_one_of_blocks": len(self.scribe.sheet.blocks) > 1,
            "in_each": step.times // blocks,
            "blocks": blocks,
            "is_first": is_first,
        }

    def units(self, making: MakeUnits, step: Step) -> dict[str, Any]:
        """Return what the words for units sewn from whole squares are filled with."""
        block = self.scribe.sheet.project.block(making.block)
        part = self.pieces.part(making.block, making.pieces)
        blocks = self._count(making.block)
        return {
            "block": block.name,
            "part": part.one,
            "parts": part.many,
            "is_whole_block": part.kind == "block",
            "is_one_of_blocks": len(self.scribe.sheet.blocks) > 1,
            "needed": step.leaves,
            "in_each": step.leaves // blocks,
            "blocks": blocks,
            "spare": making.spare,
            "gives": making.gives,
            "method": chosen_values(self.scribe, making),
        }

    def _count(self, block: str) -> int:
        """Return how many blocks of this kind the project has."""
        return block_count(self.scribe.sheet.sized, block).whole

    def _laid_anew(self, joining: JoinPieces) -> list[tuple[Markdown, Markdown]]:
        """Return the parts that were made in another place of the block, so that they may have to be turned: what each
        is called where it was made, and what would be called so where it lies now.
        """
        made: dict[str, frozenset[str]] = {}
        for step in self.scribe.sheet.program.steps:
            match step.operation:
                case JoinPieces(first_pieces=first, second_pieces=second):
                    made[step.makes] = frozenset(first + second)
                case TrimPart(pieces=pieces) | MakeUnits(pieces=pieces):
                    made[step.makes] = frozenset(pieces)
        parts = ((joining.first, joining.first_pieces), (joining.second, joining.second_pieces))
        return [
            (self._part(joining.block, name, pieces).one, self.pieces.part(joining.block, pieces).one)
            for name, pieces in parts
            if name in made and made[name] != frozenset(pieces)
        ]

    def _runs_on_bias(self, joining: JoinPieces) -> bool:
        """Tell whether a seam of a block cut to size crosses the grain, so that its edges stretch."""
        block = self.scribe.sheet.project.block(joining.block)
        if block.method is not Method.ROTARY:
            return False
        wanted = {*joining.first_pieces, *joining.second_pieces}
        joins = self.scribe.sheet.sized.pieced(joining.block).joins
        seams = [join.seam for join in joins if {*join.first_pieces, *join.second_pieces} == wanted]
        return any(seam.start.x != seam.end.x and seam.start.y != seam.end.y for seam in seams)

    def _part(self, block: str, workpiece: str, pieces: tuple[str, ...]) -> Called:
        """Return what a part is called: a unit that is used in several places, by the pieces it was first made of."""
        maker = next((step for step in self.scribe.sheet.program.steps if step.makes == workpiece), None)
        match maker.operation if maker else None:
            case JoinPieces(first_pieces=first, second_pieces=second):
                pieces = first + second
            case TrimPart(pieces=trimmed) | MakeUnits(pieces=trimmed):
                pieces = trimmed
        return self.pieces.part(block, pieces, maker)
