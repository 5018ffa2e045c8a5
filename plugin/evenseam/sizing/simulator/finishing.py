"""Layers: sewn round and turned, or basted, quilted and squared up."""

from __future__ import annotations

from dataclasses import replace

from evenseam.exact import Number
from evenseam.pattern import (
    BATTING,
    INSULATION,
    Bound,
    EnvelopeBack,
    Faced,
    KnifeEdge,
    LayerForQuilting,
    LayerTurned,
    Quantity,
    QuiltLayers,
    SquareUp,
    Step,
    Topstitch,
    Turned,
    TurnOut,
    needs_insulation,
)
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.finished_top import checked_top
from evenseam.sizing.simulator.outlined import edge_to_open, finished_size, outlined
from evenseam.sizing.simulator.patches import RECTANGLES, is_cut_for
from evenseam.sizing.simulator.runs import spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import CutPiece, Layered, Pocketed, Stage, Workpiece

_FINISHES = {
    Turned: "turned", Bound: "quilted and bound", Faced: "quilted and faced", KnifeEdge: "quilted with a knife edge",
    EnvelopeBack: "quilted with an envelope back",
}  # fmt: skip


def layer_turned(table: Table, maker: BlockMaker, step: Step, operation: LayerTurned) -> Workpiece:
    """Layer, sew round and trim: the ruler then reads the raw size of the top."""
    pieces = _layers(table, step, operation)
    finish = table.project.finish
    if not isinstance(finish, Turned):
        return wrong_finish(table, step)
    if spoilt_among(pieces) or not _is_insulated_as_decided(table, step, operation.insulation):
        return SPOILT
    told = table.told
    top, backing = pieces[0], pieces[1]
    laid_on = [piece for piece in (top, backing) if isinstance(piece, Pocketed)]
    if len(laid_on) == 2:
        table.tell(codes.HANGING_DIFFERS, f"step {step.id}: something to hang it by is laid on both top and backing")
    size = checked_top(table, maker, step, operation.top, top)
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    table.check_figure(step, "the opening", operation.opening, finish.opening)
    if size is None:
        return SPOILT
    _check_layer(table, step, operation.backing, backing, size, finish.backing_overage, finish.backing_fabric)
    _check_layer(table, step, operation.batting, pieces[2], size, finish.batting_overage, BATTING)
    for piece in pieces[3:]:
        _check_layer(table, step, operation.insulation or "", piece, size, finish.batting_overage, INSULATION)
    _check_opening(table, operation, size)
    if table.told > told:
        return SPOILT
    has_pockets, has_loops = (any(getattr(piece, name) for piece in laid_on) for name in ("has_pockets", "has_loops"))
    return Layered(Stage.SEWN_ROUND, *size, *size, has_pockets=has_pockets, has_loops=has_loops)


def turn_out(table: Table, step: Step, operation: TurnOut) -> Workpiece:
    """Turn right side out: the seam allowances all round are inside now."""
    piece = table.take(step, (operation.layered,))[0]
    if not isinstance(piece, Layered) or piece.stage is not Stage.SEWN_ROUND:
        return table.wrong_piece(step, operation.layered, piece, "layers sewn round, wrong side out")
    width, height = finished_size(table, (piece.top_width, piece.top_height))
    return replace(piece, stage=Stage.TURNED, width=width, height=height)


def topstitch(table: Table, step: Step, operation: Topstitch) -> Workpiece:
    """Stitch round near the edge; that closes the opening and finishes the edge."""
    piece = table.take(step, (operation.turned,))[0]
    finish = table.project.finish
    if not isinstance(finish, Turned):
        return wrong_finish(table, step)
    if not isinstance(piece, Layered) or piece.stage is not Stage.TURNED:
        return table.wrong_piece(step, operation.turned, piece, "a piece turned right side out")
    told = table.told
    table.check_figure(step, "the topstitching", operation.distance, finish.topstitch)
    shorter = piece.width if piece.width < piece.height else piece.height
    if operation.distance.value * 2 >= shorter:
        table.tell(
            codes.TOPSTITCH_TOO_FAR,
            f"topstitching {operation.distance.text} from the edge does not go round a piece of "
            f"{table.size(piece.width, piece.height)}",
            finish.topstitch, place=finish.place,
        )  # fmt: skip
    if table.told > told:
        return SPOILT
    if table.project.borders and operation.distance.value >= table.project.borders[-1].width.value:
        border = table.project.borders[-1]
        table.tell(
            codes.TOPSTITCH_CROSSES_BORDER,
            f"topstitching {operation.distance.text} from the edge lies beyond {border.name}, {border.width.text} wide",
            finish.topstitch, border.width, place=finish.place,
        )  # fmt: skip
    return replace(piece, stage=Stage.FINISHED)


