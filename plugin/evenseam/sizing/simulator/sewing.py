"""From a cut list and an assembly program to a log of measurements: every step sewn as it is written."""

from __future__ import annotations

from dataclasses import fields
from typing import assert_never

from evenseam.exact import Number
from evenseam.pattern import (
    PROJECT,
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    AddSettingTriangles,
    AttachCornerPockets,
    AttachLoops,
    AttachRings,
    AttachSleeve,
    Bind,
    CloseEnvelope,
    CloseKnifeEdge,
    CornerPockets,
    CutList,
    Face,
    HemPanel,
    JoinDiagonalRows,
    JoinPieces,
    JoinRun,
    LayerForQuilting,
    LayerTurned,
    Loops,
    MakeBinding,
    MakeCornerPockets,
    MakeLoop,
    MakeSleeve,
    MakeUnits,
    PieceSection,
    Program,
    Project,
    Quantity,
    QuiltLayers,
    Rings,
    RoundCorners,
    Sleeve,
    SquareUp,
    Step,
    Topstitch,
    TrimForKnifeEdge,
    TrimPart,
    TrimTop,
    TurnOut,
)
from evenseam.problems import Outcome
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.binding import bind, make_binding, round_corners
from evenseam.sizing.simulator.blocks import BlockMaker, part_size
from evenseam.sizing.simulator.borders import add_border_strips
from evenseam.sizing.simulator.corners import add_mitred_border, add_partial_seam_border
from evenseam.sizing.simulator.edge_finishes import (
    close_envelope,
    close_knife_edge,
    face,
    hem_panel,
    trim_for_knife_edge,
)
from evenseam.sizing.simulator.finishing import (
    layer_for_quilting,
    layer_turned,
    quilt_layers,
    square_up,
    topstitch,
    turn_out,
)
from evenseam.sizing.simulator.hanging import (
    attach_corner_pockets,
    attach_sleeve,
    make_corner_pockets,
    make_sleeve,
)
from evenseam.sizing.simulator.loops import attach_loops, attach_rings, make_loop
from evenseam.sizing.simulator.on_point import add_setting_triangles, join_diagonal_rows, trim_top
from evenseam.sizing.simulator.runs import join_run
from evenseam.sizing.simulator.start import can_start
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.unit_batches import make_units
from evenseam.sizing.simulator.workpiece import Layered, Part, Spoilt, Stage, Workpiece, size_on_table
from evenseam.sizing.sized import Measurement, SewingLog


def sew(project: Project, cuts: CutList, program: Program) -> Outcome[SewingLog]:
    """Sew a program from its cut list and compare everything on the way with what the author decided.

    `project` is re-drafted: every length in its unit. Returns the measurements, exact, in that unit; with an error
    among the problems there is no log, because nothing after a wrong seam can be trusted. Nothing is raised for
    whatever cut list and program are given.
    """
    table = Table(project, project.seam_allowance.value)
    if not can_start(table):
        return Outcome(None, table.report.as_tuple())
    table.lay_out(cuts)
    maker = BlockMaker(table, {})
    measurements: list[Measurement] = []
    seen: set[str] = set()
    for step in program.steps:
        if step.id in seen:
            table.tell(codes.STEP_LISTED_TWICE, f"two steps are called {step.id}")
        seen.add(step.id)
        if step.times < 1:
            table.tell(codes.COUNT_NOT_WHOLE, f"step {step.id} is to be done {step.times} times")
            table.put(step, SPOILT)
            continue
        _check_units(table, step)
        piece = _done(table, maker, step)
        _measure(table, maker, step, piece, measurements)
        table.put(step, piece)
    finished = _check_finished(table)
    if finished is None or table.report.has_errors():
        return Outcome(None, table.report.as_tuple())
    return Outcome(SewingLog(tuple(measurements), *finished), table.report.as_tuple())


def _check_units(table: Table, step: Step) -> None:
    for field in fields(step.operation):
        figure = getattr(step.operation, field.name)
        if isinstance(figure, Quantity) and figure.unit is not table.unit:
            table.tell(
                codes.UNIT_DIFFERS, f"step {step.id} says {figure.text}, this edition is in {table.unit.symbol}", figure
            )


