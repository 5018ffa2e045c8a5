"""Lengths and finished sizes: from the text an author wrote to an exact number in the right unit."""

from __future__ import annotations

import re
from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, LengthError, Unit, format_length, nearest, parse_length
from evenseam.problems import Place, Report
from evenseam.reading import codes
from evenseam.reading.kinds import Length
from evenseam.reading.leaves import scalar_of, shown
from evenseam.reading.tree import Node, Scalar

LARGEST_LENGTH = {Unit.INCH: Fraction(240), Unit.CENTIMETRE: Fraction(600)}
"""Far beyond any bed; a longer length is a slip."""
LONGEST_PAIR = 80
"""Characters of a width and a height."""

_SIZE = re.compile(r"\s*(?P<across>[^x×]*[^x×\s])\s*[x×]\s*(?P<down>[^x×]*[^x×\s])\s*")
_WORDS_FOR_UNIT = {Unit.INCH: "inches", Unit.CENTIMETRE: "centimetres"}


def read_length(node: Node, kind: Length, unit: Unit, report: Report) -> Fraction | None:
    """Return a length in `unit`, or report what is wrong with it."""
    scalar = scalar_of(node, "a length", report, codes.NOT_A_LENGTH)
    return None if scalar is None else length_in(scalar.text, scalar.place, kind, unit, report)


def length_in(text: str, place: Place, kind: Length, unit: Unit, report: Report) -> Fraction | None:
    """Return the length a text says, in `unit`, or report what is wrong with it."""
    stripped = text.strip()
    is_negative = stripped[:1] in ("-", "−")
    if stripped in ("", "none"):
        report.add(codes.NOT_A_LENGTH, place, "there is no length here", "write 2, 2.5, 5/8 or 1 1/4")
        return None
    try:
        parsed = parse_length(stripped[1:] if is_negative else stripped)
    except LengthError as error:
        message, _, way = str(error).partition("; ")
        report.add(codes.NOT_A_LENGTH, place, message, way or "write 2, 2.5, 5/8 or 1 1/4")
        return None
    if parsed.unit is not None and parsed.unit is not unit:
        _report_unit(stripped, place, parsed.value, parsed.unit, unit, report)
        return None
    value = -parsed.value if is_negative else parsed.value
    if not _is_sensible(value, stripped, place, kind, unit, report):
        return None
    return value


def read_stated(node: Node, unit: Unit, report: Report) -> tuple[Fraction, Unit] | None:
    """Return a figure of an older version, and the unit it was written in, else `unit`."""
    scalar = scalar_of(node, "a length or a number", report, codes.NOT_A_LENGTH)
    if scalar is None:
        return None
    text = scalar.text.strip()
    try:
        parsed = parse_length(text.lstrip("-−"))
    except LengthError as error:
        message = str(error).partition("; ")[0]
        report.add(
            codes.NOT_A_LENGTH,
            scalar.place,
            message,
            "write the figure as it was printed: 26, 26 1/2, 66.5 cm, 5/8 yd",
        )
        return None
    value = -parsed.value if text[:1] in ("-", "−") else parsed.value
    is_fine = abs(value) <= LARGEST_LENGTH[Unit.CENTIMETRE] * 100
    if not is_fine:
        report.add(
            codes.SIZE_TOO_LARGE,
            scalar.place,
            f"{shown(text)} is larger than any figure of a quilt",
            "look for a missing point or space",
        )
    return (value, parsed.unit or unit) if is_fine else None


def read_finished_size(
    node: Node, unit: Unit, report: Report
) -> tuple[tuple[Fraction, Place], tuple[Fraction, Place]] | None:
    """Return width and height of "6 x 9" with their places; one length alone is a square."""
    scalar = scalar_of(node, "a size such as 6 x 9", report, codes.NOT_A_PAIR)
    if scalar is None:
        return None
    sides_written = halves(scalar, report)
    if sides_written is None:
        return None
    sides: list[tuple[Fraction, Place]] = []
    unit_text = re.search(r"[a-z\"″]+\s*$", sides_written[1][0])
    for text, place in sides_written:
        has_unit = re.search(r"[a-z\"″]\s*$", text)
        # "6 x 9 cm" says centimetres for both.
        full = text if has_unit or unit_text is None else f"{text} {unit_text[0]}"
        value = length_in(full, place, Length(), unit, report)
        if value is not None:
            sides.append((value, place))
    return (sides[0], sides[1]) if len(sides) == 2 else None


def halves(scalar: Scalar, report: Report) -> tuple[tuple[str, Place], tuple[str, Place]] | None:
    """Return the two sides of "6 x 9" with their places; one side alone stands for both."""
    text = scalar.text.strip()
    is_short = len(scalar.text) <= LONGEST_PAIR
    match = _SIZE.fullmatch(scalar.text) if is_short else None
    if match:
        across, down = match.span("across"), match.span("down")
        return (match["across"], scalar.part(*across)), (match["down"], scalar.part(*down))
    if text and is_short and not re.search("[x×]", text):
        return (text, scalar.place), (text, scalar.place)
    report.add(
        codes.NOT_A_PAIR,
        scalar.place,
        f"{shown(text)} is not a width and a height",
        "write it as 6 x 9: across first, then down",
    )
    return None


def _is_sensible(value: Fraction, text: str, place: Place, kind: Length, unit: Unit, report: Report) -> bool:
    if value == 0 and not kind.may_be_zero:
        report.add(codes.SIZE_NOT_POSITIVE, place, "the length is 0", "write a length above 0, such as 2 1/2")
        return False
    if value < 0 and not kind.may_be_negative:
        report.add(codes.SIZE_NOT_POSITIVE, place, f"{shown(text)} is below 0", "write a length above 0, such as 2 1/2")
        return False
    largest = LARGEST_LENGTH[unit]
    if abs(value) > largest:
        message = (
            f"{format_length(value, unit)} is longer than {format_length(largest, unit)}, the most a length may be"
        )
        report.add(codes.SIZE_TOO_LARGE, place, message, "look for a missing point or space: 2 1/2, not 21/2")
        return False
    if value.denominator > 1000:
        message = f"{shown(text)} is on no ruler"
        report.add(
            codes.NOT_A_LENGTH,
            place,
            message,
            "write it with halves, quarters, eighths or sixteenths, or with at most three decimals",
        )
        return False
    return True


def _report_unit(text: str, place: Place, value: Fraction, written: Unit, unit: Unit, report: Report) -> None:
    words = _WORDS_FOR_UNIT[unit]
    message = f"{shown(text)} stands in a part of the pattern that is in {words}"
    if written is Unit.CENTIMETRE:
        eighths = Fraction(nearest(value / CENTIMETRES_PER_INCH * 8), 8)
        about = format_length(eighths, Unit.INCH)
        hint = f"write it in inches: about {about}; figures of the centimetre edition go under `editions`"
    elif written is Unit.INCH:
        tenths = Fraction(nearest(value * CENTIMETRES_PER_INCH * 10), 10)
        about = format_length(tenths, Unit.CENTIMETRE)
        hint = f"write it in centimetres: about {about}; figures of the inch edition go under `editions`"
    else:
        per_unit = Fraction(36) if written is Unit.YARD else Fraction(100)
        native = Unit.INCH if written is Unit.YARD else Unit.CENTIMETRE
        hint = f"write it in {words}" + (f": {format_length(value * per_unit, unit)}" if native is unit else "")
    report.add(codes.WRONG_UNIT, place, message, hint)
