"""Whether the pieces of a block fill its outline: no gap, no overlap, nothing outside, nothing bent inward."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from evenseam.exact import Unit, format_number
from evenseam.geometry import Point, Polygon
from evenseam.problems import Code, Label, Place, Report
from evenseam.reading import codes
from evenseam.reading.drawn_values import FINEST_GRID
from evenseam.reading.plane import (
    Coordinate,
    Corner,
    Shape,
    are_apart,
    common,
    convex_parts,
    convex_pieces,
    crossing,
    doubled_area,
    edges,
    inward_corners,
    share_edge,
    shared_length,
    turn,
    without,
    without_straight_corners,
)

MOST_TOLD = 12
"""Overlaps and gaps of one block that are told one by one."""
MOST_BESIDE = 3
"""Shapes round a gap that are named."""


@dataclass(frozen=True, slots=True)
class DrawnPiece:
    """A piece as the author wrote it."""

    id: str
    points: tuple[Point, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Spotted:
    """Where on the grid something is wrong, for a picture of it."""

    code: Code
    message: str
    shapes: tuple[Polygon, ...]
    spots: tuple[Point, ...] = ()
    """Single points, such as a corner off the grid."""


def simple_shape(points: Sequence[Point], what: str, place: Place, report: Report) -> Polygon | None:
    """Return a clockwise polygon without straight corners, or report why the points make none."""
    corners = list(points)
    if len(corners) > 1 and corners[0] == corners[-1]:
        corners.pop()
    if len(corners) < 3:
        report.add(codes.TOO_FEW_CORNERS, place, f"{what} has {len(corners)} corners", "a shape needs at least three")
        return None
    drawn = Polygon(tuple(corners))
    scale = _scale([drawn])
    shape = _shape(drawn, scale)
    for corner, following in edges(shape):
        if corner == following:
            message = f"{what} has the corner {_written(_unscaled(corner, scale))} twice in a row"
            report.add(codes.REPEATED_CORNER, place, message, "write it once")
            return None
    if doubled_area(shape) == 0 and all(turn(shape[0], shape[1], corner) == 0 for corner in shape):
        report.add(codes.NO_AREA, place, f"the corners of {what} lie on one line", "move one of them off the line")
        return None
    meeting = crossing(shape)
    if meeting:
        first, second = (_written(_unscaled(corner, scale)) for corner in meeting)
        message = f"the edges of {what} that start at {first} and {second} meet"
        hint = "list the corners in the order in which a pencil would draw them"
        report.add(codes.CROSSES_ITSELF, place, message, hint)
        return None
    shape = without_straight_corners(shape)
    return _as_polygon(shape if doubled_area(shape) > 0 else shape[::-1], scale)


def check_convex(polygon: Polygon, what: str, place: Place, report: Report) -> bool:
    """Report a piece that bends inward, with straight cuts that split it into pieces that do not."""
    scale = _scale([polygon])
    inward = inward_corners(_shape(polygon, scale))
    if not inward:
        return True
    shape = tuple(_as_corner(point) for point in polygon.corners)
    listed = " and ".join(_written(shape[index]) for index in inward)
    message = f"{what} bends inward at {listed}; straight seams cannot sew it in one piece"
    pieces = convex_pieces(shape)
    if all(_is_writable(piece) for piece in pieces):
        hint = f"cut it into {len(pieces)} pieces: " + " and ".join(_listed(piece) for piece in pieces)
    else:
        hint = f"cut it from {_written(shape[inward[0]])} straight across, so that no piece bends inward"
    report.add(codes.NOT_CONVEX, place, message, hint)
    return False


def check_partition(
    outline: Polygon,
    pieces: Sequence[tuple[DrawnPiece, Polygon]],
    are_all: bool,
    pieces_place: Place,
    report: Report,
    spotted: list[Spotted] | None = None,
    *,
    is_drawing: bool = False,
) -> None:
    """Report pieces that leave the outline, overlap, or leave a part of it uncovered.

    `are_all` is false when some piece could not be read; gaps are then not looked for. Where each mistake lies is
    added to `spotted`. A gap is reported where the pieces are listed; in a drawing, which has no such place, at the
    shape that borders on it longest.
    """
    spotted = [] if spotted is None else spotted
    scale = _scale([outline, *(polygon for _, polygon in pieces)])
    whole = _shape(outline, scale)
    parts = [(drawn, convex_parts(_shape(polygon, scale))) for drawn, polygon in pieces]
    is_within = True
    for (drawn, _), (_, polygon) in zip(parts, pieces, strict=True):
        out = [c for c in _shape(polygon, scale) if any(turn(start, end, c) < 0 for start, end in edges(whole))]
        if out:
            is_within = False
            listed = ", ".join(_written(_unscaled(c, scale)) for c in out)
            message = f"{_named(drawn)} reaches outside the block at {listed}"
            left, top, right, bottom = (_text(side) for side in outline.bounds)
            hint = f"the block reaches from {left},{top} to {right},{bottom}: move the corner, or enlarge the grid"
            report.add(codes.OUTSIDE_OUTLINE, drawn.place, message, hint)
            beyond = [piece for part in convex_parts(_shape(polygon, scale)) for piece in without(part, whole)]
            spotted.append(Spotted(codes.OUTSIDE_OUTLINE, message, _as_polygons(beyond, scale)))
    has_overlap = _report_overlaps(parts, scale, report, spotted)
    covered = sum(doubled_area(part) for _, shapes in parts for part in shapes)
    if are_all and (not is_within or has_overlap or covered != doubled_area(whole)):
        _report_gaps(whole, parts, scale, None if is_drawing else pieces_place, report, spotted, pieces_place)


def _report_overlaps(
    parts: Sequence[tuple[DrawnPiece, list[Shape]]], scale: int, report: Report, spotted: list[Spotted]
) -> bool:
    found: list[tuple[DrawnPiece, DrawnPiece, list[Shape]]] = []
    boxes = [_box(shapes) for _, shapes in parts]
    for second in range(len(parts)):
        for first in range(second):
            if _boxes_apart(boxes[first], boxes[second]):
                continue
            shared = [
                piece
                for one in parts[first][1]
                for other in parts[second][1]
                if not are_apart(one, other) and (piece := common(one, other))
            ]
            if shared:
                found.append((parts[first][0], parts[second][0], shared))
                if len(found) == MOST_TOLD:
                    break
        if len(found) == MOST_TOLD:
            break
    for one, other, shared in found:
        area = _area(shared, scale)
        message = f"{_named(other)} and {_named(one)} overlap by {area} around {_middle(shared, scale)}"
        hint = "let them share the corners along their common edge"
        spotted.append(Spotted(codes.PIECES_OVERLAP, message, _as_polygons(shared, scale)))
        report.add(
            codes.PIECES_OVERLAP, other.place, message, hint, (Label(one.place, f"{_named(one)} is drawn here"),)
        )
    return bool(found)


def _report_gaps(
    whole: Shape,
    parts: Sequence[tuple[DrawnPiece, list[Shape]]],
    scale: int,
    listed_at: Place | None,
    report: Report,
    spotted: list[Spotted],
    begins_at: Place,
) -> None:
    """Report what no piece covers: where the pieces are listed, or else at a shape round the gap."""
    rest = [whole]
    for _, shapes in parts:
        for part in shapes:
            rest = [piece for shape in rest for piece in without(shape, part)]
    for region in _regions(rest)[:MOST_TOLD]:
        message = f"no piece covers {_area(region, scale)} around {_middle(region, scale)}"
        if len(region) == 1 and _is_writable(tuple(_unscaled(c, scale) for c in region[0])):
            corners = tuple(_unscaled(c, scale) for c in without_straight_corners(region[0]))
            hint = f"add a piece with the corners {_listed(corners)}, or move the corners of its neighbours"
        else:
            hint = "move the corners of the pieces around it, or add a piece"
        beside = [] if listed_at else _neighbours(region, parts)
        place = listed_at or (beside[0].place if beside else begins_at)
        labels = tuple(Label(one.place, f"{_named(one)} borders on it too") for one in beside[1:MOST_BESIDE])
        report.add(codes.GAP, place, message, hint, labels)
        spotted.append(Spotted(codes.GAP, message, _as_polygons(region, scale)))


def _neighbours(region: list[Shape], parts: Sequence[tuple[DrawnPiece, list[Shape]]]) -> list[DrawnPiece]:
    """Return the pieces that border on a gap, the one with the longest common edge first."""
    around = _box(region)
    found: list[tuple[Coordinate, DrawnPiece]] = []
    for drawn, shapes in parts:
        if not _boxes_touch(around, _box(shapes)):
            continue
        long = sum(shared_length(one, other) for one in region for other in shapes)
        if long > 0:
            found.append((long, drawn))
    return [drawn for _, drawn in sorted(found, key=lambda one: -one[0])]


def _regions(shapes: list[Shape]) -> list[list[Shape]]:
    """Put shapes that touch along an edge together."""
    boxes = {id(shape): _box([shape]) for shape in shapes}
    regions: list[list[Shape]] = []
    for shape in shapes:
        near = boxes[id(shape)]
        touching = [
            region
            for region in regions
            if any(_boxes_touch(near, boxes[id(other)]) and share_edge(shape, other) for other in region)
        ]
        merged = [shape, *(other for region in touching for other in region)]
        regions = [*(region for region in regions if region not in touching), merged]
    return regions


def _is_writable(shape: Shape) -> bool:
    """Tell whether a pattern file can say these corners."""
    return all(Fraction(number).denominator <= FINEST_GRID for corner in shape for number in corner)


def _named(drawn: DrawnPiece) -> str:
    return f"piece {drawn.id}"


def _as_corner(point: Point) -> tuple[Fraction, Fraction]:
    assert isinstance(point.x, Fraction) and isinstance(point.y, Fraction), "the corners of a grid are rational"
    return point.x, point.y


def _scale(polygons: Sequence[Polygon]) -> int:
    return lcm(
        *(number.denominator for polygon in polygons for point in polygon.corners for number in _as_corner(point))
    )


def _shape(polygon: Polygon, scale: int) -> Shape:
    """Return the corners times `scale`, which makes them whole numbers."""
    corners = (_as_corner(point) for point in polygon.corners)
    return tuple((int(x * scale), int(y * scale)) for x, y in corners)


def _as_polygon(shape: Shape, scale: int) -> Polygon:
    return Polygon(tuple(Point(Fraction(x) / scale, Fraction(y) / scale) for x, y in shape))


def _as_polygons(shapes: Sequence[Shape], scale: int) -> tuple[Polygon, ...]:
    return tuple(_as_polygon(shape, scale) for shape in shapes)


def _unscaled(corner: Corner, scale: int) -> Corner:
    return Fraction(corner[0]) / scale, Fraction(corner[1]) / scale


def _area(shapes: Sequence[Shape], scale: int) -> str:
    area = Fraction(sum(doubled_area(shape) for shape in shapes)) / (2 * scale * scale)
    return f"{format_number(area, Unit.INCH)} grid square{'' if area == 1 else 's'}"


def _middle(shapes: Sequence[Shape], scale: int) -> str:
    """Return a point well inside the first and largest shape, to the nearest quarter."""
    largest = max(shapes, key=doubled_area)
    across, down = (Fraction(sum(c[axis] for c in largest)) / (len(largest) * scale) for axis in (0, 1))
    return _written((Fraction(round(across * 4), 4), Fraction(round(down * 4), 4)))


def _box(shapes: Sequence[Shape]) -> tuple[Coordinate, ...]:
    across = [c[0] for shape in shapes for c in shape]
    down = [c[1] for shape in shapes for c in shape]
    return min(across), min(down), max(across), max(down)


def _boxes_apart(one: tuple[Coordinate, ...], other: tuple[Coordinate, ...]) -> bool:
    return one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


def _boxes_touch(one: tuple[Coordinate, ...], other: tuple[Coordinate, ...]) -> bool:
    return one[2] >= other[0] and other[2] >= one[0] and one[3] >= other[1] and other[3] >= one[1]


def _written(corner: Corner) -> str:
    return f"{_text(Fraction(corner[0]))},{_text(Fraction(corner[1]))}"


def _listed(shape: Shape) -> str:
    return '"' + " ".join(_written(corner) for corner in shape) + '"'


def _text(number: object) -> str:
    """Return a coordinate as it is written in a pattern file: 3, 3.5 or 7/3."""
    assert isinstance(number, Fraction)
    if 1000 % number.denominator:
        return str(number)
    thousandths = abs(int(number * 1000))
    digits = f"{thousandths // 1000}.{thousandths % 1000:03d}".rstrip("0").rstrip(".")
    return f"-{digits}" if number < 0 else digits
