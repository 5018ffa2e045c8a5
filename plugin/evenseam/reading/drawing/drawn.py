"""From the text of a drawing to the pieces of a block on its grid."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from evenseam.geometry import Point
from evenseam.problems import Label, Place, Report, SourceText
from evenseam.reading.drawing import codes
from evenseam.reading.drawing.elements import DrawingText, parse_elements
from evenseam.reading.drawing.fabrics import Palette, report_unknown
from evenseam.reading.drawing.net import Area, Stretch, areas_of, holds
from evenseam.reading.drawing.placing import Frame, Grid, Placed, place_on_grid, raw_position
from evenseam.reading.drawing.shapes import DrawnShape, Sheet, read_shapes
from evenseam.reading.drawing.style import read_style_sheets
from evenseam.reading.drawing.transforms import Matrix
from evenseam.reading.partition import Spotted
from evenseam.reading.plane import Corner, Shape, doubled_area, without_straight_corners

MOST_PIECES = 300
MOST_CORNERS = 60
MOST_LINES = 500
MOST_TOLD = 12


@dataclass(frozen=True, slots=True)
class PieceDrawn:
    """A piece as it was drawn, on the grid."""

    points: tuple[Point, ...]
    fabric: str
    """The fabric's word; the colour itself where fabrics are not known."""
    place: Place


@dataclass(frozen=True, slots=True)
class BlockDrawn:
    """All that a drawing says about a block."""

    pieces: tuple[PieceDrawn, ...]
    outline: tuple[Point, ...] | None
    """Marked in the drawing; None when it is the whole grid."""
    are_all: bool
    """False when a shape of the drawing could not be made a piece."""
    place: Place
    spotted: tuple[Spotted, ...] = ()
    """Corners off the grid, loose ends: for a picture of them."""
    unplaced: tuple[tuple[Point, ...], ...] = ()
    """Shapes and lines that could not be put on the grid, where they were drawn."""
    frame: Frame | None = None
    """Where the block lies in the drawing, in the drawing's own numbers: left, top, right, bottom."""


def read_page(source: SourceText, report: Report) -> tuple[Sheet, Place] | None:
    """Return what is seen on the page of a drawing, and the place of its beginning."""
    text = DrawingText.of(source)
    root = parse_elements(text, report)
    if root is None:
        return None
    styles = read_style_sheets(root, text, report)
    sheet = read_shapes(root, text, styles, report)
    return None if sheet is None else (sheet, root.place)


def read_block_drawing(
    source: SourceText, grid: Grid, palette: Palette, outline: Sequence[Point] | None, report: Report
) -> BlockDrawn | None:
    """Read a drawing onto a grid.

    `outline` is the outline of the block where the pattern file says one. Everything wrong is reported with its place
    in the drawing; None when there is nothing to go on with.
    """
    read = read_page(source, report)
    if read is None:
        return None
    sheet, place = read
    shapes = list(sheet.shapes)
    if not shapes:
        message = "nothing is drawn that could be a piece"
        hint = "draw each piece as a closed shape filled with the colour of its fabric, or the seams as lines"
        report.add(codes.NOTHING_DRAWN, place, message, hint)
        return None
    if not _is_of_bearable_size(shapes, report):
        return None
    marked = _marked_outline(shapes, report)
    placed = place_on_grid(sheet, shapes, grid, report)
    if placed is None:
        return None
    spotted = _report_off_grid(placed, report)
    drawn_outline = placed.of(marked) if marked else None
    edge = _points(drawn_outline) if drawn_outline else None
    rim = _rim(outline or edge, grid)
    rest = [shape for shape in shapes if not shape.is_outline]
    lines = [shape for shape in rest if not shape.is_area and not shape.is_dot]
    has_areas = any(shape.is_area for shape in rest)
    if has_areas and all(_is_rim(shape, placed, rim) for shape in lines):
        # A frame drawn round filled pieces says nothing new.
        lines = []
    if lines and placed.off:
        # Without some of its lines a net has other areas; what is said of them would only mislead.
        pieces: list[PieceDrawn] = []
        are_all = False
    elif lines:
        marks = [shape for shape in rest if shape.is_area or shape.is_dot]
        pieces, are_all = _pieces_of_net(
            lines, _Marks(marks, placed, grid, palette, report), placed, rim, spotted, report
        )
    else:
        pieces, are_all = _pieces_of_shapes(rest, placed, rim, palette, report)
    are_all = are_all and not placed.off
    if len(pieces) > MOST_PIECES:
        _report_too_many(len(pieces), place, report)
        return None
    unplaced = [shape for shape in shapes if not shape.is_dot and placed.of(shape) is None]
    if lines and unplaced:
        unplaced = [shape for shape in shapes if not shape.is_dot]
    raw = tuple(_points([raw_position(spot, placed.frame, grid) for spot in shape.corners]) for shape in unplaced)
    return BlockDrawn(
        tuple(pieces), edge, are_all, place, tuple(spotted), raw, _in_own_numbers(placed.frame, sheet.root)
    )


