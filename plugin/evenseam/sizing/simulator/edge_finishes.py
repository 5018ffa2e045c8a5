"""Edges without binding: faced, folded in to a knife edge, or closed with an envelope back."""

from __future__ import annotations

from dataclasses import replace

from evenseam.exact import Number
from evenseam.pattern import (
    CloseEnvelope,
    CloseKnifeEdge,
    EnvelopeBack,
    Face,
    Faced,
    HemPanel,
    KnifeEdge,
    Step,
    TrimForKnifeEdge,
)
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.finishing import wrong_finish
from evenseam.sizing.simulator.patches import RECTANGLES, is_cut_for
from evenseam.sizing.simulator.plane import least
from evenseam.sizing.simulator.runs import spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import CutPiece, HemmedPanel, Layered, Stage, Workpiece


def face(table: Table, step: Step, operation: Face) -> Workpiece:
    """Sew facing strips to all edges and turn them to the back: the edges come to lie on the seam lines."""
    names = (operation.sides, operation.top_bottom)
    pieces = table.take(step, (operation.trimmed, *names, *names))
    finish = table.project.finish
    if not isinstance(finish, Faced):
        return wrong_finish(table, step)
    if spoilt_among(pieces):
        return SPOILT
    piece = pieces[0]
    if not isinstance(piece, Layered) or piece.stage is not Stage.TRIMMED:
        return table.wrong_piece(step, operation.trimmed, piece, "a quilted piece squared up")
    told = table.told
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    table.check_figure(step, "the fold along the facing", operation.fold, finish.facing_fold)
    sides, ends = pieces[1], pieces[2]
    for name, strip, is_side in ((names[0], sides, True), (names[1], ends, False)):
        if not isinstance(strip, CutPiece) or strip.cut.shape not in RECTANGLES:
            return table.wrong_piece(step, name, strip, "strips of cloth")
        cut = strip.cut
        table.check_fabric(cut, finish.facing_fabric, "the facing")
        across, along = (cut.width, cut.height) if is_side else (cut.height, cut.width)
        edge = piece.height if is_side else piece.width
        if across.value != finish.facing_width.value or not is_cut_for(along.value, edge, table.unit.ruler_mark):
            table.blame(
                cut, codes.FACING_SIZE_DIFFERS,
                f"“{cut.label}” is {along.text} long and {across.text} wide; the edge it is sewn to is "
                f"{table.length(edge)}, and the facing is decided as {finish.facing_width.text} wide",
                finish.facing_width, across, place=finish.place,
            )  # fmt: skip
    if finish.facing_width.value <= table.seam + finish.facing_fold.value:
        table.tell(
            codes.FACING_SIZE_DIFFERS,
            f"a facing of {finish.facing_width.text} is used up by its seam and a fold of {finish.facing_fold.text}",
            finish.facing_width, place=finish.place, hint="cut the facing strips wider",
        )  # fmt: skip
    return SPOILT if table.told > told else _smaller(table, piece)


def trim_for_knife_edge(table: Table, step: Step, operation: TrimForKnifeEdge) -> Workpiece:
    """Trim the backing to the top, which is what a ruler reads, and the batting to the seam lines."""
    piece = table.take(step, (operation.quilted,))[0]
    finish = table.project.finish
    if not isinstance(finish, KnifeEdge):
        return wrong_finish(table, step)
    if not isinstance(piece, Layered) or piece.stage is not Stage.QUILTED:
        return table.wrong_piece(step, operation.quilted, piece, "a quilted piece")
    told = table.told
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    stop = finish.quilting_stop
    if stop.value < 2 * table.seam or 2 * stop.value >= least([piece.top_width, piece.top_height]):
        table.tell(
            codes.QUILTING_TOO_NEAR,
            f"quilting that stops {stop.text} inside the raw edge "
            + (
                f"is in the way when {table.length(table.seam)} is folded in on either side of the fold"
                if stop.value < 2 * table.seam
                else f"leaves nothing of a piece of {table.size(piece.top_width, piece.top_height)}"
            ),
            stop, place=finish.place, hint="choose another distance for the quilting to stop at",
        )  # fmt: skip
    if table.told > told:
        return SPOILT
    return replace(piece, stage=Stage.FOLDABLE, width=piece.top_width, height=piece.top_height)


