"""Blocks that are SVG drawings: from the name of a file to pieces, each checked by itself."""

from __future__ import annotations

from collections.abc import Mapping as MappingOf
from dataclasses import dataclass, replace
from fractions import Fraction

from evenseam.geometry import Polygon
from evenseam.problems import Label, Place, Report, SourceText
from evenseam.reading import codes
from evenseam.reading.drawing import Grid, Palette, read_block_drawing
from evenseam.reading.drawing.style import read_paint
from evenseam.reading.leaves import did_you_mean, listed, shown
from evenseam.reading.partition import DrawnPiece, check_convex, simple_shape
from evenseam.reading.tree import Mapping, Node, Scalar


@dataclass(frozen=True, slots=True)
class SvgBlock:
    """What a drawing says about a block."""

    pieces: list[tuple[DrawnPiece, Polygon, Scalar]]
    """Each with the word for its fabric."""
    outline: Polygon | None
    """Marked in the drawing, not checked yet."""
    are_all: bool
    place: Place
    frame: tuple[Fraction, Fraction, Fraction, Fraction] | None = None
    """Where the block lies in the drawing."""


def read_svg_block(
    node: Scalar, colours: Node | None, grid: Grid, outline: Polygon | None, texts: MappingOf[str, SourceText],
    fabrics: MappingOf[str, str], report: Report,
) -> SvgBlock | None:  # fmt: skip
    """Read the drawing a block names; None when there is nothing to go on with.

    `outline` is the block's where the pattern file says it, `texts` are the drawings beside that file.
    """
    name = node.text.strip()
    text = texts.get(name)
    if text is None:
        hint = did_you_mean(name, texts) or (
            f"there {'are' if len(texts) > 1 else 'is'} {listed(tuple(texts))}"
            if texts
            else "save it there as plain SVG, with a name that ends in .svg"
        )
        report.add(codes.UNDEFINED_DRAWING, node.place, f"no drawing {shown(name)} lies beside the pattern file", hint)
        return None
    palette = Palette(_read_colours(colours, report), fabrics)
    before = len(report.problems)
    drawn = read_block_drawing(text, grid, palette, outline.corners if outline else None, report)
    if drawn is None:
        label = Label(node.place, "the drawing is asked for here")
        report.problems[before:] = [
            replace(problem, labels=(*problem.labels, label)) for problem in report.problems[before:]
        ]
        return None
    pieces: list[tuple[DrawnPiece, Polygon, Scalar]] = []
    written = _places_of_colours(colours)
    are_all = drawn.are_all
    for number, piece in enumerate(drawn.pieces, start=1):
        polygon = simple_shape(piece.points, f"piece p{number}", piece.place, report)
        if polygon is None:
            are_all = False
            continue
        check_convex(polygon, f"piece p{number}", piece.place, report)
        # A fabric that is not defined was written in the table of colours, if it stands there.
        at = written.get(piece.fabric, piece.place) if piece.fabric not in fabrics else piece.place
        word = Scalar(piece.fabric, at, is_plain=False)
        pieces.append((DrawnPiece(f"p{number}", piece.points, piece.place), polygon, word))
    marked = simple_shape(drawn.outline, "the outline", drawn.place, report) if drawn.outline else None
    return SvgBlock(pieces, marked, are_all, drawn.place, drawn.frame)


def _places_of_colours(node: Node | None) -> dict[str, Place]:
    """Return where each fabric stands in a table of colours, the first time it does."""
    if not isinstance(node, Mapping):
        return {}
    values = [entry.value for entry in node.entries if isinstance(entry.value, Scalar)]
    return {value.text.strip(): value.place for value in reversed(values)}


def _read_colours(node: Node | None, report: Report) -> dict[str, str]:
    """Return the fabric words of a table of colours, each colour as #rrggbb."""
    if not isinstance(node, Mapping):
        return {}
    found: dict[str, str] = {}
    for entry in node.entries:
        colour = read_paint(entry.key.text).colour
        if colour is None:
            message = f"{shown(entry.key.text)} is not a colour"
            report.add(codes.NOT_A_COLOUR, entry.key.place, message, 'write # and six digits in quotes: "#23465f"')
        elif isinstance(entry.value, Scalar):
            found[colour] = entry.value.text.strip()
    return found
