"""The drawing model: a pen that records shapes, and the drawing it leaves.

A drawing is a list of shapes in the order they are laid down, in drawing units: about one to a sixteenth of the
width of a line of text on a phone, so that a picture is some 420 units wide and a label 14 units high. x runs right
and y down. Coordinates are decimals; the lines and words of true-scale paper stay exact until they are written.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import SupportsFloat, TypeAlias, Union

from evenseam.figures.cloth_look import ClothLook
from evenseam.figures.plane import Point, Polygon, Spot

WIDEST = 423.0
"""No picture may be wider, nor higher than HIGHEST, or its smallest letters cannot be read: on a phone its whole width
is 358 pixels, and letters of SMALL_SIZE come out at 11; on paper a picture shrinks to no less than half a point for a
unit, and they come out at 6 1/2."""
HIGHEST = 460.0
LABEL_SIZE = 14.0
SMALL_SIZE = 13.0
"""The smallest letters of any picture."""
LARGE_SIZE = 16.0


class Side(Enum):
    """Which side of the cloth is seen."""

    RIGHT = "right"
    WRONG = "wrong"


class Tone(Enum):
    """What an area is, when it is not fabric."""

    BATTING = "batting"
    PAPER = "paper"
    """A printed foundation."""
    LEFTOVER = "leftover"
    """Cloth that is cut away or kept for another day."""
    BOARD = "board"
    """What lies under the work."""
    RULER = "ruler"
    """A ruler one can see through."""
    DOT = "dot"
    """A dot that shows where seams meet."""


class Stroke(Enum):
    """What a line means."""

    EDGE = "edge"
    """An edge of something that is not fabric."""
    SEAM = "seam"
    """A seam line still to be sewn, or just sewn: dashed."""
    STITCH = "stitch"
    """Visible stitching: short dashes."""
    QUILTING = "quilting"
    """Stitching over the whole top, lighter than other stitching."""
    FOLD = "fold"
    LEADER = "leader"
    """From a label to its piece."""
    MARK = "mark"
    """A mark on a ruler."""
    CUT = "cut"
    """Cut here: heavy."""
    HELP = "help"
    """A quiet line that only leads the eye."""
    SEWN = "sewn"
    """The seam of this step: heavy and dashed, over any fabric."""
    CUTTING_LINE = "cutting line"
    """On a template: where scissors go."""
    SEWING_LINE = "sewing line"
    """On a template: where the needle goes."""


class Ink(Enum):
    """What letters are written in, where they do not stand on fabric."""

    PLAIN = "plain"
    QUIET = "quiet"
    ACCENT = "accent"
    ON_PAPER = "on paper"
    """On printed paper or batting, which stay pale by night."""


class Anchor(Enum):
    """Which part of a label its point holds."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True)
class Cloth:
    """Pieces of one fabric that lie side by side, drawn alike."""

    polygons: tuple[Polygon, ...]
    fabric: str
    side: Side = Side.RIGHT
    is_outlined: bool = True
    has_texture: bool = True


@dataclass(frozen=True, slots=True)
class Area:
    """Something that is not fabric: batting, paper, leftover cloth."""

    polygons: tuple[Polygon, ...]
    tone: Tone


@dataclass(frozen=True, slots=True)
class Line:
    """A straight-edged line."""

    points: tuple[Spot, ...]
    stroke: Stroke
    is_closed: bool = False


@dataclass(frozen=True, slots=True)
class Curve:
    """A curve from start to end, pulled towards the bend; without an arrowhead."""

    start: Point
    bend: Point
    end: Point
    stroke: Stroke


@dataclass(frozen=True, slots=True)
class Arrow:
    """What moves, and where to: a curve with a head at its end; straight when there is no bend."""

    start: Point
    end: Point
    bend: Point | None = None


@dataclass(frozen=True, slots=True)
class Measure:
    """A measure line between two points, with its figure; ticks stand across its ends."""

    start: Point
    end: Point
    text: str


