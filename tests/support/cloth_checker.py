"""An independent look at a cutting plan: shares nothing with the code that makes plans beyond the types it reads."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from types import SimpleNamespace
from typing import NamedTuple

from evenseam.cutting import CuttingPlan, PiecesPlan
from evenseam.pattern import Cut, CutShape, Project, StripDirection, StripJoin


class Rectangle(NamedTuple):
    """Left, top, right, bottom."""

    left: Fraction
    top: Fraction
    right: Fraction
    bottom: Fraction


def faults(plan: CuttingPlan, cuts: Sequence[Cut], project: Project) -> list[str]:
    """Return everything that is wrong with a plan for these cuts of one fabric; nothing when it can be followed."""
    found: list[str] = []
    pieces = [(piece, _rectangle(piece)) for strip in plan.strips for piece in strip.pieces]
    strips = [_rectangle(strip) for strip in plan.strips]
    width = plan.usable_width.value
    end = max((strip.bottom for strip in strips), default=Fraction(0))
    if not Fraction(0) < plan.length.value - end <= 1:
        found.append(f"strips end at {end}, the length is {plan.length.value}")
    for rectangle in [*strips, *(rectangle for _, rectangle in pieces)]:
        if rectangle.left < 0 or rectangle.top < 0 or rectangle.right > width or rectangle.right <= rectangle.left:
            found.append(f"{rectangle} is not on the cloth")
    for strip in plan.strips:
        outer = _rectangle(strip)
        for piece in strip.pieces:
            inner = _rectangle(piece)
            if (
                inner.left < outer.left
                or inner.right > outer.right
                or inner.top < outer.top
                or inner.bottom > outer.bottom
            ):
                found.append(f"{piece.cut} leaves its strip")
    found += _overlaps([rectangle for _, rectangle in pieces], "pieces")
    found += _overlaps(strips, "strips")
    if not _is_edge_to_edge([rectangle for _, rectangle in pieces]):
        found.append("some cut does not run edge to edge")
    found += _counting(plan, cuts, project)
    found += _lines(plan)
    return found


def faults_of_pieces(plan: PiecesPlan, cuts: Sequence[Cut], project: Project) -> list[str]:
    """Return everything that is wrong with a plan on pieces of cloth."""
    found: list[str] = []
    for number, cloth in enumerate(plan.pieces, start=1):
        strips = [_rectangle(strip) for strip in cloth.strips]
        pieces = [_rectangle(piece) for strip in cloth.strips for piece in strip.pieces]
        for left, top, right, bottom in [*strips, *pieces]:
            if left < 0 or top < 0 or right > plan.cloth.width.value or bottom > plan.cloth.height.value:
                found.append(f"piece of cloth {number}: {left}, {top}, {right}, {bottom} is not on it")
        found += _overlaps(strips, "strips") + _overlaps(pieces, "pieces")
        if not pieces or not _is_edge_to_edge(pieces):
            found.append(f"piece of cloth {number}: some cut does not run edge to edge")
    together = SimpleNamespace(
        strips=[strip for cloth in plan.pieces for strip in cloth.strips], joined=plan.joined, bias=plan.bias
    )
    if plan.number.value != len(plan.pieces):
        found.append(f"{plan.number.text} pieces of cloth told, {len(plan.pieces)} cut")
    return found + _counting(together, cuts, project)


def _rectangle(thing: object) -> Rectangle:
    return Rectangle(thing.x, thing.y, thing.x + thing.width, thing.y + thing.height)  # type: ignore[attr-defined]


def _overlaps(rectangles: list[Rectangle], what: str) -> list[str]:
    ordered = sorted(rectangles, key=lambda one: one.top)
    found = []
    for place, one in enumerate(ordered):
        for other in ordered[place + 1 :]:
            if other.top >= one.bottom:
                break
            if one.left < other.right and other.left < one.right:
                found.append(f"{what} overlap: {one} and {other}")
    return found


def _is_edge_to_edge(rectangles: list[Rectangle]) -> bool:
    """Tell whether straight cuts from edge to edge, one after the other, free every rectangle."""
    waiting = [rectangles]
    while waiting:
        group = waiting.pop()
        if len(group) <= 1:
            continue
        halves = _parts(group, 1, 3) or _parts(group, 0, 2)
        if halves is None:
            return False
        waiting += halves
    return True


def _parts(group: list[Rectangle], low: int, high: int) -> list[list[Rectangle]] | None:
    ordered = sorted(group, key=lambda one: one[low])
    parts: list[list[Rectangle]] = [[ordered[0]]]
    reach = ordered[0][high]
    for rectangle in ordered[1:]:
        if rectangle[low] >= reach:
            parts.append([])
        parts[-1].append(rectangle)
        reach = max(reach, rectangle[high])
    return parts if len(parts) > 1 else None


def _squares_for(cut: Cut) -> int:
    triangles = {CutShape.HALF_SQUARE_TRIANGLE: 2, CutShape.QUARTER_SQUARE_TRIANGLE: 4}.get(cut.shape, 1)
    whole, rest = divmod(int(cut.count.value), triangles)
    return whole + (1 if rest else 0)


def _counting(plan: CuttingPlan | SimpleNamespace, cuts: Sequence[Cut], project: Project) -> list[str]:
    found = []
    by_id = {cut.id: cut for cut in cuts}
    joined_strips: dict[str, list[str]] = {}
    for joined in plan.joined:
        joined_strips.setdefault(joined.strip, []).append(joined.cut)
    joined_cuts = {cut for group in joined_strips.values() for cut in group}
    bias = {one.cut: one for one in plan.bias}
    counted: Counter[str] = Counter()
    for strip in plan.strips:
        for piece in strip.pieces:
            cut = by_id[piece.cut]
            if piece.is_turned and cut.is_upright:
                found.append(f"{piece.cut}: the print lies on its side")
            own_width, own_height = (piece.height, piece.width) if piece.is_turned else (piece.width, piece.height)
            if piece.cut in bias:
                counted[piece.cut] += 1
                if {piece.width, piece.height} != {bias[piece.cut].side.value}:
                    found.append(f"{piece.cut}: not the square that was told")
                continue
            if piece.is_length_of_joined:
                if piece.cut not in joined_strips:
                    found.append(f"{piece.cut}: a length of nothing")
                continue
            counted[piece.cut] += 1
            if (own_width, own_height) != (cut.width.value, cut.height.value):
                found.append(f"{piece.cut}: cut {own_width} × {own_height}")
            if cut.direction is not StripDirection.EITHER and not cut.is_upright and own_width != own_height:
                is_long_along = piece.height > piece.width
                if is_long_along != (cut.direction is StripDirection.ALONG):
                    found.append(f"{piece.cut}: lies against the thread it should follow")
    for cut in cuts:
        expected = 0 if cut.id in joined_cuts else _squares_for(cut)
        if cut.shape is CutShape.BIAS_BINDING:
            expected = bias[cut.id].squares
            found += _bias_yield(bias[cut.id].side.value, expected, cut, project)
        if counted[cut.id] != expected:
            found.append(f"{cut.id}: {counted[cut.id]} pieces in place of {expected}")
    for name, members in joined_strips.items():
        found += _joining(plan, name, [by_id[member] for member in members], project)
    return found


def _bias_yield(side: Fraction, squares: int, cut: Cut, project: Project) -> list[str]:
    """Cut the tube on paper: whole strips only, a seam on every sewn edge, ends squared. Squares avoid the root."""
    seam = (cut.join_seam or project.seam_allowance).value
    inner = side - 2 * seam
    strips = 0
    while 2 * ((strips + 1) * cut.width.value) ** 2 <= inner * inner:
        strips += 1
    # The strip of one square is strips × inner × √2 long, less one width; joins of several take one width each.
    length_squared = 2 * (strips * inner * squares) ** 2
    needed = cut.height.value + (2 * squares - 1) * cut.width.value
    return [] if length_squared >= needed**2 else [f"{cut.id}: the squares do not yield {cut.height.value}"]


def _joining(plan: CuttingPlan | SimpleNamespace, name: str, cuts: list[Cut], project: Project) -> list[str]:
    lengths = [
        piece for strip in plan.strips for piece in strip.pieces if piece.is_length_of_joined and piece.cut == name
    ]
    if not lengths:
        return [f"{name}: nothing to join"]
    found = []
    joined = next(one for one in plan.joined if one.strip == name)
    first = cuts[0]
    across_own = [(piece.height, piece.width) if piece.is_turned else (piece.width, piece.height) for piece in lengths]
    is_turned = lengths[0].is_turned
    along = {height if not is_turned else width for width, height in across_own}
    if len(along) != 1:
        return [f"{name}: lengths of different strip widths {along}"]
    strip_width = along.pop()
    expected_width = first.height.value if not is_turned else first.width.value
    if strip_width != expected_width:
        found.append(f"{name}: strips {strip_width} wide in place of {expected_width}")
    seam = (first.join_seam or project.seam_allowance).value
    loss = strip_width if joined.join is StripJoin.DIAGONAL else 2 * seam
    wholes = sum(int(cut.count.value) for cut in cuts) if joined.panels else 1
    available = sum((piece.width for piece in lengths), Fraction(0)) - loss * (len(lengths) - wholes)
    needed = sum((int(cut.count.value) * _joined_side(cut, joined.panels, is_turned) for cut in cuts), Fraction(0))
    if joined.spare is not None:
        needed += joined.spare.value * sum(int(cut.count.value) for cut in cuts)
    if available < needed:
        found.append(f"{name}: the lengths join to {available}, {needed} is needed")
    if len(lengths) != joined.lengths:
        found.append(f"{name}: {len(lengths)} lengths planned, {joined.lengths} told")
    return found


def _joined_side(cut: Cut, is_backing: bool, is_turned: bool) -> Fraction:
    if is_backing:
        return cut.height.value if is_turned else cut.width.value
    return max(cut.width.value, cut.height.value)


def _lines(plan: CuttingPlan) -> list[str]:
    """The sentences and the picture must say the same: strips and pieces counted both ways."""
    found = []
    told: Counter[object] = Counter()
    for line in plan.lines:
        told[(line.direction, line.strip_width, line.strip_length)] += line.count
    drawn: Counter[object] = Counter()
    for strip in plan.strips:
        is_across = strip.direction is StripDirection.ACROSS
        set_to, long = (strip.height, strip.width) if is_across else (strip.width, strip.height)
        drawn[(strip.direction, set_to, long)] += 1
    if told != drawn:
        found.append(f"the lines tell of {told}, the plan has {drawn}")
    subcut: Counter[str] = Counter()
    for line in plan.lines:
        for part in line.subcuts:
            subcut[part.cut] += part.count
    first = {cut: group[0] for group in plan.alike for cut in group}
    pieces = Counter(
        first.get(piece.cut, piece.cut)
        for strip in plan.strips
        for piece in strip.pieces
        if not (piece.is_length_of_joined and (piece.width, piece.height) == (strip.width, strip.height))
    )
    if subcut != pieces:
        found.append(f"the lines subcut {subcut}, the plan has {pieces}")
    return found
