"""The cuts of a border: its strips, its corner squares, and the spacer strips inside a border of blocks."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, Border, BorderCorners, Cut, CutShape, PiecedBorder, Quantity
from evenseam.sizing.ledger import named_after
from evenseam.sizing.sized import SizedProject


def sides_id(border: Border) -> str:
    """Return the cut id of the left and right strips of a border."""
    return f"{border.id}-sides"


def top_bottom_id(border: Border) -> str:
    """Return the cut id of the top and bottom strips of a border."""
    return f"{border.id}-top-bottom"


def corner_id(border: Border) -> str:
    """Return the cut id of the squares at the corners of a border."""
    return f"{border.id}-cornerstones"


def side_spacers_id(border: Border) -> str:
    """Return the cut id of the spacer strips at the left and right."""
    return f"{border.id}-side-spacers"


def top_spacers_id(border: Border) -> str:
    """Return the cut id of the spacer strips at the top and bottom."""
    return f"{border.id}-top-bottom-spacers"


def border_cuts(border: Border, sized: SizedProject) -> list[Cut]:
    """Return the cuts of one border; those of the blocks in it are with the blocks."""
    if border.pieced is not None:
        return _of_blocks(border, border.pieced, sized)
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
        cuts.append(_corners(border, strip, "cornerstones", sized))
    return cuts


def _of_blocks(border: Border, pieced: PiecedBorder, sized: SizedProject) -> list[Cut]:
    name, known, part = named_after(border.id, "border"), dict(sized.figures), f"border:{border.id}"
    cuts: list[Cut] = []
    fabric = pieced.spacer_fabric
    if fabric is not None:
        upright, two = _is_upright(sized, fabric), _number("strips", 2)
        if f"{name}_side_spacer_width" in known:
            cuts.append(
                Cut(
                    side_spacers_id(border), f"left and right spacer strips of the {border.name}", fabric,
                    CutShape.STRIP, known[f"{name}_side_spacer_strip_width"],
                    known[f"{name}_side_spacer_strip_length"], two, part, upright, border.join, border.strips,
                )
            )  # fmt: skip
        if f"{name}_top_spacer_width" in known:
            cuts.append(
                Cut(
                    top_spacers_id(border), f"top and bottom spacer strips of the {border.name}", fabric,
                    CutShape.STRIP, known[f"{name}_top_spacer_strip_length"],
                    known[f"{name}_top_spacer_strip_width"], two, part, upright, border.join, border.strips,
                )
            )  # fmt: skip
    if pieced.corner_block is None:
        cuts.append(_corners(border, known[f"{name}_corner_size"], "corner squares", sized))
    return cuts


def _corners(border: Border, size: Quantity, called: str, sized: SizedProject) -> Cut:
    fabric = border.corner_fabric or border.fabric
    return Cut(
        corner_id(border), f"{called} of the {border.name}", fabric, CutShape.SQUARE, size, size,
        _number("corners", 4), f"border:{border.id}", _is_upright(sized, fabric),
    )  # fmt: skip


def _number(what: str, number: int) -> Quantity:
    return Quantity(
        f"number of {what}", Fraction(number), Unit.COUNT, Assumed("so many go into one project", "counted")
    )


def _is_upright(sized: SizedProject, fabric: str) -> bool:
    return sized.project.fabric(fabric).is_directional
