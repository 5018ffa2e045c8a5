"""Drawings with mistakes as pictures, each mistake ringed and numbered; drawn from our own shapes, never from the file.

A drawing comes from anyone. Its markup goes nowhere: what is shown was read into exact shapes first, and is written
anew as paths, with no word of the file in it but the names of fabrics and problems, which are escaped.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from evenseam.figures.drawing_look import MOST_LISTED, drawing_look_svg
from evenseam.piecing import locked_report
from evenseam.problems import Problem, SourceText
from evenseam.reading import DrawingLook, Spotted, look_at_drawings


@dataclass(frozen=True, slots=True)
class FaultyDrawing:
    """One drawing, and which problem has which number in its picture."""

    file: str
    svg: str
    numbers: Mapping[tuple[str, str], int]
    """By the name of the code and the message."""

    def number(self, problem: Problem) -> int | None:
        """Return the number of a problem in the picture; None for one that is not marked there."""
        return self.numbers.get((problem.code.name, problem.message))


def faulty_drawings(problems: Sequence[Problem], sources: Mapping[str, SourceText]) -> tuple[FaultyDrawing, ...]:
    """Return a picture of every drawing that problems point into; the first of the sources is the pattern file.

    A drawing of which no shape can be made out has none.
    """
    texts = list(sources.values())
    places = [place for problem in problems for place in (problem.place, *(label.place for label in problem.labels))]
    faulty = dict.fromkeys(place.file for place in places if place and place.file.endswith(".svg"))
    if not texts or not faulty:
        return ()
    drawings = {text.name.rpartition("/")[2]: text for text in texts[1:]}
    looks = look_at_drawings(texts[0], drawings, faulty)
    return tuple(_drawn(name, _with_pieces(looks[name], problems), problems) for name in faulty if name in looks)


def _with_pieces(look: DrawingLook, problems: Sequence[Problem]) -> DrawingLook:
    """Return the look with every problem marked that is about one of its pieces and not marked yet."""
    told = {(item.code.name, item.message) for item in look.spotted}
    more: list[Spotted] = []
    for problem in dict.fromkeys(problems):
        shapes = tuple(piece.outline for piece in look.pieces if piece.place and piece.place == problem.place)
        if shapes and (problem.code.name, problem.message) not in told:
            more.append(Spotted(problem.code, problem.message, shapes))
    order = {(problem.code.name, problem.message): number for number, problem in enumerate(problems)}
    marked = sorted((*_told(look, problems), *more), key=lambda item: order[item.code.name, item.message])
    return replace(look, spotted=tuple(marked))


def _told(look: DrawingLook, problems: Sequence[Problem]) -> tuple[Spotted, ...]:
    """Return what is marked of what was reported: by itself a drawing may seem wrong where its pattern explains it."""
    reported = {(problem.code.name, problem.message) for problem in problems}
    return tuple(item for item in look.spotted if (item.code.name, item.message) in reported)


def _drawn(file: str, look: DrawingLook, problems: Sequence[Problem]) -> FaultyDrawing:
    codes = {problem.code.name for problem in problems}
    locked = locked_report(look.block) if "block-locked" in codes and not look.spotted else None
    numbers = {
        (item.code.name, item.message): number for number, item in enumerate(look.spotted[:MOST_LISTED], start=1)
    }
    return FaultyDrawing(file, drawing_look_svg(look, None, locked), numbers)
