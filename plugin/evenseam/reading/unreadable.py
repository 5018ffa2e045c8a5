"""A text that is no YAML at all: what the parser stumbled over, in words for a person who does not program."""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml

from evenseam.problems import Label, Place, Report, SourceText
from evenseam.reading import codes

MOST_TOLD = 20
"""Tabs that are told one by one."""
LINE_END = re.compile("\r\n|\r|\n")
_TAB_INDENT = re.compile(r" *\t")
_INDENTATION = "lines of one part start exactly below each other; look also for a quote that is not closed above"
_REMARK = "put a colour in quotes, because # begins a remark that nobody reads; or write the remark behind the bracket"


@dataclass(frozen=True, slots=True)
class _Rule:
    """What a complaint of the parser means for the author."""

    complaint: str
    """A pattern that fits the wording of either of the library's two parsers."""
    message: str
    """With {sign} for the character at the place."""
    hint: str
    beginning: str = ""
    """What began where the parser says it did, if that helps."""
    is_at_beginning: bool = False
    """True when the place to mend is where the part began."""


_RULES = (
    _Rule(
        "could not find expected ':'", "this line has no colon after its key",
        "write a colon and a space after the key; a text that goes on in the next line is indented there",
        is_at_beginning=True,
    ),
    _Rule(
        "mapping values are not allowed", "here stands a colon where none can be",
        "a text with a colon in it goes in quotes; otherwise look at the indentation of this line and the one above",
    ),
    _Rule(
        "sequence entries are not allowed", "a list cannot begin in the middle of a line",
        "write each dash on a line of its own, below the key",
    ),
    _Rule("cannot start any token", "a text cannot begin with {sign}", "put the text in quotes"),
    _Rule(
        "unexpected end of stream", "the quote that opens here is never closed", "close it where the text ends",
        is_at_beginning=True,
    ),
    _Rule(
        "escape character", "in this text a backslash changes the sign after it",
        "use single quotes, or write the backslash twice", is_at_beginning=True,
    ),
    _Rule(
        "expected ',' or", "a comma or a closing bracket is missing before this",
        "close the bracket, or put a text with brackets or quotes in it in quotes of its own", "the bracket opens here",
    ),
    _Rule("node content", "something is missing before this sign", "look for a comma or a bracket too many"),
    _Rule(
        "expected (key|'-'|<block end>)|found '(key|-)", "this line does not fit under the lines above",
        _INDENTATION, "the part it should belong to begins here",
    ),
)  # fmt: skip
_OTHER = _Rule("", "the file cannot be read from here on", "put the text in quotes, and look at the line above")


def report_unreadable(source: SourceText, text: str, error: yaml.YAMLError, report: Report) -> None:
    """Report why a text is no YAML: lines that begin with tabs if there are any, else what the parser stumbled over."""
    lines = LINE_END.split(text)
    tabs = [number for number, line in enumerate(lines, start=1) if _TAB_INDENT.match(line)]
    for number in tabs[:MOST_TOLD]:
        line = lines[number - 1]
        place = Place(source.name, number, 1, number, len(line) - len(line.lstrip(" \t")) + 1)
        report.add(codes.TAB_INDENT, place, "this line begins with a tab", "use spaces: two for each level")
    if not tabs:
        _report_complaint(source, lines, error, report)


def _report_complaint(source: SourceText, lines: list[str], error: yaml.YAMLError, report: Report) -> None:
    complaint = str(getattr(error, "problem", None) or "")
    rule = next((rule for rule in _RULES if re.search(rule.complaint, complaint)), _OTHER)
    there = _place(source, lines, getattr(error, "problem_mark", None))
    beginning = _place(source, lines, getattr(error, "context_mark", None))
    place = beginning if rule.is_at_beginning and beginning else there or beginning or Place(source.name, 1, 1, 1, 1)
    labels = [Label(beginning, rule.beginning)] if rule.beginning and beginning else []
    quote = _open_quote(source, lines, place.line) if rule.hint is _INDENTATION else None
    if quote:
        labels.append(Label(quote, "is this quote closed?"))
    remark = _remark_inside(source, lines, beginning.line, place.line) if beginning and "bracket" in rule.hint else None
    if remark:
        report.add(
            codes.NOT_READABLE, remark, "here a remark begins, before the bracket is closed", _REMARK, tuple(labels)
        )
        return
    sign = lines[place.line - 1][place.column - 1 : place.column]
    message = rule.message.format(sign=repr(sign)) if sign else rule.message.format(sign="this sign")
    report.add(codes.NOT_READABLE, place, message, rule.hint, tuple(labels))


def _place(source: SourceText, lines: list[str], mark: yaml.Mark | None) -> Place | None:
    """Return the place of a mark, moved inside the text if it stands behind its end."""
    if mark is None:
        return None
    line = min(mark.line + 1, len(lines))
    column = min(mark.column + 1, len(lines[line - 1]) + 1)
    return Place(source.name, line, column, line, column + 1)


def _open_quote(source: SourceText, lines: list[str], until: int) -> Place | None:
    """Return the last double quote of the first line that has an odd number of them."""
    for number, line in enumerate(lines[:until], start=1):
        quotes = [found.start() for found in re.finditer(r'(?<!\\)"', line)]
        if len(quotes) % 2:
            return Place(source.name, number, quotes[-1] + 1, number, quotes[-1] + 2)
    return None


def _remark_inside(source: SourceText, lines: list[str], first: int, behind: int) -> Place | None:
    """Return the first # that hides the end of a line while a bracket is open: most often a colour without quotes."""
    for number in range(first, behind):
        line = re.sub(r"""(["']).*?\1""", lambda quoted: " " * len(quoted.group()), lines[number - 1])
        found = re.search(r"(?<=\s)#", line)
        if found:
            return Place(source.name, number, found.start() + 1, number, len(lines[number - 1]) + 1)
    return None
