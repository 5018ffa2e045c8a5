"""Blocks: patches sewn onto a section, and parts joined until the block is whole."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from evenseam.exact import Number
from evenseam.pattern import Block, BlockPiece, JoinPieces, Method, PieceSection, Step
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.patches import RECTANGLES, check_patch, check_rotary
from evenseam.sizing.simulator.plane import (
    Outline,
    Spot,
    common_side,
    outline,
    same_shape,
    scaled,
    sewn,
    touching_sides,
    upright_size,
)
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import CutPiece, Flat, Part, Spoilt, Workpiece


@dataclass(frozen=True, slots=True)
class Drawing:
    """A block as the maker sees it: its pieces by name."""

    block: Block
    pieces: dict[str, tuple[BlockPiece, Outline]]
    across: Number
    down: Number

    def finished(self, shape: Outline) -> Outline:
        """Return a shape of the drawing at the size it is sewn at."""
        return scaled(shape, self.across, self.down)


@dataclass(slots=True)
class BlockMaker:
    """Sews the steps of blocks; reads each drawing once."""

    table: Table
    drawings: dict[str, Drawing | None]

    def piece_section(self, step: Step, operation: PieceSection) -> Workpiece:
        """Sew patches one after the other, each along one whole straight seam."""
        table = self.table
        patches = table.take(step, (patch.cut for patch in operation.patches))
        drawing = self.drawing(operation.block, step)
        if drawing is None or not operation.patches or any(isinstance(patch, Spoilt) for patch in patches):
            if drawing is not None and not operation.patches:
                table.tell(codes.PIECES_LISTED_WRONGLY, f"step {step.id} has no patches to sew")
            return SPOILT
        names = [patch.piece for patch in operation.patches]
        if not self._are_pieces(step, drawing, names):
            return SPOILT
        union: Outline | None = None
        for use, patch in zip(operation.patches, patches, strict=True):
            piece, shape = drawing.pieces[use.piece]
            seam: Spot | None = None
            if union is not None:
                joined = self._join(step, drawing, union, shape, use.piece)
                if joined is None:
                    return SPOILT
                union, seam = joined
            else:
                union = shape
            if not isinstance(patch, CutPiece) or patch.cut.shape not in RECTANGLES:
                table.wrong_piece(step, use.cut, patch, "a rectangular patch")
                continue
            table.check_fabric(patch.cut, piece.fabric, f"piece {use.piece} of the {drawing.block.name} block")
            check_patch(table, patch.cut, use.piece, drawing.finished(shape), seam)
            table.check_print(patch.cut)
        assert union is not None
        return self._part(step, drawing, frozenset(names), union)

    def join_pieces(self, step: Step, operation: JoinPieces) -> Workpiece:
        """Sew two parts of a block along one whole straight seam."""
        table = self.table
        first, second = table.take(step, (operation.first, operation.second))
        drawing = self.drawing(operation.block, step)
        if drawing is None:
            return SPOILT
        one = self._as_part(step, drawing, operation.first, first, operation.first_pieces)
        other = self._as_part(step, drawing, operation.second, second, operation.second_pieces)
        if one is None or other is None:
            return SPOILT
        if one.pieces & other.pieces:
            table.tell(
                codes.PIECES_LISTED_WRONGLY,
                f"step {step.id} joins two parts that both contain {_listed(one.pieces & other.pieces)}",
                place=drawing.block.place,
            )
            return SPOILT
        joined = self._join(step, drawing, one.outline, other.outline, _listed(other.pieces))
        return self._part(step, drawing, one.pieces | other.pieces, joined[0]) if joined else SPOILT

    def whole_block(self, piece: CutPiece) -> Flat | None:
        """Return a cut that is a whole block by itself, such as a plain square; None for any other cut."""
        cut = piece.cut
        for block in self.table.project.blocks:
            is_plain = len(block.pieces) == 1 and block.method is Method.ROTARY
            if is_plain and cut.part == f"block:{block.id}" and cut.shape in RECTANGLES:
                drawing = self.drawing(block.id, None)
                if drawing is None:
                    return None
                only, shape = drawing.pieces[block.pieces[0].id]
                self.table.check_fabric(cut, only.fabric, f"the {block.name} block")
                self.table.check_print(cut)
                check_rotary(self.table, cut, only.id, drawing.finished(shape))
                return self._lying(block)
        return None

    def drawing(self, id: str, step: Step | None) -> Drawing | None:
        """Return a block's drawing; None, with the problem noted once, when it cannot be sewn from."""
        if id not in self.drawings:
            self.drawings[id] = self._read(id, step)
        return self.drawings[id]

    def _read(self, id: str, step: Step | None) -> Drawing | None:
        table = self.table
        block = next((block for block in table.project.blocks if block.id == id), None)
        if block is None:
            who = f"step {step.id} sews" if step else "the arrangement has"
            table.tell(codes.WORKPIECE_UNKNOWN, f"{who} a block {id}, but the pattern has none of that name")
            return None
        if not (block.grid_width > 0 and block.grid_height > 0 and block.width.value > 0 and block.height.value > 0):
            table.tell(codes.SIZE_NOT_POSITIVE, f"the {block.name} block has no size", block.width, place=block.place)
            return None
        pieces: dict[str, tuple[BlockPiece, Outline]] = {}
        for piece in block.pieces:
            shape = outline((corner.x, corner.y) for corner in piece.outline.corners)
            if shape is None or piece.id in pieces:
                table.tell(
                    codes.SEAM_NOT_WHOLE if shape is None else codes.PIECES_LISTED_WRONGLY,
                    f"piece {piece.id} of the {block.name} block "
                    + ("has an inward corner or no area" if shape is None else "is there twice"),
                    place=piece.place or block.place,
                )
                return None
            pieces[piece.id] = (piece, shape)
        return Drawing(block, pieces, block.width.value / block.grid_width, block.height.value / block.grid_height)

    def _are_pieces(self, step: Step, drawing: Drawing, names: list[str]) -> bool:
        unknown = [name for name in names if name not in drawing.pieces]
        if unknown or len(set(names)) != len(names):
            self.table.tell(
                codes.PIECES_LISTED_WRONGLY,
                f"step {step.id} sews "
                + (
                    f"{_listed(unknown)}, which the {drawing.block.name} block does not have"
                    if unknown
                    else "one piece of the block twice"
                ),
                place=drawing.block.place,
            )
            return False
        return True

    def _as_part(
        self, step: Step, drawing: Drawing, name: str, workpiece: Workpiece, listed: tuple[str, ...]
    ) -> Part | None:
        table = self.table
        if isinstance(workpiece, Spoilt) or not self._are_pieces(step, drawing, list(listed)):
            return None
        if isinstance(workpiece, Part):
            if workpiece.block != drawing.block.id or workpiece.pieces != frozenset(listed):
                table.tell(
                    codes.PIECES_LISTED_WRONGLY,
                    f"step {step.id} says {name} is made of {_listed(listed)}, it is made of "
                    f"{_listed(workpiece.pieces)} of block {workpiece.block}",
                    place=drawing.block.place,
                )
                return None
            return workpiece
        if isinstance(workpiece, CutPiece) and len(listed) == 1 and drawing.block.method is Method.ROTARY:
            piece, shape = drawing.pieces[listed[0]]
            table.check_fabric(workpiece.cut, piece.fabric, f"piece {piece.id} of the {drawing.block.name} block")
            table.check_print(workpiece.cut)
            fits = check_rotary(table, workpiece.cut, piece.id, drawing.finished(shape))
            return Part(drawing.block.id, frozenset(listed), shape) if fits else None
        table.wrong_piece(step, name, workpiece, f"the part of the {drawing.block.name} block with {_listed(listed)}")
        return None

    def _join(
        self, step: Step, drawing: Drawing, first: Outline, second: Outline, what: str
    ) -> tuple[Outline, Spot] | None:
        side = common_side(first, second)
        union = sewn(first, second, side) if side else None
        if side is None or union is None:
            self.table.tell(
                codes.SEAM_NOT_WHOLE,
                f"step {step.id}: {what} of the {drawing.block.name} block does not meet what is sewn so far along "
                f"the whole of one straight seam{self._seam_figures(drawing, first, second, side is not None)}",
                place=drawing.block.place,
            )
            return None
        (ax, ay), (bx, by) = side
        return union, ((bx - ax) * drawing.across, (by - ay) * drawing.down)

    def _seam_figures(self, drawing: Drawing, first: Outline, second: Outline, is_whole: bool) -> str:
        if is_whole:
            return "; it would leave an inward corner"
        touching = touching_sides(first, second)
        if touching is None:
            return "; they do not touch"
        lengths = []
        for (ax, ay), (bx, by) in touching:
            across, down = _absolute((bx - ax) * drawing.across), _absolute((by - ay) * drawing.down)
            if across != 0 and down != 0:
                return "; one edge is longer than the other"
            lengths.append(self.table.length(across + down))
        if lengths[0] == lengths[1]:
            return f"; the edges, {lengths[0]} each, are shifted along each other"
        return f": one edge is {lengths[1]}, the edge it is sewn to is {lengths[0]}"

    def _part(self, step: Step, drawing: Drawing, pieces: frozenset[str], shape: Outline) -> Workpiece:
        block = drawing.block
        if len(pieces) < len(drawing.pieces):
            return Part(block.id, pieces, shape)
        drawn = outline((corner.x, corner.y) for corner in block.outline.corners)
        size = upright_size(shape)
        if drawn is None or not same_shape(drawn, shape) or size != (block.grid_width, block.grid_height):
            self.table.tell(
                codes.BLOCK_NOT_FILLED,
                f"step {step.id}: all pieces of the {block.name} block are sewn, and they do not fill a rectangle of "
                f"{block.width.text} × {block.height.text}",
                block.width, place=block.place,
            )  # fmt: skip
            return SPOILT
        return self._lying(block)

    def _lying(self, block: Block) -> Flat:
        """Return a finished block as it was drawn."""
        width, height = block.width.value + 2 * self.table.seam, block.height.value + 2 * self.table.seam
        return Flat(width, height, block=block.id, blocks={(block.id, 0): 1})


def part_size(table: Table, maker: BlockMaker, part: Part) -> tuple[Number, Number] | None:
    """Return what a ruler reads on a part of a block; None unless it is an upright rectangle."""
    drawing = maker.drawing(part.block, None)
    size = upright_size(part.outline)
    if drawing is None or size is None:
        return None
    return size[0] * drawing.across + 2 * table.seam, size[1] * drawing.down + 2 * table.seam


def _absolute(number: Number) -> Number:
    return -number if number < 0 else number


def _listed(names: Iterable[str]) -> str:
    return ", ".join(sorted(names))
