"""What the back is hung by: a sleeve sewn on at the end, or corner pockets caught in the edge."""

from __future__ import annotations

from dataclasses import replace

from evenseam.exact import Number
from evenseam.pattern import (
    AttachCornerPockets,
    AttachSleeve,
    CornerPockets,
    MakeCornerPockets,
    MakeSleeve,
    Sleeve,
    Step,
    Turned,
)
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.patches import RECTANGLES
from evenseam.sizing.simulator.runs import spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import (
    Bordered,
    CutPiece,
    Flat,
    Layered,
    Pocketed,
    PocketPair,
    Stage,
    Tube,
    Workpiece,
    size_on_table,
)


def make_sleeve(table: Table, step: Step, operation: MakeSleeve) -> Workpiece:
    """Hem both short ends, fold lengthwise, sew into a tube."""
    piece = table.take(step, (operation.sleeve,))[0]
    sleeve = table.project.hanging
    if not isinstance(sleeve, Sleeve):
        return not_decided(table, step, "a hanging sleeve")
    if not isinstance(piece, CutPiece) or piece.cut.shape not in RECTANGLES:
        return table.wrong_piece(step, operation.sleeve, piece, "a strip of cloth")
    cut = piece.cut
    told = table.told
    table.check_fabric(cut, sleeve.fabric, "the sleeve")
    table.check_figure(step, "the hem", operation.hem, sleeve.hem)
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    if cut.height.value != sleeve.cut_depth.value:
        table.tell(
            codes.SLEEVE_SIZE_DIFFERS,
            f"“{cut.label}” is {cut.height.text} deep, the sleeve is decided as {sleeve.cut_depth.text}",
            sleeve.cut_depth, cut.height, place=sleeve.place,
        )  # fmt: skip
    length = cut.width.value - 2 * operation.hem.value
    depth = (cut.height.value - 2 * operation.seam.value) / 2
    if (operation.finished_length.value, operation.finished_depth.value) != (length, depth):
        table.tell(
            codes.SLEEVE_SIZE_DIFFERS,
            f"step {step.id} says the tube is {operation.finished_length.text} × {operation.finished_depth.text}; "
            f"hemmed and sewn it is {table.size(length, depth)}",
            sleeve.cut_depth, place=sleeve.place,
        )  # fmt: skip
    if not (length > 0 and depth > 0):
        table.tell(
            codes.SLEEVE_DOES_NOT_FIT, f"hems and seams leave nothing of “{cut.label}”", sleeve.hem, place=sleeve.place
        )
    return SPOILT if table.told > told else Tube(cut, length, depth)


def attach_sleeve(table: Table, step: Step, operation: AttachSleeve) -> Workpiece:
    """Sew the tube to the back; it must be narrower than the project and stay on it."""
    pieces = table.take(step, (operation.project, operation.sleeve))
    sleeve = table.project.hanging
    if not isinstance(sleeve, Sleeve):
        return not_decided(table, step, "a hanging sleeve")
    piece, tube = pieces
    if not isinstance(piece, Layered) or piece.stage is not Stage.FINISHED or piece.has_sleeve:
        return table.wrong_piece(step, operation.project, piece, "a piece finished at the edge, without a sleeve")
    if not isinstance(tube, Tube):
        return table.wrong_piece(step, operation.sleeve, tube, "a sewn sleeve")
    told = table.told
    table.check_figure(step, "the distance below the top edge", operation.drop, sleeve.drop)
    needed = piece.width + sleeve.cut_extra.value
    if tube.cut.width.value != needed:
        table.tell(
            codes.SLEEVE_SIZE_DIFFERS,
            f"“{tube.cut.label}” is cut {tube.cut.width.text} long; the project is {table.length(piece.width)} wide, "
            f"so the sleeve is cut {table.length(needed)} long",
            sleeve.cut_extra, tube.cut.width, place=sleeve.place,
        )  # fmt: skip
    if not tube.length < piece.width:
        table.tell(
            codes.SLEEVE_DOES_NOT_FIT,
            f"the sleeve is {table.length(tube.length)} long, the project only {table.length(piece.width)} wide",
            sleeve.cut_extra, sleeve.hem, place=sleeve.place,
            hint="cut the sleeve shorter, or turn wider hems",
        )  # fmt: skip
    if operation.drop.value < 0 or operation.drop.value + tube.depth > piece.height:
        table.tell(
            codes.SLEEVE_DOES_NOT_FIT,
            f"a sleeve {table.length(tube.depth)} deep, {operation.drop.text} below the top edge, does not fit on a "
            f"project {table.length(piece.height)} high",
            sleeve.drop, sleeve.cut_depth, place=sleeve.place,
        )  # fmt: skip
    return SPOILT if table.told > told else replace(piece, has_sleeve=True)


