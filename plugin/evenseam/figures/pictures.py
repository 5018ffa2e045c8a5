"""Pictures by name: which there are for a sheet, and how each is drawn."""

from __future__ import annotations

from collections.abc import Mapping

from evenseam.figures.cloth_look import looks_of
from evenseam.figures.drawing import Drawing, Pen
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.binding import draw_bind, draw_make_binding
from evenseam.figures.scenes.block_pictures import draw_block, draw_key
from evenseam.figures.scenes.borders import draw_border
from evenseam.figures.scenes.cushion import draw_close_envelope, draw_hem_panel
from evenseam.figures.scenes.cutting import draw_cutting
from evenseam.figures.scenes.facing import draw_close_knife_edge, draw_face, draw_trim_for_knife_edge
from evenseam.figures.scenes.finished import draw_finished
from evenseam.figures.scenes.folded_cloth import draw_folded, folded_strips
from evenseam.figures.scenes.hanging import (
    draw_attach_pockets,
    draw_attach_sleeve,
    draw_make_pockets,
    draw_make_sleeve,
)
from evenseam.figures.scenes.joins import draw_join
from evenseam.figures.scenes.loops import draw_attach_loops, draw_attach_rings, draw_make_loop
from evenseam.figures.scenes.mitred import draw_mitred
from evenseam.figures.scenes.on_point import draw_diagonal_row, draw_diagonal_rows, draw_trim_top
from evenseam.figures.scenes.partial_seam import draw_partial_seam
from evenseam.figures.scenes.quilting import draw_layers, draw_quilting, draw_square_up
from evenseam.figures.scenes.rounding import draw_round_corners
from evenseam.figures.scenes.runs import draw_run
from evenseam.figures.scenes.sections import draw_section
from evenseam.figures.scenes.trimming import draw_trim
from evenseam.figures.scenes.turning import draw_layer_turned, draw_topstitch, draw_turn_out
from evenseam.figures.scenes.units import draw_units
from evenseam.figures.workbench import Bench, walk
from evenseam.pattern import (
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
    Face,
    HemPanel,
    JoinDiagonalRows,
    JoinPieces,
    JoinRun,
    LayerForQuilting,
    LayerTurned,
    MakeBinding,
    MakeCornerPockets,
    MakeLoop,
    MakeSleeve,
    MakeUnits,
    PieceSection,
    QuiltLayers,
    RoundCorners,
    SquareUp,
    Step,
    Topstitch,
    TrimForKnifeEdge,
    TrimPart,
    TrimTop,
    TurnOut,
)
from evenseam.sheet import PatternSheet


def picture_names(sheet: PatternSheet) -> tuple[str, ...]:
    """Return the names of all pictures of a sheet, in the order a page shows them."""
    blocks = [pieced.block for pieced in sheet.blocks]
    return (
        "finished",
        *(f"block-{block}" for block in blocks),
        *(f"pieces-{block}" for block in blocks),
        *(("folded-cloth",) if folded_strips(sheet) else ()),
        *(f"cutting-{material.material}" for material in sheet.materials if material.plan is not None),
        *(f"step-{step.id}" for step in sheet.program.steps),
    )


def draw(sheet: PatternSheet, name: str) -> Drawing:
    """Return one picture of a sheet. Raises KeyError for a name that `picture_names` does not give."""
    looks = looks_of(sheet.project.fabrics)
    scene = Scene(sheet, looks, _benches_of(sheet), Pen(looks))
    kind, _, rest = name.partition("-")
    if name == "finished":
        draw_finished(scene)
    elif kind == "block":
        draw_block(scene, sheet.project.block(rest))
    elif kind == "pieces":
        draw_key(scene, sheet.project.block(rest))
    elif kind == "cutting":
        plan = sheet.material(rest).plan
        if plan is None:
            raise KeyError(name)
        draw_cutting(scene, plan)
    elif name == "folded-cloth":
        found = folded_strips(sheet)
        if found is None:
            raise KeyError(name)
        draw_folded(scene, *found)
    elif kind == "step":
        _draw_step(scene, sheet.program.step(rest))
    else:
        raise KeyError(name)
    return scene.pen.drawing()


_last_walk: list[tuple[PatternSheet, Mapping[str, Bench]]] = []


def _benches_of(sheet: PatternSheet) -> Mapping[str, Bench]:
    """Walk the program of a sheet; the walk is kept, for a sheet has many pictures and they are drawn one by one."""
    kept = _last_walk[0] if _last_walk else None
    # A sheet on cloth of another width is sewn by the same program.
    if kept is None or kept[0].program is not sheet.program:
        kept = (sheet, walk(sheet))
        _last_walk[:] = [kept]
    return kept[1]


def _draw_step(scene: Scene, step: Step) -> None:
    match step.operation:
        case PieceSection() as operation:
            draw_section(scene, step, operation)
        case JoinPieces() as operation:
            draw_join(scene, step, operation)
        case TrimPart():
            draw_trim(scene, step)
        case MakeUnits() as operation:
            draw_units(scene, step, operation)
        case JoinRun() as operation:
            draw_run(scene, step, operation)
        case AddBorderStrips() as operation:
            draw_border(scene, step, operation)
        case AddMitredBorder() as operation:
            draw_mitred(scene, step, operation)
        case AddPartialSeamBorder() as operation:
            draw_partial_seam(scene, step, operation)
        case AddSettingTriangles() as operation:
            draw_diagonal_row(scene, step, operation)
        case JoinDiagonalRows() as operation:
            draw_diagonal_rows(scene, step, operation)
        case TrimTop() as operation:
            draw_trim_top(scene, step, operation)
        case LayerTurned() as operation:
            draw_layer_turned(scene, step, operation)
        case TurnOut():
            draw_turn_out(scene, step)
        case Topstitch() as operation:
            draw_topstitch(scene, step, operation)
        case LayerForQuilting() as operation:
            draw_layers(scene, step, operation)
        case QuiltLayers():
            draw_quilting(scene, step)
        case SquareUp() as operation:
            draw_square_up(scene, step, operation)
        case MakeBinding() as operation:
            draw_make_binding(scene, step, operation)
        case Bind() as operation:
            draw_bind(scene, step, operation)
        case MakeSleeve() as operation:
            draw_make_sleeve(scene, step, operation)
        case AttachSleeve() as operation:
            draw_attach_sleeve(scene, step, operation)
        case MakeCornerPockets():
            draw_make_pockets(scene, step)
        case AttachCornerPockets() as operation:
            draw_attach_pockets(scene, step, operation)
        case RoundCorners() as operation:
            draw_round_corners(scene, step, operation)
        case Face() as operation:
            draw_face(scene, step, operation)
        case TrimForKnifeEdge() as operation:
            draw_trim_for_knife_edge(scene, step, operation)
        case CloseKnifeEdge() as operation:
            draw_close_knife_edge(scene, step, operation)
        case HemPanel() as operation:
            draw_hem_panel(scene, step, operation)
        case CloseEnvelope() as operation:
            draw_close_envelope(scene, step, operation)
        case MakeLoop() as operation:
            draw_make_loop(scene, step, operation)
        case AttachLoops() as operation:
            draw_attach_loops(scene, step, operation)
        case AttachRings() as operation:
            draw_attach_rings(scene, step, operation)
