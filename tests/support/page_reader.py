"""Reads a page the way a person does: its words without the pictures, and its figures in order."""

from __future__ import annotations

import re
from html.parser import HTMLParser

FIGURE = re.compile(r"(?<![\w/.])\d+(?: \d+/\d+|/\d+|\.\d+)? (?:in|cm|yd|m)(?![\w])")
"""A measurement as it is printed: 7 3/8 in, 1/4 yd, 26.5 cm."""
_BLOCK = {
    "p",
    "li",
    "td",
    "th",
    "h1",
    "h2",
    "h3",
    "h4",
    "caption",
    "figcaption",
    "dt",
    "dd",
    "tr",
    "div",
    "section",
    "br",
}


class PageReader(HTMLParser):
    """Collects the words outside pictures, and the figures with their names."""

    def __init__(self) -> None:
        super().__init__()
        self.measured: list[str] = []
        self.figure_names: list[str | None] = []
        self.words = ""
        self.addresses: list[tuple[str, str, str]] = []
        """Tag, attribute, address."""
        self._in_picture = 0
        self._in_script = False
        self._in_figure = False

    def handle_starttag(self, tag, attrs):
        attributes = dict(attrs)
        self._in_picture += tag == "svg"
        self._in_script = tag in ("script", "style", "template")
        if tag in _BLOCK:
            self.words += " "
        if tag == "span" and attributes.get("class") == "measured":
            self._in_figure = True
            self.measured.append("")
            self.figure_names.append(attributes.get("data-figure"))
        self.addresses += [
            (tag, name, attributes[name] or "") for name in ("href", "src", "srcset", "data") if name in attributes
        ]

    def handle_startendtag(self, tag, attrs):
        in_picture = self._in_picture
        self.handle_starttag(tag, attrs)
        self._in_picture = in_picture

    def handle_endtag(self, tag):
        self._in_picture -= tag == "svg"
        self._in_figure = self._in_figure and tag != "span"
        self._in_script = False
        if tag in _BLOCK:
            self.words += " "

    def handle_data(self, data):
        if self._in_picture or self._in_script:
            return
        self.words += data
        if self._in_figure:
            self.measured[-1] += data


def read_page(html: str) -> PageReader:
    """Return a reader that has read a page."""
    reader = PageReader()
    reader.feed(html)
    reader.close()
    reader.words = " ".join(reader.words.split())
    return reader


def figures_in(text: str) -> list[str]:
    """Return every measurement printed in a text, in order."""
    return FIGURE.findall(" ".join(text.split()))
