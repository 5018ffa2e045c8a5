"""The shapes in which people write measurements in English: numbers in digits and in words, units, and what is none."""

from __future__ import annotations

import re
from fractions import Fraction

from evenseam.exact import Unit

VULGAR = {
    "½": Fraction(1, 2), "¼": Fraction(1, 4), "¾": Fraction(3, 4), "⅛": Fraction(1, 8), "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8), "⅞": Fraction(7, 8), "⅓": Fraction(1, 3), "⅔": Fraction(2, 3),
}  # fmt: skip
_COUNTING = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen "
    "eighteen nineteen twenty"
)
_TENS = {"thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "hundred": 100}
NUMBER_WORDS = {word: Fraction(value) for value, word in enumerate(_COUNTING.split())} | {
    word: Fraction(value) for word, value in _TENS.items()
}
PART_WORDS = {
    "half": Fraction(1, 2), "third": Fraction(1, 3), "quarter": Fraction(1, 4), "eighth": Fraction(1, 8),
    "sixteenth": Fraction(1, 16),
}  # fmt: skip

UNITS = {
    Unit.INCH: r"inch(?:es)?|ins?\b\.?|″|''|\"|”",
    Unit.CENTIMETRE: r"cms?\b|centimet(?:re|er)s?",
    Unit.METRE: r"m\b|met(?:re|er)s?",
    Unit.YARD: r"yds?\b\.?|yards?",
}
_OTHER_UNITS = r"mm\b|millimet(?:re|er)s?|feet|foot|ft\b\.?"
_UNITS_IN_WORDS = r"inch(?:es)?|centimet(?:re|er)s?|millimet(?:re|er)s?|met(?:re|er)s?|yards?|feet"
_ANY_UNIT = "|".join((*UNITS.values(), _OTHER_UNITS))

_GAP = r"(?:[ \t\u00a0\u2009\u202f]|\n(?!\s*\n))"
"""A space, or the end of a line that is not the end of a paragraph."""
_SIGNS = "".join(VULGAR)
_DIGITS = (
    "(?:"
    rf"\d+(?:{_GAP}+|-|[ ]?and[ ]|{_GAP}*&{_GAP}*)\d+[/⁄]\d+"  # 2 1/2, 2-1/2, 2 and 1/2
    rf"|\d+[/⁄]\d+|\d+{_GAP}?[{_SIGNS}]|[{_SIGNS}]"  # 1/2, 2½, ½
    r"|\d+[.,]\d+|\d+"  # 2.5, 2
    ")"
)
_NUMBER = "(?:" + "|".join(sorted(NUMBER_WORDS, key=len, reverse=True)) + ")"
_PART = "(?:" + "|".join(f"{part}s?" for part in PART_WORDS) + ")"
_WORDS = (
    "(?:"
    rf"{_NUMBER}(?:[ -]{_NUMBER})?(?:[ ]and[ ]an?[ ]{_PART}|[ ]and[ ]{_NUMBER}[ -]{_PART})?"  # two and a half
    rf"|(?:(?:an?|one|three|five|seven)[ -])?{_PART}(?:[ ]of)?(?:[ ]an?)?"  # a quarter, three quarters of an
    r"|an?|a[ ]couple[ ]of|a[ ]few|several"
    ")"
)

WITH_UNIT = re.compile(rf"(?<![\w/.,])(?P<number>{_DIGITS}){_GAP}*-?{_GAP}*(?P<unit>{_ANY_UNIT})(?!\w)", re.IGNORECASE)
IN_WORDS = re.compile(rf"\b(?P<number>{_WORDS})[ \n-]+(?P<unit>{_UNITS_IN_WORDS})\b", re.IGNORECASE)
PAIR = re.compile(
    rf"(?<![\w/.,-])(?P<number>{_DIGITS}){_GAP}*(?:x|×|by){_GAP}*(?P<second>{_DIGITS})(?![\w/])", re.IGNORECASE
)
"""12 x 15, with or without a unit behind it."""
BARE_FRACTION = re.compile(
    r"(?<![\w/.,-])(?P<number>"
    rf"(?:\d+(?:{_GAP}+|-))?[1-9]\d?[/⁄](?:2|3|4|8|16|32)|\d*{_GAP}?[{_SIGNS}]"
    r")(?![\w/⁄])"
)
"""A fraction of an inch without its unit; needles (90/14) and dates have other numbers below the line."""

COUNTED = re.compile(
    rf"{_GAP}*(?:-{_GAP}*)?(?:blocks?|rows?|columns?|grids?|layouts?|settings?|patch(?:es)?|units?|squares?)\b",
    re.IGNORECASE,
)
"""Behind a pair: 3 x 4 blocks is a count."""
SHARE = re.compile(rf"{_GAP}*(?:of\b|to{_GAP}\d)", re.IGNORECASE)
"""Behind a fraction: 1/2 of the patches is a share."""
_AFTER_IN = (
    "a an the each every all any both this that these those your its their his her my our one two three four order "
    "turn total front place pair pairs row rows half third thirds quarter quarters fabric which stock and or step "
    "section block column contrast color colour colors colours reverse sequence hand use between case addition"
)
IN_IS_A_PREPOSITION = re.compile(rf"{_GAP}+(?:{_AFTER_IN.replace(' ', '|')}|[a-z]+ing)\b", re.IGNORECASE)
"""Behind `3 in`: 3 in a row is no measurement."""
STITCH = re.compile(r"\bstitch(?:es)?\b", re.IGNORECASE)
DISTANCE = re.compile(rf"{_GAP}*(?:away|from|inside|outside|apart|wide|past|beyond|seams?|in from)\b", re.IGNORECASE)
"""Behind millimetres: a distance, even where stitches are spoken of."""
END_OF_SENTENCE = re.compile(r"[.;!?]\s|\n\s*\n")
