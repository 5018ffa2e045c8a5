"""The problems that publishing can report; those of reading a folder stand in sources."""

from __future__ import annotations

from evenseam.problems import Code, Severity

HANDOUT_NOT_SET = Code(910, "handout-not-set")
PICTURES_LEFT_OUT = Code(911, "pictures-left-out", Severity.WARNING)

CODES = (HANDOUT_NOT_SET, PICTURES_LEFT_OUT)
