"""Whether a project can be sewn from at all: lengths of one unit, sizes above nothing, a setting known here."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Bound, Project, Quantity, Setting, Spacer
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.table import Table, whole
from evenseam.sizing.simulator.unequal import blocks_of

MAY_BE_NOTHING = frozenset({
    "patch_margin", "backing_overage", "batting_overage", "extra_length", "hem", "drop", "float_width", "float_height",
    "ease", "facing_fold",
})  # fmt: skip
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
    parts: list[object] = [project.finish, project.hanging, project.arrangement.sashing, *project.borders]
    parts += [border.pieced for border in project.borders]
    parts += [project.arrangement.setting_triangles]
    parts += [part for row in project.arrangement.unequal_rows for part in row.parts if isinstance(part, Spacer)]
    if isinstance(project.finish, Bound):
        parts.append(project.finish.binding)
    for part in parts:
        # A finish or a way of hanging that is added one day is looked through without being listed here.
        for field in fields(part) if part is not None else ():  # type: ignore[arg-type]
            value = getattr(part, field.name)
            if isinstance(value, Quantity) and value.unit is not Unit.COUNT:
                yield field.name, value


def _check_arrangement(table: Table) -> None:
    arrangement = table.project.arrangement
    rows = arrangement.positions
    if any(position.is_mirrored for row in rows for position in row):
        table.tell(
            codes.NOT_SEWABLE_YET, "a mirrored block must be drawn as a block of its own before it is sewn",
            place=arrangement.place,
        )  # fmt: skip
    columns = whole(arrangement.columns.value) or 0
    match arrangement.setting:
        case Setting.STRAIGHT:
            lengths = [columns] * len(rows)
        case Setting.ON_POINT:
            lengths = [columns - line % 2 for line in range(len(rows))]
            _check_on_point(table)
        case Setting.UNEQUAL_ROWS:
            lengths = [len(blocks_of(row)) for row in arrangement.unequal_rows]
            _check_unequal(table)
    number = len(rows) if arrangement.setting is not Setting.ON_POINT else Fraction(len(rows) + 1, 2)
    if not rows or columns < 1 or not all(rows[::2] if arrangement.setting is Setting.ON_POINT else rows):
        table.tell(codes.BLOCKS_NOT_AS_ARRANGED, "the arrangement has a row without a block", place=arrangement.place)
    elif (
        arrangement.rows.value != number or columns != max(lengths, default=0) or [len(row) for row in rows] != lengths
    ):
        found = ", ".join(str(length) for length in sorted({len(row) for row in rows}))
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED,
            f"the arrangement is said to have {arrangement.rows.number} rows of {arrangement.columns.number}, its "
            f"positions are {len(rows)} rows of {found}",
            arrangement.rows, arrangement.columns, place=arrangement.place,
        )  # fmt: skip


def _check_on_point(table: Table) -> None:
    arrangement = table.project.arrangement
    if arrangement.setting_triangles is None:
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, "blocks set on point have no setting triangles", place=arrangement.place
        )
    triangles = arrangement.setting_triangles
    least = triangles.least_float if triangles else None
    if triangles is not None and least is not None:
        for floated in (triangles.float_width, triangles.float_height or triangles.float_width):
            if floated.value < least.value:
                table.tell(
                    codes.FIGURE_DIFFERS, f"the float is {floated.text}; it is decided to be {least.text} at least",
                    least, floated, place=triangles.place,
                )  # fmt: skip
    used = {position.block for row in arrangement.positions for position in row}
    sizes = {size for block in table.project.blocks if block.id in used for size in (block.width, block.height)}
    if len({size.value for size in sizes}) > 1:
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, "blocks set on point must be squares of one size", *sizes,
            place=arrangement.place,
        )  # fmt: skip


def _check_unequal(table: Table) -> None:
    arrangement = table.project.arrangement
    if tuple(map(blocks_of, arrangement.unequal_rows)) != arrangement.positions:
        table.tell(
            codes.BLOCKS_NOT_AS_ARRANGED, "the rows of unequal blocks are not those of the arrangement",
            place=arrangement.place,
        )  # fmt: skip
    if arrangement.sashing is not None and arrangement.sashing.cornerstone_fabric is not None:
        table.tell(
            codes.NOT_SEWABLE_YET, "sashing of unequal rows meets nowhere in line, so it is sewn without cornerstones",
            place=arrangement.sashing.place, hint="leave the cornerstones out",
        )  # fmt: skip
