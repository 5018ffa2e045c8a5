"""The colours that lie side by side in every size of every demo pattern: words on them, and the lines between them."""

from __future__ import annotations

from functools import cache
from itertools import combinations, product
from pathlib import Path

import pytest
from evenseam.figures.cloth_look import looks_of
from evenseam.figures.drawing import Tone
from evenseam.figures.palette import BOARD, DEEP, GROUND, HALO, INK, QUIET, RUST, SOFT, STROKES, TONES
from evenseam.publish.sources import find_patterns
from evenseam.reading import read_pattern
from evenseam.sizing import size_project
from shapely import Polygon as Outline
from shapely import STRtree
from support.contrast import LINES, WORDS, ratio

ROOT = Path(__file__).resolve().parents[2]
PAGES = (("light", GROUND.light), ("dark", GROUND.dark), ("dark", "#171c24"))
"""By day and on paper; by night; by night on our own site."""


@cache
def projects():
    """Return every size of every demo pattern in each edition, with the look of its fabrics."""
    found = {}
    for source in find_patterns(ROOT / "patterns"):
        pattern = read_pattern(source.slug, source.source, source.drawings).value
        for project in pattern.projects if pattern else ():
            found[f"{source.slug} {project.size} {project.unit.value}"] = project
    return found


def neighbours(project):
    """Return the pairs of fabrics of which pieces touch in the finished project, a piece of one fabric beside another
    of the same included.
    """
    placed = size_project(project).value.placed
    outlines = [Outline([(float(corner.x), float(corner.y)) for corner in one.outline.corners]) for one in placed]
    touching = STRtree(outlines).query(outlines, predicate="intersects").T.tolist()
    return {tuple(sorted((placed[one].fabric, placed[other].fabric))) for one, other in touching if one < other}


def test_every_fabric_can_be_written_on_and_is_outlined_on_both_sides():
    wrong = set()
    for name, project in projects().items():
        for look in looks_of(project.fabrics).values():
            sides = ((look.colour, look.ink, look.line), (look.wrong, look.wrong_ink, look.wrong_line))
            for colour, ink, line in sides:
                if ratio(ink, colour) < WORDS or ratio(line, colour) < LINES:
                    wrong.add((name, look.name, colour, ink, line))
    assert len(projects()) > 60 and wrong == set()


def test_pieces_that_touch_are_told_apart_whichever_is_drawn_last():
    """The line between two pieces is that of the one drawn last: it, or the step from one colour to the other, is seen;
    and where two fabrics of much the same lightness meet, their textures differ, for prints in black.
    """
    wrong, pairs = [], 0
    for name, project in projects().items():
        looks = looks_of(project.fabrics)
        for one, other in neighbours(project):
            first, second = looks[one], looks[other]
            pairs += 1
            wrong += [
                (name, one, other, line) for line in (first.line, second.line)
                if max(ratio(line, first.colour), ratio(line, second.colour)) < LINES
            ]  # fmt: skip
            is_alike = ratio(first.colour, second.colour) < LINES
            if one != other and is_alike and first.texture is second.texture:
                wrong.append((name, one, other, first.texture))
    assert pairs > 500 and wrong == []


def test_every_fabric_stands_out_from_the_page():
    """By its colour or by its outline: on white, by night, and on all that may lie below a piece."""
    below = {ground for _, ground in PAGES} | {BOARD.light, BOARD.dark}
    below |= {TONES[tone].fill for tone in (Tone.BATTING, Tone.PAPER)}
    found = set()
    for project in projects().values():
        for look in looks_of(project.fabrics).values():
            for colour, line in ((look.colour, look.line), (look.wrong, look.wrong_line)):
                for ground in below:
                    if max(ratio(colour, ground), ratio(line, ground)) < LINES:
                        found.add((look.name, colour, line, ground))
    assert found == set()


def test_lines_and_words_over_anything_have_a_ground_of_their_own_or_stand_on_the_page():
    for stroke, look in STROKES.items():
        if look.halo:
            assert ratio(look.colour, HALO) >= LINES, stroke
    assert min(ratio(colour, HALO) for colour in (DEEP, RUST, SOFT)) >= WORDS
    for (scheme, ground), shade in product(PAGES, (INK, QUIET)):
        assert ratio(getattr(shade, scheme), ground) >= WORDS
        assert ratio(getattr(shade, scheme), getattr(BOARD, scheme)) >= WORDS


@pytest.mark.parametrize(("one", "other"), list(combinations(("#d9dcd6", "#e9b44c", "#c0c4be"), 2)))
def test_a_fault_is_found(one, other):
    """Between pale fabrics a pale line is not seen."""
    assert max(ratio("#f1e3cc", one), ratio("#f1e3cc", other)) < LINES
