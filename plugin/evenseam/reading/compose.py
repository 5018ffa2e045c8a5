"""From a YAML text to a located tree: the safe, plain part of YAML only, and every scalar stays text."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from typing import Any

import yaml

from evenseam.problems import Label, Outcome, Place, Report, SourceText
from evenseam.reading import codes
from evenseam.reading.tree import Entry, Listing, Mapping, Node, Scalar
from evenseam.reading.unreadable import LINE_END, report_unreadable

LONGEST_FILE = 1_000_000
"""Characters."""
DEEPEST = 40
MOST_NODES = 20_000
MOST_TOLD = 20
"""Control characters that are told one by one."""

# Everything that is no letter and no plain line end: control characters, line separators a text editor does not show
# as a new line, marks that turn the direction of writing (they can make a text read as something it is not), and
# halves of character pairs.
UNWANTED = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff\ud800-\udfff]"
)
_PARSER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class _StopReadingError(Exception):
    """The text cannot be read any further; the reason is in the report."""


def parse_tree(source: SourceText) -> Outcome[Node]:
    """Read a YAML text into a tree.

    Anchors, aliases, merge keys, tags, duplicate keys, keys that are no text and further documents are problems.
    The value is None when the text cannot be read to its end.
    """
    report = Report()
    if len(source.text) > LONGEST_FILE:
        message = f"the file has {len(source.text):,} characters; at most {LONGEST_FILE:,} are read"
        report.add(
            codes.TOO_LONG, _start_of(source), message, "a pattern file is a few pages long; is this the right file?"
        )
        return Outcome(None, report.as_tuple())
    text = _without_unwanted(source, report)
    composer = _Composer(source.name, text, report)
    try:
        tree = composer.compose(text)
    except _StopReadingError:
        tree = None
    except yaml.YAMLError as error:
        tree = None
        report_unreadable(source, text, error, report)
    if tree is None and not report.problems:
        report.add(
            codes.EMPTY_FILE, _start_of(source), "the file is empty", "`evenseam new NAME` writes one to start from"
        )
    return Outcome(tree, report.as_tuple())


class _Composer:
    """Builds the tree from the parser's events."""

    def __init__(self, file: str, text: str, report: Report) -> None:
        self.file = file
        self.source_lines = LINE_END.split(text)
        self.report = report
        self.count = 0

    def compose(self, text: str) -> Node | None:
        events = iter(yaml.parse(text, Loader=_PARSER))
        tree: Node | None = None
        documents = 0
        for event in events:
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    message = "a second document starts here"
                    self.report.add(
                        codes.SECOND_DOCUMENT,
                        self.place(event),
                        message,
                        "take out the line ---: one file is one pattern",
                    )
                    raise _StopReadingError
            elif isinstance(event, yaml.NodeEvent):
                tree = self.node(event, events, 1)
        is_nothing = isinstance(tree, Scalar) and tree.is_plain and not tree.text
        return None if is_nothing else tree

    def node(self, event: Any, events: Iterator[Any], depth: int) -> Node:
        self.count += 1
        if self.count > MOST_NODES:
            message = f"the file has more than {MOST_NODES:,} entries"
            self.report.add(
                codes.TOO_MANY_ENTRIES, self.place(event), message, "leave some out: a pattern needs a few hundred"
            )
            raise _StopReadingError
        if depth > DEEPEST:
            message = f"lists and mappings are more than {DEEPEST} levels deep here"
            self.report.add(codes.TOO_DEEP, self.place(event), message, "a pattern file needs about six levels")
            raise _StopReadingError
        self.refuse_extras(event)
        match event:
            case yaml.MappingStartEvent():
                return self.mapping(event, events, depth)
            case yaml.SequenceStartEvent():
                return self.listing(event, events, depth)
            case yaml.ScalarEvent():
                return self.scalar(event)
        # An alias: its name stands in for what it would repeat, so that one mistake does not make another.
        return Scalar(event.anchor or "", self.place(event), is_plain=False)

    def listing(self, start: Any, events: Iterator[Any], depth: int) -> Listing:
        items: list[Node] = []
        for event in events:
            if isinstance(event, yaml.SequenceEndEvent):
                return Listing(tuple(items), self.stretch(start, event, items[-1].place if items else None))
            items.append(self.node(event, events, depth + 1))
        raise AssertionError("the parser ends every list it starts")

    def mapping(self, start: Any, events: Iterator[Any], depth: int) -> Mapping:
        entries: dict[str, Entry] = {}
        last: Place | None = None
        for event in events:
            if isinstance(event, yaml.MappingEndEvent):
                return Mapping(tuple(entries.values()), self.stretch(start, event, last), bool(start.flow_style))
            key = self.node(event, events, depth + 1)
            value = self.node(next(events), events, depth + 1)
            last = value.place
            if not isinstance(key, Scalar):
                self.report.add(
                    codes.KEY_NOT_TEXT,
                    key.place,
                    "a key is a word, not a list or a mapping",
                    "put text with braces or brackets in quotes",
                )
            elif key.is_plain and key.text == "<<":
                self.report.add(
                    codes.MERGE_KEY,
                    key.place,
                    "merge keys (<<) are not used in pattern files",
                    "write the lines out, or let a size say only what differs",
                )
            elif key.text in entries:
                first = entries[key.text].key.place
                self.report.add(
                    codes.DUPLICATE_KEY, key.place, f"{_short(key.text)} is written twice", "keep one of the two",
                    (Label(first, "first written here"),),
                )  # fmt: skip
            else:
                entries[key.text] = Entry(key, value)
        raise AssertionError("the parser ends every mapping it starts")

    def scalar(self, event: Any) -> Scalar:
        place = self.place(event)
        if event.style == '"' and UNWANTED.search(event.value):
            message = "this text holds a control character, written with a backslash"
            self.report.add(codes.INVISIBLE_CHARACTER, place, message, "take it out")
        # A text after > would lose its paragraphs and its lines in folding; Markdown folds lines by itself.
        written = self.unfolded(event) if event.style == ">" else event.value
        text = UNWANTED.sub("\ufffd", written)
        return Scalar(text, place, not event.style, self.text_place(event, place))

    def unfolded(self, event: Any) -> str:
        """Return the text after > line by line, as it stands in the file, without its indentation."""
        start, end = event.start_mark, event.end_mark
        lines = self.source_lines[start.line + 1 : end.line + (1 if end.column else 0)]
        indent = min((len(line) - len(line.lstrip(" ")) for line in lines if line.strip()), default=0)
        text = "\n".join(line[indent:].rstrip() for line in lines).rstrip("\n")
        return text + "\n" if text else ""

    def text_place(self, event: Any, place: Place) -> Place:
        """Return where the text itself begins: inside its quotes, or on the line below | at its indentation."""
        if event.style not in ("|", ">"):
            within = 1 if event.style and place.end_column > place.column + 1 else 0
            return replace(place, column=place.column + within)
        first = place.line
        below = (line for line in self.source_lines[first : place.end_line] if line.strip())
        indent = len(line) - len(line.lstrip(" ")) if (line := next(below, "")) else 0
        last = min(place.end_line, len(self.source_lines))
        begins = min(first + 1, last)
        return Place(self.file, begins, indent + 1, max(place.end_line, begins), place.end_column)

    def refuse_extras(self, event: Any) -> None:
        if isinstance(event, yaml.AliasEvent) or event.anchor is not None:
            message = "names for repeated parts (& and *) are not used in pattern files"
            hint = "write the part out; text that starts with & or * goes in quotes"
            self.report.add(codes.ANCHOR_OR_ALIAS, self.first_word(event), message, hint)
        if getattr(event, "tag", None) is not None:
            message = "type tags (!) are not used in pattern files"
            hint = "take it out; text that starts with ! goes in quotes"
            self.report.add(codes.TAG, self.first_word(event), message, hint)

    def first_word(self, event: Any) -> Place:
        """Return the place of the sign an entry begins with, such as &name."""
        place = self.place(event)
        line = self.source_lines[place.line - 1] if place.line <= len(self.source_lines) else ""
        word = re.match(r"[^\s,\]}]*", line[place.column - 1 :])
        end = place.column + (word.end() if word else 0)
        return replace(place, end_line=place.line, end_column=max(end, place.column + 1))

    def place(self, event: Any) -> Place:
        start, end = event.start_mark, event.end_mark
        return Place(self.file, start.line + 1, start.column + 1, end.line + 1, end.column + 1)

    def stretch(self, start: Any, end: Any, last: Place | None) -> Place:
        """Return the stretch of a collection: to its closing bracket, or to the end of its last value."""
        first = start.start_mark
        if start.flow_style or last is None:
            close = end.end_mark
            return Place(self.file, first.line + 1, first.column + 1, close.line + 1, close.column + 1)
        return Place(self.file, first.line + 1, first.column + 1, last.end_line, last.end_column)


def _without_unwanted(source: SourceText, report: Report) -> str:
    """Report unwanted characters and return the text with a stand-in for each, so that places stay right."""
    text = source.text.removeprefix("\ufeff")
    if not UNWANTED.search(text):
        return text
    found = (
        (number, sign) for number, line in enumerate(LINE_END.split(text), start=1) for sign in UNWANTED.finditer(line)
    )
    for number, sign in islice(found, MOST_TOLD):
        place = Place(source.name, number, sign.start() + 1, number, sign.end() + 1)
        message = f"a control character (U+{ord(sign[0]):04X}) stands here, which no reader can see"
        hint = "take it out: delete the characters around it and type them again"
        report.add(codes.INVISIBLE_CHARACTER, place, message, hint)
    return UNWANTED.sub("\ufffd", text)


def _start_of(source: SourceText) -> Place:
    return Place(source.name, 1, 1, 1, 1)


def _short(text: str) -> str:
    return repr(text if len(text) <= 40 else text[:39] + "…")
