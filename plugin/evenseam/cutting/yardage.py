"""From a plan's strips to the cloth it needs, and what to buy at the counter."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, Direction, Number, Rounding, Surd, Unit
from evenseam.pattern import Assumed, Expression, Operator, Project, Quantity, derived

_SHRINKAGE = Assumed(
    "cotton fabric is planned to shrink by 5 percent when it is washed before it is cut",
    "Beginner's Guide to Quilting (UK), 2020: planning figure for cotton fabric; makers measure 3 to 5",
)
SHRINKAGE = Quantity("shrinkage in percent", Fraction(5), Unit.COUNT, _SHRINKAGE)
_LEFT = Quantity(
    "share of the length left after washing", 1 - SHRINKAGE.whole * Fraction(1, 100), Unit.COUNT, _SHRINKAGE
)
_YARD = Quantity("one yard", Fraction(36), Unit.INCH, Assumed("the yard is 36 inches", "NBS Circular 572, 1954"))
_METRE = Quantity("one metre", Fraction(100), Unit.CENTIMETRE, Assumed("the metre is 100 centimetres", "SI"))
_SQUARING_UP = {Unit.INCH: Fraction(1, 2), Unit.CENTIMETRE: Fraction(1)}
_SHOP_STEPS = {Unit.YARD: Fraction(1, 8), Unit.METRE: Fraction(1, 10)}


def squaring_up(unit: Unit) -> Quantity:
    """Return what is trimmed off to start from a straight end."""
    value = _SQUARING_UP[unit]
    return Quantity("squaring up the end", value, unit, Assumed("a sliver is trimmed off so that the end is straight"))


def spare(unit: Unit) -> Quantity:
    """Return what is bought beyond need for a crooked shop cut."""
    value = Fraction(1) if unit is Unit.INCH else Fraction(2)
    return Quantity("spare for a crooked shop cut", value, unit, Assumed("shops do not always cut straight"))


def shop_step(project: Project) -> Quantity:
    """Return the step in which cloth is sold: yards for an edition in inches, metres for one in centimetres.

    A step the author gave in the other unit is left to the other edition.
    """
    unit = Unit.YARD if project.unit is Unit.INCH else Unit.METRE
    given = project.shop_step
    return given if given is not None and given.unit is unit else _usual_step(unit)


def _usual_step(unit: Unit) -> Quantity:
    return Quantity("shop step", _SHOP_STEPS[unit], unit, Assumed("the step most shops sell by"))


def needed_length(name: str, strips: Iterable[tuple[Quantity, int]], unit: Unit) -> Quantity:
    """Return the cloth used: every strip's width so many times, and the squared-up end."""
    total: Expression | Quantity = squaring_up(unit)
    parts: list[Expression | Quantity] = []
    for width, count in strips:
        parts.append(width if count == 1 else count * width)
    if parts:
        total = Expression.of(Operator.PLUS, *parts, total)
    return derived(f"length of {name}", total, rule="the widths of all strips one after the other, and squaring up")


def shop_length(name: str, needed: Quantity, step: Quantity | None = None) -> Quantity:
    """Return what to ask for in the shop, in its steps: eighths of a yard or tenths of a metre unless given."""
    rounding, whole, unit = _shop(needed.unit, step)
    return derived(
        f"{name} to buy",
        (needed / _LEFT + spare(needed.unit)) / whole,
        rule="length needed, more by what washing takes, and the spare, in the shop's steps",
        rounding=rounding,
        unit=unit,
    )


def sold_for(length: Fraction, unit: Unit, step: Quantity | None = None) -> Fraction:
    """Return how much is bought for strips of this length together: yards or metres in the shop's steps."""
    together = Quantity("length of the strips", length + _SQUARING_UP[unit], unit, Assumed("as planned"))
    rounding, whole, _ = _shop(unit, step)
    return rounding.apply((together / _LEFT + spare(unit)).value / whole.value)


def longest_for_less(length: Fraction, unit: Unit, step: Quantity) -> Number:
    """Return up to which length strips together take at least one shop step less than for this length."""
    _, whole, _ = _shop(unit, step)
    less = sold_for(length, unit, step) - step.value
    return (less * whole.value - spare(unit).value) * _LEFT.value - _SQUARING_UP[unit]


def shop_length_unwashed(name: str, needed: Quantity, step: Quantity | None = None) -> Quantity:
    """Return a length in the shop's steps, for what is not washed first."""
    rounding, whole, unit = _shop(needed.unit, step)
    return derived(f"{name} to buy", needed / whole, rule="in the shop's steps", rounding=rounding, unit=unit)


def _shop(unit: Unit, step: Quantity | None) -> tuple[Rounding, Quantity, Unit]:
    whole, sold_in = (_YARD, Unit.YARD) if unit is Unit.INCH else (_METRE, Unit.METRE)
    grid = (step or _usual_step(sold_in)).value
    if isinstance(grid, Surd):
        raise TypeError("a shop sells by a plain fraction")
    return Rounding("shop step", grid, Direction.UP), whole, sold_in


def in_unit(inches: Fraction, unit: Unit) -> Number:
    """Return a length in inches in another unit of the ruler."""
    return inches * CENTIMETRES_PER_INCH if unit is Unit.CENTIMETRE else inches
