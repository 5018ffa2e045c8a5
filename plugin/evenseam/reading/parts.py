"""What stands for a part of a project that cannot be read."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Missing:
    """A part that should be there and could not be read; what is wrong has been reported."""


MISSING = Missing()
