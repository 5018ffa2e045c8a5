"""From the text of a drawing to a tree of elements, each with its place; nothing outside the text is ever looked at.

No document type, no entities, no references to other files: what an XML reader could be made to do with them is
refused before it starts.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.parsers import expat

from evenseam.problems import Place, Report, SourceText
from evenseam.reading.drawing import codes

LONGEST_DRAWING = 1_000_000
"""Characters."""
MOST_ELEMENTS = 20_000
DEEPEST = 60
SVG = "http://www.w3.org/2000/svg"
XLINK = "http://www.w3.org/1999/xlink"

_LINE_END = re.compile("\r\n|\r|\n")
_TAG = re.compile(r"<[^\s/>]*(?:\s+[^\s=<>\"']+\s*=\s*(?:\"[^\"]*\"|'[^']*'))*\s*/?>?")
_NO_MARKUP = {
    expat.errors.XML_ERROR_TAG_MISMATCH: "an element is closed that was not opened here",
    expat.errors.XML_ERROR_NO_ELEMENTS: "there is no element in the file",
    expat.errors.XML_ERROR_UNCLOSED_TOKEN: "an element is not written to its end",
    expat.errors.XML_ERROR_DUPLICATE_ATTRIBUTE: "an attribute is written twice",
    expat.errors.XML_ERROR_UNDEFINED_ENTITY: "a name between & and ; stands for nothing here",
    expat.errors.XML_ERROR_UNBOUND_PREFIX: "a name has a prefix before its colon that is declared nowhere",
    expat.errors.XML_ERROR_JUNK_AFTER_DOC_ELEMENT: "something stands behind the end of the drawing",
}


@dataclass(slots=True)
class Element:
    """One element of the drawing."""

    tag: str
    """Its name without the namespace of SVG; with a blank in it for names of other namespaces."""
    attributes: dict[str, str]
    place: Place
    """Its opening tag."""
    start: int
    """Where the opening tag begins in the text."""
    text: str = ""
    """The characters directly inside it."""
    children: list[Element] = field(default_factory=list)

    def get(self, name: str) -> str | None:
        """Return an attribute without blanks around it, or None."""
        value = self.attributes.get(name)
        return None if value is None else value.strip()

    @property
    def reference(self) -> str | None:
        """Where the element points to, in either spelling."""
        return self.get("href") or self.get(f"{XLINK} href")

    def everything(self) -> Iterator[Element]:
        """Yield the element and all below it, in the order of the text."""
        waiting = [self]
        while waiting:
            element = waiting.pop()
            yield element
            waiting.extend(reversed(element.children))


class _StopReadingError(Exception):
    """The text is not read any further; the reason is in the report."""


@dataclass(slots=True)
class DrawingText:
    """The text of a drawing and the lines in it, for places."""

    source: SourceText
    line_starts: list[int]

    @classmethod
    def of(cls, source: SourceText) -> DrawingText:
        """Return a text with its lines found."""
        return cls(source, [0, *(found.end() for found in _LINE_END.finditer(source.text))])

    def stretch(self, start: int, end: int) -> Place:
        """Return the place of the characters from `start` to before `end`."""
        line, last = (bisect_right(self.line_starts, at) for at in (start, max(start, end - 1)))
        column, end_column = (
            start - self.line_starts[line - 1] + 1,
            max(start, end - 1) - self.line_starts[last - 1] + 2,
        )
        return Place(self.source.name, line, column, last, end_column)

    def offset(self, line: int, column: int) -> int:
        """Return where a line and column, both counted from 1, lie in the text."""
        starts = self.line_starts
        return min(starts[min(max(line, 1), len(starts)) - 1] + max(column, 1) - 1, len(self.source.text))

    def tag(self, start: int) -> Place:
        """Return the place of the tag that begins at `start`."""
        found = _TAG.match(self.source.text, start)
        return self.stretch(start, found.end() if found else start + 1)

    def attribute(self, element: Element, name: str) -> Place:
        """Return the place of an attribute's value in its element, or that of the element."""
        tag = _TAG.match(self.source.text, element.start)
        name = re.escape(name.rpartition(" ")[2])
        found = re.search(rf"[\s:]{name}\s*=\s*(\"[^\"]*\"|'[^']*')", tag[0]) if tag else None
        if found is None:
            return element.place
        return self.stretch(element.start + found.start(1) + 1, element.start + found.end(1) - 1)


