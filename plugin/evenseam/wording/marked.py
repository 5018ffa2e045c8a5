"""Words on their way into the tree: Markdown that is known to be ours, escaped words of others, and marked figures.

A figure travels through Markdown between three private-use characters, so that no text of an author can pretend to
be one: those characters are taken out of every text that is not ours.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

FIGURE_START, FIGURE_NAME, FIGURE_END = "\ue000", "\ue001", "\ue002"
_PUNCTUATION = re.compile(r"([!-/:-@\[-`{-~])")
_MARKED = re.compile(f"{FIGURE_START}([^{FIGURE_START}-{FIGURE_END}]*){FIGURE_NAME}([a-z0-9_]*){FIGURE_END}")


class Markdown(str):
    """A text that is Markdown already and goes into a template as it stands."""

    __slots__ = ()


def escape(text: str) -> Markdown:
    """Return words of an author as Markdown that says just these words, on one line."""
    return Markdown(_PUNCTUATION.sub(r"\\\1", without_marks(" ".join(text.split()))))


def without_marks(text: str) -> str:
    """Return the text without control and private-use characters; line ends and tabs stay."""
    return "".join(sign for sign in text if sign in "\n\t" or (sign.isprintable() and not _is_private(sign)))


def mark_figure(text: str, figure: str = "") -> Markdown:
    """Return a figure as it is printed, marked so that it becomes a `Measured` node."""
    return Markdown(f"{FIGURE_START}{text}{FIGURE_NAME}{figure}{FIGURE_END}")


def split_figures(text: str) -> Iterator[tuple[str, str | None]]:
    """Yield the runs of a text: (words, None) for plain words and (printed figure, name) for figures."""
    position = 0
    for found in _MARKED.finditer(text):
        if found.start() > position:
            yield text[position : found.start()], None
        yield found[1], found[2]
        position = found.end()
    if position < len(text):
        yield text[position:], None


def without_figures(text: str) -> str:
    """Return a text with every marked figure as plain words."""
    return "".join(words for words, _ in split_figures(text))


def _is_private(sign: str) -> bool:
    return "\ue000" <= sign <= "\uf8ff"


def about_once(first: str, second: str) -> str:
    """Return the second of two figures of one size, without its "about" when the first has said it for both.

    >>> about_once("about 18 9/16", "about 16 1/16 in"), about_once("18", "about 15 9/16 in")
    ('16 1/16 in', 'about 15 9/16 in')
    """
    return second.removeprefix(_ABOUT) if first.startswith(_ABOUT) else second


_ABOUT = "about "
"""As figures are written before they are put into the language of a page."""
