"""The steps of the finish and the hanging, from the sewn top to the finished project."""

from __future__ import annotations

from evenseam.pattern import (
    BATTING,
    INSULATION,
    PROJECT,
    AttachCornerPockets,
    AttachSleeve,
    Bind,
    Bound,
    CornerPockets,
    EnvelopeBack,
    Faced,
    Hanging,
    KnifeEdge,
    LayerForQuilting,
    LayerTurned,
    Loops,
    MakeBinding,
    MakeCornerPockets,
    MakeSleeve,
    Quantity,
    QuiltLayers,
    Rings,
    RoundCorners,
    Sleeve,
    SquareUp,
    Step,
    Topstitch,
    Turned,
    TurnOut,
    needs_insulation,
)
from evenseam.sizing.binding_width import binding_seam
from evenseam.sizing.cut_list import BACKING, BINDING, CORNER_POCKETS, SLEEVE
from evenseam.sizing.envelope import envelope_steps
from evenseam.sizing.faced import facing_steps, knife_edge_steps
from evenseam.sizing.loops import attach_loops, attach_rings, make_loops
from evenseam.sizing.outlined import opening_edge, outlined_block
from evenseam.sizing.sized import SizedProject

_POCKETS = "pair-of-corner-pockets"


def finish_steps(sized: SizedProject, top: str) -> list[Step]:
    """Return the steps from the whole top to the project, with what it hangs by."""
    project = sized.project
    hanging, finished = project.hanging, (sized.finished_width, sized.finished_height)
    is_last = _comes_last(sized, hanging)
    edged = "edged" if is_last else PROJECT
    steps: list[Step] = []
    if isinstance(hanging, CornerPockets):
        steps.append(Step("make-corner-pockets", MakeCornerPockets(CORNER_POCKETS), _POCKETS, 1, None))
    if isinstance(project.finish, Turned):
        steps += _turned(sized, project.finish, top, edged)
    else:
        steps += _quilted(sized, project.finish, top, edged)
    match hanging:
        case Sleeve():
            size = (sized.figure("sleeve_finished_length"), sized.figure("sleeve_finished_depth"))
            sew = MakeSleeve(SLEEVE, sized.figure("sleeve_hem"), project.seam_allowance, *size)
            attach = AttachSleeve(edged, "sleeve-tube", sized.figure("sleeve_drop"))
            steps.append(Step("make-sleeve", sew, "sleeve-tube", 1, size))
            steps.append(Step("attach-sleeve", attach, PROJECT, 1, finished))
        case Rings():
            steps.append(attach_rings(hanging, edged, PROJECT, finished))
        case Loops() if is_last:
            steps += [make_loops(sized, hanging), attach_loops(hanging, edged, PROJECT, finished)]
    return steps


def _insulation(sized: SizedProject) -> str | None:
    return INSULATION if needs_insulation(sized.project) else None


def _comes_last(sized: SizedProject, hanging: Hanging | None) -> bool:
    """Tell whether what it hangs by is sewn on by hand when the edge is finished."""
    # An edge folded in has no seam that could catch loops.
    return isinstance(hanging, (Sleeve, Rings)) or (
        isinstance(hanging, Loops) and isinstance(sized.project.finish, KnifeEdge)
    )


def _caught(sized: SizedProject, piece: str, size: tuple[Quantity, Quantity]) -> list[Step]:
    """Return the steps that lay pockets or loops on a piece, to be caught when its edge is sewn."""
    hanging = sized.project.hanging
    match hanging:
        case CornerPockets():
            operation = AttachCornerPockets(piece, _POCKETS)
            return [Step("attach-corner-pockets", operation, f"{piece}-with-pockets", 1, size)]
        case Loops() if not _comes_last(sized, hanging):
            return [make_loops(sized, hanging), attach_loops(hanging, piece, f"{piece}-with-loops", size)]
    return []


def _turned(sized: SizedProject, finish: Turned, top: str, edged: str) -> list[Step]:
    # The backing is larger than the top, so pockets and loops are lined up with the raw edges of the top.
    steps = _caught(sized, top, (sized.top_width, sized.top_height))
    top = steps[-1].makes if steps else top
    finished = (sized.finished_width, sized.finished_height)
    shaped, is_wide = outlined_block(sized.project), finish.opening.value < sized.finished_width.value
    edge = opening_edge(shaped, finish.opening) if shaped else "bottom" if is_wide else "left"
    layer = LayerTurned(top, BACKING, BATTING, sized.project.seam_allowance, finish.opening, edge, _insulation(sized))
    return [
        *steps,
        Step("layer", layer, "layered", 1, None),
        Step("turn", TurnOut("layered"), "turned", 1, finished),
        Step("topstitch", Topstitch("turned", finish.topstitch), edged, 1, finished),
    ]


def _quilted(sized: SizedProject, finish: Bound | Faced | KnifeEdge | EnvelopeBack, top: str, edged: str) -> list[Step]:
    raw = (sized.top_width, sized.top_height)
    steps = [
        Step("layer", LayerForQuilting(top, BACKING, BATTING, _insulation(sized)), "layered", 1, None),
        Step("quilt", QuiltLayers("layered"), "quilted", 1, None),
    ]
    if isinstance(finish, KnifeEdge):
        return steps + knife_edge_steps(sized, finish, "quilted", edged)
    steps.append(Step("square-up", SquareUp("quilted", *raw), "squared-up", 1, raw))
    trimmed = "squared-up"
    if isinstance(finish, Bound) and finish.corner_radius is not None:
        trimmed = "rounded"
        steps.append(Step("round-corners", RoundCorners("squared-up", finish.corner_radius), trimmed, 1, raw))
    caught = _caught(sized, trimmed, raw)
    steps += caught
    trimmed = caught[-1].makes if caught else trimmed
    match finish:
        case Bound():
            fold = MakeBinding(BINDING, sized.figure("binding_folded_width"))
            bind = Bind(trimmed, "folded-binding", binding_seam(finish.binding, sized.project.seam_allowance))
            steps.append(Step("make-binding", fold, "folded-binding", 1, None))
            steps.append(Step("bind", bind, edged, 1, (sized.finished_width, sized.finished_height)))
        case Faced():
            steps += facing_steps(sized, finish, trimmed, edged)
        case EnvelopeBack():
            steps += envelope_steps(sized, trimmed, edged)
    return steps
