"""Fabrics of a pattern, and the other materials that are cut."""

from __future__ import annotations

from dataclasses import dataclass, field

from evenseam.problems import Place

BATTING = "batting"
"""The material name of the batting layer in a cut list; no fabric may have this name."""


@dataclass(frozen=True, slots=True)
class Fabric:
    """A fabric as the author names it."""

    id: str
    """The key in the pattern file: short, unique."""
    name: str
    """What a maker reads: Deep Sea."""
    colour: str
    """#rrggbb, for pictures."""
    is_directional: bool = False
    """True when the print has an up: its pieces are cut so that the print runs one way."""
    role: str = ""
    """What it is used for, in the author's words; may be empty."""
    place: Place | None = field(default=None, compare=False)
