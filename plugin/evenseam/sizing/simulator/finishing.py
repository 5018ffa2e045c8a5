"""Finishes: layered and turned, or layered, quilted, squared up and bound."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Number, Unit
from evenseam.pattern import (
    BATTING,
    Bind,
    Bound,
    CutShape,
    Grain,
    LayerForQuilting,
    LayerTurned,
    MakeBinding,
    Quantity,
    QuiltLayers,
    SquareUp,
    Step,
    Topstitch,
    Turned,
    TurnOut,
)
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.arranged import check_centre, laid_out
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.patches import RECTANGLES
from evenseam.sizing.simulator.runs import as_flat, spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import (
    Bordered,
    CutPiece,
    FoldedBinding,
    Layered,
    Pocketed,
    Stage,
    Workpiece,
)

BINDINGS = {Grain.STRAIGHT: CutShape.BINDING, Grain.BIAS: CutShape.BIAS_BINDING}


def layer_turned(table: Table, maker: BlockMaker, step: Step, operation: LayerTurned) -> Workpiece:
    """Layer, sew round and trim: the ruler then reads the raw size of the top."""
    pieces = table.take(step, (operation.top, operation.backing, operation.batting))
    finish = table.project.finish
    if not isinstance(finish, Turned):
        return _wrong_finish(table, step)
    if spoilt_among(pieces):
        return SPOILT
    told = table.told
    top, backing = pieces[0], pieces[1]
    has_pockets = isinstance(top, Pocketed) or isinstance(backing, Pocketed)
    if isinstance(top, Pocketed) and isinstance(backing, Pocketed):
        table.tell(codes.HANGING_DIFFERS, f"step {step.id}: both the top and the backing have corner pockets")
    size = _checked_top(table, maker, step, operation.top, top)
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    table.check_figure(step, "the opening", operation.opening, finish.opening)
    if size is None:
        return SPOILT
    _check_layer(table, step, operation.backing, backing, size, finish.backing_overage, finish.backing_fabric)
    _check_layer(table, step, operation.batting, pieces[2], size, finish.batting_overage, BATTING)
    _check_opening(table, operation, size)
    return SPOILT if table.told > told else Layered(Stage.SEWN_ROUND, *size, *size, has_pockets=has_pockets)


def turn_out(table: Table, step: Step, operation: TurnOut) -> Workpiece:
    """Turn right side out: the seam allowances all round are inside now."""
    piece = table.take(step, (operation.layered,))[0]
    if not isinstance(piece, Layered) or piece.stage is not Stage.SEWN_ROUND:
        return table.wrong_piece(step, operation.layered, piece, "layers sewn round, wrong side out")
    width, height = piece.top_width - 2 * table.seam, piece.top_height - 2 * table.seam
    return Layered(Stage.TURNED, width, height, piece.top_width, piece.top_height, piece.has_pockets)


def topstitch(table: Table, step: Step, operation: Topstitch) -> Workpiece:
    """Stitch round near the edge; that closes the opening and finishes the edge."""
    piece = table.take(step, (operation.turned,))[0]
    finish = table.project.finish
    if not isinstance(finish, Turned):
        return _wrong_finish(table, step)
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
    return Layered(Stage.FINISHED, piece.width, piece.height, piece.top_width, piece.top_height, piece.has_pockets)


def layer_for_quilting(table: Table, maker: BlockMaker, step: Step, operation: LayerForQuilting) -> Workpiece:
    """Layer and baste: the largest layer, the backing, is what a ruler reads."""
    pieces = table.take(step, (operation.top, operation.backing, operation.batting))
    finish = table.project.finish
    if not isinstance(finish, Bound):
        return _wrong_finish(table, step)
    if spoilt_among(pieces):
        return SPOILT
    told = table.told
    size = _checked_top(table, maker, step, operation.top, pieces[0])
    if size is None:
        return SPOILT
    backing = pieces[1]
    _check_layer(table, step, operation.backing, backing, size, finish.backing_overage, finish.backing_fabric)
    _check_layer(table, step, operation.batting, pieces[2], size, finish.batting_overage, BATTING)
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
    return Layered(Stage.QUILTED, piece.width, piece.height, piece.top_width, piece.top_height)


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
    return Layered(Stage.TRIMMED, piece.top_width, piece.top_height, piece.top_width, piece.top_height)


def make_binding(table: Table, step: Step, operation: MakeBinding) -> Workpiece:
    """Join the strips and fold them in half along the length."""
    piece = table.take(step, (operation.binding,))[0]
    finish = table.project.finish
    if not isinstance(finish, Bound):
        return _wrong_finish(table, step)
    binding = finish.binding
    if not isinstance(piece, CutPiece) or piece.cut.shape is not BINDINGS[binding.grain]:
        return table.wrong_piece(step, operation.binding, piece, f"a strip cut as {BINDINGS[binding.grain].value}")
    cut = piece.cut
    told = table.told
    table.check_fabric(cut, binding.fabric, "the binding")
    if cut.width.value != binding.strip_width.value:
        table.tell(
            codes.FIGURE_DIFFERS,
            f"“{cut.label}” is {cut.width.text} wide, the binding is decided as {binding.strip_width.text}",
            binding.strip_width, cut.width,
        )  # fmt: skip
    folded = cut.width.value / 2
    if operation.folded_width.value != folded:
        table.tell(
            codes.FIGURE_DIFFERS,
            f"step {step.id} says the binding is {operation.folded_width.text} wide when folded, a strip of "
            f"{cut.width.text} folds to {table.length(folded)}",
            binding.strip_width,
        )
    return SPOILT if table.told > told else FoldedBinding(cut, folded, cut.height.value)


def bind(table: Table, step: Step, operation: Bind) -> Workpiece:
    """Sew the binding round the squared-up edge; the project finishes at that size."""
    pieces = table.take(step, (operation.trimmed, operation.binding))
    finish = table.project.finish
    if not isinstance(finish, Bound):
        return _wrong_finish(table, step)
    piece, binding = pieces
    if not isinstance(piece, Layered) or piece.stage is not Stage.TRIMMED:
        return table.wrong_piece(step, operation.trimmed, piece, "a quilted piece squared up")
    if not isinstance(binding, FoldedBinding):
        return table.wrong_piece(step, operation.binding, binding, "folded binding")
    told = table.told
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    way_round = 2 * (piece.width + piece.height)
    needed = way_round + finish.binding.extra_length.value
    if binding.length != needed:
        table.tell(
            codes.BINDING_LENGTH_DIFFERS,
            f"the binding is {table.length(binding.length)} long; the way round is {table.length(way_round)}, with "
            f"{finish.binding.extra_length.text} for corners and join it needs {table.length(needed)}",
            finish.binding.extra_length, binding.cut.height,
        )  # fmt: skip
    if binding.folded_width <= 2 * table.seam:
        table.tell(
            codes.BINDING_TOO_NARROW, _reach(table, binding), finish.binding.strip_width, place=finish.place,
            hint="cut the binding strips wider, or sew with a narrower seam allowance",
        )  # fmt: skip
    if table.told > told:
        return SPOILT
    if binding.folded_width < 3 * table.seam + _loft(table.unit):
        table.tell(
            codes.BINDING_BARELY_REACHES, _reach(table, binding), finish.binding.strip_width, place=finish.place,
            hint="cut the binding strips a little wider",
        )  # fmt: skip
    return Layered(Stage.FINISHED, piece.width, piece.height, piece.top_width, piece.top_height, piece.has_pockets)


def _reach(table: Table, binding: FoldedBinding) -> str:
    return (
        f"binding folded to {table.length(binding.folded_width)} and sewn with {table.length(table.seam)} has "
        f"{table.length(binding.folded_width - table.seam)} left to go out to the edge and down the back to the seam: "
        f"that takes {table.length(2 * table.seam)} and the thickness of the layers"
    )


def _loft(unit: Unit) -> Fraction:
    """Return what the thickness of the layers takes up: about 1/8 in or 0.3 cm (common practice)."""
    return Fraction(3, 10) if unit is Unit.CENTIMETRE else Fraction(1, 8)


def _wrong_finish(table: Table, step: Step) -> Workpiece:
    name = "turned" if isinstance(table.project.finish, Turned) else "quilted and bound"
    table.tell(
        codes.WRONG_WORKPIECE, f"step {step.id} belongs to another finish, the project is {name}",
        place=table.project.finish.place,
    )  # fmt: skip
    return SPOILT


def _checked_top(
    table: Table, maker: BlockMaker, step: Step, name: str, piece: Workpiece
) -> tuple[Number, Number] | None:
    """Return the raw size of the top once it has been compared with everything the author decided about it."""
    told = table.told
    inner = piece.piece if isinstance(piece, Pocketed) else piece
    project = table.project
    if isinstance(inner, Bordered):
        centre, width, height, strips = inner.centre, inner.width, inner.height, len(inner.strips)
    else:
        flat = as_flat(maker, inner)
        if flat is None:
            table.wrong_piece(step, name, piece, "the top")
            return None
        centre, strips = laid_out(project, flat), 0
        width, height = centre.width, centre.height
    check_centre(table, centre)
    if strips != 2 * len(project.borders):
        table.tell(
            codes.BORDER_ORDER_DIFFERS,
            f"{strips} pairs of border strips are sewn on, the {len(project.borders)} borders have "
            f"{2 * len(project.borders)}",
        )
    if table.told > told:
        return None
    added: Number = Fraction(0)
    for border in project.borders:
        added = added + 2 * border.width.value
    if (width, height) != (centre.width + added, centre.height + added):
        table.tell(
            codes.TOP_SIZE_DIFFERS,
            f"the top finishes at {table.size(width - 2 * table.seam, height - 2 * table.seam)}; the centre of "
            f"{table.size(centre.width - 2 * table.seam, centre.height - 2 * table.seam)} and borders of "
            f"{table.length(added)} in all do not add up to that",
        )
        return None
    return width, height


def _check_layer(
    table: Table, step: Step, name: str, piece: Workpiece, top: tuple[Number, Number], overage: Quantity, material: str
) -> None:
    inner = piece.piece if isinstance(piece, Pocketed) else piece
    if not isinstance(inner, CutPiece) or inner.cut.shape not in RECTANGLES:
        table.wrong_piece(step, name, piece, "a layer of cloth or batting")
        return
    cut = inner.cut
    layer = "the batting" if material == BATTING else "the backing"
    table.check_fabric(cut, material, layer)
    width, height = top[0] + 2 * overage.value, top[1] + 2 * overage.value
    if (cut.width.value, cut.height.value) != (width, height):
        table.tell(
            codes.LAYER_SIZE_DIFFERS,
            f"“{cut.label}” is {cut.width.text} × {cut.height.text}; the top is {table.size(*top)}, with "
            f"{overage.text} more on every side {layer} is {table.size(width, height)}",
            overage, cut.width, cut.height, place=table.project.finish.place,
        )  # fmt: skip


def _check_opening(table: Table, operation: LayerTurned, top: tuple[Number, Number]) -> None:
    edges = {"top": top[0], "bottom": top[0], "left": top[1], "right": top[1]}
    edge = edges.get(operation.opening_edge)
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
