"""Numbers and lengths of a drawing, exactly, and within bounds that keep a machine from counting for ever."""

from __future__ import annotations

import re
from fractions import Fraction

LARGEST = Fraction(10**9)
MOST_DIGITS = 40
LARGEST_EXPONENT = 12
MOST_NUMBERS = 10_000

# CSS Values and Units, absolute lengths (W3C): 1in = 2.54cm = 96px, 1pt = 1/72in, 1pc = 1/6in, 1Q = 1/40cm.
PIXELS = {
    "": Fraction(1),
    "px": Fraction(1),
    "in": Fraction(96),
    "cm": Fraction(9600, 254),
    "mm": Fraction(960, 254),
    "q": Fraction(240, 254),
    "pt": Fraction(96, 72),
    "pc": Fraction(96, 6),
}
NUMBER = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_NUMBER = re.compile(NUMBER, re.ASCII)
_SEPARATOR = re.compile(r"\s*,?\s*")
_LENGTH = re.compile(rf"({NUMBER})\s*([a-zA-Z%]*)", re.ASCII)


def read_number(text: str) -> Fraction | None:
    """Return a number written in full, or None; also for one that is far too large or too finely written.

    >>> read_number("1.5e1"), read_number(".25"), read_number("1e999"), read_number("one")
    (Fraction(15, 1), Fraction(1, 4), None, None)
    """
    if not _NUMBER.fullmatch(text) or len(text) > MOST_DIGITS:
        return None
    _, _, exponent = text.lower().partition("e")
    if exponent and abs(int(exponent)) > LARGEST_EXPONENT:
        return None
    value = Fraction(text)
    return value if abs(value) <= LARGEST else None


def read_numbers(text: str) -> list[Fraction] | None:
    """Return a list of numbers parted by blanks or commas, or None when something else stands among them.

    >>> read_numbers("0,0 4-1.5.5")
    [Fraction(0, 1), Fraction(0, 1), Fraction(4, 1), Fraction(-3, 2), Fraction(1, 2)]
    """
    numbers: list[Fraction] = []
    text = text.strip()
    at = 0
    while at < len(text):
        found = _NUMBER.match(text, at)
        value = read_number(found[0]) if found else None
        if found is None or value is None or len(numbers) == MOST_NUMBERS:
            return None
        numbers.append(value)
        separator = _SEPARATOR.match(text, found.end())
        at = separator.end() if separator else found.end()
        if at == len(text) and text.endswith(","):
            return None
    return numbers


def read_length(text: str, whole: Fraction | None = None) -> Fraction | None:
    """Return a length in pixels of CSS, 96 to the inch; a percentage is of `whole`.

    >>> read_length("1in"), read_length("2.54cm"), read_length("6pt"), read_length("50%", Fraction(12))
    (Fraction(96, 1), Fraction(96, 1), Fraction(8, 1), Fraction(6, 1))
    """
    found = _LENGTH.fullmatch(text.strip())
    value = read_number(found[1]) if found else None
    if found is None or value is None:
        return None
    unit = found[2].lower()
    if unit == "%":
        return None if whole is None else value * whole / 100
    factor = PIXELS.get(unit)
    return None if factor is None else value * factor