@dataclass(frozen=True, slots=True)
class Label:
    """Words. `at` is the middle of the height of the letters."""

    at: Spot
    text: str
    size: SupportsFloat = LABEL_SIZE
    ink: Ink = Ink.PLAIN
    on_fabric: str | None = None
    """Fabric id it stands on, which decides its ink."""
    side: Side = Side.RIGHT
    anchor: Anchor = Anchor.MIDDLE
    is_bold: bool = False
    has_ground: bool = False
    """True for a label on a small plate of its own, readable over anything."""
    is_upward: bool = False
    """True for words that read from bottom to top."""
    wide: float | None = None
    """Words are broken into lines no longer than this, the first at `at`; None for a single line."""


Shape: TypeAlias = Union[Cloth, Area, Line, Curve, Arrow, Measure, Label]


@dataclass(frozen=True, slots=True)
class Drawing:
    """A finished drawing: what was drawn, in order, and how its fabrics look."""

    shapes: tuple[Shape, ...]
    looks: Mapping[str, ClothLook]
    frame: Polygon | None = None
    """What is to be seen; None for everything that was drawn, and a little room round it."""

    @property
    def labels(self) -> tuple[Label, ...]:
        """All labels, in drawing order."""
        return tuple(shape for shape in self.shapes if isinstance(shape, Label))


class Pen:
    """Records what is drawn.

    >>> pen = Pen({})
    >>> pen.line((Point(0, 0), Point(9, 0)), Stroke.CUT)
    >>> len(pen.drawing().shapes)
    1
    """

    def __init__(self, looks: Mapping[str, ClothLook]) -> None:
        self.looks = looks
        self._shapes: list[Shape] = []

    def draw(self, shapes: Iterable[Shape]) -> None:
        """Lay down shapes made elsewhere."""
        self._shapes.extend(shapes)

    def cloth(
        self,
        polygons: Iterable[Polygon],
        fabric: str,
        side: Side = Side.RIGHT,
        *,
        is_outlined: bool = True,
        has_texture: bool = True,
    ) -> None:
        """Draw pieces of one fabric."""
        self._shapes.append(Cloth(tuple(polygons), fabric, side, is_outlined, has_texture))

    def area(self, polygon: Polygon, tone: Tone) -> None:
        """Draw something that is not fabric."""
        self._shapes.append(Area((polygon,), tone))

    def line(self, points: Iterable[Spot], stroke: Stroke, *, is_closed: bool = False) -> None:
        """Draw a line through points."""
        self._shapes.append(Line(tuple(points), stroke, is_closed))

    def outline(self, polygon: Polygon, stroke: Stroke) -> None:
        """Draw a line round a polygon."""
        self.line(polygon.corners, stroke, is_closed=True)

    def curve(self, start: Point, bend: Point, end: Point, stroke: Stroke) -> None:
        """Draw a curve."""
        self._shapes.append(Curve(start, bend, end, stroke))

    def arrow(self, start: Point, end: Point, bend: Point | None = None) -> None:
        """Draw an arrow."""
        self._shapes.append(Arrow(start, end, bend))

    def measure(self, start: Point, end: Point, text: str) -> None:
        """Draw a measure line with its figure."""
        self._shapes.append(Measure(start, end, text))

    def label(
        self,
        at: Spot,
        text: str,
        *,
        size: SupportsFloat = LABEL_SIZE,
        ink: Ink = Ink.PLAIN,
        on_fabric: str | None = None,
        side: Side = Side.RIGHT,
        anchor: Anchor = Anchor.MIDDLE,
        is_bold: bool = False,
        has_ground: bool = False,
        is_upward: bool = False,
        wide: float | None = None,
    ) -> None:
        """Write words."""
        label = Label(at, text, size, ink, on_fabric, side, anchor, is_bold, has_ground, is_upward, wide)
        self._shapes.append(label)

    def caption(self, at: Spot, text: str, wide: float | None = None) -> None:
        """Write quiet words round a middle, in lines no longer than `wide`: what a picture, or a part of it, shows."""
        self.label(at, text, size=SMALL_SIZE, ink=Ink.QUIET, wide=wide)

    def drawing(self, frame: Polygon | None = None) -> Drawing:
        """Return what was drawn."""
        return Drawing(tuple(self._shapes), self.looks, frame)
