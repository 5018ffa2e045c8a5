"""Blocks of a pattern file: a finished size, a grid and the pieces on it."""

from __future__ import annotations

from collections.abc import Mapping as MappingOf
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import TypeAlias

from evenseam.exact import Unit
from evenseam.geometry import Polygon
from evenseam.pattern import Block, BlockPiece, Method, UnitBatch
from evenseam.problems import Label, Place, Report, Severity, SourceText
from evenseam.reading import codes
from evenseam.reading.drawing import Grid
from evenseam.reading.drawn_values import read_corners, read_grid_size
from evenseam.reading.entries import Entries, Reader, given, is_misspelt, slug, spoken
from evenseam.reading.hexagons import HEXAGON, HEXAGON_ROW, hexagon, hexagon_height
from evenseam.reading.leaves import shown
from evenseam.reading.lengths import read_finished_size
from evenseam.reading.named_units import read_unit_rows
from evenseam.reading.part_keys import BLOCK, PIECE
from evenseam.reading.partition import DrawnPiece, check_convex, check_partition, simple_shape
from evenseam.reading.shape import is_long_piece
from evenseam.reading.svg_blocks import read_svg_block
from evenseam.reading.tree import Entry, Listing, Mapping, Node, Scalar

STRETCH = Fraction(1, 20)


@dataclass(frozen=True, slots=True)
class _Drawing:
    """The pieces on the grid, already checked; the same for every size that does not draw the block anew."""

    grid: tuple[Fraction, Fraction]
    outline: Polygon
    pieces: tuple[BlockPiece, ...]
    fabrics: tuple[Scalar, ...]
    """The fabric of each piece as it was written."""
    is_good: bool
    """False when something about the drawing was reported."""
    frame: tuple[Fraction, Fraction, Fraction, Fraction] | None = None
    """Of an SVG drawing: where the block lies in it."""


_Key: TypeAlias = tuple[int | str | tuple[tuple[str, str], ...], ...]


@dataclass(slots=True)
class Drawings:
    """Drawings read so far, so that each is checked once however many sizes use it."""

    texts: MappingOf[str, SourceText] = field(default_factory=dict)
    """Of the SVG drawings beside the pattern file, by file name."""
    known: dict[_Key, _Drawing | None] = field(default_factory=dict)
    kept: list[Node | None] = field(default_factory=list)
    """The nodes themselves, so that an identity in the keys is never given to another node."""


@dataclass(frozen=True, slots=True)
class _Written:
    """What a block says about its pieces."""

    shape: str
    grid: Node | None
    outline: Node | None
    pieces: Node | None
    drawing: Node | None
    colours: Node | None
    units: Node | None
    at: Place

    @property
    def nodes(self) -> tuple[Node | None, ...]:
        """What decides how the pieces lie."""
        return self.grid, self.outline, self.pieces, self.drawing, self.colours, self.units


def read_block(reader: Reader, entry: Entry, drawings: Drawings, fabrics: MappingOf[str, str] | None) -> Block | None:
    """Return a block, or None when something about it cannot be used; everything wrong is reported.

    `fabrics` are the colours of the fabrics by their names; None when they cannot be known.
    """
    if not isinstance(entry.value, Mapping):
        return None
    entries = Entries(reader, entry.value, BLOCK, entry.key.place)
    name = entries.words("name", spoken(entry.key.text))
    method = entries.choice("method", Method.FOUNDATION.value)
    batch = entries.choice("unit method", "")
    shape = entries.choice("shape", "rectangle") or "rectangle"
    size_node = entries.node("finished size")
    written = _Written(
        shape, entries.node("grid"), entries.node("outline"), entries.node("pieces"), entries.node("drawing"),
        entries.node("colours"), entries.node("units"), entries.at,
    )  # fmt: skip
    if not _is_drawn_once(entries, written):
        return None
    unit = reader.unit_at(size_node.place) if size_node else reader.edition
    size = read_finished_size(size_node, unit, reader.report) if size_node else None
    drawing = _drawing(written, drawings, fabrics, reader.report)
    if drawing is None or not _are_defined(reader, drawing.fabrics) or not drawing.is_good:
        return None
    if size is None or size_node is None or method is None or batch is None:
        return None
    (width, width_place), (height, height_place) = size
    id = slug(entry.key.text)
    finished_width = given(f"{id} block width", width, unit, size_node, width_place)
    if shape == HEXAGON:
        if width_place != height_place:
            message = "a hexagon has one finished size, its width from corner to corner; its height follows"
            reader.report.add(codes.NOT_A_PAIR, size_node.place, message, "write one length, such as 8")
            return None
        finished_height = hexagon_height(id, finished_width)
    else:
        _check_proportions(width, height, drawing.grid, size_node.place, reader.report)
        finished_height = given(f"{id} block height", height, unit, size_node, height_place)
    return Block(
        id, name, finished_width, finished_height,
        *drawing.grid, drawing.outline, drawing.pieces, Method(method), entry.key.place,
        UnitBatch(batch) if batch else None, drawing.frame,
    )  # fmt: skip


