"""Lengths as makers write and read them: 7 3/8 in, 26.5 cm, and never 7.375."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from evenseam.exact.surd import Number, Surd, nearest
from evenseam.exact.unit import Unit

LONGEST_TEXT = 40
_VULGAR = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
}  # fmt: skip
_UNITS = {
    '"': Unit.INCH, "″": Unit.INCH, "in": Unit.INCH, "inch": Unit.INCH, "inches": Unit.INCH, "cm": Unit.CENTIMETRE,
    "centimetre": Unit.CENTIMETRE, "centimetres": Unit.CENTIMETRE, "centimeters": Unit.CENTIMETRE,
    "yd": Unit.YARD, "yard": Unit.YARD, "yards": Unit.YARD, "m": Unit.METRE, "metre": Unit.METRE, "metres": Unit.METRE,
}  # fmt: skip
_SHAPE = re.compile(
    r"(?:(?P<whole>\d{1,9})[ -]+)?(?P<top>\d{1,9})/(?P<bottom>\d{1,9})|(?P<decimal>\d{1,9}(?:\.\d{1,9})?)", re.ASCII
)
_TEXT = re.compile(r"(?P<number>[0-9][0-9 ./-]*?)\s*(?P<unit>[a-z]+|\"|″)?", re.ASCII)


class LengthError(ValueError):
    """A text that is not a length; the message says what to write."""


@dataclass(frozen=True, slots=True)
class ParsedLength:
    """A length as it was written: the exact number, and the unit if one was written."""

    value: Fraction
    unit: Unit | None


def parse_length(text: str) -> ParsedLength:
    """Read a length such as 2, 2.5, 5/8, 1 1/4, 1-1/4, 1½, 12", 12 in or 26.5 cm.

    >>> parse_length("1 1/4 in")
    ParsedLength(value=Fraction(5, 4), unit=<Unit.INCH: 'in'>)

    Raises LengthError for anything else: negative numbers, exponents, zero below the line, texts over 40 characters.
    """
    cleaned = text.strip().lower()
    if len(cleaned) > LONGEST_TEXT:
        raise LengthError(f"{text[:LONGEST_TEXT]!r}… is not a length; write 2, 2.5, 5/8 or 1 1/4")
    for sign, spelled in _VULGAR.items():
        cleaned = cleaned.replace(sign, f" {spelled}").strip()
    outer = _TEXT.fullmatch(cleaned)
    inner = _SHAPE.fullmatch(outer["number"].strip()) if outer else None
    if outer is None or inner is None:
        raise LengthError(f"{text!r} is not a length; write 2, 2.5, 5/8 or 1 1/4")
    unit_text = outer["unit"]
    if unit_text is not None and unit_text not in _UNITS:
        raise LengthError(f"{unit_text!r} is not a unit known here; write in or cm")
    if inner["decimal"] is not None:
        value = Fraction(inner["decimal"])
    elif int(inner["bottom"]) == 0:
        raise LengthError(f"{text!r} has zero below the line")
    else:
        value = int(inner["whole"] or 0) + Fraction(int(inner["top"]), int(inner["bottom"]))
    return ParsedLength(value, _UNITS[unit_text] if unit_text else None)


@lru_cache(maxsize=4096)
def format_number(value: Number | int, unit: Unit) -> str:
    """Print a figure without its unit, as a maker reads it in that unit.

    Inches and yards are printed as whole numbers and fractions, metric figures as decimals. A figure that such a
    text cannot hold exactly, or an inch that no ruler divides so, is printed to the nearest 1/16 in or 0.1 cm after the
    word "about".

    >>> format_number(Fraction(59, 8), Unit.INCH), format_number(Fraction(53, 2), Unit.CENTIMETRE)
    ('7 3/8', '26.5')
    >>> format_number(Fraction(35, 6), Unit.INCH), format_number(Fraction(16, 3), Unit.CENTIMETRE)
    ('about 5 13/16', 'about 5.3')
    """
    if unit in (Unit.CENTIMETRE, Unit.METRE, Unit.KILOGRAM):
        return _decimal(value, 100 if unit is Unit.METRE else 10)
    if isinstance(value, Surd) or not _has_mark(Fraction(value), unit):
        return "about " + _mixed(Fraction(nearest(value * 16), 16))
    return _mixed(Fraction(value))


def format_length(value: Number | int, unit: Unit) -> str:
    """Print a figure with its unit: 7 3/8 in, 26.5 cm, 3/8 yd, 0.5 m; a count has none."""
    return (
        f"{format_number(value, unit)} {unit.symbol}".rstrip()
        if unit is not Unit.DEGREE
        else f"{format_number(value, unit)}°"
    )


def _has_mark(value: Fraction, unit: Unit) -> bool:
    """Tell whether a fraction can be found on a ruler: inches are halved again and again, yards not only."""
    below = value.denominator
    return below <= 64 and (unit is not Unit.INCH or below & (below - 1) == 0)


def _mixed(value: Fraction) -> str:
    if value < 0:
        return "−" + _mixed(-value)
    whole, rest = divmod(value, 1)
    if rest == 0:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


def _decimal(value: Number | int, marks: int) -> str:
    """Print hundredths where they are exact, or else the nearest of so many marks to the unit."""
    hundredths = nearest(value * 100)
    if isinstance(value, Surd) or Fraction(hundredths, 100) != value:
        return "about " + _hundredths(100 // marks * nearest(value * marks))
    return _hundredths(hundredths)


def _hundredths(number: int) -> str:
    minus = "−" if number < 0 else ""
    whole, rest = divmod(abs(number), 100)
    return minus + f"{whole}.{rest:02d}".rstrip("0").rstrip(".")
