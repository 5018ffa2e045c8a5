"""Single values: from the text an author wrote to words, a number, a choice, a colour; or a problem with its place."""

from __future__ import annotations

import datetime
import difflib
import re
from collections.abc import Iterable, Sequence
from functools import lru_cache

from evenseam.problems import Code, Place, Report
from evenseam.reading import codes
from evenseam.reading.kinds import Count, Markdown, Words
from evenseam.reading.tree import Listing, Node, Scalar

FORMAT_NUMBER = "1"
LONGEST_GUESSED = 60
"""Characters of a word for which a likely meaning is looked for."""
MOST_LISTED = 12
"""Known words that a hint lists."""

_COLOUR = re.compile(r"#[0-9a-fA-F]{6}", re.ASCII)


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
            codes.TOO_MUCH_TEXT,
            scalar.place,
            f"the text has {len(text):,} characters; at most {kind.longest:,} fit",
            "say it in fewer words",
        )
        return None
    return text


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


def did_you_mean(text: str, known: Iterable[str]) -> str:
    """Return a hint with the known word nearest to a text, or an empty text."""
    return _nearest(text.lower(), tuple(known)) if len(text) <= LONGEST_GUESSED else ""


@lru_cache(maxsize=1000)
def _nearest(text: str, known: tuple[str, ...]) -> str:
    words = {word.lower(): word for word in reversed(known)}
    near = difflib.get_close_matches(text, words, n=1, cutoff=0.6)
    return f"did you mean {words[near[0]]!r}?" if near else ""


def listed(known: Sequence[str]) -> str:
    """Return the first few known words, for a hint."""
    return ", ".join(known[:MOST_LISTED]) + (", …" if len(known) > MOST_LISTED else "")


def either(words: Sequence[str]) -> str:
    """Return "a, b or c"."""
    return words[0] if len(words) == 1 else ", ".join(words[:-1]) + " or " + words[-1]


def shown(text: str) -> str:
    """Return a text in quotes, shortened if it is long."""
    return repr(text if len(text) <= 40 else text[:39] + "…")


def _first_line(place: Place) -> Place:
    if place.end_line == place.line:
        return place
    return Place(place.file, place.line, place.column, place.line, place.column + 1)