def _is_drawn_once(entries: Entries, written: _Written) -> bool:
    """Tell whether the block says in exactly one way what its pieces are, and has the grid that goes with it."""
    report = entries.reader.report
    ways = {"pieces": written.pieces, "drawing": written.drawing, "units": written.units}
    found = [(key, node) for key, node in ways.items() if node is not None]
    if len(found) > 1:
        (first, one), (second, other) = found[:2]
        message = f"the block has both {first!r} and {second!r}"
        label = (Label(_first_sign(one.place), f"{first} stand here"),)
        report.add(codes.DRAWN_TWICE, _first_sign(other.place), message, "keep one of them", label)
        return False
    mapping = entries.mapping
    if not found and not any(is_misspelt(key, mapping, BLOCK) for key in ways):
        message = "the block has no 'pieces'"
        hint = "add 'pieces', such as pieces: - lamp: 3,6 9,6 9,14 3,14; or a 'drawing', or 'units'"
        report.add(codes.MISSING_KEY, entries.at, message, hint)
    if written.grid is None and written.units is None and not is_misspelt("grid", mapping, BLOCK):
        message = "the block has no 'grid'"
        report.add(codes.MISSING_KEY, entries.at, message, "add 'grid', such as grid: 12 x 18")
    return bool(found)


def _are_defined(reader: Reader, fabrics: tuple[Scalar, ...]) -> bool:
    """Tell whether every fabric of a drawing is defined; report each place where one is not."""
    # A colour that is no fabric's was told where the drawing was read.
    named = [word for word in fabrics if word.text.strip()]
    first = {word.text.strip(): word for word in reversed(named)}
    found = [reader.fabric(text, word.place) for text, word in first.items()]
    if None not in found:
        return len(named) == len(fabrics)
    for word in named:
        reader.fabric(word.text.strip(), word.place)
    return False


def _check_proportions(
    width: Fraction, height: Fraction, grid: tuple[Fraction, Fraction], place: Place, report: Report
) -> None:
    """Warn when a block is stretched by more than a ruler's marks can be blamed for."""
    across, down = width / grid[0], height / grid[1]
    if abs(across - down) > max(across, down) * STRETCH:
        message = "at this finished size the squares of the grid are not square"
        hint = "if the block should not be stretched, give the finished size and the grid the same proportions"
        report.add(codes.BLOCK_PROPORTIONS_DIFFER, place, message, hint)


def _drawing(
    written: _Written, drawings: Drawings, fabrics: MappingOf[str, str] | None, report: Report
) -> _Drawing | None:
    colours = tuple(sorted((fabrics or {}).items())) if written.drawing is not None else ()
    key: _Key = (*(id(node) for node in written.nodes), written.shape, colours)
    if key not in drawings.known:
        drawings.kept.extend(written.nodes)
        drawings.known[key] = _read_drawing(written, drawings, fabrics, report)
    return drawings.known[key]


def _read_drawing(
    written: _Written, drawings: Drawings, fabrics: MappingOf[str, str] | None, report: Report
) -> _Drawing | None:
    before = _errors(report)
    grid = read_grid_size(written.grid, report) if written.grid else None
    pieces: list[_ReadPiece]
    frame = None
    if written.units is not None:
        made = read_unit_rows(written.units, report)
        if made is None or (written.grid is not None and grid is None):
            return None
        if grid is not None and grid != made.grid and written.grid is not None:
            message = f"the units make a grid of {made.grid[0]} x {made.grid[1]}"
            report.add(codes.UNITS_DO_NOT_FIT, written.grid.place, message, "take the grid out: units bring their own")
            return None
        grid, are_all, at = made.grid, True, _first_sign(written.units.place)
        pieces = [(drawn, polygon, word) for drawn, word in made.pieces if (polygon := _of_unit(drawn, report))]
        outline = _read_outline(written, grid, report)
    elif written.drawing is not None:
        if grid is None or fabrics is None or not isinstance(written.drawing, Scalar):
            return None
        said = _read_outline(written, grid, report)
        is_said = written.outline is not None or written.shape == HEXAGON
        on_grid = Grid(*grid, HEXAGON_ROW if written.shape == HEXAGON else Fraction(1))
        found = read_svg_block(
            written.drawing, written.colours, on_grid, said if is_said else None, drawings.texts, fabrics, report
        )
        if found is None:
            return None
        pieces, are_all, at, frame = found.pieces, found.are_all, found.place, found.frame
        outline = _checked_outline(found.outline, grid, at, report) if found.outline and not is_said else said
    else:
        pieces, are_all = _read_pieces(written.pieces, report)
        if grid is None or not isinstance(written.pieces, Listing):
            return None
        outline, at = _read_outline(written, grid, report), _first_sign(written.pieces.place)
    if outline is None:
        return None
    shapes = [(drawn, polygon) for drawn, polygon, _ in pieces]
    check_partition(outline, shapes, are_all, at, report, is_drawing=written.drawing is not None)
    made_pieces = tuple(BlockPiece(drawn.id, slug(word.text), polygon, drawn.place) for drawn, polygon, word in pieces)
    return _Drawing(grid, outline, made_pieces, tuple(word for *_, word in pieces), _errors(report) == before, frame)


