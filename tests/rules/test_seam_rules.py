"""The rules for seams, and for edges that take one, against published examples."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import Project
from hypothesis import assume, given, settings
from support.samples import TURNED, length
from support.strategies import projects
from support.tops import figure, plain_block, plain_top, rows_of, sized, value


class TestSeams:
    """Every seam takes its allowance from both pieces: n pieces side by side measure (cut − 2 seams) × n + 2 seams."""

    @pytest.mark.parametrize(
        ("rows", "columns", "cut_width", "cut_height", "middle", "whole"),
        [
            # Seam test, Quilted Connections: three 1 1/2 × 3 1/2 strips.
            (1, 3, "1 1/2", "3 1/2", "1", "3 1/2"),
            # "Testing your scant quarter inch seam", Janelle Cahoon, Quiltcentric, 2012.
            (1, 3, "1 1/2", "5", None, "3 1/2"),
            # Seam test, about.com quilting guide: three 2 × 4 strips; the whole is derived from the middle.
            (1, 3, "2", "4", "1 1/2", "5"),
            # "Quarter inch seam", quiltingfocus, 2016: three 2 in squares.
            (1, 3, "2", "2", None, "5"),
            # "Tips and tutorials", traceypereira: three 5 in squares.
            (1, 3, "5", "5", "4 1/2", None),
            # melodycrust, 2015: nine 1 1/2 in squares as a nine patch.
            (3, 3, "1 1/2", "1 1/2", None, "3 1/2"),
            # "How wide should the finished width of my strip set be?", Vicki, vickisfabriccreations, 2013.
            (1, 9, "3 1/4", "5", None, "25 1/4"),
            (1, 16, "2 3/8", "5", None, "30 1/2"),
        ],
    )
    def test_published_seam_tests(
        self, rows: int, columns: int, cut_width: str, cut_height: str, middle: str | None, whole: str | None
    ) -> None:
        project = rows_of(rows, columns, cut_width, cut_height)
        if middle is not None:
            assert figure(project, "plain_block_width") == value(middle)
        if whole is not None:
            assert figure(project, "centre_width") == value(whole)

    def test_small_errors_add_up_on_both_sides_of_a_seam(self) -> None:
        # quiltingfocus, 2016, prints that 8 seams 3/16 in off make 1/2 in. They make 1 1/2, and 3 counting both sides.
        true = figure(rows_of(1, 9, "2", "2"), "centre_width")
        scant = figure(rows_of(1, 9, "2", "2", seam="1/16"), "centre_width")
        assert scant - true == 3 != Fraction(1, 2)

    @pytest.mark.parametrize(("finished", "cut"), [("10", "11.5"), ("5", "6.5")])
    def test_metric_seam(self, finished: str, cut: str) -> None:
        # "Metric Flying Geese", weednstitch, 2012: add 1.5 cm to squares and rectangles at a seam of 0.75 cm.
        seam = length("seam allowance", "0.75", Unit.CENTIMETRE)
        block = plain_block(value(finished), value(finished), Unit.CENTIMETRE)
        project = replace(plain_top("10", "10", Unit.CENTIMETRE, seam_allowance=seam), blocks=(block,))
        assert figure(project, "plain_a_cut_width") == value(cut)


class TestTurnedEdge:
    """A turned project finishes one seam allowance smaller on every side than its raw top."""

    @pytest.mark.parametrize(
        ("raw", "seam", "finished"),
        [
            # "Placemat tutorial", beebees, 2013: layers of 14 × 18 with a 1/4 in seam (finished size worked by hand).
            (("18", "14"), "1/4", ("17 1/2", "13 1/2")),
            # "Simple placemat", sewcreatelive, 2014: cut 1 in larger each way than finished, for a 1/2 in seam.
            (("19", "15"), "1/2", ("18", "14")),
            # "Simple placemats", newlycraftymama, 2012: 12 × 17, 1/4 in (finished size worked by hand).
            (("17", "12"), "1/4", ("16 1/2", "11 1/2")),
        ],
    )
    def test_published_place_mats(self, raw: tuple[str, str], seam: str, finished: tuple[str, str]) -> None:
        project = plain_top(*raw, seam_allowance=length("seam allowance", seam), finish=TURNED)
        assert (figure(project, "finished_width"), figure(project, "finished_height")) == (
            value(finished[0]), value(finished[1]),
        )  # fmt: skip

    @settings(max_examples=40)
    @given(projects())
    def test_outermost_border_finishes_at_its_stated_width(self, project: Project) -> None:
        assume(project.borders)
        finish = replace(TURNED, opening=length("opening", "1"))
        result = sized(replace(project, finish=finish))
        last = result.project.borders[-1]
        strips = [placed.outline.bounds for placed in result.placed if placed.part == f"border:{last.id}"]
        assert min(right for _, _, right, _ in strips) == last.width.value
        assert min(bottom for _, _, _, bottom in strips) == last.width.value
