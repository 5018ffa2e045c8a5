"""Every single mistake that can be made in a cut list or an assembly program, one at a time.

A mutant is a cut list and a program of which one figure, name or number has been changed. Words that no needle feels
(labels, pressing, the name of a section, the edge that is left open) are not changed.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, fields, replace
from fractions import Fraction
from typing import Any

from evenseam.geometry import Point, Polygon
from evenseam.pattern import BATTING, Cut, CutList, CutShape, Operation, PatchUse, Program, Project, Quantity, Run, Step

WORDS = {"press", "kind", "section", "label", "opening_edge"}
NOT_SQUARED = {CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE, CutShape.TEMPLATE}
"""Cuts that are not used as the square or rectangle they are cut from."""


@dataclass(frozen=True)
class Mutant:
    """What was changed, and what came of it."""

    change: str
    cuts: CutList
    program: Program


def mutants(project: Project, cuts: CutList, program: Program) -> Iterator[Mutant]:
    """Yield every mutant of a sound cut list and program."""
    for place in range(len(cuts.cuts) + len(program.steps)):
        yield from mutants_at(project, cuts, program, place)


def mutants_at(project: Project, cuts: CutList, program: Program, place: int) -> Iterator[Mutant]:
    """Yield the mutants of one cut or, counted on from the last cut, of one step."""
    index = place - len(cuts.cuts)
    if index < 0:
        cut = cuts.cuts[place]
        for change, wrong in wrong_cuts(project, cut):
            yield Mutant(f"cut {cut.id}: {change}", CutList(_with(cuts.cuts, place, *wrong)), program)
        return
    names = [cut.id for cut in cuts.cuts] + [step.makes for step in program.steps]
    step = program.steps[index]
    for change, steps in wrong_steps(project, step, names):
        yield Mutant(f"step {step.id}: {change}", cuts, Program(_with(program.steps, index, *steps)))


def a_mutant(draw: Callable[[int, int], int], project: Project, cuts: CutList, program: Program) -> Mutant:
    """Return a mutant at random; `draw` returns a whole number from the first to the second, both included."""
    found = list(mutants_at(project, cuts, program, draw(0, len(cuts.cuts) + len(program.steps) - 1)))
    return found[draw(0, len(found) - 1)]


def wrong_cuts(project: Project, cut: Cut) -> Iterator[tuple[str, tuple[Cut, ...]]]:
    """Yield what may stand in place of a cut by one mistake."""
    mark = project.unit.ruler_mark
    for field in ("width", "height"):
        for distance in (mark, -mark, 2 * mark, -2 * mark):
            size: Quantity = getattr(cut, field)
            yield f"{field} by {distance}", (replace(cut, **{field: _moved(size, distance)}),)
    for more in (1, -1):
        yield f"count by {more}", (replace(cut, count=_moved(cut.count, Fraction(more))),)
    for material in (*(fabric.id for fabric in project.fabrics), BATTING):
        if material != cut.material:
            yield f"from {material}", (replace(cut, material=material),)
    for shape in (
        CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE, CutShape.BINDING, CutShape.BIAS_BINDING,
        *((CutShape.SQUARE,) if cut.shape in NOT_SQUARED else (CutShape.TEMPLATE,)),
    ):  # fmt: skip
        if shape is not cut.shape:
            yield f"as a {shape.value}", (replace(cut, shape=shape),)
    if cut.outline is not None:
        for wrong in wrong_outlines(cut.outline, mark):
            yield "with another outline", (replace(cut, outline=wrong),)
    is_seen = cut.part.startswith(("block:", "border:", "sashing", "setting", "corner", "spacer", "back"))
    if (
        is_seen
        and cut.is_upright
        and any(fabric.id == cut.material and fabric.is_directional for fabric in project.fabrics)
    ):
        yield "with its print lying down", (replace(cut, is_upright=False),)
    if cut.join_seam is not None:
        yield "joined with another seam", (replace(cut, join_seam=_moved(cut.join_seam, mark)),)
    if cut.used_of_square is not None:
        for more in (1, -1):
            yield f"used of a square by {more}", (replace(cut, used_of_square=cut.used_of_square + more),)
    yield "twice", (cut, cut)
    yield "missing", ()


def wrong_outlines(outline: Polygon, mark: Fraction) -> Iterator[Polygon]:
    """Yield a template with one corner out of place, a mark across or down, and the template's mirror image."""
    for index, corner in enumerate(outline.corners):
        for step in (Point(mark, Fraction(0)), Point(Fraction(0), mark)):
            yield Polygon(_with(outline.corners, index, corner + step))
    _, _, right, _ = outline.bounds
    mirrored = Polygon(tuple(Point(right - corner.x, corner.y) for corner in outline.corners)).clockwise()
    if len(outline.corners) == 3:
        yield mirrored


def wrong_steps(project: Project, step: Step, names: list[str]) -> Iterator[tuple[str, tuple[Step, ...]]]:
    """Yield what may stand in place of a step by one mistake."""
    mark = project.unit.ruler_mark
    yield "missing", ()
    yield "twice", (step, step)
    for times in (step.times + 1, step.times - 1, step.times * 10**9, -step.times):
        yield f"{times} times", (replace(step, times=times),)
    for name in names:
        if name != step.makes:
            yield f"makes {name}", (replace(step, makes=name),)
    if step.measures is not None:
        width, height = step.measures
        for distance in (mark, -mark):
            yield f"measured width by {distance}", (replace(step, measures=(_moved(width, distance), height)),)
            yield f"measured height by {distance}", (replace(step, measures=(width, _moved(height, distance))),)
    for change, operation in wrong_operations(project, step.operation, names):
        yield change, (replace(step, operation=operation),)


def wrong_operations(project: Project, operation: Operation, names: list[str]) -> Iterator[tuple[str, Operation]]:
    """Yield an operation wrong in one field."""
    for field in fields(operation):
        if field.name in WORDS:
            continue
        value = getattr(operation, field.name)
        for change, wrong in _wrong_values(project, value, names):
            yield f"{field.name} {change}", replace(operation, **{field.name: wrong})


def _wrong_values(project: Project, value: Any, names: list[str]) -> Iterator[tuple[str, Any]]:
    mark = project.unit.ruler_mark
    if isinstance(value, Quantity):
        yield f"by {mark}", _moved(value, mark)
        yield f"by {-mark}", _moved(value, -mark)
    elif isinstance(value, str):
        yield from ((name, name) for name in [*names, "nothing-of-that-name"] if name != value)
    elif isinstance(value, Run):
        yield "the other way", Run.DOWN if value is Run.ACROSS else Run.ACROSS
    elif isinstance(value, PatchUse):
        yield from ((f"cut {name}", replace(value, cut=name)) for name in names if name != value.cut)
        yield from ((f"piece {name}", replace(value, piece=name)) for name in names if name != value.piece)
    elif isinstance(value, int):
        yield "a quarter more", (value + 1) % 4
    elif isinstance(value, tuple):
        for index, part in enumerate(value):
            yield f"without {index}", _with(value, index)
            yield f"{index} twice", _with(value, index, part, part)
            for change, wrong in _wrong_values(project, part, names):
                yield f"{index}: {change}", _with(value, index, wrong)


def _moved(quantity: Quantity, distance: Fraction) -> Quantity:
    return replace(quantity, value=quantity.value + distance)


def _with(values: tuple[Any, ...], index: int, *instead: Any) -> tuple[Any, ...]:
    return (*values[:index], *instead, *values[index + 1 :])
