"""Binding: joined, folded, and sewn round the squared-up edge, with square corners or round ones."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Number, Unit
from evenseam.pattern import Bind, Bound, CutShape, Grain, MakeBinding, RoundCorners, Step
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.finishing import wrong_finish
from evenseam.sizing.simulator.outlined import way_round
from evenseam.sizing.simulator.patches import is_cut_for
from evenseam.sizing.simulator.plane import least
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import CutPiece, FoldedBinding, Layered, Stage, Workpiece

BINDINGS = {Grain.STRAIGHT: CutShape.BINDING, Grain.BIAS: CutShape.BIAS_BINDING}


def make_binding(table: Table, step: Step, operation: MakeBinding) -> Workpiece:
    """Join the strips and fold them in half along the length."""
    piece = table.take(step, (operation.binding,))[0]
    finish = table.project.finish
    if not isinstance(finish, Bound):
        return wrong_finish(table, step)
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
        return wrong_finish(table, step)
    piece, binding = pieces
    if not isinstance(piece, Layered) or piece.stage is not Stage.TRIMMED:
        return table.wrong_piece(step, operation.trimmed, piece, "a quilted piece squared up")
    if not isinstance(binding, FoldedBinding):
        return table.wrong_piece(step, operation.binding, binding, "folded binding")
    told = table.told
    sewn = finish.binding.shows or table.project.seam_allowance
    table.check_figure(step, "the seam allowance", operation.seam, sewn)
    _check_corners(table, finish, piece)
    around = way_round(table, piece.width, piece.height)
    needed = around + finish.binding.extra_length.value
    if not is_cut_for(binding.length, needed, table.unit.ruler_mark):
        table.tell(
            codes.BINDING_LENGTH_DIFFERS,
            f"the binding is {table.length(binding.length)} long; the way round is {table.length(around)}, with "
            f"{finish.binding.extra_length.text} for corners and join it needs {table.length(needed)}",
            finish.binding.extra_length, binding.cut.height,
        )  # fmt: skip
    if binding.folded_width <= 2 * sewn.value:
        table.tell(
            codes.BINDING_TOO_NARROW, _reach(table, binding, sewn.value), finish.binding.strip_width,
            place=finish.place,
            hint="cut the binding strips wider, or sew with a narrower seam allowance",
        )  # fmt: skip
    if table.told > told:
        return SPOILT
    if binding.folded_width < 3 * sewn.value + _loft(table.unit):
        table.tell(
            codes.BINDING_BARELY_REACHES, _reach(table, binding, sewn.value), finish.binding.strip_width,
            place=finish.place,
            hint="cut the binding strips a little wider",
        )  # fmt: skip
    return replace(piece, stage=Stage.FINISHED)


def round_corners(table: Table, step: Step, operation: RoundCorners) -> Workpiece:
    """Cut the corners round: the size stays, and the way round is a little shorter than the binding allows for."""
    piece = table.take(step, (operation.trimmed,))[0]
    finish = table.project.finish
    if not isinstance(finish, Bound):
        return wrong_finish(table, step)
    if not isinstance(piece, Layered) or piece.stage is not Stage.TRIMMED or piece.is_round:
        return table.wrong_piece(step, operation.trimmed, piece, "a quilted piece squared up, with square corners")
    told = table.told
    radius = operation.radius
    if finish.corner_radius is None:
        table.tell(
            codes.FIGURE_DIFFERS, f"step {step.id} rounds the corners, the pattern decides square ones",
            place=finish.place,
        )  # fmt: skip
    else:
        table.check_figure(step, "the round of the corners", radius, finish.corner_radius)
    if not 0 < 2 * radius.value <= least([piece.width, piece.height]):
        table.tell(
            codes.CORNERS_NOT_SEWABLE,
            f"two corners with a radius of {radius.text} do not fit on an edge of "
            f"{table.length(least([piece.width, piece.height]))}",
            radius, place=finish.place, hint="choose a smaller radius",
        )  # fmt: skip
    return SPOILT if table.told > told else replace(piece, is_round=True)


def _check_corners(table: Table, finish: Bound, piece: Layered) -> None:
    if piece.is_round is (finish.corner_radius is None):
        table.tell(
            codes.FIGURE_DIFFERS,
            f"the corners are {'round' if piece.is_round else 'square'} when the binding is sewn on, which is not as "
            f"the pattern decides",
            place=finish.place,
        )
    if piece.is_round and finish.binding.grain is not Grain.BIAS:
        table.tell(
            codes.CORNERS_NOT_SEWABLE, "binding cut along the grain does not lie flat round a corner",
            place=finish.place, hint="cut the binding on the bias, or keep square corners",
        )  # fmt: skip


def _reach(table: Table, binding: FoldedBinding, seam: Number) -> str:
    return (
        f"binding folded to {table.length(binding.folded_width)} and sewn with {table.length(seam)} has "
        f"{table.length(binding.folded_width - seam)} left to go out to the edge and down the back to the seam: "
        f"that takes {table.length(2 * seam)} and the thickness of the layers"
    )


def _loft(unit: Unit) -> Fraction:
    """Return what the thickness of the layers takes up: about 1/8 in or 0.3 cm (common practice)."""
    return Fraction(3, 10) if unit is Unit.CENTIMETRE else Fraction(1, 8)
