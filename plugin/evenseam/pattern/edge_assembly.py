"""Operations of the assembly program for edges that are neither turned nor bound, for cushions, loops and rings."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.pattern.quantity import Quantity


@dataclass(frozen=True, slots=True)
class RoundCorners:
    """Cut the four corners of the squared-up project round."""

    trimmed: str
    radius: Quantity


@dataclass(frozen=True, slots=True)
class Face:
    """Sew facing strips to every edge, sides before top and bottom, turn them to the back and sew them down.

    The side strips are as long as the squared-up project is high, the top and bottom ones as long as it is wide: their
    ends are folded in by the seam allowance.
    """

    trimmed: str
    sides: str
    """Cut id: two are used."""
    top_bottom: str
    """Cut id: two are used."""
    seam: Quantity
    fold: Quantity
    """Turned under along the inner edge of the strips first."""


@dataclass(frozen=True, slots=True)
class TrimForKnifeEdge:
    """Trim the backing to the raw size of the top, and the batting to its finished size."""

    quilted: str
    seam: Quantity


@dataclass(frozen=True, slots=True)
class CloseKnifeEdge:
    """Fold the edges of top and backing in by a seam allowance, over the batting, and stitch them together."""

    trimmed: str
    seam: Quantity
    stitch: Quantity


@dataclass(frozen=True, slots=True)
class HemPanel:
    """Fold one long edge of a back panel under twice and stitch it."""

    panel: str
    """Cut id."""
    hem: Quantity
    """Each fold takes so much."""


@dataclass(frozen=True, slots=True)
class CloseEnvelope:
    """Lay two hemmed panels on the front, right sides together, overlapping; sew all round, clip, turn.

    Hemmed, each panel is as wide as the squared-up front, and half as high as the front and the overlap together.
    """

    front: str
    panel: str
    """Workpiece: two are used."""
    seam: Quantity
    overlap: Quantity


@dataclass(frozen=True, slots=True)
class MakeLoop:
    """Fold a strip lengthwise right sides together, sew the long edge, turn, press, fold in half."""

    loop: str
    """Cut id."""
    seam: Quantity
    finished_width: Quantity
    finished_length: Quantity
    """Of the folded loop, raw ends included."""


@dataclass(frozen=True, slots=True)
class AttachLoops:
    """Lay the loops along the top edge, evenly spaced, the outer ones at the ends, and fasten their raw ends.

    Before the edge is sewn they are laid on the right side of the top to be caught in the seam; on a squared-up
    project they are laid on the back, to be caught under the binding; on a finished one they are sewn on by hand.
    """

    project: str
    loop: str
    number: int


@dataclass(frozen=True, slots=True)
class AttachRings:
    """Sew rings to the back by hand, evenly spaced, the outer ones near the ends."""

    project: str
    number: int
    drop: Quantity
