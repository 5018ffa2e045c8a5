"""Whether a project can be sewn from at all: lengths of one unit, sizes above nothing, a setting known here."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields

from evenseam.exact import Unit
from evenseam.pattern import Bound, Project, Quantity, Setting
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.table import Table

MAY_BE_NOTHING = frozenset({"patch_margin", "backing_overage", "batting_overage", "extra_length", "hem", "drop"})
MAY_BE_LESS = frozenset({"cut_extra"})


def can_start(table: Table) -> bool:
    """Note what keeps the maker from starting. Returns True when nothing does."""
    told = table.told
    project = table.project
    if project.unit not in (Unit.INCH, Unit.CENTIMETRE):
        table.tell(codes.UNIT_DIFFERS, f"an edition is in inches or centimetres, not in {project.unit.name.lower()}s")
    for name, length in _lengths(project):
        if length.unit is not project.unit:
            table.tell(
                codes.UNIT_DIFFERS, f"{length.name} is {length.text}, this edition is in {project.unit.symbol}", length
            )
        elif name not in MAY_BE_LESS and (length.value < 0 or (length.value == 0 and name not in MAY_BE_NOTHING)):
            table.tell(codes.SIZE_NOT_POSITIVE, f"{length.name} is {length.text}; it must be more", length)
    _check_arrangement(table)
    return table.told == told


def _lengths(project: Project) -> Iterator[tuple[str, Quantity]]:
    """Yield every length that a cut or a seam depends on, with the name of its field."""
    yield "seam_allowance", project.seam_allowance
    yield "patch_margin", project.patch_margin
    for block in project.blocks:
        yield from (("width", block.width), ("height", block.height))
    for border in project.borders:
        yield "width", border.width
    if project.arrangement.sashing:
        yield "width", project.arrangement.sashing.width
    parts: list[object] = [project.finish, project.hanging]
    if isinstance(project.finish, Bound):
        parts.append(project.finish.binding)
    for part in parts:
        # A finish or a way of hanging that is added one day is looked through without being listed here.
        for field in fields(part) if part is not None else ():  # type: ignore[arg-type]
            value = getattr(part, field.name)
            if isinstance(value, Quantity):
                yield field.name, value


def _check_arrangement(table: Table) -> None:
    arrangement = table.project.arrangement
    rows = arrangement.positions
    if arrangement.setting is not Setting.STRAIGHT:
        table.tell(
            codes.NOT_SEWABLE_YET, f"a setting {arrangement.setting.value} cannot be proved on the table yet",
            place=arrangement.place,
        )  # fmt: skip
    if any(position.is_mirrored for row in rows for position in row):
        table.tell(
            codes.NOT_SEWABLE_YET, "a mirrored block must be drawn as a block of its own before it is sewn",
            place=arrangement.place,
        )  # fmt: skip
    if not rows or not all(rows):
        table.tell(codes.BLOCKS_NOT_AS_ARRANGED, "the arrangement has a row without a block", place=arrangement.place)
    elif arrangement.rows.value != len(rows) or any(len(row) != arrangement.columns.value for row in rows):
        lengths = ", ".join(sorted({str(len(row)) for row in rows}))
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED,
            f"the arrangement is said to have {arrangement.rows.number} rows of {arrangement.columns.number}, its "
            f"positions are {len(rows)} rows of {lengths}",
            arrangement.rows, arrangement.columns, place=arrangement.place,
        )  # fmt: skip
