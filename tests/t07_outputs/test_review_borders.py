"""Changed borders in a review: mitred instead of butted, blocks instead of strips, other corners and fillings."""

from __future__ import annotations

import pytest
from evenseam.review import write_markdown
from support.reviewed import edited, review

BLOCKS = (
    "arrangement: {rows: 1",
    '  knot: {finished size: 2 x 2, grid: 2 x 2, pieces: [{sea: "0,0 2,0 0,2"}, {fog: "2,0 2,2 0,2"}]}\n'
    '  tooth: {finished size: 3 x 2, grid: 3 x 2, pieces: [{sea: "0,0 3,0 0,2"}, {fog: "3,0 3,2 0,2"}]}\n'
    "arrangement: {rows: 1",
)
OUTER = "outer border: {width: 2, fabric: sea, order: top and bottom first}"
MUG_RUG = ("      outer border: {width: 1}\n", "      outer border: none\n")
"""Its own width would be said of a border of blocks."""
WORDS = ("    words:\n      outer-border-sides: Take your time.\n", "")


def _strips(text: str) -> str:
    return edited(WORDS, (OUTER, text))


def _ring(text: str) -> str:
    return edited(BLOCKS, MUG_RUG, WORDS, (OUTER, f"outer border: {text}"))


TEETH = "{corner fabric: sea, pieced: {block: tooth, spacer: fog}}"
CASES = [
    (
        _strips(OUTER), _strips("outer border: {width: 2, fabric: sea, corners: mitred}"),
        "the corners of the outer border are mitred instead of butted",
    ),
    (
        _strips(OUTER), _strips("outer border: {width: 2, fabric: sea, corners: partial seam}"),
        "the corners of the outer border are passed by one strip each instead of butted",
    ),
    (edited(MUG_RUG, WORDS), _ring(TEETH), "the outer border is made of Tooth blocks instead of plain strips"),
    (
        _ring(TEETH), _ring("{pieced: {block: tooth, corner block: knot, spacer: fog}}"),
        "at the corners of the outer border stand Knot blocks instead of plain squares",
    ),
    (
        _ring(TEETH), _ring(TEETH.replace("spacer: fog", "spacer: gull")),
        "the spacer strips of the outer border are cut from Gull White instead of Fog",
    ),
    (
        _ring(TEETH), _ring(TEETH.replace("spacer: fog", "spacer: fog, least spacer: 1")),
        "the least spacer of the outer border is 1/2 in larger",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "reason"), CASES, ids=[case[2] for case in CASES])
def test_reason_is_told_in_words(old: str, new: str, reason: str) -> None:
    told = write_markdown(review(old, new))
    assert reason[1:] in told, "a sentence may begin with it"
    assert "sewn long sides first" not in told, "mitred and passing strips have no order"


def test_a_border_no_longer_of_blocks_is_told_the_other_way_round() -> None:
    told = write_markdown(review(_ring(TEETH), edited(MUG_RUG, WORDS)))
    assert "he outer border is made of plain strips instead of Tooth blocks" in told


def test_a_ring_that_is_taken_away_is_told_by_its_blocks() -> None:
    without = edited(("  outer border: {width: 2, fabric: sea, order: top and bottom first}\n", ""), MUG_RUG, WORDS)
    told = write_markdown(review(_ring(TEETH), without.replace("      outer border: none\n", "")))
    assert "of Tooth blocks" in told
