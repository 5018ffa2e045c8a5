"""What a maker is told about edges, hanging, heat and fitted sizes, and that there is a picture of each."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evenseam.figures import Theme, draw, to_svg
from evenseam.pattern import BATTING, INSULATION, CutList, LayerForQuilting, LayerTurned, Program, Project
from evenseam.sheet import PatternSheet, compute_sheet
from evenseam.sizing import sew
from evenseam.wording import write_document
from evenseam.wording.cautions import caution_names
from support.document_words import as_text
from support.edges import ENVELOPE, FACED, KNIFE_EDGE, LOOPS, RINGS, ROUNDED, fitted
from support.pattern_texts import pattern_from
from support.samples import LAP_QUILT, MUG_RUG, PATTERN, POCKETS, SLEEVE, TURNED, WALL_HANGING, count

ONE_LOOP = replace(LOOPS, number=count("number of loops", 1))
POT_HOLDER = replace(MUG_RUG, use="pot holder", finish=ROUNDED, hanging=ONE_LOOP)


def _sheet(project: Project) -> PatternSheet:
    outcome = compute_sheet(replace(PATTERN, projects=(project,)), project)
    assert outcome.value is not None, outcome.problems
    return outcome.value


def _text(project: Project) -> str:
    document = write_document(_sheet(project)).value
    assert document is not None
    return as_text(document)


class TestHeat:
    """A pot holder gets heat-resistant batting besides the cotton, and is kept clear of flames."""

    @pytest.mark.parametrize("finish", [ROUNDED, TURNED, FACED])
    def test_batting_and_cautions(self, finish: object) -> None:
        text = _text(replace(POT_HOLDER, finish=finish))
        assert "Heat-resistant batting" in text and "All fabric and thread must be cotton" in text
        assert "the heat-resistant batting" in text  # where the layers are laid
        assert "open flames" in text and "not heatproof" in text and "maker’s instructions" in text

    def test_no_film_goes_into_a_microwave_oven(self) -> None:
        # questioningquilter, 2018; 52quilts, 2012: insulated batting has a metallised film.
        assert "Heat-resistant batting" not in _text(replace(POT_HOLDER, use="microwave bowl pot holder"))

    def test_a_loop_for_a_hook_needs_no_rod(self) -> None:
        assert caution_names(POT_HOLDER) == ("work", "heat")
        assert " rod" not in _text(POT_HOLDER)

    @pytest.mark.parametrize("finish", [ROUNDED, TURNED, FACED])
    def test_it_is_a_layer_of_its_own(self, finish: object) -> None:
        """It is cut as large as the cotton batting, bought by itself, laid between and seen in the picture."""
        sheet = _sheet(replace(POT_HOLDER, finish=finish))
        (layer,), (cotton,) = sheet.cuts.of(INSULATION), sheet.cuts.of(BATTING)
        assert (layer.width.value, layer.height.value) == (cotton.width.value, cotton.height.value)
        assert [material.name for material in sheet.materials][-2:] == ["Cotton batting", "Heat-resistant batting"]
        assert "heat-resistant" in to_svg(
            draw(sheet, "step-layer"), title="t", description="d", theme=Theme.PRINT, id_prefix="p"
        )

    @pytest.mark.parametrize("finish", [ROUNDED, TURNED, FACED])
    def test_the_simulator_misses_it(self, finish: object) -> None:
        sheet = _sheet(replace(POT_HOLDER, finish=finish))
        project, program = sheet.project, sheet.program
        bare = Program(
            tuple(
                replace(step, operation=replace(step.operation, insulation=None))
                if isinstance(step.operation, LayerTurned | LayerForQuilting)
                else step
                for step in program.steps
            )
        )
        without = CutList(tuple(cut for cut in sheet.cuts.cuts if cut.material != INSULATION))
        smaller = tuple(
            replace(cut, width=replace(cut.width, value=cut.width.value - 1)) if cut.material == INSULATION else cut
            for cut in sheet.cuts.cuts
        )
        assert sew(project, sheet.cuts, program).is_valid
        for cuts, steps, code in (
            (sheet.cuts, bare, "piece-left-over"), (without, bare, "wrong-workpiece"),
            (without, program, "workpiece-unknown"), (CutList(smaller), program, "layer-size-differs"),
        ):  # fmt: skip
            assert code in {problem.code.name for problem in sew(project, cuts, steps).problems}
        cold = replace(project, use="", name="Mat", size="mat")
        assert "wrong-workpiece" in {problem.code.name for problem in sew(cold, sheet.cuts, program).problems}

    @pytest.mark.parametrize(
        ("project", "called"),
        [
            (replace(MUG_RUG, use="pot holder", finish=ROUNDED, hanging=None), "Layer the pot holder"),
            (replace(LAP_QUILT), "Layer the quilt"),
            (replace(WALL_HANGING, finish=ROUNDED, hanging=None), "Layer the wall hanging"),
            (replace(MUG_RUG, finish=ENVELOPE, hanging=None), "Layer the cushion front"),
        ],
        ids=lambda value: value if isinstance(value, str) else "",
    )
    def test_what_is_layered_is_called_by_its_name(self, project: Project, called: str) -> None:
        assert f" {called}\n" in _text(project)

    def test_nothing_else_gets_it(self) -> None:
        assert "Heat-resistant" not in _text(MUG_RUG)


class TestHanging:
    """The rod, the weight and the usual caution are told for everything that hangs."""

    @pytest.mark.parametrize("hanging", [SLEEVE, POCKETS, LOOPS, RINGS], ids=lambda hanging: type(hanging).__name__)
    def test_rod_and_weight(self, hanging: object) -> None:
        project = replace(WALL_HANGING, hanging=hanging)
        sheet, text = _sheet(project), _text(project)
        assert f"a rod or lath {sheet.figure('rod_length').text} long" in text
        assert f"weighs about {sheet.figure('weight').text}, estimated" in text
        assert "On the wall" in text and "fix them as your wall needs" in text


class TestCushion:
    """A cover names its pad, its lining and the way the panels lie."""

    def test_words(self) -> None:
        project = replace(MUG_RUG, finish=ENVELOPE)
        text = _text(project)
        assert "Cushion pad: 8 × 11 in" in text
        assert (
            "lay the lining flat" in text.lower()
            and "backing" not in text.split("Layer the cushion front")[1].split("Usual")[0]
        )


class TestFit:
    """The page says what was asked for, what came of it, and out of what it was chosen."""

    def test_figures(self) -> None:
        text = _text(fitted(LAP_QUILT, "63", "87", name="twin bed"))
        assert "Made to fit a twin bed" in text and "That asks for 63 × 87 in" in text
        assert "nearest of all numbers of rows and columns and all widths of the outer border" in text
        # Nobody makes a quilt to fit a lap.
        assert "Made to the usual size of a lap quilt" in _text(fitted(LAP_QUILT, "60", "72", name="lap"))

    def test_where_published_sizes_differ_the_choice_is_told(self) -> None:
        text = """\
