"""SVG drawings as texts, for tests of the reader of drawings."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from evenseam.problems import Report, SourceText, show_problems
from evenseam.reading.drawing import BlockDrawn, Grid, Palette, read_block_drawing

NAME = "drawing.svg"
FABRICS = {"sea": "#23465f", "fog": "#d9dcd6", "lamp": "#e9b44c"}
Pieces = dict[frozenset[tuple[Fraction, Fraction]], str]


def read(svg: str, grid: str = "4x4", palette: Palette | None = None) -> tuple[BlockDrawn | None, Report]:
    """Read a drawing onto a grid."""
    report = Report()
    across, _, down = grid.partition("x")
    palette = palette or Palette({}, FABRICS)
    drawn = read_block_drawing(SourceText(NAME, svg), Grid(Fraction(across), Fraction(down)), palette, None, report)
    return drawn, report


def pieces(svg: str, grid: str = "4x4", palette: Palette | None = None) -> Pieces:
    """Return the corners of every piece with its fabric; the drawing must be without a mistake."""
    drawn, report = read(svg, grid, palette)
    assert not report.problems, show_problems(report.as_tuple(), {NAME: SourceText(NAME, svg)})
    assert drawn is not None and drawn.are_all
    found = {
        frozenset((Fraction(str(p.x)), Fraction(str(p.y))) for p in piece.points): piece.fabric
        for piece in drawn.pieces
    }
    assert len(found) == len(drawn.pieces)
    return found


def expected(text: str) -> Pieces:
    """Return pieces written one a line: sea 0,0 4,0 4,4."""
    found: Pieces = {}
    for line in text.strip().splitlines():
        fabric, *corners = line.split()
        found[frozenset((Fraction(x), Fraction(y)) for x, y in (corner.split(",") for corner in corners))] = fabric
    return found


def svg(body: str, attributes: str = 'viewBox="0 0 40 40"') -> str:
    """Return a drawing with this inside."""
    return f'<svg xmlns="http://www.w3.org/2000/svg" {attributes}>{body}</svg>'


def points(corners: Sequence[tuple[Fraction, Fraction]], places: int = 4) -> str:
    """Return corners as decimals, as a drawing program writes them."""
    return " ".join(f"{decimal(x, places)},{decimal(y, places)}" for x, y in corners)


def decimal(number: Fraction, places: int = 4) -> str:
    """Return a number rounded to so many places."""
    scaled = round(number * 10**places)
    sign = "-" if scaled < 0 else ""
    return f"{sign}{abs(scaled) // 10**places}.{abs(scaled) % 10**places:0{places}d}"
