"""How a block is sewn: its sections, the order of pieces in each, and the seams that join the sections."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.geometry import Point, Polygon
from evenseam.pattern import Press


@dataclass(frozen=True, slots=True)
class Seam:
    """A straight seam line, in grid units."""

    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class SectionPiece:
    """One piece of a section, in sewing order."""

    piece: str
    """Piece id in the block."""
    label: str
    """A1, A2, …; a section of one piece has just A1."""
    seam: Seam | None
    """The seam that joins it to the pieces before it; None for the first."""


@dataclass(frozen=True, slots=True)
class Section:
    """Pieces that are sewn one after the other with straight seams; on paper, one template."""

    name: str
    """A, B, …, Z, AA, …"""
    pieces: tuple[SectionPiece, ...]
    outline: Polygon
    """Convex, clockwise, in grid units, as seen on the right side of the block."""


@dataclass(frozen=True, slots=True)
class SectionJoin:
    """One straight seam that joins two parts; a part is a section or what an earlier join made."""

    makes: str
    """A+B"""
    first: str
    second: str
    first_pieces: tuple[str, ...]
    second_pieces: tuple[str, ...]
    seam: Seam
    press: Press
    match_points: tuple[Point, ...] = ()
    """Where a seam of the first part and a seam of the second must meet, in grid units, along the seam."""
    seams_met: tuple[int, int] = (0, 0)
    """How many seams of the first and of the second part end at this one."""


@dataclass(frozen=True, slots=True)
class PiecedBlock:
    """A block with everything known about its sewing."""

    block: str
    """Block id."""
    sections: tuple[Section, ...]
    """For the rotary method each piece is a section of its own."""
    joins: tuple[SectionJoin, ...]
    """In sewing order; the last makes the whole block. Empty when there is one section."""
    is_fewest: bool = True
    """False when the search for the fewest sections was given up before it was proved; fewer might do."""

    def section(self, name: str) -> Section:
        """Return one section by name. Raises KeyError."""
        for section in self.sections:
            if section.name == name:
                return section
        raise KeyError(name)