format: 1
title: Sample
fabrics:
  sea: {colour: "#23465f"}
blocks:
  buoy: {finished size: 12, grid: 1 x 1, method: rotary, pieces: [sea: "0,0 1,0 1,1 0,1"]}
arrangement: {rows: 1, columns: 1, block: buoy}
finish: {kind: turned, backing: {fabric: sea}}
borders: {edge: {width: 2, fabric: sea}}
sizes:
  quilt: {fit: king}
"""
        pattern = pattern_from(text)
        sheet = compute_sheet(pattern, pattern.projects[0]).value
        assert sheet is not None
        document = write_document(sheet).value
        assert document is not None
        said = as_text(document)
        assert "78 × 80 in is sold too" in said and "with a drop of 12 in" in said


PICTURED = [
    replace(WALL_HANGING, finish=FACED, hanging=LOOPS), replace(WALL_HANGING, finish=KNIFE_EDGE, hanging=RINGS),
    replace(WALL_HANGING, finish=KNIFE_EDGE, hanging=LOOPS), POT_HOLDER, replace(MUG_RUG, finish=ENVELOPE),
    replace(WALL_HANGING, finish=ROUNDED, hanging=SLEEVE),
]  # fmt: skip


@pytest.mark.parametrize("project", PICTURED, ids=range(len(PICTURED)))
@pytest.mark.parametrize("theme", Theme)
def test_every_step_of_an_edge_has_a_picture_of_its_own(project: Project, theme: Theme) -> None:
    sheet = _sheet(project)
    drawn = [to_svg(draw(sheet, f"step-{step.id}"), theme, "t", "d", "p") for step in sheet.program.steps[-7:]]
    assert len(set(drawn)) == len(drawn)
    assert all(picture.count("<path") + picture.count("<polygon") > 1 for picture in drawn)


def test_loops_stand_above_the_finished_piece() -> None:
    sheet = _sheet(replace(WALL_HANGING, hanging=LOOPS))
    plain = _sheet(replace(WALL_HANGING, hanging=None))
    heights = [to_svg(draw(each, "finished"), Theme.PRINT, "t", "d", "p").split('viewBox="')[1].split('"')[0].split() for each in (sheet, plain)]  # fmt: skip
    assert float(heights[0][3]) > float(heights[1][3])