def _in_own_numbers(frame: Frame, root: Matrix) -> Frame:
    """Return a part of the page as it is written at the top of the drawing; a viewBox only scales and shifts."""
    left, top, right, bottom = frame
    return (left - root.e) / root.a, (top - root.f) / root.d, (right - root.e) / root.a, (bottom - root.f) / root.d


def _report_too_many(count: int, place: Place, report: Report) -> None:
    message = f"the drawing has {count} pieces; at most {MOST_PIECES}"
    report.add(codes.TOO_MANY_PIECES, place, message, "draw it as several blocks and set them side by side")


def _is_of_bearable_size(shapes: Sequence[DrawnShape], report: Report) -> bool:
    for shape in shapes:
        if len(shape.corners) > MOST_CORNERS and shape.is_area:
            message = f"the shape has {len(shape.corners)} corners; at most {MOST_CORNERS}"
            report.add(codes.TOO_LARGE, shape.place, message, "split it into several pieces")
            return False
    areas = [shape for shape in shapes if shape.is_area]
    if len(areas) > MOST_PIECES:
        _report_too_many(len(areas), areas[0].place, report)
        return False
    stretches = sum(len(shape.corners) for shape in shapes if not shape.is_area)
    if stretches > MOST_LINES:
        message = f"the drawing has {stretches} stretches of line; at most {MOST_LINES}"
        report.add(codes.TOO_LARGE, shapes[0].place, message, "draw it as several blocks and set them side by side")
        return False
    return True


def _marked_outline(shapes: Sequence[DrawnShape], report: Report) -> DrawnShape | None:
    marked = [shape for shape in shapes if shape.is_outline and not shape.is_dot and len(shape.corners) > 2]
    if len(marked) > 1:
        message = f"{len(marked)} shapes are marked as the outline of the block"
        label = (Label(marked[0].place, "the first"),)
        report.add(codes.SEVERAL_OUTLINES, marked[1].place, message, "mark one of them, around all pieces", label)
    return marked[0] if marked else None


def _report_off_grid(placed: Placed, report: Report) -> list[Spotted]:
    spotted: list[Spotted] = []
    for off in placed.off[:MOST_TOLD]:
        message = (
            f"a corner lies at {_written(off.raw)} on the grid, {_hundredths(off.distance)} of a square "
            f"from the nearest point, {_written(off.nearest)}"
        )
        hint = "move it there, or onto a line of its neighbours; or give the block a finer grid"
        report.add(codes.OFF_GRID, off.shape.place, message, hint)
        spotted.append(Spotted(codes.OFF_GRID, message, (), _points([off.raw])))
    if len(placed.off) > MOST_TOLD:
        message = f"{len(placed.off) - MOST_TOLD} more corners lie off the grid"
        hint = "is the grid of the block the one it was drawn on?"
        report.add(codes.OFF_GRID, placed.off[MOST_TOLD].shape.place, message, hint)
    return spotted


def _rim(outline: Sequence[Point] | None, grid: Grid) -> Shape:
    if outline:
        return tuple((Fraction(str(p.x)), Fraction(str(p.y))) for p in outline)
    zero = Fraction(0)
    return ((zero, zero), (grid.across, zero), (grid.across, grid.down), (zero, grid.down))


