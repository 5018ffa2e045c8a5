"""The patch of cloth for one foundation piece: the smallest rectangle that covers it with its seam allowances."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, Unit, square_root
from evenseam.geometry import Point, Polygon
from evenseam.pattern import Block, Project, derived
from evenseam.piecing import PiecedBlock, SectionPiece
from evenseam.sizing.ledger import Ledger, key

PATCH_MARK = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}
"""Patches are cut generously, so coarse marks are fine and fewer different sizes result (common practice)."""
PATCH_RULE = "piece laid along its seam, with seam allowance and margin on every side"
FIRST_RULE = "first piece laid along the edge that takes the least cloth, with seam allowance and margin on every side"
UPRIGHT_RULE = "piece as it stands, for the print, with seam allowance and margin on every side"
PATCH_SOURCE = "Cutting the Main Fabric for Paper Foundation Piecing, Gail Garber"


@dataclass(frozen=True, slots=True)
class Extent:
    """How far a shape reaches along a direction and across it."""

    along: Number
    across: Number


def size_patches(block: Block, pieced: PiecedBlock, project: Project, ledger: Ledger) -> None:
    """Enter width and height of the patch of every piece: lantern_a1_patch_width and so on."""
    across, down = block.scale
    pieces = {piece.id: piece for piece in block.pieces}
    for section in pieced.sections:
        for member in section.pieces:
            piece = pieces[member.piece]
            outline = piece.outline.scaled(across, down)
            if project.fabric(piece.fabric).is_directional:
                extent, rule = extent_along(outline, Point(Fraction(1), Fraction(0))), UPRIGHT_RULE
            else:
                extent = _best_extent(outline, _directions(outline, member, across, down), project)
                rule = FIRST_RULE if member.seam is None else PATCH_RULE
            _enter(block, member.label, extent, rule, project, ledger)


def patch_name(block: str, label: str) -> str:
    """Return the stem of the figures of one patch: lantern_a1_patch."""
    return f"{key(block)}_{key(label)}_patch"


def extent_along(outline: Polygon, direction: Point) -> Extent:
    """Return the exact reach of a shape along a direction and at right angles to it."""
    size = _length(direction)
    upright = Point(-direction.y, direction.x)
    return Extent(_reach(outline, direction) / size, _reach(outline, upright) / size)


def _enter(block: Block, label: str, extent: Extent, rule: str, project: Project, ledger: Ledger) -> None:
    around = 2 * (project.seam_allowance + project.patch_margin)
    mark = PATCH_MARK[project.unit]
    sides = [extent.along, extent.across]
    if rule is not UPRIGHT_RULE and sides[0] < sides[1]:
        # Without an up, the longer side is the width, so that equal patches are seen to be equal.
        sides.reverse()
    for side, reach in zip(("width", "height"), sides, strict=True):
        piece = derived(f"{side} of the piece {label}", block.width * (reach / block.width.value))
        ledger.work_out(
            f"{patch_name(block.id, label)}_{side}", piece + around,
            label=f"{side} of the patch for {label} of {block.name}",
            rule=rule, source=PATCH_SOURCE,
            rounding=Rounding("patch size", mark, Direction.UP),
        )  # fmt: skip


def _directions(outline: Polygon, member: SectionPiece, across: Number, down: Number) -> list[Point]:
    """Return the seam for a piece that is sewn on, and every edge for the first piece, which has no seam yet."""
    if member.seam is not None:
        return [(member.seam.end - member.seam.start).scaled(across, down)]
    return [end - start for start, end in outline.edges]


def _best_extent(outline: Polygon, directions: list[Point], project: Project) -> Extent:
    """Return the extent that takes the least cloth once rounded; the first of several as good."""
    around = 2 * (project.seam_allowance.value + project.patch_margin.value)
    rounding = Rounding("patch size", PATCH_MARK[project.unit], Direction.UP)
    extents = [extent_along(outline, direction) for direction in directions]

    def cloth(extent: Extent) -> Fraction:
        return rounding.apply(extent.along + around) * rounding.apply(extent.across + around)

    return min(extents, key=cloth)


def _reach(outline: Polygon, direction: Point) -> Number:
    dots = [corner.dot(direction) for corner in outline.corners]
    low = high = dots[0]
    for dot in dots[1:]:
        low = dot if dot < low else low
        high = dot if dot > high else high
    return high - low


def _length(step: Point) -> Number:
    """Return the length of a step, exactly; never too long where a root within a root would be needed.

    Coordinates with roots in them may give a length that no sum of roots equals. The length divides the reach of a
    piece, so a length slightly too short makes the patch slightly too large, never too small.
    """
    square = step.dot(step)
    if isinstance(square, Fraction):
        return square_root(square)
    root = square_root(Fraction(int(square.approximately(80) * (1 << 40)) - 1, 1 << 40))
    return root if isinstance(root, Fraction) else root.approximately(60)
