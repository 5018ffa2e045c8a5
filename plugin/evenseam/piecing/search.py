"""First working search: any separating line will do."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.piecing.peel import Peeler
from evenseam.piecing.seam_tree import Parting, Ruler, SeamTree, sides


@dataclass(frozen=True, slots=True)
class Locked:
    """Sets of pieces that no straight seam can part."""

    locked: tuple[int, ...]


def section_tree(peeler: Peeler, ruler: Ruler) -> SeamTree | Locked:
    """Return a tree of seams down to sections."""
    return _part(peeler, peeler.arrangement.everything, stops_at_sections=True)


def piece_tree(peeler: Peeler, ruler: Ruler) -> SeamTree | Locked:
    """Return a tree of seams down to single pieces."""
    return _part(peeler, peeler.arrangement.everything, stops_at_sections=False)


def _part(peeler: Peeler, pieces: int, *, stops_at_sections: bool) -> SeamTree | Locked:
    if not pieces & (pieces - 1) or (stops_at_sections and peeler.is_one_section(pieces)):
        return pieces
    line = next((line for line in peeler.arrangement.lines if line.separates(pieces)), None)
    if line is None:
        return Locked((pieces,))
    one, other = (_part(peeler, side, stops_at_sections=stops_at_sections) for side in sides(line, pieces))
    if isinstance(one, Locked) or isinstance(other, Locked):
        return Locked(tuple(found for side in (one, other) if isinstance(side, Locked) for found in side.locked))
    return Parting(pieces, line, one, other)
