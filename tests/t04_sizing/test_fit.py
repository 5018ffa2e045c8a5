"""Projects that are to come near to a size: the nearest of all, by trying every one."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import product

import pytest
from evenseam.exact import Unit
from evenseam.pattern import BlockPosition, Choosing, Project, Sashing, explain
from evenseam.sizing import assembly_program, cut_list, sew, size_project
from evenseam.sizing.fit_layout import laid_out, numbers
from hypothesis import given, settings
from hypothesis import strategies as st
from support.edges import fitted
from support.row_files import read
from support.samples import LAP_QUILT, MUG_RUG, TURNED, WALL_HANGING, border, grid, length
from support.tops import plain_block, sized

_QUARTER = Fraction(1, 4)


def _small(block: tuple[int, int], border_quarters: int, sash_quarters: int) -> Project:
    made = plain_block(Fraction(block[0]), Fraction(block[1]))
    arrangement = grid(1, 1, "plain")
    if sash_quarters:
        sash = replace(length("sashing width", "1"), value=sash_quarters * _QUARTER)
        arrangement = replace(arrangement, sashing=Sashing(sash, "fog", is_around=True))
    outer = border("outer border", "1", "sea")
    outer = replace(outer, width=replace(outer.width, value=border_quarters * _QUARTER))
    return replace(MUG_RUG, blocks=(made,), arrangement=arrangement, borders=(outer,), finish=TURNED)


def _off(project: Project, width: Fraction, height: Fraction) -> Fraction:
    result = sized(project)
    across, down = result.finished_width.value, result.finished_height.value
    assert isinstance(across, Fraction) and isinstance(down, Fraction)
    return abs(across - width) + abs(down - height)


class TestNearest:
    """No other number of rows and columns, and no other border that is allowed, comes nearer."""

    @settings(max_examples=12, deadline=None)
    @given(
        st.tuples(st.integers(3, 9), st.integers(3, 9)), st.integers(2, 8), st.integers(0, 4), st.integers(8, 30),
        st.integers(8, 30),
    )  # fmt: skip
    def test_against_trying_every_one(
        self, block: tuple[int, int], border_quarters: int, sash_quarters: int, width: int, height: int
    ) -> None:
        project = _small(block, border_quarters, sash_quarters)
        asked = fitted(project, str(width), str(height))
        chosen = _off(asked, Fraction(width), Fraction(height))
        stated = project.borders[0].width
        tried = []
        for rows, columns in product(range(1, 6), repeat=2):
            for wider in range(border_quarters + 1):
                outer = replace(project.borders[0], width=replace(stated, value=stated.value + wider * _QUARTER))
                candidate = replace(laid_out(project, rows, columns), borders=(outer,))
                # Sized like any other project, without a word about what it should come near to.
                tried.append(_measured(candidate, Fraction(width), Fraction(height)))
        assert chosen <= min(tried)

    def test_rows_columns_and_border_are_what_sizing_says(self) -> None:
        result = sized(fitted(LAP_QUILT, "63", "87"))
        found = result.project.arrangement
        assert len(found.positions) == found.rows.whole
        assert all(len(row) == found.columns.whole for row in found.positions)
        assert result.project.fit is None
        assert result.figure("fit_width").value == 63
        difference = result.figure("fit_width_more").value
        assert difference == result.finished_width.value - 63

    def test_it_sews_up(self) -> None:
        result = sized(fitted(WALL_HANGING, "60", "80"))
        cuts = cut_list(result)
        assert sew(result.project, cuts, assembly_program(result, cuts)).value is not None

    def test_the_same_twice(self) -> None:
        first, second = (sized(fitted(LAP_QUILT, "84", "92")) for _ in range(2))
        assert first.project == second.project


def _measured(project: Project, width: Fraction, height: Fraction) -> Fraction:
    """Measure a plain project with borders all round by adding up: what sizing does must come to the same."""
    block, outer = project.blocks[0], project.borders[0].width.value
    sash = project.arrangement.sashing.width.value if project.arrangement.sashing else Fraction(0)
    rows, columns = project.arrangement.rows.whole, project.arrangement.columns.whole
    across = columns * block.width.value + (columns + 1) * sash + 2 * outer
    down = rows * block.height.value + (rows + 1) * sash + 2 * outer
    assert isinstance(across, Fraction) and isinstance(down, Fraction)
    return abs(across - width) + abs(down - height)


class TestChoosing:
    """The author says what may be chosen."""

    def test_only_blocks(self) -> None:
        result = sized(fitted(LAP_QUILT, "63", "87", may_choose=(Choosing.ROWS_AND_COLUMNS,)))
        assert result.project.borders == LAP_QUILT.borders

    def test_only_borders(self) -> None:
        result = sized(fitted(LAP_QUILT, "60", "70", may_choose=(Choosing.BORDER_WIDTHS,)))
        assert result.project.arrangement == LAP_QUILT.arrangement
        assert LAP_QUILT.borders[-1].width.value < result.project.borders[-1].width.value
        assert result.project.borders[0] == LAP_QUILT.borders[0]

    def test_no_wider_than_allowed(self) -> None:
        most = length("widest border", "3")
        result = sized(fitted(LAP_QUILT, "60", "70", may_choose=(Choosing.BORDER_WIDTHS,), widest_border=most))
        assert result.project.borders[-1].width.value == 3

    def test_borders_are_never_narrowed(self) -> None:
        result = sized(fitted(MUG_RUG, "7", "10"))
        assert result.project.borders == MUG_RUG.borders


class TestLayout:
    """Blocks are repeated the way the author laid them."""

    def test_a_chessboard_goes_on(self) -> None:
        chess = tuple(
            tuple(BlockPosition("lantern", (row + column) % 2 * 2) for column in range(2)) for row in range(2)
        )
        project = replace(MUG_RUG, arrangement=replace(grid(2, 2), positions=chess))
        laid = laid_out(project, 3, 5).arrangement.positions
        turns = [[position.quarter_turns for position in row] for row in laid]
        assert turns == [[0, 2, 0, 2, 0], [2, 0, 2, 0, 2], [0, 2, 0, 2, 0]]
        assert 3 in numbers(project, of_rows=True)

    def test_any_other_layout_is_repeated_whole(self) -> None:
        odd = ((BlockPosition("lantern"), BlockPosition("lantern"), BlockPosition("lantern", 2)),)
        project = replace(MUG_RUG, arrangement=replace(grid(1, 3), positions=odd))
        assert numbers(project, of_rows=False)[:3] == (3, 6, 9)
        laid = laid_out(project, 2, 6).arrangement.positions
        assert [position.quarter_turns for position in laid[1]] == [0, 0, 2, 0, 0, 2]


ROWS = """\
    - [ketch, spacer fog 1, ketch]
    - [spacer fog, buoy, spacer fog]
