"""From a plan's strips to the cloth it needs, and what to buy at the counter."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, Direction, Number, Rounding, Unit
from evenseam.pattern import Assumed, Expression, Operator, Quantity, derived

_SHRINKAGE = Assumed(
    "cotton fabric is planned to shrink by 5 percent when it is washed before it is cut",
    "Beginner's Guide to Quilting (UK), 2020: planning figure for cotton fabric; makers measure 3 to 5",
)
_LEFT = Quantity("share of the length left after washing", Fraction(19, 20), Unit.COUNT, _SHRINKAGE)
_YARD = Quantity("one yard", Fraction(36), Unit.INCH, Assumed("the yard is 36 inches", "NBS Circular 572, 1954"))
_METRE = Quantity("one metre", Fraction(100), Unit.CENTIMETRE, Assumed("the metre is 100 centimetres", "SI"))
_SQUARING_UP = {Unit.INCH: Fraction(1, 2), Unit.CENTIMETRE: Fraction(1)}
_SHOP_STEPS = {
    Unit.INCH: Rounding("shop step", Fraction(1, 8), Direction.UP),
    Unit.CENTIMETRE: Rounding("shop step", Fraction(1, 10), Direction.UP),
}


def squaring_up(unit: Unit) -> Quantity:
    """Return what is trimmed off to start from a straight end."""
    value = _SQUARING_UP[unit]
    return Quantity("squaring up the end", value, unit, Assumed("a sliver is trimmed off so that the end is straight"))


def spare(unit: Unit) -> Quantity:
    """Return what is bought beyond need for a crooked shop cut."""
    value = Fraction(1) if unit is Unit.INCH else Fraction(2)
    return Quantity("spare for a crooked shop cut", value, unit, Assumed("shops do not always cut straight"))


def needed_length(name: str, strips: Iterable[tuple[Quantity, int]], unit: Unit) -> Quantity:
    """Return the cloth used: every strip's width so many times, and the squared-up end."""
    total: Expression | Quantity = squaring_up(unit)
    parts: list[Expression | Quantity] = []
    for width, count in strips:
        parts.append(width if count == 1 else count * width)
    if parts:
        total = Expression.of(Operator.PLUS, *parts, total)
    return derived(f"length of {name}", total, rule="the widths of all strips one after the other, and squaring up")


def shop_length(name: str, needed: Quantity) -> Quantity:
    """Return what to ask for in the shop: yards in eighths for inches, metres in tenths for centimetres."""
    step, whole, unit = _shop(needed.unit)
    return derived(
        f"{name} to buy",
        (needed / _LEFT + spare(needed.unit)) / whole,
        rule="length needed, more by what washing takes, and the spare, in the shop's steps",
        rounding=step,
        unit=unit,
    )


def sold_for(length: Fraction, unit: Unit) -> Fraction:
    """Return how much is bought for strips of this length together: yards or metres in the shop's steps."""
    together = Quantity("length of the strips", length + _SQUARING_UP[unit], unit, Assumed("as planned"))
    step, whole, _ = _shop(unit)
    return step.apply((together / _LEFT + spare(unit)).value / whole.value)


def shop_length_unwashed(name: str, needed: Quantity) -> Quantity:
    """Return a length in the shop's steps, for what is not washed first."""
    step, whole, unit = _shop(needed.unit)
    return derived(f"{name} to buy", needed / whole, rule="in the shop's steps", rounding=step, unit=unit)


def _shop(unit: Unit) -> tuple[Rounding, Quantity, Unit]:
    if unit is Unit.INCH:
        return _SHOP_STEPS[unit], _YARD, Unit.YARD
    return _SHOP_STEPS[unit], _METRE, Unit.METRE


def in_unit(inches: Fraction, unit: Unit) -> Number:
    """Return a length in inches in another unit of the ruler."""
    return inches * CENTIMETRES_PER_INCH if unit is Unit.CENTIMETRE else inches