def _done(table: Table, maker: BlockMaker, step: Step) -> Workpiece:
    operation = step.operation
    match operation:
        case PieceSection():
            return maker.piece_section(step, operation)
        case JoinPieces():
            return maker.join_pieces(step, operation)
        case TrimPart():
            return maker.trim_part(step, operation)
        case MakeUnits():
            return make_units(table, maker, step, operation)
        case JoinRun():
            return join_run(table, maker, step, operation)
        case AddBorderStrips():
            return add_border_strips(table, maker, step, operation)
        case LayerTurned():
            return layer_turned(table, maker, step, operation)
        case TurnOut():
            return turn_out(table, step, operation)
        case Topstitch():
            return topstitch(table, step, operation)
        case LayerForQuilting():
            return layer_for_quilting(table, maker, step, operation)
        case QuiltLayers():
            return quilt_layers(table, step, operation)
        case SquareUp():
            return square_up(table, step, operation)
        case MakeBinding():
            return make_binding(table, step, operation)
        case Bind():
            return bind(table, step, operation)
        case MakeSleeve():
            return make_sleeve(table, step, operation)
        case AttachSleeve():
            return attach_sleeve(table, step, operation)
        case MakeCornerPockets():
            return make_corner_pockets(table, step, operation)
        case AttachCornerPockets():
            return attach_corner_pockets(table, step, operation)
        case AddSettingTriangles():
            return add_setting_triangles(table, maker, step, operation)
        case JoinDiagonalRows():
            return join_diagonal_rows(table, maker, step, operation)
        case TrimTop():
            return trim_top(table, step, operation)
        case AddMitredBorder():
            return add_mitred_border(table, maker, step, operation)
        case AddPartialSeamBorder():
            return add_partial_seam_border(table, maker, step, operation)
        case RoundCorners():
            return round_corners(table, step, operation)
        case Face():
            return face(table, step, operation)
        case TrimForKnifeEdge():
            return trim_for_knife_edge(table, step, operation)
        case CloseKnifeEdge():
            return close_knife_edge(table, step, operation)
        case HemPanel():
            return hem_panel(table, step, operation)
        case CloseEnvelope():
            return close_envelope(table, step, operation)
        case MakeLoop():
            return make_loop(table, step, operation)
        case AttachLoops():
            return attach_loops(table, step, operation)
        case AttachRings():
            return attach_rings(table, step, operation)
    assert_never(operation)


def _measure(table: Table, maker: BlockMaker, step: Step, piece: Workpiece, measurements: list[Measurement]) -> None:
    """Lay the ruler on a piece, note what it reads, and compare with the plan."""
    if isinstance(piece, Spoilt):
        return
    size = part_size(table, maker, piece) if isinstance(piece, Part) else size_on_table(piece)
    if step.measures is not None:
        planned = (step.measures[0].value, step.measures[1].value)
        units = {measure.unit for measure in step.measures}
        if size is None:
            table.tell(
                codes.MEASURE_DISAGREES,
                f"after step {step.id} the piece is said to measure {_text(step.measures)}, but it is no upright "
                f"rectangle",
                *step.measures,
            )
        elif planned != size or units != {table.unit}:
            table.tell(
                codes.MEASURE_DISAGREES,
                f"after step {step.id} the piece measures {table.size(*size)}, the plan says {_text(step.measures)}",
                *step.measures,
            )
    if size is not None:
        measurements.append(Measurement(step.id, step.makes, *size))


def _text(measures: tuple[Quantity, Quantity]) -> str:
    return f"{measures[0].text} × {measures[1].text}"


def _check_finished(table: Table) -> tuple[Number, Number] | None:
    """Check that the table holds one finished project and nothing else. Returns its finished size."""
    for name, lot in table.lots.items():
        if name != PROJECT and lot.count > 0:
            are = "is" if lot.count == 1 else "are"
            table.tell(
                codes.PIECE_LEFT_OVER, f"{lot.count} of {table.called(name)} {are} left over at the end",
                *lot.count_figure,
            )  # fmt: skip
    made = table.lots.get(PROJECT)
    if made is None or made.count != 1:
        found = "no finished project" if made is None or made.count < 1 else f"{made.count} projects"
        table.tell(codes.PROJECT_UNFINISHED, f"at the end there is {found} on the table; there should be one")
        return None
    piece = made.piece
    if isinstance(piece, Spoilt):
        return None
    if not isinstance(piece, Layered) or piece.stage is not Stage.FINISHED:
        stage = f"only {piece.stage.value}" if isinstance(piece, Layered) else "not even layered"
        table.tell(codes.PROJECT_UNFINISHED, f"the last step leaves a project that is {stage}")
        return None
    hanging = table.project.hanging
    hung_by = (piece.has_sleeve, piece.has_pockets, piece.has_loops, piece.has_rings)
    if hung_by != tuple(isinstance(hanging, kind) for kind in (Sleeve, CornerPockets, Loops, Rings)):
        table.tell(
            codes.HANGING_DIFFERS, "the finished project is not hung as the pattern decides",
            place=hanging.place if hanging else None,
        )  # fmt: skip
    return piece.width, piece.height
