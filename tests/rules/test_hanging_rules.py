"""The rules for hanging sleeves, against published examples."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.pattern import Project, Sleeve
from support.samples import SLEEVE, length
from support.tops import figure, plain_top, value


def _hung(width: str, depth: str, extra: str, hem: str) -> Project:
    sleeve = Sleeve(
        "sea", length("sleeve cut depth", depth), length("sleeve extra", extra), length("sleeve hem", hem), SLEEVE.drop
    )
    return plain_top(width, "40", hanging=sleeve)


class TestSleeve:
    """A sleeve is folded in half along its length and sewn with one seam; a hem is turned under at either end."""

    @pytest.mark.parametrize("width", ["20", "36", "84"])
    def test_show_rule(self, width: str) -> None:
        # "Instructions for Making Sleeves", International Quilt Association: cut 8 1/2 × (W + 2), hem 1 1/2 at each
        # end; it finishes W - 1 long and 4 in deep.
        project = _hung(width, "8 1/2", "2", "1 1/2")
        assert figure(project, "sleeve_cut_length") == value(width) + 2
        assert figure(project, "sleeve_finished_length") == value(width) - 1
        assert figure(project, "sleeve_finished_depth") == 4

    @pytest.mark.parametrize(
        ("depth", "extra", "hem", "finished_length", "finished_depth"),
        [
            # "How to make a hanging sleeve", Sew Happy Stitchers guild: cut 9 × (W - 1), hems of 1/2.
            ("9", "-1", "1/2", "34", "4 1/4"),
            # Lone Star quilt page: cut 8 to 9 × W, 1/4 + 1/4 turned under, ends W - 1.
            ("8 1/2", "0", "1/2", "35", "4"),
            # W. Robertson: 6 for a small piece, cut W long, 1/2 turned twice.
            ("6", "0", "1", "34", "2 3/4"),
        ],
    )
    def test_other_published_rules(
        self, depth: str, extra: str, hem: str, finished_length: str, finished_depth: str
    ) -> None:
        project = _hung("36", depth, extra, hem)
        assert figure(project, "sleeve_finished_length") == value(finished_length)
        assert figure(project, "sleeve_finished_depth") == value(finished_depth)

    @pytest.mark.parametrize(
        ("depth", "ease"), [("8 1/2", Fraction(0)), ("9", Fraction(1, 4)), ("9 1/2", Fraction(1, 2))]
    )
    def test_wider_strips_leave_ease_for_the_pole(self, depth: str, ease: Fraction) -> None:
        # Sew Happy Stitchers guild (9), patchworkpie, 2008 (9 1/2): four inches flat, or a little more.
        assert figure(_hung("36", depth, "2", "1 1/2"), "sleeve_finished_depth") == 4 + ease
