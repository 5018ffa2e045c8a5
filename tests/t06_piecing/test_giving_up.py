"""A search that is given up still gives a way of sewing, and says that fewer sections might do."""

from __future__ import annotations

from random import Random

import pytest
from evenseam.piecing import fewest, piece_block
from evenseam.piecing.codes import CODES
from support.drawings import block_of, random_partition
from support.sewing_check import check_sewing


def test_a_search_given_up_is_said_to_be(monkeypatch: pytest.MonkeyPatch) -> None:
    block = block_of(random_partition(Random(0), 100))
    proved = piece_block(block)
    assert proved.value is not None and proved.value.is_fewest and not proved.problems
    monkeypatch.setattr(fewest, "MOST_STEPS", 3)
    outcome = piece_block(block)
    assert outcome.value is not None
    assert outcome.is_valid
    check_sewing(block, outcome.value)
    assert len(outcome.value.sections) >= len(proved.value.sections)
    assert outcome.value.is_fewest is (not outcome.problems)
    assert [problem.code.name for problem in outcome.problems] == ["fewest-sections-not-proved"]


def test_codes_have_different_numbers_and_names() -> None:
    assert len({code.number for code in CODES}) == len({code.name for code in CODES}) == len(CODES)
    assert all(800 < code.number < 900 for code in CODES)
