"""Plain tops set on point, for rules and for the table they are sewn on."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Number, Unit
from evenseam.pattern import Arrangement, Assumed, BlockPosition, Project, Quantity, Sashing, Setting, SettingTriangles

from support.samples import count, length
from support.tops import plain_block, plain_top, value

FLOATED = Fraction(1, 4)
"""The marks a float brings an inch top to."""


def positions(rows: int, columns: int, block: str = "plain") -> tuple[tuple[str, ...], ...]:
    """Return the lines of an arrangement on point, as names of blocks."""
    return tuple((block,) * (columns - line % 2) for line in range(2 * rows - 1))


def on_point(
    block: str,
    *,
    rows: int = 3,
    columns: int = 2,
    floated: str | None = None,
    float_value: Number | None = None,
    seam: str = "1/4",
    sash: str | None = None,
    around: bool = False,
    cornerstones: str | None = None,
    unit: Unit = Unit.INCH,
    **changes: object,
) -> Project:
    """Return a bound top of plain blocks of this finished side; `changes` are fields of the project to set."""
    side = plain_block(value(block), value(block), unit)
    number = Quantity("float", Fraction(0), unit, Assumed("chosen for a test"))
    if floated is not None:
        number = replace(number, value=value(floated))
    if float_value is not None:
        number = replace(number, value=float_value)
    triangles = SettingTriangles("sea", "sea", number, chooses_float=floated is None)
    sashing = Sashing(length("sashing width", sash, unit), "lamp", around, cornerstones) if sash else None
    arrangement = Arrangement(
        count("rows", rows), count("columns", columns), Setting.ON_POINT,
        tuple(tuple(BlockPosition(name) for name in line) for line in positions(rows, columns)), sashing,
        setting_triangles=triangles,
    )  # fmt: skip
    allowance = length("seam allowance", seam, unit)
    project = plain_top("10", "10", unit, seam_allowance=allowance)
    return replace(project, **{"blocks": (side,), "arrangement": arrangement, **changes})
