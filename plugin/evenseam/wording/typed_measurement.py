"""Finds measurements that were typed by hand into a text, and leaves counts, needles, dates and names alone."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.wording.measurement_patterns import (
    BARE_FRACTION,
    COUNTED,
    DISTANCE,
    END_OF_SENTENCE,
    IN_IS_A_PREPOSITION,
    IN_WORDS,
    NUMBER_WORDS,
    PAIR,
    PART_WORDS,
    SHARE,
    STITCH,
    UNITS,
    VULGAR,
    WITH_UNIT,
)


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
    for match in WITH_UNIT.finditer(text):
        if _is_measurement(text, match):
            yield _typed(match)
    for match in IN_WORDS.finditer(text):
        yield _typed(match)
    for match in PAIR.finditer(text):
        if not COUNTED.match(text, match.end()):
            yield _typed(match)
    for match in BARE_FRACTION.finditer(text):
        if not SHARE.match(text, match.end()):
            yield _typed(match)


def _is_measurement(text: str, match: re.Match[str]) -> bool:
    unit = match["unit"].lower()
    if unit == "in":
        is_whole = match["number"].isdigit()
        after = text[match.end() :].lstrip()
        # A name follows: 4 in Fog.
        return not (is_whole and (IN_IS_A_PREPOSITION.match(text, match.end()) or after[:1].isupper()))
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
    before = END_OF_SENTENCE.split(before)[-1]
    after = END_OF_SENTENCE.split(after)[0]
    return bool(STITCH.search(before) or STITCH.search(after)) and not DISTANCE.match(after)


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
        (unit for unit, pattern in UNITS.items() if unit_text and re.fullmatch(pattern, unit_text, re.IGNORECASE)),
        None,
    )
    return Typed(match.start(), match.end(), " ".join(match[0].split()), _value(match["number"]), unit)


def _value(text: str) -> Fraction | None:
    """Return the value of a number in digits, or of the simplest numbers in words; None for anything else."""
    cleaned = " ".join(text.lower().replace("⁄", "/").replace("-", " ").replace("&", " ").replace(" and ", " ").split())
    for sign, fraction in VULGAR.items():
        cleaned = cleaned.replace(sign, f" {fraction}").strip()
    total, last = Fraction(0), Fraction(0)
    for word in cleaned.split():
        part = PART_WORDS.get(word) or PART_WORDS.get(word.rstrip("s"))
        if word in ("a", "an", "of"):
            last = Fraction(0)
        elif part is not None:
            # Three quarters are three times a quarter; three and a half are three and one half.
            total += last * part - last if last else part
            last = Fraction(0)
        elif (number := _in_digits(word) or NUMBER_WORDS.get(word)) is not None:
            total, last = total + number, number
        else:
            return None
    return total or None


def _in_digits(word: str) -> Fraction | None:
    if re.fullmatch(r"\d{1,9}(?:[.,]\d{1,9})?", word, re.ASCII):
        return Fraction(word.replace(",", "."))
    parts = re.fullmatch(r"(\d{1,9})/(\d{1,9})", word, re.ASCII)
    return Fraction(int(parts[1]), int(parts[2])) if parts and int(parts[2]) else None
