"""A figure's derivation as lines of text, down to the places in the author's file."""

from __future__ import annotations

from evenseam.exact import Rounding, Unit, format_length
from evenseam.pattern.quantity import Assumed, Derived, Given, Quantity


def explain(quantity: Quantity) -> str:
    """Return the derivation of a figure, one reason a line, inputs indented under what they go into.

    A figure used twice is explained once.
    """
    lines: list[str] = []
    _explain(quantity, 0, lines, set())
    return "\n".join(lines)


def equation(quantity: Quantity) -> str:
    """Return the figure and its formula on one line: 14 1/2 = 12 1/2 + 2 × (1 1/2 − 2 × 1/4)."""
    because = quantity.because
    if not isinstance(because, Derived):
        return quantity.number
    relation = "=" if because.rounding is None or because.expression.value == quantity.value else "←"
    return f"{quantity.number} {relation} {because.expression.formula}"


def _explain(quantity: Quantity, depth: int, lines: list[str], told: set[tuple[str, str]]) -> None:
    indent = "  " * depth
    key = (quantity.name, quantity.text)
    lines.append(f"{indent}{quantity.name}: {quantity.text}" + (" (see above)" if key in told else ""))
    if key in told:
        return
    told.add(key)
    match quantity.because:
        case Given(place=place):
            lines.append(f"{indent}  given in {place}")
        case Assumed(reason=reason, source=source):
            lines.append(f"{indent}  assumed: {reason} ({source})")
        case Derived() as because:
            if because.rule:
                lines.append(f"{indent}  {because.rule}" + (f" ({because.source})" if because.source else ""))
            exact = format_length(because.expression.value, because.expression.unit)
            rounded = f", rounded {_rounded(because.rounding, because.expression.unit)}" if because.rounding else ""
            lines.append(f"{indent}  {because.expression.formula} = {exact}{rounded}")
            for part in because.expression.quantities:
                _explain(part, depth + 1, lines, told)


def _rounded(rounding: Rounding, unit: Unit) -> str:
    return f"{rounding.direction.value} to a multiple of {format_length(rounding.grid, unit)} ({rounding.name})"
