"""Steps that are told as one: nothing of any of them is lost, and words of the author keep a step apart."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from evenseam.pattern import JoinRun, Press, Project, Prose, Run, Step
from evenseam.publish.author_page import SizeForAuthor, write_author_page
from evenseam.wording import write_document
from evenseam.wording.document import Document, StepBlock, Table
from evenseam.wording.step_groups import laid
from evenseam.wording.workpieces import step_numbers
from support.document_words import as_text, words_of
from support.on_point import on_point
from support.pictured import sheet_of

FRAMED = on_point("6", rows=4, columns=3, sash="1", around=True, cornerstones="lamp")
PLAIN = on_point("6", rows=5, columns=4)


def written(project: Project, language: str = "en") -> Document:
    outcome = write_document(sheet_of(project), language)
    assert outcome.value is not None, outcome.problems
    return outcome.value


def steps_of(document: Document) -> list[StepBlock]:
    return [block for block in document.blocks if isinstance(block, StepBlock)]


def shared(document: Document) -> dict[str, list[list[str]]]:
    """Return the lines of the tables of steps told as one, by the titles of the steps."""
    return {
        step.title: [[words_of(cell) for cell in row] for row in block.rows]
        for step in steps_of(document)
        for block in step.blocks
        if step.also and isinstance(block, Table)
    }


def run(*parts: str) -> Step:
    return Step("row", JoinRun(parts, Run.ACROSS, Press.OPEN, "blocks"), "row", 1, None)


class TestLaid:
    """Rows are told together only where one way of laying them out gives every one of them part by part."""

    @pytest.mark.parametrize(
        "rows",
        [("AAA", "AA", "AAAAA"), ("ABA", "ABABA"), ("ABA", "BAB", "ABABA"), ("EAE", "EABAE", "EABABAE"), ("AA", "BB")],
    )
    def test_it_gives_every_row_back(self, rows: tuple[str, ...]) -> None:
        group = tuple(run(*row) for row in rows)
        found = laid(group)
        assert found is not None
        for one, row in zip(found, rows, strict=True):
            around = (one.ends,) if one.ends else ()
            assert "".join((*around, *one.parts, *around)) == row
            if one.first:
                others = [part for part in one.parts if part != one.first]
                assert one.parts[::2] == (one.first,) * len(one.parts[::2])
                assert len(set(others)) <= 1

    @pytest.mark.parametrize(
        "rows", [("AAB", "AA"), ("ABBA", "ABA"), ("EABAE", "FABAF"), ("ABC", "ABA"), ("EABE", "EAE")]
    )
    def test_rows_of_different_kinds_stay_apart(self, rows: tuple[str, ...]) -> None:
        assert laid(tuple(run(*row) for row in rows)) is None


class TestTables:
    def test_rows_of_blocks_with_sashing(self) -> None:
        # Four rows of three on point: diagonal rows of 1, 3, 5, 5, 3 and 1 blocks, a strip at either side of each
        # block. Seven inches from strip to strip; n blocks with n + 1 strips are 7 n + 1, and the seams half an inch.
        lines = shared(written(FRAMED))["Sew the blocks of the diagonal rows"]
        assert lines == [
            ["1 and 6", "2", "two sashing strips and one Plain block", "8 1/2 × 6 1/2 in"],
            ["2 and 5", "2", "four sashing strips and three Plain blocks", "22 1/2 × 6 1/2 in"],
            ["3 and 4", "2", "six sashing strips and five Plain blocks", "36 1/2 × 6 1/2 in"],
        ]

    def test_sashing_rows_with_their_ends(self) -> None:
        document = written(FRAMED)
        lines = shared(document)["Sew the sashing rows"]
        assert [line[:3] for line in lines] == [
            ["1 and 7", "2", "one sashing strip"],
            ["2 and 6", "2", "three sashing strips and two cornerstones"],
            ["3 and 5", "2", "five sashing strips and four cornerstones"],
            ["4", "1", "six sashing strips and five cornerstones"],
        ]
        assert "Then add two longer cornerstones, one at each end of the row" in as_text(document)

    def test_where_rows_are_pressed_differently_the_table_says_so(self) -> None:
        document = written(PLAIN)
        lines = shared(document)["Sew the blocks of the diagonal rows"]
        assert {line[-2] for line in lines} == {"to the left", "to the right"}
        assert "Press the seams to the" not in as_text(document).split("Add the triangles")[0]

    def test_single_blocks_are_told_to_be_laid_as_they_stand(self) -> None:
        text = as_text(written(PLAIN))
        assert "Row 1 is a single block" in text and "Row 8 is a single block" in text


class TestWordsOfTheAuthor:
    def test_a_step_with_words_of_its_own_stands_apart_and_nothing_is_told_twice(self) -> None:
        project = replace(PLAIN, additions=(("diagonal-row-3-triangles", Prose("Mind the tide line here.")),))
        document = written(project)
        steps = steps_of(document)
        (own,) = [step for step in steps if step.id == "diagonal-row-3-triangles"]
        assert own.also == () and own.title == "Add the triangles to diagonal row 3"
        titles = [step.title for step in steps]
        assert titles.count("Add the triangles to the diagonal rows") == 2
        text = as_text(document)
        first = next(step.number for step in steps if step.title == "Add the triangles to the diagonal rows")
        assert text.count("dog ears") == 1
        assert text.count(f"Sew, press and cut off the tips as in step {first}.") == 2


def test_numbers_of_steps_are_those_on_the_page() -> None:
    sheet = sheet_of(FRAMED)
    told = {id: step.number for step in steps_of(written(FRAMED)) for id in (step.id, *step.also)}
    assert dict(step_numbers(sheet)) == told
    assert len(set(told.values())) < len(sheet.program.steps)
    page = write_author_page("Plain", (), {}, (), [SizeForAuthor(sheet, "top", "Top", "top.md")]).body
    rows = re.findall(r"<tr>.*?(\d+)<.*?<code>([\w-]+)</code>", page)
    assert len(rows) > 5
    assert {id: int(number) for number, id in rows} == {id: told[id] for _, id in rows}
