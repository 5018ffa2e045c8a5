"""Finds measurements that were typed by hand into a text, and leaves counts, needles, dates and names alone."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit

_VULGAR = "½¼¾⅛⅜⅝⅞⅓⅔"
_FRACTIONS = {
    "½": Fraction(1, 2), "¼": Fraction(1, 4), "¾": Fraction(3, 4), "⅛": Fraction(1, 8), "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8), "⅞": Fraction(7, 8), "⅓": Fraction(1, 3), "⅔": Fraction(2, 3),
}  # fmt: skip
_SMALL = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"]
_TENS = {"thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "hundred": 100}
_WORD_VALUES = {
    **{word: Fraction(value) for value, word in enumerate(_SMALL)},
    **{w: Fraction(v) for w, v in _TENS.items()},
}
_PARTS = {"half": Fraction(1, 2), "third": Fraction(1, 3), "quarter": Fraction(1, 4), "eighth": Fraction(1, 8), "sixteenth": Fraction(1, 16)}  # fmt: skip

_GAP = r"(?:[ \t\u00a0\u2009\u202f]|\n(?!\s*\n))"
_DIGITS = rf"(?:\d+(?:{_GAP}+|-|[ ]?and[ ]|{_GAP}*&{_GAP}*)\d+[/⁄]\d+|\d+[/⁄]\d+|\d+{_GAP}?[{_VULGAR}]|[{_VULGAR}]|\d+[.,]\d+|\d+)"
_SMALL_WORD = "|".join(sorted((*_WORD_VALUES, *()), key=len, reverse=True))
_PART_WORD = "|".join(f"{part}s?" for part in _PARTS)
_SPELLED = (
    rf"(?:(?:(?:{_SMALL_WORD})(?:[ -](?:{_SMALL_WORD}))?(?:[ ]and[ ]an?[ ](?:{_PART_WORD})|[ ]and[ ](?:{_SMALL_WORD})[ -](?:{_PART_WORD}))?)"
    rf"|(?:(?:an?|one|three|five|seven)[ -])?(?:{_PART_WORD})(?:[ ]of)?(?:[ ]an?)?|half[ ]an?|an?|a[ ]couple[ ]of|a[ ]few|several)"
)
_UNITS = {
    Unit.INCH: r"inch(?:es)?|ins?\b\.?|″|''|\"|”",
    Unit.CENTIMETRE: r"cms?\b|centimet(?:re|er)s?",
    Unit.METRE: r"m\b|met(?:re|er)s?",
    Unit.YARD: r"yds?\b\.?|yards?",
}
_OTHER_UNITS = r"mm\b|millimet(?:re|er)s?|feet|foot|ft\b\.?"
_LONG_UNITS = r"inch(?:es)?|centimet(?:re|er)s?|millimet(?:re|er)s?|met(?:re|er)s?|yards?|feet"
_UNIT = "|".join((*_UNITS.values(), _OTHER_UNITS))
_BETWEEN = rf"(?:{_GAP}*-?{_GAP}*)"

_WITH_UNIT = re.compile(rf"(?<![\w/.,])(?P<number>{_DIGITS}){_BETWEEN}(?P<unit>{_UNIT})(?![\w])", re.IGNORECASE)
_IN_WORDS = re.compile(rf"\b(?P<number>{_SPELLED})[ \n-]+(?P<unit>{_LONG_UNITS})\b", re.IGNORECASE)
_PAIR = re.compile(
    rf"(?<![\w/.,-])(?P<number>{_DIGITS}){_GAP}*(?:x|×|by){_GAP}*(?P<second>{_DIGITS})(?![\w/])", re.IGNORECASE
)
_BARE_FRACTION = re.compile(
    rf"(?<![\w/.,-])(?P<number>(?:\d+(?:{_GAP}+|-))?[1-9]\d?[/⁄](?:2|3|4|8|16|32)|\d*{_GAP}?[{_VULGAR}])(?![\w/⁄])"
)

_COUNTED_GRID = re.compile(
    rf"{_GAP}*(?:-{_GAP}*)?(?:blocks?|rows?|columns?|grids?|layouts?|settings?|patch(?:es)?|units?|squares?)\b",
    re.IGNORECASE,
)
_SHARE = re.compile(rf"{_GAP}*(?:of\b|to{_GAP}\d)", re.IGNORECASE)
_IN_AS_PREPOSITION = re.compile(
    rf"{_GAP}+(?:a|an|the|each|every|all|any|both|this|that|these|those|your|its|their|his|her|my|our|one|two|three|four|"
    r"order|turn|total|front|place|pairs?|rows?|half|thirds?|quarters?|fabric|(?:[a-z]+ing)|which|stock|and|or|step|section|"
    r"block|row|column|contrast|color|colour|colou?rs|reverse|sequence|hand|use|between|case|addition)\b",
    re.IGNORECASE,
)
_STITCH = re.compile(r"\bstitch(?:es)?\b", re.IGNORECASE)
_DISTANCE = re.compile(rf"{_GAP}*(?:away|from|inside|outside|apart|wide|past|beyond|seams?|in from)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Typed:
    """A measurement somebody typed: where it stands in the text, and its value where it can be told."""

    start: int
    end: int
    text: str
    value: Fraction | None
    unit: Unit | None


def typed_measurements(text: str) -> tuple[Typed, ...]:
    """Return the measurements in a text in order, each stretch once.

    Counts (20 blocks), needles (90/14), stitch lengths in millimetres, dates, times, temperatures and the names of
    precut cloth (fat quarter) are none.
    """
    found: list[Typed] = []
    for typed in sorted(_candidates(text), key=lambda typed: (typed.start, -typed.end)):
        if not found or typed.start >= found[-1].end:
            found.append(typed)
    return tuple(found)


def _candidates(text: str) -> Iterator[Typed]:
    for match in _WITH_UNIT.finditer(text):
        if _is_measurement(text, match):
            yield _typed(match)
    for match in _IN_WORDS.finditer(text):
        yield _typed(match)
    for match in _PAIR.finditer(text):
        if not _COUNTED_GRID.match(text, match.end()):
            yield _typed(match)
    for match in _BARE_FRACTION.finditer(text):
        if not _SHARE.match(text, match.end()):
            yield _typed(match)


def _is_measurement(text: str, match: re.Match[str]) -> bool:
    unit = match["unit"].lower()
    if unit == "in":
        is_whole = match["number"].isdigit()
        after = text[match.end() :].lstrip()
        # A name follows: 4 in Fog.
        return not (is_whole and (_IN_AS_PREPOSITION.match(text, match.end()) or after[:1].isupper()))
    if unit in ("mm", "millimetre", "millimeter", "millimetres", "millimeters"):
        return not _is_about_stitches(text, match)
    if unit in ('"', "”"):
        return not _closes_a_quotation(text, match.start("unit"), unit)
    if unit == "m":
        return match["unit"] == "m"
    return True


def _is_about_stitches(text: str, match: re.Match[str]) -> bool:
    """Tell whether a figure in millimetres is a stitch length: stitches are spoken of beside it, and no distance."""
    before, after = text[max(0, match.start() - 45) : match.start()], text[match.end() : match.end() + 25]
    before = re.split(r"[.;!?]\s|\n\s*\n", before)[-1]
    after = re.split(r"[.;!?]\s|\n\s*\n", after)[0]
    return bool(_STITCH.search(before) or _STITCH.search(after)) and not _DISTANCE.match(after)


def _closes_a_quotation(text: str, position: int, sign: str) -> bool:
    paragraph = text[max(text.rfind("\n\n", 0, position), 0) : position]
    if sign == "”":
        return paragraph.count("“") > paragraph.count("”")
    opened = len(re.findall(r'(?:^|[\s(\[])"(?=\S)', paragraph))
    closed = len(re.findall(r'(?<=[^\s\d])"', paragraph)) - len(re.findall(r'(?<=[(\[])"(?=\S)', paragraph))
    return opened > closed


def _typed(match: re.Match[str]) -> Typed:
    groups = match.groupdict()
    unit_text = (groups.get("unit") or "").lower()
    unit = next(
        (unit for unit, pattern in _UNITS.items() if unit_text and re.fullmatch(pattern, unit_text, re.IGNORECASE)),
        None,
    )
    return Typed(match.start(), match.end(), " ".join(match[0].split()), _value(match["number"]), unit)


def _value(text: str) -> Fraction | None:
    """Return the value of a number in digits, or of the simplest numbers in words; None for anything else."""
    cleaned = " ".join(text.lower().replace("⁄", "/").replace("-", " ").replace("&", " ").replace(" and ", " ").split())
    for sign, fraction in _FRACTIONS.items():
        cleaned = cleaned.replace(sign, f" {fraction}").strip()
    total, last = Fraction(0), Fraction(0)
    for word in cleaned.split():
        part = _PARTS.get(word) or _PARTS.get(word.rstrip("s"))
        if word in ("a", "an", "of"):
            last = Fraction(0)
        elif part is not None:
            # Three quarters are three times a quarter; three and a half are three and one half.
            total += last * part - last if last else part
            last = Fraction(0)
        elif (number := _in_digits(word) or _WORD_VALUES.get(word)) is not None:
            total, last = total + number, number
        else:
            return None
    return total or None


def _in_digits(word: str) -> Fraction | None:
    if re.fullmatch(r"\d{1,9}(?:[.,]\d{1,9})?", word, re.ASCII):
        return Fraction(word.replace(",", "."))
    parts = re.fullmatch(r"(\d{1,9})/(\d{1,9})", word, re.ASCII)
    return Fraction(int(parts[1]), int(parts[2])) if parts and int(parts[2]) else None
