"""Edits of rows of unequal blocks, and the sentences a reviewer must read of them."""

from __future__ import annotations

import pytest
from support.reviewed import one_line

ROWS = """\
format: 1
title: Rows
version: "1.0"
units: inches
fabrics:
  sea: {name: Deep Sea, colour: "#23465f"}
  fog: {name: Fog, colour: "#d9dcd6"}
blocks:
  ketch: {finished size: 6 x 8, method: rotary, grid: 1 x 1, pieces: [sea: "0,0 1,0 1,1 0,1"]}
  buoy: {finished size: 3 x 8, method: rotary, grid: 1 x 1, pieces: [sea: "0,0 1,0 1,1 0,1"]}
arrangement:
  unequal rows:
    - [ketch, spacer fog 1, ketch, spacer fog 1, ketch]
    - [spacer fog, buoy, spacer fog 2, ketch, spacer fog]
finish: {kind: turned, backing: {fabric: sea}}
sizes: {wall hanging: {}}
"""
SECOND = "[spacer fog, buoy, spacer fog 2, ketch, spacer fog]"
SASHED = ROWS.replace("finish:", "  sashing: {width: 1, fabric: fog, between: rows}\nfinish:")
CASES = {
    # 20 wide, of which buoy and ketch fill 9: with 3 in place of 2 the two shares are 4 each, cut 4 1/2.
    "a stated width": (
        ROWS, SECOND, SECOND.replace("2,", "3,"),
        ("wide spacers of row 2: 5 in → 4 1/2 in wide", "the second spacer of row 2 is 1 in wider (pattern.yaml:14)"),
    ),
    "fabric": (
        ROWS, SECOND, SECOND.replace("fog", "sea"),
        ("because the spacers of row 2 are cut from Deep Sea instead of Fog (pattern.yaml:14)",),
    ),
    "one fewer": (
        ROWS, SECOND, SECOND.replace("spacer fog, buoy", "buoy"),
        ("because row 2 has 2 spacers, 1 of them of a stated width instead of 3 spacers",),
    ),
    "another order": (
        ROWS, SECOND, "[buoy, spacer fog, spacer fog 2, ketch, spacer fog]",
        ("the spacers of row 2 stand in other places (pattern.yaml:14)",),
    ),
    "another block": (
        ROWS, "ketch, spacer fog]", "buoy, spacer fog]", ("because the blocks are laid out otherwise",),
    ),
    "sashing": (
        SASHED, "between: rows", "around: yes",
        ("because there is sashing between the blocks and all round instead of between the rows only",),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", CASES)
def test_what_a_reviewer_reads(name: str) -> None:
    text, old, new, sentences = CASES[name]
    assert text.count(old) == 1
    said = one_line(text, text.replace(old, new))
    for sentence in sentences:
        assert sentence in said, said


def test_a_row_that_stays_is_not_named() -> None:
    assert "row 1" not in one_line(ROWS, ROWS.replace(SECOND, SECOND.replace("fog", "sea")))
