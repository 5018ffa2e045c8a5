"""What must hold of any text read as a drawing: problems that stand inside it, and pieces that fill the block."""

from __future__ import annotations

import re

from evenseam.problems import Problem, SourceText, show_problems
from evenseam.reading import look_at_drawing

from support.svg_texts import read

WAYS: tuple[tuple[str, bool], ...] = (("", False), ("8x7", True), ("6x6", False))
"""Grids, and whether the block is a hexagon."""


def check_drawing(text: str, ways: tuple[tuple[str, bool], ...] = WAYS) -> int:
    """Read a text in several ways and return in how many it was a whole block without a mistake."""
    source = SourceText("drawing.svg", text)
    told = [read(text)[1].as_tuple()]
    whole = 0
    for grid, is_hexagon in ways:
        look = look_at_drawing(source, grid, is_hexagon=is_hexagon)
        told.append(look.problems)
        if look.value is not None and not look.errors:
            filled = sum(piece.outline.area for piece in look.value.pieces)
            assert filled == look.value.outline.area, "pieces that do not fill the block, and no error"
            whole += 1
    for problems in told:
        _check_places(problems, text)
        show_problems(problems, {source.name: source})
    return whole


def _check_places(problems: tuple[Problem, ...], text: str) -> None:
    lines = re.split("\r\n|\r|\n", text)
    for problem in problems:
        place = problem.place
        assert place is not None and problem.message and problem.hint, problem
        assert 1 <= place.line <= place.end_line <= len(lines), problem
        assert 1 <= place.column <= len(lines[place.line - 1]) + 1, problem
        assert (place.line, place.column) <= (place.end_line, place.end_column), problem
        assert place.end_column <= len(lines[place.end_line - 1]) + 2, problem
        assert "\n" not in problem.message, problem
