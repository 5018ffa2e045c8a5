"""One drawing as a picture by itself: its pieces and sections when it can be sewn, and marks on whatever is wrong."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import hypot
from textwrap import wrap
from xml.sax.saxutils import escape

from evenseam.figures.colour import LEAST_FOR_LINES, LEAST_FOR_TEXT, readable_on
from evenseam.figures.palette import PRINT_FONT
from evenseam.geometry import Point, Polygon
from evenseam.piecing import LockedReport, PiecedBlock
from evenseam.reading import DrawingLook, Spotted

WIDE = 560.0
ROOM = 26.0
LETTERS_IN_LINE = 84
LINE = 18.0
MOST_LISTED = 24
TROUBLE = "#c2001f"
PAPER = "#fffdf8"
DARK = "#2b2320"
PALE = "#fbf4e6"
HATCH = 7.0
"""Between the lines of a hatching, in drawing units."""

_Spot = tuple[float, float]


def drawing_look_svg(look: DrawingLook, pieced: PiecedBlock | None, locked: LockedReport | None) -> str:
    """Return the picture as SVG text, in literal colours.

    `pieced` is there when the drawing can be sewn, `locked` when no straight seam opens it.
    """
    page = _Page(look)
    page.cloth(pieced)
    words = [f"{number}  {item.message}" for number, item in enumerate(look.spotted[:MOST_LISTED], start=1)]
    for number, item in enumerate(look.spotted[:MOST_LISTED], start=1):
        page.trouble(number, item)
    if locked is not None:
        words += page.locked(locked, len(words))
    return page.finished(words)


class _Page:
    def __init__(self, look: DrawingLook) -> None:
        self.look = look
        across, down = (float(scale) for scale in look.block.scale)
        everything = [*(p for piece in look.pieces for p in piece.outline.corners), *look.outline.corners]
        everything += [spot for way in look.unplaced for spot in way]
        xs, ys = [float(p.x) * across for p in everything], [float(p.y) * down for p in everything]
        # A drawing with a corner far off must not shrink all the rest to nothing.
        wide, high = float(look.block.width.value), float(look.block.height.value)
        self.left, self.top = max(min(xs), -wide / 4), max(min(ys), -high / 4)
        right, bottom = min(max(xs), wide * 1.25), min(max(ys), high * 1.25)
        self.factor = WIDE / max(right - self.left, bottom - self.top)
        self.across, self.down = across * self.factor, down * self.factor
        self.left, self.top = self.left * self.factor, self.top * self.factor
        self.width, self.height = right * self.factor - self.left, bottom * self.factor - self.top
        self.parts: list[str] = []

    def spot(self, point: Point) -> _Spot:
        return float(point.x) * self.across - self.left + ROOM, float(point.y) * self.down - self.top + ROOM

    def ring(self, polygon: Polygon) -> list[_Spot]:
        return [self.spot(corner) for corner in polygon.corners]

    # --- the block ---------------------------------------------------------------------------------------------

    def cloth(self, pieced: PiecedBlock | None) -> None:
        colours = {fabric.id: fabric.colour for fabric in self.look.fabrics}
        names = {piece.piece: piece.label for section in pieced.sections for piece in section.pieces} if pieced else {}
        self.polygon(self.ring(self.look.outline), fill=PAPER, stroke=DARK, width=0.8)
        for piece in self.look.pieces:
            colour = colours[piece.fabric]
            line = readable_on(colour, ("#4b3a31", "#f1e3cc"), LEAST_FOR_LINES)
            self.polygon(self.ring(piece.outline), fill=colour, stroke=line, width=0.9)
        for way in self.look.unplaced:
            spots = [self.spot(point) for point in way]
            self.parts.append(f'<path d="M{_way(spots)}" fill="none" stroke="{TROUBLE}" stroke-width="1"/>')
        if pieced is not None and len(pieced.sections) > 1:
            for section in pieced.sections:
                self.polygon(self.ring(section.outline), stroke=PAPER, width=4.4)
            for section in pieced.sections:
                self.polygon(self.ring(section.outline), stroke=DARK, width=2.2)
        for piece in self.look.pieces:
            text = names.get(piece.id, piece.id)
            ink = readable_on(colours[piece.fabric], (DARK, PALE), LEAST_FOR_TEXT)
            self.label(self.ring(piece.outline), text, ink)

    def label(self, ring: Sequence[_Spot], text: str, ink: str) -> None:
        x, y, room = _widest(ring)
        size = min(16.0, 1.7 * room / (0.55 * len(text)) ** 0.5 if len(text) > 1 else 1.7 * room)
        if size < 6:
            return
        self.words(x, y + size * 0.35, text, size, ink, anchor="middle")

    # --- what is wrong -----------------------------------------------------------------------------------------

    def trouble(self, number: int, item: Spotted) -> None:
        rings = [self.ring(shape) for shape in item.shapes]
        for ring in rings:
            # A whole piece is only outlined: hatched, it would hide what else is wrong with it.
            if item.code.name != "piece-not-convex":
                self.polygon(ring, fill="#ffffff", opacity=0.5)
                self.hatch(ring)
            self.polygon(ring, stroke=TROUBLE, width=2.0)
        for point in item.spots:
            x, y = self.spot(point)
            self.parts.append(
                f'<circle cx="{_n(x)}" cy="{_n(y)}" r="6" fill="none" stroke="{TROUBLE}" stroke-width="2.2"/>'
            )
        if rings:
            x, y, room = _widest(max(rings, key=_area))
            if room < 12:
                x, y = x + 14, y - 14
        elif item.spots:
            x, y = self.spot(item.spots[0])
            x, y = x + 15, y - 13
        else:
            return
        self.number(x, y, number)

    def locked(self, locked: LockedReport, before: int) -> list[str]:
        words: list[str] = []
        for number, each in enumerate(locked.sets, start=before + 1):
            ring = self.ring(each.outline)
            self.polygon(ring, stroke=PAPER, width=6)
            self.polygon(ring, stroke=TROUBLE, width=3)
            for added in each.seams:
                ends = _way([self.spot(added.seam.start), self.spot(added.seam.end)])
                self.parts.append(f'<path d="M{ends}" stroke="{PAPER}" stroke-width="5" fill="none"/>')
                self.parts.append(
                    f'<path d="M{ends}" stroke="{TROUBLE}" stroke-width="2.6" stroke-dasharray="7 4" fill="none"/>'
                )
            self.number(ring[0][0] + 13, ring[0][1] + 13, number)
            seams = "an added seam frees" if len(each.seams) == 1 else f"{len(each.seams)} added seams free"
            words.append(f"{number}  {', '.join(each.pieces)} lock one another; {seams} them (dashed)")
        return words

    def number(self, x: float, y: float, number: int) -> None:
        x = min(max(x, 12.0), self.width + 2 * ROOM - 12)
        y = min(max(y, 12.0), self.height + 2 * ROOM - 12)
        self.parts.append(
            f'<circle cx="{_n(x)}" cy="{_n(y)}" r="10" fill="{TROUBLE}" stroke="{PAPER}" stroke-width="1.5"/>'
        )
        self.words(x, y + 4.2, str(number), 12, "#ffffff", anchor="middle", is_bold=True)

    def hatch(self, ring: Sequence[_Spot]) -> None:
        low = min(x + y for x, y in ring)
        high = max(x + y for x, y in ring)
        ways: list[str] = []
        level = low + HATCH / 2
        while level < high:
            hits: list[_Spot] = []
            for (x, y), (u, v) in zip(ring, (*ring[1:], ring[0]), strict=True):
                start, end = x + y - level, u + v - level
                if (start > 0) != (end > 0):
                    share = start / (start - end)
                    hits.append((x + share * (u - x), y + share * (v - y)))
            hits.sort()
            ways += [f"M{_way(hits[at : at + 2])}" for at in range(0, len(hits) - 1, 2)]
            level += HATCH
        if ways:
            self.parts.append(f'<path d="{"".join(ways)}" stroke="{TROUBLE}" stroke-width="1.1" fill="none"/>')

    # --- ink ---------------------------------------------------------------------------------------------------

    def polygon(
        self, ring: Iterable[_Spot], *, fill: str = "none", stroke: str = "none", width: float = 1, opacity: float = 1
    ) -> None:
        shown = "" if opacity == 1 else f' fill-opacity="{_n(opacity)}"'
        self.parts.append(
            f'<path d="M{_way(ring)}z" fill="{fill}"{shown} stroke="{stroke}" stroke-width="{_n(width)}" '
            'stroke-linejoin="round"/>'
        )

    def words(
        self, x: float, y: float, text: str, size: float, ink: str, *, anchor: str = "start", is_bold: bool = False
    ) -> None:
        weight = ' font-weight="bold"' if is_bold else ""
        self.parts.append(
            f'<text x="{_n(x)}" y="{_n(y)}" font-size="{_n(size)}" fill="{ink}" text-anchor="{anchor}"{weight}>'
            f"{escape(text)}</text>"
        )

    def finished(self, words: Sequence[str]) -> str:
        y = self.height + 2 * ROOM + 6
        for word in words:
            for line in wrap(word, LETTERS_IN_LINE, subsequent_indent="     "):
                self.words(ROOM, y, line, 12, DARK)
                y += LINE
        wide, high = max(self.width, WIDE if words else 0.0) + 2 * ROOM, y + (8 if words else -6)
        title = escape(f"The drawing {self.look.name}")
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(wide)}" height="{_n(high)}" '
            f'viewBox="0 0 {_n(wide)} {_n(high)}" font-family="{PRINT_FONT}" role="img"><title>{title}</title>'
            f'<rect width="{_n(wide)}" height="{_n(high)}" fill="#ffffff"/>{"".join(self.parts)}</svg>\n'
        )


def _way(spots: Iterable[_Spot]) -> str:
    return "L".join(f"{_n(x)} {_n(y)}" for x, y in spots)


def _n(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _area(ring: Sequence[_Spot]) -> float:
    return abs(sum(x * v - u * y for (x, y), (u, v) in zip(ring, (*ring[1:], ring[0]), strict=True)))


def _widest(ring: Sequence[_Spot]) -> tuple[float, float, float]:
    """Return a spot well inside a shape with its distance to the nearest edge, tried on a grid of spots."""
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    left, top, wide, high = min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)
    spots = [(left + wide * i / 24, top + high * j / 24) for i in range(1, 24) for j in range(1, 24)]
    spots.append((sum(xs) / len(xs), sum(ys) / len(ys)))
    inside = [spot for spot in spots if _holds(ring, spot)] or spots[-1:]
    return max(((x, y, _room(ring, (x, y))) for x, y in inside), key=lambda found: found[2])


def _holds(ring: Sequence[_Spot], spot: _Spot) -> bool:
    is_in = False
    for (x, y), (u, v) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (y > spot[1]) != (v > spot[1]) and spot[0] < x + (u - x) * (spot[1] - y) / (v - y):
            is_in = not is_in
    return is_in


def _room(ring: Sequence[_Spot], spot: _Spot) -> float:
    nearest = float("inf")
    for (x, y), (u, v) in zip(ring, (*ring[1:], ring[0]), strict=True):
        across, down = u - x, v - y
        square = across * across + down * down or 1.0
        share = max(0.0, min(1.0, ((spot[0] - x) * across + (spot[1] - y) * down) / square))
        nearest = min(nearest, hypot(spot[0] - x - share * across, spot[1] - y - share * down))
    return nearest
