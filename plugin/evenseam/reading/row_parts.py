"""What stands in a row of unequal blocks: a block, or a spacer of a fabric, with or without a width."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.problems import Place, Report
from evenseam.reading import codes
from evenseam.reading.drawn_values import Placement, read_placement
from evenseam.reading.kinds import Length
from evenseam.reading.leaves import scalar_of, shown
from evenseam.reading.lengths import length_in
from evenseam.reading.tree import Node

_SPACER = re.compile(r"spacer(?:\s+(?P<rest>.*))?", re.DOTALL)
_FIGURES = "0-9½¼¾⅛⅜⅝⅞⅓⅔"
# The width, if there is one, is what stands at the end from the first word that begins with a figure.
_WITH_WIDTH = re.compile(
    rf"(?P<fabric>\S.*?)\s+(?P<width>[{_FIGURES}][{_FIGURES} ./-]*(?:in|inch|inches|cm|\"|″)?)", re.DOTALL
)
LONGEST_PART = 160


@dataclass(frozen=True, slots=True)
class WrittenSpacer:
    """A spacer as it was written."""

    fabric: str
    width: Fraction | None
    """None when it takes its share of what the row lacks."""
    place: Place
    width_text: str = ""


def read_block_or_spacer(node: Node, unit: Unit, report: Report) -> Placement | WrittenSpacer | None:
    """Return the block of "lantern turned 90", or the spacer of "spacer fog" or "spacer fog 1 1/2"."""
    scalar = scalar_of(node, "a block or a spacer", report)
    if scalar is None:
        return None
    found = _SPACER.fullmatch(scalar.text.strip()[:LONGEST_PART])
    if found is None:
        return read_placement(scalar, report)
    rest = (found["rest"] or "").strip()
    if not rest:
        hint = "write its fabric after it: spacer fog; a width of its own comes last: spacer fog 1 1/2"
        report.add(codes.EMPTY, scalar.place, f"{shown(scalar.text)} has no fabric", hint)
        return None
    with_width = _WITH_WIDTH.fullmatch(rest)
    if with_width is None:
        return WrittenSpacer(rest, None, scalar.place)
    width = length_in(with_width["width"], scalar.place, Length(), unit, report)
    return None if width is None else WrittenSpacer(with_width["fabric"], width, scalar.place, with_width["width"])
