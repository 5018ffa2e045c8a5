"""What shows when it hangs: loops of cloth along the top edge, or rings sewn to the back."""

from __future__ import annotations

from dataclasses import replace

from evenseam.exact import Number
from evenseam.pattern import (
    AttachLoops,
    AttachRings,
    Bound,
    EnvelopeBack,
    Faced,
    Loops,
    MakeLoop,
    Rings,
    Step,
    Turned,
)
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.hanging import not_decided
from evenseam.sizing.simulator.patches import RECTANGLES
from evenseam.sizing.simulator.runs import spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import (
    Bordered,
    CutPiece,
    Flat,
    Layered,
    Loop,
    Pocketed,
    Stage,
    Workpiece,
    size_on_table,
)


def make_loop(table: Table, step: Step, operation: MakeLoop) -> Workpiece:
    """Fold lengthwise, sew, turn, and fold in half."""
    piece = table.take(step, (operation.loop,))[0]
    loops = table.project.hanging
    if not isinstance(loops, Loops):
        return not_decided(table, step, "a loop")
    if not isinstance(piece, CutPiece) or piece.cut.shape not in RECTANGLES:
        return table.wrong_piece(step, operation.loop, piece, "a strip of cloth")
    cut = piece.cut
    told = table.told
    table.check_fabric(cut, loops.fabric, "the loops")
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    if (cut.width.value, cut.height.value) != (loops.cut_width.value, loops.cut_length.value):
        table.tell(
            codes.LOOP_SIZE_DIFFERS,
            f"“{cut.label}” is {cut.width.text} × {cut.height.text}, the loops are decided as {loops.cut_width.text} × "
            f"{loops.cut_length.text}",
            loops.cut_width, loops.cut_length, place=loops.place,
        )  # fmt: skip
    width, length = cut.width.value / 2 - operation.seam.value, cut.height.value / 2
    if (operation.finished_width.value, operation.finished_length.value) != (width, length):
        table.tell(
            codes.LOOP_SIZE_DIFFERS,
            f"step {step.id} says the loop is {operation.finished_width.text} × {operation.finished_length.text}; sewn "
            f"and folded it is {table.size(width, length)}",
            loops.cut_width, place=loops.place,
        )  # fmt: skip
    if not width > 0:
        table.tell(
            codes.LOOP_SIZE_DIFFERS, f"the seam leaves nothing of “{cut.label}”", loops.cut_width, place=loops.place
        )
    if not length > table.seam:
        table.tell(
            codes.LOOP_SIZE_DIFFERS, f"the seam that holds it takes all of “{cut.label}”", loops.cut_length,
            place=loops.place,
        )  # fmt: skip
    return SPOILT if table.told > told else Loop(cut, width, length)


def attach_loops(table: Table, step: Step, operation: AttachLoops) -> Workpiece:
    """Lay the loops along the top edge before it is closed, or sew them behind the finished one."""
    # As many names as loops would never be written down for a number beyond all reason.
    number = operation.number
    loops = table.project.hanging
    if not isinstance(loops, Loops):
        table.take(step, (operation.project, operation.loop))
        return not_decided(table, step, "loops")
    if number < 1 or number != loops.number.value:
        table.take(step, (operation.project, operation.loop))
        table.tell(
            codes.HANGING_DIFFERS, f"step {step.id} attaches {number} loops, the pattern decides {loops.number.number}",
            loops.number, place=loops.place,
        )  # fmt: skip
        return SPOILT
    pieces = table.take(step, (operation.project,), {operation.loop: number})
    if spoilt_among(pieces):
        return SPOILT
    piece, loop = pieces
    if not isinstance(loop, Loop):
        return table.wrong_piece(step, operation.loop, loop, "a sewn and folded loop")
    size = _edge_for_loops(table, piece)
    if size is None:
        return table.wrong_piece(step, operation.project, piece, "a piece whose top edge can take loops now")
    if number * loop.width > size[0]:
        table.tell(
            codes.SLEEVE_DOES_NOT_FIT,
            f"{number} loops of {table.length(loop.width)} do not fit along an edge of {table.length(size[0])}",
            loops.number, place=loops.place, hint="use fewer or narrower loops",
        )  # fmt: skip
        return SPOILT
    if isinstance(piece, Layered):
        return replace(piece, has_loops=True)
    if isinstance(piece, Pocketed):
        return replace(piece, has_loops=True)
    return (
        Pocketed(piece, has_pockets=False, has_loops=True) if isinstance(piece, (CutPiece, Flat, Bordered)) else SPOILT
    )


def attach_rings(table: Table, step: Step, operation: AttachRings) -> Workpiece:
    """Sew rings to the back of the finished project, below the top edge."""
    piece = table.take(step, (operation.project,))[0]
    rings = table.project.hanging
    if not isinstance(rings, Rings):
        return not_decided(table, step, "rings")
    if not isinstance(piece, Layered) or piece.stage is not Stage.FINISHED or piece.has_rings:
        return table.wrong_piece(step, operation.project, piece, "a piece finished at the edge, without rings")
    told = table.told
    table.check_figure(step, "the distance below the top edge", operation.drop, rings.drop)
    if operation.number < 1 or operation.number != rings.number.value:
        table.tell(
            codes.HANGING_DIFFERS,
            f"step {step.id} attaches {operation.number} rings, the pattern decides {rings.number.number}",
            rings.number, place=rings.place,
        )  # fmt: skip
    if not 0 <= operation.drop.value < piece.height:
        table.tell(
            codes.SLEEVE_DOES_NOT_FIT,
            f"rings {operation.drop.text} below the top edge are not on a project {table.length(piece.height)} high",
            rings.drop, place=rings.place,
        )  # fmt: skip
    return SPOILT if table.told > told else replace(piece, has_rings=True)


def _edge_for_loops(table: Table, piece: Workpiece) -> tuple[Number, Number] | None:
    """Return the size of a piece that loops can be fastened to now: in the seam, under the binding, or behind."""
    finish = table.project.finish
    if isinstance(piece, Layered):
        stages = {Stage.FINISHED}
        if isinstance(finish, (Bound, Faced, EnvelopeBack)):
            stages.add(Stage.TRIMMED)
        return (piece.width, piece.height) if piece.stage in stages and not piece.has_loops else None
    if isinstance(finish, Turned) and not (isinstance(piece, Pocketed) and piece.has_loops):
        inner = piece.piece if isinstance(piece, Pocketed) else piece
        return size_on_table(piece) if isinstance(inner, (CutPiece, Flat, Bordered)) else None
    return None
