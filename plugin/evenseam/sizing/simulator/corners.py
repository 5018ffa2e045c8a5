"""Borders that turn their corners otherwise than in pairs: mitred ones, several as one, and ones sewn in part first."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from evenseam.exact import Number, Unit, floor, is_multiple
from evenseam.pattern import AddMitredBorder, AddPartialSeamBorder, Border, BorderCorners, Run, Step
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.blocks import BlockMaker
from evenseam.sizing.simulator.borders import as_bordered, border_of, check_turn
from evenseam.sizing.simulator.patches import fits_edge, is_cut_for
from evenseam.sizing.simulator.runs import as_flat, check_turned_print, spoilt_among
from evenseam.sizing.simulator.table import SPOILT, Table
from evenseam.sizing.simulator.workpiece import Bordered, Flat, Workpiece, side_by_side

EASE_STEP = {Unit.INCH: Fraction(1, 2), Unit.CENTIMETRE: Fraction(1, 2)}
"""What is added to mitred strips is a round figure: whole and half inches or centimetres (common practice)."""
MOST_EASE = {Unit.INCH: Fraction(10), Unit.CENTIMETRE: Fraction(25)}
"""Published rules for mitred strips add nothing, 1, 6 or "about" 10 in ("Mitered borders", QuiltingHub; "Calculating
required border lengths", quiltingboard.com, as read in the handbook)."""


@dataclass(frozen=True, slots=True)
class Mitred:
    """Borders sewn on as one, with 45 degree corners."""

    borders: tuple[Border, ...]
    """Innermost first."""
    finished: Number
    """Width of them all."""


def add_mitred_border(table: Table, maker: BlockMaker, step: Step, operation: AddMitredBorder) -> Workpiece:
    """Sew four strips from seam line to seam line and sew the corners; what is too long is cut off there."""
    names = (operation.sides, operation.top_bottom)
    pieces = table.take(step, (operation.centre, *names, *names))
    borders = [border_of(table, step, id) for id in operation.borders]
    found = tuple(border for border in borders if border is not None)
    if spoilt_among(pieces) or not found or len(found) < len(borders):
        if not borders:
            table.tell(codes.BORDER_ORDER_DIFFERS, f"step {step.id} mitres no border at all")
        return SPOILT
    centre = as_bordered(table, maker, pieces[0])
    if centre is None:
        return table.wrong_piece(step, operation.centre, pieces[0], "the centre of the top")
    if not check_turn(table, found[0], centre) or not _belong_together(table, found, centre):
        return SPOILT
    finished: Number = Fraction(0)
    for border in found:
        finished = finished + border.width.value
    mitred = Mitred(found, finished)
    told = table.told
    eases: list[Number | None] = []
    for name, piece, run, edge in (
        (names[0], pieces[1], Run.ACROSS, centre.height), (names[1], pieces[2], Run.DOWN, centre.width),
    ):  # fmt: skip
        strip = as_flat(maker, piece)
        if strip is None or strip.blocks or strip.is_from_point:
            return table.wrong_piece(step, name, piece, "strips of cloth")
        _check_widths(table, mitred, name, strip, run)
        length = strip.height if run is Run.ACROSS else strip.width
        eases.append(_ease(table, mitred, name, length, edge + 2 * finished))
    if table.told == told and eases[0] != eases[1]:
        table.tell(
            codes.EDGES_DIFFER,
            f"the strips of {_called(mitred)} are cut longer than they need, the sides by {_text(table, eases[0])}, "
            f"top and bottom by {_text(table, eases[1])}; it should be the same",
            found[0].width, place=found[0].place,
        )  # fmt: skip
    if table.told > told:
        return SPOILT
    return replace(
        centre, width=centre.width + 2 * finished, height=centre.height + 2 * finished,
        done=centre.done + len(found),
    )  # fmt: skip


def add_partial_seam_border(table: Table, maker: BlockMaker, step: Step, operation: AddPartialSeamBorder) -> Workpiece:
    """Sew four strips one after the other, each past one corner: an edge of the centre and a border's width long."""
    names = (operation.sides, operation.top_bottom)
    pieces = table.take(step, (operation.centre, *names, *names))
    border = border_of(table, step, operation.border)
    if spoilt_among(pieces) or border is None:
        return SPOILT
    centre = as_bordered(table, maker, pieces[0])
    if centre is None:
        return table.wrong_piece(step, operation.centre, pieces[0], "the centre of the top")
    if not check_turn(table, border, centre):
        return SPOILT
    told = table.told
    if border.corners is not BorderCorners.PARTIAL_SEAM or border.pieced is not None or centre.pairs:
        _tell_corners(table, border, "sewn on with a partial seam")
    for name, piece, run, edge in (
        (names[0], pieces[1], Run.ACROSS, centre.height), (names[1], pieces[2], Run.DOWN, centre.width),
    ):  # fmt: skip
        strip = as_flat(maker, piece)
        if strip is None or strip.cut is None:
            return table.wrong_piece(step, name, piece, "single strips of cloth")
        _check_strip(table, border, name, strip, run)
        length = strip.height if run is Run.ACROSS else strip.width
        needed = edge + border.width.value
        if not fits_edge(table, length, needed):
            table.tell(
                codes.EDGES_DIFFER,
                f"{table.called(name)} is {table.length(length)} long; the edge of {table.length(edge)} and one width "
                f"of {border.name} are {table.length(needed)}",
                border.width, place=border.place,
            )  # fmt: skip
    if table.told > told:
        return SPOILT
    wider = 2 * border.width.value
    return replace(centre, width=centre.width + wider, height=centre.height + wider, done=centre.done + 1)


def _belong_together(table: Table, borders: tuple[Border, ...], centre: Bordered) -> bool:
    """Check that these are all the neighbouring mitred borders, in order.

    A border whose print has an up is mitred by itself: a joined strip turned half round would stand it on its head.
    """
    group: list[Border] = []
    for border in table.project.borders[centre.done :]:
        is_alone = table.is_directional(border.fabric)
        if border.corners is not BorderCorners.MITRED or border.pieced is not None or (group and is_alone):
            break
        group.append(border)
        if is_alone:
            break
    if tuple(border.id for border in group) == tuple(border.id for border in borders) and not centre.pairs:
        return True
    _tell_corners(
        table, borders[0], f"mitred as one strip of {len(borders)} borders, where {len(group)} belong together"
    )
    return False


def _check_widths(table: Table, mitred: Mitred, name: str, strip: Flat, run: Run) -> None:
    """Check the strips that are sewn on as one, outermost first, as they lie at the left or the top."""
    parts = side_by_side(strip, run, len(mitred.borders)) if strip.parts else [strip]
    if parts is None or len(parts) != len(mitred.borders):
        _tell_corners(table, mitred.borders[0], f"sewn on with {table.called(name)}, which is not one strip each of "
                      f"{_called(mitred)}")  # fmt: skip
        return
    for border, part in zip(reversed(mitred.borders), parts, strict=True):
        _check_strip(table, border, name, part, run)


def _check_strip(table: Table, border: Border, name: str, part: Flat, run: Run) -> None:
    if part.cut is None:
        return
    table.check_fabric(part.cut, border.fabric, border.name)
    table.check_print(part.cut)
    check_turned_print(table, part)
    finished = (part.width if run is Run.ACROSS else part.height) - 2 * table.seam
    if finished != border.width.value:
        table.tell(
            codes.BORDER_WIDTH_DIFFERS,
            f"{table.called(part.cut.id)} finishes {table.length(finished)} wide, {border.name} is decided as "
            f"{border.width.text}",
            border.width, place=border.place,
        )  # fmt: skip


def _ease(table: Table, mitred: Mitred, name: str, length: Number, least: Number) -> Number | None:
    """Return how much longer than it must be a mitred strip is; None, with the problem noted, when that is not right.

    The strip must reach from raw point to raw point: at a corner of 45 degrees, the edge of the centre, raw, and twice
    the width of the borders.
    """
    decided = {border.ease.value for border in mitred.borders if border.ease is not None}
    mark, step = table.unit.ruler_mark, EASE_STEP[table.unit]
    ease = floor((length - least) / step) * step
    eases: list[Number] = list(decided) if decided else [ease]
    for each in eases:
        if each >= 0 and (decided or each <= MOST_EASE[table.unit]) and is_cut_for(length, least + each, mark):
            return each
    wanted = (
        " or ".join(table.length(least + each) for each in decided) if decided else f"{table.length(least)} and some"
    )
    table.tell(
        codes.EDGES_DIFFER,
        f"{table.called(name)} is {table.length(length)} long; from point to point, to be mitred, it needs {wanted}"
        + ("" if decided or is_multiple(length - least, step) else f" in steps of {table.length(step)}"),
        mitred.borders[0].width,
        place=mitred.borders[0].place,
    )
    return None


def _called(mitred: Mitred) -> str:
    return " and ".join(border.name for border in mitred.borders)


def _text(table: Table, ease: Number | None) -> str:
    return table.length(ease) if ease is not None else "nothing"


def _tell_corners(table: Table, border: Border, how: str) -> None:
    table.tell(
        codes.BORDER_ORDER_DIFFERS, f"{border.name} has {border.corners.value} corners, and is {how}", border.width,
        place=border.place,
    )  # fmt: skip
