"""A sized project becomes its cut list: every piece of cloth and batting, in the order of the making."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import (
    BATTING,
    INSULATION,
    Assumed,
    Binding,
    Bound,
    CornerPockets,
    Cut,
    CutList,
    CutShape,
    EnvelopeBack,
    Faced,
    Grain,
    Loops,
    Quantity,
    Sashing,
    Setting,
    Sleeve,
    StripJoin,
    Turned,
    needs_insulation,
)
from evenseam.sizing.block_cuts import block_cuts
from evenseam.sizing.border_cuts import border_cuts
from evenseam.sizing.envelope import panel_cuts
from evenseam.sizing.faced import facing_cuts
from evenseam.sizing.loops import loop_cuts
from evenseam.sizing.on_point_cuts import on_point_cuts
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.unequal_cuts import SASH_UPRIGHT, unequal_cuts

SASH_LYING = "sashing-horizontal"
CORNERSTONE = "sashing-cornerstone"
BACKING = "backing"
BINDING = "binding"
SLEEVE = "sleeve"
CORNER_POCKETS = "corner-pockets"


def cut_list(sized: SizedProject) -> CutList:
    """Return every cut of the project; sizes and counts are its figures, so that each can say why.

    Cut ids are stable: they follow the ids of blocks and borders and the labels of pieces.
    """
    project = sized.project
    cuts = list(block_cuts(sized))
    if project.arrangement.setting is Setting.ON_POINT:
        cuts += on_point_cuts(sized)
    elif project.arrangement.setting is Setting.UNEQUAL_ROWS:
        cuts += unequal_cuts(sized)
    elif project.arrangement.sashing:
        cuts += _sashing(project.arrangement.sashing, sized)
    for border in project.borders:
        cuts += border_cuts(border, sized)
    cuts += _layers(sized)
    match project.finish:
        case Bound(binding=binding):
            cuts.append(_binding(binding, sized))
        case Faced() as finish:
            cuts += facing_cuts(sized, finish)
        case EnvelopeBack() as finish:
            cuts += panel_cuts(sized, finish)
    match project.hanging:
        case Loops() as loops:
            cuts += loop_cuts(sized, loops)
        case Sleeve(fabric=fabric):
            cuts.append(
                Cut(
                    SLEEVE, "hanging sleeve", fabric, CutShape.RECTANGLE, sized.figure("sleeve_cut_length"),
                    sized.figure("sleeve_cut_width"), _number("hanging sleeves", 1), "hanging", join=StripJoin.STRAIGHT,
                )
            )  # fmt: skip
        case CornerPockets(fabric=fabric, square=square):
            cuts.append(
                Cut(
                    CORNER_POCKETS, "squares for the corner pockets", fabric, CutShape.SQUARE, square, square,
                    _number("corner pockets", 2), "hanging",
                )
            )  # fmt: skip
    return CutList(tuple(cuts))


def _number(what: str, number: int) -> Quantity:
    return Quantity(
        f"number of {what}", Fraction(number), Unit.COUNT, Assumed("so many go into one project", "counted")
    )


def _is_upright(sized: SizedProject, fabric: str) -> bool:
    return sized.project.fabric(fabric).is_directional


def _sashing(sashing: Sashing, sized: SizedProject) -> list[Cut]:
    known = dict(sized.figures)
    cuts = []
    upright = _is_upright(sized, sashing.fabric)
    # A diagonal join shows less, but it would set a directional print askew.
    join = StripJoin.STRAIGHT if upright else StripJoin.DIAGONAL
    if "vertical_sash_count" in known:
        cuts.append(
            Cut(
                SASH_UPRIGHT, "vertical sashing strips", sashing.fabric, CutShape.STRIP, known["sashing_strip_width"],
                known["vertical_sash_length"], known["vertical_sash_count"], "sashing", upright,
            )
        )  # fmt: skip
    if "horizontal_sash_count" in known:
        length, number = known["horizontal_sash_length"], known["horizontal_sash_count"]
        cuts.append(
            Cut(
                SASH_LYING, "horizontal sashing strips", sashing.fabric, CutShape.STRIP, length,
                known["sashing_strip_width"], number, "sashing", upright,
            )
        )  # fmt: skip
    if "sashing_strip_count" in known:
        cuts.append(
            Cut(
                SASH_LYING, "long horizontal sashing strips", sashing.fabric, CutShape.STRIP,
                known["sashing_strip_length"], known["sashing_strip_width"], known["sashing_strip_count"], "sashing",
                upright, join,
            )
        )  # fmt: skip
    if "cornerstone_count" in known and sashing.cornerstone_fabric is not None:
        fabric, size = sashing.cornerstone_fabric, known["cornerstone_size"]
        cuts.append(
            Cut(
                CORNERSTONE, "cornerstones of the sashing", fabric, CutShape.SQUARE, size, size,
                known["cornerstone_count"], "sashing", _is_upright(sized, fabric),
            )
        )  # fmt: skip
    return cuts


def _layers(sized: SizedProject) -> list[Cut]:
    finish = sized.project.finish
    seam = None if isinstance(finish, Turned) else finish.backing_seam
    # Behind the front of a cushion it is a lining, which nobody sees.
    label = "lining" if isinstance(finish, EnvelopeBack) else "backing"
    return [
        Cut(
            BACKING, label, finish.backing_fabric, CutShape.RECTANGLE, sized.figure("backing_width"),
            sized.figure("backing_height"), _number("backings", 1), "backing",
            _is_upright(sized, finish.backing_fabric), StripJoin.STRAIGHT, join_seam=seam,
        ),
        Cut(
            BATTING, "batting", BATTING, CutShape.RECTANGLE, sized.figure("batting_width"),
            sized.figure("batting_height"), _number("layers of batting", 1), "batting",
        ),
        *_insulation(sized),
    ]  # fmt: skip


def _insulation(sized: SizedProject) -> list[Cut]:
    """Return the layer that keeps heat from the hand, as large as the batting it lies on."""
    if not needs_insulation(sized.project):
        return []
    return [
        Cut(
            INSULATION, "heat-resistant batting", INSULATION, CutShape.RECTANGLE, sized.figure("batting_width"),
            sized.figure("batting_height"), _number("layers of heat-resistant batting", 1), "batting",
        )
    ]  # fmt: skip


def _binding(binding: Binding, sized: SizedProject) -> Cut:
    shape = CutShape.BIAS_BINDING if binding.grain is Grain.BIAS else CutShape.BINDING
    return Cut(
        BINDING, "binding", binding.fabric, shape, sized.figure("binding_strip_width"),
        sized.figure("binding_length"), _number("bindings", 1), "binding", join=binding.join,
    )  # fmt: skip
