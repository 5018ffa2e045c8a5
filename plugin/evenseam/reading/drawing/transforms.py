"""Transforms of a drawing: matrices of exact numbers, and the way from a viewBox to the page."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from evenseam.reading.drawing.angles import cosine, sine
from evenseam.reading.drawing.numbers import read_numbers

Spot: TypeAlias = tuple[Fraction, Fraction]
"""A point of the page, in pixels."""

MOST_FUNCTIONS = 50
_FUNCTION = re.compile(r"\s*,?\s*([A-Za-z]+)\s*\(([^()]*)\)", re.ASCII)
_ALIGN = re.compile(r"(?:defer\s+)?(none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?", re.ASCII)
_SHARE = {"Min": Fraction(0), "Mid": Fraction(1, 2), "Max": Fraction(1)}
_FINEST = 10**40
_GRAIN = 1 << 100


@dataclass(frozen=True, slots=True)
class Matrix:
    """(x, y) becomes (a x + c y + e, b x + d y + f)."""

    a: Fraction = Fraction(1)
    b: Fraction = Fraction(0)
    c: Fraction = Fraction(0)
    d: Fraction = Fraction(1)
    e: Fraction = Fraction(0)
    f: Fraction = Fraction(0)

    def after(self, first: Matrix) -> Matrix:
        """Return the matrix that does `first` and then this one."""
        made = (
            self.a * first.a + self.c * first.b,
            self.b * first.a + self.d * first.b,
            self.a * first.c + self.c * first.d,
            self.b * first.c + self.d * first.d,
            self.a * first.e + self.c * first.f + self.e,
            self.b * first.e + self.d * first.f + self.f,
        )
        return Matrix(*(_tamed(number) for number in made))

    def at(self, spot: Spot) -> Spot:
        """Return where a point goes."""
        x, y = spot
        return _tamed(self.a * x + self.c * y + self.e), _tamed(self.b * x + self.d * y + self.f)


def read_transform(text: str) -> Matrix | None:
    """Return the matrix of a transform attribute, or None when it cannot be read."""
    matrix = Matrix()
    at = count = 0
    stripped = text.strip()
    while at < len(stripped):
        found = _FUNCTION.match(stripped, at)
        count += 1
        numbers = read_numbers(found[2]) if found else None
        step = _function(found[1], numbers) if found and numbers is not None else None
        if found is None or step is None or count > MOST_FUNCTIONS:
            return None
        matrix = matrix.after(step)
        at = found.end()
    return matrix


def _function(name: str, numbers: list[Fraction]) -> Matrix | None:
    zero, one = Fraction(0), Fraction(1)
    match name, numbers:
        case "matrix", [a, b, c, d, e, f]:
            return Matrix(a, b, c, d, e, f)
        case "translate", [x, *rest] if len(rest) < 2:
            return Matrix(e=x, f=rest[0] if rest else zero)
        case "scale", [x, *rest] if len(rest) < 2:
            return Matrix(a=x, d=rest[0] if rest else x)
        case "rotate", [angle]:
            return Matrix(cosine(angle), sine(angle), -sine(angle), cosine(angle))
        case "rotate", [angle, x, y]:
            turned = Matrix(cosine(angle), sine(angle), -sine(angle), cosine(angle))
            return Matrix(e=x, f=y).after(turned).after(Matrix(e=-x, f=-y))
        case "skewX", [angle] if cosine(angle) != 0:
            return Matrix(one, zero, sine(angle) / cosine(angle), one)
        case "skewY", [angle] if cosine(angle) != 0:
            return Matrix(one, sine(angle) / cosine(angle), zero, one)
    return None


def fit_view_box(
    box: tuple[Fraction, Fraction, Fraction, Fraction], width: Fraction, height: Fraction, align: str
) -> Matrix | None:
    """Return the way from a viewBox (left, top, width, height) to a page of a size; None for an unknown `align`.

    SVG 2, section 8.6, the preserveAspectRatio attribute (W3C).
    """
    left, top, wide, high = box
    found = _ALIGN.fullmatch(" ".join(align.split()) or "xMidYMid")
    if found is None:
        return None
    across, down = width / wide, height / high
    if found[1] == "none":
        return Matrix(across, d=down, e=-left * across, f=-top * down)
    scale = max(across, down) if found[4] == "slice" else min(across, down)
    spare_x, spare_y = width - wide * scale, height - high * scale
    return Matrix(
        scale, d=scale, e=_SHARE[found[2]] * spare_x - left * scale, f=_SHARE[found[3]] * spare_y - top * scale
    )


def _tamed(number: Fraction) -> Fraction:
    """Return a number as it is, or to a hundred binary places when it has grown far too long to reckon with."""
    if number.denominator <= _FINEST:
        return number
    return Fraction(round(number * _GRAIN), _GRAIN)
