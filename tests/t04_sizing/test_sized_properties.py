"""What holds for every project that can be sized."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Direction, Number, to_float
from evenseam.pattern import Bound, Derived, Project, Quantity, equation, explain
from evenseam.sizing import SizedProject, assembly_program, cut_list
from hypothesis import given, settings
from shapely import Polygon as Shape
from shapely import unary_union
from support.strategies import projects
from support.tops import sized


def _quantities(result: SizedProject) -> list[Quantity]:
    """Return every figure that can be printed: of the plan, the cut list and the program."""
    cuts = cut_list(result)
    found = [quantity for _, quantity in result.figures]
    found += [quantity for cut in cuts.cuts for quantity in (cut.width, cut.height, cut.count)]
    for step in assembly_program(result, cuts).steps:
        found += step.measures or ()
    return found


@settings(max_examples=60)
@given(projects())
def test_visible_pieces_fill_the_finished_project_exactly(project: Project) -> None:
    result = sized(project)
    area: Number = Fraction(0)
    for placed in result.placed:
        area = area + placed.outline.area
    assert area == result.finished_width.value * result.finished_height.value


@settings(max_examples=25)
@given(projects())
def test_visible_pieces_do_not_overlap(project: Project) -> None:
    result = sized(project)
    shapes = [
        Shape([(to_float(corner.x), to_float(corner.y)) for corner in placed.outline.corners])
        for placed in result.placed
    ]
    whole = unary_union(shapes)
    width, height = to_float(result.finished_width.value), to_float(result.finished_height.value)
    assert abs(whole.area - width * height) < 1e-6 * width * height
    assert all(abs(found - bound) < 1e-9 for found, bound in zip(whole.bounds, (0, 0, width, height), strict=True))


@settings(max_examples=40)
@given(projects())
def test_every_figure_can_say_why(project: Project) -> None:
    for quantity in _quantities(sized(project)):
        lines = explain(quantity).splitlines()
        assert lines[0] == f"{quantity.name}: {quantity.text}"
        assert len(lines) >= 2
        assert equation(quantity)


@settings(max_examples=40)
@given(projects())
def test_rounding_never_moves_a_figure_a_whole_step(project: Project) -> None:
    rounded = 0
    for quantity in _quantities(sized(project)):
        if isinstance(quantity.because, Derived) and quantity.because.rounding is not None:
            rounded += 1
            rounding, exact = quantity.because.rounding, quantity.because.expression.value
            moved = quantity.value - exact
            if rounding.direction is Direction.UP:
                assert 0 <= moved < rounding.grid
            else:
                assert -rounding.grid / 2 <= moved <= rounding.grid / 2
    assert rounded or not any(block.method.value == "foundation" for block in project.blocks)


@settings(max_examples=40)
@given(projects())
def test_finish_decides_between_raw_and_finished(project: Project) -> None:
    result = sized(project)
    seams = 0 if isinstance(project.finish, Bound) else 2 * result.project.seam_allowance.value
    assert result.top_width.value - result.finished_width.value == seams
    assert result.top_height.value - result.finished_height.value == seams


@settings(max_examples=25)
@given(projects())
def test_the_same_project_gives_the_same_result(project: Project) -> None:
    one, other = sized(project), sized(project)
    assert one == other
    assert [explain(quantity) for quantity in _quantities(one)] == [
        explain(quantity) for quantity in _quantities(other)
    ]
    assert cut_list(one) == cut_list(other)
    assert assembly_program(one, cut_list(one)) == assembly_program(other, cut_list(other))
