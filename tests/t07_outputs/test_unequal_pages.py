"""Rows of unequal blocks on the page: which spacer is meant, what was worked out, and the sashing between them."""

from __future__ import annotations

from functools import cache

import pytest
from evenseam.sheet import PatternSheet, compute_sheets
from evenseam.wording import write_document
from support.document_words import as_text
from support.pattern_texts import pattern_from
from support.pictured import sheet_of
from support.row_files import BOATS, HEAD, TAIL, read

ROWS = """\
    - [ketch, spacer fog 1, ketch, spacer sea, ketch]
    - [spacer fog, buoy, spacer fog 1, ketch, spacer fog]
    - [gull, gull, gull, gull, gull]
"""
SASHED = ROWS + "  sashing: {width: 1, fabric: sea, around: yes, between: rows}\n"


@cache
def sheet(rows: str) -> PatternSheet:
    return sheet_of(read(rows))


def text(rows: str, code: str = "en") -> str:
    """Return the whole page on one line, without the marks of figures."""
    document = write_document(sheet(rows), code).value
    assert document is not None
    return " ".join(as_text(document).replace("*", "").split())


class TestSpacers:
    """Every spacer can be told from the others of its row."""

    def test_by_fabric_where_a_row_has_two(self) -> None:
        page = text(ROWS)
        assert "spacer in Fog" in page and "spacer in Sea" in page

    def test_by_width_where_a_row_has_two(self) -> None:
        page = text(ROWS)
        assert "1. Wide spacer in Fog 2. Buoy block 3. Narrow spacer in Fog 4." in page
        assert "1. Wide spacer 2. Buoy block 3. Narrow spacer 4." in text(ROWS.replace("spacer sea", "spacer fog"))

    def test_the_widths_that_were_worked_out_are_told_once_for_all_rows(self) -> None:
        twice = ROWS + ROWS.splitlines()[1] + "\n"
        assert "the spacers without a width of their own finish 1 in wide in row 1; 5 in wide in rows 2 and 4" in text(
            twice
        )

    @pytest.mark.parametrize("code", ["en", "nl"])
    def test_no_spacer_is_told_where_there_is_none(self, code: str) -> None:
        word = {"en": "spacer", "nl": "opvulstro"}[code]
        assert word not in text("    - [ketch, ketch]\n    - [gull, gull, gull]\n", code)
        assert word in text(ROWS, code)


class TestSashing:
    """Sashing between unequal rows is told with what it adds to them."""

    def test_at_a_glance(self) -> None:
        assert (
            "all rows finish 20 in wide between the strips at their ends, with sashing 1 in wide between and around "
            "them" in text(SASHED)
        )

    def test_rows_are_pinned_without_seams_that_meet(self) -> None:
        page = text(SASHED)
        assert (
            "Lay out rows 1 to 3 from top to bottom, in the order of their numbers, with a sashing strip above the "
            "first, between each two, and below the last." in page
        )
        assert "1. Sashing strip 2. Row 1" not in page
        assert "1. Sashing strip 2. Five Gull blocks 3. Sashing strip" in page
        assert "Press the seams toward the sashing" in page

    def test_in_dutch(self) -> None:
        page = text(SASHED, "nl")
        assert "staande tussenstroken van rijen 1 en 2" in page
        assert "met tussenstroken van 1 in breed ertussen en eromheen" in page


def test_a_fitted_top_tells_that_its_rows_were_repeated() -> None:
    text_of_file = f"{HEAD}{BOATS}arrangement:\n  unequal rows:\n{ROWS}{TAIL}".replace("{}}", "{fit: 20 x 60}}")
    outcome = compute_sheets(pattern_from(text_of_file))[0]
    assert outcome.value is not None
    document = write_document(outcome.value, "en").value
    assert document is not None
    page = " ".join(as_text(document).replace("*", "").split())
    assert ": nine rows. It is the nearest of all whole repeats of the rows." in page
    # A row that is made three times is told by the three places where it lies.
    assert "Sew rows 1, 4 and 7 " in page and "Each of rows 1, 4 and 7 now measures" in page
    assert "Lay out rows 1 to 9 from top to bottom" in page


def test_three_parts_between_equal_ones_are_told_as_a_list() -> None:
    """Only sashing on point has ends that lie in line with the row."""
    page = text(ROWS)
    assert "long sides in line" not in page
    assert "1. Ketch block 2. Narrow spacer in Fog 3. Ketch block 4. Spacer in Sea 5. Ketch block" in page
