"""Every problem the sizing can report, with its place, its figures and its way out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.exact import Unit, square_root
from evenseam.geometry import Polygon
from evenseam.pattern import (
    BlockPiece,
    BlockPosition,
    Given,
    Method,
    Project,
    Quantity,
    Sashing,
    Setting,
    Turned,
    UnequalRow,
    UnitBatch,
)
from evenseam.problems import Place, Problem, Severity
from evenseam.sizing import size_project
from evenseam.sizing.codes import CODES
from support.borders import bordered, mitred, of_blocks, pennant
from support.edges import EDGE_CASES, fitted
from support.on_point import on_point
from support.row_files import read
from support.samples import (
    BOUND,
    CONVEX_LANTERN,
    LAP_QUILT,
    MUG_RUG,
    POCKETS,
    SLEEVE,
    TURNED,
    WALL_HANGING,
    count,
    grid,
    length,
    polygon,
)
from support.tops import plain_block, plain_top

PLACE = Place("patterns/sample/pattern.yaml", 7, 3, 7, 9)


def _given(quantity: Quantity) -> Quantity:
    return replace(quantity, because=Given(PLACE))


def _oblong_on_point() -> Project:
    block = replace(plain_block(Fraction(6), Fraction(8)), width=_given(length("width", "6")))
    return on_point("6", blocks=(block,))


def _askew_on_point(sash: str = "fog") -> Project:
    project = on_point("6", sash="1", fabrics=MUG_RUG.fabrics)
    block = project.blocks[0]
    reed = replace(block, pieces=(replace(block.pieces[0], fabric="reed"),))
    sashing = replace(project.arrangement.sashing, fabric=sash)
    placed = replace(project.arrangement, place=PLACE, sashing=sashing)
    return replace(project, blocks=(reed,), arrangement=placed)


def _short_row() -> Project:
    ketch, buoy = plain_block(Fraction(6), Fraction(8), id="ketch"), plain_block(Fraction(3), Fraction(8), id="buoy")
    rows = (("ketch", "ketch"), ("ketch", "buoy"))
    positions = tuple(tuple(BlockPosition(name) for name in row) for row in rows)
    arrangement = replace(
        grid(2, 2), setting=Setting.UNEQUAL_ROWS, positions=positions,
        unequal_rows=tuple(UnequalRow(row, PLACE) for row in positions),
    )  # fmt: skip
    return plain_top("10", "10", blocks=(ketch, buoy), arrangement=arrangement)


def _no_float() -> Project:
    project = on_point("6", floated="0")
    triangles = project.arrangement.setting_triangles
    assert triangles is not None
    triangles = replace(triangles, float_width=_given(triangles.float_width))
    return replace(project, arrangement=replace(project.arrangement, setting_triangles=triangles))


def _odd_fit() -> Project:
    project = on_point("6")
    (first, *others), *lines = project.arrangement.positions
    positions = ((replace(first, quarter_turns=2), *others), *lines)
    odd = replace(project, arrangement=replace(project.arrangement, positions=positions))
    return fitted(odd, "20", "28")


def _wide_fit() -> Project:
    return fitted(read("    - [ketch, ketch]\n    - [ketch, spacer fog, buoy]\n"), "40", "16")


def _too_large() -> Project:
    return replace(LAP_QUILT, arrangement=replace(grid(16, 23), place=PLACE), borders=())


def _too_many() -> Project:
    many = replace(grid(41, 50), rows=_given(count("rows", 41)))
    small = replace(CONVEX_LANTERN, width=length("width", "1"), height=length("height", "1 1/2"))
    return replace(MUG_RUG, blocks=(small,), arrangement=many)


def _unequal() -> Project:
    other = replace(CONVEX_LANTERN, id="buoy", name="Buoy", width=length("buoy width", "4"))
    arrangement = replace(grid(1, 2), positions=((BlockPosition("lantern"), BlockPosition("buoy")),), place=PLACE)
    return replace(MUG_RUG, blocks=(CONVEX_LANTERN, other), arrangement=arrangement)


def _no_width() -> Project:
    border = replace(MUG_RUG.borders[0], width=_given(length("border width", "0")))
    return replace(MUG_RUG, borders=(border,))


def _long_opening() -> Project:
    return replace(MUG_RUG, finish=replace(TURNED, opening=_given(length("opening", "11"))))


def _wide_pockets() -> Project:
    return replace(MUG_RUG, hanging=replace(POCKETS, square=length("square", "4 1/4"), place=PLACE))


def _long_sleeve() -> Project:
    return replace(WALL_HANGING, hanging=replace(SLEEVE, hem=length("hem", "1/2"), place=PLACE))


def _same_names() -> Project:
    one = MUG_RUG.borders[0]
    borders = (replace(one, id="reed-border"), replace(one, id="reed border", width=length("width", "2")))
    return replace(MUG_RUG, borders=borders, place=PLACE)


def _odd_border() -> Project:
    border = replace(MUG_RUG.borders[0], width=_given(length("inner border width", "1 1/16")))
    return replace(MUG_RUG, borders=(border,))


def _odd_proportions() -> Project:
    block = replace(CONVEX_LANTERN, width=length("width", "5 1/2"), height=length("height", "7 1/4"), place=PLACE)
    return replace(MUG_RUG, unit=Unit.CENTIMETRE, blocks=(block,))


def _useless_sashing() -> Project:
    sashing = Sashing(length("sashing width", "1"), "fog", is_around=False, place=PLACE)
    return replace(MUG_RUG, arrangement=replace(grid(1, 1), sashing=sashing))


def _thin() -> Project:
    # Twelve grid units are 6 in: an eighth of one is 1/16 in.
    strips = ("0,0 12,0 12,8 0,8", "0,8 12,8 12,65/8 0,65/8", "0,65/8 12,65/8 12,18 0,18")
    pieces = tuple(BlockPiece(f"p{number}", "fog", polygon(text), PLACE) for number, text in enumerate(strips, start=1))
    return replace(MUG_RUG, blocks=(replace(CONVEX_LANTERN, pieces=pieces, place=PLACE),))


def _two_triangles() -> Project:
    corners = polygon("0,0 12,0 0,18")
    pieces = (BlockPiece("p1", "fog", corners),)
    block = replace(CONVEX_LANTERN, outline=corners, pieces=pieces, place=PLACE)
    return replace(MUG_RUG, blocks=(block,), arrangement=grid(1, 2))


def _no_such_units() -> Project:
    block = replace(CONVEX_LANTERN, unit_method=UnitBatch.TWO, place=PLACE)
    return replace(MUG_RUG, blocks=(block,))


def _uneven_blocks() -> Project:
    return _placed(bordered(of_blocks("ring", "pennant", spacer=None), blocks=(pennant("2 1/2"),)))


def _corner_too_large() -> Project:
    return _placed(bordered(of_blocks("ring", "pennant", "corner"), blocks=(pennant(), pennant("3", "3", "corner"))))


def _odd_spacer() -> Project:
    return _placed(bordered(of_blocks("ring", "pennant"), blocks=(pennant("2 3/8"),)))


def _tiny_blocks() -> Project:
    project = bordered(of_blocks("ring", "pennant"), blocks=(pennant("1/8", "1/8"),))
    wide = replace(project.blocks[0], width=length("width", "40"))
    return _placed(replace(project, blocks=(wide, project.blocks[1])))


def _ease_below_zero() -> Project:
    border = mitred("inner border", "1", ease="-1")
    assert border.ease is not None
    return bordered(replace(border, ease=_given(border.ease)))


def _spacer_below_zero() -> Project:
    border = of_blocks("ring", "pennant", least="-1")
    assert border.pieced is not None and border.pieced.least_spacer is not None
    pieced = replace(border.pieced, least_spacer=_given(border.pieced.least_spacer))
    return bordered(replace(border, pieced=pieced), blocks=(pennant(),))


def _placed(project: Project) -> Project:
    (border,) = project.borders
    assert border.pieced is not None
    return replace(project, borders=(replace(border, pieced=replace(border.pieced, place=PLACE)),))


CASES = [
    ("not-square-on-point", _oblong_on_point(), "6 in × 8 in", "6 in square"),
    ("print-lies-askew", _askew_on_point(), "leans by 45 degrees", "without direction"),
    ("rows-do-not-meet", _short_row(), "lacks 3 in", "spacer"),
    ("off-the-ruler", _no_float(), "17 in wide", "is 17 in with a float of about"),
    ("project-too-large", _too_large(), "144 1/2 in", "narrower"),
    ("too-many-blocks", _too_many(), "2050", "fewer"),
    ("blocks-do-not-fit", _unequal(), "Buoy stands 4 in × 9 in", "one size"),
    ("length-not-positive", _no_width(), "0 in", "above 0"),
    ("opening-longer-than-edge", _long_opening(), "11 in long", "third"),
    ("hanging-too-large", _wide_pockets(), "4 1/4 in", "smaller"),
    ("hanging-too-large", _long_sleeve(), "30 1/2 in long on a project 29 1/2 in wide", "hems"),
    ("figure-name-taken", _same_names(), "reed_border_width", "rename"),
    ("off-the-ruler", _odd_border(), "1 1/16 in", "1 in and 1 1/8 in"),
    ("proportions-changed", _odd_proportions(), "14 cm × 18.5 cm", "proportions"),
    ("sashing-unused", _useless_sashing(), "only one block", "all round"),
    (
        "pieced-border-uneven",
        _uneven_blocks(),
        "6 in is about 2 3/8 times",
        "3 blocks and left and right spacer strips",
    ),
    ("corner-block-does-not-fit", _corner_too_large(), "3 in × 3 in", "2 in × 2 in"),
    ("off-the-ruler", _odd_spacer(), "9/16 in wide", "least spacer"),
    ("too-many-blocks", _tiny_blocks(), "250", "larger block"),
    ("length-not-positive", _ease_below_zero(), "ease of the inner border is −1 in", "such as 4"),
    ("length-not-positive", _spacer_below_zero(), "least spacer is −1 in", "such as 1/2"),
    ("thin-piece", _thin(), "p2 of the Lantern block finishes 1/16 in wide", "wider"),
    ("not-yet", _two_triangles(), "with others", "whole project"),
    ("unit-method-unused", _no_such_units(), "sewn on foundations", "rotary"),
    ("fit-keeps-layout", _odd_fit(), "there stay 3 rows of 2", "choose: borders"),
    ("fit-far-off", _wide_fit(), "where 40 in", "repeated downwards only"),
    *EDGE_CASES,
]


def _found(project: Project, code: str) -> list[Problem]:
    return [problem for problem in size_project(project).problems if problem.code.name == code]


@pytest.mark.parametrize(("code", "project", "words", "way_out"), CASES, ids=[f"{case[0]} {case[2]}" for case in CASES])
def test_each_problem_has_figures_a_place_and_a_way_out(code: str, project: Project, words: str, way_out: str) -> None:
    outcome = size_project(project)
    found = _found(project, code)
    assert found, [problem.message for problem in outcome.problems]
    assert words in found[0].message
    assert way_out in found[0].hint
    assert found[0].place == PLACE
    assert (outcome.value is None) is (found[0].severity is Severity.ERROR)


def test_every_code_has_a_case_and_a_number_of_its_own() -> None:
    assert {code.name for code in CODES} == {case[0] for case in CASES}
    assert len({code.number for code in CODES}) == len(CODES)
    assert all(400 <= code.number < 450 for code in CODES)


def test_ceiling_is_the_same_in_centimetres() -> None:
    # 140 in are 355.6 cm: sixteen rows of 22.5 cm are higher, 23 columns of 15 cm are not as wide.
    found = _found(replace(_too_large(), unit=Unit.CENTIMETRE), "project-too-large")
    assert [problem.message for problem in found] == [
        "the finished height is 361.5 cm; at most 355.6 cm can be planned"
    ]


def test_all_mistakes_are_told_at_once() -> None:
    corner = _corner_too_large()
    borders = (*_ease_below_zero().borders, *_no_width().borders, *corner.borders)
    assert sorted(problem.code.name for problem in size_project(replace(corner, borders=borders)).problems) == [
        "corner-block-does-not-fit", "length-not-positive", "length-not-positive",
    ]  # fmt: skip


def test_samples_have_nothing_to_report() -> None:
    for project in (MUG_RUG, WALL_HANGING, LAP_QUILT):
        for unit in (Unit.INCH, Unit.CENTIMETRE):
            assert size_project(replace(project, unit=unit)).problems == ()


class TestOffTheRuler:
    """A cut size on no mark of the ruler is told once, where it comes from, with the nearest sizes that can be cut."""

    def test_one_warning_for_each_stated_length(self) -> None:
        found = _found(_odd_border(), "off-the-ruler")
        assert len(found) == 1
        assert found[0].message == (
            "inner border width is 1 1/16 in, so that side strips of the inner border would be cut 1 9/16 in: on no "
            "mark of a ruler with marks every 1/8 in"
        )

    def test_grid_that_divides_badly_names_the_blocks_that_divide_well(self) -> None:
        # Ten inches on three cells: a cell of 3 1/3. Cells of 3 1/4 and 3 3/8 make 9 3/4 and 10 1/8.
        stripes = tuple(
            BlockPiece(f"p{row}", "fog", polygon(f"0,{row} 3,{row} 3,{row + 1} 0,{row + 1}")) for row in range(3)
        )
        block = replace(
            plain_block(Fraction(10), Fraction(10)), pieces=stripes, outline=polygon("0,0 3,0 3,3 0,3"),
            grid_width=Fraction(3), grid_height=Fraction(3), height=_given(length("plain height", "10")),
        )  # fmt: skip
        assert block.method is Method.ROTARY
        found = _found(plain_top("10", "10", blocks=(block,)), "off-the-ruler")
        assert len(found) == 1
        assert "because a grid cell of Plain finishes at about 3 5/16 in" in found[0].message
        assert "9 3/4 in and 10 1/8 in high" in found[0].hint
        assert found[0].place == PLACE

    def test_piece_off_a_good_grid_names_the_sizes_it_could_be_drawn_at(self) -> None:
        # A grid of inches with a line at 12 × (√2 − 1) = 4.97: the piece left of it finishes 4.97 in wide.
        across = 12 * (square_root(2) - 1)
        pieces = (
            BlockPiece("left", "fog", Polygon.rectangle(Fraction(0), Fraction(0), across, Fraction(12))),
            BlockPiece("right", "sea", Polygon.rectangle(across, Fraction(0), 12 - across, Fraction(12))),
        )
        block = replace(
            plain_block(Fraction(12), Fraction(12)), pieces=pieces, outline=polygon("0,0 12,0 12,12 0,12"),
            grid_width=Fraction(12), grid_height=Fraction(12), width=_given(length("plain width", "12")),
        )  # fmt: skip
        found = _found(plain_top("10", "10", blocks=(block,)), "off-the-ruler")
        assert [problem.place for problem in found] == [PLACE]
        assert found[0].hint == "draw it to finish 4 7/8 in or 5 in wide"

    def test_foundation_patches_are_rounded_and_never_told(self) -> None:
        block = replace(CONVEX_LANTERN, width=length("width", "5"), height=length("height", "7 1/2"))
        assert _found(replace(MUG_RUG, blocks=(block,)), "off-the-ruler") == []

    def test_centimetre_ruler_has_millimetres(self) -> None:
        seam = length("seam allowance", "0.75", Unit.CENTIMETRE)
        project = plain_top("30", "40.3", Unit.CENTIMETRE, seam_allowance=seam)
        assert _found(project, "off-the-ruler") == []
        border = replace(MUG_RUG.borders[0], width=length("border width", "3.25", Unit.CENTIMETRE))
        assert len(_found(replace(project, borders=(border,)), "off-the-ruler")) == 1


def test_turned_finish_without_room_for_the_opening_on_one_edge_is_no_problem() -> None:
    finish = replace(TURNED, opening=length("opening", "9"))
    assert isinstance(finish, Turned)
    assert size_project(replace(MUG_RUG, finish=finish)).is_valid
    assert size_project(replace(MUG_RUG, finish=BOUND)).is_valid
