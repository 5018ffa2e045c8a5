"""Runs: blocks and strips sewn edge to edge into rows, and rows into the centre of the top."""

from __future__ import annotations

from evenseam.exact import Number
from evenseam.pattern import JoinRun, Run, Setting, Step
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.arranged import check_sashing
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.patches import RECTANGLES
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import CutPiece, Flat, Spoilt, Workpiece, run_of, turned


def join_run(table: Table, maker: BlockMaker, step: Step, operation: JoinRun) -> Workpiece:
    """Sew parts in order, each turned as the step says; the edges that meet must be equal."""
    pieces = table.take(step, operation.parts)
    if len(operation.parts) < 2:
        table.tell(codes.WRONG_WORKPIECE, f"step {step.id} has fewer than two parts, so there is no seam to sew")
        return SPOILT
    turns = operation.quarter_turns or (0,) * len(operation.parts)
    if len(turns) != len(operation.parts):
        table.tell(
            codes.WRONG_WORKPIECE, f"step {step.id} joins {len(operation.parts)} parts and says of {len(turns)} how "
            f"they are turned",
        )  # fmt: skip
        return SPOILT
    laid: dict[tuple[str, int], Flat] = {}
    for name, piece, turn in zip(operation.parts, pieces, turns, strict=True):
        if (name, turn) not in laid:
            flat = as_flat(maker, piece)
            if flat is None or (flat.parts and turn % 4):
                return table.wrong_piece(step, name, piece, "a block, a strip, or a row of them that is not turned")
            laid[name, turn] = turned(flat, turn) if turn % 4 else flat
    told = table.told
    for flat in laid.values():
        check_turned_print(table, flat)
    # Strips in rows of unequal blocks are compared with the arrangement when all rows are there.
    is_sashed = table.project.arrangement.setting is not Setting.UNEQUAL_ROWS
    if is_sashed and any(flat.blocks for flat in laid.values()):
        for flat in laid.values():
            if flat.cut is not None and not _may_be_corner(table, flat):
                check_sashing(table, flat.cut, (flat.width if operation.run is Run.ACROSS else flat.height,))
    if table.told > told or _is_too_narrow(table, laid) or not _edges_agree(table, step, operation, laid):
        return SPOILT
    parts = tuple(laid[name, turn] for name, turn in zip(operation.parts, turns, strict=True))
    return run_of(operation.run, parts, table.seam)


def as_flat(maker: BlockMaker, piece: Workpiece) -> Flat | None:
    """Return a workpiece as something that can be joined edge to edge; None when it cannot."""
    if isinstance(piece, Flat):
        return piece
    if isinstance(piece, CutPiece) and piece.cut.shape in RECTANGLES:
        cut = piece.cut
        return maker.whole_block(piece) or Flat(cut.width.value, cut.height.value, cut=cut)
    return None


def _may_be_corner(table: Table, flat: Flat) -> bool:
    """Tell whether a strip may be the corner square of a border of blocks; it is judged with the border then."""
    sides = {border.width.value + 2 * table.seam for border in table.project.borders if border.pieced is not None}
    return flat.width == flat.height and flat.width in sides


def _is_too_narrow(table: Table, laid: dict[tuple[str, int], Flat]) -> bool:
    for (name, _), flat in laid.items():
        if flat.width <= 2 * table.seam or flat.height <= 2 * table.seam:
            table.tell(
                codes.EDGES_DIFFER,
                f"{table.called(name)} is {table.size(flat.width, flat.height)}; two seam allowances of "
                f"{table.length(table.seam)} leave nothing of it",
                table.project.seam_allowance,
            )
            return True
    return False


def _edges_agree(table: Table, step: Step, operation: JoinRun, laid: dict[tuple[str, int], Flat]) -> bool:
    def edge(flat: Flat) -> Number:
        return flat.height if operation.run is Run.ACROSS else flat.width

    (first, _), there = next(iter(laid.items()))
    for (name, _), here in laid.items():
        if edge(here) != edge(there):
            cuts = [flat.cut for flat in (here, there) if flat.cut is not None]
            table.tell(
                codes.EDGES_DIFFER,
                f"step {step.id}: the edge of {table.called(name)} is {table.length(edge(here))}, the edge of "
                f"{table.called(first)} it is sewn to is {table.length(edge(there))}",
                *(cut.height if operation.run is Run.ACROSS else cut.width for cut in cuts),
            )
            return False
    return True


def check_turned_print(table: Table, flat: Flat) -> None:
    """Note a strip whose print stood upright until the strip was turned."""
    if flat.cut is not None and flat.turns and table.is_directional(flat.cut.material):
        table.blame(
            flat.cut, codes.PRINT_LIES_SIDEWAYS,
            f"“{flat.cut.label}” is of {table.fabric_name(flat.cut.material)}, whose print has an up, and is turned",
        )  # fmt: skip


def spoilt_among(pieces: list[Workpiece]) -> bool:
    """Tell whether a problem has been noted about one of these already."""
    return any(isinstance(piece, Spoilt) for piece in pieces)
