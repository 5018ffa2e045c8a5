"""A size says only what differs; an edition may too; every figure knows the line that really decided it."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import (
    Assumed,
    BorderCorners,
    BorderOrder,
    Bound,
    CornerPockets,
    Given,
    Grain,
    Method,
    Quantity,
    Sleeve,
    StripDirection,
    StripJoin,
    Turned,
)
from support.pattern_texts import FULL, SMALL, changed, pattern_from, read

PATTERN = pattern_from(FULL)
INCH, CM = Unit.INCH, Unit.CENTIMETRE


def line_of(quantity: Quantity) -> str:
    """Return the text of the line a figure was given on."""
    assert isinstance(quantity.because, Given)
    return FULL.splitlines()[quantity.because.place.line - 1]


def test_no_problem_at_all() -> None:
    assert read(FULL).problems == ()


def test_one_project_for_each_size_and_edition_in_the_order_of_the_file() -> None:
    assert [(project.size, project.unit) for project in PATTERN.projects] == [
        ("mug-rug", INCH), ("mug-rug", CM), ("wall-hanging", INCH), ("wall-hanging", CM), ("lap-quilt", INCH), ("lap-quilt", CM),
    ]  # fmt: skip


def test_what_belongs_to_the_whole_pattern() -> None:
    assert (PATTERN.title, PATTERN.designer, PATTERN.version) == ("Harbour Lanterns", "Saltmarsh Workshop", "1.1")
    assert (PATTERN.skill_level, PATTERN.licence) == ("confident beginner", "CC BY 4.0")
    assert [(change.version, change.date) for change in PATTERN.changes] == [
        ("1.1", "2026-05-02"),
        ("1.0", "2026-03-02"),
    ]
    stated = {claim.figure: (claim.size, claim.stated.value, claim.stated.unit) for claim in PATTERN.claims}
    assert stated == {
        "finished width": ("wall-hanging", Fraction(26), INCH),
        "finished height": ("wall-hanging", Fraction(31, 2), INCH),
        "sea strips": ("wall-hanging", Fraction(3), INCH),
    }


def test_every_key_reaches_the_project() -> None:
    wall = PATTERN.project("wall-hanging", INCH)
    assert (wall.name, wall.use, wall.batting_name) == ("Wall hanging", "wall hanging", "Wool batting")
    assert [(fabric.id, fabric.name, fabric.colour, fabric.is_directional) for fabric in wall.fabrics] == [
        ("sea", "Deep Sea", "#23465f", False), ("fog", "Fog", "#d9dcd6", False), ("lamp", "Lamp Glow", "#e9b44c", False),
        ("reed", "Reed Print", "#7a8b69", True),
    ]  # fmt: skip
    assert wall.fabrics[0].role == "sky and binding"
    assert (wall.seam_allowance.text, wall.usable_width.text, wall.patch_margin.text) == ("1/4 in", "42 in", "3/8 in")
    (block,) = wall.blocks
    assert (block.id, block.name, block.method) == ("lantern", "Storm Lantern", Method.FOUNDATION)
    assert (block.width.text, block.height.text, block.grid_width, block.grid_height) == ("6 in", "9 in", 12, 18)
    assert [piece.id for piece in block.pieces] == ["p1", "roof", "p3", "p4", "p5", "p6", "p7"]
    assert [piece.fabric for piece in block.pieces] == ["lamp", "sea", "fog", "fog", "fog", "fog", "sea"]
    arrangement = wall.arrangement
    assert (arrangement.rows.whole, arrangement.columns.whole) == (1, 3)
    assert arrangement.sashing is not None
    assert (arrangement.sashing.width.text, arrangement.sashing.fabric) == ("1 in", "fog")
    assert (arrangement.sashing.is_around, arrangement.sashing.cornerstone_fabric) == (True, "lamp")
    inner, outer = wall.borders
    assert (inner.id, inner.name, inner.width.text, inner.fabric) == ("inner-border", "inner border", "1 in", "fog")
    assert (inner.order, inner.corners, inner.corner_fabric) == (
        BorderOrder.LONG_SIDES_FIRST, BorderCorners.CORNERSTONES, "lamp",
    )  # fmt: skip
    assert (outer.order, outer.join, outer.strips) == (
        BorderOrder.TOP_AND_BOTTOM_FIRST, StripJoin.STRAIGHT, StripDirection.ALONG,
    )  # fmt: skip
    finish = wall.finish
    assert isinstance(finish, Bound)
    assert (finish.backing_fabric, finish.backing_overage.text, finish.backing_seam.text) == ("sea", "2 in", "5/8 in")
    assert finish.batting_overage.text == "1 1/2 in"
    binding = finish.binding
    assert (binding.fabric, binding.strip_width.text, binding.extra_length.text) == ("sea", "2 1/2 in", "12 in")
    assert (binding.grain, binding.join) == (Grain.BIAS, StripJoin.STRAIGHT)
    sleeve = wall.hanging
    assert isinstance(sleeve, Sleeve)
    assert [each.value for each in (sleeve.cut_depth, sleeve.cut_extra, sleeve.hem, sleeve.drop)] == [
        9,
        -1,
        Fraction(1, 2),
        1,
    ]
    assert wall.introduction is not None and wall.introduction.text.startswith(
        "Hang them by a window.\n\nThey finish {{"
    )
    assert [(step, prose.text) for step, prose in wall.additions] == [("outer-border-sides", "Take your time.")]


def test_a_size_overrides_and_takes_away() -> None:
    mug = PATTERN.project("mug-rug", INCH)
    assert (mug.name, mug.use, mug.summary) == ("Lantern mug rug", "mug rug", "One lantern for one cup.")
    assert (mug.arrangement.rows.whole, mug.arrangement.columns.whole) == (1, 1)
    assert [border.id for border in mug.borders] == ["inner-border"]
    assert isinstance(mug.finish, Turned)
    assert (mug.finish.opening.text, mug.finish.topstitch.text) == ("3 in", "1/4 in")
    assert (mug.finish.backing_fabric, mug.finish.backing_overage.text) == ("sea", "2 in")
    assert mug.hanging is None
    assert mug.additions == ()


def test_a_layout_takes_the_place_of_the_block_above() -> None:
    lap = PATTERN.project("lap-quilt", INCH)
    assert (lap.arrangement.rows.whole, lap.arrangement.columns.whole) == (2, 3)
    first, second = lap.arrangement.positions
    assert [(each.block, each.quarter_turns, each.is_mirrored) for each in (*first, *second)] == [
        ("lantern", 0, False), ("gull", 0, False), ("lantern", 2, False),
        ("gull", 0, True), ("lantern", 0, False), ("gull", 0, False),
    ]  # fmt: skip
    assert [border.id for border in lap.borders] == ["inner-border", "outer-border", "third-border"]
    assert isinstance(lap.hanging, CornerPockets) and lap.hanging.square.text == "5 in"


def test_a_size_has_the_blocks_it_uses() -> None:
    assert [block.id for block in PATTERN.project("mug-rug", INCH).blocks] == ["lantern"]
    assert [block.id for block in PATTERN.project("lap-quilt", INCH).blocks] == ["lantern", "gull"]


def test_a_figure_points_at_the_line_that_decided_it() -> None:
    mug, wall = PATTERN.project("mug-rug", INCH), PATTERN.project("wall-hanging", INCH)
    assert line_of(mug.arrangement.columns) == "    arrangement: {columns: 1}"
    assert line_of(wall.arrangement.columns) == "  columns: 3"
    assert line_of(mug.arrangement.rows) == line_of(wall.arrangement.rows) == "  rows: 1"
    assert line_of(wall.borders[0].width).startswith("  inner border: {width: 1,")
    metric = PATTERN.project("wall-hanging", CM)
    assert line_of(metric.borders[0].width) == line_of(metric.seam_allowance)
    assert line_of(metric.seam_allowance).startswith("  centimetres: {seam allowance: 0.6")
    assert line_of(metric.borders[1].width).startswith("  outer border: {width: 2 1/2,")


def test_width_and_height_of_a_block_have_their_own_places() -> None:
    block = PATTERN.project("mug-rug", INCH).blocks[0]
    line = next(number for number, text in enumerate(FULL.splitlines(), start=1) if text == "    finished size: 6 x 9")
    assert block.width.place is not None and block.height.place is not None
    assert (block.width.place.line, block.width.place.column, block.width.place.end_column) == (line, 20, 21)
    assert (block.height.place.line, block.height.place.column, block.height.place.end_column) == (line, 24, 25)


class TestEditions:
    """Lengths given for an edition are in its unit; the others stay in the unit of the file until they are re-drafted."""

    def test_lengths_of_the_edition_are_in_its_unit(self) -> None:
        wall = PATTERN.project("wall-hanging", CM)
        assert (wall.seam_allowance.text, wall.borders[0].width.text) == ("0.6 cm", "2.5 cm")

    def test_inherited_lengths_keep_theirs(self) -> None:
        wall = PATTERN.project("wall-hanging", CM)
        assert (wall.borders[1].width.text, wall.blocks[0].width.text, wall.usable_width.text) == (
            "2 1/2 in",
            "6 in",
            "42 in",
        )

    def test_a_metric_edition_has_the_metric_seam_allowance(self) -> None:
        """0.75 cm: weednstitch, Metric Flying Geese, 2012 (handbook MET-3)."""
        project = pattern_from(
            changed(SMALL, "title:", "seam allowance: 1/4\neditions: [centimetres]\ntitle:")
        ).project("mug-rug", CM)
        assert project.seam_allowance.text == "0.75 cm"
        assert isinstance(project.seam_allowance.because, Assumed)
        assert "weednstitch" in project.seam_allowance.because.source

    def test_an_inch_edition_of_a_metric_pattern_has_a_quarter_inch(self) -> None:
        text = changed(SMALL, "title:", "units: centimetres\nseam allowance: 0.75\neditions: [inches]\ntitle:")
        pattern = pattern_from(text)
        assert pattern.units == (CM, INCH)
        assert pattern.project("mug-rug", INCH).seam_allowance.text == "1/4 in"
        assert pattern.project("mug-rug", INCH).blocks[0].width.text == "4 cm"

    def test_a_size_may_say_what_differs_in_an_edition(self) -> None:
        base = "editions: {centimetres: {usable width: 110, borders: {rim: {width: 3}}}}\nborders: {rim: {width: 1, fabric: sea}}\n"
        text = changed(SMALL, "title:", base + "title:").replace(
            "mug rug: {}",
            "mug rug: {}\n  quilt: {editions: {centimetres: {borders: {rim: {width: 5}}}}, arrangement: {rows: 5}}",
        )
        pattern = pattern_from(text)
        assert pattern.project("mug-rug", CM).borders[0].width.text == "3 cm"
        quilt = pattern.project("quilt", CM)
        assert (quilt.borders[0].width.text, quilt.usable_width.text) == ("5 cm", "110 cm")
        assert pattern.project("quilt", INCH).borders[0].width.text == "1 in"

    def test_a_size_may_have_other_editions(self) -> None:
        text = changed(SMALL, "title:", "editions: [inches, centimetres]\ntitle:")
        text = changed(text, "mug rug: {}", "mug rug: {editions: [inches]}\n  quilt: {arrangement: {rows: 5}}")
        assert [(each.size, each.unit) for each in pattern_from(text).projects] == [
            ("mug-rug", INCH), ("quilt", INCH), ("quilt", CM),
        ]  # fmt: skip

    def test_what_a_size_took_away_stays_away(self) -> None:
        """The edition says how wide the border is in centimetres; the mug rug has none in either edition."""
        text = changed(
            FULL, "borders: {inner border: {width: 2.5}}}", "borders: {outer border: {width: 6}}, hanging: {hem: 2}}"
        )
        pattern = pattern_from(text)
        assert read(text).problems == ()
        assert [border.id for border in pattern.project("mug-rug", CM).borders] == ["inner-border"]
        assert pattern.project("mug-rug", CM).hanging is None
        assert pattern.project("wall-hanging", CM).borders[1].width.text == "6 cm"
        assert pattern.project("wall-hanging", INCH).borders[1].width.text == "2 1/2 in"

    @pytest.mark.parametrize(
        ("edition", "message"),
        [
            ("borders: {iner border: {width: 6}}", "there is no border 'iner border' that this could be about"),
            ("borders: {third: none}", "there is no border 'third' to take away"),
            ("blocks: {buoy: {finished size: 10}}", "there is no block 'buoy' that this could be about"),
            ("arrangement: {sashing: {width: 3}}", None),
        ],
    )
    def test_what_no_size_has_cannot_be_said_otherwise(self, edition: str, message: str | None) -> None:
        text = changed(FULL, "borders: {inner border: {width: 2.5}}}", edition + "}")
        assert [problem.message for problem in read(text).problems] == ([message] if message else [])

    def test_the_same_number_in_another_unit_is_no_repetition(self) -> None:
        text = changed(SMALL, "title:", "usable width: 42\neditions: {centimetres: {usable width: 42}}\ntitle:")
        assert read(text).problems == ()
        same = changed(SMALL, "title:", "usable width: 42\neditions: {inches: {usable width: 42}}\ntitle:")
        assert [problem.code.name for problem in read(same).problems] == ["says-nothing-different"]

    def test_inches_where_centimetres_belong(self) -> None:
        text = changed(SMALL, "title:", "editions: {centimetres: {seam allowance: 1/4 in}}\ntitle:")
        assert [problem.code.name for problem in read(text).problems] == ["wrong-unit"]


class TestFinishThatChanges:
    """When a size chooses another finish, what belongs to the finish above only is forgotten, and nothing else."""

    def test_from_bound_to_turned_and_back(self) -> None:
        turned = changed(FULL, "finish: {kind: turned, opening: 3, topstitch: 1/4}", "finish: {kind: turned}")
        assert isinstance(pattern_from(turned).project("mug-rug", INCH).finish, Turned)

    def test_a_key_of_the_other_finish_is_a_mistake_when_it_stands_in_the_size(self) -> None:
        text = changed(FULL, "{kind: turned, opening: 3, topstitch: 1/4}", "{kind: turned, binding: {fabric: sea}}")
        assert [problem.code.name for problem in read(text).problems] == ["unknown-key"]

    def test_from_turned_to_bound_needs_a_binding(self) -> None:
        text = changed(SMALL, "mug rug: {}", "mug rug: {finish: {kind: bound}}")
        assert [problem.message for problem in read(text).problems] == ["the bound finish has no 'binding'"]


def test_an_introduction_of_the_whole_is_told_once() -> None:
    assert PATTERN.introduction == PATTERN.projects[0].introduction
    own = changed(FULL, "  wall hanging: {use: wall hanging}", "  wall hanging: {introduction: Hang it high.}")
    pattern = pattern_from(own)
    assert pattern.introduction is None
    assert [project.introduction.text[:7] for project in pattern.projects if project.introduction] == [
        "Hang th", "Hang th", "Hang it", "Hang it", "Hang th", "Hang th",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("written", "line", "column"),
    [
        ("introduction: |\n  One two.", 2, 3),
        ("introduction: |\n\n     One two.", 2, 6),
        ("introduction: One two.", 1, 15),
        ('introduction: "One two."', 1, 16),
        ("introduction: |-\n    One two.\n", 2, 5),
        ("introduction: >\n    One two.\n", 2, 5),
        ("introduction: >-\n\n  One two.", 2, 3),
    ],
)
def test_the_place_of_a_text_is_where_its_words_begin(written: str, line: int, column: int) -> None:
    prose = pattern_from(written + "\n" + SMALL).projects[0].introduction
    assert prose is not None and prose.place is not None
    assert (prose.place.line, prose.place.column) == (line, column)
    words = written.split("\n")[line - 1 + prose.text.split("One")[0].count("\n")][column - 1 :]
    assert words.startswith("One two.")