def _is_rim(shape: DrawnShape, placed: Placed, rim: Shape) -> bool:
    """Tell whether lines only run round the block, as a frame does."""
    corners = placed.of(shape)
    if corners is None:
        return False
    stretches = zip(corners, (*corners[1:], corners[0]) if shape.is_closed else corners[1:], strict=False)
    edges = list(zip(rim, (*rim[1:], rim[0]), strict=True))
    return all(any(_is_along(one, a, b) and _is_along(other, a, b) for a, b in edges) for one, other in stretches)


def _is_along(spot: Corner, a: Corner, b: Corner) -> bool:
    return (b[0] - a[0]) * (spot[1] - a[1]) == (b[1] - a[1]) * (spot[0] - a[0])


# --- shapes ----------------------------------------------------------------------------------------------------


def _pieces_of_shapes(
    shapes: Sequence[DrawnShape], placed: Placed, rim: Shape, palette: Palette, report: Report
) -> tuple[list[PieceDrawn], bool]:
    pieces: list[PieceDrawn] = []
    unknown: list[DrawnShape] = []
    are_all = True
    areas = [shape for shape in shapes if shape.is_area]
    for shape in shapes:
        if shape.is_dot:
            what = f"the word {shape.text!r}" if shape.text else "a circle"
            code = codes.NOT_A_SHAPE if shape.text else codes.CURVED
            hint = "words and dots say the fabric in a net of lines; take it out, or draw it as a straight-edged shape"
            report.add(code, shape.place, f"{what} is no piece: seams are straight", hint)
    for shape in areas:
        corners = placed.of(shape)
        if corners is None:
            are_all = False
            continue
        ring = _without_repeats(corners)
        if len(ring) < 3 or doubled_area(ring) == 0:
            message = "the shape is so thin that nothing of it is left on the grid"
            hint = "take it out, or let it reach from one point of the grid to another"
            report.add(codes.SLIVER, shape.place, message, hint)
            are_all = False
            continue
        if len(areas) > 1 and set(ring) == set(rim):
            message = "this shape lies under all the others"
            hint = "each piece is a shape of its own: take this one out and draw the parts of it that show"
            report.add(codes.UNDER_OTHERS, shape.place, message, hint)
            are_all = False
            continue
        fabric = palette.fabric(shape)
        if fabric is None:
            unknown.append(shape)
        pieces.append(PieceDrawn(_points(without_straight_corners(ring)), fabric or "", shape.place))
    report_unknown(unknown, palette, report)
    if not areas:
        report.add(
            codes.NOTHING_DRAWN, shapes[0].place if shapes else None, "nothing is drawn that could be a piece",
            "draw each piece as a closed shape filled with the colour of its fabric, or the seams as lines",
        )  # fmt: skip
    return pieces, are_all and bool(areas)


# --- nets of lines ---------------------------------------------------------------------------------------------


def _pieces_of_net(
    lines: Sequence[DrawnShape], marks: _Marks, placed: Placed, rim: Shape, spotted: list[Spotted], report: Report
) -> tuple[list[PieceDrawn], bool]:
    stretches = [Stretch(a, b, -1) for a, b in zip(rim, (*rim[1:], rim[0]), strict=True)]
    are_all = True
    for index, line in enumerate(lines):
        corners = placed.of(line)
        if corners is None:
            are_all = False
            continue
        ends = (*corners[1:], corners[0]) if line.is_closed else corners[1:]
        stretches += [Stretch(a, b, index) for a, b in zip(corners, ends, strict=False) if a != b]
    net = areas_of(stretches)
    for loose in net.loose[:MOST_TOLD]:
        message = f"this line ends at {_written(loose.at)} on the grid without meeting another"
        hint = "let it end on another line or on the edge of the block: a seam runs from edge to edge of its piece"
        report.add(codes.LOOSE_END, lines[loose.source].place, message, hint)
        spotted.append(Spotted(codes.LOOSE_END, message, (), _points([loose.at])))
    for island in net.islands[:MOST_TOLD]:
        message = f"the lines around {_written(island.shape[0])} touch no other line"
        hint = "draw seams from them to the edge of the block: a piece cannot have a hole"
        report.add(codes.HOLE, lines[max(island.sources)].place, message, hint)
    pieces: list[PieceDrawn] = []
    for area in net.areas:
        found = marks.of(area, lines)
        pieces.append(PieceDrawn(_points(area.shape), found[0], found[1]))
    report_unknown(marks.unknown, marks.palette, report)
    return pieces, are_all and not net.loose and not net.islands


