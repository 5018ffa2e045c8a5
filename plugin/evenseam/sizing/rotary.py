"""The pieces of a block that is cut to size: finished shape plus a seam allowance on every side."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, Unit, square_root
from evenseam.geometry import Point, Polygon, mitred_offset, without_straight_corners
from evenseam.pattern import Block, BlockPiece, CutShape, Expression, Operator, Project, Quantity, derived
from evenseam.piecing import PiecedBlock, PieceKind, Recognised, recognise
from evenseam.sizing.ledger import Ledger, key

NEAR_MARK = {Unit.INCH: Fraction(1, 32), Unit.CENTIMETRE: Fraction(1, 20)}
"""A turned square this near a mark is cut to the mark; further off, it is cut with a template (common practice)."""
_BOTH_SIDES = "finished size and a seam allowance on either side"
_SCANT = "Testing your scant quarter inch seam, Janelle Cahoon, Quiltcentric, 2012"
_TURNED = "finished side, across the grid, and a seam allowance on either side"
_TURNED_SOURCE = "Lesson 5: A Square in a Square, quilt mathematics lesson handout"
_HALF = "finished short side and (2 + √2) × seam allowance, for the seam allowance round the sharp corners"
_HALF_SOURCE = "What size do I cut my triangles?, British Patchwork and Quilting"
_QUARTER = "finished long side and (2 + 2√2) × seam allowance, for the seam allowance round the sharp corners"
_QUARTER_SOURCE = "Quarter Square Triangle, Scissortail Quilting"
_TEMPLATE = "reach of the piece and of its seam allowance, corners mitred"


@dataclass(frozen=True, slots=True)
class RotaryPiece:
    """How one piece is cut."""

    kind: PieceKind
    shape: CutShape
    finished: Polygon
    """As it is cut, from its own top left corner: as it stands in the block, but for a turned rectangle, which is set
    upright."""
    recognised: Recognised

    @property
    def is_generous(self) -> bool:
        """True for a triangle: its square is brought up to a mark, so that it is a little large."""
        return self.shape in (CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE)


def rotary_piece(block: Block, piece: BlockPiece, project: Project) -> RotaryPiece:
    """Recognise how a piece is cut: by size, or with a template where no simple cut would be right.

    A print with an up would lie askew or on its side in a triangle or a turned square cut by size.
    """
    across, down = block.scale
    outline = without_straight_corners(piece.outline.scaled(across, down).clockwise())
    left, top, _, _ = outline.bounds
    outline = outline.moved(Point(-left, -top))
    found = recognise(outline)
    kind = found.kind
    if project.fabric(piece.fabric).is_directional:
        kind = PieceKind.RECTANGLE if kind is PieceKind.RECTANGLE else PieceKind.TEMPLATE
    elif kind is PieceKind.TURNED_RECTANGLE and not _lies_near_marks(found, project):
        # Its template lies along the grain as the piece itself would.
        kind = PieceKind.TEMPLATE
        outline = Polygon.rectangle(Fraction(0), Fraction(0), found.width, found.height)
    shapes = {
        PieceKind.HALF_SQUARE_TRIANGLE: CutShape.HALF_SQUARE_TRIANGLE,
        PieceKind.QUARTER_SQUARE_TRIANGLE: CutShape.QUARTER_SQUARE_TRIANGLE,
        PieceKind.TEMPLATE: CutShape.TEMPLATE,
    }
    square = CutShape.SQUARE if found.width == found.height else CutShape.RECTANGLE
    return RotaryPiece(kind, shapes.get(kind, square), outline, found)


def size_rotary_pieces(block: Block, pieced: PiecedBlock, project: Project, ledger: Ledger) -> None:
    """Enter width and height of every piece, lantern_a_cut_width and so on: of the square for triangles, of the
    rectangle it is cut from for a piece with a template.
    """
    pieces = {piece.id: piece for piece in block.pieces}
    for section in pieced.sections:
        found = rotary_piece(block, pieces[section.pieces[0].piece], project)
        for side in ("width", "height"):
            formula, rule, source, rounding = _worked_out(block, section.name, found, side, project)
            ledger.work_out(
                f"{rotary_name(block.id, section.name)}_{side}", formula,
                label=f"cut {side} of piece {section.name} of {block.name}", rule=rule, source=source,
                rounding=rounding,
            )  # fmt: skip


def rotary_name(block: str, section: str) -> str:
    """Return the stem of the figures of one rotary piece: lantern_a_cut."""
    return f"{key(block)}_{key(section)}_cut"


def is_upright_rectangle(outline: Polygon) -> bool:
    """Tell whether a shape fills its own bounds."""
    left, top, right, bottom = outline.bounds
    return outline.area == (right - left) * (bottom - top)


def turned_once(outline: Polygon) -> Polygon:
    """Return a shape turned a quarter clockwise, from its own top left corner."""
    _, _, _, bottom = outline.bounds
    return Polygon(tuple(Point(bottom - corner.y, corner.x) for corner in outline.corners))


def half_square_triangle_square(name: str, finished: Quantity, seam: Quantity) -> Quantity:
    """Return the square for half-square triangles with this finished short side: at a quarter inch, 7/8 more."""
    return derived(name, _for_half_square(finished, seam), rule=_HALF, source=_HALF_SOURCE, rounding=_up(finished.unit))


def quarter_square_triangle_square(name: str, finished: Quantity, seam: Quantity) -> Quantity:
    """Return the square for quarter-square triangles with this finished long side: at a quarter inch, 1 1/4 more."""
    return derived(
        name, _for_quarter_square(finished, seam), rule=_QUARTER, source=_QUARTER_SOURCE, rounding=_up(finished.unit)
    )


def _worked_out(
    block: Block, section: str, found: RotaryPiece, side: str, project: Project
) -> tuple[Expression, str, str, Rounding | None]:
    """Return the formula of one cut side with its rule, its source and its rounding."""
    seam = project.seam_allowance
    reach = found.recognised.width if side == "width" else found.recognised.height
    whole = block.height if found.kind is PieceKind.RECTANGLE and side == "height" else block.width
    part = whole * (reach / whole.value)
    kind: PieceKind = found.kind
    match kind:
        case PieceKind.RECTANGLE:
            return part + 2 * seam, _BOTH_SIDES, _SCANT, None
        case PieceKind.TURNED_RECTANGLE:
            nearest = Rounding("cut size", project.unit.ruler_mark, Direction.NEAREST)
            return part + 2 * seam, _TURNED, _TURNED_SOURCE, nearest
        case PieceKind.HALF_SQUARE_TRIANGLE:
            finished = derived(f"finished short side of piece {section} of {block.name}", part)
            return _for_half_square(finished, seam), _HALF, _HALF_SOURCE, _up(project.unit)
        case PieceKind.QUARTER_SQUARE_TRIANGLE:
            finished = derived(f"finished long side of piece {section} of {block.name}", part)
            return _for_quarter_square(finished, seam), _QUARTER, _QUARTER_SOURCE, _up(project.unit)
        case PieceKind.TEMPLATE:
            width, height = _reach(found.finished)
            wide, high = _reach(mitred_offset(found.finished, seam.value))
            reach, beyond = (width, wide - width) if side == "width" else (height, high - height)
            part = block.width * (reach / block.width.value)
            return part + seam * (beyond / seam.value), _TEMPLATE, "", _up(project.unit)


def _reach(outline: Polygon) -> tuple[Number, Number]:
    left, top, right, bottom = outline.bounds
    return right - left, bottom - top


def _for_half_square(finished: Quantity, seam: Quantity) -> Expression:
    return finished + Expression.of(Operator.PLUS, 2, square_root(2)) * seam


def _for_quarter_square(finished: Quantity, seam: Quantity) -> Expression:
    return finished + Expression.of(Operator.PLUS, 2, 2 * square_root(2)) * seam


def _up(unit: Unit) -> Rounding:
    return Rounding("cut size", unit.ruler_mark, Direction.UP)


def _lies_near_marks(found: Recognised, project: Project) -> bool:
    nearest = Rounding("cut size", project.unit.ruler_mark, Direction.NEAREST)
    for side in (found.width, found.height):
        cut = side + 2 * project.seam_allowance.value
        off: Number = nearest.apply(cut) - cut
        if not -NEAR_MARK[project.unit] <= off <= NEAR_MARK[project.unit]:
            return False
    return True
