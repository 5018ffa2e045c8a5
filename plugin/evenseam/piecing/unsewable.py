"""What keeps a drawing from being sewn with straight seams, in words an author can act on."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, sign
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block, BlockPiece
from evenseam.piecing.codes import (
    BLOCK_LOCKED,
    FEWEST_NOT_PROVED,
    OUTLINE_NOT_CONVEX,
    PIECE_NOT_CONVEX,
    PIECES_DO_NOT_FILL,
    TOO_MANY_PIECES,
)
from evenseam.piecing.convex import split_into_convex
from evenseam.piecing.locked import LockedReport, LockedSet
from evenseam.piecing.spelling import spell_list, spell_number, spell_outline, spell_point
from evenseam.problems import Label, Report

MOST_PIECES = 300
"""More pieces in one block than this are refused; a drawing from a stranger must not keep a machine busy."""


def check_drawing(block: Block, report: Report) -> None:
    """Report everything that must be mended before seams are looked for."""
    name = f"block {block.name!r}"
    if len(block.pieces) > MOST_PIECES:
        message = f"{name} has {len(block.pieces)} pieces; at most {MOST_PIECES}"
        report.add(TOO_MANY_PIECES, block.place, message, "draw it as several blocks and set them side by side")
        return
    if not block.outline.is_convex:
        message = f"{name} has an outline that bends inward"
        report.add(OUTLINE_NOT_CONVEX, block.place, message, "fill the corner with background, or draw several blocks")
    for piece in block.pieces:
        if not piece.outline.is_convex:
            _report_bend(block, piece, report)
    _check_area(block, report)


def report_locked(block: Block, found: LockedReport, report: Report) -> None:
    """Report every set of pieces that lock one another, with the seams that would free them."""
    places = {piece.id: piece.place for piece in block.pieces}
    for locked in found.sets:
        names = spell_list(locked.pieces)
        message = f"block {block.name!r}: {names} lock one another; no straight seam runs right across them"
        labels = tuple(Label(place, f"{name} is locked") for name in locked.pieces if (place := places[name]))
        report.add(BLOCK_LOCKED, block.place, message, _way_out(block, locked), labels)


def report_not_proved(block: Block, sections: int, at_least: int, report: Report) -> None:
    """Tell the author that a block may do with fewer sections than were found."""
    message = (
        f"block {block.name!r} is sewn in {sections} sections; whether fewer would do was not settled "
        f"(never fewer than {at_least})"
    )
    report.add(FEWEST_NOT_PROVED, block.place, message, "a drawing with fewer long lines that cross is settled sooner")


def _way_out(block: Block, locked: LockedSet) -> str:
    fabrics = {piece.id: piece.fabric for piece in block.pieces}
    count = len(locked.seams)
    many = "one added seam frees" if count == 1 else f"{count} added seams free"
    sure = "" if locked.is_fewest else f" (at least {locked.at_least} are needed)"
    seams = spell_list(
        tuple(f"from {_spot(block, s.seam.start)} to {_spot(block, s.seam.end)} across {s.piece}" for s in locked.seams)
    )
    parts = spell_list(
        tuple(f"{piece} draw {_as_drawn(block, fabrics[piece], outlines)}" for piece, outlines in locked.replacements)
    )
    return f"{many} them{sure}: {seams}; in place of {parts}"


def _as_drawn(block: Block, fabric: str, outlines: tuple[Polygon, ...]) -> str:
    """Return pieces as their author would write them: as corners on the grid, or as elements of the SVG drawing."""
    if block.drawn_in is None:
        return spell_list(tuple(f"`{fabric}: {spell_outline(outline)}`" for outline in outlines))
    return spell_list(
        tuple(
            f'`<polygon class="{fabric}" points="{" ".join(_spot(block, corner) for corner in outline.corners)}"/>`'
            for outline in outlines
        )
    )


def _spot(block: Block, point: Point) -> str:
    """Return a corner in the numbers its author draws in; in a drawing, to a thousandth."""
    if block.drawn_in is None:
        return spell_point(point)
    left, top, right, bottom = block.drawn_in
    x = left + point.x * ((right - left) / block.grid_width)
    y = top + point.y * ((bottom - top) / block.grid_height)
    return ",".join(spell_number(_THOUSANDTH.apply(number)) for number in (x, y))


_THOUSANDTH = Rounding("coordinate", Fraction(1, 1000), Direction.NEAREST)


def _report_bend(block: Block, piece: BlockPiece, report: Report) -> None:
    split = split_into_convex(piece.outline)
    message = f"block {block.name!r}: {piece.id} bends inward; straight seams make no such piece"
    hint = "draw it as several pieces without inward corners"
    if split is not None:
        cuts = spell_list(tuple(f"from {_spot(block, cut.start)} to {_spot(block, cut.end)}" for cut in split.cuts))
        hint = f"split it {cuts}; in its place draw {_as_drawn(block, piece.fabric, split.parts)}"
    report.add(PIECE_NOT_CONVEX, piece.place or block.place, message, hint)


def _check_area(block: Block, report: Report) -> None:
    total: Number = Fraction(0)
    for piece in block.pieces:
        total = total + piece.outline.area
    difference = sign(total - block.outline.area)
    if difference == 0 and block.pieces:
        return
    message = (
        f"block {block.name!r}: its pieces cover {spell_number(total)} square grid units, "
        f"its outline holds {spell_number(block.outline.area)}"
    )
    hint = "part the pieces that overlap" if difference > 0 else "close the gaps between the pieces"
    report.add(PIECES_DO_NOT_FILL, block.place, message, hint)