def close_knife_edge(table: Table, step: Step, operation: CloseKnifeEdge) -> Workpiece:
    """Fold both edges in over the batting and stitch through what is folded in."""
    piece = table.take(step, (operation.trimmed,))[0]
    finish = table.project.finish
    if not isinstance(finish, KnifeEdge):
        return wrong_finish(table, step)
    if not isinstance(piece, Layered) or piece.stage is not Stage.FOLDABLE:
        return table.wrong_piece(step, operation.trimmed, piece, "a piece trimmed for a knife edge")
    told = table.told
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    table.check_figure(step, "the stitching", operation.stitch, finish.stitch)
    if not 0 < operation.stitch.value < table.seam:
        table.tell(
            codes.TOPSTITCH_TOO_FAR,
            f"stitching {operation.stitch.text} from the fold does not catch the {table.length(table.seam)} folded in",
            finish.stitch, place=finish.place,
        )  # fmt: skip
    return SPOILT if table.told > told else _smaller(table, piece)


def hem_panel(table: Table, step: Step, operation: HemPanel) -> Workpiece:
    """Fold one long edge under twice: a hem is lost twice."""
    piece = table.take(step, (operation.panel,))[0]
    finish = table.project.finish
    if not isinstance(finish, EnvelopeBack):
        return wrong_finish(table, step)
    if not isinstance(piece, CutPiece) or piece.cut.shape not in RECTANGLES:
        return table.wrong_piece(step, operation.panel, piece, "a panel of cloth")
    told = table.told
    cut = piece.cut
    table.check_fabric(cut, finish.panel_fabric, "the back panels")
    table.check_print(cut)
    table.check_figure(step, "the hem", operation.hem, finish.hem)
    height = cut.height.value - 2 * operation.hem.value
    if not height > 0:
        table.blame(
            cut, codes.PANEL_SIZE_DIFFERS, f"two folds of {operation.hem.text} leave nothing of “{cut.label}”",
            finish.hem, place=finish.place,
        )  # fmt: skip
    return SPOILT if table.told > told else HemmedPanel(cut, cut.width.value, height)


def close_envelope(table: Table, step: Step, operation: CloseEnvelope) -> Workpiece:
    """Sew two panels to the front all round: overlapping, they are as high as the front."""
    pieces = table.take(step, (operation.front, operation.panel, operation.panel))
    finish = table.project.finish
    if not isinstance(finish, EnvelopeBack):
        return wrong_finish(table, step)
    if spoilt_among(pieces):
        return SPOILT
    front, panel = pieces[0], pieces[1]
    if not isinstance(front, Layered) or front.stage is not Stage.TRIMMED:
        return table.wrong_piece(step, operation.front, front, "a quilted front squared up")
    if not isinstance(panel, HemmedPanel):
        return table.wrong_piece(step, operation.panel, panel, "hemmed back panels")
    told = table.told
    table.check_figure(step, "the seam allowance", operation.seam, table.project.seam_allowance)
    table.check_figure(step, "the overlap", operation.overlap, finish.overlap)
    hems = 2 * finish.hem.value
    high: Number = (front.height + finish.overlap.value) / 2
    mark = table.unit.ruler_mark
    if not (is_cut_for(panel.width, front.width, mark) and is_cut_for(panel.height + hems, high + hems, mark)):
        table.blame(
            panel.cut, codes.PANEL_SIZE_DIFFERS,
            f"a hemmed back panel is {table.size(panel.width, panel.height)}; two of them with an overlap of "
            f"{finish.overlap.text} cover a front of {table.size(front.width, front.height)} when each is "
            f"{table.size(front.width, high)}",
            finish.overlap, panel.cut.height, place=finish.place,
        )  # fmt: skip
    if not 0 < finish.overlap.value < front.height - 2 * table.seam:
        table.tell(
            codes.PANEL_SIZE_DIFFERS,
            f"an overlap of {finish.overlap.text} is not possible on a front of {table.length(front.height)}",
            finish.overlap, place=finish.place,
        )  # fmt: skip
    return SPOILT if table.told > told else _smaller(table, front)


def _smaller(table: Table, piece: Layered) -> Layered:
    """Return a piece whose edges are its seam lines now."""
    width, height = piece.top_width - 2 * table.seam, piece.top_height - 2 * table.seam
    return replace(piece, stage=Stage.FINISHED, width=width, height=height)
