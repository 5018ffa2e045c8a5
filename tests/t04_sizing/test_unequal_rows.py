"""Rows of unequal blocks: spacers share what a row lacks, on ruler marks, and every row comes out equally wide."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import is_multiple
from evenseam.pattern import JoinRun, Project
from evenseam.problems import Problem
from evenseam.sizing import SizedProject, assembly_program, cut_list, sew, size_project
from hypothesis import given, settings
from hypothesis import strategies as st
from support.row_files import BOATS, read
from support.sewing_faults import mutants
from support.tops import sized


def made(project: Project) -> SizedProject:
    """Return a project sized, cut and sewn on the table of the simulator."""
    result = sized(project)
    cuts = cut_list(result)
    log = sew(result.project, cuts, assembly_program(result, cuts))
    assert log.value is not None, [problem.message for problem in log.problems]
    return result


def problem_of(rows: str, blocks: str = BOATS) -> Problem:
    outcome = size_project(read(rows, blocks))
    (problem,) = outcome.problems
    return problem


ROWS = """\
    - [ketch, spacer fog 1, ketch, spacer fog 1, ketch]
    - [spacer fog, buoy, spacer reed, ketch, spacer fog]
    - [gull, gull turned 90, gull mirrored, spacer fog, gull]
"""


TWO_ROWS = "    - [ketch, spacer fog 1, ketch]\n    - [spacer fog, buoy, gull turned 90]\n"


class TestShares:
    """Spacers without a width of their own share what the row lacks to the widest row."""

    def test_counted_by_hand(self) -> None:
        # Three ketches of 6 and two spacers of 1 make 20; four gulls of 4 lack 4, for one spacer.
        result = made(
            read(
                "    - [ketch, spacer fog 1, ketch, spacer fog 1, ketch]\n    - [gull, gull, gull, spacer fog, gull]\n"
            )
        )
        assert result.figure("row_2_spacer_width").value == 4
        assert result.figure("rows_width").value == 20
        assert result.figure("centre_height").value == Fraction(25, 2)
        cuts = {cut.id: (cut.width.text, cut.height.text, cut.count.whole) for cut in cut_list(result).cuts}
        assert cuts["spacers-1"] == ("1 1/2 in", "8 1/2 in", 2)
        assert cuts["spacers-2"] == ("4 1/2 in", "4 1/2 in", 1)

    def test_spacers_with_nothing_to_fill_are_left_out(self) -> None:
        result = made(read("    - [ketch, ketch]\n    - [gull, spacer fog, gull, gull]\n"))
        assert not any(cut.part == "spacer" for cut in cut_list(result).cuts)

    def test_equal_rows_are_sewn_in_one_step(self) -> None:
        result = made(read("    - [ketch, spacer fog 1]\n    - [gull, spacer fog]\n    - [gull, spacer fog]\n"))
        steps = assembly_program(result, cut_list(result)).steps
        joins = [(step.id, step.times) for step in steps if isinstance(step.operation, JoinRun)]
        assert joins == [("join-row-1", 1), ("join-row-2", 2), ("join-rows", 1)]

    def test_a_directional_spacer_stands_upright(self) -> None:
        result = made(read("    - [ketch, ketch]\n    - [buoy, spacer reed, buoy]\n"))
        (spacer,) = [cut for cut in cut_list(result).cuts if cut.part == "spacer"]
        assert spacer.is_upright

    def test_sashing_counted_by_hand(self) -> None:
        # Two ketches and a sash make 13; buoy, spacer 1 1/2, buoy 7 1/2 and a share of 5 1/2. With a sash at both ends
        # every row is 15; the second row lies under three strips, so that 8 + 8 + 3 make 19.
        rows = "    - [ketch, ketch]\n    - [buoy, spacer fog 1 1/2, buoy, spacer sea]\n"
        result = made(read(rows + "  sashing: {width: 1, fabric: fog, around: yes}\n"))
        assert result.figure("row_2_spacer_width").value == Fraction(11, 2)
        assert (result.finished_width.text, result.finished_height.text) == ("15 1/2 in", "19 1/2 in")
        cuts = {cut.id: (cut.width.text, cut.height.text, cut.count.whole) for cut in cut_list(result).cuts}
        assert cuts["sashing-vertical"] == ("1 1/2 in", "8 1/2 in", 5)
        assert cuts["sashing-horizontal"] == ("15 1/2 in", "1 1/2 in", 3)

    def test_sashing_between_the_rows_only(self) -> None:
        rows = "    - [ketch, ketch]\n    - [gull, spacer fog, gull]\n"
        result = made(read(rows + "  sashing: {width: 3/4, fabric: reed, between: rows}\n"))
        assert result.figure("row_2_spacer_width").value == 4
        (strip,) = [cut for cut in cut_list(result).cuts if cut.part == "sashing"]
        assert (strip.width.text, strip.height.text, strip.count.whole) == ("12 1/2 in", "1 1/4 in", 1)
        assert strip.is_upright

    def test_sashed_rows_are_pressed_toward_the_sashing_where_every_seam_has_one(self) -> None:
        rows = "    - [ketch, ketch]\n    - [buoy, spacer fog, buoy]\n"
        result = made(read(rows + "  sashing: {width: 1, fabric: fog, around: yes}\n"))
        runs = [
            step for step in assembly_program(result, cut_list(result)).steps if isinstance(step.operation, JoinRun)
        ]
        assert [(step.id, step.operation.press.name) for step in runs if isinstance(step.operation, JoinRun)] == [
            ("join-row-1", "SASHING"), ("join-row-2", "FIRST"), ("join-rows", "SASHING"),
        ]  # fmt: skip

    @given(st.lists(st.integers(1, 4), min_size=1, max_size=4), st.integers(1, 4), st.integers(0, 12))
    @settings(max_examples=30, deadline=None)
    def test_rows_come_out_equal_or_say_why_not(self, counts: list[int], spacers: int, eighths: int) -> None:
        wide = f"    - [ketch, ketch, ketch, ketch, spacer fog {mixed(Fraction(8 + eighths, 8))}]\n"
        rows = "".join(f"    - [{', '.join(['gull'] * count + ['spacer fog'] * spacers)}]\n" for count in counts)
        project = read(wide + rows)
        lacks = [25 + Fraction(eighths, 8) - 4 * count for count in counts]
        fits = all(is_multiple(lack / spacers, Fraction(1, 8)) for lack in lacks)
        outcome = size_project(project)
        assert (outcome.value is not None) is fits
        if fits:
            result = made(project)
            for number, lack in enumerate(lacks, start=2):
                assert result.figure(f"row_{number}_spacer_width").value == lack / spacers
        else:
            assert {problem.code.name for problem in outcome.problems} == {"rows-do-not-meet"}

    @pytest.mark.parametrize(
        "rows",
        [
            TWO_ROWS,
            TWO_ROWS + "  sashing: {width: 1, fabric: fog}\n",
            TWO_ROWS + "  sashing: {width: 1, fabric: fog, around: yes, between: rows}\n",
        ],
        ids=["two rows", "sashing", "framed"],
    )
    def test_any_one_wrong_figure_is_caught(self, rows: str) -> None:
        blocks = BOATS.replace("4 x 4", "8 x 8")
        result = made(read(rows, blocks))
        cuts = cut_list(result)
        program = assembly_program(result, cuts)
        names = {step.makes for step in program.steps} | {cut.id for cut in cuts.cuts}
        wrong = [
            mutant
            for mutant in mutants(result.project, cuts, program)
            if mutant.change.startswith(("cut spacer", "cut sashing", "step join"))
            and mutant.change.split(" ")[-1] not in names
        ]
        assert len(wrong) > 40
        assert [mutant.change for mutant in wrong if sew(result.project, mutant.cuts, mutant.program).is_valid] == []


def mixed(value: Fraction) -> str:
    """Return a length as it is written in a file."""
    whole, rest = divmod(value, 1)
    return f"{whole} {rest}" if rest else str(whole)


class TestProblems:
    """A row that cannot come out says so with its figures, and names the nearest that can."""

    def test_a_row_without_a_spacer(self) -> None:
        problem = problem_of("    - [ketch, ketch]\n    - [ketch, buoy]\n")
        assert problem.code.name == "rows-do-not-meet"
        assert problem.message == "row 2 finishes 9 in wide, the widest row 12 in: it lacks 3 in"
        assert "spacer sea" in problem.hint
        assert problem.place is not None and problem.place.line == 14

    def test_three_spacers_for_ten_inches(self) -> None:
        problem = problem_of(
            "    - [ketch, ketch, ketch, spacer fog 1]\n    - [spacer fog, ketch, spacer fog, buoy, spacer fog]\n"
        )
        assert problem.message.endswith("each of its 3 spacers would finish about 3 5/16 in, on no mark of a ruler")
        # Two of 3 1/4 and one of 3 1/2 fill ten inches.
        assert problem.hint == "write `spacer fog 3 1/4 in` for all but one of them; that one then takes 3 1/2 in"

    def test_a_lack_on_no_mark_names_lacks_that_are(self) -> None:
        problem = problem_of("    - [ketch, ketch]\n    - [buoy, spacer fog, spacer fog 1 1/16]\n")
        assert "its spacer would finish 7 15/16 in" in problem.message
        assert problem.hint.endswith("lacks 7 7/8 in or 8 in")

    def test_spacers_too_narrow_to_sew(self) -> None:
        problem = problem_of("    - [ketch, spacer fog 1/4]\n    - [ketch, spacer fog, spacer fog]\n")
        assert "too narrow to sew" in problem.message

    def test_blocks_of_different_height_in_a_row(self) -> None:
        problem = problem_of("    - [ketch, gull]\n")
        assert problem.code.name == "blocks-do-not-fit"
        assert "8 in, 4 in high" in problem.message
