"""Bound rows of blocks that are one unit each, by the drawing of the unit."""

from __future__ import annotations

from dataclasses import replace

from evenseam.exact import Unit
from evenseam.pattern import Block, BlockPiece, Method, Project
from evenseam.sizing import UnitMethod, UnitMethodKind, unit_methods

from support.samples import BOUND, MUG_RUG, grid, length, polygon
from support.tops import sized

HALF_SQUARES = ("sea 0,0 2,0 0,2", "fog 2,0 2,2 0,2")
QUARTER_SQUARES = ("sea 0,0 2,0 1,1", "fog 2,0 2,2 1,1", "sea 2,2 0,2 1,1", "fog 0,2 0,0 1,1")
THREE_FABRICS = ("sea 0,0 2,0 1,1", "fog 2,0 2,2 1,1", "lamp 2,2 0,2 1,1", "fog 0,2 0,0 1,1")
GOOSE = ("lamp 0,2 2,0 4,2", "fog 0,0 2,0 0,2", "fog 2,0 4,0 4,2")
SQUARE_IN_SQUARE = (
    "lamp 2,0 4,2 2,4 0,2", "sea 0,0 2,0 0,2", "sea 2,0 4,0 4,2", "sea 4,2 4,4 2,4", "sea 2,4 0,4 0,2",
)  # fmt: skip


def project(
    pieces: tuple[str, ...], width: str, height: str, units: int = 1, unit: Unit = Unit.INCH, seam: str = "1/4"
) -> Project:
    """Return a bound row of blocks that are one unit each, drafted in `unit`."""
    drawn = tuple(
        BlockPiece(f"p{number}", text.split(" ", 1)[0], polygon(text.split(" ", 1)[1]))
        for number, text in enumerate(pieces, start=1)
    )
    corners = [corner for piece in drawn for corner in piece.outline.corners]
    wide, high = max(corner.x for corner in corners), max(corner.y for corner in corners)
    block = Block(
        "unit", "Unit", length("unit width", width, unit), length("unit height", height, unit), wide, high,
        polygon(f"0,0 {wide},0 {wide},{high} 0,{high}"), drawn, Method.ROTARY,
    )  # fmt: skip
    return replace(
        MUG_RUG, unit=unit, seam_allowance=length("seam allowance", seam, unit), blocks=(block,), borders=(),
        arrangement=grid(1, units, "unit"), finish=BOUND,
    )  # fmt: skip


def methods(project: Project) -> dict[UnitMethodKind, UnitMethod]:
    """Return the ways that are offered, by kind."""
    return {method.kind: method for method in unit_methods(sized(project))}
