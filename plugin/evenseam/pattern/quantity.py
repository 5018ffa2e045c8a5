"""A figure that can say why it is what it is: given by the author, assumed by a stated rule, or derived."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction
from typing import TypeAlias, Union

from evenseam.exact import Number, Rounding, Unit, format_length, format_number
from evenseam.problems import Place


@dataclass(frozen=True, slots=True)
class Given:
    """The author wrote the figure, here."""

    place: Place
    text: str = ""


@dataclass(frozen=True, slots=True)
class Assumed:
    """Nobody wrote the figure: a default, with its reason and where the reason is published."""

    reason: str
    source: str = "common practice"


@dataclass(frozen=True, slots=True)
class Derived:
    """The figure was worked out from others."""

    expression: Expression
    rule: str = ""
    """The rule in words, when the formula alone does not say it."""
    source: str = ""
    """Where the rule is published; empty for plain geometry."""
    rounding: Rounding | None = None
    """The one rounding, applied last."""


Because: TypeAlias = Union[Given, Assumed, Derived]


class _Reckoning:
    """What figures and formulas have in common: sums, differences, products and quotients become formulas."""

    __slots__ = ()

    def __add__(self, other: Operand) -> Expression:
        return Expression.of(Operator.PLUS, _operand(self), other)

    def __radd__(self, other: Operand) -> Expression:
        return Expression.of(Operator.PLUS, other, _operand(self))

    def __sub__(self, other: Operand) -> Expression:
        return Expression.of(Operator.MINUS, _operand(self), other)

    def __rsub__(self, other: Operand) -> Expression:
        return Expression.of(Operator.MINUS, other, _operand(self))

    def __mul__(self, other: Operand) -> Expression:
        return Expression.of(Operator.TIMES, _operand(self), other)

    def __rmul__(self, other: Operand) -> Expression:
        return Expression.of(Operator.TIMES, other, _operand(self))

    def __truediv__(self, other: Operand) -> Expression:
        return Expression.of(Operator.DIVIDED, _operand(self), other)


@dataclass(frozen=True, slots=True)
class Quantity(_Reckoning):
    """A named figure with its unit and its reason. Two quantities are equal when name, value and unit are."""

    name: str
    value: Number
    unit: Unit
    because: Because = field(compare=False, repr=False)

    @property
    def text(self) -> str:
        """The figure with its unit, as printed: 7 3/8 in."""
        return format_length(self.value, self.unit)

    @property
    def number(self) -> str:
        """The figure without its unit, as printed: 7 3/8."""
        return format_number(self.value, self.unit)

    @property
    def whole(self) -> int:
        """The value of a count. Raises ValueError for anything that is not a whole number."""
        if not isinstance(self.value, Fraction) or self.value.denominator != 1:
            raise ValueError(f"{self.name} is {self.text}, not a whole number")
        return int(self.value)

    @property
    def place(self) -> Place | None:
        """Where the author wrote it, if the author did."""
        return self.because.place if isinstance(self.because, Given) else None


class Operator(Enum):
    """How a formula joins its parts, with the sign it is printed with."""

    PLUS = "+"
    MINUS = "−"
    TIMES = "×"
    DIVIDED = "÷"
    LARGEST = "the larger of"
    SAME = ""


@dataclass(frozen=True, slots=True)
class Expression(_Reckoning):
    """A formula over quantities and plain numbers that remembers how it was put together.

    Lengths are added only to lengths of the same unit; a length times a count is a length.
    """

    operator: Operator
    operands: tuple[Operand, ...]
    value: Number
    unit: Unit

    @staticmethod
    def of(operator: Operator, *operands: Operand) -> Expression:
        """Work out a formula. Raises ValueError when units do not fit together (our own mistake, never an author's)."""
        values = [_value_of(operand) for operand in operands]
        units = [_unit_of(operand) for operand in operands]
        result = values[0]
        for value in values[1:]:
            match operator:
                case Operator.PLUS:
                    result = result + value
                case Operator.MINUS:
                    result = result - value
                case Operator.TIMES:
                    result = result * value
                case Operator.DIVIDED:
                    result = result / value
                case Operator.LARGEST | Operator.SAME:
                    result = value if value > result else result
        return Expression(operator, operands, result, _unit_together(operator, units))

    @property
    def formula(self) -> str:
        """The formula with figures put in: 12 1/2 + 2 × (1 1/2 − 2 × 1/4)."""
        return _written(self, outer=None)

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """The named figures that go in, once each, in order of reading."""
        found: dict[int, Quantity] = {}
        for operand in self.operands:
            if isinstance(operand, Quantity):
                found.setdefault(id(operand), operand)
            elif isinstance(operand, Expression):
                for quantity in operand.quantities:
                    found.setdefault(id(quantity), quantity)
        return tuple(found.values())


Operand: TypeAlias = Union[Quantity, Expression, Number, int]


def derived(
    name: str,
    formula: Operand,
    *,
    rule: str = "",
    source: str = "",
    rounding: Rounding | None = None,
    unit: Unit | None = None,
) -> Quantity:
    """Return a named figure worked out by a formula, rounded once at the end if a rounding is given.

    `unit` is needed only where the formula alone does not tell it, such as a yardage from inches.
    """
    expression = formula if isinstance(formula, Expression) else Expression.of(Operator.SAME, formula)
    value = rounding.apply(expression.value) if rounding else expression.value
    return Quantity(name, value, unit or expression.unit, Derived(expression, rule, source, rounding))


def largest(*operands: Operand) -> Expression:
    """Return the formula for the largest of several figures."""
    return Expression.of(Operator.LARGEST, *operands)


def _operand(value: _Reckoning) -> Operand:
    assert isinstance(value, (Quantity, Expression))
    return value


def _value_of(operand: Operand) -> Number:
    if isinstance(operand, (Quantity, Expression)):
        return operand.value
    return Fraction(operand) if isinstance(operand, int) else operand


def _unit_of(operand: Operand) -> Unit:
    return operand.unit if isinstance(operand, (Quantity, Expression)) else Unit.COUNT


def _unit_together(operator: Operator, units: list[Unit]) -> Unit:
    measured = [unit for unit in units if unit is not Unit.COUNT]
    match operator:
        case Operator.TIMES if len(measured) <= 1:
            return measured[0] if measured else Unit.COUNT
        case Operator.DIVIDED if len(units) == 2 and units[1] is Unit.COUNT:
            return units[0]
        case Operator.DIVIDED if len(set(units)) == 1:
            return Unit.COUNT
        case Operator.PLUS | Operator.MINUS | Operator.LARGEST | Operator.SAME if len(set(units)) == 1:
            return units[0]
    raise ValueError(f"{operator.name} does not go with the units {[unit.name for unit in units]}")


def _written(operand: Operand, outer: Operator | None) -> str:
    if isinstance(operand, Quantity):
        return operand.number
    if not isinstance(operand, Expression):
        return format_number(operand, Unit.COUNT) if isinstance(operand, (int, Fraction)) else str(operand)
    if operand.operator is Operator.LARGEST:
        return "the larger of " + " and ".join(_written(part, Operator.LARGEST) for part in operand.operands)
    parts = [_written(part, operand.operator) for part in operand.operands]
    text = f" {operand.operator.value} ".join(parts)
    is_sum = operand.operator in (Operator.PLUS, Operator.MINUS)
    needs_brackets = outer in (Operator.TIMES, Operator.DIVIDED, Operator.MINUS) and is_sum
    return f"({text})" if needs_brackets else text
