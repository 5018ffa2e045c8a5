"""The rules for backing and batting, against published examples."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evenseam.pattern import Derived, Project
from hypothesis import given, settings
from support.samples import BOUND, length
from support.strategies import projects
from support.tops import figure, plain_top, sized, value


def _layered(width: str, height: str, backing: str, batting: str = "3") -> Project:
    finish = replace(
        BOUND, backing_overage=length("backing overage", backing), batting_overage=length("batting overage", batting)
    )
    return plain_top(width, height, finish=finish)


class TestOverage:
    """Backing and batting are larger than the raw top on every side; the overage is said per side and as a size."""

    def test_sixty_by_eighty(self) -> None:
        # "Preparing Your Quilt", Log House Quilting: a 60 × 80 top takes a backing of 68 × 88 and batting of 66 × 86.
        project = _layered("60", "80", "4", "3")
        assert (figure(project, "backing_width"), figure(project, "backing_height")) == (68, 88)
        assert (figure(project, "batting_width"), figure(project, "batting_height")) == (66, 86)

    @pytest.mark.parametrize(
        ("per_side", "total"),
        # Requirements, Quilts of Valor Foundation (4, 8), and preparation pages of guilds and longarm quilters.
        [("2", "4"), ("3", "6"), ("4", "8"), ("5", "10"), ("6", "12")],
    )
    def test_total_is_twice_the_side(self, per_side: str, total: str) -> None:
        assert figure(_layered("20", "22", per_side), "backing_width") - 20 == value(total)

    @pytest.mark.parametrize(
        ("said", "true", "top", "backing"),
        [
            # Quilt standards, woolleyfiberquilters, 2014: "10 in larger on each side", 63 × 87 to 73 × 97.
            ("10", "5", ("63", "87"), ("73", "97")),
            # "How many yards: Backing", Missouri Star: "4 in all the way round", 51 × 61 to 55 × 65.
            ("4", "2", ("51", "61"), ("55", "65")),
        ],
    )
    def test_sentence_and_example_that_disagree(
        self, said: str, true: str, top: tuple[str, str], backing: tuple[str, str]
    ) -> None:
        printed = (value(backing[0]), value(backing[1]))
        for per_side, agrees in ((said, False), (true, True)):
            project = _layered(*top, per_side)
            assert ((figure(project, "backing_width"), figure(project, "backing_height")) == printed) is agrees

    @settings(max_examples=30)
    @given(projects())
    def test_both_figures_are_there_to_be_printed(self, project: Project) -> None:
        result = sized(project)
        for layer in ("backing", "batting"):
            overage = result.figure(f"{layer}_overage")
            size = result.figure(f"{layer}_width")
            assert size.value == result.top_width.value + 2 * overage.value
            assert isinstance(size.because, Derived)
            assert overage.text in size.because.rule and "each" in size.because.rule
