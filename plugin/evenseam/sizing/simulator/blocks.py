"""Blocks: patches sewn onto a section, and parts joined until the block is whole."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from evenseam.exact import Number
from evenseam.pattern import Block, JoinPieces, Method, PieceSection, Step, TrimPart
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.drawing import Drawing, read_drawing
from evenseam.sizing.simulator.outlined import raw_size, shape_of
from evenseam.sizing.simulator.patches import RECTANGLES, check_patch, check_rotary, is_generous, lies_askew
from evenseam.sizing.simulator.plane import (
    Outline,
    Spot,
    box,
    common_side,
    outline,
    same_shape,
    sewn,
    touching_sides,
    upright_size,
)
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.units import free_sides, laid_as, uneven
from evenseam.sizing.simulator.workpiece import CutPiece, Flat, Part, Spoilt, Workpiece


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
        return self._part(step, drawing, Part(drawing.block.id, frozenset(names), union))

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
        if joined is None or not self._lies_even(step, drawing, one, other, joined[0]):
            return SPOILT
        order = (*operation.first_pieces, *operation.second_pieces)
        also = self._other_places(step, drawing, order, operation.also)
        if also is None:
            return SPOILT
        loose = {**one.loose, **other.loose}
        return self._part(step, drawing, Part(drawing.block.id, frozenset(order), joined[0], loose, order, also))

    def trim_part(self, step: Step, operation: TrimPart) -> Workpiece:
        """Trim a part to one seam allowance beyond its seam lines."""
        table = self.table
        (workpiece,) = table.take(step, (operation.part,))
        drawing = self.drawing(operation.block, step)
        if drawing is None or isinstance(workpiece, Spoilt):
            return SPOILT
        table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
        if not isinstance(workpiece, Part):
            return table.wrong_piece(step, operation.part, workpiece, "a sewn part of a block that is not trimmed yet")
        part = self._as_part(step, drawing, operation.part, workpiece, operation.pieces)
        return self._part(step, drawing, replace(part, loose={})) if part is not None else SPOILT

    def unit(
        self, step: Step, drawing: Drawing, pieces: tuple[str, ...], also: tuple[tuple[str, ...], ...]
    ) -> Part | None:
        """Return a unit that is sewn as a whole; None, with the problem noted, when it is none of this drawing."""
        if not pieces or not self._are_pieces(step, drawing, list(pieces)):
            return None
        left, top, right, bottom = box(tuple(spot for name in pieces for spot in drawing.pieces[name][1]))
        shape = ((left, top), (right, top), (right, bottom), (left, bottom))
        part = Part(drawing.block.id, frozenset(pieces), shape, {}, pieces, also)
        return part if self._other_places(step, drawing, pieces, also) is not None else None

    def laid_down(self, step: Step, drawing: Drawing, part: Part) -> Workpiece:
        """Return a part, or the whole block when that is all of it."""
        return self._part(step, drawing, part)

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
            self.drawings[id] = read_drawing(self.table, id, step)
        return self.drawings[id]

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
            if workpiece.block == drawing.block.id and workpiece.pieces != frozenset(listed):
                for place in workpiece.also:
                    if frozenset(place) == frozenset(listed):
                        return self._laid(drawing, workpiece, place)
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
            cut, finished = workpiece.cut, drawing.finished(shape)
            if not check_rotary(table, cut, piece.id, finished):
                return None
            if table.is_directional(cut.material) and lies_askew(cut, finished):
                table.blame(
                    cut, codes.PRINT_LIES_SIDEWAYS,
                    f"“{cut.label}” is of {table.fabric_name(cut.material)}, whose print would not stand upright in "
                    f"piece {piece.id}",
                )  # fmt: skip
            loose = {piece.id: (cut.shape.value, cut.width.value)} if is_generous(table, cut, finished) else {}
            return Part(drawing.block.id, frozenset(listed), shape, loose, listed)
        table.wrong_piece(step, name, workpiece, f"the part of the {drawing.block.name} block with {_listed(listed)}")
        return None

    def _laid(self, drawing: Drawing, part: Part, place: tuple[str, ...]) -> Part | None:
        """Return a unit laid at another of its places in the block."""
        found = laid_as(drawing.shapes(part.order), drawing.shapes(place), drawing.finished(part.outline))
        if found is None:
            return None
        shape = tuple((x / drawing.across, y / drawing.down) for x, y in found[1])
        there = dict(zip(part.order, place, strict=True))
        loose = {there[name]: cut for name, cut in part.loose.items()}
        return Part(part.block, frozenset(place), shape, loose, place)

    def _other_places(
        self, step: Step, drawing: Drawing, order: tuple[str, ...], also: tuple[tuple[str, ...], ...]
    ) -> tuple[tuple[str, ...], ...] | None:
        """Check that a unit looks the same in every place it is meant for: fabrics, shapes, and prints upright."""
        told = self.table.told
        fabrics = [drawing.pieces[name][0].fabric for name in order]
        places = [frozenset(order), *map(frozenset, also)]
        if len(set(places)) < len(places):
            self.table.tell(
                codes.PIECES_LISTED_WRONGLY, f"step {step.id} lists one place of a unit twice",
                place=drawing.block.place,
            )  # fmt: skip
        for place in also:
            if not self._are_pieces(step, drawing, list(place)):
                continue
            found = laid_as(drawing.shapes(order), drawing.shapes(place), drawing.pieces[order[0]][1])
            there = [drawing.pieces[name][0].fabric for name in place]
            is_askew = found is not None and found[0] > 0 and any(map(self.table.is_directional, fabrics))
            if found is None or there != fabrics or is_askew:
                self.table.tell(
                    codes.UNITS_DIFFER,
                    f"step {step.id} makes {_listed(order)} of the {drawing.block.name} block; {_listed(place)} "
                    + ("would have its print turned" if is_askew else "is not the same unit"),
                    place=drawing.block.place,
                )
        return also if self.table.told == told else None

    def _lies_even(self, step: Step, drawing: Drawing, one: Part, other: Part, union: Outline) -> bool:
        """Check that what is sewn lies true: nothing a little large is left where it can no longer be trimmed."""
        side = common_side(one.outline, other.outline)
        for part in (one, other):
            if side is None or not part.loose:
                continue
            start, end = drawing.finished(side)
            shapes = {name: drawing.finished(drawing.pieces[name][1]) for name in part.pieces}
            culprit = uneven(shapes, drawing.finished(part.outline), part.loose, (start, end))
            if len(part.pieces) > 1 and upright_size(part.outline) is not None:
                culprit = min(part.loose)
            for name in part.loose:
                if not free_sides(drawing.pieces[name][1], union):
                    culprit = culprit or name
            if culprit is not None:
                self.table.tell(
                    codes.NOT_TRIMMED,
                    f"step {step.id}: {_listed(part.pieces)} of the {drawing.block.name} block must be trimmed first; "
                    f"piece {culprit} was cut from a square brought up to a mark, so the edge does not lie "
                    f"{self.table.length(self.table.seam)} beyond the seam line",
                    place=drawing.block.place,
                    hint="trim the unit to its unfinished size before it is sewn on",
                )  # fmt: skip
                return False
        return True

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

    def _part(self, step: Step, drawing: Drawing, part: Part) -> Workpiece:
        block, shape = drawing.block, part.outline
        if len(part.pieces) < len(drawing.pieces) or part.loose:
            return part
        drawn = outline((corner.x, corner.y) for corner in block.outline.corners)
        size = upright_size(shape)
        if shape_of(block) is not None:
            left, top, right, bottom = box(shape)
            size = (right - left, bottom - top)
        if drawn is None or not same_shape(drawn, shape) or size != (block.grid_width, block.grid_height):
            self.table.tell(
                codes.BLOCK_NOT_FILLED,
                f"step {step.id}: all pieces of the {block.name} block are sewn, and they do not fill its outline of "
                f"{block.width.text} × {block.height.text}",
                block.width, place=block.place,
            )  # fmt: skip
            return SPOILT
        return self._lying(block)

    def _lying(self, block: Block) -> Flat:
        """Return a finished block as it was drawn."""
        width, height = block.width.value + 2 * self.table.seam, block.height.value + 2 * self.table.seam
        shape = shape_of(block)
        if shape is not None:
            width, height = raw_size(shape, self.table.seam)
        return Flat(width, height, block=block.id, blocks={(block.id, 0): 1})


def part_size(table: Table, maker: BlockMaker, part: Part) -> tuple[Number, Number] | None:
    """Return what a ruler reads on a part of a block; None unless it is an upright rectangle."""
    drawing = maker.drawing(part.block, None)
    size = upright_size(part.outline)
    if drawing is None or size is None or part.loose:
        return None
    return size[0] * drawing.across + 2 * table.seam, size[1] * drawing.down + 2 * table.seam


def _absolute(number: Number) -> Number:
    return -number if number < 0 else number


def _listed(names: Iterable[str]) -> str:
    return ", ".join(sorted(names))