def parse_elements(text: DrawingText, report: Report) -> Element | None:
    """Return the root element of a drawing; None, with the reason in the report, when the text is none."""
    source = text.source
    start = Place(source.name, 1, 1, 1, 1)
    if len(source.text) > LONGEST_DRAWING:
        message = f"the drawing has {len(source.text):,} characters; at most {LONGEST_DRAWING:,} are read"
        report.add(codes.TOO_LARGE, start, message, "a block needs a few thousand; take out what is not part of it")
        return None
    builder = _Builder(text, report)
    try:
        root = builder.parse()
    except _StopReadingError:
        return None
    except expat.ExpatError as error:
        place = text.stretch(at := text.offset(error.lineno, error.offset + 1), at + 1)
        why = _NO_MARKUP.get(expat.ErrorString(error.code) or "", "the text is no well-formed drawing from here on")
        report.add(codes.NOT_READABLE, place, why, "save the drawing again from your drawing program, as plain SVG")
        return None
    except ValueError:
        # Half of a character pair, or a sign with the number 0: no reader of XML takes them.
        message = "the text holds signs that cannot stand in a drawing"
        report.add(codes.NOT_READABLE, start, message, "save the drawing again from your drawing program, as plain SVG")
        return None
    if root is None or root.tag != "svg":
        place = root.place if root else start
        name = f"<{root.tag.rpartition(' ')[2]}>" if root else "nothing"
        message = f"a drawing begins with <svg>; here stands {name}"
        report.add(codes.NOT_A_DRAWING, place, message, "save it as plain SVG from your drawing program")
        return None
    return root


class _Builder:
    """Builds the tree from what the parser finds."""

    def __init__(self, text: DrawingText, report: Report) -> None:
        self.text = text
        self.report = report
        self.root: Element | None = None
        self.open: list[Element] = []
        self.count = 0
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.buffer_text = True
        self.parser.StartElementHandler = self.start
        self.parser.EndElementHandler = self.end
        self.parser.CharacterDataHandler = self.characters
        self.parser.StartDoctypeDeclHandler = self.doctype
        self.parser.ProcessingInstructionHandler = self.instruction

    def parse(self) -> Element | None:
        self.parser.Parse(self.text.source.text.removeprefix("\ufeff"), True)
        return self.root

    def here(self) -> int:
        return self.text.offset(self.parser.CurrentLineNumber, self.parser.CurrentColumnNumber + 1)

    def start(self, name: str, attributes: dict[str, str]) -> None:
        self.count += 1
        at = self.here()
        if self.count > MOST_ELEMENTS:
            message = f"the drawing has more than {MOST_ELEMENTS:,} elements"
            self.report.add(codes.TOO_LARGE, self.text.tag(at), message, "a block needs a few hundred")
            raise _StopReadingError
        if len(self.open) >= DEEPEST:
            message = f"groups lie more than {DEEPEST} deep in one another here"
            self.report.add(codes.TOO_LARGE, self.text.tag(at), message, "ungroup some of them")
            raise _StopReadingError
        element = Element(name.removeprefix(f"{SVG} "), attributes, self.text.tag(at), at)
        if self.open:
            self.open[-1].children.append(element)
        elif self.root is None:
            self.root = element
        self.open.append(element)

    def end(self, name: str) -> None:
        self.open.pop()

    def characters(self, text: str) -> None:
        if self.open:
            self.open[-1].text += text

    def doctype(self, *_: object) -> None:
        # The parser tells of it when it has read to its name or its end.
        at = max(0, self.text.source.text.rfind("<!", 0, self.here() + 1))
        message = "the file has a document type (<!DOCTYPE …>), which could reach for other files"
        hint = "take that line out: a drawing needs none, and drawing programs open it all the same"
        self.report.add(codes.DOCTYPE, self.text.stretch(at, at + len("<!DOCTYPE")), message, hint)
        raise _StopReadingError

    def instruction(self, target: str, data: str) -> None:
        if target.lower() == "xml-stylesheet":
            at = self.here()
            message = "the drawing takes its colours from another file"
            hint = "save the drawing with its colours inside, as plain SVG"
            self.report.add(codes.OUTSIDE_REFERENCE, self.text.stretch(at, at + 2), message, hint)
