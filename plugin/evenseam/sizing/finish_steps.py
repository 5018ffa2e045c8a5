"""The steps of the finish and the hanging, from the sewn top to the finished project."""

from __future__ import annotations

from evenseam.pattern import (
    BATTING,
    PROJECT,
    AttachCornerPockets,
    AttachSleeve,
    Bind,
    Bound,
    CornerPockets,
    LayerForQuilting,
    LayerTurned,
    MakeBinding,
    MakeCornerPockets,
    MakeSleeve,
    Quantity,
    QuiltLayers,
    Sleeve,
    SquareUp,
    Step,
    Topstitch,
    Turned,
    TurnOut,
)
from evenseam.sizing.cut_list import BACKING, BINDING, CORNER_POCKETS, SLEEVE
from evenseam.sizing.sized import SizedProject

_POCKETS = "pair-of-corner-pockets"


def finish_steps(sized: SizedProject, top: str) -> list[Step]:
    """Return the steps from the whole top to the project, sleeve or corner pockets included."""
    hanging, finished = sized.project.hanging, (sized.finished_width, sized.finished_height)
    has_sleeve = isinstance(hanging, Sleeve)
    edged = "edged" if has_sleeve else PROJECT
    steps: list[Step] = []
    if isinstance(hanging, CornerPockets):
        steps.append(Step("make-corner-pockets", MakeCornerPockets(CORNER_POCKETS), _POCKETS, 1, None))
    match sized.project.finish:
        case Turned() as finish:
            steps += _turned(sized, finish, top, edged)
        case Bound():
            steps += _bound(sized, top, edged)
    if has_sleeve:
        size = (sized.figure("sleeve_finished_length"), sized.figure("sleeve_finished_depth"))
        sew = MakeSleeve(SLEEVE, sized.figure("sleeve_hem"), sized.project.seam_allowance, *size)
        attach = AttachSleeve(edged, "sleeve-tube", sized.figure("sleeve_drop"))
        steps.append(Step("make-sleeve", sew, "sleeve-tube", 1, size))
        steps.append(Step("attach-sleeve", attach, PROJECT, 1, finished))
    return steps


def _pockets(sized: SizedProject, project: str, size: tuple[Quantity, Quantity]) -> list[Step]:
    if not isinstance(sized.project.hanging, CornerPockets):
        return []
    operation = AttachCornerPockets(project, _POCKETS)
    return [Step("attach-corner-pockets", operation, f"{project}-with-pockets", 1, size)]


def _turned(sized: SizedProject, finish: Turned, top: str, edged: str) -> list[Step]:
    # The backing is larger than the top, so the pockets are lined up with the raw corners of the top.
    steps = _pockets(sized, top, (sized.top_width, sized.top_height))
    top = steps[-1].makes if steps else top
    finished = (sized.finished_width, sized.finished_height)
    is_wide = finish.opening.value < sized.finished_width.value
    layer = LayerTurned(
        top, BACKING, BATTING, sized.project.seam_allowance, finish.opening, "bottom" if is_wide else "left"
    )
    return [
        *steps,
        Step("layer", layer, "layered", 1, None),
        Step("turn", TurnOut("layered"), "turned", 1, finished),
        Step("topstitch", Topstitch("turned", finish.topstitch), edged, 1, finished),
    ]


def _bound(sized: SizedProject, top: str, edged: str) -> list[Step]:
    size = (sized.finished_width, sized.finished_height)
    pockets = _pockets(sized, "squared-up", size)
    return [
        Step("layer", LayerForQuilting(top, BACKING, BATTING), "layered", 1, None),
        Step("quilt", QuiltLayers("layered"), "quilted", 1, None),
        Step("square-up", SquareUp("quilted", *size), "squared-up", 1, size),
        *pockets,
        Step("make-binding", MakeBinding(BINDING, sized.figure("binding_folded_width")), "folded-binding", 1, None),
        Step(
            "bind",
            Bind(pockets[-1].makes if pockets else "squared-up", "folded-binding", sized.project.seam_allowance),
            edged,
            1,
            size,
        ),
    ]
