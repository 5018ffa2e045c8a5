"""Shapes as SVG elements."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from enum import Enum
from itertools import chain
from math import floor
from xml.sax.saxutils import escape

from evenseam.figures.cloth_look import ClothLook, Texture
from evenseam.figures.colour import Colour
from evenseam.figures.drawing import (
    Anchor,
    Area,
    Arrow,
    Cloth,
    Curve,
    Ink,
    Label,
    Line,
    Measure,
    Shape,
    Side,
    Stroke,
    Tone,
)
from evenseam.figures.gathering import gathered
from evenseam.figures.lettering import LINE_HEIGHT, label_lines, plate_box
from evenseam.figures.measure_line import measure_parts
from evenseam.figures.palette import DEEP, HALO, INK, INKS, RUST, STROKES, TONES, Shade, literal, on_web
from evenseam.figures.plane import Point, Polygon, Spot
from evenseam.figures.svg_ways import short_ways, written
from evenseam.figures.texture_marks import DOT, SPACING, Stretch, texture_marks

_HALF = 0.5 + 1e-5
"""Half a step of the last place, and a hair."""
CLOTH_LINE = 0.9
MARK_LINE = 0.7
DOT_LINE = 1.5


class Theme(Enum):
    """Where a picture is going."""

    WEB = "web"
    PRINT = "print"


class SvgInk:
    """Writes shapes in one theme.

    `grain` is the length, in the units of the coordinates, of what the style calls one drawing unit (line widths,
    letters): 1 for pictures, which have one unit; a point on true-scale paper.
    """

    def __init__(
        self,
        theme: Theme,
        looks: Mapping[str, ClothLook],
        id_prefix: str,
        *,
        grain: float = 1.0,
        places: int = 2,
    ) -> None:
        self._theme = theme
        self._looks = looks
        self._prefix = id_prefix
        self._grain = grain
        self._places = places
        self._grid = 10.0**places
        self._patterns: dict[str, str] = {}
        self._ids = 0

    def number(self, value: float) -> str:
        """Return a decimal with no more places than the eye needs, always written the same way.

        What lies half way between two goes up, even if it lies a hair below: sums that should be equal are written
        alike, in whatever order they were added.
        """
        return written(floor(value * self._grid + _HALF), self._places)

    def shapes(self, shapes: Iterable[Shape]) -> str:
        """Return the elements of shapes; on the web those that look alike are one wherever nothing lies between."""
        if self._theme is Theme.WEB:
            return "".join(self._run(run) for run in gathered(shapes))
        return "".join(self._shape(shape) for shape in shapes)

    def definitions(self) -> str:
        """Return what the elements written so far refer to."""
        return f"<defs>{''.join(self._patterns.values())}</defs>" if self._patterns else ""

    def _run(self, run: Sequence[Shape]) -> str:
        """Return shapes that look alike."""
        match run[0]:
            case Cloth() as first:
                polygons = (one.polygons for one in run if isinstance(one, Cloth))
                return self._cloth(replace(first, polygons=tuple(chain.from_iterable(polygons))))
            case Area() as first:
                polygons = (one.polygons for one in run if isinstance(one, Area))
                return self._area(replace(first, polygons=tuple(chain.from_iterable(polygons))))
            case Line(stroke=stroke, is_closed=is_closed):
                lines = (one.points for one in run if isinstance(one, Line))
                return self._stroked(short_ways(lines, is_closed=is_closed), stroke)
            case Label():
                return self._labels([one for one in run if isinstance(one, Label)])
        return "".join(self._shape(shape) for shape in run)

    def _shape(self, shape: Shape) -> str:
        match shape:
            case Cloth():
                return self._cloth(shape)
            case Area():
                return self._area(shape)
            case Line(points=points, stroke=stroke, is_closed=is_closed):
                return self._stroked(self._way(points, is_closed=is_closed), stroke)
            case Curve(start=start, bend=bend, end=end, stroke=stroke):
                return self._stroked(f"M{self._at(start)}Q{self._at(bend)} {self._at(end)}", stroke)
            case Arrow():
                return self._arrow(shape)
            case Measure():
                lines, label = measure_parts(shape)
                way = "".join(self._way(line) for line in lines)
                return self._path(way, fill=None, stroke=INK, width=0.8) + self._label(label)
            case Label():
                return self._label(shape)

    # --- fabrics and other areas -------------------------------------------------------------------------------

    def _cloth(self, cloth: Cloth) -> str:
        look = self._looks[cloth.fabric]
        is_right = cloth.side is Side.RIGHT
        name = f"--fabric-{look.fabric}" + ("" if is_right else "-wrong")
        fill = self._fabric_colour(name, look.colour if is_right else look.wrong)
        line = self._fabric_colour(f"{name}-line", look.line if is_right else look.wrong_line)
        mark = self._fabric_colour(f"{name}-mark", look.mark if is_right else look.wrong_mark)
        way = self._rings(cloth.polygons)
        width = CLOTH_LINE if cloth.is_outlined else 0.0
        # The wrong side always shows falling lines: a print shows through on its back as a blur, not as itself.
        texture = (look.texture if is_right else Texture.FALLING) if cloth.has_texture else Texture.PLAIN
        return self._textured(way, cloth.polygons, texture, name[2:], fill, line, mark, width)

    def _area(self, area: Area) -> str:
        look = TONES[area.tone]
        texture = {Tone.BATTING: Texture.DOTS, Tone.LEFTOVER: Texture.RISING}.get(area.tone, Texture.PLAIN)
        way = self._rings(area.polygons)
        fill = "none" if look.fill is None else self._colour(look.fill)
        return self._textured(
            way, area.polygons, texture, f"tone-{area.tone.value}", fill, self._colour(look.line),
            self._colour(look.mark), look.width, look.opacity,
        )  # fmt: skip

    def _textured(
        self,
        way: str,
        polygons: Sequence[Polygon],
        texture: Texture,
        name: str,
        fill: str,
        line: str,
        mark: str,
        width: float,
        opacity: float = 1.0,
    ) -> str:
        paint = f'fill="{fill}"' + ("" if opacity == 1 else f' fill-opacity="{self.number(opacity)}"')
        paint += f' stroke="{line}" stroke-width="{self._size(width)}" stroke-linejoin="round"' if width else ""
        if texture is Texture.PLAIN:
            return f'<path {paint} d="{way}"/>'
        if self._theme is Theme.WEB:
            self._ids += 1
            id = f"{self._prefix}-{self._ids}"
            pattern = self._pattern(name, texture, mark)
            return f'<g {paint}><path id="{id}" d="{way}"/></g><use xlink:href="#{id}" fill="url(#{pattern})"/>'
        marks = texture_marks(texture, [polygon.corners for polygon in polygons], SPACING * self._grain)
        return f'<path {paint} d="{way}"/>{self._marks(marks, texture, mark)}'

    def _marks(self, marks: list[Stretch], texture: Texture, colour: str) -> str:
        if not marks:
            return ""
        number = self.number
        way = "".join(
            f"M{number(x1)} {number(y1)}H{number(x2)}"
            if y1 == y2
            else f"M{number(x1)} {number(y1)}L{number(x2)} {number(y2)}"
            for x1, y1, x2, y2 in marks
        )
        width, cap = (DOT_LINE, ' stroke-linecap="round"') if texture is Texture.DOTS else (MARK_LINE, "")
        return f'<path fill="none" stroke="{colour}" stroke-width="{self._size(width)}"{cap} d="{way}"/>'

    def _pattern(self, name: str, texture: Texture, mark: str) -> str:
        id = f"{self._prefix}-{name}-{texture.name.lower()}"
        if id not in self._patterns:
            tile, way = _TILES[texture]
            number = self.number
            cap = f'{self.number(DOT_LINE)}" stroke-linecap="round' if texture is Texture.DOTS else str(MARK_LINE)
            self._patterns[id] = (
                f'<pattern id="{id}" width="{number(tile[0])}" height="{number(tile[1])}" '
                f'patternUnits="userSpaceOnUse"><path fill="none" stroke="{mark}" stroke-width="{cap}" d="{way}"/>'
                "</pattern>"
            )
        return id

    # --- lines, arrows, words ----------------------------------------------------------------------------------

    def _stroked(self, way: str, stroke: Stroke) -> str:
        look = STROKES[stroke]
        halo = self._path(way, fill=None, stroke=HALO, width=look.halo) if look.halo else ""
        return halo + self._path(way, fill=None, stroke=look.colour, width=look.width, dashes=look.dashes)

    def _arrow(self, arrow: Arrow) -> str:
        start, end = arrow.start, arrow.end
        bend = arrow.bend or Point((start.x + end.x) / 2, (start.y + end.y) / 2)
        way_x, way_y = end[0] - bend[0], end[1] - bend[1]
        long = Point(way_x, way_y).length or 1.0
        way_x, way_y = way_x / long * self._grain, way_y / long * self._grain
        base = (end[0] - way_x * 7, end[1] - way_y * 7)
        number = self.number
        shaft = f"M{number(start[0])} {number(start[1])}Q{number(bend[0])} {number(bend[1])} "
        shaft += f"{number(base[0])} {number(base[1])}"
        head = "M" + " ".join(
            f"{number(x)} {number(y)}"
            for x, y in (
                end,
                (end[0] - way_x * 9 - way_y * 4.2, end[1] - way_y * 9 + way_x * 4.2),
                (end[0] - way_x * 9 + way_y * 4.2, end[1] - way_y * 9 - way_x * 4.2),
            )
        )
        head += "Z"
        return (
            self._path(shaft, fill=None, stroke=HALO, width=4.2)
            + self._path(head, fill=HALO, stroke=HALO, width=2.4)
            + self._path(shaft, fill=None, stroke=RUST, width=2.0)
            + self._path(head, fill=RUST)
        )

    def _labels(self, labels: Sequence[Label]) -> str:
        """Return labels of one look: single signs as one text that names a place for each, longer words in a group."""
        signs = [label for label in labels if len(label.text) == 1 and not label.is_upward]
        words = [label for label in labels if len(label.text) != 1 or label.is_upward] if len(signs) > 1 else labels
        look, found = self._letters(labels[0]), ""
        if len(signs) > 1:
            number, down = self.number, float(labels[0].size) * self._grain * 0.35
            across = " ".join(number(float(label.at.x)) for label in signs)
            heights = " ".join(number(float(label.at.y) + down) for label in signs)
            text = escape("".join(label.text for label in signs))
            found = f'<text x="{across}" y="{heights}" {look}>{text}</text>'
        if len(words) == 1:
            return found + self._label(words[0])
        inner = "".join(self._words(label, "") for label in words)
        return found + (f"<g {look}>{inner}</g>" if inner else "")

    def _label(self, label: Label) -> str:
        return self._words(label, " " + self._letters(label))

    def _letters(self, label: Label) -> str:
        """Return how the letters of a label look."""
        anchor = "" if label.anchor is Anchor.START else f' text-anchor="{label.anchor.value}"'
        weight = ' font-weight="700"' if label.is_bold else ""
        size = self.number(float(label.size) * self._grain)
        return f'font-size="{size}"{anchor}{weight} fill="{self._label_colour(label)}"'

    def _words(self, label: Label, look: str) -> str:
        x, y = float(label.at.x), float(label.at.y)
        down = float(label.size) * self._grain * 0.35
        number = self.number
        place = f'x="{number(x)}" y="{number(y + down)}"'
        if label.is_upward:
            place = f'transform="translate({number(x + down)} {number(y)})rotate(-90)"'
        plate = self._plate(label) if label.has_ground else ""
        first, *others = label_lines(label)
        pitch = number(float(label.size) * self._grain * LINE_HEIGHT)
        words = escape(first) + "".join(
            f'<tspan x="{number(x)}" dy="{pitch}">{escape(line)}</tspan>' for line in others
        )
        return f"{plate}<text {place}{look}>{words}</text>"

    def _plate(self, label: Label) -> str:
        left, top, right, bottom = plate_box(label).bounds
        number = self.number
        return (
            f'<rect x="{number(left)}" y="{number(top)}" width="{number(right - left)}" '
            f'height="{number(bottom - top)}" rx="{self._size(3)}" fill="{HALO}"/>'
        )

    def _label_colour(self, label: Label) -> str:
        if label.has_ground:
            return RUST if label.ink is Ink.ACCENT else DEEP
        if label.on_fabric is None:
            return self._colour(INKS[label.ink])
        look = self._looks[label.on_fabric]
        if label.side is Side.RIGHT:
            return self._fabric_colour(f"--fabric-{look.fabric}-ink", look.ink)
        return self._fabric_colour(f"--fabric-{look.fabric}-wrong-ink", look.wrong_ink)

    def _path(
        self,
        way: str,
        *,
        fill: Colour | None = None,
        stroke: Colour | Shade | None = None,
        width: float = 0.0,
        dashes: Sequence[float] = (),
    ) -> str:
        lined = ""
        if stroke is not None:
            lined = f' stroke="{self._colour(stroke)}" stroke-width="{self._size(width)}"'
            lined += ' stroke-linejoin="round"'
        if dashes:
            lined += f' stroke-dasharray="{" ".join(self._size(dash) for dash in dashes)}"'
        return f'<path fill="{fill or "none"}"{lined} d="{way}"/>'

    # --- coordinates and colours -------------------------------------------------------------------------------

    def _at(self, point: Spot) -> str:
        number = self.number
        return f"{number(float(point.x))} {number(float(point.y))}"

    def _rings(self, polygons: Sequence[Polygon]) -> str:
        if self._theme is Theme.WEB:
            return short_ways([polygon.corners for polygon in polygons], is_closed=True)
        return "".join(self._way(polygon.corners, is_closed=True) for polygon in polygons)

    def _way(self, points: Iterable[Spot], *, is_closed: bool = False) -> str:
        return "M" + " ".join(self._at(point) for point in points) + ("Z" if is_closed else "")

    def _size(self, value: float) -> str:
        return self.number(value * self._grain)

    def _colour(self, colour: Colour | Shade) -> str:
        return literal(colour) if self._theme is Theme.PRINT else on_web(colour)

    def _fabric_colour(self, name: str, colour: Colour) -> str:
        return colour if self._theme is Theme.PRINT else f"var({name},{colour})"


def _tiles() -> dict[Texture, tuple[tuple[float, float], str]]:
    """Return for each texture one tile and the way of its marks, the same net as the explicit marks."""
    s = SPACING
    d = s * 2**0.5
    w = d * 1.5
    c = s * 1.3
    a = s * 0.45
    p = s * 1.4
    return {
        Texture.RISING: ((d, d), _slant(d, -1)),
        Texture.FALLING: ((d, d), _slant(d, 1)),
        Texture.LATTICE: ((w, w), _slant(w, -1) + _slant(w, 1)),
        Texture.LEVEL: ((s, s), f"M0 {s / 2:.2f}H{s:.2f}"),
        Texture.UPRIGHT: ((s, s), f"M{s / 2:.2f} 0V{s:.2f}"),
        Texture.DOTS: ((s, 2 * s), f"M1 {s / 2:.2f}h{DOT}M{1 + s / 2:.2f} {s * 1.5:.2f}h{DOT}"),
        Texture.DASHES: ((p, 2 * s), f"M0.4 {s / 2:.2f}h{s * 0.6:.2f}M{p * 0.35:.2f} {s * 1.5:.2f}h{s * 0.6:.2f}"),
        Texture.CROSSES: (
            (c, 2 * c),
            f"M{c / 2 - a / 2:.2f} {c / 2:.2f}h{a:.2f}m{-a / 2:.2f} {-a / 2:.2f}v{a:.2f}"
            f"M0 {c * 1.5:.2f}h{a / 2:.2f}M{c - a / 2:.2f} {c * 1.5:.2f}h{a / 2:.2f}"
            f"M0 {c * 1.5 - a / 2:.2f}v{a:.2f}M{c:.2f} {c * 1.5 - a / 2:.2f}v{a:.2f}",
        ),
    }


def _slant(side: float, way: int) -> str:
    """Return slanting lines that meet those of the next tile, corners included."""
    half = side / 2
    rising = f"M0 {side:.2f}L{side:.2f} 0M{-half:.2f} {half:.2f}L{half:.2f} {-half:.2f}"
    rising += f"M{half:.2f} {side + half:.2f}L{side + half:.2f} {half:.2f}"
    falling = f"M0 0L{side:.2f} {side:.2f}M{half:.2f} {-half:.2f}L{side + half:.2f} {half:.2f}"
    falling += f"M{-half:.2f} {half:.2f}L{half:.2f} {side + half:.2f}"
    return rising if way < 0 else falling


_TILES = _tiles()
