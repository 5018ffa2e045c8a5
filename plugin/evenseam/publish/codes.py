"""The problems that publishing can report; those of reading a folder stand in sources."""

from __future__ import annotations

from evenseam.problems import Code

HANDOUT_NOT_SET = Code(910, "handout-not-set")

CODES = (HANDOUT_NOT_SET,)
