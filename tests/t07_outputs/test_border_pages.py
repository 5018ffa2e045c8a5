"""Borders on the page: mitred, passing and made of blocks, each in words a beginner follows and with its picture."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from evenseam.exact import Unit
from evenseam.figures import draw, picture_names
from evenseam.figures.drawing import Area, Cloth, Drawing, Line, Measure, Side, Stroke, Tone
from evenseam.figures.workbench import walk
from evenseam.pattern import AddMitredBorder, AddPartialSeamBorder, LayerForQuilting, Project
from evenseam.sheet import PatternSheet
from evenseam.wording import write_document
from shapely import union_all
from shapely.affinity import translate
from support.borders import MEDALLION, MEDALLION_WITH_PRINT, bordered, mitred, of_blocks, passing, pennant
from support.document_words import as_text
from support.pictured import as_shapely, sheet_of

TWO_MITRED = bordered(mitred("inner border", "1", "lamp"), mitred("outer border", "2 1/2", "sea"))
PASSING = bordered(passing("only border", "2"))
EVEN = bordered(of_blocks("ring", "pennant", "corner"), blocks=(pennant(), pennant("2", "2", "corner")))
FILLED = bordered(of_blocks("ring", "pennant"), blocks=(pennant("2 1/2"),))
ALIKE = bordered(of_blocks("ring", "pennant"), blocks=(pennant("5", "2"),))


@cache
def sheet(project: Project) -> PatternSheet:
    return sheet_of(project)


def text(project: Project, code: str = "en") -> str:
    """Return the whole page on one line, without the marks of figures."""
    document = write_document(sheet(project), code).value
    assert document is not None
    return " ".join(as_text(document).replace("*", "").split())


def picture(project: Project, kind: type[object]) -> Drawing:
    step = next(step for step in sheet(project).program.steps if isinstance(step.operation, kind))
    return draw(sheet(project), f"step-{step.id}")


class TestMitredWords:
    def test_strips_are_joined_first_and_pressed_opposite_ways(self) -> None:
        page = text(TWO_MITRED)
        assert "Join the inner border and outer border into strips for left and right" in page
        assert page.index("toward the outer border:") < page.index("toward the inner border:")

    def test_seams_stop_at_dots_a_seam_allowance_from_the_corner(self) -> None:
        page = text(TWO_MITRED)
        assert "At each corner draw a dot 1/4 in from both edges" in page
        assert "Start exactly at one dot and stop exactly at the other" in page

    def test_strips_are_pinned_from_the_middle_and_folded_at_45_degrees(self) -> None:
        page = text(TWO_MITRED)
        assert "the middles first and then outward to both ends" in page
        assert "45 degrees" in page
        assert page.index("Look before you cut") > page.index("Sew on the line from the dot outward")

    def test_ease_and_inside_are_told_with_their_figures(self) -> None:
        page = text(TWO_MITRED)
        # By hand: a lantern of 6 × 9 in, raw; and the usual 4 in.
        assert "It should be 6 1/2 × 9 1/2 in." in page
        assert "4 in of each is there to hold on to" in page
        assert "ease of the mitered strips 4 in" in page, "a usual figure is listed as one"

    def test_both_kinds_of_english(self) -> None:
        assert "with mitered corners" in text(TWO_MITRED)
        assert "with mitred corners" in text(TWO_MITRED, "en-GB")

    def test_a_print_with_an_up_is_turned_up(self) -> None:
        page = text(bordered(mitred("only border", "2", "reed")))
        assert "Reed Print is a one-way print. Turn all four strips so that it points to the top edge." in page


class TestPassingWords:
    def test_first_strip_is_sewn_in_part_and_closed_last(self) -> None:
        page = text(PASSING)
        order = ("Top strip, first half", "Right strip", "Bottom strip", "Left strip", "Close the first seam")
        places = [page.index(f"{words}.") for words in order]
        assert places == sorted(places)
        assert "Leave the rest open" in page

    def test_lengths_are_told(self) -> None:
        # By hand: 6 1/2 + 2 and 9 1/2 + 2.
        assert "The top and bottom strips are 8 1/2 in long, the left and right ones 11 1/2 in." in text(PASSING)


class TestWordsOfBlocks:
    def test_choice_of_the_engine_is_shown(self) -> None:
        filled = "3 Pennant blocks along top and bottom, 4 along left and right. They come out even with plain spacer "
        assert filled + "strips inside them, 3/4 in wide at left and right and 1/2 in at top and bottom." in text(
            FILLED
        )
        assert "2 Pennant blocks along top and bottom, 3 along left and right. They come out even without" in text(EVEN)
        # By hand: 6 + 2 × 2 = 2 × 5 and 9 + 2 × 1/2 = 2 × 5.
        assert "2 in wide at left and right and 1/2 in at top and bottom" in text(ALIKE)

    def test_steps_say_how_strips_are_made_and_turned(self) -> None:
        page = text(EVEN)
        assert "Lay three Pennant blocks side by side, the way they stand in the picture." in page
        assert "Lay two Pennant blocks side by side, the way they stand in the picture, and a corner block" in page
        assert "Turn both strips so that the top edges of their blocks point outward" in page
        assert "Match the seams of the corners" in page

    def test_seams_are_pressed_away_from_the_blocks_where_there_is_a_spacer(self) -> None:
        assert "Press the seams toward the plain spacer strip." in text(FILLED)
        assert "Press the seams toward the plain spacer strip." not in text(EVEN)

    def test_blocks_of_borders_are_counted(self) -> None:
        assert "Pennant block: 10, each 3 × 2 in finished" in text(EVEN)


@pytest.mark.parametrize("project", [MEDALLION, MEDALLION_WITH_PRINT], ids=["medallion", "with-print"])
@pytest.mark.parametrize("unit", [Unit.INCH, Unit.CENTIMETRE], ids=["inches", "centimetres"])
def test_every_step_has_a_picture_and_words(project: Project, unit: Unit) -> None:
    made = sheet_of(replace(project, unit=unit))
    document = write_document(made).value
    assert document is not None
    page = as_text(document)
    for step in made.program.steps:
        assert f"step-{step.id}" in picture_names(made)
        assert draw(made, f"step-{step.id}").shapes
    assert page.count("now measures") >= len([step for step in made.program.steps if "border" in step.id])


class TestPictures:
    def test_corner_is_drawn_from_both_sides_with_its_dot(self) -> None:
        drawing = picture(TWO_MITRED, AddMitredBorder)
        cloth = [shape for shape in drawing.shapes if isinstance(shape, Cloth)]
        assert {shape.side for shape in cloth} == {Side.RIGHT, Side.WRONG}
        # Four corners, four middles, and one dot in each of the two close-ups that sew.
        assert len([shape for shape in drawing.shapes if isinstance(shape, Area) and shape.tone is Tone.DOT]) == 10
        assert [label.text[0] for label in drawing.labels if label.text[:1] in "123"] == ["1", "2", "3"]

    def test_mitre_is_drawn_at_45_degrees(self) -> None:
        drawing = picture(TWO_MITRED, AddMitredBorder)
        sewn = [shape.points for shape in drawing.shapes if isinstance(shape, Line) and shape.stroke is Stroke.SEWN]
        slanting = [line for line in sewn if len(line) == 2 and line[0].x != line[1].x and line[0].y != line[1].y]
        assert len(slanting) == 2
        for one, other in slanting:
            assert abs(abs(float(one.x) - float(other.x)) - abs(float(one.y) - float(other.y))) < 1e-6

    def test_lengths_on_the_pictures_are_those_of_the_cut_list(self) -> None:
        measured = {shape.text for shape in picture(TWO_MITRED, AddMitredBorder).shapes if isinstance(shape, Measure)}
        assert measured == {"17 1/2 in", "20 1/2 in", "1/4 in"}
        measured = {shape.text for shape in picture(PASSING, AddPartialSeamBorder).shapes if isinstance(shape, Measure)}
        assert measured == {"8 1/2 in", "11 1/2 in"}

    def test_passing_strips_are_numbered_in_order(self) -> None:
        labels = [label.text for label in picture(PASSING, AddPartialSeamBorder).labels]
        assert labels[:1] == ["1"]
        assert [label for label in labels if label in ("1", "2", "3", "4")] == ["1", "1", "2", "3", "4"]

    @pytest.mark.parametrize(
        "project", [TWO_MITRED, PASSING, FILLED, MEDALLION], ids=["mitred", "passing", "blocks", "all"]
    )
    def test_what_is_drawn_as_sewn_is_what_is_finished(self, project: Project) -> None:
        """The walk from step to step ends with the very pieces that were placed, fabric by fabric."""
        made = sheet(project)
        layer = next(step for step in made.program.steps if isinstance(step.operation, LayerForQuilting))
        assert isinstance(layer.operation, LayerForQuilting)
        top = walk(made)[layer.id].uses[layer.operation.top]
        seam = float(made.project.seam_allowance.value)
        for fabric in {patch.fabric for patch in top.patches}:
            walked = union_all([as_shapely(patch.outline) for patch in top.patches if patch.fabric == fabric])
            seen = [one for one in made.sized.placed if one.fabric == fabric and one.part != "binding"]
            placed = union_all([as_shapely(one.outline) for one in seen])
            # The binding lies round the seam lines of the top.
            moved = translate(placed, -seam, -seam)
            assert walked.symmetric_difference(moved).area < 1e-6 * walked.area, fabric
