"""The rod a project hangs from, and about how much the project weighs."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Direction, Rounding, Unit
from evenseam.pattern import Assumed, CornerPockets, Hanging, Loops, Quantity, Rings, Sleeve
from evenseam.sizing.ledger import Ledger

_COMMON = "common practice"
_BEYOND = {Unit.INCH: Fraction(1, 2), Unit.CENTIMETRE: Fraction(1)}
"""How far a hidden rod reaches beyond either end of its sleeve."""
_SHOWS = {Unit.INCH: Fraction(2), Unit.CENTIMETRE: Fraction(5)}
"""How far a rod that shows reaches beyond either side."""
_PLAY = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}
"""Left free at either end of a rod in corner pockets, so that it can be put in."""
_ROD_MARK = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}


def size_rod(hanging: Hanging, seam: Quantity, ledger: Ledger) -> None:
    """Work out how long the rod is, and enter it; rings hang from a rod too, or from a hook each."""
    width = ledger["finished_width"]
    unit = width.unit
    cut = Rounding("rod", _ROD_MARK[unit], Direction.DOWN)
    match hanging:
        case Sleeve():
            beyond = _assumed("rod beyond the sleeve", _BEYOND[unit], unit, "its ends rest on hooks, out of sight")
            ledger.work_out(
                "rod_length", ledger["sleeve_finished_length"] + 2 * beyond,
                rule="a little longer than the sleeve, so that its ends can rest on hooks", source=_COMMON,
                rounding=cut,
            )  # fmt: skip
        case CornerPockets():
            play = _assumed("play of the rod", _PLAY[unit], unit, "it must bend a little to go in")
            ledger.work_out(
                "rod_length", width - 2 * seam - 2 * play,
                rule="from pocket to pocket, inside the edge, with a little play at either end", source=_COMMON,
                rounding=cut,
            )  # fmt: skip
        case Loops():
            shows = _assumed("rod beyond the sides", _SHOWS[unit], unit, "it shows, and needs room for its holders")
            ledger.work_out(
                "rod_length", width + 2 * shows, rule="it reaches beyond both sides", source=_COMMON, rounding=cut
            )
        case Rings():
            beyond = _assumed("rod inside the sides", _BEYOND[unit], unit, "it stays out of sight")
            ledger.work_out(
                "rod_length", width - 2 * beyond, rule="a little shorter than the project is wide", source=_COMMON,
                rounding=cut,
            )  # fmt: skip


def weigh(ledger: Ledger) -> None:
    """Estimate what a quilted project weighs, and enter it."""
    width, height = ledger["finished_width"], ledger["finished_height"]
    is_inch = width.unit is Unit.INCH
    side = Quantity(
        "side of a square yard" if is_inch else "side of a square metre", Fraction(36 if is_inch else 100), width.unit,
        Assumed("a yard is 36 in" if is_inch else "a metre is 100 cm", "the ruler"),
    )  # fmt: skip
    unit = Unit.POUND if is_inch else Unit.KILOGRAM
    each = Quantity(
        f"weight of a square {'yard' if is_inch else 'metre'}", Fraction(1) if is_inch else Fraction(55, 100), unit,
        Assumed("two layers of quilting cotton with their seams, and cotton batting between them", _COMMON),
    )  # fmt: skip
    mark = Rounding("estimate", Fraction(1, 4) if is_inch else Fraction(1, 10), Direction.UP)
    ledger.work_out(
        "weight", (width / side) * (height / side) * each, label="estimated weight",
        rule="estimated from its area; another batting may weigh half as much or twice as much", source=_COMMON,
        rounding=mark,
    )  # fmt: skip


def _assumed(name: str, value: Fraction, unit: Unit, reason: str) -> Quantity:
    return Quantity(name, value, unit, Assumed(reason, _COMMON))
