"""Numbers with square roots, exactly: a + b√2 + c√3 + …, added, multiplied, divided and compared without error."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import isqrt
from typing import TypeAlias, Union


@dataclass(frozen=True, slots=True)
class Surd:
    """A rational number plus rational multiples of square roots; at least one root is present.

    Build one with `square_root` and arithmetic; a result without roots comes back as a plain Fraction, so that
    equal numbers are always equal values.

    >>> square_root(2) * square_root(2)
    Fraction(2, 1)
    >>> str(Fraction(1, 2) + Fraction(1, 4) * square_root(2))
    '1/2 + 1/4√2'
    """

    terms: tuple[tuple[int, Fraction], ...]
    """Pairs of (square-free radicand, coefficient): radicands rise, 1 is the rational part, no coefficient is zero."""

    def __add__(self, other: Number | int) -> Number:
        return _sum_of(self.terms, _terms_of(other))

    __radd__ = __add__

    def __neg__(self) -> Surd:
        return Surd(tuple((radicand, -coefficient) for radicand, coefficient in self.terms))

    def __pos__(self) -> Surd:
        return self

    def __sub__(self, other: Number | int) -> Number:
        return self + -other

    def __rsub__(self, other: Number | int) -> Number:
        return -self + other

    def __mul__(self, other: Number | int) -> Number:
        if not isinstance(other, Surd):
            # Every root stays, and in its place.
            return Surd(tuple((radicand, factor * other) for radicand, factor in self.terms)) if other else Fraction(0)
        products: list[tuple[int, Fraction]] = []
        for left, coefficient in self.terms:
            for right, factor in other.terms:
                outside, inside = _square_free(left * right)
                products.append((inside, coefficient * factor * outside))
        return _from_terms(products)

    __rmul__ = __mul__

    def __truediv__(self, other: Number | int) -> Number:
        if isinstance(other, Surd):
            return self * _inverse(other)
        return self * (Fraction(1) / Fraction(other))

    def __rtruediv__(self, other: Number | int) -> Number:
        return _inverse(self) * other

    def __abs__(self) -> Surd:
        return -self if sign(self) < 0 else self

    def __lt__(self, other: Number | int) -> bool:
        return sign(self - other) < 0

    def __le__(self, other: Number | int) -> bool:
        return sign(self - other) <= 0

    def __gt__(self, other: Number | int) -> bool:
        return sign(self - other) > 0

    def __ge__(self, other: Number | int) -> bool:
        return sign(self - other) >= 0

    def __float__(self) -> float:
        # Not a sum of floats: terms that nearly cancel would lose places.
        low, _ = _scaled_bounds(self, 60)
        return low / (1 << 60)

    def approximately(self, bits: int) -> Fraction:
        """Return a rational number within a few times 2^-bits of this one."""
        low, _ = _scaled_bounds(self, bits)
        return Fraction(low, 1 << bits)

    def __str__(self) -> str:
        parts = [
            f"{coefficient}" if radicand == 1 else f"√{radicand}" if coefficient == 1 else f"{coefficient}√{radicand}"
            for radicand, coefficient in self.terms
        ]
        return " + ".join(parts).replace("+ -", "− ")


Number: TypeAlias = Union[Fraction, Surd]
"""An exact real number: a Fraction, or a Surd when a root is really there."""


def square_root(value: Fraction | int) -> Number:
    """Return the exact square root of a number that is not negative.

    >>> square_root(Fraction(9, 4)), str(square_root(8))
    (Fraction(3, 2), '2√2')
    """
    value = Fraction(value)
    if value < 0:
        raise ValueError(f"no real square root of {value}")
    if value == 0:
        return Fraction(0)
    outside, inside = _square_free(value.numerator * value.denominator)
    return _from_terms([(inside, Fraction(outside, value.denominator))])


def sign(number: Number | int) -> int:
    """Return -1, 0 or 1, decided exactly.

    Square roots of different square-free numbers are linearly independent over the rationals, so a Surd is never
    zero and narrowing bounds always decide.
    """
    if not isinstance(number, Surd):
        return (number > 0) - (number < 0)
    signs = {1 if coefficient.numerator > 0 else -1 for _, coefficient in number.terms}
    if len(signs) == 1:
        return signs.pop()
    bits = 32
    while True:
        low, high = _scaled_bounds(number, bits)
        if low > 0:
            return 1
        if high < 0:
            return -1
        bits *= 2


def floor(number: Number | int) -> int:
    """Return the greatest whole number not above the number, decided exactly.

    >>> floor(square_root(2) * 10), ceiling(square_root(2) * 10)
    (14, 15)
    """
    if not isinstance(number, Surd):
        return Fraction(number).__floor__()
    low, _ = _scaled_bounds(number, 8)
    guess = low >> 8
    while number >= guess + 1:
        guess += 1
    return guess


def ceiling(number: Number | int) -> int:
    """Return the least whole number not below the number, decided exactly."""
    return -floor(-number)


def nearest(number: Number | int) -> int:
    """Return the nearest whole number; exactly halfway goes up."""
    return floor(number + Fraction(1, 2))


def to_float(number: Number | int) -> float:
    """Return the nearest float. Only for coordinates that are written to a picture or a page."""
    return float(number)


def _scaled_bounds(number: Surd, bits: int) -> tuple[int, int]:
    """Return whole numbers that enclose number × 2^bits."""
    low = high = 0
    for radicand, coefficient in number.terms:
        above, below = coefficient.numerator, coefficient.denominator
        root = isqrt((above * above * radicand << (2 * bits)) // (below * below))
        if above > 0:
            low, high = low + root, high + root + 1
        else:
            low, high = low - root - 1, high - root
    return low, high


def _terms_of(number: Number | int) -> tuple[tuple[int, Fraction], ...]:
    """Return the terms of any number; none for zero."""
    if isinstance(number, Surd):
        return number.terms
    return ((1, number if isinstance(number, Fraction) else Fraction(number)),) if number else ()


def _sum_of(one: tuple[tuple[int, Fraction], ...], other: tuple[tuple[int, Fraction], ...]) -> Number:
    """Return the sum of two numbers whose radicands rise, by laying one beside the other."""
    kept: list[tuple[int, Fraction]] = []
    first = second = 0
    while first < len(one) and second < len(other):
        term, next_term = one[first], other[second]
        if term[0] == next_term[0]:
            coefficient = term[1] + next_term[1]
            if coefficient:
                kept.append((term[0], coefficient))
            first, second = first + 1, second + 1
        elif term[0] < next_term[0]:
            kept.append(term)
            first += 1
        else:
            kept.append(next_term)
            second += 1
    return _number_of((*kept, *one[first:], *other[second:]))


def _from_terms(terms: Iterable[tuple[int, Fraction]]) -> Number:
    sums: dict[int, Fraction] = {}
    for radicand, coefficient in terms:
        sums[radicand] = sums[radicand] + coefficient if radicand in sums else coefficient
    return _number_of(tuple((radicand, sums[radicand]) for radicand in sorted(sums) if sums[radicand]))


def _number_of(kept: tuple[tuple[int, Fraction], ...]) -> Number:
    if not kept:
        return Fraction(0)
    if len(kept) == 1 and kept[0][0] == 1:
        return kept[0][1]
    return Surd(kept)


@lru_cache(maxsize=4096)
def _square_free(value: int) -> tuple[int, int]:
    """Return (outside, inside) with value = outside² × inside and inside square-free."""
    outside, inside, factor = 1, value, 2
    while factor * factor <= inside:
        while inside % (factor * factor) == 0:
            inside //= factor * factor
            outside *= factor
        factor += 1
    return outside, inside


def _smallest_prime(value: int) -> int:
    factor = 2
    while factor * factor <= value:
        if value % factor == 0:
            return factor
        factor += 1
    return value


def _inverse(number: Surd) -> Number:
    """Return 1 / number, removing one prime from under the roots at a time: 1/(a + b√p) = (a − b√p)/(a² − p b²)."""
    prime = _smallest_prime(max(radicand for radicand, _ in number.terms))
    without = _from_terms((radicand, c) for radicand, c in number.terms if radicand % prime)
    beside = _from_terms((radicand // prime, c) for radicand, c in number.terms if radicand % prime == 0)
    conjugate = without - beside * square_root(prime)
    norm = without * without - beside * beside * prime
    return conjugate * (_inverse(norm) if isinstance(norm, Surd) else Fraction(1) / norm)
