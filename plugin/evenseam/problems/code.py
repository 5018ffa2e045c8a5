"""The shape of a problem's code; each floor lists its own codes."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Severity(Enum):
    """Whether publishing stops (error) or the author is only told (warning)."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Code:
    """A stable name for one kind of problem.

    Numbers go by floor: 1xx tree, 2xx reading, 3xx checks, 4xx sizing and sewing, 5xx cutting, 6xx wording,
    7xx figures, 8xx piecing and drawings, 9xx publishing and review.
    """

    number: int
    name: str
    severity: Severity = Severity.ERROR
