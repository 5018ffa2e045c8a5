"""Words made harmless for HTML: escaped, on one line, and nothing a template language would answer to."""

from __future__ import annotations

import html
import re

_LINE_END = re.compile(r"[\r\n\v\f\x1c-\x1e\x85\u2028\u2029]")
_CONTROL = re.compile(
    r"[\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff\ud800-\udfff]"
)
_PLACE = re.compile(r"\{(\w+)\}")
_BLANK_LINES = re.compile(r"\n\s*(?=\n)")
_COLOUR = re.compile(r"#[0-9a-fA-F]{6}", re.ASCII)
_ADDRESS = re.compile(r"(?:https?://|mailto:)[^\s<>\"'\\]+|[A-Za-z0-9_.~/#%-]+", re.ASCII)
NEUTRAL_COLOUR = "#888888"


def plain(text: str) -> str:
    """Return a text as one line without control signs or signs that turn the direction of writing."""
    # Not one expression for an end with the blanks round it: a line of a million blanks would take it hours.
    first, *others = _LINE_END.split(text)
    if others:
        between = (line.strip() for line in others[:-1])
        text = " ".join([first.rstrip(), *(line for line in between if line), others[-1].lstrip()])
    return _CONTROL.sub("", text)


def escape(text: str) -> str:
    """Return a text that is itself and nothing else between tags and in quoted attributes.

    Doubled braces are written as references, so that a site generator with templates in its pages leaves them alone.

    >>> escape('<b> & "{{ x }}"')
    '&lt;b&gt; &amp; &quot;&#123;&#123; x &#125;&#125;&quot;'
    """
    return html.escape(plain(text), quote=True).replace("{", "&#123;").replace("}", "&#125;")


def filled(words: str, **markup: str) -> str:
    """Return words of ours, escaped, with finished markup in their {places}. Raises KeyError for an unknown place.

    >>> filled("Plans & {link}", link="<a>more</a>")
    'Plans &amp; <a>more</a>'
    """
    parts = _PLACE.split(words)
    return "".join(markup[part] if number % 2 else escape(part) for number, part in enumerate(parts))


def without_blank_lines(markup: str) -> str:
    """Return markup without blank lines: a blank line would end raw HTML in the eyes of a Markdown processor."""
    return _BLANK_LINES.sub("", markup).strip()


def inline_svg(svg: str) -> str:
    """Return an SVG text to stand in a page: without blank lines, and with its doubled braces as references."""
    return without_blank_lines(svg).replace("{{", "&#123;&#123;").replace("{%", "&#123;%")


def colour(text: str) -> str:
    """Return a #rrggbb colour as it is, and a neutral grey for anything else."""
    return text if _COLOUR.fullmatch(text) else NEUTRAL_COLOUR


def address(text: str) -> str:
    """Return the address of a link, escaped; one that is no web, mail or relative address leads nowhere (#).

    >>> address("https://example.org/a?b=1&c"), address("javascript:alert(1)"), address("../a.html")
    ('https://example.org/a?b=1&amp;c', '#', '../a.html')
    """
    return escape(text) if _ADDRESS.fullmatch(text) and not text.startswith("//") else "#"