"""


class TestUnequalRows:
    """Rows of unequal blocks are repeated downwards, all of them; their width stays as the author wrote it."""

    def _fitted(self, width: str, height: str, rows: str = ROWS) -> Project:
        return fitted(read(rows), width, height)

    def test_counted_by_hand(self) -> None:
        # Two rows of 8 and, bound, a seam allowance on either side: 16 1/2, 32 1/2, 48 1/2; 33 is nearest to 32 1/2.
        result = sized(self._fitted("13", "33"))
        assert result.project.arrangement.rows.whole == 4 == len(result.project.arrangement.unequal_rows)
        assert (result.finished_width.text, result.finished_height.text) == ("13 1/2 in", "32 1/2 in")
        said = str(explain(result.figure("rows")))
        assert "2 rows come to 16 1/2 in and 6 rows come to 48 1/2 in" in said

    def test_columns_are_not_said_to_be_chosen(self) -> None:
        project = self._fitted("13", "33")
        assert sized(project).project.arrangement.columns == project.arrangement.columns

    @given(st.integers(10, 120), st.booleans())
    @settings(max_examples=15, deadline=None)
    def test_no_other_repeat_comes_nearer(self, height: int, is_framed: bool) -> None:
        framing = "  sashing: {width: 1, fabric: fog, around: yes, between: rows}\n" if is_framed else ""
        result = sized(self._fitted("13", str(height), ROWS + framing))
        found = result.project.arrangement.rows.whole
        sash = 1 if is_framed else 0
        off = {2 * n: abs(n * (16 + 2 * sash) + sash + Fraction(1, 2) - height) for n in range(1, 12)}
        assert off[found] == min(off.values())

    def test_it_sews_up(self) -> None:
        result = sized(self._fitted("13", "60", ROWS + "  sashing: {width: 1, fabric: fog}\n"))
        cuts = cut_list(result)
        log = sew(result.project, cuts, assembly_program(result, cuts))
        assert log.value is not None, log.problems


class TestWhy:
    """What was chosen can say why."""

    def test_rows_tell_what_one_more_and_one_fewer_come_to(self) -> None:
        project = fitted(LAP_QUILT, "63", "87")
        rows = sized(project).figure("rows")
        said = "\n".join(explain(rows)) if not isinstance(explain(rows), str) else explain(rows)
        assert "nearest to 63 × 87 in" in said
        assert f"{rows.whole - 1} rows come to" in said and f"{rows.whole + 1} rows come to" in said

    def test_a_widened_border_tells_its_own_width(self) -> None:
        width = sized(fitted(LAP_QUILT, "60", "70", may_choose=(Choosing.BORDER_WIDTHS,))).project.borders[-1].width
        said = "\n".join(explain(width)) if not isinstance(explain(width), str) else explain(width)
        assert "2 1/2 +" in said


@pytest.mark.parametrize("unit", [Unit.INCH, Unit.CENTIMETRE])
def test_other_edition_chooses_for_itself(unit: Unit) -> None:
    project = replace(fitted(LAP_QUILT, "63", "87"), unit=unit)
    outcome = size_project(project)
    assert outcome.value is not None, outcome.problems
    width = outcome.value.figure("fit_width")
    assert width.unit is unit
    # 63 in are 160.02 cm.
    assert width.value == (63 if unit is Unit.INCH else 160)
