"""From the elements of a drawing to its shapes on the page: corners in pixels, with every transform worked in."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction

from evenseam.problems import Code, Place, Report
from evenseam.reading.drawing import codes
from evenseam.reading.drawing.elements import DrawingText, Element
from evenseam.reading.drawing.numbers import read_length, read_numbers
from evenseam.reading.drawing.paths import read_path
from evenseam.reading.drawing.style import Look, Paint, StyleSheet
from evenseam.reading.drawing.transforms import Matrix, Spot, fit_view_box, read_transform
from evenseam.reading.leaves import shown

MOST_SHAPES = 2000
MOST_CORNERS = 2000
MOST_COPIES = 10
"""Copies within copies."""
MOST_VISITED = 6_000
MOST_TOLD = 12
"""Problems of one kind that are told one by one."""
OUTLINE = "outline"
"""The class or id that marks the outline of the block."""

_GROUPS = ("g", "a", "switch")
_SILENT = (
    "defs", "symbol", "clipPath", "mask", "pattern", "marker", "linearGradient", "radialGradient", "filter", "style",
    "title", "desc", "metadata", "view", "cursor",
)  # fmt: skip
_MOVING = ("animate", "animateTransform", "animateMotion", "set")


@dataclass(frozen=True, slots=True)
class DrawnShape:
    """One shape as it lies on the page."""

    corners: tuple[Spot, ...]
    """For a dot or a word just its middle."""
    is_closed: bool
    fill: Paint
    has_stroke: bool
    words: tuple[str, ...]
    """Classes and ids that may name its fabric, the nearest first."""
    place: Place
    is_outline: bool = False
    is_dot: bool = False
    text: str = ""
    is_fill_said: bool = True
    """False when the fill is black only because nothing is said about it."""

    @property
    def is_area(self) -> bool:
        """True for a shape that is filled with something."""
        return not self.is_dot and bool(self.fill.colour or self.fill.word)


@dataclass(frozen=True, slots=True)
class Sheet:
    """Everything seen on the page of a drawing."""

    shapes: tuple[DrawnShape, ...]
    page: tuple[Fraction, Fraction, Fraction, Fraction] | None
    """Left, top, right and bottom of the page in pixels; None when it says no size."""
    root: Matrix = field(default_factory=Matrix)
    """From the drawing's own numbers to the page."""


@dataclass(frozen=True, slots=True)
class _Setting:
    """What holds for the elements inside a group."""

    matrix: Matrix
    look: Look
    viewport: tuple[Fraction, Fraction] | None
    words: tuple[str, ...] = ()
    is_outline: bool = False
    copy: Place | None = None
    """Where the copy stands that the elements are part of."""
    copies: int = 0


def read_shapes(root: Element, text: DrawingText, styles: StyleSheet, report: Report) -> Sheet | None:
    """Return what is seen, in the order in which it is painted; what cannot be part of a block is reported.

    None when there is too much in the drawing.
    """
    walker = _Walker(root, text, styles, report)
    try:
        walker.page_and_all()
    except _StopWalkingError:
        return None
    return Sheet(tuple(walker.shapes), walker.page, walker.root_matrix)


class _StopWalkingError(Exception):
    """There is too much in the drawing; the reason is in the report."""