class _Marks:
    """Finds what says the fabric of an area: something small lying in it, else what it is filled with."""

    def __init__(
        self, marks: Sequence[DrawnShape], placed: Placed, grid: Grid, palette: Palette, report: Report
    ) -> None:
        self.palette = palette
        self.report = report
        self.unknown: list[DrawnShape] = []
        self.marks = [(mark, tuple(raw_position(spot, placed.frame, grid) for spot in mark.corners)) for mark in marks]
        self.told = 0

    def of(self, area: Area, lines: Sequence[DrawnShape]) -> tuple[str, Place]:
        """Return the fabric of an area and the place that says it."""
        middle = _middle(area.shape)
        small: list[DrawnShape] = []
        under: list[DrawnShape] = []
        for mark, spots in self.marks:
            if holds(area.shape, _middle(spots)) and (mark.is_dot or _is_smaller(spots, area.shape)):
                small.append(mark)
            elif not mark.is_dot and holds(spots, middle):
                under.append(mark)
        found = small or under[-1:]
        line = lines[max(area.sources)] if max(area.sources) >= 0 else lines[0]
        at = _written((Fraction(round(middle[0] * 4), 4), Fraction(round(middle[1] * 4), 4)))
        if not found:
            self.told += 1
            if self.told <= MOST_TOLD:
                message = f"nothing says the fabric of the area around {at} on the grid"
                hint = "put a small shape of the fabric's colour into it, or a text with the fabric's word"
                self.report.add(codes.WITHOUT_FABRIC, line.place, message, hint)
            return "", line.place
        fabrics = {mark: self.palette.fabric(mark) for mark in found}
        self.unknown += [mark for mark, fabric in fabrics.items() if fabric is None and mark not in self.unknown]
        said = list(dict.fromkeys(fabric for fabric in fabrics.values() if fabric is not None))
        if len(said) > 1:
            message = f"the area around {at} on the grid is said to be {' and '.join(said)}"
            hint = "leave one of the marks, or draw the line between them"
            label = (Label(found[0].place, f"{said[0]} is said here"),)
            self.report.add(codes.TWO_FABRICS, found[-1].place, message, hint, label)
        return (said[0] if said else ""), found[0].place


def _middle(shape: Shape) -> Corner:
    """Return a spot inside a convex shape."""
    count = len(shape)
    return Fraction(sum(x for x, _ in shape)) / count, Fraction(sum(y for _, y in shape)) / count


def _is_smaller(shape: Shape, other: Shape) -> bool:
    return Fraction(doubled_area(shape)) ** 2 < Fraction(doubled_area(other)) ** 2


# --- small things ----------------------------------------------------------------------------------------------


def _without_repeats(corners: Sequence[Corner]) -> Shape:
    kept = [corner for index, corner in enumerate(corners) if corner != corners[index - 1]]
    return tuple(kept)


def _points(corners: Sequence[Corner]) -> tuple[Point, ...]:
    return tuple(Point(Fraction(x), Fraction(y)) for x, y in corners)


def _written(corner: Corner) -> str:
    return ",".join(_number(Fraction(number)) for number in corner)


def _number(number: Fraction) -> str:
    if number.denominator <= 16 and number.denominator not in (2, 4, 8, 16, 5, 10, 1):
        return str(number)
    hundredths = round(number * 1000)
    whole, rest = divmod(abs(hundredths), 1000)
    text = f"{whole}.{rest:03d}".rstrip("0").rstrip(".")
    return f"-{text}" if hundredths < 0 else text


def _hundredths(number: Fraction) -> str:
    return f"{max(1, round(number * 100)) / 100:.2f}"
