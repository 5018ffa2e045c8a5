"""How much a change weighs: cut or sewn otherwise, bought otherwise, or only told otherwise."""

from __future__ import annotations

import pytest
from evenseam.review import (
    Weight,
    review_as_json,
    swapped,
    weight_of_pattern,
    weight_of_review,
    weights,
    write_markdown,
)
from support.reviewed import GULLS, changes, edited, review

WEIGHTS = {
    "nothing": ((), Weight.NONE),
    "a remark": ((("format: 1\n", "# A remark.\nformat: 1\n"),), Weight.NONE),
    "a fabric's name": ((("name: Fog,", "name: Sea Fog,"),), Weight.WORDS),
    "a colour": ((("#dfe3e0", "#dfe3ee"),), Weight.WORDS),
    "the introduction": ((("look out to sea", "look inland"),), Weight.WORDS),
    "a step's words": ((("Take your time", "Go slowly"),), Weight.WORDS),
    "a size's key": ((("  mug rug:", "  cup rug:"), ("columns: 1}", "columns: 1}\n    name: Cup rug")), Weight.WORDS),
    "narrower cloth": ((("units: inches", "units: inches\nusable width: 36"),), Weight.SHOPPING),
    "a little wider cloth": ((("units: inches", "units: inches\nusable width: 44"),), Weight.SHOPPING),
    "a wider border": ((("outer border: {width: 2", "outer border: {width: 2 1/4"),), Weight.CUTTING),
    "one block more": ((("columns: 4", "columns: 5"),), Weight.CUTTING),
    "a larger backing": ((("turned, backing: {fabric: sea}", "turned, backing: {fabric: sea, overage: 2}"),), Weight.CUTTING),
    "another order": ((("order: top and bottom first", "order: long sides first"),), Weight.CUTTING),
    "another drawing": ((("fog: 0,0 6,0 0,6", "fog: 0,0 6,0 6,6"), ("gull: 6,0 6,6 0,6", "gull: 0,0 6,6 0,6")), Weight.CUTTING),
    "one size less": ((("  wall hanging:\n    use: wall\n    hanging: {kind: corner pockets, fabric: sea}\n    words:\n      outer-border-sides: Take your time.\n", ""),), Weight.CUTTING),
}  # fmt: skip


@pytest.mark.parametrize("name", WEIGHTS)
def test_weights_of_edits(name: str) -> None:
    edits, expected = WEIGHTS[name]
    found = review(GULLS, edited(*edits))
    assert weight_of_review(found) is expected
    assert [weight_of_pattern(pattern) for pattern in found.patterns] == [expected]
    # The way back weighs as much.
    assert weight_of_review(review(edited(*edits), GULLS)) is expected


def test_a_figure_weighs_as_much_as_what_follows_from_it() -> None:
    found = changes(GULLS, edited(("units: inches", "units: inches\nusable width: 36")))
    told = {change.kind.name: weight for change, weight in zip(found, weights(found), strict=True)}
    assert told["INPUT"] is Weight.SHOPPING and told["YARDAGE"] is Weight.SHOPPING


def test_a_figure_from_which_nothing_follows_is_one_to_sew_by() -> None:
    found = changes(GULLS, edited(("{kind: turned, backing: {fabric: sea}}\nintro", "{kind: turned, topstitch: 1/2, backing: {fabric: sea}}\nintro")))  # fmt: skip
    assert found and max(weights(found)) is Weight.CUTTING


def test_swapped_changes_weigh_the_same() -> None:
    found = changes(GULLS, edited(("outer border: {width: 2", "outer border: {width: 2 1/4"), ("Fog,", "Haze,")))
    assert weights(found) == weights([swapped(change) for change in found])


def test_the_outputs_tell_it() -> None:
    found = review(GULLS, edited(("name: Fog,", "name: Sea Fog,")))
    assert "1 pattern changes (words only)" in write_markdown(found)
    data = review_as_json(found)
    assert data["weight"] == data["patterns"][0]["weight"] == "words"
    assert {change["weight"] for change in data["patterns"][0]["changes"]} == {"words"}