class _Walker:
    def __init__(self, root: Element, text: DrawingText, styles: StyleSheet, report: Report) -> None:
        self.root = root
        self.text = text
        self.styles = styles
        self.report = report
        self.by_id: dict[str, Element] = {}
        for element in root.everything():
            id = element.get("id")
            if id:
                self.by_id.setdefault(id, element)
        self.shapes: list[DrawnShape] = []
        self.page: tuple[Fraction, Fraction, Fraction, Fraction] | None = None
        self.root_matrix = Matrix()
        self.visited = 0
        self.told: dict[Code, int] = {}

    def page_and_all(self) -> None:
        for element in self.root.everything():
            if element.tag == "script" or any(name.startswith("on") for name in element.attributes):
                message = "the drawing holds a script; it is left out"
                self.tell(codes.SCRIPT, element.place, message, "save the drawing as plain SVG")
        width, height = self.length(self.root, "width"), self.length(self.root, "height")
        box = self.view_box(self.root)
        if box is not None and width is None and height is None:
            width, height = box[2], box[3]
        elif box is not None:
            # With one side missing, SVG keeps the proportions of the viewBox.
            width = width or (height or box[3]) * box[2] / box[3]
            height = height or width * box[3] / box[2]
        matrix = Matrix()
        if width and height:
            self.page = (Fraction(0), Fraction(0), width, height)
            matrix = self.fitted(self.root, box, width, height)
        self.root_matrix = matrix
        viewport = (box[2], box[3]) if box else (width, height) if width and height else None
        setting = _Setting(matrix, self.styles.look(self.root, Look()), viewport)
        self.children(self.root, setting)

    def tell(self, code: Code, place: Place, message: str, hint: str) -> None:
        """Report something that may come up often, but not too often."""
        self.told[code] = self.told.get(code, 0) + 1
        if self.told[code] <= MOST_TOLD:
            self.report.add(code, place, message, hint)

    # --- the tree ----------------------------------------------------------------------------------------------

    def children(self, element: Element, setting: _Setting) -> None:
        for child in element.children:
            self.element(child, setting)

    def element(self, element: Element, above: _Setting) -> None:
        self.visited += 1
        if self.visited > MOST_VISITED or len(self.shapes) > MOST_SHAPES:
            message = f"the drawing, with all its copies, has more than {MOST_SHAPES:,} shapes"
            self.report.add(codes.TOO_LARGE, above.copy or element.place, message, "draw a block, not a whole quilt")
            raise _StopWalkingError
        tag = element.tag
        if " " in tag or tag in _SILENT or tag in _MOVING or tag == "script":
            return
        look = self.styles.look(element, above.look)
        if not look.is_shown:
            return
        words, is_marked = _names(element)
        setting = replace(
            above, look=look, words=(*words, *above.words), is_outline=above.is_outline or is_marked,
            matrix=above.matrix.after(self.transform(element)),
        )  # fmt: skip
        if tag in _GROUPS:
            self.children(element, setting)
        elif tag == "svg":
            self.inner_page(element, setting)
        elif tag == "use":
            self.copy(element, setting)
        elif look.is_visible:
            self.shape(element, setting)

    def inner_page(self, element: Element, setting: _Setting, size_from: Element | None = None) -> None:
        """Go on inside a page within the page, or a symbol with a viewBox of its own."""
        across, down = setting.viewport or (None, None)
        said = size_from or element
        width = self.length(said, "width", across) or self.length(element, "width", across) or across
        height = self.length(said, "height", down) or self.length(element, "height", down) or down
        matrix = setting.matrix
        if size_from is None:
            x, y = self.length(element, "x", across) or Fraction(0), self.length(element, "y", down) or Fraction(0)
            matrix = matrix.after(Matrix(e=x, f=y))
        box = self.view_box(element)
        if box is not None and width and height:
            matrix = matrix.after(self.fitted(element, box, width, height))
        viewport = (box[2], box[3]) if box else setting.viewport
        self.children(element, replace(setting, matrix=matrix, viewport=viewport))

    def copy(self, element: Element, setting: _Setting) -> None:
        reference = element.reference or ""
        place = setting.copy or element.place
        if not reference.startswith("#"):
            message = f"this copy is of something outside the drawing: {shown(reference)}"
            hint = "put what is copied into the drawing itself"
            self.tell(codes.OUTSIDE_REFERENCE, element.place, message, hint)
            return
        target = self.by_id.get(reference[1:])
        if target is None or setting.copies >= MOST_COPIES:
            nothing = f"nothing in the drawing has the id {shown(reference[1:])}"
            message = nothing if target is None else "this copy holds itself, or copies lie too deep in one another"
            hint = "draw the shape itself here, or mend the reference"
            self.tell(codes.NOTHING_TO_USE, place, message, hint)
            return
        across, down = setting.viewport or (None, None)
        x, y = self.length(element, "x", across) or Fraction(0), self.length(element, "y", down) or Fraction(0)
        inside = replace(setting, matrix=setting.matrix.after(Matrix(e=x, f=y)), copy=place, copies=setting.copies + 1)
        if target.tag == "symbol" or target.tag == "svg":
            look = self.styles.look(target, inside.look)
            words, is_marked = _names(target)
            inside = replace(
                inside, look=look, words=(*words, *inside.words), is_outline=inside.is_outline or is_marked
            )
            if look.is_shown:
                self.inner_page(target, inside, size_from=element)
        else:
            self.element(target, inside)

    # --- shapes ------------------------------------------------------------------------------------------------

    def shape(self, element: Element, setting: _Setting) -> None:
        for name in ("clip-path", "mask"):
            if (element.get(name) or "none") != "none":
                message = "a clip or mask covers part of this shape; the whole shape is read"
                self.tell(codes.NOT_A_SHAPE, element.place, message, "cut the shape itself to what shall be seen")
        match element.tag:
            case "rect":
                self.rectangle(element, setting)
            case "polygon" | "polyline":
                self.corners(element, setting)
            case "line":
                ends = tuple(
                    (self.coordinate(element, f"x{n}", 0, setting), self.coordinate(element, f"y{n}", 1, setting))
                    for n in "12"
                )
                self.add(ends, False, replace(setting, look=_unfilled(setting.look)), element)
            case "path":
                self.path(element, setting)
            case "circle" | "ellipse":
                self.round(element, setting)
            case "text":
                self.word(element, setting)
            case _:
                what = "a picture" if element.tag == "image" else f"<{element.tag}>"
                self.tell(
                    codes.NOT_A_SHAPE,
                    element.place,
                    f"{what} is no shape of a block; it is left out",
                    "draw its pieces as closed shapes, or take it out",
                )

    def add(
        self,
        corners: tuple[Spot, ...],
        is_closed: bool,
        setting: _Setting,
        element: Element,
        *,
        is_dot: bool = False,
        text: str = "",
        place: Place | None = None,
    ) -> None:
        fill, stroke = setting.look.fill, setting.look.stroke
        has_stroke = bool(stroke.colour or stroke.word)
        is_filled = bool(fill.colour or fill.word)
        if not (is_filled or has_stroke or text or setting.is_outline) or len(corners) < (1 if is_dot else 2):
            return
        self.shapes.append(
            DrawnShape(
                tuple(setting.matrix.at(corner) for corner in corners), is_closed, fill, has_stroke, setting.words,
                setting.copy or place or element.place, setting.is_outline, is_dot, text, "fill" in setting.look.words,
            )
        )  # fmt: skip

    def rectangle(self, element: Element, setting: _Setting) -> None:
        x, y = self.coordinate(element, "x", 0, setting), self.coordinate(element, "y", 1, setting)
        width, height = self.coordinate(element, "width", 0, setting), self.coordinate(element, "height", 1, setting)
        if width <= 0 or height <= 0:
            return
        rounding = [self.length(element, name, None) for name in ("rx", "ry")]
        if any(radius is not None and radius > 0 for radius in rounding):
            hint = "take rx and ry out: a corner of a piece is where two straight seams meet"
            self.curved(element, "rx", "the rectangle has rounded corners", hint)
        self.add(((x, y), (x + width, y), (x + width, y + height), (x, y + height)), True, setting, element)

    def corners(self, element: Element, setting: _Setting) -> None:
        numbers = read_numbers(element.get("points") or "")
        if numbers is None or len(numbers) % 2:
            self.not_a_number(element, "points", "corners are pairs of numbers: 0,0 40,0 40,60")
            return
        if len(numbers) > 2 * MOST_CORNERS:
            message = f"the shape has {len(numbers) // 2:,} corners; at most {MOST_CORNERS:,} are read"
            self.tell(codes.TOO_LARGE, element.place, message, "a piece has a handful; draw it with fewer")
            return
        spots = tuple(zip(numbers[::2], numbers[1::2], strict=True))
        place = self.text.attribute(element, "points")
        self.add(spots, element.tag == "polygon", setting, element, place=place)

    def path(self, element: Element, setting: _Setting) -> None:
        data = element.get("d") or ""
        reading = read_path(data)
        place = self.text.attribute(element, "d")
        if reading.broken_at is not None:
            shift = reading.broken_at
            at = replace(place, column=place.column + shift, end_column=place.column + shift + 1, end_line=place.line)
            is_one_line = place.line == place.end_line
            message = f"the path cannot be read from {shown(data[shift : shift + 12])} on"
            hint = "a path is letters and numbers: M 0,0 L 40,0 L 40,60 Z"
            self.tell(codes.NOT_A_PATH, at if is_one_line else place, message, hint)
        for bend in reading.bends:
            through = " ".join("L " + _written(spot) for spot in bend.through)
            ends = f"from {_written(bend.start)} to {_written(bend.end)}"
            message = f"{bend.name} runs {ends} in the drawing; seams are straight"
            self.curved(element, "d", message, f"draw it with straight lines in its place, such as {through}")
        for part in reading.parts:
            self.add(part.spots, part.is_closed, setting, element, place=place)

    def round(self, element: Element, setting: _Setting) -> None:
        middle = self.coordinate(element, "cx", 0, setting), self.coordinate(element, "cy", 1, setting)
        self.add((middle,), True, setting, element, is_dot=True)

    def word(self, element: Element, setting: _Setting) -> None:
        text = " ".join("".join(part.text + " " for part in element.everything()).split())
        holder = next((part for part in element.everything() if part.get("x") and part.get("y")), element)
        across = read_numbers((holder.get("x") or "0").replace("px", "")) or [Fraction(0)]
        down = read_numbers((holder.get("y") or "0").replace("px", "")) or [Fraction(0)]
        if text:
            self.add(((across[0], down[0]),), True, setting, element, is_dot=True, text=text)

    # --- numbers -----------------------------------------------------------------------------------------------

    def coordinate(self, element: Element, name: str, axis: int, setting: _Setting) -> Fraction:
        whole = setting.viewport[axis] if setting.viewport else None
        return self.length(element, name, whole) or Fraction(0)

    def length(self, element: Element, name: str, whole: Fraction | None = None) -> Fraction | None:
        """Return a length of an attribute; None when it is not there, says auto, or has no whole to be a part of."""
        value = element.get(name)
        if not value or value == "auto" or (value.endswith("%") and whole is None):
            return None
        found = read_length(value, whole)
        if found is None:
            self.not_a_number(element, name, "write a number, or one with in, cm, mm, pt, pc, px or Q behind it")
        return found

    def view_box(self, element: Element) -> tuple[Fraction, Fraction, Fraction, Fraction] | None:
        value = element.get("viewBox")
        if not value:
            return None
        numbers = read_numbers(value)
        if numbers is None or len(numbers) != 4 or numbers[2] <= 0 or numbers[3] <= 0:
            self.not_a_number(element, "viewBox", "a viewBox is four numbers: left top width height")
            return None
        return numbers[0], numbers[1], numbers[2], numbers[3]

    def fitted(
        self,
        element: Element,
        box: tuple[Fraction, Fraction, Fraction, Fraction] | None,
        width: Fraction,
        height: Fraction,
    ) -> Matrix:
        if box is None:
            return Matrix()
        matrix = fit_view_box(box, width, height, element.get("preserveAspectRatio") or "xMidYMid")
        if matrix is None:
            self.not_a_number(element, "preserveAspectRatio", "write xMidYMid or none")
            return Matrix()
        return matrix

    def transform(self, element: Element) -> Matrix:
        value = element.get("transform")
        if not value:
            return Matrix()
        matrix = read_transform(value)
        if matrix is None:
            place = self.text.attribute(element, "transform")
            message = f"{shown(value)} is no transform"
            hint = "write translate(4,0), scale(2), rotate(90), skewX(30) or matrix(…) with plain numbers"
            self.tell(codes.NOT_A_TRANSFORM, place, message, hint)
            return Matrix()
        return matrix

    def not_a_number(self, element: Element, name: str, hint: str) -> None:
        message = f"{name} of <{element.tag}> cannot be read: {shown(element.get(name) or '')}"
        place = self.text.attribute(element, name)
        self.tell(codes.NOT_A_NUMBER, place, message, hint)

    def curved(self, element: Element, name: str, message: str, hint: str) -> None:
        place = self.text.attribute(element, name)
        self.tell(codes.CURVED, place, message, hint)


def _names(element: Element) -> tuple[tuple[str, ...], bool]:
    """Return the words that may name a fabric, classes first, and whether they mark the outline of the block."""
    id = element.get("id") or ""
    words = (*(element.get("class") or "").split(), *([id] if id else []))
    return words, OUTLINE in words


def _unfilled(look: Look) -> Look:
    return replace(look, words={**look.words, "fill": "none"})


def _written(spot: Spot) -> str:
    """Return a point in the drawing's own numbers, to the hundredth."""
    return ",".join(_decimal(number) for number in spot)


def _decimal(number: Fraction) -> str:
    hundredths = round(number * 100)
    whole, rest = divmod(abs(hundredths), 100)
    text = f"{whole}.{rest:02d}".rstrip("0").rstrip(".")
    return f"-{text}" if hundredths < 0 and text != "0" else text