def make_corner_pockets(table: Table, step: Step, operation: MakeCornerPockets) -> Workpiece:
    """Fold two squares diagonally; each time the step is done two are used and one pair is left."""
    piece = table.take(step, (operation.square, operation.square))[0]
    pockets = table.project.hanging
    if not isinstance(pockets, CornerPockets):
        return not_decided(table, step, "corner pockets")
    if not isinstance(piece, CutPiece) or piece.cut.shape not in RECTANGLES:
        return table.wrong_piece(step, operation.square, piece, "two squares of cloth")
    cut = piece.cut
    told = table.told
    table.check_fabric(cut, pockets.fabric, "the corner pockets")
    if not cut.width.value == cut.height.value == pockets.square.value:
        table.tell(
            codes.POCKET_SIZE_DIFFERS,
            f"“{cut.label}” is {cut.width.text} × {cut.height.text}, the pockets are decided as squares of "
            f"{pockets.square.text}",
            pockets.square, cut.width, cut.height, place=pockets.place,
        )  # fmt: skip
    return SPOILT if table.told > told else PocketPair(cut)


def attach_corner_pockets(table: Table, step: Step, operation: AttachCornerPockets) -> Workpiece:
    """Lay the pockets on the top corners, before the edge is closed over them.

    A bound project gets them once it is squared up; a turned one before the layers are sewn round.
    """
    pieces = table.take(step, (operation.project, operation.pockets))
    if not isinstance(table.project.hanging, CornerPockets):
        return not_decided(table, step, "corner pockets")
    if spoilt_among(pieces):
        return SPOILT
    piece, pockets = pieces
    if not isinstance(pockets, PocketPair):
        return table.wrong_piece(step, operation.pockets, pockets, "a pair of folded corner pockets")
    size = _open_edge(table, piece)
    if size is None:
        return table.wrong_piece(step, operation.project, piece, "a piece whose edge is still open for corner pockets")
    square = table.project.hanging.square
    if square.value * 2 > size[0] or square.value > size[1]:
        table.tell(
            codes.SLEEVE_DOES_NOT_FIT,
            f"two corner pockets of {square.text} do not fit side by side on a piece of {table.size(*size)}", square,
            place=table.project.hanging.place,
        )  # fmt: skip
        return SPOILT
    if isinstance(piece, Layered):
        return replace(piece, has_pockets=True)
    return Pocketed(piece) if isinstance(piece, (CutPiece, Flat, Bordered)) else SPOILT


def _open_edge(table: Table, piece: Workpiece) -> tuple[Number, Number] | None:
    """Return the size of a piece that pockets can be laid on now; None when it is too early or too late."""
    if isinstance(table.project.finish, Turned):
        is_open = isinstance(piece, (CutPiece, Flat, Bordered))
    else:
        is_open = isinstance(piece, Layered) and piece.stage is Stage.TRIMMED and not piece.has_pockets
    return size_on_table(piece) if is_open else None


def not_decided(table: Table, step: Step, what: str) -> Workpiece:
    """Note something to hang a project by that nobody asked for."""
    table.tell(codes.HANGING_DIFFERS, f"step {step.id} makes {what}, which the pattern does not ask for")
    return SPOILT
