"""One drawing by itself, without a pattern: its pieces, and where on the grid something is wrong."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Assumed, Block, BlockPiece, Fabric, Method, Quantity
from evenseam.problems import Outcome, Place, Report, SourceText
from evenseam.reading.drawing.drawn import BlockDrawn, read_block_drawing, read_page
from evenseam.reading.drawing.fabrics import Palette
from evenseam.reading.drawing.grid_guess import guess_grid
from evenseam.reading.drawing.placing import Grid
from evenseam.reading.drawing.style import read_paint
from evenseam.reading.drawn_values import read_grid_size
from evenseam.reading.entries import slug
from evenseam.reading.hexagons import HEXAGON_ROW, hexagon, hexagon_height
from evenseam.reading.partition import DrawnPiece, Spotted, check_convex, check_partition, simple_shape
from evenseam.reading.tree import Scalar

_PLAIN = "#c9c4ba"
_SPARE = ("#d9e2df", "#8fa9b3", "#c98f6b", "#5e7f86", "#e2c98c", "#a3677a", "#7d8a63", "#3f5568")
"""For fabrics that are words, not colours."""


@dataclass(frozen=True, slots=True)
class DrawingLook:
    """What can be seen of a drawing, whether it is right or wrong."""

    name: str
    grid: tuple[Fraction, Fraction]
    is_guessed: bool
    """True when the grid was found from the corners."""
    outline: Polygon
    pieces: tuple[BlockPiece, ...]
    fabrics: tuple[Fabric, ...]
    """One for each colour, or each word in the drawing."""
    spotted: tuple[Spotted, ...]
    unplaced: tuple[tuple[Point, ...], ...]
    """Shapes and lines that could not be put on the grid, where they were drawn."""
    frame: tuple[Fraction, Fraction, Fraction, Fraction] | None
    """Where the block lies in the drawing, in the drawing's own numbers: left, top, right, bottom."""
    block: Block
    """With a square of the grid as one inch; only to be sewn when there is no error."""

    def as_svg(self, outline: Polygon, fabric: str) -> str:
        """Return a piece as an element to put at the top of the drawing."""
        colour = next((known.colour for known in self.fabrics if known.id == fabric), _PLAIN)
        left, top, right, bottom = self.frame or (Fraction(0), Fraction(0), *self.grid)
        across, down = (right - left) / self.grid[0], (bottom - top) / self.grid[1]
        spots = (
            f"{_decimal(left + Fraction(str(p.x)) * across)},{_decimal(top + Fraction(str(p.y)) * down)}"
            for p in outline.corners
        )
        return f'<polygon fill="{colour}" points="{" ".join(spots)}"/>'


def look_at_drawing(source: SourceText, grid_text: str = "", *, is_hexagon: bool = False) -> Outcome[DrawingLook]:
    """Read one drawing; without a grid the coarsest one that its corners lie on is taken."""
    report = Report()
    row_height = HEXAGON_ROW if is_hexagon else Fraction(1)
    grid: Grid | None = None
    if grid_text:
        size = read_grid_size(Scalar(grid_text, Place("--grid", 1, 1, 1, len(grid_text) + 1)), report)
        grid = Grid(*size, row_height) if size else None
        if grid is None:
            return Outcome(None, report.as_tuple())
    else:
        page = read_page(source, Report())
        grid = guess_grid(page[0], row_height) if page else None
    whole = Grid(Fraction(1), Fraction(1), row_height) if grid is None else grid
    outline = Polygon.rectangle(Fraction(0), Fraction(0), whole.across, whole.down)
    outline = hexagon(whole.across, whole.down) if is_hexagon else outline
    palette = Palette(is_open=True)
    drawn = read_block_drawing(source, whole, palette, outline.corners if is_hexagon else None, report)
    if drawn is None or grid is None:
        return Outcome(None, report.as_tuple())
    return Outcome(_look(source, drawn, grid, outline, not grid_text, is_hexagon, report), report.as_tuple())


def _look(
    source: SourceText, drawn: BlockDrawn, grid: Grid, outline: Polygon, is_guessed: bool, is_hexagon: bool,
    report: Report,
) -> DrawingLook:  # fmt: skip
    if drawn.outline is not None and not is_hexagon:
        outline = simple_shape(drawn.outline, "the outline", drawn.place, report) or outline
    words = list(dict.fromkeys(piece.fabric for piece in drawn.pieces))
    fabrics = tuple(
        Fabric(slug(word) or "plain", word or "no fabric", _colour(word, number)) for number, word in enumerate(words)
    )
    spotted = list(drawn.spotted)
    pieces: list[tuple[DrawnPiece, Polygon]] = []
    made: list[BlockPiece] = []
    are_all = drawn.are_all
    for number, piece in enumerate(drawn.pieces, start=1):
        polygon = simple_shape(piece.points, f"piece p{number}", piece.place, report)
        if polygon is None:
            are_all = False
            continue
        if not check_convex(polygon, f"piece p{number}", piece.place, report):
            problem = report.problems[-1]
            spotted.append(Spotted(problem.code, problem.message, (polygon,)))
        pieces.append((DrawnPiece(f"p{number}", piece.points, piece.place), polygon))
        made.append(BlockPiece(f"p{number}", slug(piece.fabric) or "plain", polygon, piece.place))
    check_partition(outline, pieces, are_all, drawn.place, report, spotted, is_drawing=True)
    name = source.name.rpartition("/")[2].removesuffix(".svg")
    assumed = Assumed("a square of the grid is taken as one inch, to look at the drawing")
    width = Quantity("block width", grid.across, Unit.INCH, assumed)
    height = hexagon_height("sample", width) if is_hexagon else Quantity("block height", grid.down, Unit.INCH, assumed)
    block = Block(
        slug(name) or "drawing", name, width, height, grid.across, grid.down, outline, tuple(made), Method.FOUNDATION,
        drawn.place,
    )  # fmt: skip
    return DrawingLook(
        name, (grid.across, grid.down), is_guessed, outline, tuple(made), fabrics, tuple(spotted), drawn.unplaced,
        drawn.frame, block,
    )  # fmt: skip


def _colour(word: str, number: int) -> str:
    return (read_paint(word).colour or _SPARE[number % len(_SPARE)]) if word else _PLAIN


def _decimal(number: Fraction) -> str:
    thousandths = round(number * 1000)
    whole, rest = divmod(abs(thousandths), 1000)
    text = f"{whole}.{rest:03d}".rstrip("0").rstrip(".")
    return f"-{text}" if thousandths < 0 else text
