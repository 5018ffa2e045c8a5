"""Whether a cut is the right size for its piece: foundation patches and rotary pieces."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from evenseam.exact import Number, Surd, Unit, ceiling, floor, is_multiple, square_root
from evenseam.pattern import Cut, CutShape
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.plane import Outline, Spot, box, outline, same_shape, sides, spread, upright_size
from evenseam.sizing.simulator.table import Table

UPRIGHT: Spot = (Fraction(1), Fraction(0))
RECTANGLES = frozenset({CutShape.RECTANGLE, CutShape.SQUARE, CutShape.STRIP, CutShape.PATCH})
TRIANGLES = frozenset({CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE})
NEAR = {Unit.INCH: Fraction(1, 32), Unit.CENTIMETRE: Fraction(1, 20)}
"""How far a turned square may be from its exact size: no more than a blade strays (common practice)."""


def patch_step(unit: Unit) -> Fraction:
    """Return the marks patches are cut on: every 1/4 in or 0.5 cm."""
    return Fraction(1, 2) if unit is Unit.CENTIMETRE else Fraction(1, 4)


def check_patch(table: Table, cut: Cut, piece: str, shape: Outline, seam: Spot | None) -> bool:
    """Check that a patch covers its piece, with seam allowance and margin all round, and is not wastefully large.

    `shape` is the finished piece; `seam` the direction of the seam it is sewn on with, None for the first piece,
    which may be laid along any of its sides. Cloth with an up is always laid upright. Returns True when it fits.
    """
    allowance = 2 * (table.seam + table.project.patch_margin.value)
    step = patch_step(table.unit)
    directions: tuple[Spot, ...]
    if table.is_directional(cut.material):
        directions, may_turn = (UPRIGHT,), False
    elif seam is not None:
        directions, may_turn = (seam,), True
    else:
        directions = (UPRIGHT, *((end[0] - start[0], end[1] - start[1]) for start, end in sides(shape)))
        may_turn = True
    needs = [_needed(shape, direction, allowance, step) for direction in directions]
    if may_turn:
        needs += [(height, width) for width, height in needs]
    width, height = cut.width.value, cut.height.value
    if (width, height) in needs:
        return True
    wide, high = min(needs, key=lambda need: _distance(need, (width, height)))
    told = (
        f"“{cut.label}” is {table.size(width, height)}; piece {piece} with seam allowance and margin needs "
        f"{table.size(wide, high)}"
    )
    if width < wide or height < high:
        table.blame(cut, codes.PATCH_TOO_SMALL, told)
    elif not (is_multiple(width, step) and is_multiple(height, step)):
        table.blame(cut, codes.PATCH_OFF_GRID, f"{told}, and patches are cut to the {table.length(step)}")
    else:
        table.blame(cut, codes.PATCH_TOO_LARGE, told)
    return False


def check_rotary(table: Table, cut: Cut, piece: str, shape: Outline) -> bool:
    """Check a piece cut to size: finished piece and seam allowance on every side. Returns True when it fits.

    Triangles come from squares: half-square with (2 + √2) × seam allowance beyond the finished short side,
    quarter-square with (2 + 2√2) × seam allowance beyond the finished long side (plain geometry of a seam allowance
    round a 45° corner); sizes that fall between the ruler's marks are cut to the next mark up. A square that is
    sewn in turned is cut to a mark that is near enough, because nothing of it can be trimmed later.
    """
    width, height = cut.width.value, cut.height.value
    need = _rotary_need(table, cut, shape)
    if need is None:
        table.blame(
            cut,
            codes.WRONG_WORKPIECE,
            f"“{cut.label}” is cut as a {cut.shape.value}, piece {piece} is of another shape",
        )
        return False
    mark = table.unit.ruler_mark
    fits = _is_near if _is_turned(cut, shape) else is_cut_for
    for wide, high in need:
        if fits(width, wide, mark) and fits(height, high, mark):
            return True
    wide, high = need[0]
    table.blame(
        cut, codes.PIECE_SIZE_WRONG,
        f"“{cut.label}” is {table.size(width, height)}; piece {piece} with its seam allowances needs "
        f"{table.size(wide, high)}",
    )  # fmt: skip
    return False


def is_generous(table: Table, cut: Cut, shape: Outline) -> bool:
    """Tell whether a triangle that fits was cut from a larger square than it needs."""
    need = _rotary_need(table, cut, shape)
    return cut.shape in TRIANGLES and need is not None and cut.width.value > need[0][0]


def lies_askew(cut: Cut, shape: Outline) -> bool:
    """Tell whether a print would not stand upright: in a turned square, or in triangles that are cut every way."""
    return cut.shape in TRIANGLES or _is_turned(cut, shape)


def _is_turned(cut: Cut, shape: Outline) -> bool:
    return cut.shape in RECTANGLES and upright_size(shape) is None


def _rotary_need(table: Table, cut: Cut, shape: Outline) -> list[tuple[Number, Number]] | None:
    seam = table.seam
    if cut.shape is CutShape.TEMPLATE:
        return template_need(table, cut, shape)
    if cut.shape in RECTANGLES and len(shape) == 4:
        upright = upright_size(shape)
        if upright is not None:
            wide, high = upright[0] + 2 * seam, upright[1] + 2 * seam
            return [(wide, high)] if table.is_directional(cut.material) else [(wide, high), (high, wide)]
        lengths = _right_angled(shape)
        if lengths is None or lengths[0] != lengths[2]:
            return None
        first, second = lengths[0] + 2 * seam, lengths[1] + 2 * seam
        return [(first, second), (second, first)]
    if len(shape) == 3 and cut.shape in TRIANGLES:
        squares = sorted(_length_squared(side) for side in sides(shape))
        if squares[0] != squares[1] or squares[0] + squares[1] != squares[2]:
            return None
        # The grain runs along the sides of the square: a half keeps two of them, a quarter keeps one, the long one.
        along_grain = sum(1 for (ax, ay), (bx, by) in sides(shape) if ax == bx or ay == by)
        if along_grain != (2 if cut.shape is CutShape.HALF_SQUARE_TRIANGLE else 1):
            return None
        if cut.shape is CutShape.HALF_SQUARE_TRIANGLE:
            square = root_of(squares[0]) + (2 + square_root(2)) * seam
        else:
            square = root_of(squares[2]) + (2 + 2 * square_root(2)) * seam
        return [(square, square)]
    return None


def _right_angled(shape: Outline) -> list[Number] | None:
    steps = [(end[0] - start[0], end[1] - start[1]) for start, end in sides(shape)]
    for (ax, ay), (bx, by) in zip(steps, (*steps[1:], steps[0]), strict=True):
        if ax * bx + ay * by != 0:
            return None
    return [root_of(_length_squared(side)) for side in sides(shape)]


def _length_squared(side: tuple[Spot, Spot]) -> Number:
    (ax, ay), (bx, by) = side
    return (bx - ax) * (bx - ax) + (by - ay) * (by - ay)


def root_of(square: Number) -> Number:
    """Return a square root, exact where the square is rational."""
    # Of a Surd, only approximately: no ruler tells 2^-60 in, and the marks it is compared with are far coarser.
    if isinstance(square, Surd):
        return Fraction(isqrt(floor(square.approximately(130) * (1 << 120))), 1 << 60)
    return square_root(square)


def is_cut_for(cut: Number, need: Number, mark: Fraction) -> bool:
    """Tell whether a cut is the need itself, or the need brought up to the next mark."""
    if cut == need:
        return True
    return is_multiple(cut, mark) and cut > need and not is_multiple(need, mark) and cut - need < mark


def fits_edge(table: Table, strip: Number, edge: Number) -> bool:
    """Tell whether a strip is as long as an edge. Where the edge has a square root in it, no ruler has its length: the
    strip is cut to the next mark up and trimmed even with the edge.
    """
    return strip == edge or (isinstance(edge, Surd) and is_cut_for(strip, edge, table.unit.ruler_mark))


def _is_near(cut: Number, need: Number, mark: Fraction) -> bool:
    """Tell whether a cut is the need itself, or the mark nearest to it and near enough."""
    if cut == need:
        return True
    near = NEAR[Unit.INCH if mark == Unit.INCH.ruler_mark else Unit.CENTIMETRE]
    return is_multiple(cut, mark) and -near <= cut - need <= near


def template_need(table: Table, cut: Cut, shape: Outline) -> list[tuple[Number, Number]] | None:
    """Return the rectangle a template is laid on; None when the template is of another shape than the piece.

    The print of a directional fabric stays as it is; any other template may be turned by quarters.
    """
    if cut.outline is None:
        return None
    drawn = outline((corner.x, corner.y) for corner in cut.outline.corners)
    if drawn is None:
        return None
    if not _is_for(drawn, shape, may_turn=not table.is_directional(cut.material)):
        return None
    left, top, right, bottom = box(with_seam(drawn, table.seam))
    mark = table.unit.ruler_mark
    return [(ceiling((right - left) / mark) * mark, ceiling((bottom - top) / mark) * mark)]


def _is_for(drawn: Outline, shape: Outline, *, may_turn: bool) -> bool:
    """Tell whether a template is that of a piece, turned by quarters or, for a rectangle set aslant, set upright."""
    upright = upright_size(drawn)
    if may_turn and upright is not None and len(shape) == 4:
        lengths = _right_angled(shape)
        return lengths is not None and {lengths[0], lengths[1]} == set(upright)
    for _ in range(4 if may_turn else 1):
        left, top, _, _ = box(shape)
        if same_shape(tuple((x - left, y - top) for x, y in shape), drawn):
            return True
        shape = tuple((-y, x) for x, y in shape)
    return False


def with_seam(shape: Outline, seam: Number) -> Outline:
    """Return the shape with every side moved outward by the seam allowance, and run on until they meet."""
    corners: list[Spot] = []
    for (before, here), (_, after) in zip((sides(shape)[-1], *sides(shape)[:-1]), sides(shape), strict=True):
        ax, ay, bx, by = here[0] - before[0], here[1] - before[1], after[0] - here[0], after[1] - here[1]
        one, two = seam * root_of(ax * ax + ay * ay), seam * root_of(bx * bx + by * by)
        turn = ax * by - ay * bx
        corners.append((here[0] + (two * ax - one * bx) / turn, here[1] + (two * ay - one * by) / turn))
    return tuple(corners)


def _needed(shape: Outline, direction: Spot, allowance: Number, step: Fraction) -> tuple[Fraction, Fraction]:
    along, square, length_squared = spread(shape, direction)
    return (
        _next_mark(along, length_squared, allowance, step),
        _next_mark(square, length_squared, allowance, step),
    )


def _next_mark(reach: Number, length_squared: Number, allowance: Number, step: Fraction) -> Fraction:
    """Return the first mark at or above reach ÷ √length_squared + allowance, decided without taking the root.

    The search starts at a mark that is never above it: a root taken to 1/64 of a mark, downward.
    """
    square = reach * reach / length_squared
    marks = floor(Fraction(isqrt(floor(square / (step * step) * 4096)), 64) + allowance / step)
    while (room := marks * step - allowance) < 0 or room * room < square:
        marks += 1
    return marks * step


def _distance(need: tuple[Fraction, Fraction], size: tuple[Number, Number]) -> Number:
    across, down = size[0] - need[0], size[1] - need[1]
    return across * across + down * down
