"""The blocks of an arrangement laid out in other numbers of rows and columns, repeated as the author laid them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, BlockPosition, Project, Quantity, Setting

MOST_ALONG = 60
"""Rows, or columns, that are tried."""
MOST_BLOCKS = 2000

_Positions = tuple[tuple[BlockPosition, ...], ...]


def rows_of(project: Project) -> int:
    """Return the number of rows the author laid."""
    return project.arrangement.rows.whole


def columns_of(project: Project) -> int:
    """Return the number of columns the author laid."""
    return project.arrangement.columns.whole


def numbers(project: Project, *, of_rows: bool) -> tuple[int, ...]:
    """Return the numbers of rows or of columns that can be laid.

    One block everywhere, and two in turn like the squares of a chessboard, can be laid in any number; any other
    layout is repeated whole. Rows of unequal blocks are repeated downwards, all of them, and never across, where two
    spacers would come to lie side by side. Lines on point that differ stay as they are.
    """
    arrangement = project.arrangement
    here = rows_of(project) if of_rows else columns_of(project)
    if arrangement.setting is Setting.UNEQUAL_ROWS:
        return tuple(range(here, MOST_ALONG + 1, here)) or (here,) if of_rows else (here,)
    if arrangement.setting is Setting.ON_POINT:
        return tuple(range(1, MOST_ALONG + 1)) if not keeps_layout(project) else (here,)
    if _is_chessboard(arrangement.positions):
        return tuple(range(1, MOST_ALONG + 1))
    return tuple(range(here, MOST_ALONG + 1, here)) or (here,)


def keeps_layout(project: Project) -> bool:
    """Tell whether blocks on point differ so that nobody can say which ones would stand between two copies of them."""
    arrangement = project.arrangement
    return arrangement.setting is Setting.ON_POINT and not _lines_alternate(arrangement.positions)


def laid_out(project: Project, rows: int, columns: int) -> Project:
    """Return the project with so many rows and columns, blocks repeated from where the author laid them."""
    arrangement = project.arrangement
    if (rows, columns) == (rows_of(project), columns_of(project)):
        return project
    here = arrangement.positions
    if arrangement.setting is Setting.UNEQUAL_ROWS:
        times = rows // len(here)
        arrangement = replace(arrangement, unequal_rows=arrangement.unequal_rows * times)
        return replace(project, arrangement=replace(arrangement, rows=_count("rows", rows), positions=here * times))
    positions: _Positions
    if arrangement.setting is Setting.ON_POINT:
        lines = [here[0][0], next((line[0] for line in here[1::2] if line), here[0][0])]
        positions = tuple((lines[line % 2],) * (columns - line % 2) for line in range(2 * rows - 1))
    else:
        tile_rows, tile_columns = (2, 2) if _is_chessboard(here) else (len(here), len(here[0]))
        tile_rows, tile_columns = min(tile_rows, len(here)), min(tile_columns, len(here[0]))
        positions = tuple(
            tuple(here[row % tile_rows][column % tile_columns] for column in range(columns)) for row in range(rows)
        )
    return replace(
        project,
        arrangement=replace(
            arrangement, rows=_count("rows", rows), columns=_count("columns", columns), positions=positions
        ),
    )


def _count(name: str, number: int) -> Quantity:
    return Quantity(name, Fraction(number), Unit.COUNT, Assumed("tried so that the project comes near to a size"))


def _is_chessboard(positions: _Positions) -> bool:
    """Tell whether two kinds of blocks stand in turn in both directions; one kind everywhere counts as well."""
    first = positions[0][0]
    other = next((line[0] for line in positions[1:2]), None) or next(iter(positions[0][1:2]), first)
    return all(
        position == (other if (row + column) % 2 else first)
        for row, line in enumerate(positions)
        for column, position in enumerate(line)
    )


def _lines_alternate(positions: _Positions) -> bool:
    """Tell whether the rows on point are of one kind, and the lines between them of one kind."""
    rows = {position for line in positions[0::2] for position in line}
    between = {position for line in positions[1::2] for position in line}
    return len(rows) == 1 and len(between) <= 1
