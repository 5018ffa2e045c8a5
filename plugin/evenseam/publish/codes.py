"""The problems that publishing can report; those of reading a folder stand in sources."""

from __future__ import annotations

from evenseam.problems import Code

HANDOUT_NOT_SET = Code(910, "handout-not-set")
PATTERN_NOT_MADE = Code(911, "pattern-not-made")
"""A fault of the publisher itself: the other patterns are published all the same."""

CODES = (HANDOUT_NOT_SET, PATTERN_NOT_MADE)
