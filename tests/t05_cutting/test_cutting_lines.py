"""Cutting instructions: equal strips in one line, pieces counted, what is left over named."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from random import Random

from evenseam.cutting import SubcutLine
from evenseam.exact import Unit, square_root
from evenseam.pattern import Assumed, CutShape, Quantity, StripDirection, StripJoin
from support.cloth_checker import faults
from support.fabrics import cut, plan_of, project_on


def test_three_strips_subcut_into_squares():
    plan = plan_of(project_on(42), cut("square", "9/2", "9/2", 24, CutShape.SQUARE))
    (line,) = plan.lines
    side = Fraction(9, 2)
    assert (line.direction, line.strip_width, line.strip_length) == (StripDirection.ACROSS, side, 42)
    assert (line.count, line.is_full_width) == (3, True)
    assert line.subcuts == (SubcutLine("square", side, side, 24, is_trimmed=False),)


def test_the_rest_of_a_border_strip_gives_sashes_and_the_line_says_so():
    border = cut("border", 65, "5/2", 2, CutShape.STRIP, part="border:inner", join=StripJoin.DIAGONAL)
    sash = cut("sash", "5/2", "19/2", 2, part="sashing")
    plan = plan_of(project_on(42), border, sash)
    assert faults(plan, [border, sash], project_on(42)) == []
    # 130 in from strips worth 39 1/2 in take three whole and a short one; the sashes lie beside that.
    whole, shared = plan.lines
    assert (whole.count, whole.subcuts) == (3, ())
    assert shared.count == 1
    assert [(part.cut, part.count, part.is_left_over) for part in shared.subcuts] == [
        ("border", 1, False),
        ("sash", 2, True),
    ]
    assert not any(part.is_trimmed for part in shared.subcuts)


def test_lower_pieces_in_a_strip_are_trimmed():
    plan = plan_of(project_on(42), cut("high", 10, 6, 3, is_upright=True), cut("low", 10, 5, 1, is_upright=True))
    (line,) = plan.lines
    assert [(part.cut, part.is_trimmed) for part in line.subcuts] == [("high", False), ("low", True)]


def test_sections_are_cut_first_and_their_strips_say_so():
    pieces = [
        cut("side", "9/2", 80, 4, CutShape.STRIP, direction=StripDirection.ALONG, part="border:outer"),
        cut("patch", 3, 5, 100),
    ]
    plan = plan_of(project_on(42), *pieces)
    assert plan.sections == (80,)
    first = plan.lines[0]
    assert (first.direction, first.strip_width, first.strip_length, first.count, first.section) == (
        StripDirection.ALONG, Fraction(9, 2), 80, 4, 1,
    )  # fmt: skip
    assert {line.section for line in plan.lines[1:] if line.strip_length < 42} == {1}


def test_joined_strips_are_cut_before_patches():
    pieces = [
        cut("patch", "7/2", "7/2", 40),
        cut("binding", "9/4", 200, 1, CutShape.BINDING, part="binding", join=StripJoin.DIAGONAL),
    ]
    plan = plan_of(project_on(42), *pieces)
    assert plan.lines[0].strip_width == Fraction(9, 4)
    assert plan.strips[0].y == 0


def test_a_size_on_no_mark_is_planned_on_the_next_half_mark_and_the_length_agrees():
    """A square of 5√2 in, 7.07, is cut from strips of 7 1/8 in; the figure in the cutting list stays what it is."""
    side = Quantity("side", 5 * square_root(2), Unit.INCH, Assumed("a sample"))
    plan = plan_of(project_on(42), replace(cut("square", 7, 7, 30, CutShape.SQUARE), width=side, height=side))
    assert plan.lines[0].strip_width == Fraction(57, 8)
    assert plan.lines[0].subcuts[0].width == side.value
    assert plan.length.value == 6 * Fraction(57, 8) + Fraction(1, 2)


def test_a_fabric_of_very_many_sizes_is_planned_with_its_bound():
    """Forty sizes in millimetres: too much to prove, but the plan can be followed and is within 5 percent."""
    random = Random(3)
    sizes = [(Fraction(random.randint(12, 200), 10), Fraction(random.randint(12, 200), 10)) for _ in range(40)]
    pieces = [cut(f"piece-{n}", *size, 2 + n % 7, unit=Unit.CENTIMETRE) for n, size in enumerate(sizes)]
    project = project_on(112, Unit.CENTIMETRE, "3/4")
    plan = plan_of(project, *pieces)
    assert faults(plan, pieces, project) == []
    assert plan.lower_bound <= plan.length.value <= plan.lower_bound * Fraction(21, 20)


def test_joined_strips_are_cut_shorter_where_they_then_lie_beside_lengthwise_strips():
    settings = {"part": "border:outer", "join": StripJoin.DIAGONAL, "shape": CutShape.STRIP, "is_upright": True}
    pieces = [cut("side", "9/2", 80, 1, **settings), cut("ends", 80, "9/2", 2, **settings)]
    plan = plan_of(project_on(42), *pieces)
    assert faults(plan, pieces, project_on(42)) == []
    # Beside the 80 in side there is room for strips of 37 1/2 in: one strip and one join more, 18 in of cloth less.
    assert plan.length.value == 80 + Fraction(1, 2)
    assert {strip.width for strip in plan.strips if strip.direction is StripDirection.ACROSS} == {Fraction(75, 2)}
    assert plan.is_shortest


def test_pieces_of_one_size_are_cut_as_one_whichever_way_it_is_written():
    upright, lying = cut("upright", 2, "19/2", 10, part="sashing"), cut("lying", "19/2", 2, 12, part="sashing")
    plan = plan_of(project_on(42), upright, lying)
    assert faults(plan, [upright, lying], project_on(42)) == []
    assert {frozenset(group) for group in plan.alike} == {frozenset(("upright", "lying"))}
    assert set(plan.numbers.values()) == {1}
    assert sum(part.count for line in plan.lines for part in line.subcuts) == 22
    assert {(part.cut, *part.also) for line in plan.lines for part in line.subcuts} == {plan.alike[0]}


def test_a_print_that_must_stay_upright_keeps_them_apart():
    pieces = [cut("upright", 2, "19/2", 10, is_upright=True), cut("lying", "19/2", 2, 12, is_upright=True)]
    plan = plan_of(project_on(42), *pieces)
    assert plan.alike == ()
    assert sorted(plan.numbers.values()) == [1, 2]


def test_a_joined_strip_is_longer_than_its_pieces_and_says_so():
    """Half an inch or a centimetre for each piece, to cut a crooked join straight: common practice."""
    for unit, width, spare in ((Unit.INCH, 42, Fraction(1, 2)), (Unit.CENTIMETRE, 107, Fraction(1))):
        border = cut(
            "border", width + 20, 3, 2, CutShape.STRIP, part="border:inner", join=StripJoin.STRAIGHT, unit=unit
        )
        project = project_on(width, unit)
        plan = plan_of(project, border)
        assert faults(plan, [border], project) == []
        (joined,) = plan.joined
        assert joined.spare is not None and joined.spare.value == spare
        lengths = sum(piece.width for strip in plan.strips for piece in strip.pieces)
        seams = joined.lengths - 1
        assert lengths - seams * 2 * project.seam_allowance.value >= 2 * (width + 20 + spare)


def test_binding_and_backing_have_their_own_spare():
    binding = cut("binding", "9/4", 200, 1, CutShape.BINDING, part="binding", join=StripJoin.DIAGONAL)
    backing = cut("backing", 60, 70, 1, part="backing", join=StripJoin.STRAIGHT)
    assert [joined.spare for joined in plan_of(project_on(42), binding).joined] == [None]
    assert [joined.spare for joined in plan_of(project_on(42), backing).joined] == [None]


def test_a_plan_says_when_cloth_must_not_be_narrower():
    for width, fills in ((42, True), ("335/8", True), (40, False)):
        plan = plan_of(project_on(42), cut("long", width, 3, 2, direction=StripDirection.ACROSS))
        assert plan.fills_width is fills
    assert plan_of(project_on(42), cut("row", 14, 3, 3, is_upright=True)).fills_width
