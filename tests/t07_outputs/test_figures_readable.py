"""Every picture of every demo pattern, at its smallest and its largest: letters to read, and nothing that hides them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from evenseam.figures import draw, picture_names
from evenseam.figures.drawing import HIGHEST, SMALL_SIZE, WIDEST, Drawing, Pen, Stroke
from evenseam.figures.frame import at
from evenseam.figures.in_words import in_words
from evenseam.pattern import Pattern, Project
from evenseam.problems import SourceText
from evenseam.publish.handout_layout import HERO_TALLEST, LEAST_LETTERS, TALLEST
from evenseam.publish.sources import find_patterns
from evenseam.reading import read_pattern
from evenseam.sheet import compute_sheet
from evenseam.wording import language
from support.odd_sizes import FOUNDATION, ROTARY
from support.picture_checks import crossings, letters_of, size_of, too_small

ROOT = Path(__file__).resolve().parents[2]


def patterns() -> Iterator[tuple[str, Pattern]]:
    for source in find_patterns(ROOT / "patterns"):
        pattern = read_pattern(source.slug, source.source, source.drawings).value
        assert pattern is not None
        yield source.slug, pattern
    for name, text in (("rotary", ROTARY), ("foundation", FOUNDATION)):
        outcome = read_pattern(name, SourceText(f"{name}.yaml", text), {})
        assert outcome.value is not None, outcome.problems
        yield name, outcome.value


def projects() -> Iterator[object]:
    """Yield the first and the last size of every demo pattern, and all sizes of kinds that no demo shows."""
    for name, pattern in patterns():
        drafted = [project for project in pattern.projects if project.unit is pattern.units[0]]
        chosen = (
            drafted
            if name in ("rotary", "foundation")
            else {one.size: one for one in (drafted[0], drafted[-1])}.values()
        )
        for project in chosen:
            yield pytest.param(pattern, project, id=f"{name}-{project.size}")


@cache
def drawings(size: str, slug: str) -> dict[str, Drawing]:
    pattern, project = _KNOWN[slug, size]
    sheet = compute_sheet(pattern, project).value
    assert sheet is not None
    return {name: draw(sheet, name) for name in picture_names(sheet)}


ALL = list(projects())
_KNOWN: dict[tuple[str, str], tuple[Pattern, Project]] = {
    (one.values[0].slug, one.values[1].size): (one.values[0], one.values[1])  # type: ignore[attr-defined]
    for one in ALL
}


@pytest.mark.parametrize(("pattern", "project"), ALL)
def test_letters_are_large_enough_on_a_phone_and_on_paper(pattern: Pattern, project: Project) -> None:
    looked = 0
    for name, drawing in drawings(project.size, pattern.slug).items():
        wide, high = size_of(drawing)
        assert wide <= WIDEST + 1, name
        assert high <= (HIGHEST if name != "finished" else 2 * HERO_TALLEST), name
        assert too_small(drawing) == [], name
        looked += len(letters_of(drawing))
    assert looked > 30


@pytest.mark.parametrize(("pattern", "project"), ALL)
def test_no_words_cross_other_words_arrows_or_lines(pattern: Pattern, project: Project) -> None:
    dutch = language("nl").phrase
    found = {
        (name, code): list(crossings(spoken))
        for name, drawing in drawings(project.size, pattern.slug).items()
        for code, spoken in (("en", drawing), ("nl", in_words(drawing, dutch)))
    }
    assert {name: words for name, words in found.items() if words} == {}


def test_the_handout_shrinks_no_picture_of_a_step_below_what_can_be_read() -> None:
    assert SMALL_SIZE * TALLEST / HIGHEST >= LEAST_LETTERS


def test_faults_are_found() -> None:
    pen = Pen({})
    pen.label(at(50, 50), "A13")
    assert list(crossings(pen.drawing())) == [] and too_small(pen.drawing()) == []
    pen.label(at(60, 52), "A2", size=9)
    pen.arrow(at(0, 50), at(100, 50))
    pen.line((at(50, 0), at(50, 100)), Stroke.LEADER)
    told = list(crossings(pen.drawing()))
    assert {"A13 and A2", "A13 and an arrow", "A13 and leader line"} <= set(told)
    assert [words.split(":")[0] for words in too_small(pen.drawing())] == ["A2"]
    pen.line((at(0, 0), at(800, 0)), Stroke.EDGE)
    assert len(too_small(pen.drawing())) == 2, "in a picture too wide for a phone all letters are too small"
