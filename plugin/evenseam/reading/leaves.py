"""Single values: from the text an author wrote to a number, a choice, a colour; or a problem with its place."""

from __future__ import annotations

import datetime
import difflib
import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import CENTIMETRES_PER_INCH, LengthError, Unit, format_length, nearest, parse_length
from evenseam.geometry import Point
from evenseam.problems import Code, Place, Report
from evenseam.reading import codes
from evenseam.reading.kinds import Count, Length, Markdown, Words
from evenseam.reading.tree import Listing, Node, Scalar

FORMAT_NUMBER = "1"
LARGEST_LENGTH = {Unit.INCH: Fraction(240), Unit.CENTIMETRE: Fraction(600)}
"""Far beyond any bed; a longer length is a slip."""
LARGEST_GRID = 1000
MOST_CORNERS = 24
FINEST_GRID = 64
"""The largest number below the line in a grid coordinate."""

_NUMBER = re.compile(r"-?(?:\d{1,4}-)?\d{1,4}/\d{1,3}|-?\d{1,4}(?:\.\d{1,3})?", re.ASCII)
_COLOUR = re.compile(r"#[0-9a-fA-F]{6}", re.ASCII)
_SIZE = re.compile(r"\s*(?P<across>[^x×]*[^x×\s])\s*[x×]\s*(?P<down>[^x×]*[^x×\s])\s*")
_PLACEMENT = re.compile(r"(?P<block>.+?)(?: +turned +(?P<turn>\S+))?(?P<mirrored> +mirrored)?", re.DOTALL)
_WORDS_FOR_UNIT = {Unit.INCH: "inches", Unit.CENTIMETRE: "centimetres"}


@dataclass(frozen=True, slots=True)
class Placement:
    """A block's name and how it is turned."""

    block: str
    quarter_turns: int
    is_mirrored: bool
    place: Place


def scalar_of(node: Node, expected: str, report: Report, code: Code = codes.NOT_A_TEXT) -> Scalar | None:
    """Return a single value, or report a list or mapping that stands in its place."""
    if isinstance(node, Scalar):
        return node
    found = "a list" if isinstance(node, Listing) else "a mapping"
    report.add(
        code,
        _first_line(node.place),
        f"here stands {found}; expected is {expected}",
        "text with , : { } [ ] or # in it goes in quotes",
    )
    return None


