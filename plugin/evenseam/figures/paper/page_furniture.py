"""What stands on every page of templates: title, instructions, and squares to measure."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, Unit
from evenseam.figures.drawing import Anchor, Ink, Label, Line, Shape, Stroke
from evenseam.figures.frame import at, rectangle
from evenseam.figures.paper import words
from evenseam.figures.paper.paper_size import MARGIN, Paper
from evenseam.figures.paper.template_shapes import POINT, label_width
from evenseam.figures.rational import rational
from evenseam.geometry import Point
from evenseam.sheet import PatternSheet

HEAD_HEIGHT = Fraction(23, 20)
"""From the margin to where templates may begin, in inches."""
FOOT_HEIGHT = Fraction(1, 5)
_SQUARES_WIDE = Fraction(42, 10)


@dataclass(frozen=True, slots=True)
class LiveArea:
    """Where templates may lie, in inches from the top left corner of the paper."""

    left: Fraction
    top: Fraction
    width: Fraction
    height: Fraction


def live_area(paper: Paper) -> LiveArea:
    """Return the part of a page that templates may use."""
    return LiveArea(MARGIN, MARGIN + HEAD_HEIGHT, paper.live_width, paper.live_height - HEAD_HEIGHT - FOOT_HEIGHT)


def furniture(sheet: PatternSheet, paper: Paper, number: int, count: int) -> list[Shape]:
    """Return the head and the foot of one page."""
    project = sheet.project
    room = paper.live_width - _SQUARES_WIDE
    title = Fraction(12)
    fitting = title * room / label_width(sheet.pattern.title, title, is_bold=True)
    shapes: list[Shape] = [
        Label(
            at(MARGIN, MARGIN + Fraction(9, 100)), sheet.pattern.title, min(title, _tenths(fitting)),
            anchor=Anchor.START, is_bold=True,
        )
    ]  # fmt: skip
    lines = (
        words.which_edition(project.name, project.unit is Unit.CENTIMETRE),
        words.which_page(paper.title, number, count),
        words.FULL_SIZE,
        words.MEASURE_FIRST,
        words.allowance_included(project.seam_allowance.text),
        words.MIRRORED,
        words.MIRRORED_NEXT,
    )
    size = min(Fraction(7), *(_tenths(7 * room / label_width(line, 7)) for line in lines))
    for place, line in enumerate(lines):
        ink = Ink.PLAIN if place != 1 else Ink.QUIET
        down = MARGIN + Fraction(25, 100) + Fraction(place * 122, 1000)
        shapes.append(Label(at(MARGIN, down), line, size, ink, anchor=Anchor.START))
    shapes += _squares(paper.width - MARGIN - _SQUARES_WIDE + Fraction(1, 10))
    foot = paper.height - MARGIN - Fraction(6, 100)
    key_size = min(Fraction(7), _tenths(7 * paper.live_width / label_width(words.KEY, 7)))
    shapes.append(Label(at(paper.width / 2, foot), words.KEY, key_size, Ink.QUIET))
    return shapes


def _squares(left: Fraction) -> list[Shape]:
    """Return squares of 1 in and 2 cm and bars of 2 in and 5 cm.

    ::

        +------+ +----+  |-----------| 2 in
        | 1 in | |2 cm|
        |      | +----+  |-----------| 5 cm
        +------+
    """
    top = MARGIN + Fraction(1, 100)
    two = 2 / CENTIMETRES_PER_INCH
    shapes: list[Shape] = []
    second = left + 1 + Fraction(1, 8)
    for x, side, text in ((left, Fraction(1), words.ONE_INCH), (second, two, words.TWO_CENTIMETRES)):
        shapes.append(Line(rectangle(x, top, side, side).corners, Stroke.SEWING_LINE, is_closed=True))
        shapes.append(Label(at(x + side / 2, top + side / 2), text, Fraction(8)))
    bars = second + two + Fraction(1, 8)
    five = 5 / CENTIMETRES_PER_INCH
    for down, long, parts, text in (
        (Fraction(1, 4), Fraction(2), 8, words.TWO_INCHES),
        (Fraction(3, 4), five, 5, words.FIVE_CENTIMETRES),
    ):
        y = top + down
        shapes.append(Line((at(bars, y), at(bars + long, y)), Stroke.SEWING_LINE))
        for part in range(parts + 1):
            x = bars + long * Fraction(part, parts)
            tick = Fraction(8, 100) if part in (0, parts) else Fraction(4, 100)
            shapes.append(Line((at(x, y - tick), at(x, y + tick)), Stroke.SEWING_LINE))
        shapes.append(Label(Point(bars + long / 2, y + Fraction(15, 100)), text, Fraction(8)))
    return shapes


def _tenths(size: Fraction) -> Fraction:
    return Fraction(int(size * 10), 10)


def ink_box(label: Label) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """Return left, top, right and bottom of a label's letters in inches."""
    long = label_width(label.text, label.size, is_bold=label.is_bold)
    high = rational(label.size) * POINT * Fraction(6, 5)
    before = {Anchor.START: Fraction(0), Anchor.MIDDLE: Fraction(1, 2), Anchor.END: Fraction(1)}[label.anchor]
    x, y = rational(label.at.x), rational(label.at.y)
    if label.is_upward:
        return x - high / 2, y - long * (1 - before), x + high / 2, y + long * before
    return x - long * before, y - high / 2, x + long * (1 - before), y + high / 2
