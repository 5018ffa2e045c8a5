"""Every letter and every line of every diagram against what really lies under it: by day, by night and on paper."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from evenseam.figures import draw
from evenseam.figures.drawing import Area, Arrow, Cloth, Curve, Label, Line, Measure, Side
from evenseam.figures.measure_line import measure_parts
from evenseam.figures.palette import DEEP, GROUND, HALO, INKS, RUST, STROKES, TONES, Shade
from evenseam.figures.pictures import picture_names
from evenseam.figures.plane import Point
from evenseam.publish.sources import find_patterns
from evenseam.reading import read_pattern
from evenseam.sheet import compute_sheet
from shapely import Polygon as Outline
from shapely import points as as_points
from support.contrast import LINES, WORDS, ratio

ROOT = Path(__file__).resolve().parents[2]
PAGES = {"day": ("light", GROUND.light), "night": ("dark", GROUND.dark), "night on our own site": ("dark", "#171c24")}


def mixed(top, below, opacity):
    parts = ((int(top[n : n + 2], 16), int(below[n : n + 2], 16)) for n in (1, 3, 5))
    return "#" + "".join(f"{round(one * opacity + other * (1 - opacity)):02x}" for one, other in parts)


class Seen:
    """What has been laid down so far, for one kind of page."""

    def __init__(self, looks, shade, ground):
        self.looks, self.shade, self.ground = looks, shade, ground
        self.laid = []

    def colour(self, colour):
        return getattr(colour, self.shade) if isinstance(colour, Shade) else colour

    def lay(self, shape):
        if isinstance(shape, Cloth):
            look = self.looks[shape.fabric]
            fill, opacity = (look.colour if shape.side is Side.RIGHT else look.wrong), 1.0
        else:
            tone = TONES[shape.tone]
            if tone.fill is None:
                return
            fill, opacity = self.colour(tone.fill), tone.opacity
        for polygon in shape.polygons:
            outline = Outline([(float(x), float(y)) for x, y in polygon.corners])
            self.laid.append((outline, fill, opacity))

    def under(self, x, y):
        """Return the colour at a point."""
        spot, found = as_points(float(x), float(y)), []
        for outline, fill, opacity in reversed(self.laid):
            left, top, right, bottom = outline.bounds
            if left <= spot.x <= right and top <= spot.y <= bottom and outline.contains(spot):
                found.append((fill, opacity))
                if opacity == 1.0:
                    break
        colour = self.ground
        for fill, opacity in reversed(found):
            colour = mixed(fill, colour, opacity)
        return colour

    def ink(self, label):
        if label.has_ground:
            return HALO, RUST if label.ink.value == "accent" else DEEP
        under = self.under(label.at.x, label.at.y)
        if label.on_fabric is None:
            return under, self.colour(INKS[label.ink])
        look = self.looks[label.on_fabric]
        return under, look.ink if label.side is Side.RIGHT else look.wrong_ink


def beside(shape):
    """Return pairs of points along a line, a little to its one side and to its other."""
    match shape:
        case Line(points=points, is_closed=is_closed):
            stretches = pairwise([*points, points[0]] if is_closed else points)
        case Curve(start=start, bend=bend, end=end):
            middle = Point((start.x + 2 * bend.x + end.x) / 4, (start.y + 2 * bend.y + end.y) / 4)
            stretches = [(start, middle), (middle, end)]
    for one, other in stretches:
        x1, y1, x2, y2 = float(one.x), float(one.y), float(other.x), float(other.y)
        long = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5 or 1
        aside, down = (y1 - y2) / long, (x2 - x1) / long
        for share in (0.25, 0.5, 0.75):
            x, y = x1 * share + x2 * (1 - share), y1 * share + y2 * (1 - share)
            yield (x + aside, y + down), (x - aside, y - down)


def faults(drawing, shade, ground):
    """Yield what cannot be told from what lies under it; and count what was looked at."""
    seen, found, looked = Seen(drawing.looks, shade, ground), [], 0

    def check(what, least, one, other):
        nonlocal looked
        looked += 1
        if ratio(one, other) < least:
            found.append((what, one, other, round(ratio(one, other), 2)))

    for shape in drawing.shapes:
        match shape:
            case Cloth() | Area():
                seen.lay(shape)
            case Label():
                check(shape.text, WORDS, *seen.ink(shape))
            case Measure():
                lines, label = measure_parts(shape)
                check(label.text, WORDS, *seen.ink(label))
                for line in lines:
                    for one, other in pairwise(line):
                        under = seen.under((float(one.x) + float(other.x)) / 2, (float(one.y) + float(other.y)) / 2)
                        check(f"measure {label.text}", LINES, seen.colour(INKS[label.ink]), under)
            case Line() | Curve():
                look = STROKES[shape.stroke]
                if look.halo:
                    check(shape.stroke.value, LINES, seen.colour(look.colour), HALO)
                else:
                    colour = seen.colour(look.colour)
                    for sides in beside(shape):
                        # A line on an edge, as round printed paper at night, must stand out from one of its sides.
                        under = max(
                            (seen.under(*spot) for spot in sides), key=lambda one, colour=colour: ratio(one, colour)
                        )
                        check(shape.stroke.value, LINES, colour, under)
            case Arrow():
                check("arrow", LINES, RUST, HALO)
    return looked, found


def sheets():
    """Yield the smallest size of every demo pattern, in the edition it is drafted in."""
    for source in find_patterns(ROOT / "patterns"):
        pattern = read_pattern(source.slug, source.source, source.drawings).value
        project = next(one for one in pattern.projects if one.unit is pattern.units[0])
        yield pytest.param(pattern, project, id=source.slug)


@pytest.mark.parametrize(("pattern", "project"), list(sheets()))
def test_every_diagram_can_be_read(pattern, project):
    sheet = compute_sheet(pattern, project).value
    wrong, looked = {}, 0
    for name in picture_names(sheet):
        drawing = draw(sheet, name)
        # On paper the colours are those of the day, on white.
        for page, (shade, ground) in PAGES.items():
            count, found = faults(drawing, shade, ground)
            looked += count
            if found:
                wrong[name, page] = found[:3]
    assert looked > 300 and wrong == {}


def test_a_fault_is_found():
    sheet = compute_sheet(*next(sheets()).values).value
    drawing = draw(sheet, "finished")
    assert faults(drawing, "light", GROUND.dark)[1]