def _errors(report: Report) -> int:
    """Return how many problems stop publishing; a warning about a drawing leaves it as good as it is."""
    return sum(problem.severity is Severity.ERROR for problem in report.problems)


_ReadPiece: TypeAlias = tuple[DrawnPiece, Polygon, Scalar]


def _of_unit(drawn: DrawnPiece, report: Report) -> Polygon | None:
    return simple_shape(drawn.points, f"piece {drawn.id}", drawn.place, report)


def _first_sign(place: Place) -> Place:
    return replace(place, end_line=place.line, end_column=place.column + 1)


def _read_outline(written: _Written, grid: tuple[Fraction, Fraction], report: Report) -> Polygon | None:
    node = written.outline
    if node is None and written.shape == HEXAGON:
        return hexagon(*grid)
    if node is None:
        return Polygon.rectangle(Fraction(0), Fraction(0), *grid)
    points = read_corners(node, report)
    polygon = simple_shape(points, "the outline", node.place, report) if points else None
    return _checked_outline(polygon, grid, node.place, report) if polygon else None


def _checked_outline(polygon: Polygon, grid: tuple[Fraction, Fraction], place: Place, report: Report) -> Polygon | None:
    """Return an outline that bends nowhere inward and reaches all four sides of the grid."""
    whole = Polygon.rectangle(Fraction(0), Fraction(0), *grid)
    if not polygon.is_convex:
        report.add(
            codes.OUTLINE_NOT_CONVEX,
            place,
            "the outline bends inward",
            "make the block larger, or two blocks of it",
        )
        return None
    if polygon.bounds != whole.bounds:
        message = f"the outline does not reach all four sides of the grid, {grid[0]} x {grid[1]}"
        report.add(
            codes.OUTLINE_OFF_GRID,
            place,
            message,
            "the finished size is that of the grid: let the outline touch each side, and cross none",
        )
        return None
    return polygon


def _read_pieces(node: Node | None, report: Report) -> tuple[list[tuple[DrawnPiece, Polygon, Scalar]], bool]:
    """Return the pieces that can be drawn, and whether these are all, each of them good."""
    if not isinstance(node, Listing):
        return [], False
    found: list[tuple[DrawnPiece, Polygon, Scalar]] = []
    are_all = True
    seen: dict[str, Place] = {}
    for number, item in enumerate(node.items, start=1):
        read = _read_piece(item, number, report)
        if read is None:
            are_all = False
            continue
        drawn, fabric = read
        if drawn.id in seen:
            message = f"two pieces are called {shown(drawn.id)}"
            report.add(
                codes.DUPLICATE_NAME,
                drawn.place,
                message,
                "give each its own name",
                (Label(seen[drawn.id], "the first"),),
            )
            are_all = False
        seen.setdefault(drawn.id, drawn.place)
        polygon = simple_shape(drawn.points, f"piece {drawn.id}", drawn.place, report)
        if polygon is None:
            are_all = False
            continue
        # A piece that bends inward still covers its part of the block: overlaps and gaps are looked for with it.
        check_convex(polygon, f"piece {drawn.id}", drawn.place, report)
        found.append((drawn, polygon, fabric))
    return found, are_all


def _read_piece(item: Node, number: int, report: Report) -> tuple[DrawnPiece, Scalar] | None:
    if not isinstance(item, Mapping):
        return None
    if not is_long_piece(item, PIECE):
        entry = item.entries[0]
        points = read_corners(entry.value, report)
        return None if points is None else (DrawnPiece(f"p{number}", points, entry.value.place), entry.key)
    at = item.entries[0].key.place if item.entries else item.place
    entries = Entries(Reader(report, Unit.INCH, Unit.INCH), item, PIECE, at)
    fabric, corners = entries.node("fabric"), entries.node("corners")
    name = slug(entries.words("name", f"p{number}")) or f"p{number}"
    points = read_corners(corners, report) if corners is not None else None
    if points is None or corners is None or not isinstance(fabric, Scalar):
        return None
    return DrawnPiece(name, points, corners.place), fabric