def layer_for_quilting(table: Table, maker: BlockMaker, step: Step, operation: LayerForQuilting) -> Workpiece:
    """Layer and baste: the largest layer, the backing, is what a ruler reads."""
    pieces = _layers(table, step, operation)
    finish = table.project.finish
    if isinstance(finish, Turned):
        return wrong_finish(table, step)
    if spoilt_among(pieces) or not _is_insulated_as_decided(table, step, operation.insulation):
        return SPOILT
    told = table.told
    size = checked_top(table, maker, step, operation.top, pieces[0])
    if size is None:
        return SPOILT
    backing = pieces[1]
    _check_layer(table, step, operation.backing, backing, size, finish.backing_overage, finish.backing_fabric)
    _check_layer(table, step, operation.batting, pieces[2], size, finish.batting_overage, BATTING)
    for piece in pieces[3:]:
        _check_layer(table, step, operation.insulation or "", piece, size, finish.batting_overage, INSULATION)
    if isinstance(backing, CutPiece) and backing.cut.join_seam is not None:
        table.check_figure(step, "the backing's own seams", backing.cut.join_seam, finish.backing_seam)
    if table.told > told or not isinstance(backing, CutPiece):
        return SPOILT
    return Layered(Stage.BASTED, backing.cut.width.value, backing.cut.height.value, *size)


def quilt_layers(table: Table, step: Step, operation: QuiltLayers) -> Workpiece:
    """Quilt; the little that quilting draws in is what the overage is for, and is not measured."""
    piece = table.take(step, (operation.layered,))[0]
    if not isinstance(piece, Layered) or piece.stage is not Stage.BASTED:
        return table.wrong_piece(step, operation.layered, piece, "a top layered for quilting")
    return replace(piece, stage=Stage.QUILTED)


def square_up(table: Table, step: Step, operation: SquareUp) -> Workpiece:
    """Trim all layers to the top."""
    piece = table.take(step, (operation.quilted,))[0]
    if not isinstance(piece, Layered) or piece.stage is not Stage.QUILTED:
        return table.wrong_piece(step, operation.quilted, piece, "a quilted piece")
    if (operation.width.value, operation.height.value) != (piece.top_width, piece.top_height):
        table.tell(
            codes.FIGURE_DIFFERS,
            f"step {step.id} trims to {operation.width.text} × {operation.height.text}, the top is "
            f"{table.size(piece.top_width, piece.top_height)}",
            operation.width, operation.height,
        )  # fmt: skip
        return SPOILT
    return replace(piece, stage=Stage.TRIMMED, width=piece.top_width, height=piece.top_height)


def wrong_finish(table: Table, step: Step) -> Workpiece:
    """Note a step of another finish than the one decided."""
    table.tell(
        codes.WRONG_WORKPIECE,
        f"step {step.id} belongs to another finish, the project is {_FINISHES[type(table.project.finish)]}",
        place=table.project.finish.place,
    )  # fmt: skip
    return SPOILT


def _layers(table: Table, step: Step, operation: LayerTurned | LayerForQuilting) -> list[Workpiece]:
    """Take top, backing, batting and, if the step names it, the layer against heat."""
    further = () if operation.insulation is None else (operation.insulation,)
    return table.take(step, (operation.top, operation.backing, operation.batting, *further))


def _is_insulated_as_decided(table: Table, step: Step, insulation: str | None) -> bool:
    """Check that something for hot things has heat-resistant batting between its layers, and nothing else has."""
    needs = needs_insulation(table.project)
    if (insulation is not None) is needs:
        return True
    table.tell(
        codes.WRONG_WORKPIECE,
        f"step {step.id} lays {'no' if needs else 'a layer of'} heat-resistant batting; {table.project.name} needs "
        f"{'one for hot things' if needs else 'none'}",
        place=table.project.place,
    )  # fmt: skip
    return False


def _check_layer(
    table: Table, step: Step, name: str, piece: Workpiece, top: tuple[Number, Number], overage: Quantity, material: str
) -> None:
    inner = piece.piece if isinstance(piece, Pocketed) else piece
    if not isinstance(inner, CutPiece) or inner.cut.shape not in RECTANGLES:
        table.wrong_piece(step, name, piece, "a layer of cloth or batting")
        return
    cut = inner.cut
    layer = {BATTING: "the batting", INSULATION: "the heat-resistant batting"}.get(material, "the backing")
    table.check_fabric(cut, material, layer)
    table.check_print(cut)
    width, height = top[0] + 2 * overage.value, top[1] + 2 * overage.value
    mark = table.unit.ruler_mark
    if not (is_cut_for(cut.width.value, width, mark) and is_cut_for(cut.height.value, height, mark)):
        table.tell(
            codes.LAYER_SIZE_DIFFERS,
            f"“{cut.label}” is {cut.width.text} × {cut.height.text}; the top is {table.size(*top)}, with "
            f"{overage.text} more on every side {layer} is {table.size(width, height)}",
            overage, cut.width, cut.height, place=table.project.finish.place,
        )  # fmt: skip


def _check_opening(table: Table, operation: LayerTurned, top: tuple[Number, Number]) -> None:
    edges = {"top": top[0], "bottom": top[0], "left": top[1], "right": top[1]}
    edge = edges.get(operation.opening_edge)
    if outlined(table.project) is not None:
        finished = edge_to_open(table, operation.opening_edge)
        edge = None if finished is None else finished + 2 * table.seam
    place = table.project.finish.place
    if edge is None:
        table.tell(
            codes.OPENING_TOO_LONG, f"the opening is said to be on the edge {operation.opening_edge!r}; edges are "
            f"{', '.join(edges)}", operation.opening, place=place,
        )  # fmt: skip
    elif not 0 < operation.opening.value < edge - 2 * table.seam:
        table.tell(
            codes.OPENING_TOO_LONG,
            f"an opening of {operation.opening.text} does not fit on an edge of {table.length(edge - 2 * table.seam)}",
            operation.opening, place=place, hint="shorten the opening, or put it on a longer edge",
        )  # fmt: skip