def read_words(node: Node, kind: Words | Markdown, report: Report) -> str | None:
    """Return a text without blanks around it, or report an empty or far too long one."""
    scalar = scalar_of(node, "a text", report)
    if scalar is None:
        return None
    text = scalar.text.strip() if isinstance(kind, Words) else scalar.text
    if isinstance(kind, Words):
        text = " ".join(text.split())
    if not text.strip():
        report.add(codes.EMPTY, scalar.place, "there is no text here", "write it after the colon, or take the key out")
        return None
    if len(text) > kind.longest:
        report.add(
            codes.TEXT_TOO_LONG,
            scalar.place,
            f"the text has {len(text):,} characters; at most {kind.longest:,} fit",
            "say it in fewer words",
        )
        return None
    return text


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
        report.add(codes.NOT_A_LENGTH, place, str(error), "" if "write" in str(error) else "write 2, 2.5, 5/8 or 1 1/4")
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
        report.add(
            codes.NOT_A_LENGTH,
            scalar.place,
            str(error),
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


def read_count(node: Node, kind: Count, report: Report) -> int | None:
    """Return a whole number from 1 to the most, or report it."""
    scalar = scalar_of(node, "a whole number", report, codes.NOT_A_COUNT)
    if scalar is None:
        return None
    text = scalar.text.strip()
    if not re.fullmatch(r"\d{1,9}", text, re.ASCII) or int(text) == 0:
        report.add(codes.NOT_A_COUNT, scalar.place, f"{shown(text)} is not a whole number above 0", "write 1, 2, 3, …")
        return None
    if int(text) > kind.most:
        report.add(
            codes.TOO_MANY,
            scalar.place,
            f"{int(text)} is more than can be made; at most {kind.most}",
            "write a smaller number",
        )
        return None
    return int(text)


def read_choice(node: Node, options: Sequence[str], report: Report) -> str | None:
    """Return one of the words, or report another with the nearest of them."""
    scalar = scalar_of(node, "one of " + ", ".join(options), report, codes.UNKNOWN_CHOICE)
    if scalar is None:
        return None
    text = " ".join(scalar.text.split())
    if text in options:
        return text
    hint = did_you_mean(text, options) or "write " + either(options)
    report.add(codes.UNKNOWN_CHOICE, scalar.place, f"{shown(text)} is not one of the words known here", hint)
    return None


def read_yes_no(node: Node, report: Report) -> bool | None:
    """Return True for yes."""
    scalar = scalar_of(node, "yes or no", report, codes.UNKNOWN_CHOICE)
    if scalar is None:
        return None
    word = scalar.text.strip().lower()
    # `true` and `false` because editors that check against the schema offer them.
    if word in ("yes", "true", "no", "false"):
        return word in ("yes", "true")
    report.add(codes.UNKNOWN_CHOICE, scalar.place, f"{shown(scalar.text)} is neither yes nor no", "write yes or no")
    return None


def read_colour(node: Node, report: Report) -> str | None:
    """Return a colour as #rrggbb in small letters."""
    scalar = scalar_of(node, "a colour", report, codes.NOT_A_COLOUR)
    if scalar is None:
        return None
    if _COLOUR.fullmatch(scalar.text.strip()):
        return scalar.text.strip().lower()
    if scalar.is_plain and not scalar.text:
        message, hint = (
            "there is no colour here",
            'a colour goes in quotes: "#23465f" (after a bare # the rest of a line is a remark)',
        )
    else:
        message, hint = f"{shown(scalar.text)} is not a colour", 'write # and six digits 0-9, a-f, in quotes: "#23465f"'
    report.add(codes.NOT_A_COLOUR, scalar.place, message, hint)
    return None


def read_date(node: Node, report: Report) -> str | None:
    """Return a day as it was written, year-month-day."""
    scalar = scalar_of(node, "a date", report, codes.NOT_A_DATE)
    if scalar is None:
        return None
    text = scalar.text.strip()
    try:
        if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", text, re.ASCII):
            raise ValueError(text)
        datetime.date.fromisoformat(text)
    except ValueError:
        report.add(
            codes.NOT_A_DATE,
            scalar.place,
            f"{shown(text)} is not a day of the calendar",
            "write year-month-day: 2026-05-02",
        )
        return None
    return text


def read_finished_size(
    node: Node, unit: Unit, report: Report
) -> tuple[tuple[Fraction, Place], tuple[Fraction, Place]] | None:
    """Return width and height of "6 x 9" with their places; one length alone is a square."""
    scalar = scalar_of(node, "a size such as 6 x 9", report, codes.NOT_A_PAIR)
    if scalar is None:
        return None
    halves = _halves(scalar, report)
    if halves is None:
        return None
    sides: list[tuple[Fraction, Place]] = []
    unit_text = re.search(r"[a-z\"″]+\s*$", halves[1][0])
    for text, place in halves:
        has_unit = re.search(r"[a-z\"″]\s*$", text)
        # "6 x 9 cm" says centimetres for both.
        full = text if has_unit or unit_text is None else f"{text} {unit_text[0]}"
        value = length_in(full, place, Length(), unit, report)
        if value is not None:
            sides.append((value, place))
    return (sides[0], sides[1]) if len(sides) == 2 else None


def read_grid_size(node: Node, report: Report) -> tuple[Fraction, Fraction] | None:
    """Return the numbers of grid squares across and down."""
    scalar = scalar_of(node, "a grid such as 12 x 18", report, codes.NOT_A_PAIR)
    halves = _halves(scalar, report) if scalar else None
    if scalar is None or halves is None:
        return None
    sides: list[Fraction] = []
    for text, place in halves:
        value = _grid_number(text.strip())
        if value is None:
            report.add(
                codes.NOT_A_PAIR,
                place,
                f"{shown(text)} is not a number of grid squares",
                "write the grid as 12 x 18, without a unit",
            )
        elif value <= 0:
            report.add(codes.SIZE_NOT_POSITIVE, place, f"the grid has {text} squares", "write a number above 0")
        elif value > LARGEST_GRID:
            report.add(
                codes.SIZE_TOO_LARGE,
                place,
                f"the grid has {text} squares; at most {LARGEST_GRID}",
                "use larger squares: corners may lie between them, as 3 1/2",
            )
        else:
            sides.append(value)
    return (sides[0], sides[1]) if len(sides) == 2 else None


def read_corners(node: Node, report: Report) -> tuple[Point, ...] | None:
    """Return the points of "0,0 4,0 4,6"."""
    scalar = scalar_of(node, 'corners such as "0,0 4,0 4,6"', report, codes.NOT_A_POINT)
    if scalar is None:
        return None
    words = list(re.finditer(r"\S+", scalar.text))
    points: list[Point] = []
    if len(words) > MOST_CORNERS:
        report.add(
            codes.TOO_MANY,
            scalar.place,
            f"the shape has {len(words)} corners; at most {MOST_CORNERS}",
            "split it into several pieces",
        )
        return None
    for word in words:
        numbers = [_grid_number(part) for part in word[0].split(",")]
        if len(numbers) == 2 and numbers[0] is not None and numbers[1] is not None:
            points.append(Point(numbers[0], numbers[1]))
        else:
            place = scalar.part(word.start(), word.end())
            hint = "write across,down for each corner and a space between corners: 0,0 4,0 4,6; a half is 3.5 or 7/2"
            report.add(codes.NOT_A_POINT, place, f"{shown(word[0])} is not a corner", hint)
    return tuple(points) if len(points) == len(words) else None


def read_placement(node: Node, report: Report) -> Placement | None:
    """Return the block and its turn from "lantern turned 90 mirrored"."""
    scalar = scalar_of(node, "a block", report)
    if scalar is None:
        return None
    match = _PLACEMENT.fullmatch(scalar.text.strip())
    if match is None:
        report.add(
            codes.EMPTY, scalar.place, "no block stands here", "write the name of a block in every place of the layout"
        )
        return None
    turn = match["turn"] or "0"
    if turn not in ("0", "90", "180", "270"):
        report.add(
            codes.UNKNOWN_CHOICE,
            scalar.place,
            f"a block cannot be turned by {shown(turn)}",
            "write turned 90, turned 180 or turned 270 (clockwise)",
        )
        return None
    return Placement(match["block"], int(turn) // 90, match["mirrored"] is not None, scalar.place)


def did_you_mean(text: str, known: Sequence[str]) -> str:
    """Return a hint with the known word nearest to a text, or an empty text."""
    near = difflib.get_close_matches(text.lower(), [word.lower() for word in known], n=1, cutoff=0.6)
    if not near or len(text) > 80:
        return ""
    word = next(word for word in known if word.lower() == near[0])
    return f"did you mean {word!r}?"


def either(words: Sequence[str]) -> str:
    """Return "a, b or c"."""
    return words[0] if len(words) == 1 else ", ".join(words[:-1]) + " or " + words[-1]


def shown(text: str) -> str:
    """Return a text in quotes, shortened if it is long."""
    return repr(text if len(text) <= 40 else text[:39] + "…")


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
        hint = f"write it in inches: about {format_length(eighths, Unit.INCH)}; figures of the centimetre edition go under `editions`"
    elif written is Unit.INCH:
        tenths = Fraction(nearest(value * CENTIMETRES_PER_INCH * 10), 10)
        hint = f"write it in centimetres: about {format_length(tenths, Unit.CENTIMETRE)}; figures of the inch edition go under `editions`"
    else:
        per_unit = Fraction(36) if written is Unit.YARD else Fraction(100)
        native = Unit.INCH if written is Unit.YARD else Unit.CENTIMETRE
        hint = f"write it in {words}" + (f": {format_length(value * per_unit, unit)}" if native is unit else "")
    report.add(codes.WRONG_UNIT, place, message, hint)


def _halves(scalar: Scalar, report: Report) -> tuple[tuple[str, Place], tuple[str, Place]] | None:
    match = _SIZE.fullmatch(scalar.text)
    if match:
        across, down = match.span("across"), match.span("down")
        return (match["across"], scalar.part(*across)), (match["down"], scalar.part(*down))
    text = scalar.text.strip()
    if text and not re.search("[x×]", text):
        return (text, scalar.place), (text, scalar.place)
    report.add(
        codes.NOT_A_PAIR,
        scalar.place,
        f"{shown(scalar.text)} is not a width and a height",
        "write it as 6 x 9: across first, then down",
    )
    return None


def _grid_number(text: str) -> Fraction | None:
    """Return a number of grid squares: 3, 3.5, 7/2 or 3-1/2; None for anything else."""
    if not _NUMBER.fullmatch(text):
        return None
    is_negative = text.startswith("-")
    whole, _, rest = text.removeprefix("-").rpartition("-")
    top, _, bottom = rest.partition("/")
    if bottom and not 0 < int(bottom) <= FINEST_GRID:
        return None
    value = int(whole or 0) + Fraction(top) / int(bottom or 1)
    return -value if is_negative else value


def _first_line(place: Place) -> Place:
    if place.end_line == place.line:
        return place
    return Place(place.file, place.line, place.column, place.line, place.column + 1)
