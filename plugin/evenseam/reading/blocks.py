"""Blocks of a pattern file: a finished size, a grid and the pieces on it."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.geometry import Polygon
from evenseam.pattern import Block, BlockPiece, Method
from evenseam.problems import Label, Place, Report
from evenseam.reading import codes
from evenseam.reading.drawn_values import read_corners, read_grid_size
from evenseam.reading.entries import Entries, Reader, given, slug, spoken
from evenseam.reading.leaves import shown
from evenseam.reading.lengths import read_finished_size
from evenseam.reading.part_keys import BLOCK, PIECE
from evenseam.reading.partition import DrawnPiece, check_convex, check_partition, simple_shape
from evenseam.reading.shape import is_long_piece
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


@dataclass(slots=True)
class Drawings:
    """Drawings read so far, so that each is checked once however many sizes use it."""

    known: dict[tuple[int, ...], _Drawing | None] = field(default_factory=dict)
    kept: list[Node | None] = field(default_factory=list)
    """The nodes themselves, so that an identity in the keys is never given to another node."""


def read_block(reader: Reader, entry: Entry, drawings: Drawings) -> Block | None:
    """Return a block, or None when something about it cannot be used; everything wrong is reported."""
    if not isinstance(entry.value, Mapping):
        return None
    entries = Entries(reader, entry.value, BLOCK, entry.key.place)
    name = entries.words("name", spoken(entry.key.text))
    method = entries.choice("method", Method.FOUNDATION.value)
    size_node = entries.node("finished size")
    grid_node, outline_node, pieces_node = entries.node("grid"), entries.node("outline"), entries.node("pieces")
    unit = reader.unit_at(size_node.place) if size_node else reader.edition
    size = read_finished_size(size_node, unit, reader.report) if size_node else None
    drawing = _drawing(grid_node, outline_node, pieces_node, drawings, reader.report)
    if drawing is None or not _are_defined(reader, drawing.fabrics) or not drawing.is_good:
        return None
    if size is None or size_node is None or method is None:
        return None
    (width, width_place), (height, height_place) = size
    _check_proportions(width, height, drawing.grid, size_node.place, reader.report)
    id = slug(entry.key.text)
    return Block(
        id, name,
        given(f"{id} block width", width, unit, size_node, width_place),
        given(f"{id} block height", height, unit, size_node, height_place),
        *drawing.grid, drawing.outline, drawing.pieces, Method(method), entry.key.place,
    )  # fmt: skip


def _are_defined(reader: Reader, fabrics: tuple[Scalar, ...]) -> bool:
    """Tell whether every fabric of a drawing is defined; report each place where one is not."""
    first = {word.text.strip(): word for word in reversed(fabrics)}
    found = [reader.fabric(text, word.place) for text, word in first.items()]
    if None not in found:
        return True
    for word in fabrics:
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
    grid_node: Node | None, outline_node: Node | None, pieces_node: Node | None, drawings: Drawings, report: Report
) -> _Drawing | None:
    nodes = (grid_node, outline_node, pieces_node)
    key = tuple(id(node) for node in nodes)
    if key not in drawings.known:
        drawings.kept.extend(nodes)
        drawings.known[key] = _read_drawing(grid_node, outline_node, pieces_node, report)
    return drawings.known[key]


def _read_drawing(
    grid_node: Node | None, outline_node: Node | None, pieces_node: Node | None, report: Report
) -> _Drawing | None:
    before = len(report.problems)
    grid = read_grid_size(grid_node, report) if grid_node else None
    pieces, are_all = _read_pieces(pieces_node, report)
    if grid is None or not isinstance(pieces_node, Listing):
        return None
    outline = _read_outline(outline_node, grid, report)
    if outline is None:
        return None
    first_line = replace(pieces_node.place, end_line=pieces_node.place.line, end_column=pieces_node.place.column + 1)
    check_partition(outline, [(drawn, polygon) for drawn, polygon, _ in pieces], are_all, first_line, report)
    made = tuple(BlockPiece(drawn.id, slug(word.text), polygon, drawn.place) for drawn, polygon, word in pieces)
    return _Drawing(grid, outline, made, tuple(word for *_, word in pieces), len(report.problems) == before)


def _read_outline(node: Node | None, grid: tuple[Fraction, Fraction], report: Report) -> Polygon | None:
    whole = Polygon.rectangle(Fraction(0), Fraction(0), *grid)
    if node is None:
        return whole
    points = read_corners(node, report)
    polygon = simple_shape(points, "the outline", node.place, report) if points else None
    if polygon is None:
        return None
    if not polygon.is_convex:
        report.add(
            codes.OUTLINE_NOT_CONVEX,
            node.place,
            "the outline bends inward",
            "make the block larger, or two blocks of it",
        )
        return None
    if polygon.bounds != whole.bounds:
        message = f"the outline does not reach all four sides of the grid, {grid[0]} x {grid[1]}"
        report.add(
            codes.OUTLINE_OFF_GRID,
            node.place,
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
