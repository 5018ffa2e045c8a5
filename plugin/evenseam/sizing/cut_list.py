"""A sized project becomes its cut list: every piece of cloth and batting, in the order of the making."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import (
    BATTING,
    Assumed,
    Binding,
    Border,
    BorderCorners,
    Bound,
    CornerPockets,
    Cut,
    CutList,
    CutShape,
    Grain,
    Quantity,
    Sashing,
    Sleeve,
    StripJoin,
)
from evenseam.sizing.block_cuts import block_cuts
from evenseam.sizing.ledger import named_after
from evenseam.sizing.sized import SizedProject

SASH_UPRIGHT = "sashing-vertical"
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
    if project.arrangement.sashing:
        cuts += _sashing(project.arrangement.sashing, sized)
    for border in project.borders:
        cuts += _border(border, sized)
    cuts += _layers(sized)
    if isinstance(project.finish, Bound):
        cuts.append(_binding(project.finish.binding, sized))
    match project.hanging:
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


def sides_id(border: Border) -> str:
    """Return the cut id of the left and right strips of a border."""
    return f"{border.id}-sides"


def top_bottom_id(border: Border) -> str:
    """Return the cut id of the top and bottom strips of a border."""
    return f"{border.id}-top-bottom"


def corner_id(border: Border) -> str:
    """Return the cut id of the cornerstones of a border."""
    return f"{border.id}-cornerstones"


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


def _border(border: Border, sized: SizedProject) -> list[Cut]:
    name, part = named_after(border.id, "border"), f"border:{border.id}"
    strip, upright = sized.figure(f"{name}_strip_width"), _is_upright(sized, border.fabric)
    side, top = sized.figure(f"{name}_side_strip_length"), sized.figure(f"{name}_top_strip_length")
    two = _number("strips", 2)
    cuts = [
        Cut(
            sides_id(border), f"side strips of the {border.name}", border.fabric, CutShape.STRIP, strip, side, two,
            part, upright, border.join, border.strips,
        ),
        Cut(
            top_bottom_id(border), f"top and bottom strips of the {border.name}", border.fabric, CutShape.STRIP, top,
            strip, two, part, upright, border.join, border.strips,
        ),
    ]  # fmt: skip
    if border.corners is BorderCorners.CORNERSTONES:
        fabric = border.corner_fabric or border.fabric
        cuts.append(
            Cut(
                corner_id(border), f"cornerstones of the {border.name}", fabric, CutShape.SQUARE, strip, strip,
                _number("corners", 4), part, _is_upright(sized, fabric),
            )
        )  # fmt: skip
    return cuts


def _layers(sized: SizedProject) -> list[Cut]:
    finish = sized.project.finish
    seam = finish.backing_seam if isinstance(finish, Bound) else None
    return [
        Cut(
            BACKING, "backing", finish.backing_fabric, CutShape.RECTANGLE, sized.figure("backing_width"),
            sized.figure("backing_height"), _number("backings", 1), "backing",
            _is_upright(sized, finish.backing_fabric), StripJoin.STRAIGHT, join_seam=seam,
        ),
        Cut(
            BATTING, "batting", BATTING, CutShape.RECTANGLE, sized.figure("batting_width"),
            sized.figure("batting_height"), _number("layers of batting", 1), "batting",
        ),
    ]  # fmt: skip


def _binding(binding: Binding, sized: SizedProject) -> Cut:
    shape = CutShape.BIAS_BINDING if binding.grain is Grain.BIAS else CutShape.BINDING
    return Cut(
        BINDING, "binding", binding.fabric, shape, sized.figure("binding_strip_width"),
        sized.figure("binding_length"), _number("bindings", 1), "binding", join=binding.join,
    )  # fmt: skip
